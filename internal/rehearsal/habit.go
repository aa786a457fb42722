package rehearsal

import "example.com/intake-bot/internal/fitcheck"

// measure is a unit that people measure in.
type measure string

const (
	inInches    measure = "in"
	feet        measure = "ft"
	centimetres measure = "cm"
	millimetres measure = "mm"
)

// spelling is how somebody writes the fraction of an inch.
type spelling string

const (
	spaced    spelling = "25 1/2"
	dashed    spelling = "25-1/2"
	decimal   spelling = "25.5"
	glyph     spelling = "25½"
	ths       spelling = "25 5/8ths"
	andWord   spelling = "25 and 1/2"
	spelled   spelling = "twenty five and a half"
	feetFirst spelling = "2' 1 1/2\""
	feetWords spelling = "2 ft 1 1/2 in"
)

// habit is how somebody writes.
type habit struct {
	language string // "en" or "es"
	measure  measure
	spelling spelling
	mark     func(fitcheck.Length) fitcheck.Length // the nearest mark of their tape
	unitWord string                                // after a number: `"`, " in", or nothing
	onBoth   bool                                  // after each number, not only the last
	lower    bool
	upper    bool
	bare     bool    // no full stops, no commas
	typos    float64 // share of long words with a slip
	dictated bool    // by voice: numbers in words, homophones
	label    float64 // share of sizes said with what they measure though it was asked
}

func drawHabit(d dice, m manner) *habit {
	h := &habit{language: "en", measure: inInches, label: 0.25}
	if d.chance(0.1) {
		h.language = "es"
	}
	h.drawMeasure(d)
	h.lower = d.chance(0.45)
	h.upper = !h.lower && d.chance(0.03)
	h.bare = h.lower && d.chance(0.5)
	h.dictated = h.language == "en" && h.measure == inInches && d.chance(0.06)
	switch {
	case h.dictated:
		h.spelling, h.unitWord, h.lower, h.bare = spelled, pick(d, "", " inches"), true, true
	case m == hurried && d.chance(0.5):
		h.lower, h.bare, h.typos = true, true, 0.06
	case d.chance(0.2):
		h.typos = 0.05
	}
	return h
}

func (h *habit) drawMeasure(d dice) {
	if d.chance(0.06) || h.language == "es" && d.chance(0.35) {
		h.measure = pick(d, centimetres, millimetres)
		h.spelling, h.onBoth = decimal, d.chance(0.5)
		h.unitWord = pick(d, " ", "") + string(h.measure)
		h.mark = nearest(pick(d, fitcheck.Millimetre, 5*fitcheck.Millimetre))
		return
	}
	h.spelling = draw(d, []weighted[spelling]{{40, spaced}, {12, dashed}, {20, decimal}, {5, glyph}, {4, ths}, {4, andWord}, {4, spelled},
		{6, feetFirst}, {5, feetWords}})
	if h.language == "es" && h.spelling != decimal {
		h.spelling = spaced
	}
	h.unitWord = draw(d, []weighted[string]{{45, ""}, {22, "\""}, {10, " inches"}, {8, " in"}, {4, "”"}, {4, "''"}, {4, "in"}, {3, " in."}})
	if h.language == "es" && h.unitWord != "" {
		h.unitWord = pick(d, " pulgadas", "\"", " pulg")
	}
	h.onBoth = d.chance(0.6)
	h.mark = nearest(draw(d, []weighted[fitcheck.Length]{{45, fitcheck.Sixteenth}, {35, fitcheck.Inch / 8}, {15, fitcheck.Inch / 4}, {5, fitcheck.Inch / 2}}))
	switch h.spelling {
	case decimal, glyph, spelled, andWord, ths:
		h.mark = nearest(pick(d, fitcheck.Inch/8, fitcheck.Inch/4))
	}
}

func nearest(step fitcheck.Length) func(fitcheck.Length) fitcheck.Length {
	return func(l fitcheck.Length) fitcheck.Length { return (l + step/2) / step * step }
}
