package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What people say of a kind of plastic in general is no choice and no harm: "another shop
// told me acrylic yellows in ten years. Is that true?"

var (
	soChosen    = wordsOf(`so want prefer rather quiero prefiero mejor`)
	ownPlastic  = wordsOf(`my our your its mi nuestro this is`)
	behaveLinks = wordsOf(`always just will only can dont doesnt siempre no eventually usually really`)
	behavesSo   = wordsOf(`yellows cracks scratches crazes fades lasts breaks shatters hazes fogs raya amarillea dura
		aguanta`)
	maybeBehaves = wordsOf(`yellow crack scratch craze fade last break does do fog sweat leak drip collect get turn let
		hold pone ponen hace quiebra rompe pierde lets`)
	getsHow        = wordsOf(`brittle yellow cloudy hazy foggy hot weak bad milky scratched scratchy dull hard`)
	isHow          = wordsOf(`better stronger tougher cheaper weaker harder safer mejor mas peor supposed junk garbage`)
	generalTellers = wordsOf(`heard read told says say said online internet dijeron dijo dicen oi lei escuche claims claim`)
	quotedLinks    = wordsOf(`me us a on for flat real`)
	quoteVerbs     = wordsOf(`quoted offered recommended suggested pushed sells`)
	quotingShops   = wordsOf(`shop company place guy guys store they contractor roofer somebody someone outfit`)
)

// inGeneral says whether a value is part of such a statement.
func (r *reader) inGeneral(t fitcheck.Topic, first, last int) bool {
	switch t {
	case fitcheck.TopicMaterial, fitcheck.TopicColor, fitcheck.TopicLayers, fitcheck.TopicProblem:
	case fitcheck.TopicStyle:
		return r.quotedByOther(first)
	default:
		return false
	}
	if r.asked(t) && t != fitcheck.TopicProblem && !(t == fitcheck.TopicMaterial && r.otherMaterial(last)) {
		return false
	}
	start := r.clauseStart(first)
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		return h.last >= start && h.first <= last && r.ofKindOfPlastic(&h) &&
			!r.anyOf(h.last+1, first, soChosen) && // "acrylic yellows so I want polycarbonate"
			r.behaves(&h)
	})
}

// ofKindOfPlastic: the phrase tells a kind of plastic; "two" alone does not: "it has two cracks".
func (r *reader) ofKindOfPlastic(h *hit) bool {
	return (h.has1("material") || h.has1("color") || h.has1("layers")) &&
		!(h.first == h.last && isWhole(numberWords[r.toks[h.first].text].kind))
}

// otherMaterial: another one is named after the token: "acrylic yellows so polycarbonate".
func (r *reader) otherMaterial(last int) bool {
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		return h.first > last && h.has1("material") && r.wordsIn(last+1, h.first, "so", "then", "entonces")
	})
}

// behaves: after the kind of plastic stands what it does as a rule.
func (r *reader) behaves(h *hit) bool {
	if r.among(h.first-1, ownPlastic) {
		return false
	}
	told := r.toldInGeneral(h.first)
	i := h.last + 1
	if told && r.wordAt(i, "ones", "one", "domes", "skylights", "plastic") {
		i++
	} else if !told && r.wordAt(h.first-1, "the", "el", "la", "los", "las") {
		return false
	}
	for r.among(i, behaveLinks) {
		i++
	}
	if r.wordAt(i, "se") {
		i++
	}
	return r.behavesAt(i, told)
}

// behavesAt: "yellows", "gets brittle", "is stronger"; where somebody told it, "do crack".
func (r *reader) behavesAt(i int, told bool) bool {
	switch {
	case r.among(i, behavesSo):
		return true
	case r.among(i, maybeBehaves):
		return told
	case r.wordAt(i, "gets", "turns", "goes", "becomes"):
		return r.among(i+1, getsHow)
	case r.wordAt(i, "is", "are", "es"):
		return r.among(i+1, isHow)
	}
	return false
}

// toldInGeneral: somebody was heard or read, or it is asked whether it is true.
func (r *reader) toldInGeneral(i int) bool {
	from, to := r.sentence(i)
	return r.anyOf(from, i, generalTellers) ||
		r.wordsIn(from, min(to+6, len(r.toks)), "true", "cierto", "verdad")
}

// quotedByOther: "the other shop quoted glass": what somebody else offers.
func (r *reader) quotedByOther(first int) bool {
	i := first - 1
	for r.among(i, quotedLinks) {
		i--
	}
	return r.among(i, quoteVerbs) && r.anyOf(r.sentenceFirst(i), i, quotingShops)
}
