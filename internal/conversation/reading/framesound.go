package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// What is said of the frame by what it did or has, and not by a word for its state: it held up, nothing
// is the matter with it, it is broken, nobody looked.

var (
	lookWords = wordsOf(`look looked looking checked check notice noticed attention inspected inspect examined
		examine seen saw climbed mire mirado fijado fije visto revisado checado revise`)
	brokenWord = wordsOf(`crack cracks cracked broken broke split splits snapped shattered missing shot toast junk
		trashed wrecked totaled totalled ruined destroyed kaput busted garbage roto rota rotos quebrado quebrados rajado
		partido perdido`)
	noneOfFaults = wordsOf(`nothing nada no zero any isnt aint ningun sin`)
	faultNouns   = wordsOf(`wrong matter problem problems issue issues trouble complaint complaints malo problema
		problemas`)
	frameHoldVerbs = wordsOf(`held holding holds cleaned cleans came`)
	holdsHow       = wordsOf(`nicely nice well fine great good beautifully perfectly clean`)
	fineShape      = wordsOf(`fine good great perfect excellent decent nice tip top`)
	shapeNouns     = wordsOf(`fettle nick shape order repair form condition trim`)
	plentyWords    = wordsOf(`plenty lots lot good many mucha`)
	brokenVerbs    = wordsOf(`is are was has have got looks s esta estan tiene a`)
	lookedBut      = wordsOf(`if you except but until si`)
	lookWhen       = wordsOf(`today now tomorrow until tonight yet hoy ahorita`)
	lookAfter      = wordsOf(`like that good bad bien mal any anything rust much`)
	paintNouns     = wordsOf(`paint finish color colour coating anodizing bronze shine pintura brillo`)
	paintGoneWords = wordsOf(`gone worn wore off flaking flaked peeled peeling chipped chipping washed fading faded
		disappeared gris caido caida cayo perdido perdio pelada fue`)
)

// frameHolds: "the frame that holds it has held up nicely", "in fine fettle", "not a thing the matter with
// the frame", "there is plenty of life left in the frame"; last is -1 where nothing says so.
func (r *reader) frameHolds(i int) (int, int) {
	from, to := r.sentence(i)
	if r.doubtBetween(from, to+1) || r.wordsIn(from, to+1, "new", "nuevo") {
		return i, -1
	}
	for k := max(from, i-9); k < i; k++ {
		if r.nothingWrongWith(k, i) {
			return k, i
		}
	}
	if r.deniesBetween(i, min(i+8, to+1)) {
		if r.hasNoFault(i+1, to) {
			return i, min(i+5, to)
		}
		return i, -1
	}
	for k := i + 1; k <= min(i+10, to); k++ {
		if r.among(k, otherThings) && !r.anyOf(k-3, k, besideThings) || faultState(r.wordText(k)) {
			return i, -1
		}
		if r.holdsAt(i, k, min(k+5, to+1)) {
			return i, min(k+3, to)
		}
	}
	return i, -1
}

// nothingWrongWith: "nothing wrong with the frame", "not a thing the matter with it", from k to the frame.
func (r *reader) nothingWrongWith(k, i int) bool {
	none := r.among(k, noneOfFaults) || r.wordAt(k, "not") && r.wordAt(k+1, "a", "one", "any")
	return none && r.anyOf(k+1, i, faultNouns) && r.wordsIn(max(k, i-4), i, "with", "about", "con") &&
		!r.wordsIn(k, i, "except", "but", "dome", "plastic", "domo")
}

// hasNoFault: "has no problems", "no tiene nada malo".
func (r *reader) hasNoFault(k, to int) bool {
	return r.wordAt(k, "has", "tiene", "no") && r.wordsIn(k, min(k+3, to+1), "nothing", "no", "nada") &&
		r.anyOf(k+1, min(k+6, to+1), faultNouns)
}

// holdsAt: words begin at k that praise the frame at i.
func (r *reader) holdsAt(i, k, end int) bool {
	switch {
	case r.among(k, frameHoldVerbs): // "has held up nicely"
		return r.wordAt(k+1, "up", "together", "out") && r.anyOf(k+2, end, holdsHow)
	case r.wordAt(k, "in"): // "in tip top shape"
		return r.anyOf(k+1, end, fineShape) && r.anyOf(k+1, end, shapeNouns)
	case r.wordAt(k, "life", "years", "vida"): // "has plenty of years left in it"
		return r.anyOf(max(i, k-4), k, plentyWords) && r.wordsIn(i+1, k, "has", "got", "have", "s", "tiene") &&
			r.wordsIn(k+1, end, "left", "yet", "in")
	case r.wordAt(k, "as"): // "as straight as the day it went in"
		return r.wordAt(k+1, "good", "solid", "sound", "straight", "strong") && r.wordAt(k+2, "as")
	}
	return false
}

// frameBroken: asked for its state, "the frame has a crack in it", "frames are shot", "frame is toast" tell
// none of those that the shop goes by, so it is asked which.
func (r *reader) frameBroken() {
	t := fitcheck.TopicFrameCondition
	if !r.asked(t) || r.known(t) || r.doubtful(t) {
		return
	}
	for i := range r.toks {
		if r.among(i, frameNouns) && r.noneLeft(i) {
			r.unclear(t, 0, WhyChoice, nil, i-1, i+1)
			return
		}
		if !r.among(i, frameNouns) && !r.metalPart(i) || !r.theirFrame(i) {
			continue
		}
		if k := r.brokenAfter(i); k > 0 {
			r.unclear(t, 0, WhyChoice, nil, i, k)
			return
		}
	}
}

// brokenAfter is where a word stands that says that the frame at i is broken, 0 for none.
func (r *reader) brokenAfter(i int) int {
	for k := i + 1; k <= min(i+7, r.sentenceLast(i)); k++ {
		if r.among(k, otherThings) || r.among(k, stateDenials) || r.among(k, stateDoubts) {
			return 0
		}
		if r.among(k, brokenWord) && r.anyOf(i+1, k, brokenVerbs) {
			return k
		}
	}
	return 0
}

// noneLeft: "there's no frame left", "no frame anymore".
func (r *reader) noneLeft(i int) bool {
	return r.wordAt(i-1, "no") && r.wordAt(i+1, "left", "anymore", "remaining")
}

// neverLooked: asked for the frame's state, "I never paid any attention to it", "nobody has been up there to
// look", in an answer that tells nothing else of it.
func (r *reader) neverLooked() {
	t := fitcheck.TopicFrameCondition
	if !r.asked(t) || r.known(t) || r.doubtful(t) {
		return
	}
	for i := range r.toks {
		if r.among(i, lookWords) && r.unlookedAt(i) {
			r.conditionIs(fitcheck.ConditionUnsure, r.clauseStart(i), i)
			return
		}
	}
}

// unlookedAt: the looking at the token is denied, and neither put off nor of something else: "haven't looked
// yet", "doesn't look good".
func (r *reader) unlookedAt(i int) bool {
	from := r.clauseStart(i)
	denied := r.deniesBetween(max(from, i-7), i) || r.anyOf(max(from, i-7), i, negWords)
	return denied && !r.anyOf(from, i, lookedBut) && !r.anyOf(i+1, min(i+4, len(r.toks)), lookWhen) &&
		!r.among(i+1, lookAfter) && !r.markAt(r.sentenceLast(i), '?')
}

// paintGone: asked for the frame's state, "the paint is mostly gone", "it's gray now".
func (r *reader) paintGone() {
	t := fitcheck.TopicFrameCondition
	if !r.asked(t) || r.known(t) || r.doubtful(t) {
		return
	}
	for i := range r.toks {
		if !r.among(i, paintNouns) || r.wordAt(i-1, "new", "what") {
			continue
		}
		to := min(i+6, r.clauseEnd(i)+1)
		if r.deniesBetween(i-3, to) || r.doubtBetween(i, to) || !r.anyOf(i+1, to, paintGoneWords) {
			continue
		}
		r.conditionIs(fitcheck.ConditionWeathered, i, min(to, len(r.toks))-1)
		r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool {
			return f.Topic == fitcheck.TopicProblem && !r.asked(f.Topic) && noneSaid(f.Value)
		})
		return
	}
}

// faultState: the word tells a state that is not good.
func faultState(word string) bool {
	s := stateOf[word]
	return s != "" && s != fitcheck.ConditionGood
}

// noneSaid: the value is an empty list.
func noneSaid(v fitcheck.Value) bool {
	l, ok := v.(fitcheck.ChoiceList)
	return ok && len(l) == 0
}

// stateForName: asked for the frame's state alone, "Rusty. Very rusty." is no signature.
func (r *reader) stateForName() {
	if !r.asked(fitcheck.TopicFrameCondition) || r.asked(fitcheck.TopicName) || !r.known(fitcheck.TopicFrameCondition) {
		return
	}
	r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool {
		return f.Topic == fitcheck.TopicName && f.Said != "" && stateOf[strings.ToLower(f.Said)] == fitcheck.ConditionCorroded
	})
}
