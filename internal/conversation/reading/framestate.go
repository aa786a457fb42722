package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// What a clause says of the frame where no phrase of the lists has told it: the clause is taken by its
// parts, the thing that it speaks of and a word for a state after it, whatever stands between: "the
// frame it sits in got twisted when the tree hit".

var (
	frameMetals        = wordsOf(`metal metals aluminum aluminums aluminium aluminiums aluminio`)
	metalPartFollowers = wordsOf(`part parts piece is was has got gone went s ha looks around edge rim itself esta se`)
	otherFrameLeads    = wordsOf(`window windows door picture new no without wood wooden bed time sin nuevo another
		different replacement want need a un next and y plus con with`)
	otherFrameFollowers = wordsOf(`shop color colors colour finish size sizes nuevo nuevos house`)
	frameFinishWords    = wordsOf(`finish mill bronze anodized coat color acabado`)
	newSubjectLeads     = wordsOf(`ya se esta estan the el la my`)
	besideThings        = wordsOf(`on to around over of in de del al en`)
	turnsAway           = wordsOf(`so because but pero porque since while when cuando`)
	wasUntil            = wordsOf(`until before new installed made originally`)
	beforeFrame         = wordsOf(`the my our its that this over up in all around right clean metal old el mi todo`)
	frameOwners         = wordsOf(`the my our with this that its a el mi ese her his their`)
	stuffOver           = wordsOf(`rust corrosion tar caulk caulking silicone sealant goo mastic silicon brea oxido rusts`)
	seenWords           = wordsOf(`know knows seen checked check look looked inspected idea clue sabe sabemos visto revisado
		checado sabria`)
	// unseenDenials have no "wouldn't": "wouldn't you know it, the frame …".
	unseenDenials  = wordsOf(`not no dont doesnt havent hasnt never nobody cant couldnt didnt nunca nadie`)
	unseenElse     = wordsOf(`if which who size kind far any but and as`)
	notFrameItself = wordsOf(`not no in inside around within from en del`)
	frameAndMore   = wordsOf(`and or y with in holding`)
	stateVerbs     = wordsOf(`is are was were parts looks looked look seems stays stayed remains feels held holding came
		survived appears checked around esta estan sigue siguen quedo quedaron ve ven anda salio parece`)
)

// stateOf says what a word tells of a frame; with otherThings a clause turns to something else.
var (
	stateOf = byWord(map[string]string{
		fitcheck.ConditionGood: `good survived escaped fine ok okay solid sound straight great perfect excellent
			intact undamaged sturdy strong usable reusable salvageable unharmed unscathed excelent exelent excellant
			excellent pristine flawless bueno buena buenos bien sano sanos entero enteros derecho derechos firme firmes
			fuerte fuertes perfecto intacto solido`,
		fitcheck.ConditionBent: `bent kinked twisted dented warped bowed crushed mangled crumpled buckled crooked
			deformed bows doblado doblados abollado abollados torcido torcidos chueco chuecos abollo doblo torcio pandeado
			pandeo`,
		fitcheck.ConditionCorroded: `corroded rusted rusty rust corrosion rotted rotten rotting rusting crusty
			crusted pitted pitting oxidado oxidados corroido corroidos oxido podrido podridos herrumbre rusts`,
		fitcheck.ConditionCaulkedOver: `caulked caulk caulking tar tarred silicone siliconed goop gooped gunked goo
			sealant mastic silicon silicona sellador chapopote brea resistol`,
		fitcheck.ConditionWeathered: `faded weathered chalky chalking dulled discolored peeling sunbaked descolorido
			descoloridos despintado despintados desgastado desgastados`,
	})
	otherThings = wordsOf(`plastic dome domes bubble bubbles skylight skylights curb curbs box boxes wood wooden roof
		glass lens cover lid lip shingles flashing drywall ceiling screws screw acrylic sheet house trim domo domos
		plastico tragaluz tragaluces madera techo caja cajon tapa burbuja vidrio tornillos lamina i we yo`)
)

// byWord turns lists of words, each under what they tell, round: what each word tells.
func byWord(lists map[string]string) map[string]string {
	m := map[string]string{}
	for state, list := range lists {
		for _, w := range strings.Fields(list) {
			m[w] = state
		}
	}
	return m
}

// frameStates records what a clause about the frame says of it; where that was asked, the clause need
// not name it.
func (r *reader) frameStates() {
	t := fitcheck.TopicFrameCondition
	if r.known(t) || r.doubtful(t) && !r.openChoice(t) || len(r.refs) > 0 || r.Units > 1 ||
		r.out.Language != "en" && r.out.Language != "es" {
		return
	}
	for i := range r.toks {
		if r.tellsOfFrame(i) && r.frameStateAt(i) {
			return
		}
	}
	if r.asked(t) && r.doubtful(t) && r.firstTalk("dontknow") == nil {
		r.statesUnnamed()
	}
}

// tellsOfFrame: the frame up there is named at the token, by somebody who has seen it.
func (r *reader) tellsOfFrame(i int) bool {
	return (r.among(i, frameNouns) || r.metalPart(i) || r.retainingRing(i)) && r.theirFrame(i) && !r.ownedByOther(i) &&
		!r.ofOtherThing(fitcheck.TopicFrameCondition, &hit{first: i, last: i}) && !r.hearsay(i)
}

// frameStateAt records the state that stands with a noun for the frame, and says whether one does.
func (r *reader) frameStateAt(i int) bool {
	if first := r.frameUnknown(i); first >= 0 {
		r.conditionIs(fitcheck.ConditionUnsure, first, i)
		return true
	}
	if r.doubtBetween(r.clauseStart(i), i) {
		return false
	}
	if state, last := r.conditionAfter(i); state != "" {
		r.conditionIs(state, i, last)
		return true
	}
	if first, last := r.frameHolds(i); last >= 0 {
		r.conditionIs(fitcheck.ConditionGood, first, last)
		return true
	}
	if state, first := r.conditionBefore(i); state != "" {
		r.conditionIs(state, first, i)
		return true
	}
	return false
}

// statesUnnamed records a fault that a sentence tells without naming the frame.
func (r *reader) statesUnnamed() {
	for i := 0; i < len(r.toks); i = r.sentenceLast(i) + 1 {
		state, last := r.conditionAfter(i - 1)
		if state != "" && state != fitcheck.ConditionGood && !r.markAt(r.sentenceLast(i), '?') {
			r.conditionIs(state, i, last)
			return
		}
	}
}

// openChoice: words of the topic were found and none of its values chosen.
func (r *reader) openChoice(t fitcheck.Topic) bool {
	return slices.ContainsFunc(r.out.Unclear, func(u Unclear) bool {
		return u.Topic != nil && *u.Topic == t && u.Why == WhyChoice
	})
}

// conditionIs records the frame's state in place of a doubt about it.
func (r *reader) conditionIs(state string, first, last int) {
	t := fitcheck.TopicFrameCondition
	r.out.Unclear = slices.DeleteFunc(r.out.Unclear, func(u Unclear) bool { return u.Topic != nil && *u.Topic == t })
	r.fact(t, 0, fitcheck.Choice(state), first, last)
}

// wordText is the word at a token, "" where there is none.
func (r *reader) wordText(i int) string {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return ""
	}
	return r.toks[i].text
}

// metalPart: "the metal part is pretty rusty", "el metal está doblado".
func (r *reader) metalPart(i int) bool {
	return r.among(i, frameMetals) && r.among(i+1, metalPartFollowers) &&
		(r.wordAt(i+1, "part", "parts", "rim", "edge") || r.wordAt(i-1, "the", "my", "our", "el"))
}

// theirFrame: the noun is the frame that is up there: not a window's, not one that is wished for.
func (r *reader) theirFrame(i int) bool {
	for k := i - 1; k >= 0 && k > i-4; k-- {
		if r.among(k, otherFrameLeads) {
			return r.ownsOrAdds(k)
		}
		if r.toks[k].kind != wordToken {
			break
		}
	}
	return !r.among(i+1, otherFrameFollowers) && !r.markAt(r.sentenceLast(i), '?') &&
		!r.anyOf(r.clauseStart(i), i, frameFinishWords) && !r.wishedFrame(i, i)
}

// ownsOrAdds: the word before the frame leads to theirs all the same: "has a", "with my", "and the".
func (r *reader) ownsOrAdds(k int) bool {
	return r.wordAt(k, "a") && r.wordAt(k-1, "got", "have", "has") ||
		r.wordAt(k, "with") && r.wordAt(k+1, "my", "the", "our", "that") ||
		r.wordAt(k, "and", "y") && r.wordAt(k+1, "the", "my", "our", "el", "its")
}

// conditionAfter is the state that the words after the noun tell, up to where the clause turns to something
// else; "" where they tell none, or more than one, or doubt it.
func (r *reader) conditionAfter(i int) (string, int) {
	state, last, denied := "", i, false
	for k := i + 1; k < len(r.toks) && k < i+14 && !r.leavesFrame(i, k, state); k++ {
		if r.toks[k].kind != wordToken {
			continue
		}
		if r.among(k, stateDoubts) || r.wasBefore(k) {
			return "", 0
		}
		if r.among(k, stateDenials) {
			denied = true
			continue
		}
		s := r.stateSaid(i, k)
		if s == "" || denied && s != fitcheck.ConditionGood {
			continue // "the frame has no rust"
		}
		if denied {
			return "", 0
		}
		both := joinedState(state, s)
		if both == "" {
			return "", 0
		}
		if state = both; state == s {
			last = k
		}
	}
	return state, last
}

// leavesFrame: what the clause told of the noun at i ends before the token k.
func (r *reader) leavesFrame(i, k int, state string) bool {
	t := &r.toks[k]
	if t.kind == markToken && !t.mark(',') || t.kind == numToken && state == "" {
		return true
	}
	if t.kind != wordToken {
		// "the frame's bent, the dome is fine", "frame stays, it has gotten foggy"
		return state != "" || r.wordAt(k+1, "it", "its", "they") && k > i+1 || r.among(k+1, newSubjectLeads)
	}
	return r.among(k, otherThings) && !r.among(k-1, besideThings) || r.among(k, turnsAway) && state != ""
}

// wasBefore: "was straight until the storm", "was new".
func (r *reader) wasBefore(k int) bool {
	return r.wordAt(k, "was", "were", "era") && r.anyOf(k, min(k+6, len(r.toks)), wasUntil)
}

// stateSaid is what the word at k says of the frame at i, "" where it says nothing.
func (r *reader) stateSaid(i, k int) string {
	s := stateOf[r.toks[k].text]
	if s == "" || r.wordAt(k+1, "at") {
		return ""
	}
	if s == fitcheck.ConditionGood &&
		(!r.saidToBe(i, k) || r.wordAt(k-1, "down", "tight", "on") || r.wordAt(k+1, "up", "down")) {
		return "" // "bolted down good", "good up there"
	}
	return s
}

// joinedState is what two words for a state tell together, "" where they tell two things.
func joinedState(first, next string) string {
	switch {
	case first == "" || first == next:
		return next
	case next == fitcheck.ConditionGood && first == fitcheck.ConditionWeathered: // "faded but solid"
		return first
	case first == fitcheck.ConditionGood && next == fitcheck.ConditionWeathered: // "fine, just faded"
		return next
	}
	return ""
}

// conditionBefore is the state that the words right before the noun tell: "with my twisted frame", "a branch
// bent the frame", "somebody caulked over the frame".
func (r *reader) conditionBefore(i int) (string, int) {
	k := i - 1
	for r.among(k, beforeFrame) && k > i-5 {
		k--
	}
	state := stateOf[r.wordText(k)]
	if state == "" || state == fitcheck.ConditionGood || r.deniesBetween(r.clauseStart(i), i) {
		return "", 0
	}
	if k == i-1 && !r.anyOf(i-3, i-1, frameOwners) {
		return "", 0
	}
	if k < i-1 && r.among(k, stuffOver) && !r.wordsIn(k+1, i, "over") &&
		!(r.wordsIn(k+1, i, "around") && state == fitcheck.ConditionCaulkedOver) {
		return "", 0
	}
	return state, k
}

// frameUnknown is where words begin that say that nobody has seen the frame: "she doesn't know how the
// frame is", "no hemos revisado el marco"; -1 where there are none.
func (r *reader) frameUnknown(i int) int {
	if !r.among(i-1, frameOwners) && !r.among(i-2, frameOwners) {
		return -1
	}
	from := r.sentenceFirst(i)
	for k := max(from, i-7); k < i; k++ {
		if r.among(k, seenWords) && r.anyOf(max(from, k-5), k, unseenDenials) && r.stateUnseen(k, i) {
			return k
		}
	}
	return -1
}

// stateUnseen: it is the state of the frame that was not seen, and no size or kind of it.
func (r *reader) stateUnseen(k, i int) bool {
	if r.anyOf(k, i, unseenElse) {
		return false
	}
	after := min(i+4, len(r.toks))
	if r.wordsIn(i+1, after, "size", "kind", "measures") {
		return false
	}
	return r.wordsIn(k, i, "shape", "condition", "state") ||
		!r.wordsIn(k, i, "what") && !r.wordsIn(i+1, after, "is", "was")
}

// frameHarmed: "the frame is cracked at a corner", "forgot to say the frame is missing": what is broken or
// gone is no plastic.
func (r *reader) frameHarmed(h *hit) bool {
	for k := h.first - 1; k >= r.clauseStart(h.first) && k > h.first-6; k-- {
		switch w := r.wordText(k); {
		case frameNouns.has(w):
			return r.theirFrame(k) && !r.anyOf(max(0, k-3), k, notFrameItself) && !r.anyOf(k+1, h.first, frameAndMore)
		case w == "", otherThings.has(w):
			return false
		}
	}
	return false
}

// saidToBe: a verb joins the noun and the word: "the frame up there still looks good".
func (r *reader) saidToBe(i, k int) bool {
	return r.anyOf(i+1, k, stateVerbs) ||
		k == i+1 && !r.wordAt(k+1, "size", "sizes", "for", "to", "with") || // "frame good"
		r.wordAt(k-1, "in", "en") && r.wordAt(k+1, "shape", "condition", "order", "estado", "condiciones")
}

// doubtBetween: a word of doubt stands between two tokens.
func (r *reader) doubtBetween(from, to int) bool {
	for k := from; k < to; k++ {
		if r.among(k, stateDoubts) && !(r.wordAt(k, "know") && r.wordAt(k-1, "you", "ya", "u")) { // "just so you know"
			return true
		}
	}
	return false
}

// deniesBetween: a word that denies stands between two tokens.
func (r *reader) deniesBetween(from, to int) bool { return r.anyOf(from, to, stateDenials) }
