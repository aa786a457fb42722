package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Of several values of one topic the one that the others only lead to.

var (
	nearLinks    = wordsOf(`behind beside back next atras detras junto near at by of from over above`)
	afterThought = wordsOf(`but actually sorry now want pero quiero no instead wait rather perdon`)
)

// narrow settles several values of one topic where the words do: a correction, the
// old against the new, the special against the general.
func (r *reader) narrow(t fitcheck.Topic, all []saying) []saying {
	if len(all) < 2 {
		return all
	}
	if k := unsureOfBoth(t, all); k >= 0 {
		return all[k : k+1]
	}
	first, last := all[0], all[len(all)-1]
	if t == fitcheck.TopicStyle && r.wordsIn(r.clauseStart(first.first), first.first, "between", "entre") {
		return all // "between curb mount and dome over frame, can't tell"
	}
	if t == fitcheck.TopicWant && r.bothPriced(all) {
		return all // "both, quote me the dome and the whole thing"
	}
	if t == fitcheck.TopicWant && r.othersAdvice(first.last+1, last.first) {
		return all
	}
	for i := first.last + 1; i < last.first; i++ {
		if r.wordAt(i, "or", "o") {
			return all
		}
	}
	if r.wordAt(first.first-1, "from", "de") && r.wordAt(last.first-1, "to", "a") ||
		r.exchanged(first.first, first.last, last.first) ||
		chosen(t) && r.wishedInstead(first.last+1, last.first) {
		return all[len(all)-1:] // "from single to double"
	}
	if t == fitcheck.TopicUse &&
		r.wordsIn(first.last+1, last.first, "turned", "converted", "made", "remodeled", "convertida", "convertido", "hicimos") &&
		r.wordsIn(first.last+1, last.first, "into", "to", "en", "a") {
		return all[len(all)-1:] // "an old church we turned into a house"
	}
	if t == fitcheck.TopicUse && r.anyOf(first.last+1, last.first, nearLinks) {
		return all[:1] // "the workshop behind the house"
	}
	for i := first.last + 1; i < last.first; i++ {
		if r.among(i, afterThought) {
			return all[len(all)-1:]
		}
	}
	if t == fitcheck.TopicFrameCondition {
		all = withoutGoop(all)
	}
	if v := special(t, all); v >= 0 {
		return all[v : v+1]
	}
	if v := r.glassOnBox(all); t == fitcheck.TopicStyle && v >= 0 {
		return all[v : v+1]
	}
	return all
}

// unsureOfBoth: "what would you recommend? just the dome or the whole unit": both stand there
// only to be chosen between.
func unsureOfBoth(t fitcheck.Topic, all []saying) int {
	if t != fitcheck.TopicWant || len(all) < 3 {
		return -1
	}
	return slices.IndexFunc(all, func(s saying) bool { return s.value == fitcheck.WantUnsure })
}

// withoutGoop leaves out a lone "tar" or "caulk" beside another fault: "corroded where it
// meets the tar".
func withoutGoop(all []saying) []saying {
	harm := slices.ContainsFunc(all, func(s saying) bool {
		return s.value == fitcheck.ConditionCorroded ||
			s.value == fitcheck.ConditionBent
	})
	if !harm {
		return all
	}
	var out []saying
	for _, s := range all {
		if !s.asked || s.value != fitcheck.ConditionCaulkedOver || s.last > s.first {
			out = append(out, s)
		}
	}
	return out
}

// useMeant: of several buildings the one that the skylight is said to be on: "this is
// about the house", "the one on the barn".
func (r *reader) useMeant(all []saying) int {
	found := -1
	for k := range all {
		i := all[k].first - 1
		for r.wordAt(i, "the", "my", "our", "a", "regular", "main", "is") {
			i--
		}
		if !r.wordAt(i, "on", "about", "for", "ours", "mine", "over") && !(r.wordAt(i, "ours", "mine")) {
			continue
		}
		if k > 0 && all[k-1].last+1 >= i {
			continue // "the apartment over my store"
		}
		if found >= 0 {
			return -1
		}
		found = k
	}
	return found
}

// special finds a value that says more than the others: a mobile home is a home too.
func special(t fitcheck.Topic, all []saying) int {
	var order []string
	switch t {
	case fitcheck.TopicUse:
		order = []string{fitcheck.UseManufacturedHome, fitcheck.UseRV}
	case fitcheck.TopicStyle:
		order = []string{fitcheck.StyleTubular, fitcheck.StyleFiberglassFrame, fitcheck.StyleVerticalRise, fitcheck.StyleSelfFlashing,
			fitcheck.StyleDomeOverFrame, fitcheck.StyleBareDome, fitcheck.StyleNoneYet}
	case fitcheck.TopicFrameCondition:
		if len(all) == 2 && all[0].value != fitcheck.ConditionGood && all[1].value != fitcheck.ConditionGood &&
			(all[0].value == fitcheck.ConditionCorroded || all[0].value == fitcheck.ConditionBent) &&
			(all[1].value == fitcheck.ConditionCorroded || all[1].value == fitcheck.ConditionBent) {
			return 0 // "rusted and bent": one fault is enough
		}
		order = []string{fitcheck.ConditionCaulkedOver, fitcheck.ConditionWeathered}
	case fitcheck.TopicProfile:
		for k := range all {
			if all[k].value == "barrel" && all[k].last > all[k].first { // "rounded like a half pipe"
				return k
			}
		}
		return len(all) - 1
	case fitcheck.TopicFinish, fitcheck.TopicWant:
		return len(all) - 1
	}
	for _, v := range order {
		for k := range all {
			if all[k].value == v {
				return k
			}
		}
	}
	return -1
}
