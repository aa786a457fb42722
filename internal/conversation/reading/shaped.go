package reading

import "example.com/intake-bot/internal/fitcheck"

// What is square, round, diagonal or measured around, by the words beside a length.

var (
	squareLinks = wordsOf(`its it is es all both theyre son todo the square cuadrado cuadrada`)
	crackWords  = wordsOf(`crack cracked cracks split splits tear torn broke broken grieta rajado rajada rajadura
		quebrado agrietado partido`)
	otherShaped = wordsOf(`crack cracks hole chip pool house home building room roof kitchen hall hallway addition
		garage barn`)
	otherShapedBefore = wordsOf(`crack cracked cracks house home building roof room garage barn kitchen`)
	squareManner      = wordsOf(`square straight right even evenly correctly properly well level true clean quite exactly
		perfectly very good`)
)

func (m *measure) takeShape(s string) {
	switch s {
	case "square":
		m.square = true
	case "round", "diameter":
		m.round = true
	case "radius":
		m.round, m.radius = m.shape == lone, m.shape == lone
	case "diagonal":
		m.diag = true
	case "circumference":
		m.girth = m.shape == lone
	}
}

// shapedBy remembers the words that tell the shape of a lone length: quoting it without
// them would lose a side.
func (m *measure) shapedBy(h *hit) {
	if m.shape != lone {
		return
	}
	if m.shaped[0] < 0 {
		m.shaped = [2]int{h.first, h.last}
	}
	m.shaped = [2]int{min(m.shaped[0], h.first), max(m.shaped[1], h.last)}
}

// roundAll: where the message says that it is round, what is measured across is a diameter.
func (r *reader) roundAll(ms []measure) {
	for n := range r.labels {
		if !r.labels[n].is("shape", "round") || r.negated(r.labels[n].first) {
			continue
		}
		for k := range ms {
			if m := &ms[k]; m.parts[0].bare && r.askedSize() == "none" && m.parts[0].num <= maxNominal*m.parts[0].den {
				continue // "five. They're all round"
			} else if m.shape == lone && (m.parts[0].side == across || m.parts[0].side == noSide && !m.diag) {
				m.round = true
			}
		}
	}
}

// squareAll: "por dentro 22 1/4, por fuera 25 1/4, es cuadrado": what comes last, by itself, is
// said of all.
func (r *reader) squareAll(ms []measure) {
	last := &ms[len(ms)-1]
	if len(ms) < 2 || last.shape != lone || !last.square {
		return
	}
	i := last.last + 1
	for i < len(r.toks) && (r.toks[i].kind == markToken || r.wordAt(i, "and", "y", "so")) {
		i++
	}
	if i == last.last+1 || !r.among(i, squareLinks) {
		return
	}
	for k := range ms {
		if m := &ms[k]; m.shape != lone || m.parts[0].side != noSide || m.diag || m.face == "" && m.topic == "" {
			return
		}
	}
	for k := range ms {
		ms[k].square = true
	}
}

// crackRuns: "cracked from corner to corner": how the crack goes, no measure.
func (r *reader) crackRuns(h *hit) bool {
	for i := max(r.clauseStart(h.first), h.first-7); i < h.first; i++ {
		if r.among(i, crackWords) {
			return true
		}
	}
	return false
}

// shapeOfOther: a shape, a peak or a cut that is no skylight's: "star shaped crack",
// "the house is L shaped", "my roof comes to a peak", "the hole was not cut right".
func (r *reader) shapeOfOther(s sense, h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	switch {
	case s.topic == fitcheck.TopicOutline && s.value == "round" &&
		r.wordsIn(max(from, h.first-4), min(h.last+3, to+1), "corner", "corners", "esquina", "esquinas"):
		return true // "rectangular but the corners are round"
	case s.topic == fitcheck.TopicOutline && !r.asked(s.topic) && r.wordAt(h.last, "shape", "shaped"):
		if r.anyOf(h.last+1, min(h.last+3, len(r.toks)), otherShaped) {
			return true
		}
		return r.anyOf(from, h.first, otherShapedBefore) &&
			!r.wordsIn(from, to+1, "skylight", "skylights", "dome", "domes", "opening", "window")
	case s.value == "flat" && r.wordAt(h.first, "no") && r.wordAt(h.first+1, "its", "it", "thats", "theyre", "es", "is", "son"):
		return true // "no it's a dome"
	case s.value == "pyramid" && r.wordAt(h.first, "come", "comes", "coming", "rise", "rises", "go", "goes"):
		return r.wordAt(h.first-1, "roof", "house", "price", "cost", "ceiling", "water", "barn", "building") || r.negated(h.first) ||
			r.wordAt(h.last+1, "where", "that", "when") && !r.wordsIn(h.last+2, to+1, "sides", "four", "4", "all", "meet")
	case s.value == fitcheck.StyleNoneYet && r.wordAt(h.last, "cut", "out"):
		next := h.last + 1
		if r.wordAt(next, "out") {
			next++
		}
		return r.among(next, squareManner) ||
			r.wordAt(next-1, "out") && r.wordAt(next, "for") && r.wordAt(next+1, "this", "that", "these")
	}
	return false
}

// measuresCorners: diagonals are told, so "square" says that the corners are.
func (r *reader) measuresCorners() bool {
	if r.asked(fitcheck.TopicCurbDiagonals) {
		return true
	}
	for n := range r.labels {
		if r.labels[n].is("shape", "diagonal") {
			return true
		}
	}
	return false
}
