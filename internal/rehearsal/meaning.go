package rehearsal

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// meaning is what somebody meant by some words.
type meaning struct {
	topic fitcheck.Topic
	unit  int // 0: of the whole lead
	value fitcheck.Value
	// other is a second value that the words can be taken for, where a careful reader
	// can't know: "65 x 125" of somebody who measured in centimetres.
	other fitcheck.Value
	any   bool // any value will do
	// named says that the sides of a size were named, so that they can't be exchanged.
	named bool
	// doubt marks what was said to be a guess: no fact may be made of it.
	doubt bool
	// beside is what a phrase says by the way: it may be taken up and need not.
	beside bool
}

func (m meaning) ask() conversation.Ask { return conversation.Ask{Topic: m.topic, Unit: m.unit} }

// line is a thing said, with what is meant by it.
type line struct {
	text  string
	means []meaning
}

// with joins things said into one.
func (l line) with(separator string, next line) line {
	if l.text == "" || next.text == "" {
		separator = ""
	}
	return line{l.text + separator + next.text, slices.Concat(l.means, next.means)}
}

// agrees says whether a value can be what was meant.
func (m meaning) agrees(v fitcheck.Value) bool {
	return m.any || sameValue(m.value, v, m.named) || m.other != nil && sameValue(m.other, v, m.named)
}

// whole says whether a value is all of what was meant.
func (m meaning) whole(v fitcheck.Value) bool {
	switch w := m.value.(type) {
	case fitcheck.Text:
		g, ok := v.(fitcheck.Text)
		return ok && plainName(string(g)) == plainName(string(w))
	case fitcheck.ChoiceList:
		g, ok := v.(fitcheck.ChoiceList)
		return ok && subset(w, g)
	case fitcheck.Color:
		g, ok := v.(fitcheck.Color)
		return ok && g.Outer == w.Outer && g.Inner == w.Inner
	}
	return true
}

func sameValue(meant, got fitcheck.Value, named bool) bool {
	switch w := meant.(type) {
	case fitcheck.Size:
		g, ok := got.(fitcheck.Size)
		return ok && sameSize(w, g, named)
	case fitcheck.Place:
		g, ok := got.(fitcheck.Place)
		return ok && samePlace(w, g)
	case fitcheck.Text:
		g, ok := got.(fitcheck.Text)
		return ok && sameName(string(w), string(g))
	case fitcheck.ChoiceList:
		g, ok := got.(fitcheck.ChoiceList)
		return ok && subset(g, w) && (len(g) > 0 || len(w) == 0)
	case fitcheck.Color:
		g, ok := got.(fitcheck.Color)
		return ok && sameOrMissing(g.Outer, w.Outer) && sameOrMissing(g.Inner, w.Inner) && sameOrMissing(g.Middle, w.Middle)
	}
	return meant == got
}

func sameOrMissing(got, meant string) bool { return got == "" || got == meant }

func subset(some, all []string) bool {
	return !slices.ContainsFunc(some, func(s string) bool { return !slices.Contains(all, s) })
}

// sameName takes the first name alone for the whole one: it is less, and not wrong.
func sameName(meant, got string) bool {
	first, _, _ := strings.Cut(meant, " ")
	return plainName(got) == plainName(meant) || plainName(got) == plainName(first)
}

func plainName(s string) string { return place.Plain(strings.Join(strings.Fields(s), " ")) }

// samePlace holds only those parts against each other that were understood.
func samePlace(meant, got fitcheck.Place) bool {
	return (got.City == "" || place.SameName(got.City, meant.City)) &&
		sameOrMissing(got.State, meant.State) && sameOrMissing(got.ZIP, meant.ZIP)
}

// sameSize compares sizes, and parts of them, to a 32nd of an inch.
func sameSize(meant, got fitcheck.Size, named bool) bool {
	if len(got.Sides) > 0 {
		return !slices.ContainsFunc(got.Sides, func(l fitcheck.Length) bool { return !isSide(meant, l) })
	}
	if got.Diameter > 0 || meant.Diameter > 0 {
		return near(got.Diameter+got.One, meant.Diameter) && got.Width+got.Length == 0
	}
	if got.One > 0 {
		return isSide(meant, got.One)
	}
	w, l := meant.Width, meant.Length
	if w == 0 || l == 0 { // only a lone side was meant
		return isSide(meant, got.Width+got.Length)
	}
	straight := (got.Width == 0 || near(got.Width, w)) && (got.Length == 0 || near(got.Length, l))
	turned := (got.Width == 0 || near(got.Width, l)) && (got.Length == 0 || near(got.Length, w))
	return straight || turned && !named
}

func isSide(s fitcheck.Size, l fitcheck.Length) bool {
	for _, side := range []fitcheck.Length{s.Width, s.Length, s.One, s.Diameter} {
		if side > 0 && near(side, l) {
			return true
		}
	}
	return false
}

func near(a, b fitcheck.Length) bool {
	d := a - b
	return d <= fitcheck.Inch/32 && -d <= fitcheck.Inch/32
}
