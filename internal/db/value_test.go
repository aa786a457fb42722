package db

import (
	"reflect"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

func TestValuesSurviveTheDatabase(t *testing.T) {
	const inch = fitcheck.Inch
	for _, c := range []struct {
		topic fitcheck.Topic
		value fitcheck.Value
		js    string
	}{
		{fitcheck.TopicName, fitcheck.Text("Ana Muñoz"), `"Ana Muñoz"`},
		{fitcheck.TopicPlace, fitcheck.Place{City: "Duluth", State: "MN", ZIP: "55802"}, `{"city":"Duluth","state":"MN","zip":"55802"}`},
		{fitcheck.TopicPlace, fitcheck.Place{State: "MN"}, `{"state":"MN"}`},
		{fitcheck.TopicUse, fitcheck.Choice("home"), `"home"`},
		{fitcheck.TopicProblem, fitcheck.ChoiceList{"cracked", "leaking"}, `["cracked","leaking"]`},
		{fitcheck.TopicProblem, fitcheck.ChoiceList{}, `[]`},
		{fitcheck.TopicPhotos, fitcheck.Whole(0), `0`},
		{fitcheck.TopicCount, fitcheck.Whole(3), `3`},
		{fitcheck.TopicLayers, fitcheck.Whole(2), `2`},
		{fitcheck.TopicStyle, fitcheck.Choice("curb_mount"), `"curb_mount"`},
		{fitcheck.TopicCurbOutside, fitcheck.Size{Width: 25*inch + inch/2, Length: 49*inch + inch/64, Resolution: inch / 64},
			`{"width_in":25.5,"length_in":49.015625}`},
		{fitcheck.TopicCurbInside, fitcheck.Size{Width: 571 * fitcheck.Millimetre, Length: 1 * fitcheck.Millimetre, Resolution: fitcheck.Millimetre},
			`{"width_in":22.48031496,"length_in":0.03937008}`},
		{fitcheck.TopicPlasticSize, fitcheck.Size{Diameter: 36 * inch}, `{"diameter_in":36}`},
		{fitcheck.TopicFrameInside, fitcheck.Size{One: 26 * inch}, `{"one_in":26}`},
		{fitcheck.TopicRetainerOpening, fitcheck.Size{Sides: []fitcheck.Length{24 * inch, 48 * inch, 24*inch + 1, 48 * inch}},
			`{"sides_in":[24,48,24.00000004,48]}`},
		{fitcheck.TopicCurbDiagonals, fitcheck.Diagonals{First: 56 * inch}, `{"first_in":56}`},
		{fitcheck.TopicCurbHeight, fitcheck.Height{Height: 4 * inch}, `{"height_in":4}`},
		{fitcheck.TopicDomeRise, fitcheck.Height{}, `{"height_in":0}`},
		{fitcheck.TopicRoofSlope, fitcheck.Slope{Rise: 4 * inch, Run: 12 * inch}, `{"rise_in":4,"run_in":12}`},
		{fitcheck.TopicColor, fitcheck.Color{Outer: "clear", Middle: "clear", Inner: "white"}, `{"outer":"clear","middle":"clear","inner":"white"}`},
		{fitcheck.TopicImpactRisk, fitcheck.ChoiceList{"hail"}, `["hail"]`},
		{fitcheck.TopicRoofCovering, fitcheck.Choice("built_up"), `"built_up"`},
		{fitcheck.TopicConfirm, fitcheck.Choice("yes"), `"yes"`},
	} {
		js, resolution, err := encodeValue(c.value)
		if err != nil || string(js) != c.js {
			t.Errorf("%s %v: kept as %s, %v, want %s", c.topic, c.value, js, err, c.js)
			continue
		}
		back, err := decodeValue(c.topic, js, resolution)
		if err != nil || !reflect.DeepEqual(back, c.value) {
			t.Errorf("%s: %#v came back as %#v, %v", c.topic, c.value, back, err)
		}
	}
}

func TestValuesThatCannotBeRead(t *testing.T) {
	for _, c := range []struct {
		topic fitcheck.Topic
		js    string
	}{
		{fitcheck.TopicCurbOutside, `"25 x 49"`},
		{fitcheck.TopicCount, `"two"`},
		{fitcheck.TopicRoofSlope, `[4,12]`},
		{fitcheck.TopicName, `{`},
	} {
		if v, err := decodeValue(c.topic, []byte(c.js), 0); err == nil {
			t.Errorf("%s %s was read as %v, want an error", c.topic, c.js, v)
		}
	}
}
