package reading

import "example.com/intake-bot/internal/fitcheck"

// Which words before and after a measure say what it is of.

var (
	contextHalts    = wordsOf(`no wait hang hold on sorry oops actually espere perdon`)
	contextPointers = wordsOf(`that thats this those these theyre its it is all both eso esa esas es son
		estas`)
	theOrMine     = wordsOf(`the my our el la los mi las`)
	saysOfItVerbs = wordsOf(`is are was looks look has have seems s got esta estan se tiene`)
)

// wordsBefore reads the labels before a measure, the nearest first. Those of earlier
// sentences count only where its own has none.
func (r *reader) wordsBefore(m *measure, region [2]int) {
	own := r.sentenceFirst(m.first)
	named := own // the sentence that says what the measure is of
	for i := region[1]; i >= region[0]; i-- {
		if r.cameOutAt(i) && r.otherTold(r.sentenceFirst(i), i) {
			return // "it's been up there 20 years at least came out to 16 x 15"
		}
		if r.labelAt[i] < 0 {
			continue
		}
		h := &r.labels[r.labelAt[i]]
		i = h.first
		if h.first < own && r.sizeAskedAbout(own, m.first) || r.differenceBetween(h.first) {
			return // "what's the difference between acrylic and polycarbonate 30 x 46"
		}
		if r.namesNoMeasure(h, m) {
			continue
		}
		if h.first < own && m.where && h.first >= named && !h.has1("face") {
			continue // of what is named only the face may still be told: "the outside length for the curb"
		}
		if h.first < own && (m.where && h.first < named || r.toldOfElse(h, own)) {
			if m.where {
				return
			}
			continue
		}
		r.takeBefore(m, h, h.first >= own)
		if m.where && named == own {
			named = min(own, r.sentenceFirst(h.first))
		}
	}
}

// cameOutAt: "came out to", "tape says": a number that was read off begins here.
func (r *reader) cameOutAt(i int) bool {
	return r.wordAt(i, "came") && r.wordAt(i+1, "out") && r.wordAt(i+2, "to") || r.wordAt(i, "tape") && r.wordAt(i+1, "says")
}

// sizeAskedAbout: "The outside was right. As for the height you asked about, it is 6 inches".
func (r *reader) sizeAskedAbout(from, to int) bool {
	return r.wordsIn(from, to, "asked", "pregunto", "pidio") && r.wordsIn(from, to, "height", "altura", "size", "medida")
}

// namesNoMeasure: the label before a measure is no name of it: what bears the skylight, what can't be had, or
// "a barn outside Burlington".
func (r *reader) namesNoMeasure(h *hit, m *measure) bool {
	return r.bearsSkylight(h) || r.standsBy(h) || r.cappedOver(h) || r.cantBeHad(h, h.last+1, m.first) ||
		r.onlyTold(h) && r.softBetween(h.last+1, m.first) ||
		h.has1("face") && (h.last+1 < len(r.toks) && r.toks[h.last+1].named || h.last < r.sentenceFirst(m.first) && r.diagonalsOver(h))
}

// toldOfElse: the sentence of an earlier label says that it can't be had, asks, or tells of harm or style.
func (r *reader) toldOfElse(h *hit, own int) bool {
	return r.denied(h.first) && !r.toldWrong(h.first, own) || r.endsAsked(h.first) || r.harmedPart(h) || r.partOfStyle(h)
}

// wordsAfter reads the labels after a measure up to the end of its sentence; where it
// has none at all, also those of the next: "25 x 49. That's the outside of the curb."
func (r *reader) wordsAfter(m *measure, region [2]int) {
	_, end := r.sentence(m.last)
	if r.sentenceEnd(m.last) {
		end = m.last
	}
	for i := region[0]; i <= region[1] && i <= end && !r.leavesMeasure(m, i); i++ {
		h := r.labelFrom(i)
		if h == nil {
			continue
		}
		if r.namesElseAfter(m, h) {
			break
		}
		r.takeAfter(m, h)
		i = h.last
	}
	m.rough = m.rough || r.doubtedNext(end+1)
	if end+1 <= region[1] && (!m.where || r.namedLater(m, end+1)) {
		r.takesNextSentence(m, end+1, region[1])
	}
}

// leavesMeasure: a question begins at the token, or something else: "116,8 cm por 116,8 cm, ¿qué diferencia hay
// entre acrílico y …", "inside: 46 x 46, single layer plastic".
func (r *reader) leavesMeasure(m *measure, i int) bool {
	if r.toks[i].used && r.toks[i].kind == numToken {
		return true // a slope or a count: what follows is of that
	}
	return r.asksFrom(i) ||
		r.markAt(i, ',') && (m.face != "" && r.markAt(m.first-1, ':') || r.turnsAway(i+1))
}

// namesElseAfter: the label after a measure is no name of it.
func (r *reader) namesElseAfter(m *measure, h *hit) bool {
	return r.ownStatement(m.last+1, h) || r.materialChosen(m, h) || r.otherAside(m, h) || r.cantBeHad(h, m.last+1, h.first) ||
		r.onlyTold(h) && r.softBetween(m.last+1, h.first)
}

// takesNextSentence reads what the next sentence says of a measure: "50 by 26. No hang on, that's the plastic".
func (r *reader) takesNextSentence(m *measure, i, to int) {
	for i < to && (r.among(i, contextHalts) || r.markAt(i, ',')) {
		i++
	}
	if !r.among(i, contextPointers) && r.labelFrom(i) == nil {
		return
	}
	end := r.sentenceLast(i)
	if r.denied(i) || r.labelFrom(i) != nil && r.tellsState(i, end) {
		return
	}
	alone := m.shape == lone && r.labelsOnly(i) // "51 1/2. Both ways"
	for ; i <= end && i <= to; i++ {
		h := r.labelFrom(i)
		switch {
		case h == nil:
		case isName(h) && !r.materialChosen(m, h) && !r.otherAside(m, h):
			r.takeName(m, h, h.senses[0], false)
		case alone && h.senses[0].kind == "shape":
			m.takeShape(h.senses[0].value)
		}
	}
}

// ownStatement: a new clause says what a part is like: "33 by 57 and the frame is rusty".
func (r *reader) ownStatement(from int, h *hit) bool {
	return isName(h) && r.softBetween(from, h.first) && r.anyOf(max(from, h.first-2), h.first, theOrMine) &&
		r.among(h.last+1, saysOfItVerbs) && r.tellsState(h.first, r.clauseEnd(h.last))
}

// tellsState: the sentence says what a part is like: "33 1/2 by 57 1/2. The frame has old
// caulk all over it".
func (r *reader) tellsState(from, to int) bool {
	hits := within(r.choices, from, to)
	for n := range hits {
		if hits[n].has1(string(fitcheck.TopicFrameCondition)) || hits[n].has1(string(fitcheck.TopicProblem)) {
			return true
		}
	}
	return false
}

// turnsAway: after the comma at i-1 the layers are told, whatever they are of: "from
// inside, single layer plastic".
func (r *reader) turnsAway(i int) bool {
	labels := within(r.labels, i, r.sentenceLast(i))
	for n := range labels {
		if k := labels[n].senses[0].kind; k == "face" || k == "topic" {
			return false
		}
	}
	hits := within(r.choices, i, i+1)
	for n := range hits {
		if hits[n].has1(string(fitcheck.TopicLayers)) && !hits[n].senses[0].asked {
			return true
		}
	}
	return false
}

// asksFrom: a question opens a clause at the token.
func (r *reader) asksFrom(i int) bool {
	talk := within(r.talk, i, i)
	return len(talk) > 0 && talk[0].is("req", "question") &&
		(r.softBreak(i-1) || r.wordAt(i, "whats", "how", "why")) && r.asks(&talk[0])
}
