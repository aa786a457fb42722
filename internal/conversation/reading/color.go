package reading

import "example.com/intake-bot/internal/fitcheck"

var changedTint = wordsOf(`sorry actually want make no wait instead now change perdon digo quiero mejor`)

// tint is a color named in the message.
type tint struct {
	value       string
	first, last int
	layer       string // outer, inner, middle, all, "" where not said
	unit        int
	doubted     bool
}

// colors puts the plastic's colors together: "clear over white", "clear outside, white
// inside", "bronze". A lone "bronze" is the plastic's unless the frame is spoken of.
func (r *reader) colors() {
	r.startsClear()
	r.layersFirst = r.layerFirst()
	units := map[int][]tint{}
	var order []int
	for _, t := range r.tints() {
		if units[t.unit] == nil {
			order = append(order, t.unit)
		}
		units[t.unit] = append(units[t.unit], t)
	}
	for _, u := range order {
		r.colorFact(u, units[u])
	}
}

// tints are the colors of the plastic that the message names, in its order.
func (r *reader) tints() []tint {
	var tints []tint
	for n := range r.choices {
		h := &r.choices[n]
		for _, s := range h.senses {
			unasked := s.asked && !r.asked(s.topic) && r.fieldBefore(h.first) != s.topic
			if s.topic != fitcheck.TopicColor || unasked || r.toks[h.first].used {
				continue
			}
			if t, ok := r.tintAt(n, s.value); ok {
				tints = append(tints, r.ofEach(t)...)
			}
			break
		}
	}
	return tints
}

func (h *hit) has1(kind string) bool {
	_, ok := h.has(kind)
	return ok
}

// colorFact joins the colors of one unit.
func (r *reader) colorFact(unit int, tints []tint) {
	first, last := tints[0].first, tints[len(tints)-1].last
	tints = r.takenBackTints(r.withoutShades(tints))
	c, ok := r.colorOf(tints)
	if ok {
		r.allLayersSo(&c, tints)
	}
	if !ok || r.unlayered(&c, tints) {
		r.unclear(fitcheck.TopicColor, unit, WhyChoice, nil, first, last)
		return
	}
	switch {
	case c.Outer == "":
		if c.Inner != "" {
			r.unclear(fitcheck.TopicColor, unit, WhyChoice, c, first, last)
		}
	case doubtedTint(tints, c.Outer) && !r.thoughtOver(fitcheck.TopicColor, first):
		r.unclear(fitcheck.TopicColor, unit, WhyRough, c, first, last)
	default:
		r.fact(fitcheck.TopicColor, unit, c, first, last)
	}
}

// colorOf gives each layer the color that is said of it; not ok where a color is left open, or one
// layer has two.
func (r *reader) colorOf(tints []tint) (c fitcheck.Color, ok bool) {
	for k, t := range tints {
		if t.value == "?" {
			return c, false
		}
		twice := t.layer == "outer" && c.Outer != "" && c.Outer != t.value ||
			t.layer == "inner" && c.Inner != "" && c.Inner != t.value
		if twice && !r.anyOf(tints[k-1].last+1, t.first, changedTint) {
			return c, false
		}
		switch t.layer {
		case "outer":
			c.Outer = t.value
		case "inner":
			c.Inner = t.value
		case "middle":
			c.Middle = t.value
		case "both":
			c.Outer = t.value
			if !r.bothKinds(t.first) {
				c.Inner = t.value
			}
		case "all":
			c.Outer, c.Middle, c.Inner = t.value, t.value, t.value
		}
	}
	return c, true
}

// allLayersSo: "2 layers, all clear".
func (r *reader) allLayersSo(c *fitcheck.Color, tints []tint) {
	if len(tints) != 1 || tints[0].layer != "" || !r.wordAt(tints[0].first-1, "all", "everything", "todo", "todas", "todos") {
		return
	}
	for _, f := range r.out.Facts {
		n, ok := f.Value.(fitcheck.Whole)
		if !ok || f.Topic != fitcheck.TopicLayers || n < 2 {
			continue
		}
		c.Inner = tints[0].value
		if n == 3 {
			c.Middle = tints[0].value
		}
	}
}

// doubtedTint: a doubt is said of the color, or of one on another layer; not of one that
// another was chosen over: "white? the plants might not like that so clear".
func doubtedTint(tints []tint, outer string) bool {
	for _, t := range tints {
		if t.doubted && (t.layer != "" || t.value == outer) {
			return true
		}
	}
	return false
}
