package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	listFillers      = wordsOf(`please pls por favor que sea y and make it in with con en`)
	besideSheetWords = wordsOf(`dome domes skylight skylights plastic please pls for with and in over on domo domos
		por para y con de`)
)

// fields are the words that people put before an answer in a list: "Finish: mill".
var fields = map[string]fitcheck.Topic{"finish": fitcheck.TopicFinish, "color": fitcheck.TopicColor,
	"colour": fitcheck.TopicColor,
	"layers": fitcheck.TopicLayers, "frame": fitcheck.TopicFinish, "layer": fitcheck.TopicLayers,
	"material": fitcheck.TopicMaterial, "use": fitcheck.TopicUse,
	"building": fitcheck.TopicUse, "problem": fitcheck.TopicProblem, "issue": fitcheck.TopicProblem,
	"style": fitcheck.TopicStyle,
	"type":  fitcheck.TopicStyle, "shape": fitcheck.TopicOutline, "outline": fitcheck.TopicOutline,
	"profile":   fitcheck.TopicProfile,
	"condition": fitcheck.TopicFrameCondition, "want": fitcheck.TopicWant, "need": fitcheck.TopicWant,
	"risk":    fitcheck.TopicImpactRisk,
	"acabado": fitcheck.TopicFinish, "capas": fitcheck.TopicLayers, "tipo": fitcheck.TopicStyle, "problema": fitcheck.TopicProblem}

// fieldBefore is the topic that the word before a colon names, "" where there is none.
func (r *reader) fieldBefore(i int) fitcheck.Topic {
	if i < 2 || r.toks[i-2].kind != wordToken {
		return ""
	}
	t := fields[r.toks[i-2].text]
	// "Skylight type? curb."
	if r.markAt(i-1, ':') || r.markAt(i-1, '?') && r.sentenceFirst(i-2) >= i-3 && t != fitcheck.TopicFinish {
		return t
	}
	return ""
}

// ofFrame: a fault that the sentence says of the frame counts without being asked:
// "old frame, bent on one corner".
func (r *reader) ofFrame(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicFrameCondition || s.value == "?" ||
		s.value == fitcheck.ConditionGood || s.value == fitcheck.ConditionUnsure {
		return false
	}
	from, _ := r.sentence(h.first)
	frame, at, box := false, from, -1
	rots := r.wordsIn(h.first, h.last+1, "rotted", "rotten", "podrido", "podrida") // may be the box
	for i := from; i < h.first; i++ {
		l := r.labelFrom(i)
		switch {
		case l == nil || l.senses[0].kind != "part":
		case frame && !rots && l.senses[0].value == "curb" && !r.softBetween(at, i):
			box = i // "metal frame on a box, bent and dented"
		default:
			frame, at, box = l.senses[0].value == "frame" || l.senses[0].value == "retainer", i, -1
		}
	}
	frame = frame && (box < 0 || r.softBetween(box, h.first))
	frame = frame || r.frameBefore(from, h)
	if r.wordAt(h.first, "dull", "faded") && r.softBetween(from, h.first) {
		return false // "the frame stays, it has gotten foggy and dull"
	}
	return frame && !r.wordAt(h.first, "old", "ugly", "dirty", "viejo", "vieja") &&
		!(r.wordAt(h.first, "dull") && r.wordsIn(max(from, h.first-3), h.first, "foggy", "cloudy", "hazy", "yellow"))
}

// frameBefore: nothing but "it's" stands before the fault in its sentence, and the sentence before
// describes the frame: "metal frame on a curb. bent and dented up". What rots may be the box.
func (r *reader) frameBefore(from int, h *hit) bool {
	if from < 2 || r.wordsIn(h.first, h.last+1, "rotted", "rotten", "podrido", "podrida") ||
		!r.onlyWords(from, h.first, "it", "its", "is", "are", "theyre", "they", "all", "both", "pretty", "really", "very", "kinda", "a",
			"bit", "little", "now", "the", "old", "ones", "one", "got", "looks", "and", "but", "s", "re",
			"esta", "estan", "ta", "los", "el", "viejo", "viejos", "muy", "todo", "todos", "ya",
			"medio", "bien", "un", "poco", "y", "pero", "se", "ve", "ven") {
		return false
	}
	frame := false
	for i := r.sentenceFirst(from - 2); i < from; i++ {
		if l := r.labelFrom(i); l != nil && l.senses[0].kind == "part" {
			switch l.senses[0].value {
			case "frame", "retainer":
				frame = true
			case "curb":
			default:
				return false
			}
		}
	}
	return frame
}

// listLayers: "double" alone between commas in a list of choices: "polycarbonate,
// double, clear over white".
func (r *reader) listLayers(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicLayers && (s.topic != fitcheck.TopicFinish || !r.wordAt(h.first, "mill", "silver", "unpainted")) ||
		s.value == "?" ||
		r.toks[h.first].kind != wordToken || r.wordAt(h.first, "both", "ambas") ||
		r.numberAt(h.first).kind != notNumber || r.numberAt(h.last).kind != notNumber ||
		r.wordAt(h.last, "one", "two", "three", "uno", "una", "dos", "tres") {
		return false
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if s.topic == fitcheck.TopicLayers && r.strongLayers() {
		return true // "the first is single layer, the other is double"
	}
	if r.besideSheet(h) || r.endsOrder(h) {
		return true // "(3) domes clear single 33 x 33"
	}
	if !r.onlyChoices(from, to) {
		return false
	}
	if s.topic == fitcheck.TopicLayers && len(r.Asked) == 0 && len(r.toks) > 8 &&
		!r.wordsIn(0, len(r.toks), "mobile", "manufactured", "trailer", "wide", "modular", "hung") &&
		r.wordAt(h.first, "double", "doble", "triple", "single", "sencillo", "sencilla") {
		return true
	}
	if s.topic == fitcheck.TopicLayers &&
		(r.asked(fitcheck.TopicColor) || r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicFinish)) {
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
		if r.among(i, listFillers) {
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

// besideSheet: "double" or "single" right beside a color or a material.
func (r *reader) besideSheet(h *hit) bool {
	if h.first != h.last || !r.wordAt(h.first, "double", "single", "triple", "doble", "sencillo", "sencilla", "dual", "dbl") {
		return false
	}
	if next := h.last + 1; next < len(r.toks) && r.toks[next].kind == wordToken && !r.among(next, besideSheetWords) &&
		!covers(r.choices, next) {
		return false // "white double doors"
	}
	for n := range r.choices {
		if o := &r.choices[n]; (o.last == h.first-1 || o.first == h.last+1) && (o.has1("material") || o.has1("color")) {
			return !r.wordAt(o.last, "milky")
		}
	}
	return false
}

// endsOrder: the last word of an order line: "bronze acrylic 25 1/2 x 49 1/2 outside of curb
// double", "… od curb mill".
func (r *reader) endsOrder(h *hit) bool {
	if h.first != h.last ||
		h.last != r.clauseEnd(h.last) && !(h.last+1 == r.clauseEnd(h.last) && r.toks[h.last+1].kind == markToken) ||
		!r.wordAt(h.first, "double", "single", "triple", "doble", "dbl", "mill") ||
		r.wordAt(h.first-1, "a", "the", "is", "saw", "el", "la", "not", "no") {
		return false
	}
	measured := false
	for i := r.sentenceFirst(h.first); i < h.first; i++ {
		measured = measured || i > 0 && r.by(i) && r.toks[i-1].kind == numToken
	}
	if !measured {
		return false
	}
	hits := within(r.choices, r.sentenceFirst(h.first), h.first-1)
	for n := range hits {
		if hits[n].has1("material") || hits[n].has1("color") {
			return true
		}
	}
	return false
}
