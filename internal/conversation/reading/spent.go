package reading

import "example.com/intake-bot/internal/fitcheck"

// A value that is told for the other's sake: "policarbonato, el acrílico se me quebró", "milky
// white. we had the clear before and it cooked us", "Clear please. The white makes the room
// look like a dentist's office", "double, the single sweated all winter".

var (
	beforeWasThere = wordsOf(`the a just only all those el la los las puro some single clear old regular cheap one
		of always originally`)
	thereVerbs   = wordsOf(`have has got theres tenemos tengo tiene hay are is its es son`)
	beforeOld    = wordsOf(`the el la los las our my that those old last nuestro mi cheap regular`)
	oldKindWords = wordsOf(`one ones plastic dome domes kind stuff skylight skylights type layer tint sheet glazing
		we i had got que tenia teniamos used to have before anterior viejo just always only kind of really all ya nos
		me`)
	seemVerbs = wordsOf(`is are es son looks look feels seems se ve was were era`)
	badLooks  = wordsOf(`too ugly dark hot gloomy noisy cold loud junk garbage brittle dreary harsh bright demasiado
		muy feo oscuro caliente depressing dingy cheap dirty blinding`)
	argueWords = wordsOf(`but actually make want no wait sorry instead change pero quiero perdon for`)
	argueVerbs = wordsOf(`told said heard hear read ago went scratches yellows cracks broke scratch enough because
		since will would looks look makes had have weve was were always never costs porque hace era tenia teniamos
		gotea suda dijeron pone quiebra rompe con`)
	exchangeVerbs = wordsOf(`replace replacing swap swapping swapped change changing switch switching trade
		reemplazar cambiar cambiamos cambio reemplazo`)
	insteadLeads = wordsOf(`lets a the go make do get el la un now this`)
)

// spent says whether a value is one that was there or that did badly, and the message names
// another that neither was nor did.
func (r *reader) spent(kind string, h *hit) bool {
	if !r.wasThere(h) && !r.didBadly(h) {
		return false
	}
	value, _ := h.has(kind)
	for n := range r.choices {
		c := &r.choices[n]
		if v, ok := c.has(kind); ok && v != value && v != "?" && c.first != h.first && !r.negated(c.first) && !r.wasThere(c) &&
			!r.didBadly(c) {
			return true
		}
	}
	return false
}

// wasThere: the clause tells what there is or was: "we had the clear before", "tenemos el
// blanco ahorita", "there's bronze up there now".
func (r *reader) wasThere(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	i := h.first - 1
	for i >= from && i > h.first-6 && (r.among(i, beforeWasThere) || covers(r.choices, i)) {
		i--
	}
	if r.wordAt(i, "had", "tenia", "teniamos", "habia", "tuvimos", "tuve") && !r.wordAt(i-1, "id", "wish") {
		return !r.wordsIn(from, i, "wish", "rather", "better", "always")
	}
	if r.among(i, thereVerbs) && r.wordsIn(h.last+1, to, "now", "currently", "ahora", "ahorita", "before", "today", "actualmente") {
		return !r.wordsIn(from, h.first, "want", "need", "quiero", "like", "rather")
	}
	return r.wordAt(i, "was", "were", "era", "eran") && i > from &&
		!r.wordsIn(from, i, "hoping", "thinking", "wanted", "planning", "wondering", "if", "was")
}

// didBadly: "the white makes the room look like …", "the polycarb one yellowed on us": the value
// is spoken of as a thing, and what it did is no praise.
func (r *reader) didBadly(h *hit) bool {
	i := h.last + 1
	if r.wordAt(h.first-1, "last", "old", "previous", "original", "existing", "viejo", "vieja") &&
		r.wordAt(h.first-2, "the", "our", "my", "el", "la") && !r.wordsIn(max(0, h.first-4), h.first, "match", "like", "as", "than") {
		return true // "polycarb, the last acrylic dome took a limb"
	}
	thing := r.among(h.first-1, beforeOld)
	for r.among(i, oldKindWords) {
		thing = true
		i++
	}
	if !thing && !r.headsClause(h.first) {
		return false
	}
	if r.wordAt(i, "se") {
		i++
		for r.wordAt(i, "me", "nos", "le", "les") {
			i++
		}
	}
	if r.among(i, seemVerbs) {
		return r.anyOf(i+1, min(i+4, len(r.toks)), badLooks)
	}
	return r.among(i, wentWrong)
}

// headsClause: nothing stands before the token in its clause.
func (r *reader) headsClause(i int) bool {
	return i == 0 || i == r.clauseStart(i) || r.wordAt(i-1, "because", "cause", "since", "porque", "pues")
}

// wentWrong are words of what a sheet did that nobody wants again.
var wentWrong = wordsOf(`yellowed yellows yellow cracked cracks broke breaks shattered shatters split splits
	cooked cooks baked bakes roasted fried faded fades crazed crazes hazed clouded fogged fogs sweated sweats
	dripped drips leaked leaks scratched scratches busted failed died makes made gets got lets let turned turns
	went goes didnt doesnt dont wont never wouldnt couldnt lasted chalked chalks peeled peels pitted corroded shows
	showed blinded blinds heated heats warped sagged popped exploded froze condensed held costs runs looks look
	quebro quiebra rompio rompe amarillo agrieto rajo raja pone puso opaco empano empana sudaba suda sudo calienta
	calentaba duro aguanto hace hacia dejaba deja nublo trono estrello mancho pico pelo no`)

// passedOver: another value stands as the plain answer, and a sentence about why names this
// one: "Two, as I was told a single one will sweat", "polycarb we've had enough broken acrylic".
func (r *reader) passedOver(kind string, h *hit) bool {
	if !r.asked(fitcheck.Topic(kind)) || r.picked(h) || !r.argued(h) {
		return false
	}
	value, _ := h.has(kind)
	found := false
	for n := range r.choices {
		c := &r.choices[n]
		v, ok := c.has(kind)
		if !ok || c.first == h.first || v == value {
			continue
		}
		if r.wordAt(c.last+1, "or", "o") || r.wordAt(c.first-1, "or", "o") || !r.picked(c) {
			return false
		}
		found = true
	}
	return found
}

// picked: the value is all that its clause says, or opens the message before another statement.
func (r *reader) picked(h *hit) bool {
	if r.negated(h.first) || r.wasThere(h) || r.markAt(h.last+1, '?') {
		return false
	}
	if r.leadsTo(h.first-1) && h.first-2 <= r.sentenceFirst(h.first) &&
		r.endsAnswer(h.last+1, r.wordAt(h.first, "one", "una", "uno")) && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken {
		return true
	}
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if t := &r.toks[i]; (i < h.first || i > h.last) && t.kind == wordToken && (t.word == nil || !t.word.filler) &&
			!wishWords.has(t.text) && !covers(r.choices, i) &&
			!r.wordAt(i, "this", "time", "thank", "you", "thanks", "gracias", "mejor", "again") {
			return false
		}
	}
	return true
}

// argued: the words around the value tell of it, as a reason does.
func (r *reader) argued(h *hit) bool {
	from, to := r.sentence(h.first)
	return h.first > 0 && !r.anyOf(max(from, h.first-4), h.first, argueWords) &&
		r.anyOf(max(from, h.first-8), to+1, argueVerbs)
}

// exchanged: "reemplazar un domo blanco por uno transparente", "swap the white for clear".
func (r *reader) exchanged(first, last, next int) bool {
	return r.anyOf(r.sentenceFirst(first), first, exchangeVerbs) &&
		r.wordsIn(max(last+1, next-4), next, "with", "for", "to", "por", "con", "a") && !r.softBetween(last+1, next)
}

// wishedInstead: a wish of its own stands between two values: "My skylight is single pane and
// it sweats. I'd like double", "single now so double this time".
func (r *reader) wishedInstead(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "like", "love") && r.wordAt(i-1, "id", "would") ||
			r.wordAt(i, "prefer", "upgrade", "quisiera", "prefiero", "ocupo", "ocupamos") ||
			r.wordAt(i, "need") && r.wordAt(i-1, "i", "we") {
			return true
		}
		if r.wordAt(i, "so", "entonces", "mejor") && (i+1 == to || i+2 == to && r.among(i+1, insteadLeads)) &&
			!r.wordAt(i-1, "or", "and") {
			return true
		}
	}
	return false
}
