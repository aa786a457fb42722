package reading

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"
)

// dress writes the same words another way: case, spacing, and the style of dashes and
// quotes must not change what a message says.
var dress = map[string]func(string) string{
	"small letters":   strings.ToLower,
	"capital letters": strings.ToUpper,
	"more space":      func(s string) string { return "  " + strings.ReplaceAll(s, " ", "  ") + " " },
	"hard space":      func(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") },
	"long dashes":     func(s string) string { return strings.ReplaceAll(s, "-", "–") },
	"curly quotes":    func(s string) string { return strings.NewReplacer("'", "’", `"`, "”").Replace(s) },
	"primes":          func(s string) string { return strings.NewReplacer(`"`, "″").Replace(s) },
	"times sign":      func(s string) string { return strings.ReplaceAll(s, " x ", " × ") },
	"typographic":     func(s string) string { return strings.NewReplacer("1/2", "½", "1/4", "¼", "3/4", "¾").Replace(s) },
}

// fits says whether a way of writing leaves the words of this message what they are.
func fits(name, s string) bool {
	switch name {
	case "typographic": // "11/2" is not "1½", "5-1/2" is
		for i := 0; i+2 < len(s); i++ {
			if s[i+1] == '/' && i > 0 && s[i-1] >= '0' && s[i-1] <= '9' {
				return false
			}
		}
	case "capital letters", "small letters":
		for _, c := range s { // letters whose other case is another length or none
			if c > unicode.MaxASCII {
				return false
			}
		}
		return !strings.Contains(s, "http")
	}
	return true
}

func TestDressMakesNoDifference(t *testing.T) {
	for _, examples := range corpus(t) {
		for _, e := range examples {
			in := e.input()
			want := formOf(t, Read(in))
			for name, f := range dress {
				if !fits(name, e.Text) {
					continue
				}
				in.Text = f(e.Text)
				if got := formOf(t, Read(in)); !got.equal(want) {
					t.Errorf("%s in %s: %q [%s]\n got %v\nwant %v", e.ID, name, in.Text, e.Asked, got, want)
				}
			}
		}
	}
}

// TestEveryPieceIsRead cuts the messages of the corpus off after every word, and before
// every word: a text that ends or begins anywhere has a reading too.
func TestEveryPieceIsRead(t *testing.T) {
	for _, examples := range corpus(t) {
		for n, e := range examples {
			if testing.Short() && n%4 > 0 {
				continue
			}
			in := e.input()
			for i, c := range e.Text {
				if c != ' ' && c != ',' {
					continue
				}
				for _, piece := range []string{e.Text[:i], e.Text[i:]} {
					in.Text = piece
					checkReading(t, piece, Read(in))
				}
			}
		}
	}
}

// TestSizesInAnyWords draws two lengths and a way of writing each, and reads back what
// was drawn.
func TestSizesInAnyWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inFeet := rapid.Bool().Draw(t, "in feet")
		a, b := drawLength(t, "a", inFeet), drawLength(t, "b", inFeet)
		by := rapid.SampledFrom([]string{" x ", "x", " by ", " X ", " × ", " * ", " bt ", " por "}).Draw(t, "by")
		if by == "x" && unicode.IsLetter(rune(b.text[0])) {
			by = " x "
		}
		text := a.text + by + b.text
		got := Read(Input{Text: text, Asked: askedOf("curb_outside")})
		if len(got.Facts) != 1 || len(got.Unclear) > 0 {
			t.Fatalf("%q: got %v", text, formOfReading(got))
		}
		width, length := min(a.value, b.value), max(a.value, b.value)
		want := sizeOf(width, length)
		if s := stripResolution(got.Facts[0].Value); s != want {
			t.Fatalf("%q: got %v, want %v", text, s, want)
		}
		if got.Facts[0].Said != strings.TrimSpace(text) {
			t.Fatalf("%q: said %q", text, got.Facts[0].Said)
		}
	})
}
