package reading

import "example.com/intake-bot/internal/fitcheck"

// Where the word for a color tells of something else than the plastic that is wanted.

var (
	afterClaro      = wordsOf(`si pues que y ya son eso por supuesto muy ok todo`)
	comparisons     = wordsOf(`more less cheaper expensive compared versus vs difference than mas menos barato caro`)
	besideFrameLook = wordsOf(`frame frames metal marco aluminum trim fiberglass rim ring retainer flange`)
	otherColored    = wordsOf(`frame frames metal marco house roof door trim siding wall walls ceiling snow shingles
		light room casa`)
	clearSpanWords = wordsOf(`opening inside between span space across and on in thru through both each is thanks`)
)

// pastValue: the value is what was there, and another is told: "Clear. the old one was white".
func (r *reader) pastValue(kind string, h *hit) bool {
	if r.spent(kind, h) {
		return true
	}
	from := r.clauseStart(h.first)
	if !r.wordsIn(from, h.first, "old", "last", "existing", "original", "previous", "viejo", "anterior") ||
		!r.wordsIn(from, h.first, "was", "were", "era", "eran", "is") ||
		r.wordsIn(from, h.first, "match", "same", "like") {
		return false
	}
	for n := range r.choices {
		if c := &r.choices[n]; c.has1(kind) && (c.last < from || c.first > r.clauseEnd(h.last)) && !r.negated(c.first) {
			return true
		}
	}
	return false
}

// ofCourse: "sí, claro", "pulgadas, claro": where no color is asked and nothing of a layer, a
// material or another color stands beside it, the word says of course.
func (r *reader) ofCourse(n int) bool {
	h := &r.choices[n]
	if h.first != h.last || !r.wordAt(h.first, "claro") || r.asked(fitcheck.TopicColor) ||
		r.fieldBefore(h.first) == fitcheck.TopicColor {
		return false
	}
	if r.wordAt(h.first-1, "el") && r.askedSize() != "none" {
		return true // "adentro del marco, el claro, 23 x 47": the opening
	}
	for k := max(n-1, 0); k < len(r.choices) && k <= n+1; k++ {
		c := &r.choices[k]
		if k != n &&
			(c.has1("color") || c.has1("layer") || c.has1("material") && !c.is("material", "?") ||
				c.has1("layers") && r.toks[c.last].kind == wordToken && !r.wordAt(c.last, "uno", "una", "dos", "tres") ||
				c.has1("layers") && r.asked(fitcheck.TopicLayers)) {
			return false
		}
	}
	for i := r.clauseStart(h.first); i <= r.clauseEnd(h.last); i++ {
		if t := &r.toks[i]; t.kind == wordToken && i != h.first && r.unitAt(i) == noUnit && r.numberAt(i).kind == notNumber &&
			!r.talkBefore(i) && !r.among(i, afterClaro) {
			return false
		}
	}
	return !r.wordAt(h.first-1, "no") && !(r.markAt(h.first-1, ',') && r.wordAt(h.first-2, "no"))
}

// compared: the sentence sets one price beside another: "is a bronze one more?".
func (r *reader) compared(i int) bool {
	from, to := r.sentence(i)
	return r.anyOf(from, to+1, comparisons)
}

// askedOther: the same word answers another question.
func (r *reader) askedOther(h *hit) bool {
	if r.asked(fitcheck.TopicColor) || r.plasticNear(h) {
		return false
	}
	for _, s := range h.senses {
		if s.topic != "" && s.topic != fitcheck.TopicColor && r.asked(s.topic) && !s.joint {
			return true
		}
	}
	return false
}

// ofColor: the face is a layer's, and one of two colors stands beside it: "clear outside and
// white inside".
func (r *reader) ofColor(h *hit) bool {
	if h.first > 0 && (r.toks[h.first-1].kind == numToken || r.unitAt(h.first-1) != noUnit || r.markAt(h.first-1, '"')) {
		return false // "25 x 49 outside white": the size's
	}
	colors := 0
	beside := false
	for n := range r.choices {
		c := &r.choices[n]
		if c.has1("color") {
			colors++
			beside = beside || c.last+1 == h.first || h.last+1 == c.first || c.last+2 == h.first && r.wordAt(h.first-1, "on")
		}
	}
	return beside && colors > 1
}

func (r *reader) frameNear(h *hit) bool {
	i := h.first - 1
	for r.wordAt(i, "is", "are", "all", "was") {
		i--
	}
	if r.inRef(i) {
		return false // "living room bronze"
	}
	if r.wordAt(i, "wall", "walls") && r.wordAt(i-1, "double", "single", "triple", "twin", "dual") {
		return false // "double wall clear over white"
	}
	j := h.last + 1
	for r.wordAt(j, "for", "on", "in", "the", "para", "el", "en") {
		j++
	}
	if j > h.last+1 && r.wordAt(j, "frame", "frames", "metal", "marco", "aluminum", "trim") {
		return true // "bronze for the frame"
	}
	return r.among(h.last+1, besideFrameLook) || r.among(i, otherColored)
}

func (r *reader) plasticNear(h *hit) bool {
	return r.wordAt(h.last+1, "plastic", "dome", "acrylic", "bubble", "lens", "glazing", "domo", "plastico") || r.plasticTold(h)
}

// plasticTold: the frame's finish is asked, and the sentence has come to the plastic before the
// color: "anodized, and the plastic in bronze as well".
func (r *reader) plasticTold(h *hit) bool {
	if !r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicColor) {
		return false
	}
	for i := h.first - 1; i >= r.sentenceFirst(h.first); i-- {
		if r.wordAt(i, "frame", "frames", "metal", "aluminum", "marco", "marcos", "trim", "finish") ||
			r.wordAt(i, "like", "match", "not", "as") {
			return false
		}
		if r.wordAt(i, "plastic", "dome", "domes", "bubble", "lens", "plastico", "domo", "domos") {
			return r.wordAt(i-1, "the", "and", "el", "los", "my", "our", "on")
		}
	}
	return false
}

// clearSpan: "21 1/2 by 45 1/2 clear", "22 clear by 46 clear" where an opening was asked for: the
// way between its sides, and no color.
func (r *reader) clearSpan(h *hit) bool {
	if h.first != h.last || r.inRef(h.first-1) || !r.wordAt(h.first, "clear") ||
		!r.asked(fitcheck.TopicCurbInside) && !r.asked(fitcheck.TopicRetainerOpening) && !r.asked(fitcheck.TopicFrameInside) ||
		h.first == 0 {
		return false
	}
	if next := h.last + 1; next < len(r.toks) && r.toks[next].kind == wordToken && !r.by(next) && !r.among(next, clearSpanWords) {
		return false // "22 x 46 clear acrylic"
	}
	i := h.first - 1
	for i > 0 && (r.markAt(i, '"') || r.markAt(i, '\'') || r.unitAt(i) != noUnit) {
		i--
	}
	return r.toks[i].kind == numToken || isWhole(r.numberAt(i).kind) || r.toks[i].used && r.toks[i].kind == wordToken
}

// startsClear makes a color of "clear the" and "clear with" where they open the answer and
// another color follows: "clear the white ones look cheap"; not "clear the snow".
func (r *reader) startsClear() {
	if len(r.choices) < 2 || !r.asked(fitcheck.TopicColor) || !r.wordAt(0, "clear") || !r.wordAt(1, "the", "with") {
		return
	}
	if h, next := &r.choices[0], &r.choices[1]; h.first == 0 && h.is("colorof", "none") && next.has1("color") && next.first <= 2 {
		r.choices[0] = hit{first: 0, last: 0,
			senses: []sense{{kind: string(fitcheck.TopicColor), value: fitcheck.ColorClear, topic: fitcheck.TopicColor}}}
	}
}
