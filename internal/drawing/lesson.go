package drawing

import "example.com/intake-bot/internal/fitcheck"

// lesson says how one size is measured: half is the half width of the faces that the
// tape touches, level where it lies above the curb's top in the section, and beside how
// far from the middle it lies in the plan (measured as a half width); aside is the same
// for the tape of the other way, where it differs.
type lesson struct {
	focus         piece
	half          float64
	level, beside float64
	aside         float64
	reach         [2]float64 // levels between which the section's face lines run
	lift, open    float64
	lining        bool
	badges        float64 // level of the numbers of the ends; 0: above the face lines
	plan          func(*plan)
	view          word    // over the plan, where it is not seen from above
	wrong         [2]spot // where not to measure: the sign, and the face it points at
}

// spot is a place in the section: distance from the middle, level above the curb's top.
type spot struct{ x, level float64 }

// lifted is how far the frame is taken up where it is seen off its curb.
const lifted = 56.0

// lessons are those with a size of two sides.
var lessons = map[fitcheck.Topic]lesson{
	fitcheck.TopicCurbOutside: {focus: pieceCurb, half: coverHalf, level: flangeLow - 9, beside: coverHalf + 12, badges: deckLow - 11, reach: [2]float64{flangeLow + 4, roofLow + 4},
		plan: (*plan).curb, wrong: [2]spot{{ringHalf + 18, flangeLow + 6}, {flangeOut, flangeLow + 6}}},
	fitcheck.TopicCurbInside: {focus: pieceCurb, half: openHalf, level: -14, beside: 12 + deeper, reach: [2]float64{4, -24}, lining: true,
		plan: (*plan).curb, wrong: [2]spot{{openHalf - 32, -44}, {openHalf - 9, -44}}},
	fitcheck.TopicPlasticSize: {focus: piecePlastic, half: sheetHalf, level: lipHigh + 7.5, beside: sheetHalf - 9, aside: footHalf + 10, reach: [2]float64{2, lipHigh + 20}, open: 58,
		plan: (*plan).sheet},
	fitcheck.TopicRetainerOpening: {focus: pieceRetainer, half: holeHalf, level: ringHigh + 7.5, beside: (holeHalf + ringHalf) / 2, reach: [2]float64{ringHigh - 6, ringHigh + 20},
		plan: (*plan).retainer},
	fitcheck.TopicRetainerOutside: {focus: pieceRetainer, half: ringHalf, level: ringHigh + 7.5, beside: (holeHalf + ringHalf) / 2, reach: [2]float64{ringLow, ringHigh + 20},
		plan: (*plan).retainer},
	fitcheck.TopicFrameInside: {focus: pieceFrame, half: flangeIn, level: lifted - 13, beside: 24 + deeper, reach: [2]float64{lifted - 2, lifted + flangeLow - 8}, badges: lifted + flangeLow - 18, lift: lifted, view: wordBelow,
		plan: (*plan).under},
	fitcheck.TopicBulgeBase: {focus: piecePlastic, half: footHalf, level: ringHigh + 7.5, beside: footHalf + 8, reach: [2]float64{lipHigh, ringHigh + 20},
		plan: (*plan).retainer},
}
