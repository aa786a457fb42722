package fitcheck

import (
	"encoding/json"
	"testing"
	"time"
)

// fullLine is a unit with every measure and choice, all of which agree.
const fullLine = `{"use":"home","place":{"city":"Duluth","state":"MN","zip":"55802"},"units":[{"count":2,"style":"curb_mount","outline":"rectangle","profile":"dome","frame_condition":"corroded","want":"complete_unit","plastic_size":{"width_in":25.5,"length_in":49.5},"retainer_opening":{"width_in":23.5,"length_in":47.5},"retainer_outside":{"width_in":26.25,"length_in":50.25},"frame_inside":{"width_in":25.875,"length_in":49.875},"curb_outside":{"width_in":25.5,"length_in":49.5},"curb_inside":{"width_in":22.5,"length_in":46.5},"curb_diagonals":{"first_in":55.6875,"second_in":55.6875},"curb_height":{"height_in":6},"bulge_base":{"width_in":23,"length_in":47},"dome_rise":{"height_in":8},"roof_slope":{"rise_in":4,"run_in":12},"layers":2,"material":"acrylic","color":{"outer":"clear","inner":"clear"},"finish":"mill","impact_risk":[]}]}`

// lineStruct is what encoding/json decodes such a line into by itself, with no check of
// names, types or ranges.
type lineStruct struct {
	Use   string       `json:"use"`
	Place Place        `json:"place"`
	Units []unitStruct `json:"units"`
}

type unitStruct struct {
	Count           int          `json:"count"`
	Style           string       `json:"style"`
	Outline         string       `json:"outline"`
	Profile         string       `json:"profile"`
	FrameCondition  string       `json:"frame_condition"`
	Want            string       `json:"want"`
	PlasticSize     sizeStruct   `json:"plastic_size"`
	RetainerOpening sizeStruct   `json:"retainer_opening"`
	RetainerOutside sizeStruct   `json:"retainer_outside"`
	FrameInside     sizeStruct   `json:"frame_inside"`
	CurbOutside     sizeStruct   `json:"curb_outside"`
	CurbInside      sizeStruct   `json:"curb_inside"`
	CurbDiagonals   twoStruct    `json:"curb_diagonals"`
	CurbHeight      heightStruct `json:"curb_height"`
	BulgeBase       sizeStruct   `json:"bulge_base"`
	DomeRise        heightStruct `json:"dome_rise"`
	RoofSlope       slopeStruct  `json:"roof_slope"`
	Layers          int          `json:"layers"`
	Material        string       `json:"material"`
	Color           Color        `json:"color"`
	Finish          string       `json:"finish"`
	ImpactRisk      []string     `json:"impact_risk"`
}

type sizeStruct struct {
	Width  float64 `json:"width_in"`
	Length float64 `json:"length_in"`
}

type twoStruct struct {
	First  float64 `json:"first_in"`
	Second float64 `json:"second_in"`
}

type heightStruct struct {
	Height float64 `json:"height_in"`
}

type slopeStruct struct {
	Rise float64 `json:"rise_in"`
	Run  float64 `json:"run_in"`
}

func fullJob(tb testing.TB) Job {
	job, err := DecodeJob([]byte(fullLine))
	if err != nil {
		tb.Fatal(err)
	}
	return job
}

// The goal is that checking a full unit takes no longer than decoding its line. Both
// are timed in turns, so that a busy machine slows both alike.
func BenchmarkCheckAgainstJSON(b *testing.B) {
	rules, job, line := DefaultRules(), fullJob(b), []byte(fullLine)
	var check, decode time.Duration
	for b.Loop() {
		start := time.Now()
		Check(job, rules)
		middle := time.Now()
		var into lineStruct
		if err := json.Unmarshal(line, &into); err != nil {
			b.Fatal(err)
		}
		check += middle.Sub(start)
		decode += time.Since(middle)
	}
	b.ReportMetric(float64(check)/float64(decode), "ratio")
}

func BenchmarkCheckFullUnit(b *testing.B) {
	rules, job := DefaultRules(), fullJob(b)
	b.ReportAllocs()
	for b.Loop() {
		Check(job, rules)
	}
}

// A unit that takes the whole diagnosis.
func BenchmarkCheckDrywall(b *testing.B) {
	rules, job := DefaultRules(), fullJob(b)
	job.Units[0].CurbInside = Size{Width: 43 * Inch / 2, Length: 91 * Inch / 2}
	b.ReportAllocs()
	for b.Loop() {
		Check(job, rules)
	}
}

func BenchmarkDecodeJob(b *testing.B) {
	line := []byte(fullLine)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := DecodeJob(line); err != nil {
			b.Fatal(err)
		}
	}
}
