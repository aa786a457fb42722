package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	frameTroubles  = wordsOf(`damage problem problems issues bent rust`)
	beforeNoFrame  = wordsOf(`metal aluminum a any un de real ningun`)
	frameLackVerbs = wordsOf(`theres is has have got hay`)
)

// answers reads yes and no, "don't know" and "doesn't matter" as answers to what was
// asked.
func (r *reader) answers() {
	if len(r.Asked) == 0 {
		return
	}
	if r.asked(fitcheck.TopicConfirm) {
		r.confirm()
	}
	if r.asked(fitcheck.TopicPhotos) {
		r.photos()
	}
	if r.asked(fitcheck.TopicFrameCondition) {
		r.noFrame()
	}
	for n := range r.talk {
		r.unknownOrRefused(&r.talk[n])
	}
	r.bareNo()
	for n := range r.talk {
		if h := &r.talk[n]; h.is("say", "usual") {
			r.leftToShop(h)
		}
	}
}

// unknownOrRefused lets go of what a "don't know" or a refusal answers.
func (r *reader) unknownOrRefused(h *hit) {
	switch {
	case r.toks[h.first].used:
	case h.is("say", "dontknow") && r.forgotThing(h):
	case h.is("say", "refuse"):
		r.unknown(h, func(t fitcheck.Topic, _ *hit) { r.out.DontKnow = append(r.out.DontKnow, t) })
	case h.is("say", "dontknow") && !r.asksHowIf(h) && !r.climbsLater(h) && !r.questioned(h.last):
		r.unknown(h, r.dontKnow)
	}
}

// asksHowIf: "how do I know if": a question.
func (r *reader) asksHowIf(h *hit) bool {
	return r.wordsIn(h.first-1, h.last, "how") && r.wordsIn(h.last, h.last+2, "if")
}

// climbsLater: "ahorita no puedo subir, te mando foto al rato": it is to come.
func (r *reader) climbsLater(h *hit) bool {
	return r.wordsIn(h.first, h.last+1, "puedo", "subir") && r.wordsIn(0, len(r.toks), "rato", "manana", "luego", "despues")
}

// leftToShop gives a "whatever" to the questions that it answers: all that are still
// open, or, where another answer follows, the one whose turn it is.
func (r *reader) leftToShop(h *hit) {
	if _, end := r.sentence(h.first); r.wordAt(h.first, "either") && r.wordsIn(h.first+1, end+1, "or") {
		return // "either 2 or 3"
	}
	if r.saysWhich(h) {
		return
	}
	if r.bestForWhat(h) {
		r.request(RequestQuestion)
		return
	}
	if r.wordAt(h.last, "regular", "normal", "usual", "standard") && r.saysUse(h.last+1) {
		return // "just a regular house"
	}
	open := r.openForShop()
	follows := slices.ContainsFunc(r.where, func(w saidAt) bool { return w.first > h.last && r.asked(w.topic) })
	if follows && len(open) > 1 {
		open = []fitcheck.Topic{r.turnOf(h, open)}
	}
	for _, t := range open {
		r.usual(t, h)
	}
}

// openForShop are the open questions that the shop can answer by what is usual.
func (r *reader) openForShop() []fitcheck.Topic {
	var open []fitcheck.Topic
	for _, t := range r.openTopics() {
		if t.OfUnit() && !t.OfLength() && !slices.Contains(r.out.Usual, t) {
			open = append(open, t)
		}
	}
	return open
}

// firstTalk is the first "say" of a kind that is not part of a denial.
func (r *reader) firstTalk(value string) *hit {
	for n := range r.talk {
		if r.talk[n].is("say", value) {
			return &r.talk[n]
		}
	}
	return nil
}

// dontKnow: some topics have a value for it.
func (r *reader) dontKnow(t fitcheck.Topic, h *hit) {
	switch t {
	case fitcheck.TopicStyle, fitcheck.TopicFrameCondition, fitcheck.TopicWant:
		if r.guessed(t) {
			return // "I think it's a metal frame on a box, no idea if I need all of it": a yes to the guess is enough
		}
		if !r.doubtful(t) {
			r.fact(t, 0, fitcheck.Choice("unsure"), h.first, h.last)
			return
		}
	}
	r.out.DontKnow = append(r.out.DontKnow, t)
}

// guessed: the message says of the topic what it likely is.
func (r *reader) guessed(t fitcheck.Topic) bool {
	return slices.ContainsFunc(r.out.Unclear, func(u Unclear) bool {
		return u.Topic != nil && *u.Topic == t && u.Why == WhyRough
	})
}

// asksForUsual: "what do most people get?" is all that is said, and asks for what the shop
// would choose, which is its answer.
func (r *reader) asksForUsual() bool {
	if len(r.out.Usual) == 0 || len(r.out.Facts) > 0 {
		return false
	}
	if _, last := r.sentence(0); last+1 < len(r.toks) {
		return false
	}
	for n := range r.talk {
		h := &r.talk[n]
		if h.is("say", "usual") && r.wordsIn(h.first-1, h.last+1, "what", "whats", "most", "que", "cual") {
			return true
		}
	}
	return false
}

// usual leaves a topic to the shop, as far as the shop has what is usual there.
func (r *reader) usual(t fitcheck.Topic, h *hit) {
	if t == fitcheck.TopicWant && !r.doubtful(t) {
		r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), h.first, h.last)
		return
	}
	if t == fitcheck.TopicStyle && r.wordsIn(h.first, h.last+1, "standard", "usual", "regular", "normal", "estandar") {
		if !r.doubtful(t) {
			r.unclear(t, 0, WhyChoice, nil, h.first, h.last) // no style is the usual one
		}
		return
	}
	next := h.last + 1
	if r.wordAt(h.first, "both", "all") && r.wordAt(h.last, "are", "is") && next < len(r.toks) && r.toks[next].kind == wordToken {
		return // "both are the metal kind"
	}
	r.dropDoubt(t)
	r.out.Usual = append(r.out.Usual, t)
}

// dropDoubt takes a doubt about a topic back: what is left to the shop is not asked again.
func (r *reader) dropDoubt(t fitcheck.Topic) {
	kept := r.out.Unclear[:0]
	for _, u := range r.out.Unclear {
		if u.Topic == nil || *u.Topic != t {
			kept = append(kept, u)
		}
	}
	r.out.Unclear = kept
}

// noFrame: "there is no metal frame" to what the frame is like: the plastic is screwed down
// bare.
func (r *reader) noFrame() {
	if r.known(fitcheck.TopicStyle) || r.known(fitcheck.TopicFrameCondition) || r.tookAway() {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "frame", "marco", "frames", "marcos") || r.among(i+1, frameTroubles) {
			continue
		}
		k := i - 1
		for r.among(k, beforeNoFrame) {
			k--
		}
		if r.frameLacks(k) {
			r.fact(fitcheck.TopicStyle, 0, fitcheck.Choice(fitcheck.StyleBareDome), k, i)
			return
		}
	}
}

// frameLacks: the word before "frame" says that there is none: "there is no", "no hay", "doesn't have".
func (r *reader) frameLacks(k int) bool {
	switch {
	case r.wordAt(k, "no"):
		return k == 0 || r.among(k-1, frameLackVerbs) || r.toks[k-1].kind == markToken
	case r.wordAt(k, "hay", "tiene", "lleva", "trae", "tengo"):
		return r.wordAt(k-1, "no")
	}
	return r.wordAt(k, "have", "isnt") && r.wordAt(k-1, "doesnt", "dont", "there")
}
