package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Words for a frame's state that tell nothing of the frame up there as it is now: it was so once, it would be
// so, the screws are so, or a window's frame, or the one in the catalog.

var (
	fasteners = wordsOf(`screw screws bolt bolts nail nails rivet rivets clip clips washer washers fasteners staples
		tornillo tornillos clavos clavo remaches rondanas pijas`)
	otherOwner = wordsOf(`window windows door doors picture pictures mirror bed bike truck car house garage neighbor
		neighbors neighbour neighbours vecino vecinos vecina ventana puerta`)
	shownThere = wordsOf(`website websites webpage site web catalog catalogs catalogue online brochure listing flyer
		internet catalogo pagina folleto`)
	wasWords  = wordsOf(`was were looked used era estaba estaban`)
	sinceWhat = wordsOf(`put installed new bought built went moved hung ordered hit fell storm hail limb tree puse
		pusimos instalaron nuevo compre compramos cayo granizo tormenta`)
	wouldWords    = wordsOf(`would wouldve couldve seria estaria serviria`)
	contraryVerbs = wordsOf(`werent wasnt hadnt didnt estuviera estuviese fuera estuvieran`)
	soundsWhat    = wordsOf(`good great fine ok okay perfect`)
	enoughFor     = wordsOf(`cat cats dog dogs chickens hens goats cows horses birds government`)
	praisedThings = wordsOf(`luck question news price deal point idea one thinking call catch`)
	theirPictures = wordsOf(`pictures photos picture photo fotos ad`)
	fastenerLeads = wordsOf(`a the one couple two some of few un unos el los`)
	ownerLinks    = wordsOf(`on of around for de del`)
	ownerDressing = wordsOf(`the my our a that other one la mi el un una kitchen bedroom front back big`)
	saidBefore    = wordsOf(`said wrote put told answered typed dije puse escribi`)
	saidOnly      = wordsOf(`only just wrongly mistakenly solo nomas`)
	saidWhy       = wordsOf(`i it was that you because`)
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
	if !r.anyOf(max(r.clauseStart(h.first), h.first-4), h.last+1, wasWords) {
		return false
	}
	to := r.sentenceLast(h.last)
	if r.wordAt(h.last+1, "new", "originally", "once", "before") ||
		r.wordsIn(h.last+1, to+1, "until", "till", "til", "hasta") {
		return true
	}
	for i := h.last + 1; i <= to; i++ {
		if r.wordAt(i, "when", "before", "cuando", "antes") && r.anyOf(i+1, min(i+7, to+1), sinceWhat) {
			return true
		}
	}
	return false
}

// wouldBe: "the frame would be fine if the corners weren't bent".
func (r *reader) wouldBe(h *hit) bool {
	from := max(r.clauseStart(h.first), h.first-4)
	return r.anyOf(from, h.last, wouldWords) && !r.wordsIn(from, h.last, "say", "call", "think", "said") &&
		r.wordsIn(h.last+1, r.sentenceLast(h.last)+1, "if", "except", "but", "si", "pero")
}

// contrary: "… if the corners weren't bent", "estaría bien si no estuviera doblado": what is denied under such
// an "if" is what is.
func (r *reader) contrary(first int) bool {
	from, to := r.sentence(first)
	if !r.anyOf(from, to+1, wouldWords) {
		return false
	}
	for i := first - 1; i >= from && i > first-8; i-- {
		if r.wordAt(i, "if", "si") {
			return r.anyOf(i+1, first, contraryVerbs) && (r.out.Language != "es" || r.wordsIn(i+1, first, "no"))
		}
	}
	return false
}

// otherPraise: "sounds good, I'll look tonight", "good enough for the cat", "solid bronze", "it was painted good".
func (r *reader) otherPraise(h *hit) bool {
	switch {
	case r.wordAt(h.first, "sounds") || r.wordAt(h.first-1, "sounds", "sound") && r.among(h.first, soundsWhat):
		return h.last-h.first < 2
	case h.first != h.last:
		return false
	case r.goodEnoughFor(h.last), r.among(h.last+1, praisedThings):
		return true
	case r.wordAt(h.first, "solid", "perfect", "solido"):
		next := within(r.choices, h.last+1, h.last+1)
		return len(next) > 0 && (next[0].has1("color") || next[0].has1("finish"))
	}
	return r.wordAt(h.first-1, "painted", "repainted", "stained", "washed")
}

// goodEnoughFor: "good enough for the cat".
func (r *reader) goodEnoughFor(i int) bool {
	return r.wordAt(i+1, "enough") && r.wordAt(i+2, "for") && r.anyOf(i+3, min(i+5, len(r.toks)), enoughFor)
}

// shownElse: "the frame looks good on the website", "good in your pictures".
func (r *reader) shownElse(h *hit) bool {
	for i := h.last + 1; i < min(h.last+6, r.clauseEnd(h.last)+1); i++ {
		if r.among(i, shownThere) || r.among(i, theirPictures) && r.wordAt(i-1, "your", "ur", "sus", "su", "yalls") {
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
	for r.among(k, fastenerLeads) {
		k++
	}
	if s.value == fitcheck.ConditionBent && r.among(k, fasteners) {
		return true
	}
	for i := h.last; i >= r.clauseStart(h.first); i-- {
		if r.among(i, frameNouns) {
			return false
		}
		if r.among(i, fasteners) {
			return r.frameSoundBeside(h)
		}
	}
	return false
}

// frameSoundBeside: another phrase says that the frame is good.
func (r *reader) frameSoundBeside(h *hit) bool {
	return slices.ContainsFunc(r.choices, func(c hit) bool {
		return c.first != h.first && c.is(string(fitcheck.TopicFrameCondition), fitcheck.ConditionGood) &&
			!r.negated(c.first) && r.anyOf(r.clauseStart(c.first), c.last+1, frameNouns)
	})
}

// frameOfOther: the frame of the clause is another thing's: "the frame on the window next to it is rusted".
func (r *reader) frameOfOther(h *hit) bool {
	for i := h.last; i >= r.clauseStart(h.first); i-- {
		if r.among(i, frameNouns) {
			return r.ownedByOther(i)
		}
	}
	return false
}

// ownedByOther: "the frame on my neighbor's …", "el marco de la ventana".
func (r *reader) ownedByOther(i int) bool {
	if r.among(i-1, otherOwner) || r.wordAt(i-1, "s") && r.among(i-3, otherOwner) {
		return !r.wordAt(i-1, "house", "garage", "pictures", "picture")
	}
	if !r.among(i+1, ownerLinks) {
		return false
	}
	k := i + 2
	for r.among(k, ownerDressing) {
		k++
	}
	return r.among(k, otherOwner) && !r.wordAt(k, "house", "garage") && !r.wordAt(k+1, "skylight", "dome")
}

// saidInError: "the frame is in good shape, I only said weathered because it was dirty".
func (r *reader) saidInError(h *hit) bool {
	if !r.otherCondition(h) {
		return false
	}
	mistaken := r.wordsIn(h.last+1, min(h.last+5, len(r.toks)), "mistake", "error", "wrong", "accident")
	for i := r.sentenceFirst(h.first); i < h.first; i++ {
		if r.among(i, saidBefore) && (mistaken || r.among(i-1, saidOnly)) {
			return h.first-i < 3 || r.anyOf(i, h.first, saidWhy)
		}
	}
	return false
}
