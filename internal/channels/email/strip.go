package email

import (
	"strings"
	"unicode"
)

// zone is what a line of a mail is.
type zone int

const (
	fresh     zone = iota // newly written
	quote                 // of an earlier mail
	intro                 // "On Monday … wrote:"
	forwarded             // of a mail that is passed on
	signature             // signature, sign-off, footer
	legal                 // disclaimer, warning banner
)

type textLine struct {
	text  string // without quote marks
	depth int    // how many quote marks
	zone  zone
}

// stripped is a mail's text told apart.
type stripped struct {
	blocks    []Block
	forwarded string
	pictures  map[string]zone // by content id: where an inline picture stands
}

// maxQuoted bounds the quoted text that is kept above an answer.
const maxQuoted = 4 << 10

// strip tells what is new in a text from what is quoted, signed or added by machines.
// It goes line by line, a fixed number of times.
func strip(text, sender string) stripped {
	lines := splitLines(text)
	markDeclared(lines)
	markOriginal(lines)
	markQuotes(lines)
	for _, c := range chunks(lines) {
		markLegal(c)
		markFooters(c)
		markSignature(c, sender)
	}
	return gather(lines)
}

func splitLines(text string) []textLine {
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n\n").Replace(text)
	var lines []textLine
	for raw := range strings.SplitSeq(text, "\n") {
		body, depth := unquote(raw)
		lines = append(lines, textLine{text: tidy(body), depth: depth})
	}
	return lines
}

// unquote takes ">" marks off, also with spaces between them.
func unquote(s string) (string, int) {
	depth := 0
	rest := s
	for {
		trimmed := strings.TrimLeft(rest, " \t")
		if depth == 0 && len(rest)-len(trimmed) > 3 {
			return rest, depth // an indented ">" is the writer's own
		}
		if !strings.HasPrefix(trimmed, ">") || strings.HasPrefix(trimmed, ">=") {
			if depth > 0 {
				rest = strings.TrimPrefix(rest, " ")
			}
			return rest, depth
		}
		rest = trimmed[1:]
		depth++
	}
}

// tidy drops what can't be seen, and makes every space a plain one. The space of a
// signature's "-- " is kept.
func tidy(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\u200B' || r == '\u200C' || r == '\u2060' || r == '\uFEFF' || r == '\u00AD':
			return -1
		case unicode.Is(unicode.Zs, r) || r == '\t':
			return ' '
		case unicode.IsControl(r):
			return -1
		}
		return r
	}, s)
	if s == "-- " {
		return s
	}
	return strings.TrimRight(s, " ")
}

func blank(l textLine) bool { return strings.TrimSpace(l.text) == "" }

// chunks are the runs of new lines between quotes, as slices of lines.
func chunks(lines []textLine) [][]textLine {
	var all [][]textLine
	start := -1
	for i := range lines {
		switch {
		case lines[i].zone == fresh && start < 0:
			start = i
		case lines[i].zone != fresh && start >= 0:
			all = append(all, lines[start:i])
			start = -1
		}
	}
	if start >= 0 {
		all = append(all, lines[start:])
	}
	return all
}

// gather puts the zones together again.
func gather(lines []textLine) stripped {
	s := stripped{pictures: map[string]zone{}}
	var text, above, passed []string
	flush := func() {
		if t := paragraphs(text); t != "" {
			s.blocks = append(s.blocks, Block{Quoted: clipFront(paragraphs(above), maxQuoted), Text: t})
			above = nil
		}
		text = nil
	}
	for _, l := range lines {
		for _, id := range marks(l.text) {
			s.pictures[id] = l.zone
		}
		switch l.zone {
		case fresh:
			text = append(text, unmark(l.text))
		case quote:
			flush()
			above = append(above, unmark(l.text))
		case forwarded:
			passed = append(passed, unmark(l.text))
		}
	}
	flush()
	s.forwarded = paragraphs(passed)
	return s
}

// paragraphs joins lines, with at most one blank line between two.
func paragraphs(lines []string) string {
	var b strings.Builder
	gap := false
	for _, l := range lines {
		l = strings.TrimRight(l, " ")
		if strings.TrimSpace(l) == "" {
			gap = b.Len() > 0
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		if gap {
			b.WriteByte('\n')
			gap = false
		}
		b.WriteString(l)
	}
	return strings.TrimSpace(b.String())
}

func clipFront(s string, n int) string {
	if len(s) <= n {
		return s
	}
	return strings.ToValidUTF8(s[len(s)-n:], "")
}
