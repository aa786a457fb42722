package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// facesNoLayers: in "clear over bronze outside curb is 30 1/2 x 54 1/2" the "outside" is the curb's, and of
// no layer of the dome.
func (r *reader) facesNoLayers() {
	r.choices = slices.DeleteFunc(r.choices, func(c hit) bool {
		if !c.has1("layer") || len(c.senses) > 1 {
			return false
		}
		labels := within(r.labels, max(0, c.first-3), c.first)
		return slices.ContainsFunc(labels, func(l hit) bool {
			box := l.is("topic", string(fitcheck.TopicCurbOutside)) || l.is("topic", string(fitcheck.TopicCurbInside))
			return box && l.last > l.first && l.first <= c.first && c.last <= l.last
		})
	})
}

// ofSheetBesideBox: "polycarbonate outside curb 30 1/2 x 54 1/2": what looks like a side of the sheet is the
// sheet, and a side of the box.
func (r *reader) ofSheetBesideBox(m *measure, h *hit, s sense) bool {
	return s.value == string(fitcheck.TopicPlasticSize) && m.part == "curb" && h.last > h.first &&
		r.wordAt(h.last, "outside", "inside") && r.wordAt(h.last+1, "curb", "box")
}
