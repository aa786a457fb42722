package fitcheck

import (
	"fmt"
	"math"
)

// part is what is ordered, by the size that it is ordered in: the plastic of a dome, the
// inside of the frame of a unit. A round one has long and short alike.
type part struct {
	kind        Replace
	long, short Length
	round       bool
}

// choice is what the plastic is made of.
type choice struct {
	layers   int
	material string
}

// orderedParts are the smallest and the largest part that the order may turn out to be:
// the same one where its size is firm.
func orderedParts(r *UnitResult) (small, large part, ok bool) {
	o := r.Order
	if o == nil {
		return part{}, part{}, false
	}
	kind, size := r.Replace, o.High
	switch {
	case o.FrameInside != nil:
		kind, size = ReplaceUnit, o.FrameInside
	case o.PlasticSize != nil:
		kind, size = ReplaceDome, o.PlasticSize
	}
	if kind != ReplaceUnit && kind != ReplaceDome || size == nil || !size.Complete() {
		return part{}, part{}, false
	}
	small, large = partOf(kind, size), partOf(kind, size)
	if o.Estimated && o.Low != nil && o.High != nil && o.Low.Complete() && o.High.Complete() {
		small, large = partOf(kind, o.Low), partOf(kind, o.High)
	}
	return small, large, large.long > 0
}

func partOf(kind Replace, s *Size) part {
	if s.Diameter > 0 {
		return part{kind, s.Diameter, s.Diameter, true}
	}
	w, l := s.Width, s.Length
	if len(s.Sides) == 4 {
		w, l = max(s.Sides[0], s.Sides[2]), max(s.Sides[1], s.Sides[3])
	}
	return part{kind, max(w, l), min(w, l), false}
}

// outside is the outline that has to go into the carton.
func (p part) outside(pk *Packing) part {
	if p.kind == ReplaceUnit {
		p.long, p.short = p.long+pk.FrameWall, p.short+pk.FrameWall
	}
	return p
}

// weightLb is the part's own weight: forming doesn't change the mass of a flat blank, so
// it is area times thickness times density for each layer, and the frame by its length.
func (p part) weightLb(c choice, rules *ShipRules) float64 {
	out := p.outside(&rules.Packing)
	area, girth := out.areaIn2(), out.girthIn()
	lb := area * rules.Sheets.thickness(out.long).Inches() * rules.Sheets.LbPerCubicIn[c.material] * float64(c.layers)
	if p.kind == ReplaceUnit {
		lb += girth / 12 * rules.Sheets.FrameLbPerFt
	}
	return lb
}

func (p part) areaIn2() float64 {
	if p.round {
		return math.Pi / 4 * p.long.Inches() * p.long.Inches()
	}
	return p.long.Inches() * p.short.Inches()
}

func (p part) girthIn() float64 {
	if p.round {
		return math.Pi * p.long.Inches()
	}
	return 2 * (p.long + p.short).Inches()
}

func (s *Sheets) thickness(longer Length) Length {
	var t Length
	for _, row := range s.Thickness {
		if t = row.Thickness; longer <= row.UpTo {
			break
		}
	}
	return t
}

// riseOf is the height of the bulge: as measured, none for a flat sheet, otherwise a
// quarter of the shorter side (rises of 0.12 to 0.30 of the width are common practice,
// no source) and at least what IBC 2021 §2610.3 wants, 3 in and a tenth of the longer side.
func riseOf(p part, u *Unit) Length {
	switch {
	case u.DomeRise != nil:
		return u.DomeRise.Height
	case u.Profile == ProfileFlat:
		return 0
	}
	return max(p.short/4, p.long/10, 3*Inch)
}

// heaviestChoice is the plastic as chosen and, for what is still open, the heaviest that
// the shop sells; open says so in words.
func heaviestChoice(u *Unit, rules *Rules) (c choice, open string) {
	c = choice{u.Layers, u.Material}
	if c.layers == 0 {
		for _, n := range soldLayers(rules) {
			c.layers = max(c.layers, n)
		}
		open = fmt.Sprintf("Layers are not chosen: reckoned with %d, the heaviest.", c.layers)
	}
	density := rules.Ship.Sheets.LbPerCubicIn
	if _, known := density[c.material]; known {
		return c, open
	}
	for _, m := range soldMaterials(rules) {
		if c.material == "" || density[m] > density[c.material] {
			c.material = m
		}
	}
	return c, open
}

func soldLayers(rules *Rules) []int {
	if len(rules.Sells.Layers) == 0 {
		return []int{1, 2, 3}
	}
	return rules.Sells.Layers
}

func soldMaterials(rules *Rules) []string {
	if len(rules.Sells.Materials) == 0 {
		return choices[TopicMaterial]
	}
	return rules.Sells.Materials
}
