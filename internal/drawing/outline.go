package drawing

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// outline is one size of a customer's, ready to be drawn.
type outline struct {
	topic  fitcheck.Topic
	letter string
	round  bool
	lone   bool // one number, and it is not known which side it is of
	// Readings of the width (or the diameter) and of the length; none where not known.
	across, along []fitcheck.Length
	doubtful      bool
}

// The sizes of the curb, and those of what lies on it, are drawn apart: over each other
// nobody could read them.
var (
	boxTopics  = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicFrameInside}
	domeTopics = []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside, fitcheck.TopicBulgeBase}
)

// outlines are the sizes of some topics that are known, with their letters.
func outlines(u *fitcheck.Unit, doubt []fitcheck.Topic, topics []fitcheck.Topic, letters *lettering) (os []outline) {
	for _, t := range topics {
		o := outlineOf(u, t)
		if o.across == nil && o.along == nil {
			continue
		}
		o.letter, o.doubtful = letters.next(), slices.Contains(doubt, t)
		os = append(os, o)
	}
	return os
}

// outlineOf reads a size as the check does: on a round unit a lone number or two numbers
// are readings of a diameter; four sides are two readings of each.
func outlineOf(u *fitcheck.Unit, t fitcheck.Topic) outline {
	s, o := *u.SizeOf(t), outline{topic: t}
	around := roundAt(u, t)
	switch {
	case s.Diameter > 0:
		o.round, o.across = true, readings(s.Diameter)
	case around && s.One > 0:
		o.round, o.across = true, readings(s.One)
	case len(s.Sides) == 4:
		o.across, o.along = pairs(s.Sides)
	case around:
		o.round, o.across = true, readings(s.Width, s.Length)
	case s.Width == 0 && s.Length == 0 && len(s.Sides) > 0:
		o.lone, o.across = true, readings(s.Sides...)
	case s.Width == 0 && s.Length == 0:
		o.lone, o.across = true, readings(s.One)
	default:
		o.across, o.along = readings(s.Width), readings(s.Length)
	}
	return o
}

// roundAt says whether a size of the unit is of a round thing where it does not say so
// itself: the dome of a round unit, and its curb unless another size is a diameter.
func roundAt(u *fitcheck.Unit, t fitcheck.Topic) bool {
	if u.Outline != fitcheck.OutlineRound {
		return false
	}
	anyDiameter := slices.ContainsFunc(fitcheck.SizeTopics, func(t fitcheck.Topic) bool { return u.SizeOf(t).Diameter > 0 })
	return slices.Contains(domeTopics, t) || !anyDiameter
}

// readings drops what is not known and what is the same.
func readings(ls ...fitcheck.Length) (known []fitcheck.Length) {
	for _, l := range ls {
		if l > 0 && !slices.Contains(known, l) {
			known = append(known, l)
		}
	}
	return known
}

// pairs sorts four sides into the readings of the width and of the length, whether they
// were given around the curb or pair by pair.
func pairs(s []fitcheck.Length) (across, along []fitcheck.Length) {
	apart := func(a, b fitcheck.Length) fitcheck.Length { return max(a-b, b-a) }
	a, b := readings(s[0], s[2]), readings(s[1], s[3])
	if apart(s[0], s[1])+apart(s[2], s[3]) < apart(s[0], s[2])+apart(s[1], s[3]) {
		a, b = readings(s[0], s[1]), readings(s[2], s[3])
	}
	if len(a) > 0 && len(b) > 0 && slices.Max(a) > slices.Max(b) {
		a, b = b, a
	}
	return a, b
}

func largest(ls []fitcheck.Length) float64 {
	if len(ls) == 0 {
		return 0
	}
	return slices.Max(ls).Inches()
}

// span is the outline's width and length for drawing, in inches. A side that is not
// known is taken from the ratio, length over width.
func (o *outline) span(ratio float64) (w, l float64) {
	w, l = largest(o.across), largest(o.along)
	switch {
	case o.round:
		return w, w
	case l == 0:
		l = w * ratio
	case w == 0:
		w = l / ratio
	}
	return w, l
}

// ratioOf is length over width of the first outline that has both; else somewhat more
// than one, so that a side that is guessed looks like no square.
func ratioOf(os []outline) float64 {
	for i := range os {
		if w, l := largest(os[i].across), largest(os[i].along); w > 0 && l > 0 {
			return l / w
		}
	}
	return 1.25
}

// whole says whether all of the outline was measured.
func (o *outline) whole() bool { return o.round || o.across != nil && o.along != nil }
