package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	unknownAbout  = wordsOf(`about on of de del sobre`)
	restWords     = wordsOf(`rest others any all anything everything resto demas those them these`)
	unsureStarts  = wordsOf(`not no unsure idk dunno dont`)
	unsureAnswers = wordsOf(`not no unsure idk dunno dont sure idea clue se know`)
	unsureLinks   = wordsOf(`if whether its it thats that but about on maybe which what si es`)
)

// unknown gives each "don't know", "can't" and "won't say" of an answer to several
// questions to the question that it answers: the one that it names, else the one whose
// turn it is between the answers before and after.
func (r *reader) unknown(h *hit, say func(fitcheck.Topic, *hit)) {
	open := r.openTopics()
	if len(open) == 0 || r.frameHidden(h) || r.answersWithin(h) {
		return
	}
	if len(r.Asked) == 1 {
		say(open[0], h)
		return
	}
	if r.describedThen(h) {
		return
	}
	if t, ok := r.topicNamed(h); ok && (slices.Contains(open, t) || !r.known(t)) {
		if slices.Contains(open, t) {
			say(t, h)
		}
		return
	}
	if !r.answeredAny() && r.talkCount(h) == 1 || r.aboutRest(h) {
		for _, t := range open {
			say(t, h)
		}
		return
	}
	say(r.turnOf(h, open), h)
}

// frameHidden: "smeared with caulk, can't see the metal": how the frame is, and told as such.
func (r *reader) frameHidden(h *hit) bool {
	return len(r.Asked) > 1 && r.known(fitcheck.TopicFrameCondition) &&
		r.wordAt(h.last, "see", "ver") && r.wordAt(h.last+1, "the", "any", "el")
}

// answersWithin: an answer begins within the words.
func (r *reader) answersWithin(h *hit) bool {
	return slices.ContainsFunc(r.where, func(w saidAt) bool { return w.first >= h.first && w.first <= h.last })
}

// openTopics are the asked topics that nothing has been said of yet.
func (r *reader) openTopics() []fitcheck.Topic {
	var open []fitcheck.Topic
	for _, t := range r.Asked {
		if t == fitcheck.TopicConfirm || r.known(t) || slices.Contains(r.out.DontKnow, t) || slices.Contains(open, t) {
			continue
		}
		open = append(open, t)
	}
	return open
}

// answeredAny: the message answers something that was asked.
func (r *reader) answeredAny() bool {
	return slices.ContainsFunc(r.where, func(w saidAt) bool { return r.asked(w.topic) })
}

// talkCount is how often the message says the same kind of thing.
func (r *reader) talkCount(h *hit) int {
	v, _ := h.has("say")
	n := 0
	for k := range r.talk {
		if r.talk[k].is("say", v) {
			n++
		}
	}
	return n
}

// turnOf is the first open topic after those answered before the words, where there is
// one before the next that is answered after them.
func (r *reader) turnOf(h *hit, open []fitcheck.Topic) fitcheck.Topic {
	from := -1
	for _, w := range r.where {
		if w.first < h.first {
			from = max(from, slices.Index(r.Asked, w.topic))
		}
	}
	for _, t := range open {
		if slices.Index(r.Asked, t) > from {
			return t
		}
	}
	return open[0]
}

// unknownValue: "I don't know about acrylic", "no idea on polycarbonate": a value that is named as what
// somebody knows nothing of is no choice.
func (r *reader) unknownValue(h *hit) bool {
	i := h.first
	if r.wordAt(i-1, "or", "vs", "versus", "o") && r.choiceAt(i-2) {
		i -= 2
	}
	for r.wordAt(i-1, "the", "this", "that", "el", "la") {
		i--
	}
	if !r.among(i-1, unknownAbout) {
		return false
	}
	for n := range r.talk {
		if t := &r.talk[n]; t.is("say", "dontknow") && (t.last == i-1 || t.last == i-2) {
			return true
		}
	}
	return false
}

// aboutRest: "not sure on the rest", "don't know any of that".
func (r *reader) aboutRest(h *hit) bool {
	_, last := r.sentence(h.first)
	return r.anyOf(h.first, last+1, restWords)
}

// topicNamed is the topic that the clause of the words names.
func (r *reader) topicNamed(h *hit) (fitcheck.Topic, bool) {
	for i := h.first; i <= r.clauseEnd(h.last); i++ {
		if r.toks[i].kind == wordToken {
			if t, ok := topicWords[r.toks[i].text]; ok {
				return r.frameChoice(t), true
			}
		}
	}
	for i := r.clauseStart(h.first); i < h.first; i++ {
		if r.wordAt(i, "marco", "frame", "color") && (i == r.clauseStart(h.first) || i == r.clauseStart(h.first)+1) {
			return r.frameChoice(topicWords[r.toks[i].text]), true // "el marco no sé"
		}
	}
	return "", false
}

// frameChoice: what is said of the frame answers the finish where that was asked for.
func (r *reader) frameChoice(t fitcheck.Topic) fitcheck.Topic {
	if t == fitcheck.TopicFrameCondition && !r.asked(t) && r.asked(fitcheck.TopicFinish) {
		return fitcheck.TopicFinish
	}
	return t
}

// topicWords are the words by which a topic is named in what is not known.
var topicWords = map[string]fitcheck.Topic{
	"frame": fitcheck.TopicFrameCondition, "metal": fitcheck.TopicFrameCondition, "marco": fitcheck.TopicFrameCondition,
	"frames": fitcheck.TopicFrameCondition, "rust": fitcheck.TopicFrameCondition,
	"kind": fitcheck.TopicStyle, "type": fitcheck.TopicStyle, "style": fitcheck.TopicStyle, "tipo": fitcheck.TopicStyle,
	"color": fitcheck.TopicColor, "colour": fitcheck.TopicColor, "colors": fitcheck.TopicColor,
	"tint":   fitcheck.TopicColor,
	"layers": fitcheck.TopicLayers, "layer": fitcheck.TopicLayers, "capas": fitcheck.TopicLayers,
	"material": fitcheck.TopicMaterial, "acrylic": fitcheck.TopicMaterial, "acrilico": fitcheck.TopicMaterial,
	"polycarbonate": fitcheck.TopicMaterial, "policarbonato": fitcheck.TopicMaterial,
	"finish": fitcheck.TopicFinish, "acabado": fitcheck.TopicFinish,
	"zip":  fitcheck.TopicPlace,
	"name": fitcheck.TopicName, "nombre": fitcheck.TopicName,
	"photo": fitcheck.TopicPhotos,
	"wrong": fitcheck.TopicProblem,
	"need":  fitcheck.TopicWant,
	"many":  fitcheck.TopicCount,
}

// answersOther: among answers to several questions "not sure" is one of its own, unless
// it leads on to what it is unsure of: "not sure if it's acrylic".
func (r *reader) answersOther(h *hit, first int) bool {
	if !r.unsureAt(h.first) {
		return false
	}
	i := h.first
	for r.among(i, unsureAnswers) {
		i++
	}
	if r.endsUnsure(i) {
		return true
	}
	if h.last < first {
		return !r.among(i, unsureLinks)
	}
	if r.wordAt(i, "its") && r.wordAt(i+1, "the", "been", "driving") || r.wordAt(i, "lo") && r.wordAt(i+1, "que") {
		return true
	}
	return r.choiceAt(i) || r.wordAt(i, "just", "make", "go")
}

// unsureAt: "not sure", "no idea", "don't know", "idk" begin at the token.
func (r *reader) unsureAt(i int) bool {
	switch {
	case r.wordAt(i, "no"):
		return r.wordAt(i+1, "idea", "clue", "se")
	case r.wordAt(i, "not"):
		return r.wordAt(i+1, "sure")
	case r.wordAt(i, "dont"):
		return r.wordAt(i+1, "know")
	}
	return r.among(i, unsureStarts)
}

// endsUnsure: nothing follows that it is unsure of: "the metal is corroded pretty bad not sure which".
func (r *reader) endsUnsure(i int) bool {
	return r.stopAt(i) || r.wordAt(i, "sorry", "lol", "thanks") || r.wordAt(i, "about") && r.wordAt(i+1, "that") ||
		r.wordAt(i, "which") && r.stopAt(i+1)
}

// describedThen: "I'm not sure what it's called, it's a bubble with a metal frame on a wood box": the kind was asked
// for first, and what comes after the words tells it.
func (r *reader) describedThen(h *hit) bool {
	if r.Asked[0] != fitcheck.TopicStyle || !r.known(fitcheck.TopicStyle) {
		return false
	}
	if t, ok := r.topicNamed(h); ok && t != fitcheck.TopicStyle {
		return false
	}
	last := r.sentenceLast(h.last)
	return slices.ContainsFunc(r.where, func(w saidAt) bool {
		return w.topic == fitcheck.TopicStyle && w.first > h.last && w.first <= last
	})
}
