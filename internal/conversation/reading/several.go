package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Several topics are often asked at once ("layers, color, material?"). Which of them a
// word answers, the words around it tell.

var (
	afterColorWords = wordsOf(`no wait actually or sorry instead rather change now pero mejor perdon o`)
	fastenedStyle   = wordsOf(`screwed screws bolted nailed fastened attached stapled screw bolts caulked glued
		atornillado atornillada tornillos clavado pegado`)
	secondsNouns = wordsOf(`sec second minute min moment thing question segundo minuto momento`)
	aroundLayers = wordsOf(`just only want need with its it is has have got think be say do like prefer solo nomas
		de a maybe and or us me layers to go for not no y o but i es tiene con probably`)
	partWishes  = wordsOf(`want need looking busco quiero necesito buy replace replacing order ocupo comprar cambiar`)
	deniedParts = wordsOf(`metal curb box caja cajon marco frame rust dents damage wood`)
)

// otherwiseMeant: the phrase says something else here, or answers another question.
func (r *reader) otherwiseMeant(s sense, h *hit) bool {
	if chosen(s.topic) && r.wordAt(h.last+1, "or", "o") && r.wordsIn(h.last+2, min(h.last+5, len(r.toks)), "other", "otro", "otra") {
		return true // "whichever is cheaper, acrylic or the other one"
	}
	if s.topic == fitcheck.TopicWant && r.wishNamesKind(h) {
		return true // "bronze on the complete one"
	}
	if s.topic == fitcheck.TopicProfile && r.wordAt(h.last, "quonset") && !r.asked(s.topic) ||
		s.value == fitcheck.StyleBareDome && r.wordAt(h.first, "no") && r.wordAt(h.first+1, "the") {
		return true // "a quonset barn", "no the frame is straight"
	}
	if s.value == fitcheck.ProblemHoleOpen && r.wordAt(h.first-1, "what", "that", "one") &&
		r.wordsIn(max(0, h.first-5), h.first, "same", "like", "as", "match", "matches") {
		return true // "white outside, same as what came off"
	}
	if s.topic == fitcheck.TopicProblem && s.value == "none" && r.goodAlone(h) {
		return true
	}
	if s.topic == fitcheck.TopicStyle && len(r.out.SameKind) > 0 && r.sameFrame(h.first-1) {
		return true
	}
	return r.ofName(h) || r.notOfFrame(s, h) || r.otherNothing(s, h) || r.partOfTalk(s, h) ||
		s.asked && r.outranked(s, h) || r.wishForStyle(s, h) ||
		s.topic == fitcheck.TopicLayers && !r.layersNumber(h) ||
		s.topic == fitcheck.TopicProblem && s.value == fitcheck.ProblemStorm && h.first == h.last &&
			r.wordAt(h.first, "storm", "storms", "hail", "hails", "tormenta", "wind") && r.whenever(h.first)
}

// wishNamesKind: what is wanted of a kind is what it is called by beside a color: "clear for the dome only,
// white for the complete one".
func (r *reader) wishNamesKind(h *hit) bool {
	article := h.first - number(!r.wordAt(h.first, "the", "el", "la"))
	if !r.wordAt(article, "the", "el", "la") || !r.wordAt(article-1, "on", "for", "para", "en") {
		return false
	}
	return r.itemsEnd > 0 && h.first > r.itemsEnd || r.Units > 1 && !r.asked(fitcheck.TopicWant) && r.colorAt(article-2)
}

// seen: "looks like fiberglass" tells what somebody sees.
func (r *reader) seen(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicStyle && t != fitcheck.TopicFrameCondition && t != fitcheck.TopicOutline && t != fitcheck.TopicProfile {
		return false
	}
	if t == fitcheck.TopicStyle && r.looksLike(h) {
		return true
	}
	i := h.first - 1
	for i >= 0 && r.toks[i].kind == wordToken &&
		(r.toks[i].word != nil && (r.toks[i].word.filler || h.first-i <= 3 && metalWords.has(r.toks[i].text)) && !r.wordAt(i, "like") ||
			r.wordAt(i, "to", "be")) {
		i--
	}
	return r.wordAt(i, "like") && r.wordAt(i-1, "looks", "look", "looking", "seems", "appears") ||
		r.wordAt(i, "looks", "seems", "appears") ||
		r.wordAt(h.first, "looks", "look", "seems")
}

// ofName: a word of the phrase belongs to a name or a place: "a house in Two Harbors".
func (r *reader) ofName(h *hit) bool {
	for i := h.first; i <= h.last; i++ {
		if r.toks[i].named {
			return true
		}
	}
	return false
}

// outranked: a word that answers several questions answers another of them. A color is
// the plastic's before it is the frame's; the whole or a part that only stands in a
// sentence ("the dome is cracked", "caulk all over it") is no wish.
func (r *reader) outranked(s sense, h *hit) bool {
	switch s.topic {
	case fitcheck.TopicFinish:
		return r.asked(fitcheck.TopicColor) && h.has1("color") && r.fieldBefore(h.first) != s.topic && !r.frameNear(h) &&
			!r.afterColor(h)
	case fitcheck.TopicWant:
		return !r.aloneInClause(h.first, h.last) && !r.drawn(h)
	case fitcheck.TopicImpactRisk, fitcheck.TopicProblem:
		return false
	}
	return false
}

// drawn: "… so all of it": what is drawn from the rest, at the end of its sentence.
func (r *reader) drawn(h *hit) bool {
	return r.wordAt(h.first-1, "so", "entonces") && (h.last+1 >= len(r.toks) || r.sentenceEnd(h.last+1))
}

// afterColor: the plastic's color was told before, and some other choice stands between:
// "double, bronze, acrylic, bronze".
func (r *reader) afterColor(h *hit) bool {
	color, between, colorEnd := false, false, 0
	if r.liesOver(h) {
		return false // "bronze over clear": the plastic's
	}
	if m := r.choiceBefore(h.first, "material"); m != nil && r.talkSays(-1, m.first) {
		return true // "2 layers, no preference, polycarbonate, bronze"
	}
	if passed := r.turnsBefore(h.first); passed > 0 && passed+r.toldBefore(h.first) >= slices.Index(r.Asked, fitcheck.TopicFinish) &&
		slices.Index(r.Asked, fitcheck.TopicFinish) > 0 {
		return true // "no idea, what do most people get? not sure about that. bronze"
	}
	for n := range r.choices {
		o := &r.choices[n]
		switch {
		case o.first >= h.first:
			ownLine := r.breakBetween(colorEnd, h.first) && !r.anyOf(colorEnd+1, h.first, afterColorWords) &&
				r.aloneInClause(h.first, h.last) // "clear please", and "bronze" on the next line
			return color && (between || ownLine || r.talkSays(colorEnd, h.first))
		case o.has1("color"):
			color, between, colorEnd = true, false, o.last
		case color && (o.has1("material") || o.has1("layers")) && !r.inRef(o.first): // not "the big one"
			between = true
		}
	}
	return false
}

// toldBefore is how many of the other choices are told before the token.
func (r *reader) toldBefore(i int) int {
	layers, color, material := 0, 0, 0
	for n := range r.choices {
		if o := &r.choices[n]; o.last < i-1 || o.last < i && !o.has1("color") {
			layers = max(layers, number(o.has1("layers")))
			color = max(color, number(o.has1("color")))
			material = max(material, number(o.has1("material")))
		}
	}
	return layers + color + material
}

func number(b bool) int {
	if b {
		return 1
	}
	return 0
}

// turnsBefore is how many of several questions the clauses before the token answered by
// nothing but "not sure" and "whatever".
func (r *reader) turnsBefore(i int) int {
	n, at := 0, -1
	for k := range r.talk {
		h := &r.talk[k]
		if h.last >= i || !h.is("say", "dontknow") && !h.is("say", "usual") ||
			n > 0 && h.is("say", "usual") && r.markAt(h.first-1, ',') && h.first-2 == at {
			continue // "no idea, what do most people get?" answers one
		}
		if from := r.clauseStart(h.first); from > at {
			n, at = n+1, h.last
		}
	}
	return n
}

// aloneInClause: nothing stands beside the words in their clause but small words and
// words of wishing.
func (r *reader) aloneInClause(first, last int) bool {
	only := len(r.Asked) == 1
	for i := r.clauseStart(first); i <= r.clauseEnd(last); i++ {
		if i >= first && i <= last || r.toks[i].kind == markToken {
			continue
		}
		if only && r.toks[i].kind == wordToken && !r.faultAt(i) {
			continue
		}
		t := &r.toks[i]
		if t.kind != wordToken || negWords.has(t.text) {
			return false
		}
		if (t.word == nil || !t.word.filler) && !wishWords.has(t.text) && r.smallTalkAt(i) == i {
			return false
		}
	}
	return true
}

// faultAt: a word that tells what is wrong, or that somebody measured.
func (r *reader) faultAt(i int) bool {
	if r.wordAt(i, "measures", "measured", "mide") {
		return true
	}
	hits := within(r.choices, i, i)
	for k := range hits {
		for _, s := range hits[k].senses {
			if s.topic == fitcheck.TopicProblem || s.topic == fitcheck.TopicFrameCondition && !s.asked {
				return true
			}
		}
	}
	return false
}

var wishWords = wordsOf(`i we id ill well want wanted need just only please think take replace buy order get
	would say guess go with for lets new replacement probably prefer quiero queremos quisiera quisieramos ocupo
	ocupamos necesito necesitamos solo nomas nada mas cambiar comprar looking to is fine then so it part thing
	rather do me make give send one prefiero if possible replacing swap swapping change changing buying rip out put
	in tear todo con y el as a at time now keep ok okay yes yeah no hmm um uh`)

// wishForStyle: "only the plastic please" is a wish and not a bare dome where the wish
// was asked for; "double pane" answers how many layers.
func (r *reader) wishForStyle(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicStyle {
		return false
	}
	if r.asked(s.topic) {
		switch s.value {
		case fitcheck.StyleCurbMount:
			return h.last-h.first == 1 && s.asked && r.wordAt(h.last, "frame", "frames") && r.otherStyle(h)
		case fitcheck.StyleBareDome:
			return r.asked(fitcheck.TopicWant) && h.last-h.first < 3 && r.wordAt(h.first, "just", "only", "solo") &&
				r.wordAt(h.last, "plastic", "plastico", "dome", "domo") && !r.wordAt(h.last+1, "with", "and")
		case fitcheck.StyleGlass:
			return r.paneOnly(h)
		}
		return false
	}
	switch s.value {
	case fitcheck.StyleBareDome:
		return (r.asked(fitcheck.TopicWant) || r.wishedPart(h)) && !r.anyOf(h.first, h.last+1, fastenedStyle)
	case fitcheck.StyleGlass:
		return (r.asked(fitcheck.TopicLayers) || r.paneOnly(h)) && !r.wordsIn(h.first, h.last+1, "glass", "vidrio", "cristal")
	}
	return false
}

// layersNumber: "one" is a number of layers where it does not stand for a thing: "the
// anodized one", "the metal frame one".
func (r *reader) layersNumber(h *hit) bool {
	if h.first == h.last && h.last+1 < len(r.toks) && countNouns.has(r.toks[h.last+1].text) ||
		h.first == h.last && r.among(h.last+1, secondsNouns) {
		return false
	}
	if r.strongLayers() && r.piecesAlone(h) {
		return false // "2 layers, clear over white, acrylic, just one"
	}
	if next := h.last + 1; h.first == h.last && next < len(r.toks) && r.toks[next].kind == wordToken && !r.explained(next) &&
		r.strongLayers() {
		return false // "2 guys looked at it already, one layer is fine"
	}
	if h.first != h.last || !r.wordAt(h.first, "one", "uno", "una") {
		return true
	}
	i := h.first - 1
	return i < 0 || r.toks[i].kind == markToken || r.among(i, aroundLayers)
}

// piecesAlone: a bare number, with an "only" or not, that is a clause of its own.
func (r *reader) piecesAlone(h *hit) bool {
	return r.wholeAt(h.last) > 0 && r.onlyWords(r.clauseStart(h.first), h.last, "just", "only", "and", "solo", "nomas", "y") &&
		(h.last+1 >= len(r.toks) || r.toks[h.last+1].kind == markToken)
}

// whenever: the words tell when something happens again and again.
func (r *reader) whenever(i int) bool {
	if r.wordAt(i-1, "a", "the", "una", "la") && r.wordsIn(i+1, i+3, "tore", "hit", "beat", "broke", "took", "cracked", "blew") {
		return false // "water comes in when it rains a storm tore it up"
	}
	for j := i - 1; j >= 0 && j >= i-5 && !r.sentenceEnd(j); j-- {
		if r.wordAt(j, "and", "y") && r.wordsIn(i+1, i+3, "got", "tore", "hit", "beat", "damage", "broke", "took", "cracked") {
			return false // "water comes in when it rains and hail got it last month"
		}
		if r.wordAt(j, "whenever", "every", "everytime", "anytime", "if") ||
			r.wordAt(j, "when", "cuando", "each") && !r.wordsIn(j, min(i+3, len(r.toks)), "last", "came", "hit", "went", "that") {
			return true
		}
	}
	return false
}

// notJust: "not just the plastic", "más que el domo": more than a part is wanted.
func (r *reader) notJust(s sense, h *hit) bool {
	return s.topic == fitcheck.TopicWant && s.value == fitcheck.WantDomeOnly &&
		r.wordAt(h.first, "just", "only", "solo", "nomas", "solamente") &&
		r.wordAt(h.first-1, "not", "no", "isnt")
}

// paneOnly: "double pane style, 2 layers" says how many layers, in words used of glass.
func (r *reader) paneOnly(h *hit) bool {
	return r.wordAt(h.last, "pane") &&
		(r.wordAt(h.last+1, "style", "kind", "plastic", "acrylic", "dome") ||
			r.wordsIn(h.last+1, min(h.last+6, len(r.toks)), "layers", "layer", "capas", "acrylic", "polycarbonate", "bubble"))
}

// wishedPart: "I look for just the bubble, no frame": the frame is not wanted, and the
// words tell nothing of what is there.
func (r *reader) wishedPart(h *hit) bool {
	if len(r.Asked) > 0 || !r.wordAt(h.first, "no", "sin", "without", "only", "just", "solo") || h.last-h.first > 2 {
		return false
	}
	from, _ := r.sentence(h.first)
	for n := range r.wants {
		if w := &r.wants[n]; w.is("want", fitcheck.WantDomeOnly) && w.first >= from && w.first <= h.last &&
			r.anyOf(from, w.first+2, partWishes) {
			return true
		}
	}
	return false
}

// deniesOther: what the "no" before the words denies is named before them: "there is no
// curb, the edge tucks in under the shingles", "no rust or anything, dome only".
func (r *reader) deniesOther(s sense, h *hit) bool {
	if s.topic != fitcheck.TopicStyle && s.topic != fitcheck.TopicWant {
		return false
	}
	for j := h.first - 1; j >= 0 && j > h.first-negReach-1; j-- {
		if r.toks[j].kind != wordToken || !negWords.has(r.toks[j].text) {
			continue
		}
		k := j + 1
		for r.wordAt(k, "a", "any", "tiene", "hay", "has", "have", "real") {
			k++
		}
		return k < h.first && r.among(k, deniedParts) &&
			(k+1 < h.first || s.topic == fitcheck.TopicStyle && r.wordAt(h.first, "se", "the", "screws", "edge"))
	}
	return false
}

// talkSays: a "not sure" or a "whatever" stands between two tokens.
func (r *reader) talkSays(from, to int) bool {
	talk := within(r.talk, from+1, to-1)
	for n := range talk {
		if talk[n].is("say", "dontknow") || talk[n].is("say", "usual") {
			return true
		}
	}
	return false
}

// otherStyle: a word for another kind stands beside a bare "metal frame", and says more.
func (r *reader) otherStyle(h *hit) bool {
	for n := range r.styles {
		o := &r.styles[n]
		if o.first != h.first && o.senses[0].topic == fitcheck.TopicStyle && o.senses[0].value != "?" {
			return true
		}
	}
	return false
}

// choiceBefore is the last phrase before a token that says something of a topic.
func (r *reader) choiceBefore(i int, kind string) *hit {
	var found *hit
	for n := range r.choices {
		if o := &r.choices[n]; o.last < i && o.has1(kind) {
			found = o
		}
	}
	return found
}
