package reading

import "example.com/intake-bot/internal/fitcheck"

// Wishes that are none yet, or none of two.

var (
	afterOnlyDome = wordsOf(`rises comes sticks goes bulges bows stands pops measures rise raises lifts
		humps bubbles leaks cracked came lasted has lets gets sube levanta mide tiene sale alza up`)
	betweenWishes = wordsOf(`maybe just only if the do tal vez quizas solo nomas`)
	wholeWishes   = wordsOf(`new whole skylight skylights unit complete entire everything nuevo tragaluz
		completo unidad todo`)
	domeWishes  = wordsOf(`top dome plastic bubble lens cover acrylic tapa domo plastico mica burbuja`)
	openToLinks = wordsOf(`the a doing replacing getting do el la`)
	quoteWords  = wordsOf(`quote price prices pricing cotice precio precios cotizacion`)
)

// onlyRises: "the dome only rises 5 and a half": the "only" is of what it does.
func (r *reader) onlyRises(s sense, h *hit) bool {
	return s.value == fitcheck.WantDomeOnly && r.wordAt(h.last, "only", "just", "solo", "nomas") && r.among(h.last+1, afterOnlyDome)
}

// eitherWish: "a new skylight or just the top, not sure": of two wishes with an "or" between them
// neither is meant where the words doubt.
func (r *reader) eitherWish(s sense, h *hit) bool {
	if s.value != fitcheck.WantDomeOnly && s.value != fitcheck.WantCompleteUnit {
		return false
	}
	from, to := r.sentence(h.first)
	or := r.orBeside(h, from, to)
	if or < 0 || !r.wishUnsure(h, from, to) {
		return false
	}
	others := wholeWishes
	if s.value == fitcheck.WantCompleteUnit {
		others = domeWishes
	}
	if or < h.first {
		return r.anyOf(from, or, others)
	}
	return r.anyOf(or+1, to+1, others)
}

// orBeside is the "or" that stands by a wish in its sentence, -1 for none.
func (r *reader) orBeside(h *hit, from, to int) int {
	or := -1
	for i := from; i <= to; i++ {
		if !r.wordAt(i, "or", "o") {
			continue
		}
		if i < h.first && r.allAmong(i+1, h.first, betweenWishes) ||
			i > h.last && r.onlyWords(h.last+1, i, "part", "maybe", "itself") {
			or = i
		}
	}
	return or
}

// wishUnsure: the words doubt which of two wishes it shall be.
func (r *reader) wishUnsure(h *hit, from, to int) bool {
	return r.firstTalk("dontknow") != nil || r.firstTalk("maybe") != nil || r.wordsIn(from, h.first, "whether") ||
		r.eitherDoes(from, to)
}

// openTo: "the dome only but open to the whole unit": what somebody would hear about is no
// wish yet.
func (r *reader) openTo(s sense, h *hit) bool {
	if s.value == "?" || s.value == fitcheck.WantUnsure {
		return false
	}
	i := h.first - 1
	for r.among(i, openToLinks) {
		i--
	}
	if r.wordAt(i, "to") && r.wordAt(i-1, "open") {
		return true
	}
	return r.wordAt(i, "considering", "consider", "about") &&
		r.wordsIn(i-2, i+1, "considering", "consider", "thinking", "thought") &&
		r.wordsIn(h.last+1, len(r.toks), "but", "pero")
}

// bothPriced: "quote me the dome and the whole thing": a price of each is wanted first.
func (r *reader) bothPriced(all []saying) bool {
	for k := 1; k < len(all); k++ {
		a, b := &all[k-1], &all[k]
		differ := a.value != b.value && a.value != fitcheck.WantUnsure && b.value != fitcheck.WantUnsure
		if differ && r.wordsIn(a.last+1, b.first, "and", "y", "plus") && r.anyOf(0, a.first, quoteWords) {
			return true
		}
	}
	return false
}

// otherWants: the message also names what could be wanted.
func (r *reader) otherWants(h *hit) bool {
	for n := range r.wants {
		if v, ok := r.wants[n].has(string(fitcheck.TopicWant)); ok && r.wants[n].first != h.first && v != fitcheck.WantUnsure {
			return true
		}
	}
	return false
}
