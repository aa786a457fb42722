package reading

import "example.com/intake-bot/internal/fitcheck"

// What covers the roof, told without the word "roof" where its slope is the subject: "6 on 12
// with architectural shingles", "cedar shakes, 7/12".

// besideSlope: the words are of roofs alone, and a slope is told in their clause, or in their
// sentence where a "with" or "has" leads to them. "4/12 pitch, comp shingles" is left alone.
func (r *reader) besideSlope(h *hit) bool {
	if !r.ofRoofsAlone(h) || r.measuredFrom(h.first) {
		return false
	}
	if r.asked(fitcheck.TopicRoofSlope) && r.wordsIn(h.first, h.last, "is") {
		return true // "2 inches in 12. The metal is corrugated"
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if i := h.first - 1; r.wordAt(i, "with", "has", "have", "con", "tiene") || r.wordAt(i, "a", "old", "new", "the", "some") && r.wordAt(i-1, "with", "has", "have", "on") {
		from, to = r.sentence(h.first)
	}
	for _, w := range r.where {
		if w.topic == fitcheck.TopicRoofSlope && from <= w.first && w.first <= to {
			return true
		}
	}
	return false
}

// measuredFrom: the covering is where something is measured from or hidden by, matched or only
// near: "6 inches above the shingles", "the flange is under the tiles", "to match the shingles".
func (r *reader) measuredFrom(i int) bool {
	i--
	for r.wordAt(i, "the", "a", "my", "our", "your", "old", "new", "asphalt", "roof", "las", "los", "la", "el") {
		i--
	}
	return r.wordAt(i, "above", "over", "off", "under", "underneath", "beneath", "below", "between", "around", "against", "match", "matches", "matching", "like", "to", "from", "past", "into", "through", "behind", "arriba", "encima", "bajo", "debajo", "sobre") ||
		r.wordAt(i, "with", "de") && r.wordAt(i-1, "go", "goes", "match", "arriba", "encima", "abajo", "debajo")
}

// ofRoofsAlone: the words name nothing but what lies on roofs: metal may be the frame's, rubber
// a gasket's, cedar the box's.
func (r *reader) ofRoofsAlone(h *hit) bool {
	if !h.senses[0].asked || roofOnly[r.toks[h.first].text] || roofOnly[r.toks[h.last].text] {
		return true
	}
	switch h.senses[0].value {
	case "wood_shingles", "metal_shingles", "built_up":
		return h.last > h.first
	case "membrane":
		return r.wordsIn(h.first, h.last+1, "bitumen", "modified", "torch", "torchdown", "torched", "mod")
	case "metal":
		return r.wordsIn(h.first, h.last+1, "corrugated", "ribbed", "panel", "panels", "acanalada", "galvanizada")
	}
	return r.wordsIn(h.first, h.last+1, "shakes", "shake")
}

// askedRoofing: "you asked what the roofing is. I checked and it's EPDM".
func (r *reader) askedRoofing(h *hit) bool {
	if !r.ofRoofsAlone(h) || !r.wordAt(h.first-1, "its", "is", "es", "son") {
		return false
	}
	from := r.clauseStart(h.first)
	if !r.wordAt(h.first-1, "its") && !(r.wordAt(h.first-2, "it", "that", "this", "roofing", "covering") || h.first-1 == from) {
		return false
	}
	for i := max(0, h.first-25); i < h.first-1; i++ {
		if r.wordAt(i, "roofing", "roof", "techo") && r.wordsIn(max(0, i-5), min(i+6, h.first), "what", "whats", "which", "kind", "type", "asked", "que", "tipo") {
			return true
		}
	}
	return false
}

// raisedSeams: "a new metal roof, the kind with the raised seams and no screws showing" is one of
// standing seam; the value is that of the phrase otherwise.
func (r *reader) raisedSeams(h *hit) string {
	value := h.senses[0].value
	if value != "metal" {
		return value
	}
	from, to := r.sentence(h.first)
	for i := from; i <= to; i++ {
		if r.wordAt(i, "raised", "standing", "upright") && r.wordAt(i+1, "seam", "seams") || r.wordAt(i, "seams", "seam") && r.wordsIn(i+1, min(i+5, to+1), "stand", "stands", "standing", "raised", "stick", "sticking") ||
			r.wordAt(i, "hidden", "concealed") && r.wordAt(i+1, "screws", "fasteners", "clips") {
			return "standing_seam"
		}
	}
	return value
}

// coveringNear: the sentence names what lies on the roof: "clay tile, 5/12".
func (r *reader) coveringNear(i int) bool {
	from, to := r.sentence(i)
	hits := words().scan(r.toks[from:to+1], roofLayer, nil)
	for n := range hits {
		h := &hits[n]
		h.first, h.last = h.first+from, h.last+from
		if h.senses[0].topic == fitcheck.TopicRoofCovering && r.ofRoofsAlone(h) && !r.measuredFrom(h.first) {
			return true
		}
	}
	return false
}
