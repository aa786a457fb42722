package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	idVerbs = wordsOf(`say call guess like rather love have go prefer be put want think need estimate
		appreciate bet imagine figure hate just probably really get make do give`)
	joinWords     = wordsOf(`to at should be of as now only measures comes on gives gave dan da dieron`)
	roughSubjects = wordsOf(`theyre are were both come came other estan`)
	goesOverVerbs = wordsOf(`cap caps capping fit fits go goes sit sits slide slides slip slips put drop set`)
	overPreps     = wordsOf(`over under around near above below`)
	doubtGoesOn   = wordsOf(`im just honestly thats its a it only tbh though lol sorry is this that sure really
		me so es eso nomas solo`)
	doubtReasons = wordsOf(`because cause since porque no from`)
	faceParts    = wordsOf(`part side piece edge edges of thing`)
	faceForgot   = wordsOf(`forgot forget remember sure say know idea recall tell`)
	facePreps    = wordsOf(`maybe the on from it was`)
	faceUnsure   = wordsOf(`remember recall sure know forgot forget tell say unsure idk maybe recuerdo acuerdo se
		remembered which`)
	inquiryVerbs = wordsOf(`talked talk asked asking called calling spoke inquiring writing texting question`)
)

// only says whether none but small words stand from one token to another.
func (r *reader) only(from, to int) bool {
	for i := from; i <= to; i++ {
		t := &r.toks[i]
		if t.ends() || t.mark(',') {
			return false
		}
		small := t.kind != wordToken || t.word != nil && t.word.filler
		if !small && !r.roughAt(i) && !r.labelKind(i, "axis") {
			return false
		}
	}
	return true
}

// idVerb: what follows makes "id" of "I'd".
func (r *reader) idVerb(i int) bool {
	return r.among(i, idVerbs)
}

// joins: only small words and those that lead to a value stand between: "the curb
// height to 5", "should be 25".
func (r *reader) joins(from, to int) bool {
	for i := from; i <= to; i++ {
		if !r.among(i, joinWords) && !r.only(i, i) {
			return false
		}
	}
	return true
}

// takeRough decides whether words of doubt speak of the measure.
func (r *reader) takeRough(m *measure, h *hit, how string, before bool) {
	if r.wordAt(h.first, "give") && r.wordAt(h.last, "take") {
		m.rough = true // "25 by 49 give or take, the tape was crooked"
		return
	}
	if r.wordAt(h.first, "within") && r.among(h.first-1, roughSubjects) {
		return // "they're within an eighth, 61 7/8 and 62": of each other
	}
	m.fixed = m.fixed || r.putRight(h)
	if r.wordAt(h.last, "ballpark") && r.wordAt(h.last+1, "price", "quote", "cost") {
		return // of the price
	}
	switch how {
	case "near":
		m.rough = m.rough || before && r.nearMeasure(m, h)
	case "clause":
		m.rough = m.rough || r.doubtOfMeasure(m, h, before)
	case "nominal":
		near := m.first - h.last
		if !before {
			near = h.first - m.last
		}
		m.nominal = m.nominal || near <= 3
	case "size":
		m.nominal = true
	}
}

// nearMeasure: "about 25 x 49"; not "a skylight to cap over 22 1/4 x 22 1/4".
func (r *reader) nearMeasure(m *measure, h *hit) bool {
	return !r.goesOver(h) && !r.almostRight(h) && r.only(h.last+1, m.first-1) && !r.placeWord(h)
}

// doubtOfMeasure: a clause of doubt before or after the measure speaks of it.
func (r *reader) doubtOfMeasure(m *measure, h *hit, before bool) bool {
	if before {
		return r.doubtReaches(h, m.first)
	}
	if h.first > m.last+1 && r.wordAt(h.first-1, "so") && r.wordAt(h.last, "guess", "suppose", "think", "reckon") {
		return false // "both come out to 38 5/16, so I guess the carpenter knew his trade"
	}
	if h.first == m.last+1 && r.wordAt(h.first, "or") && r.wordAt(h.last, "so") {
		return true // "25 1/2 or so outside to outside"
	}
	return r.wordAt(h.last, "off") || !r.choiceAfter(h.last) && !r.otherMeasured(h)
}

// almostRight: "Almost - the long side is 48 1/2": the list is, not the number.
func (r *reader) almostRight(h *hit) bool {
	return h.first == 0 && r.wordAt(h.first, "almost", "close", "nearly", "casi") &&
		h.last+1 < len(r.toks) && r.toks[h.last+1].kind == markToken
}

// goesOver: "where it caps over 30 x 46": no doubt of a number.
func (r *reader) goesOver(h *hit) bool {
	return r.wordAt(h.first, "over") && r.among(h.first-1, goesOverVerbs)
}

// derived: the length is worked out and not measured: "so the outside would be 25 x 49".
func (r *reader) derived(h *hit) bool {
	return h.is("rough", "derived") && !r.putRight(h) ||
		h.is("rough", "supposed") && r.wordsIn(r.clauseStart(h.first), h.first, "so", "which", "means", "then", "makes")
}

// putRight: "el plástico debe ser 42 x 42" puts a number right where no measure was asked
// for; as an answer it is a guess.
func (r *reader) putRight(h *hit) bool {
	return r.wordAt(h.first, "debe", "deberia") && (r.askedSize() == "none" || r.ofOther(h.first))
}

// ofOther: the words before the token name another size than the one that was asked for.
func (r *reader) ofOther(to int) bool {
	var m measure
	labels := within(r.labels, r.clauseStart(to), to-1)
	for n := range labels {
		if h := &labels[n]; isName(h) {
			switch s := h.senses[0]; s.kind {
			case "topic":
				m.topic = fitcheck.Topic(s.value)
			case "part":
				m.part = s.value
			case "face":
				m.face = s.value
			}
		}
	}
	topic := m.topic
	if topic == "" {
		topic, _ = sizeTopic(m.part, m.face)
	}
	return topic != "" && !r.asked(topic)
}

// placeWord: "the part that caps over is 25", "all around is 25": no doubt of a number.
func (r *reader) placeWord(h *hit) bool {
	return r.among(h.first, overPreps) && r.wordAt(h.last+1, "is", "are", "measures", "was")
}

// doubtedNext: the sentence at the token says that the measure before it is a guess, and no
// more: "25 x 49. Just eyeballed it", "8 inches? not sure".
func (r *reader) doubtedNext(from int) bool {
	if from < 1 || from >= len(r.toks) {
		return false
	}
	_, to := r.sentence(from)
	doubt := false
	for i := from; i <= to; i++ {
		if h := r.labelFrom(i); h != nil && h.is("rough", "clause") || r.markAt(from-1, '?') && r.dontKnowAt(i) {
			doubt = true
			if h != nil {
				i = h.last
			}
			continue
		}
		if r.toks[i].kind == markToken && !r.markAt(i, ',') || r.among(i, doubtGoesOn) {
			continue
		}
		return doubt && (r.markAt(i, ',') || r.among(i, doubtReasons))
	}
	return doubt
}

// doubtReaches: no other statement stands between the doubt and the measure: "I think
// it's a curb mount, outside 25 x 49".
func (r *reader) doubtReaches(h *hit, to int) bool {
	if r.wordAt(h.first, "give", "plus", "within") {
		return true
	}
	for i := h.last + 1; i < to; i++ {
		if r.softBreak(i) && !r.only(h.last+1, i-1) {
			return false
		}
	}
	return true
}

// otherMeasured: "24 x 48, never measured the wood": the doubt is about something else.
func (r *reader) otherMeasured(h *hit) bool {
	if !r.wordAt(h.last, "measured", "measure", "measuring") {
		return false
	}
	_, end := r.sentence(h.last)
	return h.last+1 < len(r.toks) && r.labelled(h.last+1, end)
}

// choiceAfter: the sentence goes on about something else after the doubt.
func (r *reader) choiceAfter(i int) bool {
	_, end := r.sentence(i)
	hits := within(r.choices, i+1, end)
	for n := range hits {
		if r.toks[hits[n].first].kind == wordToken {
			return true
		}
	}
	return false
}

// beside looks at each length of the measure for words and signs of doubt of its own.
func (r *reader) beside(m *measure) {
	for k := range m.parts {
		q := &m.parts[k]
		whole := m.rough
		m.rough = m.rough || q.loose
		first, _ := r.sentence(q.first)
		labels := within(r.labels, first, q.last)
		for n := range labels {
			if r.doubtsPart(m, k, &labels[n]) {
				m.rough = true
			}
		}
		m.half = k == 1 && len(m.parts) == 2 && m.rough && !whole && r.turnsTo(m.parts[0].last, q.last)
	}
}

// doubtsPart: the words of doubt speak of the k-th length of a measure.
func (r *reader) doubtsPart(m *measure, k int, h *hit) bool {
	q := &m.parts[k]
	v, ok := h.has("rough")
	if h.first >= q.first && h.last <= q.last {
		return (v == "near" || v == "clause") && !r.wordAt(h.first, "over")
	}
	if h.last >= q.first {
		return false
	}
	if r.derived(h) {
		return true
	}
	if !ok || r.goesOver(h) || r.almostRight(h) || r.placeWord(h) {
		return false
	}
	if k == 0 {
		return v == "near" && r.only(h.last+1, q.first-1)
	}
	switch v {
	case "off", "size", "derived", "supposed":
		return false
	}
	return h.first > m.parts[k-1].last && (v == "clause" || r.only(h.last+1, q.first-1))
}

// faceForgotten: "25 x 49, can't remember if that was inside or outside".
func (r *reader) faceForgotten(m *measure) bool {
	from, to := r.sentence(m.first)
	if to+1 < len(r.toks) {
		_, to = r.sentence(to + 1)
	}
	for i := from + 1; i <= to; i++ {
		if r.wordAt(i, "which", "what") && r.among(i+1, faceParts) && r.anyOf(max(0, i-4), i, faceForgot) {
			return true // "forgot which part I measured"
		}
		if !r.wordAt(i, "or", "o") || !r.labelKind(i-1, "face") {
			continue
		}
		j := i + 1
		for r.among(j, facePreps) {
			j++
		}
		if j < len(r.toks) && r.labelKind(j, "face") && r.anyOf(from, to+1, faceUnsure) {
			return true
		}
	}
	return false
}

// turnsTo: a new clause, with the doubt in it, begins after the first side: "25 1/2 wide, length
// maybe 48"; not "28 wide I think and 40 long".
func (r *reader) turnsTo(side, last int) bool {
	for i := side + 1; i <= last; i++ {
		if r.roughAt(i) {
			return false
		}
		if r.softBreak(i) || r.wordAt(i, "and", "y", "but", "pero") {
			return true
		}
	}
	return false
}

// nearDoubt: "about a dozen".
func (r *reader) nearDoubt(first int) bool {
	i := first - 1
	for r.wordAt(i, "a", "the") {
		i--
	}
	if r.wordAt(first, "a") && i < 0 {
		i = first
	}
	if r.wordAt(i, "about") && r.anyOf(r.sentenceFirst(i), i, inquiryVerbs) {
		return false // "we talked about 3 domes"
	}
	return i >= 0 && r.labelAt[i] >= 0 && r.labels[r.labelAt[i]].is("rough", "near")
}
