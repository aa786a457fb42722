package drawing

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for _, row := range []struct{ in, want string }{
		{"Dana Whitlock", "Dana Whitlock"},
		{"  José\tNúñez\r\n ", "José Núñez"},
		{"Jose\u0301", "José"}, // an accent by itself is joined to its letter
		{"<script>&\"'", "<script>&\"'"},
		{"Иван", "Иван"},
		{"דנה", "□□□"},
		{"a\u202Ebc\u202C", "abc"}, // nothing turns the direction of writing
		{"a\u200Bb\uFEFFc\x00\x1b[31m", "abc[31m"},
		{"ok 👍🏽!", "ok □!"},
		{"👨‍👩‍👧 x", "□ x"},
		{"x\u0300\u0301\u0302\u0303\u0304", "x□"}, // a pile of accents is one sign
		{"\xff\xfeab", "�ab"},
		{"", ""},
		{"\n\n", ""},
	} {
		if got := clean(row.in, 40); got != row.want {
			t.Errorf("%q: %q, want %q", row.in, got, row.want)
		}
	}
	if got := clean(strings.Repeat("ab", 100), 6); got != "ababab…" {
		t.Errorf("long: %q", got)
	}
	if got := clean(strings.Repeat("\u0301", 1<<20), 6); utf8.RuneCountInString(got) > 7 {
		t.Errorf("a million accents: %q", got)
	}
}

func TestWrap(t *testing.T) {
	l := look{size: 10}
	for _, row := range []struct {
		in    string
		width float64
		most  int
		want  string
	}{
		{"one two three", 200, 3, "one two three"},
		{"one two three", 45, 3, "one two|three"},
		{"one two three", 45, 1, "one tw…"},
		{"incomprehensibilities", 60, 9, ""},
		{"a", 1, 2, "a"},
		{"", 10, 2, ""},
	} {
		got := wrap(row.in, row.width, row.most, l)
		if row.want != "" && strings.Join(got, "|") != row.want || len(got) > row.most {
			t.Errorf("%q in %v: %q, want %q", row.in, row.width, got, row.want)
		}
		for _, s := range got {
			if measure(s, l) > row.width && utf8.RuneCountInString(s) > 1 {
				t.Errorf("%q is wider than %v", s, row.width)
			}
		}
	}
	if got := strings.Join(wrap("incomprehensibilities", 60, 9, l), ""); got != "incomprehensibilities" {
		t.Errorf("a long word came out as %q", got)
	}
}

// What is printed is bounded, has pictures for every sign, and is the same when cleaned
// again.
func FuzzClean(f *testing.F) {
	for _, s := range []string{"Dana", "محمد بن", "👨‍👩‍👧👍🏽", "a\u0301\u0302", "\xff\x00\u202E", "  x \n y "} {
		f.Add(s, 20)
	}
	f.Fuzz(func(t *testing.T, s string, most int) {
		most = min(max(most, 1), 400)
		got := clean(s, most)
		if n := utf8.RuneCountInString(got); n > 3*most+1 {
			t.Fatalf("%d letters of at most %d", n, most)
		}
		fonts := fontOf(false)
		for _, r := range got {
			if fonts[r] == 0 {
				t.Fatalf("%q has no picture", r)
			}
		}
		if again := clean(got, 4*most+4); again != got {
			t.Fatalf("%q cleaned again is %q", got, again)
		}
		for _, line := range wrap(got, 50, 3, lookBody) {
			if measure(line, lookBody) > 50 && utf8.RuneCountInString(line) > 1 {
				t.Fatalf("%q is too wide", line)
			}
		}
	})
}
