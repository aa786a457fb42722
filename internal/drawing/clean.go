package drawing

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// noPicture stands for a letter or sign that our fonts can't show, so that a name in
// another script is seen to be there.
const noPicture = '□'

const joiner = '\u200D'

// clean makes a stranger's text fit to print on one line: at most most letters, blanks
// and line ends as one space, nothing that steers or hides, and a box for each sign
// without a picture, together with what belongs to it.
func clean(s string, most int) string {
	s, cut := head(s, most)
	fonts := fontOf(false)
	out := make([]rune, 0, len(s))
	boxed, joined := false, false // the sign before has no picture, a joiner came after it
	for _, r := range norm.NFC.String(s) {
		switch {
		case r == joiner:
			joined = true
			continue
		case unicode.IsSpace(r):
			if len(out) > 0 && out[len(out)-1] != ' ' {
				out = append(out, ' ')
			}
			boxed = false
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r):
		case fonts[r] > 0:
			out = append(out, r)
			boxed = r == noPicture
		case boxed && (joined || belongs(r)):
		default:
			out = append(out, noPicture)
			boxed = true
		}
		joined = false
	}
	text := strings.TrimSpace(string(out))
	if cut {
		text += "…"
	}
	return text
}

// head is the beginning of a text, valid, of at most n letters.
func head(s string, n int) (string, bool) {
	cut := len(s) > n*utf8.UTFMax
	if cut {
		s = s[:n*utf8.UTFMax]
	}
	i := 0
	for at := range s {
		if i == n {
			return strings.ToValidUTF8(s[:at], "\uFFFD"), true
		}
		i++
	}
	return strings.ToValidUTF8(s, "\uFFFD"), cut
}

// belongs says whether a sign is part of the one before: an accent or a skin color.
func belongs(r rune) bool {
	const skinFirst, skinLast = 0x1F3FB, 0x1F3FF
	return unicode.Is(unicode.M, r) || r >= skinFirst && r <= skinLast
}

// wrap breaks a clean text into lines of a width. What is over the last line is cut, and
// an ellipsis says so.
func wrap(s string, width float64, most int, l look) []string {
	var lines []string
	row := ""
	for _, word := range strings.Fields(s) {
		for row != "" && measure(row+" "+word, l) > width || measure(word, l) > width {
			if row == "" {
				row, word = split(word, width, l)
			}
			if lines = append(lines, row); len(lines) > most {
				return shorten(lines, width, most, l)
			}
			row = ""
		}
		row = strings.TrimSpace(row + " " + word)
	}
	if row != "" {
		lines = append(lines, row)
	}
	return shorten(lines, width, most, l)
}

// split takes as much of a long word as fits, one letter at least.
func split(word string, width float64, l look) (fits, rest string) {
	sum := 0.0
	for i, r := range word {
		sum += measure(string(r), l)
		if sum > width && i > 0 {
			return word[:i], word[i:]
		}
	}
	return word, ""
}

func shorten(lines []string, width float64, most int, l look) []string {
	if len(lines) <= most {
		return lines
	}
	lines = lines[:most]
	lines[most-1] = fit(lines[most-1]+"…", width, l)
	return lines
}

// fit shortens a line to a width; an ellipsis shows where it was cut.
func fit(s string, width float64, l look) string {
	if measure(s, l) <= width {
		return s
	}
	room := width - measure("…", l)
	sum := 0.0
	for i, r := range s {
		if sum += measure(string(r), l); sum > room {
			return strings.TrimRight(s[:i], " ") + "…"
		}
	}
	return s
}
