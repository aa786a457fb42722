package reading

import "example.com/intake-bot/internal/fitcheck"

// tint is a color named in the message.
type tint struct {
	value       string
	first, last int
	layer       string // outer, inner, middle, all, "" where not said
	unit        int
	doubted     bool
}

// colors puts the plastic's colors together: "clear over white", "clear outside, white
// inside", "bronze". A lone "bronze" is the plastic's unless the frame is spoken of.
func (r *reader) colors() {
	r.startsClear()
	r.layersFirst = r.layerFirst()
	var tints []tint
	for n := range r.choices {
		h := &r.choices[n]
		for _, s := range h.senses {
			if s.topic != fitcheck.TopicColor || s.asked && !r.asked(s.topic) && r.fieldBefore(h.first) != s.topic || r.toks[h.first].used {
				continue
			}
			if t, ok := r.tintAt(n, s.value); ok {
				tints = append(tints, r.ofEach(t)...)
			}
			break
		}
	}
	if len(tints) == 0 {
		return
	}
	units := map[int][]tint{}
	var order []int
	for _, t := range tints {
		if units[t.unit] == nil {
			order = append(order, t.unit)
		}
		units[t.unit] = append(units[t.unit], t)
	}
	for _, u := range order {
		r.colorFact(u, units[u])
	}
}

func (r *reader) tintAt(n int, value string) (tint, bool) {
	h := &r.choices[n]
	t := tint{value: value, first: h.first, last: h.last}
	if r.saidTwice(n, value) || r.askedSize() != "none" && h.first == h.last && r.wordAt(h.first, "clear") && h.first+1 < len(r.toks) && (r.labelKind(h.first+1, "topic") || r.wordAt(h.first+1, "part", "area", "space", "width", "span", "length", "distance", "height", "dimension", "dimensions", "opening", "size", "measurement") || r.wordAt(h.first+1, "inside", "opening", "across") && h.first+2 >= len(r.toks)) {
		return t, false // "23 3/4 by 47 3/4 clear inside the frame"
	}
	if r.calledByColor(h.first) {
		return t, false // "the white one is polycarbonate"
	}
	if r.ofCourse(n) || r.staysClear(n) || r.clearSpan(h) || r.passedOver(string(fitcheck.TopicColor), h) && !r.ofTwoLayers(n) || r.asked(fitcheck.TopicColor) && r.asksOfValue(h) && !r.priced(h.first) {
		return t, false
	}
	if k := r.clauseStart(h.first); r.wordAt(h.first-1, "is", "was") && r.wordAt(h.first-2, "one", "dome", "plastic", "skylight", "layer") && r.wordAt(h.first-3, "old", "current", "existing") && r.afterNote(k) >= h.first-5 && !r.wordsIn(h.last+1, min(h.last+5, len(r.toks)), "so", "and", "same", "match", "please", "again") {
		return t, false // "the old one is clear"
	}
	if k := h.last + 1 + number(r.wordAt(h.last+1, "one", "ones")); r.wordAt(k, "gone", "out", "removed", "replaced") && r.wordAt(h.first-1, "the", "these", "those") {
		return t, false // "just want the white ones gone"
	}
	if r.wordAt(h.first, "claro") && (r.wordAt(h.last+1, "donde") || r.wordAt(h.last+1, "por") && r.wordAt(h.last+2, "donde") || r.wordAt(h.last+1, "del", "libre") && r.askedSize() != "none") {
		return t, false // "el claro por donde asoma el domo"
	}
	if r.wordAt(h.first, "see") && r.wordAt(h.first-1, "can", "you", "could", "i", "we", "u") {
		return t, false // "the opening you can see through"
	}
	if r.wordAt(h.first, "opal", "amber") && (r.markAt(h.first-1, '.') || r.wordAt(h.first-1, "is", "im", "mrs", "ms", "miss", "name", "soy", "grandma", "aunt", "sister") || h.last+1 == len(r.toks) && (r.markAt(h.first-1, ',') || r.markAt(h.first-1, '\n')) && r.talkBefore(h.first-2)) {
		return t, false // "this is Mrs. Opal Hendricks"
	}
	if n > 0 && r.choices[n-1].last == h.first-1 && r.choices[n-1].is("problem", fitcheck.ProblemHazy) && !r.asked(fitcheck.TopicColor) {
		return t, false // "gone milky white"
	}
	if r.wordAt(h.first-1, "from", "de") && r.wordAt(h.last+1, "to", "a") && r.faultIn(h.last+2, min(h.last+4, len(r.toks)-1), nil) {
		return t, false // "went from clear to totally foggy"
	}
	if r.negated(h.first) || r.asked(fitcheck.TopicFinish) && !r.plasticNear(h) && !r.ofTwoLayers(n) && (!r.asked(fitcheck.TopicColor) || r.afterColor(h) && r.layerOf(n) == "") || r.fieldBefore(h.first) == fitcheck.TopicFinish || r.questioned(h.first) && !r.priced(h.first) && !r.wishBehind(fitcheck.TopicColor, h.first, h.last) || r.frameNear(h) {
		return t, false
	}
	if r.frameColor(h, value) || r.corrosionsColor(h) || r.treeNamed(h.last+1) {
		return t, false
	}
	if r.ofName(h) || r.askedOther(h) && !r.ofTwoLayers(n) || r.astray(fitcheck.TopicColor, h.first, h.last) || !r.asked(fitcheck.TopicColor) && r.fieldBefore(h.first) != fitcheck.TopicColor && !r.ofPlastic(n) || r.yesNoQuestion(h.first) && !r.wishBehind(fitcheck.TopicColor, h.first, h.last) && !(r.priced(h.first) && r.wordAt(h.first-1, "a", "an", "one", "two", "new", "un", "una", "in", "en", "the", "los", "las") && !r.compared(h.first)) && !r.listedForPrice(h) {
		return t, false
	}
	if r.asked(fitcheck.TopicStyle) && r.inStyle(h) || r.unexplained(fitcheck.TopicColor, h) ||
		r.wordAt(h.last, "clear") && r.wordAt(h.last+1, "across", "through", "thru", "out", "up", "down", "off", "around", "to") ||
		r.wordAt(h.last+2, "frame", "frames", "metal", "rim") && r.wordAt(h.last+1, "fiberglass", "metal", "aluminum", "plastic", "vinyl", "wood", "powder") {
		return t, false
	}
	if r.pastValue("color", h) {
		return t, false
	}
	t.doubted = r.doubtedBut(h.first, h.last, true) && !r.wishBehind(fitcheck.TopicColor, h.first, h.last)
	if u := r.unitsAt(h.first, h.last); len(u) == 1 {
		t.unit = u[0]
	}
	t.layer = r.layerOf(n)
	return t, true
}

// ofTwoLayers: the color is one of two that the sentence tells of the outer and the inner layer.
func (r *reader) ofTwoLayers(n int) bool {
	layer := r.layerOf(n)
	from, to := r.sentence(r.choices[n].first)
	for k := range r.choices {
		if c := &r.choices[k]; k != n && layer != "" && c.has1("color") && from <= c.first && c.last <= to {
			if other := r.layerOf(k); other != "" && other != layer {
				return true
			}
		}
	}
	return false
}

// ofPlastic: a color that nobody asked for is the plastic's where its clause speaks of
// plastic, of what is wanted, or of nothing else.
func (r *reader) ofPlastic(n int) bool {
	h := &r.choices[n]
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if n > 0 && r.choices[n-1].has1("color") && r.markAt(h.first-1, '/') {
		return true
	}
	if h.has1("layers") || n > 0 && r.choices[n-1].has1("material") || n > 0 && r.choices[n-1].has1("layers") || n+1 < len(r.choices) && r.choices[n+1].has1("material") || n+1 < len(r.choices) && r.choices[n+1].has1("layers") && r.toks[r.choices[n+1].first].kind == wordToken {
		return true
	}
	if v, _ := h.has("color"); n > 1 && r.saidTwice(n-1, v) && r.isLayer(n-2) {
		return true // "outer white, inner see-through clear"
	}
	if n > 0 && r.isLayer(n-1) || n+1 < len(r.choices) && r.choices[n+1].has1("layer") || n > 0 && r.choices[n-1].has1("layer") {
		return true
	}
	if r.changeAsked(fitcheck.TopicColor, h.first, h.last) || r.choseColor(h) {
		return true
	}
	other := false
	for i := from; i <= to; i++ {
		if r.wordAt(i, "like") && r.wordAt(i-1, "id", "wed", "would") {
			return true // "I'd like it in white"
		}
		if i > h.last && r.politeIf(i) {
			break // "en blanco si se puede"
		}
		if i >= h.first && i <= h.last || r.toks[i].kind != wordToken || r.roughAt(i) || r.inRef(i) || r.toks[i].used && r.Units > 1 && r.wholeSaid(i) > 0 || r.wordAt(i, "though", "tho", "aunque", "thought", "thoughts") || i < r.afterNote(from) || r.wordAt(i, "second") && r.wordAt(i+1, "thought", "thoughts") || r.deniedColor(i) || r.wordAt(i, "after", "all") && (r.wordAt(i+1, "all") || r.wordAt(i-1, "after")) {
			continue
		}
		if (r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicMaterial)) && r.wordAt(i, "looks", "look", "see", "just", "ya", "se", "ve", "parece", "old", "one") {
			continue // "can't tell, looks white tho"
		}
		if r.asked(fitcheck.TopicConfirm) && r.wordAt(i, "i", "we", "in", "and", "if", "en", "se", "puede", "puedo", "possible", "can", "could", "you", "u", "pero", "que", "sea", "sean", "domo", "ordered", "asked", "requested", "chose", "picked", "for", "said", "too", "also", "as", "well", "likewise", "tambien", "should", "not", "no", "it", "thats", "meant", "mean", "change", "switch", "swap", "to", "sorry", "be", "digo", "dije", "me", "needs", "forgot", "forget", "mention", "say", "thing", "olvido", "olvide", "decir", "decirle", "cosa", "una", "falto", "oh", "quise", "el", "la", "de", "del", "los", "las", "por", "favor") {
			continue
		}
		if r.asked(fitcheck.TopicConfirm) && r.wordAt(i, "wanted", "queria", "pedi") {
			return true // "the color is wrong, I wanted clear over clear"
		}
		if r.wordAt(i, "rather") || r.wordAt(i, "do", "use") && (r.asked(fitcheck.TopicMaterial) || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicFinish) || r.asked(fitcheck.TopicWant)) {
			return true // "poly carb, n do white"
		}
		if r.wordAt(i, "want", "like", "need", "prefer", "color", "make", "go", "lets", "please", "tint", "over", "plastic", "dome", "domes", "acrylic",
			"cambie", "cambien", "cambiele", "cambielo", "cambiela", "cambia", "cambiar", "ponga", "pongale", "ponle", "prefiero", "polycarbonate", "skylight", "version", "option", "layer", "layers", "double", "single", "triple", "lens", "bubble", "colour", "quiero", "domo", "plastico", "acrilico", "policarbonato", "meant", "mejor", "sea", "sean",
			"should", "instead", "wants", "one", "ones", "choose", "order", "capa", "doble", "sencillo", "for", "glazing", "sheet", "plexiglass") {
			return true
		}
		if w := r.toks[i].word; (w == nil || !w.filler) && !r.colorAt(i) {
			other = true
		}
	}
	return !other
}

// deniedColor: the word is part of "not clear".
func (r *reader) deniedColor(i int) bool {
	for n := range r.choices {
		if h := &r.choices[n]; h.first <= i && i <= h.last {
			return h.has1("colorof") && r.wordAt(h.first, "not", "no")
		}
	}
	return false
}

// colorAt: the word is part of a color's name.
func (r *reader) colorAt(i int) bool {
	for n := range r.choices {
		if h := &r.choices[n]; h.first <= i && i <= h.last {
			return h.has1("color")
		}
	}
	return false
}

func (h *hit) has1(kind string) bool {
	_, ok := h.has(kind)
	return ok
}

// colorFact joins the colors of one unit.
func (r *reader) colorFact(unit int, tints []tint) {
	first, last := tints[0].first, tints[len(tints)-1].last
	tints = r.takenBackTints(r.withoutShades(tints))
	c := fitcheck.Color{}
	for k, t := range tints {
		if t.value == "?" {
			r.unclear(fitcheck.TopicColor, unit, WhyChoice, nil, first, last)
			return
		}
		twice := t.layer == "outer" && c.Outer != "" && c.Outer != t.value || t.layer == "inner" && c.Inner != "" && c.Inner != t.value
		if twice && !r.wordsIn(tints[k-1].last+1, t.first, "sorry", "actually", "want", "make", "no", "wait", "instead", "now", "change", "perdon", "digo", "quiero", "mejor") {
			r.unclear(fitcheck.TopicColor, unit, WhyChoice, nil, first, last)
			return // one layer in two colors
		}
		switch t.layer {
		case "outer":
			c.Outer = t.value
		case "inner":
			c.Inner = t.value
		case "middle":
			c.Middle = t.value
		case "both":
			c.Outer = t.value
			if !r.bothKinds(t.first) {
				c.Inner = t.value
			}
		case "all":
			c.Outer, c.Middle, c.Inner = t.value, t.value, t.value
		}
	}
	if len(tints) == 1 && tints[0].layer == "" && (r.wordAt(tints[0].first-1, "all", "everything", "todo", "todas", "todos")) {
		for _, f := range r.out.Facts {
			if n, ok := f.Value.(fitcheck.Whole); ok && f.Topic == fitcheck.TopicLayers && n > 1 {
				c.Inner = tints[0].value // "2 layers, all clear"
				if n == 3 {
					c.Middle = tints[0].value
				}
			}
		}
	}
	if r.unlayered(&c, tints) {
		r.unclear(fitcheck.TopicColor, unit, WhyChoice, nil, first, last)
		return
	}
	switch {
	case c.Outer == "":
		if c.Inner != "" {
			r.unclear(fitcheck.TopicColor, unit, WhyChoice, c, first, last)
		}
	case doubtedTint(tints, c.Outer) && !r.thoughtOver(fitcheck.TopicColor, first):
		r.unclear(fitcheck.TopicColor, unit, WhyRough, c, first, last)
	default:
		r.fact(fitcheck.TopicColor, unit, c, first, last)
	}
}

// doubtedTint: a doubt is said of the color, or of one on another layer; not of one that
// another was chosen over: "white? the plants might not like that so clear".
func doubtedTint(tints []tint, outer string) bool {
	for _, t := range tints {
		if t.doubted && (t.layer != "" || t.value == outer) {
			return true
		}
	}
	return false
}

func (r *reader) over(from, to int) bool {
	return to == from+1 && r.wordAt(from, "on") || r.wordsIn(from, to, "over", "sobre") || r.wordsIn(from, to, "top", "encima") || r.wordsIn(from, to, "outside")
}
