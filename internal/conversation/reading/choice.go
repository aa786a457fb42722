package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// said is one value of a topic as the message says it.
type saying struct {
	topic   fitcheck.Topic
	value   string
	first   int
	last    int
	unit    int
	asked   bool // an answer only
	negated bool
	doubted bool
}

// readChoices finds the values of enumerated topics.
func (r *reader) readChoices() {
	if r.out.Language != "en" && r.out.Language != "es" {
		return // words that look like ours may mean something else there
	}
	var all []saying
	for n := range r.choices {
		h := &r.choices[n]
		if r.toks[h.first].used || h.is("none", "none") {
			continue
		}
		all = r.sayings(all, h)
	}
	for n := range r.styles {
		if h := &r.styles[n]; !r.toks[h.first].used && !h.is("none", "none") {
			all = r.sayings(all, h)
		}
	}
	for n := range r.wants {
		if h := &r.wants[n]; !r.toks[h.first].used && !r.saysStyle(all, h) {
			all = r.sayings(all, h)
		}
	}
	r.settle(all)
	r.colors()
	r.nothingWrong(all)
}

// saysStyle: "just a plastic dome screwed to the wood" tells what is there, not what
// is wanted.
func (r *reader) saysStyle(all []saying, h *hit) bool {
	for _, s := range all {
		if s.topic == fitcheck.TopicStyle && !s.asked && s.first <= h.last+1 && h.first <= s.last {
			return true
		}
		if s.topic == fitcheck.TopicProblem && !r.asked(fitcheck.TopicWant) && s.first > h.last && s.first-h.last <= 3 && !r.softBetween(h.last+1, s.first) {
			return true
		}
	}
	return false
}

// sayings picks the senses of a phrase that count here: those that answer what was
// asked, else those that stand on their own.
func (r *reader) sayings(all []saying, h *hit) []saying {
	answer := false
	for _, s := range h.senses {
		answer = answer || s.topic != "" && r.asked(s.topic)
	}
	for _, s := range h.senses {
		if s.topic == "" || s.topic == fitcheck.TopicColor || s.asked && !r.asked(s.topic) && !r.ofFrame(s, h) && !r.listLayers(s, h) && r.fieldBefore(h.first) != s.topic {
			continue
		}
		if answer && !r.asked(s.topic) && h.shared(s.topic) {
			continue
		}
		if s.asked && s.topic != fitcheck.TopicImpactRisk && r.thingIn(h) {
			continue
		}
		base := saying{topic: s.topic, value: s.value, first: h.first, last: h.last, asked: s.asked}
		base.negated = r.negated(h.first)
		if r.unknownTo(h.first) {
			continue
		}
		base.doubted = !softTopic(s.topic) && r.doubted(h.first, h.last)
		if r.astray(s.topic, h.first, h.last) || (s.topic == fitcheck.TopicStyle || s.topic == fitcheck.TopicProblem) && r.inSizeName(h) || r.idle(s, h) {
			continue
		}
		if (r.questioned(h.first) || r.yesNoQuestion(h.first) && !softTopic(s.topic)) && !(s.topic == fitcheck.TopicWant && (r.wordAt(h.first-1, "i", "can", "just") || r.priced(h.first) || r.wordsIn(max(0, h.first-3), h.last+1, "just", "only")) && !r.wordsIn(0, len(r.toks), "better", "should", "worth", "which", "or") || s.topic == fitcheck.TopicUse && !r.softQuestion(h.first)) {
			continue
		}
		units := r.unitsAt(h.first, h.last)
		if len(units) == 0 || !s.topic.OfUnit() {
			units = []int{0}
		}
		for _, u := range units {
			base.unit = u
			all = append(all, base)
		}
	}
	return all
}

// unknownTo: "I don't know if it's cracked".
func (r *reader) unknownTo(first int) bool {
	for i := r.clauseStart(first); i < first; i++ {
		if r.wordAt(i, "if", "whether", "si") && r.wordAt(i-1, "know", "sure", "tell", "see", "unsure", "se", "clue", "idea", "remember") {
			return true
		}
	}
	return false
}

// idle: words that state something only where the message is about that: hail that
// harmed nothing, "the whole thing" that nobody wants to buy, the plastic's kind told
// to say what the frame is like.
func (r *reader) idle(s sense, h *hit) bool {
	if s.topic == fitcheck.TopicProfile && r.asked(fitcheck.TopicRoofSlope) {
		return true
	}
	if len(r.Asked) > 0 && !r.asked(s.topic) && s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemOther {
		return true
	}
	first, last := r.sentence(h.first)
	if len(r.Asked) == 0 || !r.asked(s.topic) {
		if r.vagueWord(s.topic, h) && !r.ofSkylight(first, last, h) {
			return true
		}
	}
	switch {
	case s.topic == fitcheck.TopicProblem && h.first == h.last && r.wordAt(h.first, "hail", "granizo", "storm", "storms", "tormenta") && !r.asked(s.topic):
		return !r.harmed(first, last+1, h)
	case s.topic == fitcheck.TopicFrameCondition && s.value == fitcheck.ConditionGood && (r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers)):
		return true // "raw aluminum is fine": an answer, no report
	case s.topic == fitcheck.TopicWant && r.wordAt(h.first, "whole", "entire", "everything") && !r.asked(s.topic):
		return !r.wordsIn(first, last+1, "want", "need", "replace", "replaced", "replacing", "replacement", "buy", "order", "get", "looking", "new", "just", "for", "interested", "quiero", "necesito", "lets", "prefer", "like", "go", "give", "price", "quote")
	case s.topic == fitcheck.TopicMaterial || s.topic == fitcheck.TopicLayers || s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemOther:
		return !r.asked(s.topic) && r.inStyle(h)
	}
	return false
}

// vagueWord: an everyday word that tells something of a skylight only where one is spoken of.
func (r *reader) vagueWord(t fitcheck.Topic, h *hit) bool {
	if h.last > h.first {
		return false
	}
	switch t {
	case fitcheck.TopicProblem:
		return r.wordAt(h.first, "missing", "break", "broke", "broken", "split", "splits", "bust", "busted", "smashed", "chipped", "puncture", "punctured",
			"brittle", "crumbling", "cloud", "fog", "yellow", "smoky", "dingy", "loose", "draft", "drafty", "noise", "noisy", "birds", "bird", "bees", "wasps",
			"mice", "rats", "squirrel", "squirrels", "rot", "rotted", "rotten", "mold", "moldy", "moho", "roto", "rota", "rotos", "partido", "partida", "volo",
			"arranco", "lona", "hoyo", "agujero", "damp", "condensation", "sweats", "sweating", "suelto", "feo", "amarillo", "manchado", "opaque", "milky")
	case fitcheck.TopicUse:
		return r.wordAt(h.first, "mobile", "manufactured", "plant", "business", "office", "offices", "store", "retail", "shelter", "art", "van", "stable", "gym",
			"salon", "boat", "bote", "bus", "commercial", "industrial", "negocio", "oficina", "tienda", "bodega", "remolque", "coop", "library", "hospital", "airport", "mall", "comercial")
	case fitcheck.TopicOutline:
		return r.wordAt(h.first, "round", "circle", "triangle", "oval", "rectangle", "circulo")
	}
	return false
}

// ofSkylight: the sentence names a part of a skylight, a job, or says "it".
func (r *reader) ofSkylight(first, last int, h *hit) bool {
	if last-first < 3 {
		return true
	}
	for i := first; i <= last; i++ {
		if r.toks[i].kind == numToken && r.wordAt(h.first, "round", "circle", "oval", "rectangle", "triangle") {
			return true
		}
		if i >= h.first && i <= h.last {
			continue
		}
		if l := r.labelFrom(i); l != nil && (l.senses[0].kind == "part" || l.senses[0].kind == "topic" || l.senses[0].kind == "shape") {
			return true
		}
		if r.wordAt(i, "it", "its", "one", "ones", "they", "them", "these", "esta", "this", "job", "project", "building", "manage", "own", "manager", "roof", "lo", "la", "se") {
			return true
		}
	}
	return false
}

// harmed: the sentence says that something was hit or broken.
func (r *reader) harmed(first, last int, h *hit) bool {
	if r.wordsIn(first, last, "hit", "got", "damage", "damaged", "from", "by", "took", "came", "size", "sized", "destroyed", "last", "por", "after", "cayo", "dano", "in") {
		return true
	}
	choices := within(r.choices, first, last-1)
	for n := range choices {
		if o := &choices[n]; o.first != h.first && o.senses[0].topic == fitcheck.TopicProblem && !o.senses[0].asked {
			return true
		}
	}
	return h.first == first && h.last+1 >= last
}

// inStyle: the words are part of a description of the frame.
func (r *reader) inStyle(h *hit) bool {
	from, _ := r.sentence(h.first)
	styles := within(r.styles, from, h.first)
	for n := range styles {
		s := &styles[n]
		if s.first <= h.first && h.last <= s.last && s.last > s.first {
			return r.asked(fitcheck.TopicStyle)
		}
	}
	return false
}

// priced: the question is what it costs.
func (r *reader) priced(i int) bool {
	first, last := r.sentence(i)
	talk := within(r.talk, first, last)
	for n := range talk {
		if talk[n].is("req", "price") {
			return true
		}
	}
	return false
}

// inSizeName: the words name what a size is of: "the hole in the roof is 22 x 22".
func (r *reader) inSizeName(h *hit) bool {
	if r.labelAt[h.first] < 0 {
		return false
	}
	l := &r.labels[r.labelAt[h.first]]
	kind := l.senses[0].kind
	if l.named && l.is("part", "opening") && l.first == h.first {
		return true
	}
	return l.named && (l.first <= h.first && h.last <= l.last && (kind == "topic" || l.last > l.first || l.is("part", "opening")) || kind == "topic" && h.first <= l.last)
}

// fields are the words that people put before an answer in a list: "Finish: mill".
var fields = map[string]fitcheck.Topic{"finish": fitcheck.TopicFinish, "color": fitcheck.TopicColor, "colour": fitcheck.TopicColor,
	"layers": fitcheck.TopicLayers, "frame": fitcheck.TopicFinish, "layer": fitcheck.TopicLayers, "material": fitcheck.TopicMaterial, "use": fitcheck.TopicUse,
	"building": fitcheck.TopicUse, "problem": fitcheck.TopicProblem, "issue": fitcheck.TopicProblem, "style": fitcheck.TopicStyle,
	"type": fitcheck.TopicStyle, "shape": fitcheck.TopicOutline, "outline": fitcheck.TopicOutline, "profile": fitcheck.TopicProfile,
	"condition": fitcheck.TopicFrameCondition, "want": fitcheck.TopicWant, "need": fitcheck.TopicWant, "risk": fitcheck.TopicImpactRisk,
	"acabado": fitcheck.TopicFinish, "capas": fitcheck.TopicLayers, "tipo": fitcheck.TopicStyle, "problema": fitcheck.TopicProblem}

// fieldBefore is the topic that the word before a colon names, "" where there is none.
func (r *reader) fieldBefore(i int) fitcheck.Topic {
	if r.markAt(i-1, ':') && i >= 2 && r.toks[i-2].kind == wordToken {
		return fields[r.toks[i-2].text]
	}
	return ""
}

// ofFrame: a fault that the sentence says of the frame counts without being asked:
// "old frame, bent on one corner".
func (r *reader) ofFrame(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicFrameCondition || s.value == "?" || s.value == fitcheck.ConditionGood || s.value == fitcheck.ConditionUnsure {
		return false
	}
	from, _ := r.sentence(h.first)
	frame := false
	for i := from; i < h.first; i++ {
		if l := r.labelFrom(i); l != nil && l.senses[0].kind == "part" {
			frame = l.senses[0].value == "frame" || l.senses[0].value == "retainer"
		}
	}
	return frame && !r.wordAt(h.first, "old", "ugly", "dirty")
}

// listLayers: "double" alone between commas in a list of choices: "polycarbonate,
// double, clear over white".
func (r *reader) listLayers(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicLayers && (s.topic != fitcheck.TopicFinish || !r.wordAt(h.first, "mill", "silver", "unpainted")) || s.value == "?" ||
		r.toks[h.first].kind != wordToken || r.wordAt(h.first, "both", "ambas") || r.numberAt(h.first).kind != notNumber {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if s.topic == fitcheck.TopicLayers && r.strongLayers() {
		return true // "the first is single layer, the other is double"
	}
	if !r.onlyChoices(from, to) {
		return false
	}
	for n := range r.choices {
		if r.choices[n].has1("material") || r.choices[n].has1("color") {
			return true
		}
	}
	return false
}

// strongLayers: layers are spoken of outright.
func (r *reader) strongLayers() bool {
	for n := range r.choices {
		for _, s := range r.choices[n].senses {
			if s.topic == fitcheck.TopicLayers && !s.asked {
				return true
			}
		}
	}
	return false
}

// onlyChoices: nothing but values of topics stands between two tokens.
func (r *reader) onlyChoices(from, to int) bool {
	for i := from; i <= to; i++ {
		if r.toks[i].kind == markToken {
			continue
		}
		hits := within(r.choices, i, i)
		if len(hits) == 0 || hits[0].senses[0].topic == "" {
			return false
		}
		i = hits[0].last
	}
	return true
}

// thingIn: the clause of a short answer names some other thing: "triple A battery".
func (r *reader) thingIn(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if (i < h.first || i > h.last) && r.thingAt(i) {
			return true
		}
	}
	return false
}

func (r *reader) softQuestion(i int) bool { return r.wordAt(i-1, "to", "the", "from", "inside") }

// shared: the phrase also means something of another topic, so what was asked decides.
func (h *hit) shared(t fitcheck.Topic) bool {
	for _, s := range h.senses {
		if s.topic != t && s.topic != "" && !s.joint {
			return true
		}
	}
	return false
}

// softTopic: what people see every day is a fact also with "I think".
func softTopic(t fitcheck.Topic) bool {
	return t == fitcheck.TopicProblem || t == fitcheck.TopicUse || t == fitcheck.TopicWant || t == fitcheck.TopicImpactRisk
}

// settle turns the sayings of each topic and unit into a fact or a doubt.
func (r *reader) settle(all []saying) {
	done := map[fitcheck.Topic]bool{}
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
		case r.past(&s) || r.stopped(&s) || s.value == fitcheck.ProblemHoleOpen && r.noSkylightYet():
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
	case negated >= 0 && r.asked(t) && vague < 0:
		r.fact(t, unit, list, group[negated].first, group[negated].last)
	case vague >= 0:
		r.unclear(t, unit, WhyChoice, nil, group[vague].first, group[vague].last)
	}
}

// past: "was leaking, fixed that".
func (r *reader) past(s *saying) bool {
	if !r.wordAt(s.first-1, "was", "were", "been") && !r.wordAt(s.first-2, "was", "used") {
		return false
	}
	return r.wordsIn(s.last+1, min(s.last+5, len(r.toks)), "fixed", "patched", "stopped", "repaired", "sealed")
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

// stopped: "quit leaking after I taped it"; not "it won't quit leaking".
func (r *reader) stopped(s *saying) bool {
	i := s.first - 1
	return r.wordAt(i, "quit", "quits", "stopped") && !r.negated(i) && !r.wordAt(i-1, "to", "never", "wont")
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
	if t == fitcheck.TopicUse {
		if v := r.useMeant(group); v >= 0 {
			group = group[v : v+1]
		}
	}
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
		default:
			stands = append(stands, s)
		}
	}
	stands = r.narrow(t, worseThanGood(t, stands))
	if t == fitcheck.TopicMaterial && len(stands) == 0 && vague >= 0 && group[vague].negated && r.wordsIn(0, len(r.toks), "other", "otro") {
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
	case len(stands) == 1 && stands[0].doubted && vague >= 0 && group[vague].doubted && !group[vague].negated:
		r.unclear(t, unit, WhyChoice, nil, stands[0].first, stands[0].last)
	case len(stands) == 1 && stands[0].doubted:
		s := stands[0]
		r.unclear(t, unit, WhyRough, choiceValue(t, s.value), s.first, s.last)
	case len(stands) == 1:
		s := stands[0]
		r.fact(t, unit, choiceValue(t, s.value), s.first, s.last)
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
func worseThanGood(t fitcheck.Topic, all []saying) []saying {
	if t != fitcheck.TopicFrameCondition || len(all) < 2 {
		return all
	}
	var faults []saying
	for _, s := range all {
		if s.value != fitcheck.ConditionGood {
			faults = append(faults, s)
		}
	}
	return faults
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

// narrow settles several values of one topic where the words do: a correction, the
// old against the new, the special against the general.
func (r *reader) narrow(t fitcheck.Topic, all []saying) []saying {
	if len(all) < 2 {
		return all
	}
	first, last := all[0], all[len(all)-1]
	for i := first.last + 1; i < last.first; i++ {
		if r.wordAt(i, "or", "o") && r.softOr(i) {
			return all
		}
	}
	if t == fitcheck.TopicUse && r.wordsIn(first.last+1, last.first, "behind", "beside", "next", "near", "at", "by", "of") {
		return all[:1] // "the workshop behind the house"
	}
	for i := first.last + 1; i < last.first; i++ {
		if r.wordAt(i, "but", "actually", "sorry", "now", "want", "pero", "quiero", "no", "instead", "wait", "rather", "perdon") {
			return all[len(all)-1:]
		}
	}
	if v := special(t, all); v >= 0 {
		return all[v : v+1]
	}
	return all
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
		if !r.wordAt(i, "on", "about", "for", "ours", "mine", "over", "of") && !(r.wordAt(i, "ours", "mine")) {
			continue
		}
		if found >= 0 {
			return -1
		}
		found = k
	}
	return found
}

func (r *reader) softOr(i int) bool { return true }

// special finds a value that says more than the others: a mobile home is a home too.
func special(t fitcheck.Topic, all []saying) int {
	var order []string
	switch t {
	case fitcheck.TopicUse:
		order = []string{fitcheck.UseManufacturedHome, fitcheck.UseRV}
	case fitcheck.TopicStyle:
		order = []string{fitcheck.StyleTubular, fitcheck.StyleFiberglassFrame, fitcheck.StyleVerticalRise, fitcheck.StyleBareDome, fitcheck.StyleSelfFlashing, fitcheck.StyleDomeOverFrame, fitcheck.StyleNoneYet}
	case fitcheck.TopicFrameCondition:
		order = []string{fitcheck.ConditionCaulkedOver, fitcheck.ConditionWeathered}
	case fitcheck.TopicFinish, fitcheck.TopicWant, fitcheck.TopicProfile:
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

// nothingWrong is for the frame: "not bent, not rusted" says that it is good.
func (r *reader) nothingWrong(all []saying) {}
