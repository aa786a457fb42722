package drawing

import "github.com/tdewolff/canvas"

const (
	rowDeep = 25.0 // of one dimension line
	arrow   = 7.0
	// wordRoom is what words between two arrows need beside their own length.
	wordRoom = 2*arrow + 6
)

var lookNumber = look{size: 14.5, bold: true, color: ink}

// dimension is one dimension line's words.
type dimension struct {
	text  string
	check string // the word that marks a doubtful one, empty for a sound one
	known bool
}

// level draws a dimension line from side to side, and returns how deep it is: where its
// words find room neither between its arrows nor beside it, they stand below.
func (p *page) level(x0, x1, y float64, d dimension) (deep float64) {
	p.shaft(x0, y, x1, y, d.known)
	p.heads(x0, y, x1, y, 1, 0)
	w := d.width()
	x := (x0 + x1) / 2
	deep = rowDeep
	if x1-x0 < w+wordRoom {
		if x = x1 + 8 + w/2; x+w/2 > p.w-3 {
			x, y, deep = (x0+x1)/2, y+19, rowDeep+19
		}
	}
	p.tag(min(max(x, w/2+3), p.w-w/2-3), y, d, false)
	return deep
}

// upright draws a dimension line from top to bottom; its words read upward, and stay
// between the two limits.
func (p *page) upright(x, y0, y1 float64, d dimension, top, bottom float64) {
	p.shaft(x, y0, x, y1, d.known)
	p.heads(x, y0, x, y1, 0, 1)
	w := d.width()
	y := (y0 + y1) / 2
	if y1-y0 < w+wordRoom {
		y = y0 - 8 - w/2
	}
	if y-w/2 < top {
		y = min(max(y1+8+w/2, top+w/2), bottom-w/2)
	}
	p.tag(x, y, d, true)
}

func (p *page) shaft(x0, y0, x1, y1 float64, known bool) {
	pen := pen{line: ink, width: 1.2}
	if !known {
		pen.dashes = []float64{3, 3}
	}
	p.draw("dimension", line(x0, y0, x1, y1), pen)
}

// heads puts an arrow at each end, pointing out.
func (p *page) heads(x0, y0, x1, y1, ux, uy float64) {
	long := min(arrow, (x1-x0)/2+(y1-y0)/2)
	for _, e := range [...]struct{ x, y, s float64 }{{x0, y0, 1}, {x1, y1, -1}} {
		bx, by := e.x+e.s*long*ux, e.y+e.s*long*uy
		p.draw("arrow", poly(true, e.x, e.y, bx-uy*3.2, by-ux*3.2, bx+uy*3.2, by+ux*3.2), pen{fill: ink})
	}
}

const (
	tagPad  = 4.0
	signBig = 15.0
)

// longest is how long the words of a dimension may be: longer ones are set smaller.
const longest = phoneWide - 2*inset

func (d dimension) natural() float64 {
	w := measure(d.text, lookNumber) + 2*tagPad
	if d.check != "" {
		w += signBig + 5 + measure(d.check, lookLabel) + 6
	}
	return w
}

// shrink is by how much the words are set smaller.
func (d dimension) shrink() float64 { return min(1, longest/d.natural()) }

func (d dimension) width() float64 { return d.natural() * d.shrink() }

// tag writes a dimension's words about a middle, on paper, or in a framed box with the
// warning sign and its word where the number is doubtful.
func (p *page) tag(x, y float64, d dimension, turned bool) {
	w, s := d.width(), d.shrink()
	half := 9.5 * s
	along := func(at, across float64) (float64, float64) { // from the beginning of the words
		if turned {
			return x + across, y + w/2 - at
		}
		return x - w/2 + at, y + across
	}
	x0, y0 := along(0, -half)
	x1, y1 := along(w, half)
	back := pen{fill: paper}
	if d.check != "" {
		back = pen{fill: paleGold, line: ink, width: 1.8}
	}
	p.draw("tag", rounded(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1), 3), back)
	at := tagPad * s
	if d.check != "" {
		sx, sy := along(at+s*signBig/2, 0)
		p.sign(sx, sy, s*signBig)
		at += s * (signBig + 5)
	}
	number, word := lookNumber, lookLabel
	number.turned, word.turned = turned, turned
	number.size, word.size = number.size*s, word.size*s
	tx, ty := along(at, 5*s)
	p.write("number", tx, ty, d.text, number)
	tx, ty = along(at+measure(d.text, number)+6*s, 5*s)
	p.write("check", tx, ty, d.check, word)
}

// sign is a triangle with an exclamation mark, about a middle.
func (p *page) sign(x, y, size float64) {
	h := size * 0.46
	p.draw("sign", poly(true, x, y-h, x+h*1.12, y+h, x-h*1.12, y+h), pen{fill: yellow, line: ink, width: size * 0.1})
	p.write("sign", x, y+h-1.4, "!", look{size: size * 0.72, bold: true, color: ink, align: canvas.Center})
}
