package reading

import "example.com/intake-bot/internal/fitcheck"

// Words for a frame's state that tell nothing of the frame up there as it is now: it was so once, it would be
// so, the screws are so, or a window's frame, or the one in the catalog.

var (
	fasteners  = wordsOf(`screw screws bolt bolts nail nails rivet rivets clip clips washer washers fasteners staples tornillo tornillos clavos clavo remaches rondanas pijas`)
	otherOwner = wordsOf(`window windows door doors picture pictures mirror bed bike truck car house garage neighbor neighbors neighbour neighbours vecino vecinos vecina ventana puerta`)
	shownThere = wordsOf(`website websites webpage site web catalog catalogs catalogue online brochure listing flyer internet catalogo pagina folleto`)
)

// frameAside: the state is not one of the frame up there now.
func (r *reader) frameAside(s sense, h *hit) bool {
	if s.value == fitcheck.ConditionGood && (r.wasOnce(h) || r.wouldBe(h) || r.otherPraise(h) || r.shownElse(h)) {
		return true
	}
	if s.value == fitcheck.ConditionCaulkedOver && r.littleCaulk(h) {
		return true
	}
	return r.ofFastener(s, h) || r.frameOfOther(h) || r.saidInError(h)
}

// wasOnce: "the frame was straight until a limb hit it", "was straight when I put it in"; not "was good when
// I looked".
func (r *reader) wasOnce(h *hit) bool {
	if !r.wordsIn(max(r.clauseStart(h.first), h.first-4), h.last+1, "was", "were", "looked", "used", "era", "estaba", "estaban") {
		return false
	}
	to := r.sentenceLast(h.last)
	if r.wordAt(h.last+1, "new", "originally", "once", "before") || r.wordsIn(h.last+1, to+1, "until", "till", "til", "hasta") {
		return true
	}
	for i := h.last + 1; i <= to; i++ {
		if r.wordAt(i, "when", "before", "cuando", "antes") && r.wordsIn(i+1, min(i+7, to+1), "put", "installed", "new", "bought", "built", "went", "moved", "hung", "ordered", "hit", "fell", "storm", "hail", "limb", "tree", "puse", "pusimos", "instalaron", "nuevo", "compre", "compramos", "cayo", "granizo", "tormenta") {
			return true
		}
	}
	return false
}

// wouldBe: "the frame would be fine if the corners weren't bent".
func (r *reader) wouldBe(h *hit) bool {
	return r.wordsIn(max(r.clauseStart(h.first), h.first-4), h.last, "would", "wouldve", "couldve", "seria", "estaria", "serviria") && !r.wordsIn(max(r.clauseStart(h.first), h.first-4), h.last, "say", "call", "think", "said") &&
		r.wordsIn(h.last+1, r.sentenceLast(h.last)+1, "if", "except", "but", "si", "pero")
}

// contrary: "… if the corners weren't bent", "estaría bien si no estuviera doblado": what is denied under such
// an "if" is what is.
func (r *reader) contrary(first int) bool {
	from, to := r.sentence(first)
	if !r.wordsIn(from, to+1, "would", "wouldve", "estaria", "seria", "serviria") {
		return false
	}
	for i := first - 1; i >= from && i > first-8; i-- {
		if r.wordAt(i, "if", "si") {
			return r.wordsIn(i+1, first, "werent", "wasnt", "hadnt", "didnt", "estuviera", "estuviese", "fuera", "estuvieran") && (r.out.Language != "es" || r.wordsIn(i+1, first, "no"))
		}
	}
	return false
}

// otherPraise: "sounds good, I'll look tonight", "good enough for the cat", "solid bronze", "it was painted good".
func (r *reader) otherPraise(h *hit) bool {
	switch {
	case r.wordAt(h.first, "sounds") || r.wordAt(h.first-1, "sounds", "sound") && r.wordAt(h.first, "good", "great", "fine", "ok", "okay", "perfect"):
		return h.last-h.first < 2
	case h.first != h.last:
		return false
	case r.wordAt(h.last+1, "enough") && r.wordAt(h.last+2, "for") && r.wordsIn(h.last+3, min(h.last+5, len(r.toks)), "cat", "cats", "dog", "dogs", "chickens", "hens", "goats", "cows", "horses", "birds", "government"):
		return true
	case r.wordAt(h.last+1, "luck", "question", "news", "price", "deal", "point", "idea", "one", "thinking", "call", "catch"):
		return true
	case r.wordAt(h.first, "solid", "perfect", "solido"):
		next := within(r.choices, h.last+1, h.last+1)
		return len(next) > 0 && (next[0].has1("color") || next[0].has1("finish"))
	}
	return r.wordAt(h.first-1, "painted", "repainted", "stained", "washed")
}

// shownElse: "the frame looks good on the website".
func (r *reader) shownElse(h *hit) bool {
	for i := h.last + 1; i < min(h.last+6, r.clauseEnd(h.last)+1); i++ {
		if shownThere.has(r.wordText(i)) || r.wordAt(i, "pictures", "photos", "picture", "photo", "fotos", "ad") && r.wordAt(i-1, "your", "ur", "sus", "su", "yalls") {
			return true
		}
	}
	return false
}

// ofFastener: "frame is ok, the screws are rusty", "I bent a screw but nothing else".
func (r *reader) ofFastener(s sense, h *hit) bool {
	if s.value == fitcheck.ConditionGood {
		return false
	}
	k := h.last + 1
	for r.wordAt(k, "a", "the", "one", "couple", "two", "some", "of", "few", "un", "unos", "el", "los") {
		k++
	}
	if s.value == fitcheck.ConditionBent && fasteners.has(r.wordText(k)) {
		return true
	}
	for i := h.last; i >= r.clauseStart(h.first); i-- {
		if frameNouns.has(r.wordText(i)) {
			return false
		}
		if fasteners.has(r.wordText(i)) {
			return r.frameSoundBeside(h)
		}
	}
	return false
}

// frameSoundBeside: another phrase says that the frame is good.
func (r *reader) frameSoundBeside(h *hit) bool {
	for n := range r.choices {
		if c := &r.choices[n]; c.first != h.first && c.is(string(fitcheck.TopicFrameCondition), fitcheck.ConditionGood) && !r.negated(c.first) {
			for i := r.clauseStart(c.first); i <= c.last; i++ {
				if frameNouns.has(r.wordText(i)) {
					return true
				}
			}
		}
	}
	return false
}

// frameOfOther: the frame of the clause is another thing's: "the frame on the window next to it is rusted".
func (r *reader) frameOfOther(h *hit) bool {
	for i := h.last; i >= r.clauseStart(h.first); i-- {
		if frameNouns.has(r.wordText(i)) {
			return r.ownedByOther(i)
		}
	}
	return false
}

// ownedByOther: "the frame on my neighbor's …", "el marco de la ventana".
func (r *reader) ownedByOther(i int) bool {
	if otherOwner.has(r.wordText(i-1)) || r.wordAt(i-1, "s") && otherOwner.has(r.wordText(i-3)) {
		return !r.wordAt(i-1, "house", "garage", "pictures", "picture")
	}
	if !r.wordAt(i+1, "on", "of", "around", "for", "de", "del") {
		return false
	}
	k := i + 2
	for r.wordAt(k, "the", "my", "our", "a", "that", "other", "one", "la", "mi", "el", "un", "una", "kitchen", "bedroom", "front", "back", "big") {
		k++
	}
	return otherOwner.has(r.wordText(k)) && !r.wordAt(k, "house", "garage") && !r.wordAt(k+1, "skylight", "dome")
}

// saidInError: "the frame is in good shape, I only said weathered because it was dirty".
func (r *reader) saidInError(h *hit) bool {
	if !r.otherCondition(h) {
		return false
	}
	from := r.sentenceFirst(h.first)
	for i := from; i < h.first; i++ {
		if r.wordAt(i, "said", "wrote", "put", "told", "answered", "typed", "dije", "puse", "escribi") && (r.wordAt(i-1, "only", "just", "wrongly", "mistakenly", "solo", "nomas") || r.wordsIn(h.last+1, min(h.last+5, len(r.toks)), "mistake", "error", "wrong", "accident")) {
			return r.wordsIn(i, h.first, "i", "it", "was", "that", "you", "because") || h.first-i < 3
		}
	}
	return false
}
