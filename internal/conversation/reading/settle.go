package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	frameHolds  = wordsOf(`solid sound fine strong straight good ok bueno firme`)
	beforeStorm = wordsOf(`a the big heavy bad every any hard strong real wind thunder rain`)
	mendVerbs   = wordsOf(`straightened sanded repainted enderece arregle pinte endereze fixed painted repaired`)
	slightWords = wordsOf(`little bit slight slightly surface some light lightly minor tad poco poquito algo screws
		tornillos kinda`)
)

// settle turns the sayings of each topic and unit into a fact or a doubt.
func (r *reader) settle(all []saying) {
	done := map[fitcheck.Topic]bool{}
	r.frameSaid = slices.ContainsFunc(all, func(s saying) bool { return s.topic == fitcheck.TopicFrameCondition && !s.negated })
	for _, s := range all {
		if done[s.topic] {
			continue
		}
		done[s.topic] = true
		for unit := 0; unit <= 4; unit++ {
			group := pick(all, s.topic, unit)
			if len(group) == 0 {
				continue
			}
			if len(group) == 1 && group[0].weak {
				group[0].value = "?"
			}
			switch s.topic {
			case fitcheck.TopicProblem, fitcheck.TopicImpactRisk:
				r.settleList(s.topic, unit, group)
			default:
				r.settleOne(s.topic, unit, group)
			}
		}
	}
}

func pick(all []saying, t fitcheck.Topic, unit int) []saying {
	var out []saying
	for _, s := range all {
		if s.topic == t && s.unit == unit {
			out = append(out, s)
		}
	}
	return out
}

// settleList joins the values of a list in the order said.
func (r *reader) settleList(t fitcheck.Topic, unit int, group []saying) {
	list, weak := fitcheck.ChoiceList{}, false
	first, last := -1, -1
	none, vague, negated := -1, -1, -1
	for k, s := range group {
		switch {
		case s.value == "?":
			vague = k
			continue
		case s.negated && s.value != "none":
			negated = k
			continue
		case s.value == "none":
			none = k
			continue
		case r.past(&s) || r.stopped(&s) || r.whenStorms(&s) || r.stormComes(&s) ||
			r.keepsFalling(&s) ||
			s.value == fitcheck.ProblemHoleOpen && r.noSkylightYet() && !r.holeThere():
			continue
		}
		if s.value == fitcheck.ProblemOther && s.asked {
			weak = true // "old" says little beside "yellow"
		}
		if !has(list, s.value) {
			list = append(list, s.value)
		}
		if first < 0 {
			first = s.first
		}
		last = s.last
	}
	if has(list, fitcheck.ProblemStorm) && r.treeFell(group) && (len(list) > 1 || r.frameSaid || len(r.Asked) > 0 && !r.asked(t)) {
		list = slices.DeleteFunc(list, func(v string) bool { return v == fitcheck.ProblemStorm })
	}
	if weak && len(list) > 1 {
		list = slices.DeleteFunc(list, func(v string) bool { return v == fitcheck.ProblemOther })
	}
	switch {
	case none >= 0 && group[none].last > group[none].first && len(list) == 1 && list[0] == fitcheck.ProblemOther:
		r.fact(t, unit, fitcheck.ChoiceList{}, group[none].first, group[none].last) // "nothing wrong, just old"
	case len(list) > 0:
		r.fact(t, unit, list, first, last)
	case none >= 0 && (vague < 0 || group[none].last > group[none].first):
		r.fact(t, unit, list, group[none].first, group[none].last)
	case negated >= 0 && r.asked(t) && vague < 0 && r.everyWord(group[negated].first):
		r.fact(t, unit, list, group[negated].first, group[negated].last)
	case vague >= 0:
		r.unclear(t, unit, WhyChoice, nil, group[vague].first, group[vague].last)
	}
}

// whenStorms: "it drips in storms" tells when, not what did it.
func (r *reader) whenStorms(s *saying) bool {
	if r.wordAt(s.first-1, "the", "la", "that", "esa") && r.wordAt(s.first, "storm", "tormenta") &&
		r.wordsIn(r.sentenceFirst(s.first), s.first, "tree", "limb", "branch", "blew", "broke", "cracked", "hit", "arbol", "rama") {
		return false // "a limb went through it during the storm"
	}
	i := s.first - 1
	for r.among(i, beforeStorm) {
		i--
	}
	if s.value == fitcheck.ProblemStorm && r.wordAt(s.first, "storms") && r.wordAt(s.first-1, "it") {
		return true
	}
	return s.value == fitcheck.ProblemStorm &&
		(r.wordAt(s.first, "storm", "storms", "tormenta", "tormentas") || r.wordAt(s.last, "storms")) &&
		(r.wordAt(i, "during", "when", "with", "whenever") || r.wordAt(i, "in", "en") && r.wordAt(s.last, "storms", "tormentas"))
}

// treeFell: all that speaks of a storm is a tree that came down: how the harm was done,
// which is told beside it, and no weather.
func (r *reader) treeFell(group []saying) bool {
	for _, s := range group {
		if s.value == fitcheck.ProblemStorm && !r.wordsIn(s.first, s.last+1, "tree", "branch", "limb", "arbol", "rama") {
			return false
		}
	}
	return true
}

// mended: a frame that "was bent, I straightened it" is as the rest says, or asked about.
func (r *reader) mended(s *saying) bool {
	if s.topic != fitcheck.TopicFrameCondition || s.value == fitcheck.ConditionGood {
		return false
	}
	i := s.first - 1
	for r.wordAt(i, "a", "little", "bit", "pretty", "all", "kinda", "slightly", "very", "really") {
		i--
	}
	_, to := r.sentence(s.first)
	return r.wordAt(i, "was", "were", "got", "estaba") && r.anyOf(s.last+1, to+1, mendVerbs) &&
		!r.wordsIn(s.last+1, to+1, "when", "after", "before", "cuando")
}

// noSkylightYet: a hole is to be cut, it is not there.
func (r *reader) noSkylightYet() bool {
	for n := range r.styles {
		for _, s := range r.styles[n].senses {
			if s.value == fitcheck.StyleNoneYet && !s.asked {
				return true
			}
		}
	}
	return false
}

func has(list []string, v string) bool {
	for _, l := range list {
		if l == v {
			return true
		}
	}
	return false
}

// settleOne finds the one value of a topic among those said.
func (r *reader) settleOne(t fitcheck.Topic, unit int, group []saying) {
	if t == fitcheck.TopicUse && r.asked(t) && len(group) > 1 && r.wordsIn(0, min(3, len(r.toks)), "both", "ambas", "ambos") {
		r.unclear(t, unit, WhyChoice, nil, group[0].first, group[len(group)-1].last)
		return // "both, shop downstairs and apartment upstairs"
	}
	if t == fitcheck.TopicUse {
		group = namedOverHinted(group)
		if v := r.useMeant(group); v >= 0 {
			group = group[v : v+1]
		}
	}
	group = slices.DeleteFunc(group, func(s saying) bool { return r.mended(&s) })
	var stands []saying
	vague := -1
	for k, s := range group {
		switch {
		case s.negated:
			if s.value != "?" && vague < 0 && r.asked(t) {
				vague = k
			}
		case s.value == "?":
			if r.asked(t) || t == fitcheck.TopicFinish {
				vague = k
			}
		case len(stands) > 0 && stands[len(stands)-1].value == s.value:
			stands[len(stands)-1].last = s.last
			stands[len(stands)-1].doubted = stands[len(stands)-1].doubted && s.doubted // "fiberglass I think, glued to the dome"
		default:
			stands = append(stands, s)
		}
	}
	stands = slices.CompactFunc(r.worseThanGood(t, stands), func(a, b saying) bool { return a.value == b.value })
	stands = r.narrow(t, stands)
	if t == fitcheck.TopicMaterial && len(stands) == 0 && vague >= 0 && group[vague].negated &&
		r.wordsIn(0, len(r.toks), "other", "otro") {
		s := group[vague]
		other := fitcheck.MaterialAcrylic
		if s.value == other {
			other = fitcheck.MaterialPolycarbonate
		}
		r.fact(t, 0, fitcheck.Choice(other), s.first, s.last) // "not acrylic, the other one"
		return
	}
	switch {
	case len(stands) == 1 && vague >= 0 && !group[vague].negated && r.orBetween(&stands[0], &group[vague]):
		r.unclear(t, unit, WhyChoice, nil, min(stands[0].first, group[vague].first), max(stands[0].last, group[vague].last))
	case len(stands) == 1 && chosen(t) && vague >= 0 && !group[vague].negated && group[vague].first > stands[0].last &&
		r.wordsIn(stands[0].last+1, group[vague].first, "but", "pero", "actually") &&
		r.wordsIn(stands[0].last+1, group[vague].first, "wants", "want", "rather", "prefers", "prefer", "quiere", "quiero", "prefiere"):
		r.unclear(t, unit, WhyChoice, nil, group[vague].first, group[vague].last) // "silver is ok but my wife wants bronze"
	case len(stands) == 1 && stands[0].doubted && vague >= 0 && group[vague].doubted && !group[vague].negated:
		r.unclear(t, unit, WhyChoice, nil, stands[0].first, stands[0].last)
	case len(stands) == 1 && stands[0].doubted && t == fitcheck.TopicFrameCondition && len(r.Asked) > 0 && !r.asked(t):
	case len(stands) == 1 && stands[0].doubted && !r.thoughtOver(t, stands[0].first):
		s := stands[0]
		r.unclear(t, unit, WhyRough, choiceValue(t, s.value), s.first, s.last)
	case len(stands) == 1:
		s := stands[0]
		r.fact(t, unit, choiceValue(t, s.value), s.first, s.last)
	case len(stands) == 2 && t == fitcheck.TopicWant && (r.asked(t) || r.wordsIn(0, stands[0].first, "need", "needs")) &&
		r.orBetween(&stands[0], &stands[1]) && r.firstTalk("dontknow") != nil:
		// "not sure yet, dome or the whole thing"
		r.fact(t, unit, fitcheck.Choice(fitcheck.WantUnsure), stands[0].first, stands[1].last)
	case len(stands) > 1 && r.yesNoQuestion(stands[0].first):
	case len(stands) > 1:
		r.unclear(t, unit, WhyChoice, nil, stands[0].first, stands[len(stands)-1].last)
	case vague >= 0 && len(stands) == 0 && (!group[vague].negated || t != fitcheck.TopicFrameCondition):
		r.unclear(t, unit, WhyChoice, nil, group[vague].first, group[vague].last)
	case vague >= 0:
		r.fact(t, unit, fitcheck.Choice(fitcheck.ConditionGood), group[vague].first, group[vague].last)
	}
}

// worseThanGood: "dull but straight": a fault counts more than a good word beside it.
func (r *reader) worseThanGood(t fitcheck.Topic, all []saying) []saying {
	if t == fitcheck.TopicFrameCondition && len(all) == 1 && all[0].value == fitcheck.ConditionCorroded && r.slightly(&all[0]) {
		if from, to := r.sentence(all[0].first); r.anyOf(from, to+1, frameHolds) {
			all[0].value = fitcheck.ConditionWeathered // "a little rusty but solid", beside another answer
		}
	}
	if t != fitcheck.TopicFrameCondition || len(all) < 2 {
		return all
	}
	var faults []saying
	for _, s := range all {
		if s.value != fitcheck.ConditionGood {
			if s.value == fitcheck.ConditionCorroded && len(all) == 2 && r.slightly(&s) {
				s.value = fitcheck.ConditionWeathered // "a little rusty but ok"
			}
			faults = append(faults, s)
		}
	}
	return faults
}

// slightly: the fault is called a small one, or one of the screws.
func (r *reader) slightly(s *saying) bool {
	from, to := r.sentence(s.first)
	return r.wordsIn(from, to+1, "but", "otherwise", "pero", "still", "though", "just", "only") &&
		r.anyOf(r.clauseStart(s.first), s.last+1, slightWords)
}

// orBetween: "either glass or plastic".
func (r *reader) orBetween(a, b *saying) bool {
	first, last := a, b
	if b.first < a.first {
		first, last = b, a
	}
	return r.wordsIn(first.last+1, last.first, "or", "o") && !r.softBetween(first.last+1, last.first)
}

func choiceValue(t fitcheck.Topic, v string) fitcheck.Value {
	if t == fitcheck.TopicLayers {
		return fitcheck.Whole(v[0] - '0')
	}
	return fitcheck.Choice(v)
}
