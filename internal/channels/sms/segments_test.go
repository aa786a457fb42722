package sms

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Source of all lines: the check-value table for SMS arithmetic, computed from 3GPP TS
// 23.038 (160 and 153 septets, 70 and 67 units).
func TestCount(t *testing.T) {
	for _, f := range []struct {
		name, text string
		want       Segments
	}{
		{"nothing", "", Segments{GSM7, 0, 0}},
		{"160 a", strings.Repeat("a", 160), Segments{GSM7, 160, 1}},
		{"161 a", strings.Repeat("a", 161), Segments{GSM7, 161, 2}},
		{"306 a", strings.Repeat("a", 306), Segments{GSM7, 306, 2}},
		{"307 a", strings.Repeat("a", 307), Segments{GSM7, 307, 3}},
		{"80 euro", strings.Repeat("€", 80), Segments{GSM7, 160, 1}},
		{"81 euro", strings.Repeat("€", 81), Segments{GSM7, 162, 2}},
		{"brackets cost two", "size [48x48]", Segments{GSM7, 14, 1}},
		{"a fraction sign", "52½ x 52½ in", Segments{UCS2, 12, 1}},
		{"70 ê", strings.Repeat("ê", 70), Segments{UCS2, 70, 1}},
		{"71 ê", strings.Repeat("ê", 71), Segments{UCS2, 71, 2}},
		{"134 ê", strings.Repeat("ê", 134), Segments{UCS2, 134, 2}},
		{"135 ê", strings.Repeat("ê", 135), Segments{UCS2, 135, 3}},
		{"35 thumbs", strings.Repeat("👍", 35), Segments{UCS2, 70, 1}},
		{"36 thumbs", strings.Repeat("👍", 36), Segments{UCS2, 72, 2}},
		// 76 pairs fill 152 of 153 septets; the 77th may not straddle: 154 of them need
		// three parts although 308 septets would, cut anywhere, need 3 as well; 153 pairs
		// are 306 septets, two parts if pairs could be cut.
		{"extension pair does not straddle", strings.Repeat("€", 153), Segments{GSM7, 306, 3}},
		// 33 pairs fill 66 of 67 units, so 67 pairs (134 units) need three parts.
		{"surrogate pair does not straddle", strings.Repeat("👍", 67), Segments{UCS2, 134, 3}},
		{"all of the basic table", gsmBasic, Segments{GSM7, 127, 1}},
		{"all of the extension table", gsmExtension, Segments{GSM7, 20, 1}},
		{"backtick is not in GSM-7", "`", Segments{UCS2, 1, 1}},
	} {
		if got := Count(f.text); got != f.want {
			t.Errorf("%s: got %+v, want %+v", f.name, got, f.want)
		}
	}
}

func TestToGSM7(t *testing.T) {
	for _, f := range []struct{ in, want string }{
		{"plain text stays", "plain text stays"},
		{"52½ × 52½ in", "52 1/2 x 52 1/2 in"},
		{"52 ¼” wide", `52 1/4" wide`},
		{"½ in", "1/2 in"},
		{"“it’s up” – there…", `"it's up" - there...`},
		{"45° slope", "45 deg slope"},
		{"6′ 2″", `6' 2"`},
		{"niño é ü ¿sí? ¡ya!", "niño é ü ¿si? ¡ya!"},
		{"medición máxima, ÁÍÓÚ", "medicion maxima, AIOU"},
		{"e\u0301", "é"},
		{"a\u00A0b\u200Bc", "a bc"},
		{"3/8\u2044", "3/8/"},
		{"10 ft²", "10 ft2"},
		{"ﬁne", "fine"},
		{"ok 👍", "ok 👍"},
		{"Łódź", "Lodz"},
		{"Ω Δ stay, Привет stays", "Ω Δ stay, Привет stays"},
		{"façade", "facade"},
	} {
		if got := ToGSM7(f.in); got != f.want {
			t.Errorf("%q: got %q, want %q", f.in, got, f.want)
		}
	}
}

func TestFoldingTablesAreGSM7(t *testing.T) {
	for _, table := range []map[rune]string{fractions, spellings} {
		for r, s := range table {
			if !AllGSM7(s) || septets(r) != 0 {
				t.Errorf("%q -> %q: want a character outside of GSM-7 and a spelling in it", r, s)
			}
		}
	}
}

func TestFoldingTwiceChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "text")
		once := ToGSM7(s)
		if twice := ToGSM7(once); twice != once {
			t.Fatalf("once %q, twice %q", once, twice)
		}
	})
}

// A text never has fewer parts than its units need, nor more than twice as many.
func TestCountBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Count(rapid.StringN(1, 600, -1).Draw(t, "text"))
		alone, part := gsmAlone, gsmPart
		if s.Encoding == UCS2 {
			alone, part = ucsAlone, ucsPart
		}
		least := (s.Units + part - 1) / part
		if s.Units <= alone {
			least = 1
		}
		if s.Parts < least || s.Parts > least+1+least/50 {
			t.Fatalf("%+v: want %d or a little more", s, least)
		}
	})
}
