package drawing

import (
	"cmp"
	"slices"

	"github.com/tdewolff/canvas"

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
	v := view2{p, inset + wide/2, y + 24 + max(high, m.least(columns))/2}
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

// outlinePens paint each size as the part that it is of.
func outlinePen(t fitcheck.Topic) pen {
	switch t {
	case fitcheck.TopicCurbOutside:
		return pen{fill: wood, line: woodLine, width: 1.6}
	case fitcheck.TopicCurbInside:
		return pen{fill: ground, line: woodLine, width: 1.6}
	case fitcheck.TopicFrameInside:
		return pen{line: metalInk, width: 1.8}
	case fitcheck.TopicPlasticSize:
		return pen{fill: plastic, line: pane, width: 1.8}
	case fitcheck.TopicRetainerOutside:
		return pen{fill: steel, line: metalInk, width: 1.6}
	case fitcheck.TopicRetainerOpening:
		return pen{fill: paled(plastic, 0.4), line: metalInk, width: 1.6}
	}
	return pen{fill: paled(plastic, 0.75), line: pane, width: 1.4}
}

// view2 is a plan about a middle.
type view2 struct {
	p      *page
	cx, cy float64
}

// fill paints the shapes, the largest first, then all their outlines over them.
func (v view2) fill(shapes []shape) {
	bySize := make([]*shape, 0, len(shapes))
	for i := range shapes {
		bySize = append(bySize, &shapes[i])
	}
	slices.SortStableFunc(bySize, func(a, b *shape) int { return cmp.Compare(b.w*b.h, a.w*a.h) })
	for _, s := range bySize {
		if c := outlinePen(s.topic).fill; !s.dotted && c.A > 0 {
			v.p.draw("fill", v.path(s), pen{fill: c})
		}
	}
	for _, s := range bySize {
		o := outlinePen(s.topic)
		o.fill.A = 0
		if !s.whole() {
			o.dashes = []float64{4, 3}
		}
		if s.doubtful {
			o.width, o.line = 3.2, red
			o.dashes = []float64{2.2, 1.6}
		}
		v.p.draw(string(s.topic), v.path(s), o)
	}
}

func (v view2) path(s *shape) *canvas.Path {
	if s.round {
		return circle(v.cx, v.cy, s.w/2)
	}
	return rect(v.cx-s.w/2, v.cy-s.h/2, v.cx+s.w/2, v.cy+s.h/2)
}

// across draws the dimension line of a width below the shapes, and returns how deep it is.
func (v view2) across(s *shape, y float64, d dimension) float64 {
	from := v.cy + s.h/2
	if s.round {
		from = v.cy
	}
	for _, x := range [...]float64{v.cx - s.w/2, v.cx + s.w/2} {
		v.p.draw("witness", line(x, from+2, x, y+5), pen{line: faint, width: 0.7})
	}
	return v.p.level(v.cx-s.w/2, v.cx+s.w/2, y, d)
}

// along draws the dimension line of a length at the right of the shapes.
func (v view2) along(s *shape, x float64, d dimension, top, bottom float64) {
	for _, y := range [...]float64{v.cy - s.h/2, v.cy + s.h/2} {
		v.p.draw("witness", line(v.cx+s.w/2+2, y, x+5, y), pen{line: faint, width: 0.7})
	}
	v.p.upright(x, v.cy-s.h/2, v.cy+s.h/2, d, top, bottom)
}

// diagonals draws the diagonals of the curb's outside with their numbers.
func (v view2) diagonals(m *measured, s shape, d diagonals) {
	x, y := s.w/2, s.h/2
	for i, l := range [...]fitcheck.Length{d.first, d.second} {
		if l == 0 {
			continue
		}
		up := float64(1 - 2*i) // the first rises to the right
		v.p.draw("diagonal", line(v.cx-x, v.cy+up*y, v.cx+x, v.cy-up*y), pen{line: ink, width: 1.2})
		text := dimension{d.letter + "  " + inches(l), m.check(d.doubtful), true}
		v.p.tag(v.cx, v.cy-up*max(y*0.42, 12), text, false)
	}
}
