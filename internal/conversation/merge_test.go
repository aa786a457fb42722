package conversation

import (
	"reflect"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

const in = fitcheck.Inch

// TestMerged: a part of an answer completes what stood; a whole one replaces it; a lone
// number replaces the side it is near, and only where the other is far.
func TestMerged(t *testing.T) {
	type size = fitcheck.Size
	whole := size{Width: 25*in + in/2, Length: 49*in + in/2}
	for _, c := range []struct {
		what        string
		topic       fitcheck.Topic
		before, now fitcheck.Value
		want        fitcheck.Value
		ok          bool
	}{
		{"the other side", fitcheck.TopicCurbOutside, size{One: 49 * in}, size{One: 25 * in}, size{Width: 25 * in, Length: 49 * in}, true},
		{"the named other side", fitcheck.TopicCurbOutside, size{Length: 49 * in}, size{Width: 25 * in}, size{Width: 25 * in, Length: 49 * in}, true},
		{"a lone number after a named side", fitcheck.TopicCurbOutside, size{Length: 49 * in}, size{One: 25 * in}, size{Width: 25 * in, Length: 49 * in}, true},
		{"a whole size replaces", fitcheck.TopicCurbOutside, whole, size{Width: 20 * in, Length: 30 * in}, size{Width: 20 * in, Length: 30 * in}, true},
		{"no, 26 1/2", fitcheck.TopicCurbOutside, whole, size{One: 26*in + in/2}, size{Width: 26*in + in/2, Length: 49*in + in/2}, true},
		{"the long side", fitcheck.TopicCurbOutside, whole, size{One: 48 * in}, size{Width: 25*in + in/2, Length: 48 * in}, true},
		{"which side of a near square", fitcheck.TopicCurbOutside, size{Width: 30 * in, Length: 31 * in}, size{One: 32 * in}, size{One: 32 * in}, false},
		{"far from both", fitcheck.TopicCurbOutside, whole, size{One: 36 * in}, size{One: 36 * in}, false},
		{"a round one", fitcheck.TopicPlasticSize, size{Diameter: 36 * in}, size{One: 35 * in}, size{Diameter: 35 * in}, true},
		{"the second diagonal", fitcheck.TopicCurbDiagonals, fitcheck.Diagonals{First: 55 * in}, fitcheck.Diagonals{First: 56 * in}, fitcheck.Diagonals{First: 55 * in, Second: 56 * in}, true},
		{"the state of a town", fitcheck.TopicPlace, fitcheck.Place{City: "Springfield"}, fitcheck.Place{State: "IL"}, fitcheck.Place{City: "Springfield", State: "IL"}, true},
		{"another state", fitcheck.TopicPlace, fitcheck.Place{City: "Boise", State: "ID"}, fitcheck.Place{State: "OR"}, fitcheck.Place{State: "OR"}, true},
		{"a ZIP code replaces all", fitcheck.TopicPlace, fitcheck.Place{City: "Boise", State: "ID"}, fitcheck.Place{City: "Salem", State: "OR", ZIP: "97301"}, fitcheck.Place{City: "Salem", State: "OR", ZIP: "97301"}, true},
		{"a choice replaces", fitcheck.TopicMaterial, fitcheck.Choice("acrylic"), fitcheck.Choice("polycarbonate"), fitcheck.Choice("polycarbonate"), true},
	} {
		got, ok := merged(c.topic, c.before, c.now)
		if !reflect.DeepEqual(got, c.want) || ok != c.ok {
			t.Errorf("%s: %+v %v, want %+v %v", c.what, got, ok, c.want, c.ok)
		}
	}
}

// TestPacked: texts hold whole sentences and stay within two segments.
func TestPacked(t *testing.T) {
	long := ""
	for range 40 {
		long += "The curb is 25 1/2 in. "
	}
	texts := packed([]string{"Got it.", long, "Is that right?"})
	if len(texts) < 3 {
		t.Fatalf("%d texts", len(texts))
	}
	for _, text := range texts {
		if n := runes(text); n > textLimit {
			t.Errorf("%d characters: %s", n, text)
		}
		if end := text[len(text)-1]; end != '.' && end != '?' {
			t.Errorf("cut within a sentence: %s", text)
		}
	}
}
