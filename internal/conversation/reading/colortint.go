package reading

import "example.com/intake-bot/internal/fitcheck"

// Whether a word for a color names the plastic's: "clear" may be of an opening, "white" of a frame.

var (
	clearSpans = wordsOf(`part area space width span length distance height dimension dimensions opening size
		measurement`)
	sameColorWords  = wordsOf(`so and same match please again`)
	seeSubjects     = wordsOf(`can you could i we u`)
	beforeOpal      = wordsOf(`is im mrs ms miss name soy grandma aunt sister`)
	pricedTintLeads = wordsOf(`a an one two new un una in en the los las`)
	clearDirections = wordsOf(`across through thru out up down off around to`)
	tintedFrames    = wordsOf(`fiberglass metal aluminum plastic vinyl wood powder`)
)

// tintAt is the color that a phrase gives the plastic, if it does.
func (r *reader) tintAt(n int, value string) (tint, bool) {
	h := &r.choices[n]
	if r.saidTwice(n, value) || r.noTintWord(h) || r.tintPassed(n) || r.tintOfPast(n) || r.tintDenied(n) ||
		r.frameColor(h, value) || r.corrosionsColor(h) || r.treeNamed(h.last+1) || r.tintOfOther(n) || r.pastValue("color", h) {
		return tint{}, false
	}
	t := tint{value: value, first: h.first, last: h.last}
	t.doubted = r.doubtedBut(h.first, h.last, true) && !r.wishBehind(fitcheck.TopicColor, h.first, h.last)
	if u := r.unitsAt(h.first, h.last); len(u) == 1 {
		t.unit = u[0]
	}
	t.layer = r.layerOf(n)
	return t, true
}

// noTintWord: the word that may name a color names something else.
func (r *reader) noTintWord(h *hit) bool {
	switch {
	case r.wordAt(h.first, "clear") && r.clearOpening(h), r.calledByColor(h.first): // "the white one is polycarbonate"
		return true
	case r.wordAt(h.first, "claro"):
		return r.claroOpening(h)
	case r.wordAt(h.first, "see"): // "the opening you can see through"
		return r.among(h.first-1, seeSubjects)
	case r.wordAt(h.first, "opal", "amber"):
		return r.opalName(h)
	}
	return false
}

// clearOpening: "23 3/4 by 47 3/4 clear inside the frame": how wide it is.
func (r *reader) clearOpening(h *hit) bool {
	next := h.first + 1
	if r.askedSize() == "none" || h.first != h.last || next >= len(r.toks) {
		return false
	}
	return r.labelKind(next, "topic") || r.among(next, clearSpans) ||
		r.wordAt(next, "inside", "opening", "across") && next+1 >= len(r.toks)
}

// claroOpening: "el claro por donde asoma el domo".
func (r *reader) claroOpening(h *hit) bool {
	return r.wordAt(h.last+1, "donde") || r.wordAt(h.last+1, "por") && r.wordAt(h.last+2, "donde") ||
		r.wordAt(h.last+1, "del", "libre") && r.askedSize() != "none"
}

// opalName: "this is Mrs. Opal Hendricks", "thanks, Amber".
func (r *reader) opalName(h *hit) bool {
	if r.markAt(h.first-1, '.') || r.among(h.first-1, beforeOpal) {
		return true
	}
	return h.last+1 == len(r.toks) && (r.markAt(h.first-1, ',') || r.markAt(h.first-1, '\n')) && r.talkBefore(h.first-2)
}

// tintPassed: the color is only spoken of, or another is taken.
func (r *reader) tintPassed(n int) bool {
	h := &r.choices[n]
	return r.ofCourse(n) || r.staysClear(n) || r.clearSpan(h) ||
		r.passedOver(string(fitcheck.TopicColor), h) && !r.ofTwoLayers(n) ||
		r.asked(fitcheck.TopicColor) && r.asksOfValue(h) && !r.priced(h.first)
}

// tintOfPast: the color is what is there now, or what it no longer is.
func (r *reader) tintOfPast(n int) bool {
	h := &r.choices[n]
	if r.oldIsSo(h) || r.theseGone(h) {
		return true
	}
	if n > 0 && r.choices[n-1].last == h.first-1 && r.choices[n-1].is("problem", fitcheck.ProblemHazy) {
		return !r.asked(fitcheck.TopicColor) // "gone milky white"
	}
	// "went from clear to totally foggy"
	return r.wordAt(h.first-1, "from", "de") && r.wordAt(h.last+1, "to", "a") &&
		r.faultIn(h.last+2, min(h.last+4, len(r.toks)-1), nil)
}

// oldIsSo: "the old one is clear"; not "the old one is clear, so again please".
func (r *reader) oldIsSo(h *hit) bool {
	return r.wordAt(h.first-1, "is", "was") && r.wordAt(h.first-2, "one", "dome", "plastic", "skylight", "layer") &&
		r.wordAt(h.first-3, "old", "current", "existing") && r.afterNote(r.clauseStart(h.first)) >= h.first-5 &&
		!r.anyOf(h.last+1, h.last+5, sameColorWords)
}

// theseGone: "just want the white ones gone".
func (r *reader) theseGone(h *hit) bool {
	k := h.last + 1 + number(r.wordAt(h.last+1, "one", "ones"))
	return r.wordAt(k, "gone", "out", "removed", "replaced") && r.wordAt(h.first-1, "the", "these", "those")
}

// tintDenied: the color is denied, asked about, or the frame's.
func (r *reader) tintDenied(n int) bool {
	h := &r.choices[n]
	return r.negated(h.first) || r.asked(fitcheck.TopicFinish) && r.answersFinish(n) ||
		r.fieldBefore(h.first) == fitcheck.TopicFinish || r.tintQuestioned(h) || r.frameNear(h)
}

// answersFinish: a color answers the question for the frame's finish, unless the words say it is the plastic's.
func (r *reader) answersFinish(n int) bool {
	h := &r.choices[n]
	if r.plasticNear(h) || r.ofTwoLayers(n) {
		return false
	}
	return !r.asked(fitcheck.TopicColor) || r.afterColor(h) && r.layerOf(n) == ""
}

// tintQuestioned: the color stands in a question that is none for a price and behind which no wish stands.
func (r *reader) tintQuestioned(h *hit) bool {
	return r.questioned(h.first) && !r.priced(h.first) && !r.wishBehind(fitcheck.TopicColor, h.first, h.last)
}

// tintOfOther: the color is told of something else than the plastic.
func (r *reader) tintOfOther(n int) bool {
	h := &r.choices[n]
	if r.ofName(h) || r.askedOther(h) && !r.ofTwoLayers(n) || r.astray(fitcheck.TopicColor, h.first, h.last) {
		return true
	}
	if !r.asked(fitcheck.TopicColor) && r.fieldBefore(h.first) != fitcheck.TopicColor && !r.ofPlastic(n) {
		return true
	}
	if r.tintAskedAbout(h) || r.asked(fitcheck.TopicStyle) && r.inStyle(h) || r.unexplained(fitcheck.TopicColor, h) {
		return true
	}
	return r.wordAt(h.last, "clear") && r.among(h.last+1, clearDirections) || // "clear across"
		r.among(h.last+1, tintedFrames) && r.wordAt(h.last+2, "frame", "frames", "metal", "rim") // "white vinyl frame"
}

// tintAskedAbout: "do you have it in white?"; not "how much for a white one".
func (r *reader) tintAskedAbout(h *hit) bool {
	if !r.yesNoQuestion(h.first) || r.wishBehind(fitcheck.TopicColor, h.first, h.last) || r.listedForPrice(h) {
		return false
	}
	return !r.priced(h.first) || !r.among(h.first-1, pricedTintLeads) || r.compared(h.first)
}

// ofTwoLayers: the color is one of two that the sentence tells of the outer and the inner layer.
func (r *reader) ofTwoLayers(n int) bool {
	layer := r.layerOf(n)
	if layer == "" {
		return false
	}
	from, to := r.sentence(r.choices[n].first)
	for k := range r.choices {
		c := &r.choices[k]
		if k == n || !c.has1("color") || c.first < from || c.last > to {
			continue
		}
		if other := r.layerOf(k); other != "" && other != layer {
			return true
		}
	}
	return false
}
