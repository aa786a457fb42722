package drawing

import (
	"fmt"

	"example.com/intake-bot/internal/fitcheck"
)

// Measures of a picture for a phone, in its pixels at 360 wide.
const (
	phoneWide = 360.0
	inset     = 16.0
	phoneInch = 25.4 / 72 // a picture on paper is five inches wide
)

var (
	lookTitle = look{size: 21, bold: true, color: ink}
	lookView  = look{size: 12.5, color: faint}
	lookWord  = look{size: 14.5, color: ink}
	lookLabel = look{size: 13.5, color: ink}
)

// Has says whether there is a picture of how to measure the topic: there is one for each
// that a tape measures.
func Has(topic fitcheck.Topic) bool {
	_, ok := captions[topic]
	return ok
}

// HowTo is the picture of where to put the tape for a topic, with few words in English
// or, for any language tag of it, Spanish. A topic that no tape measures is an error.
func HowTo(topic fitcheck.Topic, language string) (Drawing, error) {
	c, ok := captions[topic]
	if !ok {
		return Drawing{}, fmt.Errorf("no picture shows how to measure %q", topic)
	}
	p := &page{w: phoneWide}
	p.h = 600
	p.draw("paper", rect(0, 0, p.w, 600), pen{fill: paper})
	y := p.header(c.title.in(language))
	y = viewsOf(topic)(p, y, language)
	for _, l := range c.lines {
		p.write("caption", inset, y, l.in(language), lookWord)
		y += 19
	}
	small := lookView
	p.write("safety", inset, y+3, wordSafe.in(language), small)
	p.h = y + 14
	p.marks[0].path = rect(0, 0, p.w, p.h)
	return Drawing{pages: []page{*p}, title: c.title.in(language), unit: phoneInch}, nil
}

// header is the strip of tape that heads all our pictures, and the title under it.
func (p *page) header(title string) (y float64) {
	p.draw("strip", rect(0, 0, p.w, 9), pen{fill: yellow})
	for i := 0; float64(i)*7.5 < p.w; i++ {
		x, long := float64(i)*7.5, 4.0
		if i%4 == 0 {
			long = 7
		}
		p.draw("tick", line(x, 0, x, long), pen{line: ink, width: 1})
	}
	p.write("title", inset, 36, fit(title, p.w-2*inset, lookTitle), lookTitle)
	return 36
}

// viewsOf draws the views of a topic from a height on the page, and returns the height
// below them.
func viewsOf(topic fitcheck.Topic) func(p *page, y float64, language string) float64 {
	switch topic {
	case fitcheck.TopicCurbDiagonals:
		return diagonalViews
	case fitcheck.TopicCurbHeight:
		return heightViews
	case fitcheck.TopicDomeRise:
		return riseViews
	}
	return lessons[topic].draw
}

func (l lesson) draw(p *page, y float64, language string) float64 {
	p.write("view", inset, y+20, wordCut.in(language), lookView)
	f := &figure{p: p, cx: p.w / 2, top: y + 32 + domeHigh + max(l.lift, l.open-domeHigh+ringHigh+18), lift: l.lift, open: l.open, lining: l.lining, focus: l.focus}
	f.section()
	f.labels(language)
	viewAt := f.y(deckLow) + 34 // below the numbers of the ends
	v := &plan{p: p, cx: f.cx, cy: viewAt + 22 + ringHalf - deeper}
	v.roof()
	l.plan(v)
	l.measure(f, v)
	view := wordAbove
	if l.view != (word{}) {
		view = l.view
	}
	p.halo("view", inset, viewAt, view.in(language), lookView)
	return v.cy + ringHalf - deeper + 50
}

// measure lays the tapes: across in both views, and the other way in the plan.
func (l lesson) measure(f *figure, v *plan) {
	p := f.p
	ty, py := f.y(l.level), v.cy+l.beside-deeper
	for _, x := range [...]float64{f.cx - l.half, f.cx + l.half} {
		p.sight(x, ty, x, py)
		p.face(x, f.y(l.reach[0]), x, f.y(l.reach[1]))
		p.face(x, py-11, x, py+11)
	}
	p.tape(f.cx-l.half, ty, f.cx+l.half, ty)
	p.tape(f.cx-l.half, py, f.cx+l.half, py)
	tx := f.cx + max(l.aside, 0)
	if l.aside == 0 {
		tx = f.cx + l.beside
	}
	up, down := v.cy-l.half+deeper, v.cy+l.half-deeper
	p.face(tx-11, up, tx+11, up)
	p.face(tx-11, down, tx+11, down)
	p.tape(tx, down, tx, up)
	high := f.y(max(l.reach[0], l.reach[1])) - 10
	if l.badges != 0 {
		high = f.y(l.badges)
	}
	p.badge(f.cx-l.half, high, "1")
	p.badge(f.cx+l.half, high, "2")
	if sign, at := l.wrong[0], l.wrong[1]; sign != at {
		p.wrong(f.cx+sign.x, f.y(sign.level), f.cx+at.x, f.y(at.level))
	}
}
