package drawing

import (
	"cmp"
	"slices"

	"github.com/tdewolff/canvas"

	"example.com/intake-bot/internal/fitcheck"
)

// outlinePen paints a size as the part that it is of.
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

// topView is a customer's sizes seen from above, about one middle.
type topView struct {
	p      *page
	cx, cy float64
}

// fill paints the shapes, the largest first, then all their outlines over them.
func (v topView) fill(shapes []shape) {
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

func (v topView) path(s *shape) *canvas.Path {
	if s.round {
		return circle(v.cx, v.cy, s.w/2)
	}
	return rect(v.cx-s.w/2, v.cy-s.h/2, v.cx+s.w/2, v.cy+s.h/2)
}

// across draws the dimension line of a width below the shapes, and returns how deep it is.
func (v topView) across(s *shape, y float64, d dimension) float64 {
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
func (v topView) along(s *shape, x float64, d dimension, top, bottom float64) {
	for _, y := range [...]float64{v.cy - s.h/2, v.cy + s.h/2} {
		v.p.draw("witness", line(v.cx+s.w/2+2, y, x+5, y), pen{line: faint, width: 0.7})
	}
	v.p.upright(x, v.cy-s.h/2, v.cy+s.h/2, d, top, bottom)
}

// diagonals draws the diagonals of the curb's outside with their numbers.
func (v topView) diagonals(m *measured, s shape, d diagonals) {
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
