package drawing

import (
	"errors"

	"example.com/intake-bot/internal/fitcheck"
)

// ErrNoNumbers says that a unit has no measure yet that could be drawn.
var ErrNoNumbers = errors.New("no measure to draw")

// Measured is the picture of a customer's own numbers, to scale, with dimension lines in
// tape fractions: the curb, what lies on it, and heights from the side. A number that a
// finding asks about or stops at is marked by a sign and a word. Sides that are not known
// are dashed and say so. Without any number the error is ErrNoNumbers.
func Measured(u fitcheck.Unit, r fitcheck.UnitResult, language string) (Drawing, error) {
	m := newMeasured(u, r, language)
	if m.empty() {
		return Drawing{}, ErrNoNumbers
	}
	p := &page{w: phoneWide}
	p.draw("paper", nil, pen{})
	title := wordYours.in(language)
	y := m.legend(p, m.views(p, p.header(title)+8)+8)
	p.h = y + 4
	p.marks[0] = mark{part: "paper", path: rect(0, 0, p.w, p.h), pen: pen{fill: paper}}
	return Drawing{pages: []page{*p}, title: title, unit: phoneInch}, nil
}

// measured is what is known of a unit's measures.
type measured struct {
	language  string
	box, dome []outline
	diagonals diagonals
	curbHigh  *height
	domeHigh  *height
}

// diagonals are those over the curb's outside.
type diagonals struct {
	letter        string
	first, second fitcheck.Length
	doubtful      bool
}

// height is one of the two heights.
type height struct {
	topic    fitcheck.Topic
	letter   string
	high     fitcheck.Length
	doubtful bool
}

func newMeasured(u fitcheck.Unit, r fitcheck.UnitResult, language string) *measured {
	doubt := doubtfulTopics(r)
	letters := lettering('A')
	in := func(t fitcheck.Topic) bool {
		for _, d := range doubt {
			if d == t {
				return true
			}
		}
		return false
	}
	m := &measured{language: language}
	m.box = outlines(&u, doubt, boxTopics, &letters)
	if d := readings(u.CurbDiagonals.First, u.CurbDiagonals.Second); d != nil {
		m.diagonals = diagonals{letters.next(), u.CurbDiagonals.First, u.CurbDiagonals.Second, in(fitcheck.TopicCurbDiagonals)}
	}
	m.dome = outlines(&u, doubt, domeTopics, &letters)
	if u.CurbHeight.Height > 0 {
		m.curbHigh = &height{fitcheck.TopicCurbHeight, letters.next(), u.CurbHeight.Height, in(fitcheck.TopicCurbHeight)}
	}
	if u.DomeRise != nil && u.DomeRise.Height >= 0 {
		m.domeHigh = &height{fitcheck.TopicDomeRise, letters.next(), u.DomeRise.Height, in(fitcheck.TopicDomeRise)}
	}
	return m
}

// doubtfulTopics are what the findings ask about or stop at.
func doubtfulTopics(r fitcheck.UnitResult) (ts []fitcheck.Topic) {
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Severity == fitcheck.Ask || f.Severity == fitcheck.Stop {
			ts = append(ts, f.Topic)
		}
	}
	return ts
}

func (m *measured) empty() bool {
	return m.box == nil && m.dome == nil && m.diagonals.letter == "" && m.curbHigh == nil && m.domeHigh == nil
}

// views draws what there is from a height on the page, and returns the height below.
func (m *measured) views(p *page, y float64) float64 {
	if m.box != nil || m.diagonals.letter != "" {
		y = m.panel(p, y, wordBoxPlan, m.box, m.diagonals)
	}
	if m.dome != nil {
		y = m.panel(p, y, wordDomePlan, m.dome, diagonals{})
	}
	if m.curbHigh != nil || m.domeHigh != nil {
		y = m.side(p, y)
	}
	return y
}

// check is the word at a doubtful number.
func (m *measured) check(doubtful bool) string {
	if doubtful {
		return wordCheck.in(m.language)
	}
	return ""
}

// lettering hands out letters, without those that look like digits.
type lettering rune

func (l *lettering) next() string {
	for *l == 'I' || *l == 'O' {
		*l++
	}
	*l++
	return string(rune(*l - 1))
}
