package reading

import "example.com/intake-bot/internal/fitcheck"

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
	if r.wordAt(h.first, "dull", "faded") && r.softBetween(from, h.first) {
		return false // "the frame stays, it has gotten foggy and dull"
	}
	return frame && !r.wordAt(h.first, "old", "ugly", "dirty", "viejo", "vieja") && !(r.wordAt(h.first, "dull") && r.wordsIn(max(from, h.first-3), h.first, "foggy", "cloudy", "hazy", "yellow"))
}

// listLayers: "double" alone between commas in a list of choices: "polycarbonate,
// double, clear over white".
func (r *reader) listLayers(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicLayers && (s.topic != fitcheck.TopicFinish || !r.wordAt(h.first, "mill", "silver", "unpainted")) || s.value == "?" ||
		r.toks[h.first].kind != wordToken || r.wordAt(h.first, "both", "ambas") || r.numberAt(h.first).kind != notNumber || r.numberAt(h.last).kind != notNumber || r.wordAt(h.last, "one", "two", "three", "uno", "una", "dos", "tres") {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if s.topic == fitcheck.TopicLayers && r.strongLayers() {
		return true // "the first is single layer, the other is double"
	}
	if !r.onlyChoices(from, to) {
		return false
	}
	if s.topic == fitcheck.TopicLayers && len(r.Asked) == 0 && len(r.toks) > 8 && !r.wordsIn(0, len(r.toks), "mobile", "manufactured", "trailer", "wide", "modular", "hung") && r.wordAt(h.first, "double", "doble", "triple", "single", "sencillo", "sencilla") {
		return true
	}
	if s.topic == fitcheck.TopicLayers && (r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicFinish)) {
		return true // "y que sea doble, por favor"
	}
	for n := range r.choices {
		if r.choices[n].has1("material") && !r.choices[n].is("material", "?") || r.choices[n].has1("color") {
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
		if r.wordAt(i, "please", "pls", "por", "favor", "que", "sea", "y", "and", "make", "it", "in", "with", "con", "en") {
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
