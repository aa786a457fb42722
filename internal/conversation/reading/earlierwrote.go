package reading

import (
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	wroteLinks        = wordsOf(`you u that it was down as que era eran guys yall by mistake the in to`)
	wroteEarlierVerbs = wordsOf(`wrote told said typed put sent texted gave dije puse escribi mande dicho
		puesto escrito written given`)
	wroteEarlier = wordsOf(`had have le les te habia ya first before earlier mistakenly accidentally wrongly
		originally`)
	wroteSubjects = wordsOf(`i id ive yo we where antes and because porque`)
	writerWords   = wordsOf(`i id ive d yo we`)
	summaryNouns  = wordsOf(`you u it list summary usted`)
	summaryHas    = wordsOf(`have put got wrote listed says puso tiene`)
	askedForVerbs = wordsOf(`asked said wanted ordered need want pedi dije quiero`)
	wroteMistakes = wordsOf(`wrong mistake typo error mistaken incorrect mal equivocado equivocada`)
	wroteYou      = wordsOf(`you u that it was down le les`)
	writerVerbs   = wordsOf(`i id ive yo we dije puse escribi mande`)
)

// earlierWrote: "the opening is 45 1/4 long, I wrote 54 1/4", "46 1/4. I'd told you 46 3/4": after a
// number the clause says nothing but what an earlier message held.
func (r *reader) earlierWrote(m *measure) bool {
	from := r.clauseStart(m.first)
	if !r.numberIn(0, from) || r.labelled(m.first, r.clauseEnd(m.last)) {
		return false
	}
	i := m.first - 1
	for r.among(i, wroteLinks) {
		i--
	}
	if !r.among(i, wroteEarlierVerbs) {
		return false
	}
	for _, h := range within(r.labels, i, r.clauseEnd(m.last)) {
		if h.has1("axis") {
			return false // "25 1/2 wide, I wrote down 49 1/2 for the length"
		}
	}
	for i--; i >= from && r.among(i, wroteEarlier); i-- {
	}
	return i < from || i == from && r.among(i, wroteSubjects) || i == from+1 && r.among(i, writerWords)
}

// saidInstead: "you have two layers for me and I asked for three": of what the list has and what was asked for,
// the latter.
func (r *reader) saidInstead(s sense, h *hit) (string, bool) {
	if s.topic != fitcheck.TopicLayers || !r.asked(fitcheck.TopicConfirm) {
		return "", false
	}
	if !r.anyOf(max(0, h.first-4), h.first, summaryNouns) || !r.anyOf(max(0, h.first-3), h.first, summaryHas) {
		return "", false
	}
	for k := h.last + 1; k < r.sentenceLast(h.last); k++ {
		if !r.among(k, askedForVerbs) {
			continue
		}
		for j := k + 1; j <= k+2; j++ {
			if n := r.wholeAt(j); n > 0 && n < 4 {
				return strconv.Itoa(int(n)), true
			}
		}
	}
	return "", false
}

// wroteWrong: "I wrote 48 in my last mail, and that was wrong": the number stands in no other light.
func (r *reader) wroteWrong(m *measure) bool {
	from, to := r.sentence(m.first)
	if !r.anyOf(m.last+1, to+1, wroteMistakes) || r.numberIn(m.last+1, to+1) {
		return false
	}
	i := m.first - 1
	for r.among(i, wroteYou) {
		i--
	}
	return r.among(i, wroteEarlierVerbs) && r.anyOf(max(from, i-3), i+1, writerVerbs)
}
