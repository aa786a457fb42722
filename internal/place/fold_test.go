package place

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestPlain(t *testing.T) {
	for s, want := range map[string]string{
		"Duluth": "duluth", "St.Paul": "st paul", "St. Paul": "st paul", "N.H.": "nh", "N. H.": "n h", "O'Fallon": "ofallon",
		"Coeur d’Alene": "coeur dalene", "Winston-Salem": "winston salem", "Cañon": "canon", "Mayagu\u0308ez": "mayaguez",
		"": "", "  --  ": "", "Hawaiʻi": "hawaii", "\xff\xfe": "", "東京": "", "a,b": "a b",
	} {
		if got := Plain(s); got != want {
			t.Errorf("Plain(%q) = %q, want %q", s, got, want)
		}
	}
}

func TestPlainProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		p := Plain(s)
		if Plain(p) != p {
			t.Fatalf("Plain(%q) = %q, then %q", s, p, Plain(p))
		}
		if ascii := strings.ToUpper(p); Plain(ascii) != p {
			t.Fatalf("case matters: %q", p)
		}
		Towns(s, "")
		State(s)
		ByZIP(s)
	})
}

// An edit distance is a symmetric count that is zero only for equals, and no larger
// than the limit and one.
func TestEditDistanceProperties(t *testing.T) {
	word := rapid.StringMatching(`[a-e]{0,9}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		d := editDistance(a, b, 20)
		if d != editDistance(b, a, 20) || (d == 0) != (a == b) || d > max(len(a), len(b)) {
			t.Fatalf("editDistance(%q, %q) = %d", a, b, d)
		}
		if limited := editDistance(a, b, 2); limited != min(d, 3) {
			t.Fatalf("editDistance(%q, %q) within 2 = %d, want %d", a, b, limited, min(d, 3))
		}
	})
}

// One slip of the finger in a long enough name is found again.
func TestNearFindsOneSlip(t *testing.T) {
	table := load()
	rapid.Check(t, func(t *rapid.T) {
		e := table.entry(int32(rapid.IntRange(0, len(table.towns)-1).Draw(t, "town")))
		key := keyOf(e.City)
		if len(key) < 6 || len(key) > maxEditLength-1 {
			t.Skip("too short or long")
		}
		at := rapid.IntRange(1, len(key)-1).Draw(t, "at")
		slip := key[:at] + "q" + key[at:]
		if found := Near(slip, e.State); len(found) == nearMost {
			t.Skip("a crowd of names")
		} else if !hasCity(found, e) {
			t.Fatalf("Near(%q, %s) = %v, want %s", slip, e.State, found, e.City)
		}
	})
}

func hasCity(found []Match, e Entry) bool {
	for _, m := range found {
		if m.Entry == e {
			return true
		}
	}
	return false
}

func FuzzScan(f *testing.F) {
	f.Add("st. paul, minn 55101", "MN")
	f.Add("İstanbul \xff d'Alene", "")
	f.Fuzz(func(t *testing.T, text, state string) {
		words := strings.Fields(text)
		if n := Scan(words, state); n < 0 || n > len(words) {
			t.Fatalf("Scan = %d of %d words", n, len(words))
		}
		if n, _ := ScanState(words); n < 0 || n > len(words) {
			t.Fatalf("ScanState = %d of %d words", n, len(words))
		}
		Near(text, state)
		Zones(text, state, text)
	})
}
