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
		if r.astray(s.topic, h.first, h.last) || (s.topic == fitcheck.TopicStyle || s.topic == fitcheck.TopicProblem) && r.inSizeName(h) || r.idle(s, h) {
			continue
		}
		if (r.questioned(h.first) || r.yesNoQuestion(h.first) && !softTopic(s.topic)) && !(s.topic == fitcheck.TopicWant && (r.wordAt(h.first-1, "i", "can", "just") || r.priced(h.first) || r.wordsIn(h.first, h.last+1, "itself", "alone", "without", "sin") || r.wordsIn(max(0, h.first-3), h.last+1, "just", "only")) && !r.wordsIn(0, len(r.toks), "better", "should", "worth", "which", "or") || s.topic == fitcheck.TopicUse && !r.softQuestion(h.first)) {
			continue
		}
		if s.topic == fitcheck.TopicFinish && r.wordAt(h.last+1, "not") && r.wordAt(h.last+2, "the", "my") && r.wordAt(h.last+3, "frame", "metal") || s.topic == fitcheck.TopicWant && r.wordAt(h.first, "not") && r.asked(fitcheck.TopicFinish) {
			continue // "I meant the color, white, not the frame"
		}
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
