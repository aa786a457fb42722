package reading

import "example.com/intake-bot/internal/fitcheck"

// Whether what is said is doubted or only heard.

var (
	guessWords     = wordsOf(`guess probably prob maybe suppose think reckon rekon figure believe supongo creo`)
	hearsayPersons = wordsOf(`guy guys seller owner previous somebody someone neighbor realtor they vecino`)
)

// doubted says whether words of doubt hold for the statement at a token: "I think it's
// acrylic", "maybe bronze".
func (r *reader) doubted(first, last int) bool { return r.doubtedBut(first, last, false) }

// chosen: a color, layers, material or finish is the customer's to choose, so "white I
// guess" is an answer, and so is "I think" to its own question (thoughtOver).
func chosen(t fitcheck.Topic) bool {
	return t == fitcheck.TopicColor || t == fitcheck.TopicLayers || t == fitcheck.TopicMaterial || t == fitcheck.TopicFinish
}

// doubtedBut is doubted, where a wish that is only half put ("I suppose") is none.
func (r *reader) doubtedBut(first, last int, wish bool) bool {
	from, to := r.sentence(first)
	if r.hearsay(first) {
		return true
	}
	labels := within(r.labels, from, to)
	for n := range labels {
		h := &labels[n]
		how, ok := h.has("rough")
		if !ok || how != "clause" || h.first < from || h.last > to ||
			r.wordAt(h.first, "or", "give", "more", "ballpark", "approx", "from", "havent", "didnt", "never") {
			continue
		}
		if wish && r.wordAt(h.last, "guess", "suppose", "spose", "supongo", "reckon", "rekon") ||
			r.talkCovers(h.first) && r.priced(h.first) {
			continue // also "what does something like that cost"
		}
		if h.first > last && r.wordsIn(last+1, h.first, "so", "entonces") && r.anyOf(h.first, h.last+1, guessWords) {
			continue // "the frame is bent so I guess the whole thing"
		}
		if h.first > last && r.wordAt(h.last+1, "you", "youd", "they", "theyd", "one", "its", "it", "folks", "people") &&
			r.wordsIn(h.last+1, min(h.last+6, len(r.toks)), "call", "calls", "called", "say", "name", "term") {
			continue // "a fiberglass frame I guess you'd call it": the word, not the thing
		}
		if h.first > last && r.wordAt(h.last+1, "i", "we", "ill", "id", "wed") &&
			r.wordsIn(h.last+1, min(h.last+5, len(r.toks)), "need", "want", "order") {
			continue // "the frame is bent, I reckon we need the whole thing"
		}
		if h.last < first && r.wordAt(h.last, "like") && r.wordAt(h.first-1, "shaped") {
			continue // "shaped like a pyramid"
		}
		if h.first > last && r.wordAt(h.last, "like") && r.wordAt(h.last+1, "a", "an", "the", "my", "our") {
			continue // "flat glass, looks like a window laid down"
		}
		if h.first > last && r.wordAt(h.first, "kinda", "sorta", "kind", "sort") && r.wordAt(h.last+1, "like", "of") &&
			r.wordsIn(h.last+1, h.last+4, "a", "an", "the") {
			continue // "a hard white fiberglass kinda like a shower stall"
		}
		if h.first > last && r.wordAt(h.first, "kinda", "sorta") && r.wordAt(h.first-1, "to", "and", "but") {
			continue // "faded from bronze to kinda gray"
		}
		if h.last < first && r.wordAt(h.first-1, "some") && r.wordAt(h.first, "kind", "sort", "type") {
			continue // "some kind of fiberglass"
		}
		if h.last < first && r.wordAt(h.first, "kind", "sort") &&
			(r.wordAt(h.last+1, "like") || r.wordsIn(last, min(last+4, len(r.toks)), "like")) &&
			(r.asked(fitcheck.TopicProfile) || r.asked(fitcheck.TopicStyle)) {
			continue // "kind of like a tunnel"
		}
		if wish && h.last < first && r.wordAt(h.first, "kind", "kinda", "sort", "sorta") {
			continue // "kind of a smoky gray": how it looks
		}
		if len(r.Asked) > 1 && r.answersOther(h, first) {
			continue
		}
		if h.first > last && r.wordAt(h.first, "maybe", "probably") && r.wordAt(h.last+1, "from", "in", "since", "about", "de") {
			continue // "tall metal walls, maybe from the 70s"
		}
		if h.first > last && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == numToken && r.unitAt(h.last+2) != noUnit &&
			r.wordAt(h.first, "maybe", "probably", "like", "about", "around") {
			continue // "the frame's good, just the dome, roof is maybe 12 feet up"
		}
		if len(r.Asked) > 1 && r.wordAt(h.first, "not", "no", "dont", "unsure", "idk", "dunno", "cant") && h.first > last &&
			r.markAt(h.first-1, ',') {
			continue // "single, white, not sure": each answers its own question
		}
		if h.last < first && !r.softBetween(h.last+1, first) ||
			h.first > last && (!r.softBetween(last+1, h.first) || r.commaOnly(last+1, h)) {
			return true
		}
	}
	return r.markAt(last+1, '?') && !r.priced(first) && !r.wordsIn(from, first, "match", "matching")
}

// hearsay: "the guy before me said acrylic".
func (r *reader) hearsay(first int) bool {
	from := r.clauseStart(first)
	for i := first - 1; i > from; i-- {
		if r.wordAt(i, "so", "entonces") && r.wordsIn(i+1, first, "want", "prefer", "need", "quiero", "prefiero") {
			return false // "they told me acrylic yellows so I want polycarbonate"
		}
		if r.wordAt(i, "said", "told", "claims", "claimed", "thinks", "thought", "swore", "dijo") {
			if r.wordsIn(first, len(r.toks), "doubt", "believe") &&
				r.wordsIn(from, i, "roofer", "contractor", "inspector", "handyman", "techero", "albanil") {
				return true // "roofer said the frame is rotted but I don't believe him"
			}
			return r.anyOf(from, i, hearsayPersons)
		}
		if r.wordAt(i, "says", "dice") &&
			r.wordsIn(from, i, "seller", "previous", "somebody", "someone", "neighbor", "realtor", "vecino") {
			return true
		}
	}
	return false
}
