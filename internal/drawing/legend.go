package drawing

import (
	"github.com/tdewolff/canvas"

	"example.com/intake-bot/internal/fitcheck"
)

// entry is one size in words: what it is of, and its numbers.
type entry struct {
	topic    fitcheck.Topic
	letter   string
	value    string
	doubtful bool
}

// entries lists all that is drawn, in the order of the letters.
func (m *measured) entries() (es []entry) {
	add := func(os []outline) {
		for i := range os {
			es = append(es, entry{os[i].topic, os[i].letter, os[i].words(m.language), os[i].doubtful})
		}
	}
	add(m.box)
	if d := m.diagonals; d.letter != "" {
		s := inchesEach(known(d.first, d.second), m.language, inchesExactly)
		es = append(es, entry{fitcheck.TopicCurbDiagonals, d.letter, s, d.doubtful})
	}
	add(m.dome)
	for _, h := range [...]*height{m.curbHigh, m.domeHigh} {
		if h != nil {
			es = append(es, entry{h.topic, h.letter, inchesExactly(h.high), h.doubtful})
		}
	}
	return es
}

func known(ls ...fitcheck.Length) (k []fitcheck.Length) {
	for _, l := range ls {
		if l > 0 {
			k = append(k, l)
		}
	}
	return k
}

// words are the outline's numbers: 25 1/2" × 49 1/2".
func (o *outline) words(language string) string {
	side := func(ls []fitcheck.Length) string {
		if ls == nil {
			return "?"
		}
		return inchesEach(ls, language, inchesExactly)
	}
	switch {
	case o.round:
		return "Ø " + side(o.across)
	case o.lone:
		return side(o.across) + " " + wordOneSide.in(language)
	}
	return side(o.across) + " × " + side(o.along)
}

// legend says in words what each letter stands for, from a height on the page.
func (m *measured) legend(p *page, y float64) float64 {
	p.draw("rule", line(inset, y, p.w-inset, y), pen{line: hair, width: 1})
	y += 22
	for _, e := range m.entries() {
		y = m.row(p, y, e)
	}
	return y
}

func (m *measured) row(p *page, y float64, e entry) float64 {
	const indent, gap = 26.0, 8.0
	p.draw("letter", circle(inset+8.5, y-4.7, 9), pen{fill: white, line: ink, width: 1.3})
	p.write("letter", inset+8.5, y, e.letter, look{size: 13, bold: true, color: ink, align: canvas.Center})
	name := partName(e.topic).in(m.language)
	value := lookNumber
	value.align = canvas.Right
	p.write("name", inset+indent, y, name, lookLabel)
	if measure(name, lookLabel)+measure(e.value, value)+indent+gap > p.w-2*inset {
		y += 18
	}
	right := p.w - inset
	for measure(e.value, value) > p.w-2*inset-indent && value.size > 9 {
		value.size -= 0.5
	}
	p.write("value", right, y, fit(e.value, p.w-2*inset-indent, value), value)
	if e.doubtful {
		y += 21
		p.sign(inset+indent+signBig/2, y-5, signBig)
		word := lookLabel
		word.bold = true
		p.write("check", inset+indent+signBig+6, y, wordCheckAgain.in(m.language), word)
	}
	return y + 23
}
