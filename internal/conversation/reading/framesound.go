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
	besideLinks    = wordsOf(`on to around over of in`)
	holdVerbs      = wordsOf(`held holding holds cleaned cleans came`)
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
		none := r.among(k, noneOfFaults) || r.wordAt(k, "not") && r.wordAt(k+1, "a", "one", "any")
		if none && r.anyOf(k+1, i, faultNouns) && r.wordsIn(max(k, i-4), i, "with", "about", "con") && !r.wordsIn(k, i, "except", "but", "dome", "plastic", "domo") {
			return k, i
		}
	}
	if r.deniesBetween(i, min(i+8, to+1)) {
		if k := i + 1; r.wordAt(k, "has", "tiene", "no") && r.wordsIn(k, min(k+3, to+1), "nothing", "no", "nada") && r.anyOf(k+1, min(k+6, to+1), faultNouns) {
			return i, min(k+4, to)
		}
		return i, -1
	}
	for k := i + 1; k <= min(i+10, to); k++ {
		if otherThings.has(r.wordText(k)) && !r.anyOf(k-3, k, besideLinks) || stateOf[r.wordText(k)] != "" && stateOf[r.wordText(k)] != fitcheck.ConditionGood {
			return i, -1
		}
		end := min(k+5, to+1)
		switch {
		case r.among(k, holdVerbs) && r.wordAt(k+1, "up", "together", "out") && r.anyOf(k+2, end, holdsHow),
			r.wordAt(k, "in") && r.anyOf(k+1, end, fineShape) && r.anyOf(k+1, end, shapeNouns),
			r.wordAt(k, "life", "years", "vida") && r.anyOf(max(i, k-4), k, plentyWords) && r.wordsIn(i+1, k, "has", "got", "have", "s", "tiene") && r.wordsIn(k+1, end, "left", "yet", "in"),
			r.wordAt(k, "as") && r.wordAt(k+1, "good", "solid", "sound", "straight", "strong") && r.wordAt(k+2, "as"):
			return i, min(k+3, to)
		}
	}
	return i, -1
}

// frameBroken: asked for its state, "the frame has a crack in it", "frames are shot", "frame is toast" tell
// none of those that the shop goes by, so it is asked which.
func (r *reader) frameBroken() {
	t := fitcheck.TopicFrameCondition
	if !r.asked(t) || r.known(t) || r.doubtful(t) {
		return
	}
	for i := range r.toks {
		if frameNouns.has(r.wordText(i)) && r.noneLeft(i) {
			r.unclear(t, 0, WhyChoice, nil, i-1, i+1)
			return
		}
		if !frameNouns.has(r.wordText(i)) && !r.metalPart(i) || !r.theirFrame(i) {
			continue
		}
		for k := i + 1; k <= min(i+7, r.sentenceLast(i)); k++ {
			if otherThings.has(r.wordText(k)) || stateDenials.has(r.wordText(k)) || stateDoubts.has(r.wordText(k)) {
				break
			}
			if brokenWord.has(r.wordText(k)) && r.anyOf(i+1, k, brokenVerbs) {
				r.unclear(t, 0, WhyChoice, nil, i, k)
				return
			}
		}
	}
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
		if !lookWords.has(r.wordText(i)) {
			continue
		}
		from := r.clauseStart(i)
		if !r.deniesBetween(max(from, i-7), i) && !r.anyOf(max(from, i-7), i, negWords) ||
			r.anyOf(from, i, lookedBut) || r.anyOf(i+1, min(i+4, len(r.toks)), lookWhen) || r.among(i+1, lookAfter) || r.markAt(r.sentenceLast(i), '?') {
			continue
		}
		r.conditionIs(fitcheck.ConditionUnsure, from, i)
		return
	}
}

// paintGone: asked for the frame's state, "the paint is mostly gone", "it's gray now".
func (r *reader) paintGone() {
	t := fitcheck.TopicFrameCondition
	if !r.asked(t) || r.known(t) || r.doubtful(t) {
		return
	}
	for i := range r.toks {
		if !r.among(i, paintNouns) || r.wordAt(i-1, "new", "what") || r.deniesBetween(max(0, i-3), i) {
			continue
		}
		to := min(i+6, r.clauseEnd(i)+1)
		if r.deniesBetween(i, to) || r.doubtBetween(i, to) {
			continue
		}
		if r.anyOf(i+1, to, paintGoneWords) {
			r.conditionIs(fitcheck.ConditionWeathered, i, min(to, len(r.toks))-1)
			r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool { return f.Topic == fitcheck.TopicProblem && !r.asked(f.Topic) && noneSaid(f.Value) })
			return
		}
	}
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
