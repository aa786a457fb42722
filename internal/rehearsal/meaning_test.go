package rehearsal

import (
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

func in(n float64) fitcheck.Length { return fitcheck.FromInches(n) }

func TestAgrees(t *testing.T) {
	size := func(w, l float64) fitcheck.Size { return fitcheck.Size{Width: in(w), Length: in(l)} }
	place := func(city, state, zip string) fitcheck.Place {
		return fitcheck.Place{City: city, State: state, ZIP: zip}
	}
	for _, row := range []struct {
		name string
		m    meaning
		got  fitcheck.Value
		want bool
	}{
		{"same size", meaning{value: size(25.5, 49.5)}, size(25.5, 49.5), true},
		{"turned", meaning{value: size(25.5, 49.5)}, size(49.5, 25.5), true},
		{"turned, though the sides were named", meaning{value: size(49.5, 25.5), named: true}, size(25.5, 49.5), false},
		{"a sixteenth off", meaning{value: size(25.5, 49.5)}, size(25.5625, 49.5), false},
		{"one side of it", meaning{value: size(25.5, 49.5)}, fitcheck.Size{One: in(49.5)}, true},
		{"no side of it", meaning{value: size(25.5, 49.5)}, fitcheck.Size{One: in(24)}, false},
		{"round", meaning{value: fitcheck.Size{Diameter: in(36)}}, fitcheck.Size{Diameter: in(36)}, true},
		{"square for round", meaning{value: fitcheck.Size{Diameter: in(36)}}, size(36, 36), false},
		{"round for square", meaning{value: size(36, 36)}, fitcheck.Size{Diameter: in(36)}, false},
		{"either unit", meaning{value: size(65, 125), other: size(25.59, 49.21)}, size(65, 125), true},
		{"ZIP for all", meaning{value: place("Duluth", "MN", "55806")}, place("Duluth", "MN", ""), true},
		{"wrong state", meaning{value: place("Springfield", "IL", "")}, place("Springfield", "MO", ""), false},
		{"a state that nobody said", meaning{value: place("Springfield", "", "")}, place("Springfield", "MO", ""), false},
		{"name", meaning{value: fitcheck.Text("Lucía del Valle")}, fitcheck.Text("lucia del valle"), true},
		{"first name", meaning{value: fitcheck.Text("Walt Long")}, fitcheck.Text("Walt"), true},
		{"surname alone", meaning{value: fitcheck.Text("Dale White")}, fitcheck.Text("White"), false},
		{"name and more", meaning{value: fitcheck.Text("Walt Long")}, fitcheck.Text("Walt Long Zip"), false},
		{"problem left out", meaning{value: fitcheck.ChoiceList{"cracked", "leaking"}}, fitcheck.ChoiceList{"leaking"}, true},
		{"problem added", meaning{value: fitcheck.ChoiceList{"leaking"}}, fitcheck.ChoiceList{"leaking", "storm"}, false},
		{"nothing wrong for a leak", meaning{value: fitcheck.ChoiceList{"leaking"}}, fitcheck.ChoiceList{}, false},
		{"inner color left out", meaning{value: fitcheck.Color{Outer: "white", Inner: "clear"}}, fitcheck.Color{Outer: "white"}, true},
		{"inner color made up", meaning{value: fitcheck.Color{Outer: "white"}}, fitcheck.Color{Outer: "white", Inner: "white"}, false},
		{"choice", meaning{value: fitcheck.Choice("glass")}, fitcheck.Choice("tubular"), false},
		{"any", meaning{any: true}, fitcheck.Choice("tubular"), true},
	} {
		if got := row.m.agrees(row.got); got != row.want {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
	}
}

func TestNumber(t *testing.T) {
	for _, row := range []struct {
		h    habit
		l    fitcheck.Length
		want string
	}{
		{habit{measure: inInches, spelling: spaced}, in(25.5), "25 1/2"},
		{habit{measure: inInches, spelling: spaced}, in(25), "25"},
		{habit{measure: inInches, spelling: dashed, unitWord: "\""}, in(25.0625), "25-1/16\""},
		{habit{measure: inInches, spelling: decimal, unitWord: " in"}, in(25.375), "25.375 in"},
		{habit{measure: inInches, spelling: glyph}, in(25.125), "25⅛"},
		{habit{measure: inInches, spelling: ths}, in(25.625), "25 5/8ths"},
		{habit{measure: inInches, spelling: spelled}, in(47.75), "forty seven and three quarters"},
		{habit{measure: inInches, spelling: feetFirst, unitWord: "\""}, in(25.5), "2' 1 1/2\""},
		{habit{measure: inInches, spelling: feetFirst}, in(22.5), "22 1/2"},
		{habit{measure: inInches, spelling: feetWords, unitWord: " in"}, in(36), "3 ft"},
		{habit{measure: centimetres, spelling: decimal, unitWord: " cm"}, 648 * fitcheck.Millimetre, "64.8 cm"},
		{habit{measure: centimetres, spelling: decimal, language: "es"}, 648 * fitcheck.Millimetre, "64,8"},
		{habit{measure: millimetres, spelling: decimal, unitWord: "mm"}, 648 * fitcheck.Millimetre, "648mm"},
		{habit{measure: feet, spelling: decimal}, in(25.5), "2.1"},
	} {
		if got := row.h.withUnit(row.l); got != row.want {
			t.Errorf("%v: %q, want %q", row.l.Inches(), got, row.want)
		}
	}
}
