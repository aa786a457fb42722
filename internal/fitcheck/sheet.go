package fitcheck

import (
	"math"
	"slices"
)

// place in a sheet: the size topics, in the order of SizeTopics.
type spot int8

const (
	plastic spot = iota
	retainerIn
	retainerOut
	frame
	outside
	inside
	bulge
	spots
)

func (s spot) topic() Topic { return SizeTopics[s] }

// sheet is the estimator's scratch sheet: every reading of one unit with its standard
// uncertainty, in inches. Side 0 is the width or the diameter, side 1 the length.
// A side that is not known is 0.
type sheet struct {
	exact [spots][2]Length // as read, the largest of repeated readings
	v     [spots][2]float64
	u     [spots][2]float64
	round [spots]bool
	twist [spots]Length // how far repeated readings of a side lie apart
	diag  [2]Length
	// inferred says that how finely a size was read is taken from its number alone.
	inferred [spots]bool
	d        [2]float64
	du       [2]float64
	along    float64 // how much longer the roof is along its slope than level; 0 where not known
}

func readSheet(u *Unit, job *Job, rules *Rules) sheet {
	var sh sheet
	around := u.Outline == OutlineRound && !anyDiameter(u)
	for s := spot(0); s < spots; s++ {
		sh.take(s, u.SizeOf(s.topic()), around || u.Outline == OutlineRound && s.ofDome(), job.Resolution, rules)
	}
	if u.RoofSlope != nil {
		sh.along = math.Hypot(1, float64(u.RoofSlope.Rise)/float64(u.RoofSlope.Run))
	}
	sh.diag = [2]Length{u.CurbDiagonals.First, u.CurbDiagonals.Second}
	for i, d := range sh.diag {
		if d > 0 {
			sh.d[i], sh.du[i] = d.Inches(), rules.Measure.uncertainty(d, job.Resolution)
		}
	}
	return sh
}

// anyDiameter says whether one size at least was given as a diameter: two sides of another
// are then sides, as of a round dome on a square curb.
func anyDiameter(u *Unit) bool {
	for _, t := range SizeTopics {
		if u.SizeOf(t).Diameter > 0 {
			return true
		}
	}
	return false
}

// ofDome says whether the size is one of the plastic and its retaining frame.
func (s spot) ofDome() bool {
	return s == plastic || s == retainerIn || s == retainerOut || s == bulge
}

func (sh *sheet) take(s spot, size *Size, roundOutline bool, resolution Length, rules *Rules) {
	if !size.Known() {
		return
	}
	if size.Resolution > 0 {
		resolution = size.Resolution
	}
	sh.inferred[s] = resolution <= 0
	w, l := size.Width, size.Length
	switch {
	case size.Diameter > 0:
		w, l, sh.round[s] = size.Diameter, 0, true
	case size.One > 0 && roundOutline: // a lone number of a round thing is its diameter
		w, l, sh.round[s] = size.One, 0, true
	case len(size.Sides) == 4 && roundOutline: // several readings of one diameter
		w, l, sh.round[s], sh.twist[s] = slices.Max(size.Sides), 0, true, slices.Max(size.Sides)-slices.Min(size.Sides)
	case len(size.Sides) == 4:
		w, l, sh.twist[s] = pairSides(size.Sides)
	case roundOutline && w > 0 && l > 0: // two readings of one diameter
		w, l, sh.round[s], sh.twist[s] = max(w, l), 0, true, max(w, l)-min(w, l)
	}
	sh.exact[s] = [2]Length{w, l}
	for i, x := range sh.exact[s] {
		if x > 0 {
			sh.v[s][i], sh.u[s][i] = x.Inches(), rules.Measure.uncertainty(x, resolution)
		}
		if x > 0 && sh.twist[s] > squareAsk { // readings that contradict each other prove little
			sh.u[s][i] = math.Hypot(sh.u[s][i], sh.twist[s].Inches()/math.Sqrt(3))
		}
	}
}

// pairSides makes a width and a length of four sides: opposite ones are alike, whether
// they were given around the curb or pair by pair; of each pair the larger counts.
func pairSides(s []Length) (w, l, twist Length) {
	apart := func(a, b Length) Length { return max(a, b) - min(a, b) }
	a, b, c, d := s[0], s[2], s[1], s[3]
	if apart(s[0], s[1])+apart(s[2], s[3]) < apart(a, b)+apart(c, d) {
		a, b, c, d = s[0], s[1], s[2], s[3]
	}
	w, l = max(a, b), max(c, d)
	return min(w, l), max(w, l), max(apart(a, b), apart(c, d))
}

// complete says whether all that the outline needs was read.
func (sh *sheet) complete(s spot) bool {
	return sh.exact[s][0] > 0 && (sh.round[s] || sh.exact[s][1] > 0)
}

func (sh *sheet) any(s spot) bool { return sh.exact[s][0] > 0 || sh.exact[s][1] > 0 }

// both says whether a side was read on two things of the same outline.
func (sh *sheet) both(a, b spot, side int) bool {
	return sh.exact[a][side] > 0 && sh.exact[b][side] > 0 && sh.round[a] == sh.round[b]
}

// MeasureRules say how well people measure.
type MeasureRules struct {
	// Hand is the half width within which 95 in 100 readings of a lay hand on a roof
	// lie, hook, sag and rough edges counted in: 1/8 in (common practice, no source).
	Hand Length
}

// uncertainty is the standard uncertainty of one reading in inches: the hand's, and
// that of reading to a mark, which is rectangular (JCGM 100:2008, 4.3.7).
func (m MeasureRules) uncertainty(x, resolution Length) float64 {
	if resolution <= 0 {
		resolution = inferResolution(x)
	}
	hand, mark := m.Hand.Inches()/2, resolution.Inches()/math.Sqrt(12)
	return math.Sqrt(hand*hand + mark*mark)
}

// inferResolution takes from the number itself how finely the tape was read: no
// coarser than the sixteenth that tapes are marked in, since 25 1/2 is what a curb
// that is 25 8/16 is called.
func inferResolution(x Length) Length {
	switch {
	case x%Sixteenth == 0:
		return Sixteenth
	case x%(Inch/32) == 0:
		return Inch / 32
	case x%Sixtyfourth == 0:
		return Sixtyfourth
	case x%Millimetre == 0:
		return Millimetre
	case x%(Inch/10) == 0:
		// "48.3" is no tape fraction: 48 3/16, 48 1/4 or 48 3/8 may be meant.
		return Inch / 4
	}
	return Sixteenth
}
