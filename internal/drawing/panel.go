package drawing

import (
	"cmp"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

const (
	panelHigh = 224.0 // the tallest outline on a picture
	thinnest  = 3.0   // a size that is nothing beside another is still a shape
)

// shape is an outline's place on the page.
type shape struct {
	*outline
	w, h   float64
	dotted bool // not measured: drawn only to carry the diagonals
}

// panel draws outlines to scale about one middle, from above, and their dimension lines:
// widths below, lengths at the right, the shorter ones nearer.
func (m *measured) panel(p *page, y float64, view word, os []outline, d diagonals) float64 {
	p.write("view", inset, y+14, view.in(m.language), lookView)
	shapes := m.shapes(os, d)
	rows, columns := sides(shapes)
	wide := p.w - 2*inset - float64(len(columns))*rowDeep
	scale := 0.0
	if w, h := extentOf(shapes); w > 0 && h > 0 {
		scale = min(wide/w, panelHigh/h)
	}
	for i := range shapes {
		shapes[i].w, shapes[i].h = max(shapes[i].w*scale, thinnest), max(shapes[i].h*scale, thinnest)
	}
	broad, high := extentOf(shapes)
	v := topView{p, inset + wide/2, y + 24 + max(high, m.least(columns))/2}
	v.fill(shapes)
	top, bottom := y+24, v.cy+max(high, m.least(columns))/2
	bottom += 16
	for _, s := range rows {
		bottom += v.across(s, bottom, m.widthOf(s))
	}
	for i, s := range columns {
		v.along(s, v.cx+broad/2+18+float64(i)*rowDeep, m.lengthOf(s), top, bottom)
	}
	if d.letter != "" {
		v.diagonals(m, shapes[0], d)
	}
	return bottom + 4
}

// shapes are the outlines' sizes in inches. Diagonals without a curb outside get one
// that is square, as far as anyone knows.
func (m *measured) shapes(os []outline, d diagonals) []shape {
	ratio := ratioOf(os)
	var shapes []shape
	if d.letter != "" && (len(os) == 0 || os[0].topic != fitcheck.TopicCurbOutside) {
		side := max(d.first, d.second).Inches() * 0.7071
		shapes = append(shapes, shape{&outline{topic: fitcheck.TopicCurbOutside}, side, side, true})
	}
	for i := range os {
		w, l := os[i].span(ratio)
		shapes = append(shapes, shape{&os[i], w, l, false})
	}
	return shapes
}

func extentOf(shapes []shape) (w, h float64) {
	for i := range shapes {
		w, h = max(w, shapes[i].w), max(h, shapes[i].h)
	}
	return w, h
}

// sides are the shapes that have a width to write, and those that have a length.
func sides(shapes []shape) (rows, columns []*shape) {
	for i := range shapes {
		if shapes[i].dotted {
			continue
		}
		rows = append(rows, &shapes[i])
		if !shapes[i].round {
			columns = append(columns, &shapes[i])
		}
	}
	slices.SortStableFunc(rows, func(a, b *shape) int { return cmp.Compare(a.w, b.w) })
	slices.SortStableFunc(columns, func(a, b *shape) int { return cmp.Compare(a.h, b.h) })
	return rows, columns
}

// least is the height that the words of the upright dimension lines need.
func (m *measured) least(columns []*shape) (high float64) {
	for _, s := range columns {
		high = max(high, m.lengthOf(s).width()+10)
	}
	return max(high, 60)
}

func (m *measured) widthOf(s *shape) dimension {
	text := s.letter + "  "
	switch {
	case s.round:
		text += "Ø " + inchesEach(s.across, m.language, inches)
	case s.across == nil:
		text += "?"
	default:
		text += inchesEach(s.across, m.language, inches)
	}
	return dimension{text, m.check(s.doubtful && s.across != nil), s.across != nil}
}

func (m *measured) lengthOf(s *shape) dimension {
	if s.along == nil {
		return dimension{s.letter + "  ?", "", false}
	}
	return dimension{s.letter + "  " + inchesEach(s.along, m.language, inches), m.check(s.doubtful), true}
}
