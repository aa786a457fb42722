package drawing

import (
	"strings"

	"github.com/tdewolff/canvas"
)

// label names a part of the figure: each row of the word begins at its place, and a line
// leads from there to the part.
type label struct {
	word word
	at   spot
	to   spot
	// stacked words stand below each other
	stacked bool
}

const rowHigh = 15.0

// labels names the parts, each where no tape ever lies.
func (f *figure) labels(language string) {
	u := f.lift
	r := u + f.open
	for _, b := range [...]label{
		{wordRetainer, spot{-164, r + 68 - min(f.open, 38)}, spot{-(holeHalf + ringHalf + 2) / 2, r + ringHigh - 2}, false},
		{wordPlastic, spot{-32, u + 45}, spot{61, u + 55}, false},
		{wordFrame, spot{-176, u + flangeLow - 14}, spot{-flangeOut + 2, u + flangeLow + 5}, true},
		{wordCurb, spot{-58, -57}, spot{-openHalf - 5, -50}, false},
	} {
		f.label(b, language)
	}
}

func (f *figure) label(b label, language string) {
	rows := []string{b.word.in(language)}
	if b.stacked {
		rows = strings.Fields(rows[0])
	}
	x, y := f.cx+b.at.x, f.y(b.at.level)
	tx, ty := f.cx+b.to.x, f.y(b.to.level)
	wide := 0.0
	for _, s := range rows {
		wide = max(wide, measure(s, lookLabel))
	}
	fx, fy := beside(x, y, wide, tx, ty, float64(len(rows)-1)*rowHigh)
	f.p.draw("leader", line(fx, fy, tx, ty), pen{line: ink, width: 0.9})
	f.p.draw("leader.end", circle(tx, ty, 2), pen{fill: ink})
	for i, s := range rows {
		f.p.write("label", x, y+float64(i)*rowHigh, s, lookLabel)
	}
}

// beside is where a leader leaves the words that stand at x, y: below or above them
// where the part is, else at the side that is nearer.
func beside(x, y, wide, tx, ty, deep float64) (fx, fy float64) {
	switch {
	case tx > x && tx < x+wide && ty > y:
		return tx, y + deep + 5
	case tx > x && tx < x+wide:
		return tx, y - 12
	case tx < x:
		return x - 4, y - 5
	}
	return x + wide + 4, y - 5
}

// halo writes on a patch of paper, over lines that pass.
func (p *page) halo(part string, x, y float64, s string, l look) {
	w := measure(s, l)
	x0 := x
	switch l.align {
	case canvas.Center:
		x0 -= w / 2
	case canvas.Right:
		x0 -= w
	}
	p.draw("halo", rect(x0-3, y-l.size*0.85, x0+w+3, y+l.size*0.3), pen{fill: paper})
	p.write(part, x, y, s, l)
}
