package drawing

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

const (
	pictureWide = 62.0 // of a unit's drawing on the sheet
	textGap     = 5.0
	mostRows    = 60 // of a list: more never fit, and need not be tried
	mostUnits   = 12
	mostEarlier = 4 // earlier numbers of one topic
	mostShip    = 4 // rows of how it ships
	mostPrice   = 8 // and of what it costs
)

// Ranks of rows, the first to be left out last in this list.
const (
	rankDoubt   = 1 // a second question, what is missing
	rankExtra   = 2
	rankNote    = 3
	rankChoice  = 4
	rankPhotos  = 5
	rankEarlier = 6
)

// unitBlocks are the blocks of one unit: its numbers, order and findings at the left, its
// drawing, how it ships and what it costs at the right.
func unitBlocks(u *SheetUnit, n, of int, full float64) []block {
	m := newMeasured(u.Unit, u.Result, "en")
	w := full - pictureWide - textGap
	head := block{heading: unitHeading(u, n, of, full), unit: n, float: &float{w: pictureWide}}
	if !m.empty() {
		m.picture(head.float, of)
	}
	ship, price := shipBlock(u.Result.Ship, pictureWide), estimateBlock(u.Result.Estimate, pictureWide)
	head.float.rows = append(ship.upTo(mostShip), price.upTo(mostPrice)...)
	bs := []block{head}
	for _, b := range [...]block{factBlock(u, m, w), orderBlock(u, w), findingBlock(u.Result.Findings, w)} {
		if len(b.rows) > 0 {
			b.unit = n
			bs = append(bs, b)
		}
	}
	return bs
}

// upTo are a block's heading and first rows, and how many more there are.
func (b *block) upTo(most int) []row {
	if len(b.rows) == 0 {
		return nil
	}
	rows := append([]row{*b.heading}, b.rows[:min(len(b.rows), most)]...)
	if over := b.cut + len(b.rows) - (len(rows) - 1); over > 0 {
		rows = append(rows, textRow(more(over, b.noun), lookSmall, pictureWide, 1))
	}
	return rows
}

// unitHeading says at a glance what it is, what is to be replaced, and how sure that is.
func unitHeading(u *SheetUnit, n, of int, w float64) *row {
	title := "Unit"
	if of > 1 {
		title = fmt.Sprintf("Unit %d of %d", n, of)
	}
	words := []string{title}
	if u.Unit.Count > 1 {
		words = append(words, strconv.Itoa(u.Unit.Count)+" alike")
	}
	if u.Unit.Style != "" {
		words = append(words, plain(u.Unit.Style))
	}
	left := strings.Join(words, ", ")
	right := replaceWords(u.Result.Replace) + "  ·  " + plain(string(u.Result.Verdict))
	return &row{h: 10, ink: func(p *page, x, y float64) {
		p.draw("bar", rect(x, y+1.5, x+w, y+8.3), pen{fill: ink})
		l := lookHead
		l.color = white
		p.write("unit", x+2.5, y+6.3, fit(left, w*0.52, l), l)
		p.write("unit", x+w-2.5-measure(right, l), y+6.3, right, l)
	}}
}

func replaceWords(r fitcheck.Replace) string {
	switch r {
	case fitcheck.ReplaceDome:
		return "replace the dome alone"
	case fitcheck.ReplaceUnit:
		return "replace the complete unit"
	case fitcheck.ReplaceStaff:
		return "a person decides what to replace"
	}
	return plain(string(r))
}

// picture makes the unit's drawing the picture of a float, without its legend: the table
// beside it has that.
func (m *measured) picture(f *float, units int) {
	q := &page{w: phoneWide}
	high := m.views(q, -6) + 2
	most := 100.0
	if units > 1 {
		most = 62
	}
	scale := min(f.w/phoneWide, most/high)
	f.h = high * scale
	left := f.w - phoneWide*scale
	f.ink = func(p *page, x, y, shrink float64) { p.embed(q, x+left*shrink, y+1, scale*shrink) }
}

// embed draws another page's marks smaller, with its corner at x, y.
func (p *page) embed(q *page, x, y, scale float64) {
	for i := range q.marks {
		m := q.marks[i]
		m.x, m.y, m.look.size, m.pen.width = x+m.x*scale, y+m.y*scale, m.look.size*scale, m.pen.width*scale
		if m.path != nil {
			m.path = m.path.Copy().Scale(scale, scale).Translate(x, y)
		}
		if m.pen.fill == paper {
			m.pen.fill = white
		}
		p.marks = append(p.marks, m)
	}
}

// factBlock lists what is known with the customer's own words beside it, and what they
// had said before.
func factBlock(u *SheetUnit, m *measured, w float64) block {
	b := block{heading: heading("Numbers and choices, and their words", w), noun: "facts"}
	doubt := doubtfulTopics(u.Result)
	for _, t := range fitcheck.UnitTopics {
		v := u.Unit.Get(t)
		if v == nil {
			continue
		}
		said := saidOf(u.Facts, t)
		words := "no words on record"
		if len(said) > 0 {
			words = quote(said[len(said)-1])
			said = said[:len(said)-1]
		}
		r := factRow(m.letterOf(t), t, valueWords(v), words, w, slices.Contains(doubt, t))
		if !t.OfLength() && t != fitcheck.TopicCount {
			r.rank = rankChoice
		}
		b.rows = append(b.rows, r)
		over := max(0, len(said)-mostEarlier)
		b.cut += over
		for _, f := range said[over:] {
			r := tableRow(cell{"", lookSmall, 7, 1}, cell{"earlier: " + valueWords(f.Value) + ", " + quote(f), lookSmall, w - 7, 2})
			r.rank = rankEarlier
			b.rows = append(b.rows, r)
		}
	}
	return b
}

func saidOf(facts []SheetFact, t fitcheck.Topic) (said []SheetFact) {
	for _, f := range facts {
		if f.Topic == t {
			said = append(said, f)
		}
	}
	return said
}

func quote(f SheetFact) string {
	return "message " + strconv.Itoa(f.Message) + ": “" + clean(f.Said, 160) + "”"
}

// letterOf is the letter of a topic in the unit's drawing, if it is in it.
func (m *measured) letterOf(t fitcheck.Topic) string {
	for _, e := range m.entries() {
		if e.topic == t {
			return e.letter
		}
	}
	return ""
}

func factRow(letter string, t fitcheck.Topic, value, words string, w float64, doubtful bool) row {
	const mark, name = 7.0, 30.0
	sized := (w - mark - name) * 0.45
	r := tableRow(cell{letter, lookStrong, mark, 1}, cell{topicWords(t), lookBody, name, 1},
		cell{value, lookStrong, sized, 3}, cell{words, lookSmall, w - mark - name - sized, 3})
	if !doubtful {
		return r
	}
	return row{h: r.h + 3.4, ink: func(p *page, x, y float64) {
		p.draw("doubt", rounded(x-1, y-0.4, x+w, y+r.h+3.2, 0.8), pen{fill: paleGold})
		r.ink(p, x, y)
		p.sign(x+mark+2, y+r.h+1.1, 3.6)
		p.write("check", x+mark+5.5, y+r.h+2.1, "check this one", look{size: 2.65, bold: true, color: ink})
	}}
}

// findingBlock lists what the check saw, what stops first, each with its source.
func findingBlock(findings []fitcheck.Finding, w float64) block {
	b := block{heading: heading("Findings", w), noun: "findings"}
	for _, s := range [...]fitcheck.Severity{fitcheck.Stop, fitcheck.Ask, fitcheck.Note} {
		for i := range findings {
			if findings[i].Severity != s {
				continue
			}
			r := findingRow(&findings[i], w)
			switch {
			case s == fitcheck.Note:
				r.rank = rankNote
			case len(b.rows) > 0:
				r.rank = rankDoubt
			}
			b.rows = append(b.rows, r)
		}
	}
	return b
}

func findingRow(f *fitcheck.Finding, w float64) row {
	const tag = 13.0
	text := textRow(clean(f.Text, 400), lookBody, w-tag, 4)
	source := textRow(plain(string(f.Code))+" · "+topicWords(f.Topic)+" · source: "+clean(f.Source, 240), lookSmall, w-tag, 3)
	return row{h: text.h + source.h + 1.2, ink: func(p *page, x, y float64) {
		back := pen{fill: white, line: ink, width: 0.25}
		if f.Severity != fitcheck.Note {
			back.fill, back.width = paleGold, 0.5
		}
		p.draw("severity", rounded(x, y+0.2, x+tag-2.5, y+4.6, 0.7), back)
		p.write("severity", x+1.4, y+3.5, strings.ToUpper(plain(string(f.Severity))), look{size: 2.7, bold: true, color: ink})
		text.ink(p, x+tag, y)
		source.ink(p, x+tag, y+text.h)
	}}
}
