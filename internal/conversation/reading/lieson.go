package reading

import "example.com/intake-bot/internal/fitcheck"

// What kind of frame it is, told part by part: "there is a wood box covered in roofing and
// the skylight frame fits over that". Where no phrase of the vocabulary says it, the parts
// that are named, and which lies over, on or under which, do.

var (
	leakOrCrack = wordsOf(`leak leaks leaking leaked drips dripping water crack cracks cracked split gotea goteando
		agua`)
	coveredWords = wordsOf(`covered topped capped wrapped surrounded cubierto cubierta tapado tapada rodeado`)
	clampedWords = wordsOf(`held clamped pressed sandwiched trapped pinched prensado prensada apretado sujeto
		detenido`)
	heldLinks = wordsOf(`by under with between in beneath con por bajo de debajo`)
	holdVerbs = wordsOf(`holds holding clamps clamping pinches secures sujeta aprieta detiene agarra prensa`)
	capVerbs  = wordsOf(`over around caps cap capping covers covering wraps overlaps onto atop hugs hugging encloses
		surrounds straddles sobre tapa cubre envuelve alrededor abraza abrazando rodea monta encaja embona`)
	fastenedBy = wordsOf(`screwed bolted fastened attached nailed mounted screws bolts atornillado atornillada
		clavado montado fijado sujeto sits sentado`)
)

// laidPart is a part of what is up there.
type laidPart uint8

const (
	noPart laidPart = iota
	sheetPart
	framePart
	boxPart
	roofPart
	wholePart // the skylight, whatever it is made of
	metalBox  // a curb of metal, or the upright sides of the frame itself
	darkPart  // what tells nothing here: a metal box, a plastic frame
)

// lies is how one part lies to another.
type lies uint8

const (
	notLying lies = iota
	liesOver
	liesOn
	liesUnder
	coveredBy
	heldBy    // the plastic, by a frame
	holdsDown // the same, told the other way round
)

var (
	// metalThings are made of metal, and no frame.
	metalThings = wordsOf(`gutter gutters ladder roof roofing siding flashing flashings pole wall walls deck
		building sides door screw screws nail nails bolt bolts wrap cap trim strip strips`)
	woodWords  = wordsOf(`wood wooden lumber timber plywood 2x4 2x6 2x8 2x10 madera`)
	shingWords = wordsOf(`shingles shingle shingled roofing tejas teja`)
	// notKinds are words beside which the parts tell of something else.
	notKinds = wordsOf(`glass fiberglass vidrio cristal fibra tube tubo tubular measure measured measures measuring
		tape bathroom kitchen bedroom shower tub building shop ceiling high between entre if want need new replace
		quiero necesito where donde should`)
)

// laidAt is the part that token i begins to name, and the last token of its name.
func (r *reader) laidAt(i int) (laidPart, int) {
	if r.wholeAt(i) == 2 && r.by(i+1) && r.wholeAt(i+2) >= 4 && r.wholeAt(i+2) <= 12 && r.unitAt(i+3) == noUnit {
		return boxPart, i + 2 // boards
	}
	if r.toks[i].kind != wordToken {
		return noPart, i
	}
	t := r.toks[i].text
	next := ""
	if i+1 < len(r.toks) && r.toks[i+1].kind == wordToken {
		next = r.toks[i+1].text
	}
	if end := i + 2; r.wordAt(i, "frame", "rim", "marco") && r.wordAt(i+1, "of", "on", "del") {
		if r.wordAt(end, "the", "my", "our", "its") {
			end++
		}
		if end < len(r.toks) && wholeWords.has(r.toks[end].text) {
			return framePart, end // "the frame of the skylight"
		}
	}
	switch {
	case metalWords.has(t) && metalThings.has(next):
		return noPart, i
	case metalWords.has(t) && boxWords.has(next):
		return metalBox, i + 1
	case woodWords.has(t) && frameParts.has(next) && next != "frame", sheetWords.has(t) &&
		(frameParts.has(next) || boxWords.has(next)):
		return darkPart, i + 1
	case woodWords.has(t) && (boxWords.has(next) || next == "frame" || next == "base" || next == "framing"), frameParts.has(t) &&
		boxWords.has(next) && !metalWords.has(t):
		return boxPart, i + 1
	case r.wordAt(i, "frame", "marco", "base") && r.wordAt(i+1, "of", "de") && i+2 < len(r.toks) && woodWords.has(r.toks[i+2].text):
		return boxPart, i + 2
	case metalWords.has(t) && frameParts.has(next), wholeWords.has(t) && frameParts.has(next):
		return framePart, i + 1
	case frameParts.has(t) && sheetWords.has(next) && t != "rimmed": // "a metal plastic thing"
		return darkPart, i + 1
	case sheetWords.has(t):
		return sheetPart, i
	case frameParts.has(t):
		return framePart, i
	case boxWords.has(t) || woodWords.has(t):
		return boxPart, i
	case shingWords.has(t):
		return roofPart, i
	case wholeWords.has(t):
		return wholePart, i
	}
	return noPart, i
}

// lieAt is how the part before token i lies to the one after it.
func (r *reader) lieAt(i int) lies {
	switch {
	case r.wordAt(i, "around", "alrededor") && r.anyOf(max(0, i-3), i, leakOrCrack):
		return notLying // "the plastic has split, leaking around it"
	case r.wordAt(i, "covered", "wrapped") && r.wordAt(i+1, "in"):
		return notLying // "a wood box wrapped in metal" has its flashing
	case r.among(i, coveredWords) && r.wordAt(i+1, "in", "with", "by", "de", "con", "por"):
		return coveredBy
	case r.among(i, clampedWords) && r.anyOf(i+1, min(i+4, len(r.toks)), heldLinks):
		return heldBy
	case r.among(i, holdVerbs), r.wordAt(i, "over", "onto", "sobre") &&
		r.wordsIn(max(0, i-3), i, "screwed", "bolted", "clamped", "fastened", "atornillado", "apretado"):
		if r.wordAt(i, "over", "onto", "sobre") && !r.sheetNext(i) {
			return liesOver
		}
		return holdsDown
	case r.among(i, capVerbs):
		return liesOver
	case r.wordAt(i, "top") && r.wordAt(i+1, "of"), r.wordAt(i, "encima", "arriba") && r.wordAt(i+1, "de", "del"):
		return liesOver
	case r.wordAt(i, "on", "upon") && !r.wordAt(i+1, "top"), r.wordAt(i, "to", "into", "a", "al", "en", "contra") &&
		r.anyOf(max(0, i-7), i, fastenedBy):
		return liesOn
	case r.wordAt(i, "under", "beneath", "underneath", "debajo", "abajo"):
		return liesUnder
	}
	return notLying
}

// sheetNext: the next part that is named is the plastic.
func (r *reader) sheetNext(i int) bool {
	for k := i + 1; k < min(i+7, len(r.toks)); k++ {
		if part, _ := r.laidAt(k); part != noPart {
			return part == sheetPart
		}
	}
	return false
}

// laid is one part that is named, and how the one before it lies to it.
type laid struct {
	part  laidPart
	token int
	how   lies
	under int // index of the part that lies so
	round bool
}

// liesOnWhat tells the kind of frame by the parts that the message names, where nothing
// else does.
func (r *reader) liesOnWhat(all []saying) []saying {
	if r.asksItself() {
		return all
	}
	for _, s := range all {
		if s.topic == fitcheck.TopicStyle && s.value != "?" {
			return all
		}
	}
	value, first, last := "", 0, 0
	if !r.asked(fitcheck.TopicStyle) {
		if value, first, last = r.frameOnBox(); value == "" && len(r.Asked) == 0 {
			value, first, last = r.liesUnasked()
		}
	} else if value, first, last = kindOf(r.laidParts(0, len(r.toks))); value == "" {
		value, first, last = r.tallSides()
	}
	if value == "" {
		return all
	}
	out := all[:0]
	for _, s := range all {
		if s.topic != fitcheck.TopicStyle {
			out = append(out, s)
		}
	}
	return append(out, saying{topic: fitcheck.TopicStyle, value: value, first: first, last: last, doubted: r.doubted(first, last) &&
		!r.looksLike(&hit{first: first, last: last})})
}

// asksItself: the message asks something, so what it names states nothing.
func (r *reader) asksItself() bool {
	for n := range r.talk {
		if h := &r.talk[n]; h.is("req", "howto") || h.is("req", "question") && r.asks(h) {
			return true
		}
	}
	for i := range r.toks {
		if r.toks[i].mark('?') {
			return true
		}
	}
	return false
}

// saysUnknown: the token is of a "no idea" before a description, which denies no part: "I
// wouldn't know. There is a metal edge around the bubble".
func (r *reader) saysUnknown(i int) bool {
	for n := range r.talk {
		if h := &r.talk[n]; h.is("say", "dontknow") && h.first <= i && i <= h.last {
			return true
		}
	}
	return false
}

// hidden: "no metal showing on top, the plastic goes over it": there is a frame all the same.
func (r *reader) hidden(i int) bool {
	for k := i + 1; k <= i+2; k++ {
		if k+1 < len(r.toks) && frameParts.has(r.toks[k].text) {
			return r.wordAt(k+1, "showing", "visible", "exposed", "shows", "visto", "expuesto") ||
				r.wordAt(k+1, "on", "to", "you", "a") && r.wordAt(k+2, "top", "see", "be", "can", "la")
		}
	}
	return false
}

// atopAlone: "a wooden box with a metal rimmed dome on top": on the box that was named.
func (r *reader) atopAlone(i int) bool {
	return r.wordAt(i, "top") && r.wordAt(i-1, "on") && !r.wordAt(i+1, "of", "edge", "part", "side") ||
		r.wordAt(i, "encima", "arriba") && !r.wordAt(i+1, "de", "del", "la", "el")
}

func firstBox(parts []laid) int {
	for k := range parts {
		if parts[k].part == boxPart {
			return k
		}
	}
	return -1
}

// tallSides: "tall one, metal walls, no wood": sides of its own, and no box.
func (r *reader) tallSides() (value string, first, last int) {
	tall, side := -1, -1
	for i := range r.toks {
		switch {
		case r.toks[i].kind == wordToken && (boxWords.has(r.toks[i].text) || woodWords.has(r.toks[i].text)) &&
			!r.wordAt(i-1, "no", "any", "sin") && !r.wordAt(i-2, "no", "not", "isnt", "without"):
			return "", 0, 0
		case r.wordAt(i, "tall", "high", "upright", "vertical", "altos", "altas"), r.wordAt(i, "straight") && r.wordAt(i+1, "up"):
			tall = max(tall, i)
			if tall == i && side < 0 && r.risesFrom(i) {
				side = i
			}
		case r.wordAt(i, "walls", "sides", "lados", "paredes") &&
			(i > 0 && metalWords.has(r.toks[i-1].text) || r.wordAt(i+1, "de") && i+2 < len(r.toks) && metalWords.has(r.toks[i+2].text)):
			side = i
		}
	}
	if tall < 0 || side < 0 ||
		r.wordsIn(0, len(r.toks), "over", "under", "or", "ceiling", "ceilings", "pole", "roof", "building", "shop") {
		return "", 0, 0
	}
	return fitcheck.StyleVerticalRise, min(tall, side), max(tall, side)
}

// risesFrom: a metal part "goes up vertical", "stands straight up".
func (r *reader) risesFrom(i int) bool {
	if !r.wordsIn(max(0, i-3), i, "goes", "comes", "stands", "rises", "runs", "sticks", "going", "standing") {
		return false
	}
	for k := i - 1; k >= max(0, i-7); k-- {
		if metalWords.has(r.toks[k].text) || r.wordAt(k, "frame") {
			return true
		}
	}
	return false
}

// meantBy is the part that "it" stands for where the part at by lies so to it.
func meantBy(parts []laid, by int) int {
	if by < 0 {
		return -1
	}
	for k := by - 1; k >= 0; k-- {
		if parts[k].part != parts[by].part && parts[k].part != roofPart {
			return k
		}
	}
	return -1
}
