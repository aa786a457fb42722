package reading

import "example.com/intake-bot/internal/fitcheck"

// What covers the roof, told without the word "roof" where its slope is the subject: "6 on 12
// with architectural shingles", "cedar shakes, 7/12".

var (
	beforeSlopedRoof = wordsOf(`the a my our your old new asphalt roof las los la el`)
	roofRelations    = wordsOf(`above over off under underneath beneath below between around against match matches
		matching like to from past into through behind arriba encima bajo debajo sobre`)
)

// besideSlope: the words are of roofs alone, and a slope is told in their clause, or in their
// sentence where a "with" or "has" leads to them. "4/12 pitch, comp shingles" is left alone.
func (r *reader) besideSlope(h *hit) bool {
	if !r.ofRoofsAlone(h) || r.measuredFrom(h.first) {
		return false
	}
	if r.asked(fitcheck.TopicRoofSlope) && r.wordsIn(h.first, h.last, "is") {
		return true // "2 inches in 12. The metal is corrugated"
	}
	if r.asked(fitcheck.TopicRoofSlope) && r.wordAt(h.first-1, "its", "theyre", "is", "are", "es", "son") &&
		(h.senses[0].value == "tile" || h.senses[0].value == "slate") {
		return true // "6/12, and it's clay tile"
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if i := h.first - 1; r.wordAt(i, "with", "has", "have", "con", "tiene") ||
		r.wordAt(i, "a", "old", "new", "the", "some") && r.wordAt(i-1, "with", "has", "have", "on") {
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
	for r.among(i, beforeSlopedRoof) {
		i--
	}
	return r.among(i, roofRelations) ||
		r.wordAt(i, "with", "de") && r.wordAt(i-1, "go", "goes", "match", "arriba", "encima", "abajo", "debajo")
}

// ofRoofsAlone: the words name nothing but what lies on roofs: metal may be the frame's, rubber
// a gasket's, cedar the box's.
func (r *reader) ofRoofsAlone(h *hit) bool {
	if !h.senses[0].asked || roofOnly.has(r.toks[h.first].text) || roofOnly.has(r.toks[h.last].text) {
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
		if r.wordAt(i, "roofing", "roof", "techo") &&
			r.wordsIn(max(0, i-5), min(i+6, h.first), "what", "whats", "which", "kind", "type", "asked", "que", "tipo") {
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
		if r.wordAt(i, "raised", "standing", "upright") && r.wordAt(i+1, "seam", "seams") ||
			r.wordAt(i, "seams", "seam") && r.wordsIn(i+1, min(i+5, to+1), "stand", "stands", "standing", "raised", "stick", "sticking") ||
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

// rangeFrom is where a range begins that the rise is the end of, -1 where it is none: "between 3
// and 4 in 12", "3 to 4 in 12"; "maybe 1 or 2 in 12" is rough anyway.
func (r *reader) rangeFrom(i int) int {
	if i < 2 {
		return -1
	}
	first := r.wholeAt(i - 2)
	if r.wordsIn(r.sentenceFirst(i), i-1, "maybe", "probably", "about", "quizas", "como") || first <= 0 || first >= r.wholeAt(i) {
		return -1
	}
	if r.wordAt(i-1, "and", "y") && r.wordAt(i-3, "between", "entre") || r.wordAt(i-1, "to", "or", "o", "a") {
		return i - 2
	}
	return -1
}

// inchMark reads a level's way of telling it: "at the twelve inch mark it was five and a half
// inches down to the roof".
func (r *reader) inchMark() {
	if !r.asked(fitcheck.TopicRoofSlope) {
		return
	}
	for i := range r.toks {
		if !r.twelve(i) || r.unitAt(i+1) != inch || !r.wordAt(i+2, "mark", "line", "point", "spot") {
			continue
		}
		for j := i + 3; j < min(i+9, len(r.toks)); j++ {
			if n, next := r.numeralAt(j); next > j && !n.bad && n.num > 0 && n.num <= 24*n.den && r.unitAt(next) == inch &&
				r.wordsIn(next, min(next+6, len(r.toks)), "down", "above", "off", "to", "gap", "lower", "up") {
				r.use(i, j-1)
				r.sayslope(fitcheck.Slope{Rise: fitcheck.Length(n.num * int64(fitcheck.Inch) / n.den), Run: run}, j, next)
				return
			}
		}
	}
}
