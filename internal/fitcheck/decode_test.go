package fitcheck

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
)

func TestDecodeValue(t *testing.T) {
	for _, row := range []struct {
		topic Topic
		raw   string
		want  Value
	}{
		{TopicName, `"Ada"`, Text("Ada")},
		{TopicPlace, `{"city":"Duluth","state":"MN","zip":"55802-1234"}`, Place{"Duluth", "MN", "55802"}},
		{TopicPlace, `{"state":"MN","zip":null}`, Place{State: "MN"}},
		{TopicUse, `"rv"`, Choice(UseRV)},
		{TopicProblem, `[]`, ChoiceList{}},
		{TopicProblem, `["cracked","leaking","cracked"]`, ChoiceList{ProblemCracked, ProblemLeaking}},
		{TopicRoofCovering, `"standing_seam"`, Choice(CoveringStandingSeam)},
		{TopicImpactRisk, `["hail"]`, ChoiceList{RiskHail}},
		{TopicCount, `3`, Whole(3)},
		{TopicCount, `3.0`, Whole(3)},
		{TopicPhotos, `0`, Whole(0)},
		{TopicLayers, `2`, Whole(2)},
		{TopicStyle, `"curb_mount"`, Choice(StyleCurbMount)},
		{TopicCurbOutside, `{"width_in":25.5,"length_in":49.5}`, rect(25.5, 49.5)},
		{TopicCurbOutside, ` {"length_in":4.975e1} `, Size{Length: FromInches(49.75)}},
		{TopicPlasticSize, `{"diameter_in":48}`, round(48)},
		{TopicPlasticSize, `{"one_in":48}`, Size{One: 48 * Inch}},
		{TopicCurbInside, `{"sides_in":[22.5,46.5,22.5,46.625]}`, Size{Sides: []Length{FromInches(22.5), FromInches(46.5), FromInches(22.5), FromInches(46.625)}}},
		{TopicCurbDiagonals, `{"first_in":68,"second_in":67.75}`, diagonalsOf(68, 67.75)},
		{TopicCurbDiagonals, `{"first_in":68}`, Diagonals{First: 68 * Inch}},
		{TopicCurbHeight, `{"height_in":6}`, high(6)},
		{TopicDomeRise, `{"height_in":0}`, high(0)},
		{TopicRoofSlope, `{"rise_in":0,"run_in":12}`, Slope{0, 12 * Inch}},
		{TopicColor, `{"outer":"bronze","inner":"clear"}`, Color{Outer: ColorBronze, Inner: ColorClear}},
		{TopicConfirm, `"yes"`, Choice(ConfirmYes)},
	} {
		got, err := DecodeValue(row.topic, []byte(row.raw))
		if err != nil || !reflect.DeepEqual(got, row.want) {
			t.Errorf("%s %s: %#v, %v; want %#v", row.topic, row.raw, got, err, row.want)
		}
	}
}

// Every error names the field, and the values that it may have.
func TestDecodeErrors(t *testing.T) {
	unit := func(s string) string { return `{"units":[{` + s + `}]}` }
	for _, row := range []struct {
		line string
		want []string // parts of the error
	}{
		{`{"units":[{"curb_outside":{"width_in":NaN}}]}`, []string{"width_in", "not valid JSON"}},
		{unit(`"curb_outside":{"width_in":-1}`), []string{"units[0].curb_outside.width_in", "above zero"}},
		{unit(`"curb_outside":{"width_in":0}`), []string{"units[0].curb_outside.width_in", "above zero"}},
		{unit(`"curb_outside":{"width_in":1e-12}`), []string{"width_in", "above zero"}},
		{unit(`"curb_outside":{"width_in":1e999}`), []string{"width_in", "too large"}},
		{unit(`"curb_outside":{"width_in":1e7}`), []string{"width_in", "too large"}},
		{unit(`"curb_outside":{"width_in":"25"}`), []string{"width_in", "number"}},
		{unit(`"curb_outside":{"width_in":true}`), []string{"width_in", "number"}},
		{unit(`"curb_outside":{"width_in":[1]}`), []string{"width_in", "number"}},
		{unit(`"curb_outside":25`), []string{"units[0].curb_outside", "object"}},
		{unit(`"curb_outside":{"width":25}`), []string{"curb_outside.width", "unknown", "width_in"}},
		{unit(`"curb_outside":{"Width_In":25}`), []string{"Width_In", "unknown"}},
		{unit(`"curb_outside":{"width_in":25,"width_in":26}`), []string{"width_in", "twice"}},
		{unit(`"curb_outside":{"width_in":25,"diameter_in":26}`), []string{"curb_outside", "diameter_in"}},
		{unit(`"curb_outside":{"sides_in":[1,2,3]}`), []string{"sides_in", "four"}},
		{unit(`"curb_outside":{"sides_in":[1,2,3,-4]}`), []string{"sides_in[3]", "above zero"}},
		{unit(`"curb_height":{"height_in":0}`), []string{"curb_height.height_in", "above zero"}},
		{unit(`"dome_rise":{"height_in":-1}`), []string{"dome_rise.height_in", "below zero"}},
		{unit(`"roof_slope":{"rise_in":4}`), []string{"roof_slope.run_in", "missing"}},
		{unit(`"roof_slope":{"rise_in":4,"run_in":0}`), []string{"roof_slope.run_in", "above zero"}},
		{unit(`"layers":4`), []string{"layers", "1 to 3"}},
		{unit(`"layers":1.5`), []string{"layers", "whole"}},
		{unit(`"layers":"2"`), []string{"layers", "number"}},
		{unit(`"count":0`), []string{"count", "from 1"}},
		{unit(`"photos":-1`), []string{"photos", "from 0"}},
		{unit(`"style":"velvet"`), []string{"style", "curb_mount", "unsure"}},
		{unit(`"style":5`), []string{"style", "curb_mount"}},
		{unit(`"color":{"inner":"clear"}`), []string{"color.outer", "missing"}},
		{unit(`"color":{"outer":"pink"}`), []string{"color.outer", "bronze"}},
		{unit(`"impact_risk":["hail","ufo"]`), []string{"impact_risk[1]", "golf"}},
		{unit(`"impact_risk":"hail"`), []string{"impact_risk", "list"}},
		{unit(`"shade":1`), []string{"units[0].shade", "unknown"}},
		{unit(`"shade":null`), []string{"units[0].shade", "unknown"}},
		{unit(`"use":"home"`), []string{"units[0].use", "beside"}},
		{`{"use":"castle","units":[]}`, []string{"use", "manufactured_home"}},
		{`{"place":{"state":"Minnesota"},"units":[]}`, []string{"place.state", "two-letter"}},
		{`{"place":{"zip":"5580"},"units":[]}`, []string{"place.zip", "five digits"}},
		{`{"place":{"county":"X"},"units":[]}`, []string{"place.county", "unknown"}},
		{`{"resolution_in":0,"units":[]}`, []string{"resolution_in", "above zero"}},
		{`{"resolution_in":13,"units":[]}`, []string{"resolution_in", "too large"}},
		{`{"units":{}}`, []string{"units", "list"}},
		{`{"units":[5]}`, []string{"units[0]", "object"}},
		{`{"units":null}`, []string{"units", "missing"}},
		{`{"unit":[]}`, []string{"unit", "unknown"}},
		{`[]`, []string{"object"}},
		{`{"units":[]} {}`, []string{"not valid JSON"}},
		{`{"units":[`, []string{"not valid JSON"}},
	} {
		_, err := DecodeJob([]byte(row.line))
		if err == nil {
			t.Errorf("%s: no error", row.line)
			continue
		}
		for _, part := range row.want {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: %q, want %q in it", row.line, err, part)
			}
		}
	}
}

func TestNullIsMissing(t *testing.T) {
	job, err := DecodeJob([]byte(`{"use":null,"place":null,"resolution_in":null,"units":[{"style":null,"count":null,"curb_outside":{"width_in":null,"length_in":49.5},
		"curb_inside":null,"curb_diagonals":{"first_in":null},"dome_rise":{"height_in":null},"roof_slope":null,"color":null,"photos":null,"problem":null}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want := Job{Units: []Unit{{CurbOutside: Size{Length: FromInches(49.5)}}}}
	if !reflect.DeepEqual(job, want) {
		t.Errorf("%+v", job)
	}
}

// What is written is read back as it was, to the nanometre.
func TestTopicsRoundTrip(t *testing.T) {
	job := fullJob(t)
	raw, err := json.Marshal(job.Units[0])
	if err != nil {
		t.Fatal(err)
	}
	back, err := DecodeJob([]byte(`{"units":[` + string(raw) + `]}`))
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(back.Units[0], job.Units[0]) {
		t.Errorf("%s came back as %+v", raw, back.Units[0])
	}
	if !strings.HasPrefix(string(raw), `{"count":2,"style":"curb_mount","outline":"rectangle"`) || !strings.HasSuffix(string(raw), `"impact_risk":[]}`) {
		t.Errorf("order of topics: %s", raw)
	}
	if raw, err := json.Marshal(Unit{}); err != nil || string(raw) != "{}" {
		t.Errorf("nothing known: %s, %v", raw, err)
	}
}
