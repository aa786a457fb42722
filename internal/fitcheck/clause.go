package fitcheck

import "strconv"

// partName is what a customer would call what a topic measures.
func partName(t Topic) string {
	switch t {
	case TopicPlasticSize:
		return "the plastic"
	case TopicRetainerOpening:
		return "the retaining frame's opening"
	case TopicRetainerOutside:
		return "the retaining frame's outside"
	case TopicFrameInside:
		return "the old frame's inside"
	case TopicCurbOutside:
		return "the curb's outside"
	case TopicCurbInside:
		return "the curb's inside"
	case TopicBulgeBase:
		return "the foot of the bulge"
	case TopicCurbDiagonals:
		return "the diagonals"
	case TopicCurbHeight:
		return "the curb's height"
	case TopicDomeRise:
		return "the rise of the dome"
	}
	return "the sizes"
}

// about names what a guess is about.
func (g *guess) about() string {
	switch {
	case g.spot >= everywhere:
		return "every size"
	case g.spot == diagonals && g.side == bothSides:
		return "the diagonals"
	case g.spot == diagonals:
		return [...]string{"the first diagonal", "the second diagonal"}[g.side]
	case g.side == bothSides:
		return partName(g.spot.topic())
	}
	return [...]string{"the width of ", "the length of "}[g.side] + partName(g.spot.topic())
}

func tape(in float64) string { return FromInches(in).Tape() }

// plainNumber writes a number as it was given, since it may not be inches at all.
func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// unitName is the unit that a scale takes to inches.
func unitName(scale float64) string {
	switch {
	case scale == 12:
		return "feet"
	case scale > 0.1:
		return "centimeters"
	}
	return "millimeters"
}

// clause says in a few words what a guess supposes, to follow "if".
func (g *guess) clause() string {
	switch g.code {
	case DrywallIncluded:
		return "the inside was measured between finished drywall or boards"
	case FlashingIncluded:
		return "the outside was measured low, over the foot of the flashing"
	case DoubledCurb:
		return "the curb's walls are doubled"
	case ThinCurb:
		return "the curb is made of thin boards"
	case FrameMeasuredForCurb:
		return "the old frame was measured and not the curb under it"
	case RetainerMeasuredForPlastic:
		return "the metal frame was measured and not the edge of the plastic"
	case SidesSwapped:
		return "width and length of " + g.about() + " changed places"
	case FeetForInches, MetricForInches:
		if g.kind == asPrefix {
			return g.about() + " is in feet and inches"
		}
		return g.about() + " is in " + unitName(g.scale)
	case CurbWallMismatch, DiagonalsImpossible, ImplausibleSize:
		return g.shapeClause()
	case TapeHookInch:
		return g.about() + " was read an inch off"
	case MisreadFoot:
		return g.about() + " was read a foot off"
	}
	if g.kind == asPrefix {
		return "the figure after the point in " + g.about() + " stands for a fraction"
	}
	return g.about() + " is the name of a size and not a measure"
}
