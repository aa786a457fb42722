package reading

import "example.com/intake-bot/internal/fitcheck"

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
	weak    bool // an answer only, beside words that nobody understands
}

// readChoices finds the values of enumerated topics.
func (r *reader) readChoices() {
	if r.out.Language != "en" && r.out.Language != "es" {
		return // words that look like ours may mean something else there
	}
	var all []saying
	for n := range r.choices {
		h := &r.choices[n]
		if r.toks[h.first].used || h.is("none", "none") || r.afterName(h) {
			continue
		}
		all = r.sayings(all, h)
	}
	for n := range r.styles {
		if h := &r.styles[n]; !r.toks[h.first].used && !h.is("none", "none") && !r.afterName(h) {
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
}

// afterName: the word goes on a name: "Tri County Glass".
func (r *reader) afterName(h *hit) bool {
	if h.first == 0 || !r.toks[h.first-1].named || !r.known(fitcheck.TopicName) {
		return false
	}
	for _, w := range r.where {
		if w.topic == fitcheck.TopicName {
			return h.last+1 >= len(r.toks) && w.first <= h.first && h.first-w.first <= 4
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
		if r.otherwiseMeant(s, h) {
			continue
		}
		if s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemStorm && r.asked(fitcheck.TopicImpactRisk) && r.wordsIn(h.first, h.last+1, "hail", "granizo") && !r.hurt(h) {
			s = sense{kind: string(fitcheck.TopicImpactRisk), value: "hail", topic: fitcheck.TopicImpactRisk}
		}
		if s.topic == fitcheck.TopicLayers && h.first == h.last && (r.refAt(h.first, h.first+1) || r.wordAt(h.first, "one") && r.choiceAt(h.first+1) && r.wordsIn(r.sentenceFirst(h.first), h.first, "two", "double", "2")) {
			continue // "one clear and one white"
		}
		base := saying{topic: s.topic, value: s.value, first: h.first, last: h.last, asked: s.asked}
		base.negated = r.negated(h.first) || r.deniedAfter(h.last)
		if base.negated && r.deniesOther(s, h) {
			base.negated = false
		}
		if r.notJust(s, h) {
			base.value, base.negated = fitcheck.WantCompleteUnit, false
		}
		if r.unknownTo(h.first) {
			continue
		}
		base.doubted = !softTopic(s.topic) && r.doubted(h.first, h.last) && !r.seen(s.topic, h)
		if r.astray(s.topic, h.first, h.last) || (s.topic == fitcheck.TopicStyle || s.topic == fitcheck.TopicProblem || s.topic == fitcheck.TopicProfile) && r.inSizeName(h) || r.idle(s, h) {
			continue
		}
		ordered := r.priced(h.first) && (s.topic == fitcheck.TopicLayers || s.topic == fitcheck.TopicMaterial) && !s.asked && !r.wordsIn(r.sentenceFirst(h.first), r.sentenceLast(h.first), "or", "vs", "versus", "than", "more", "difference", "cost")
		if !ordered && (r.questioned(h.first) || r.yesNoQuestion(h.first) && !softTopic(s.topic)) && !(s.topic == fitcheck.TopicWant && (r.wordAt(h.first-1, "i", "can", "just") || r.priced(h.first) || r.wordsIn(h.first, h.last+1, "itself", "alone", "without", "sin") || r.wordsIn(max(0, h.first-3), h.last+1, "just", "only")) && !r.wordsIn(0, len(r.toks), "better", "should", "worth", "which", "or") || s.topic == fitcheck.TopicUse && !r.softQuestion(h.first)) {
			continue
		}
		if s.topic == fitcheck.TopicFinish && r.wordAt(h.last+1, "not") && r.wordAt(h.last+2, "the", "my") && r.wordAt(h.last+3, "frame", "metal") || s.topic == fitcheck.TopicWant && r.wordAt(h.first, "not") && r.asked(fitcheck.TopicFinish) {
			continue // "I meant the color, white, not the frame"
		}
		if from, to := r.sentence(h.first); s.topic == fitcheck.TopicWant && r.wordAt(from, "whats", "what", "which", "how", "why") && r.asksPlainly(from, to) && !r.priced(h.first) {
			continue // "what's included in the complete one"
		}
		if s.topic == fitcheck.TopicWant && r.wordAt(h.first, "leave", "keep") && r.choiceAt(h.last+1) {
			continue // "leave the frame plain"
		}
		if s.topic == fitcheck.TopicFinish && r.asked(fitcheck.TopicColor) && r.wordAt(h.last, "color") {
			continue // "no color"
		}
		if s.topic == fitcheck.TopicProfile && r.askedSize() != "none" && r.labelAt[h.last] >= 0 && (r.labels[r.labelAt[h.last]].is("part", "plastic") || r.labels[r.labelAt[h.last]].has1("topic")) {
			continue // "across the flat plastic"
		}
		base.weak = r.weakly(s, h)
		if r.unexplained(s.topic, h) {
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
