package reading

import "example.com/intake-bot/internal/fitcheck"

// What could hit a skylight and is too far off to do so: "the golf course is a mile away", "there are trees
// but none overhang the roof", "hay árboles pero están lejos".

var (
	farUnits    = wordsOf(`mile miles km kilometers kilometro kilometros milla millas minutes minutos cuadras`)
	farAway     = wordsOf(`away off from down lejos de out back`)
	farIs       = wordsOf(`is are about esta estan queda`)
	feetUnits   = wordsOf(`ft feet foot yards yds pies metros meters`)
	notFarWords = wordsOf(`so not that too how as no`)
	farDenials  = negWords.and(`ninguno ninguna nowhere`)
	reachWords  = wordsOf(`overhang overhanging overhangs hang hangs hanging over near close above reach reaches touch
		encima cerca alcanza alcanzan llega llegan tapa`)
	notQuiteNear = wordsOf(`close near too that very really`)
	hereLeads    = wordsOf(`in here en aqui around out down up over por`)
	flatNo       = wordsOf(`never no nope nah nunca jamas not`)
	golferTraits = wordsOf(`a an avid big no not real terrible bad good great`)
)

const nearTree = 40 // feet, a tall tree's height; common practice

// farOff: the words after the thing put it out of reach.
func (r *reader) farOff(s sense, h *hit) bool {
	if !r.risks(s) {
		return false
	}
	if r.neverThere(h.last) {
		return true
	}
	if s.value != "golf" && s.value != "trees" || r.anyOf(h.first, h.last+1, fallVerbs) {
		return false
	}
	to := r.sentenceLast(h.last)
	for i := h.last + 1; i <= to; i++ {
		if r.otherRisk(i, h) || r.among(i, fallVerbs) && !r.negated(i) {
			return false
		}
		if r.milesOff(i, h, to) || s.value == "trees" && r.feetOff(i, to) || r.farAt(i) {
			return true
		}
		if r.outOfReach(i, to) {
			return !r.wordsIn(h.last+1, i, "if", "si") && !r.wordsIn(i+1, min(i+7, to+1), "know", "sure", "only")
		}
	}
	return false
}

// risks: the words tell of what could hit the skylight, or answer that.
func (r *reader) risks(s sense) bool {
	return s.value != "none" && s.value != "?" && (s.topic == fitcheck.TopicImpactRisk ||
		s.value == fitcheck.ProblemStorm && r.asked(fitcheck.TopicImpactRisk))
}

// milesOff: "the golf course is a mile away"; not "half a mile".
func (r *reader) milesOff(i int, h *hit, to int) bool {
	if !r.among(i, farUnits) || r.wordsIn(h.last+1, i, "half", "for", "every", "within", "in") {
		return false
	}
	return r.anyOf(i+1, min(i+5, to+1), farAway) || i-h.last > 1 && r.anyOf(h.last+1, i, farIs)
}

// feetOff: "the trees are 60 feet away".
func (r *reader) feetOff(i, to int) bool {
	return r.among(i, feetUnits) && r.anyOf(i+1, min(i+5, to+1), farAway) && r.wholeAt(i-1) >= nearTree
}

// farAt: "they're far away"; not "not that far".
func (r *reader) farAt(i int) bool {
	return r.wordAt(i, "far", "lejos") && !r.negated(i) &&
		!r.among(i-1, notFarWords) && !r.wordAt(i-2, "not", "no", "isnt", "arent")
}

// outOfReach: "none overhang the roof".
func (r *reader) outOfReach(i, to int) bool {
	if !r.among(i, farDenials) || !r.anyOf(i+1, min(i+7, to+1), reachWords) {
		return false
	}
	// "a few trees but not close": close enough for a limb
	return !(r.wordAt(i, "not", "arent", "isnt") && r.among(i+1, notQuiteNear))
}

// otherRisk: another thing that could hit begins at the token.
func (r *reader) otherRisk(i int, h *hit) bool {
	risk := string(fitcheck.TopicImpactRisk)
	hits := within(r.choices, i, i)
	for n := range hits {
		if v, ok := hits[n].has(risk); ok && v != "none" && v != "?" && !h.is(risk, v) {
			return true
		}
	}
	return false
}

// neverThere: "hail? in Phoenix? never": a question back, where it is, and a no.
func (r *reader) neverThere(last int) bool {
	if !r.markAt(last+1, '?') || !r.among(last+2, hereLeads) {
		return false
	}
	i := last + 2
	for i < min(last+8, len(r.toks)) && !r.sentenceEnd(i) && !r.toks[i].mark(',') {
		i++
	}
	return i < len(r.toks) && i > last+2 && r.among(i+1, flatNo)
}

// golferTold: "my husband's a golfer, lol, but no": who plays, not where balls fly.
func (r *reader) golferTold(h *hit) bool {
	return r.wordAt(h.last, "golfer", "golfers") &&
		(r.among(h.first-1, golferTraits) || r.wordAt(h.last+1, "in", "here", "myself"))
}
