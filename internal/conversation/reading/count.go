package reading

import "example.com/intake-bot/internal/fitcheck"

// counts reads how many units there are: "3 skylights", "two of them", "just one".
func (r *reader) counts() {
	if r.countMended() || r.countScratched() {
		return
	}
	r.numbersBeside()
	r.countsInRooms()
	r.kindByCount()
	if r.known(fitcheck.TopicCount) {
		return
	}
	if r.countsByKind() || r.eachCount() || r.kindShares() || (r.askedSize() == "none" || r.asked(fitcheck.TopicCount)) && r.countsOfSizes() {
		return
	}
	if c, ok := r.countBeside(); ok {
		r.use(c.first, c.last)
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
		return
	}
	var found []countAt
	for i := range r.toks {
		if c, ok := r.countBesideLayers(i); ok {
			found = append(found, c)
		} else if c, ok := r.countFrom(i); ok {
			if r.partOfCount(c, found) {
				continue
			}
			found = append(found, c)
		} else if c, ok := r.countClause(i); ok {
			found = append(found, c)
		}
	}
	if r.countsDiffer(found) {
		return // kinds of unit: each size has its count, see kindcount.go
	}
	for _, c := range found {
		if instead, ok := r.countInstead(c); ok {
			r.countFact(instead)
			break
		}
		if r.countTakenBack(c) || len(r.unitsAt(c.first, c.last)) == 0 && r.countOfKind(c.first+1) {
			r.unclear(fitcheck.TopicCount, 0, WhyNumber, nil, c.first, c.last)
			continue
		}
		r.countFact(c)
	}
	if c, ok := r.allOrOne(); ok && len(found) == 0 {
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
	} else if len(found) == 0 && r.asked(fitcheck.TopicCount) {
		r.countAnswer()
	} else if c, ok := r.bothOfThem(); ok && len(found) == 0 {
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
	} else if c, ok := r.bothUnits(); ok && len(found) == 0 {
		r.countFact(c)
	} else if len(found) == 0 && r.onlyOne() {
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(1), 0, len(r.toks)-1)
	} else if len(found) == 0 && r.asked(fitcheck.TopicUse) {
		r.countBetween()
	} else if c, ok := r.countAfterUse(); ok && len(found) == 0 {
		r.use(c.first, c.last)
		r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
	} else if c, ok := r.countByItself(); ok && len(found) == 0 {
		r.countFact(c)
	} else if len(found) == 0 && !r.allTold() {
		r.countAtEnd()
	}
}

type countAt struct {
	value       int
	first, last int
}

func (r *reader) countFact(c countAt) {
	if r.wordAt(c.first-1, "qty", "quantity", "cantidad") {
		r.use(c.first, c.first) // no size
	}
	if t := &r.toks[c.last]; c.last > c.first+1 && t.kind == wordToken && countNouns.has(t.text) {
		r.use(c.first, c.first)
	}
	units := r.unitsAt(c.first, c.last)
	if ref := r.refOfCount(c.last + 1); ref != nil {
		units = ref
	} else if len(units) == 0 && r.countsFirst(c) {
		units = []int{1}
	} else if len(units) != 1 || r.countsRefs(c) || r.totalFirst(c) {
		units = []int{0}
	}
	if r.spansKinds(c) {
		units = []int{0} // "one on the house, one on the garage"
	}
	if r.doubted(c.first, c.last) || r.nearDoubt(c.first) || r.roughAfter(c.last) || r.onlyIf(c.last) {
		r.unclear(fitcheck.TopicCount, units[0], WhyRough, fitcheck.Whole(c.value), c.first, c.last)
		return
	}
	r.fact(fitcheck.TopicCount, units[0], fitcheck.Whole(c.value), c.first, c.last)
}

// countFrom reads a count with what it counts at token i.
func (r *reader) countFrom(i int) (countAt, bool) {
	if r.used(i) {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 500 {
		return countAt{}, false
	}
	if r.wordsIn(next, min(next+4, len(r.toks)), "eighths", "sixteenths", "8ths", "16ths", "octavos") {
		return countAt{}, false // "57 inches and 5 of the eighths"
	}
	if r.asked(fitcheck.TopicFrameCondition) && r.wordAt(i-1, "on") && r.wordAt(next, "of") {
		return countAt{}, false // "bent on 3 of them"
	}
	if r.markAt(i-1, '(') && r.markAt(next, ')') {
		next++
	}
	if n > 1 && n <= 20 && !r.wordsIn(next, min(next+5, len(r.toks)), "side", "sides", "my", "say", "lados") && (r.askedSize() == "none" && !r.asked(fitcheck.TopicLayers) || r.wordAt(i-1, "theres", "are", "hay")) && r.wordAt(i-1, "theres", "are", "have", "got", "hay", "tengo", "tenemos") && r.wordAt(next, "and", "y") && r.wordAt(next+1, "each", "they", "theyre", "all", "cada", "todos", "todas", "every") {
		r.use(i, next-1)
		return countAt{n, i, next - 1}, true // "there's 7 and each is 11\" tall"
	}
	if n == 1 && r.wordAt(i-1, "every", "each", "any", "cada") {
		return countAt{}, false // "and every one is cracked"
	}
	if n == 1 && r.wordAt(i-1, "all") && r.wordAt(next+1, "with", "together", "piece") {
		return countAt{}, false // "metal, all one unit with the top"
	}
	if r.wordAt(next, "of", "them") && (r.wordAt(i-1, "checked", "measured", "tried", "taped", "medi", "revise") || r.wordAt(i-1, "on", "at", "en") && (r.wordAt(i-2, "checked", "measured", "tried", "looked", "same", "medi", "did", "took") || r.wordAt(i-2, "it", "that", "them") && r.wordAt(i-3, "did", "took", "checked", "tried", "measured"))) {
		return countAt{}, false // "25 x 49, checked on three of them"
	}
	if r.wordAt(i-1, "first", "last") || i > 0 && r.labelKind(i-1, "axis") && !(r.wordAt(i-1, "w") && next < len(r.toks) && countNouns.has(r.toks[next].text)) && !(i > 1 && (r.toks[i-2].kind == numToken || r.unitAt(i-2) != noUnit)) {
		return countAt{}, false // "one of the first two", "a width 16, length 32 skylight"
	}
	if r.wordAt(i-1, "through", "bought", "installed", "sold", "ordered", "replaced", "had", "did", "put") {
		return countAt{}, false
	}
	if r.countOfSummary(i) || r.negated(i) || r.overtaken(i) || r.questioned(i) && !r.priced(i) && !r.ordered(i) || r.layersCounted(i) || r.dwellings(i, next) {
		return countAt{}, false
	}
	if r.timesAt(i - 1) {
		r.use(i-1, i)
		return countAt{n, i - 1, next - 1}, true
	}
	if n == 1 && r.wordAt(next, "of") && r.wordAt(next+1, "those", "these", "the", "your", "my") && !r.markAt(i-1, ':') {
		return countAt{}, false // "it's one of those tube skylights"
	}
	if r.countsElse(i, next) || r.wordAt(next, "more") && r.wordAt(i-1, "add", "and", "also", "want", "need") {
		return countAt{}, false // "add one more dome"
	}
	if r.wordAt(next, "pieces", "pcs", "pc", "piezas", "pieza", "piece") && (r.markAt(i-1, ':') || r.refAt(0, i) || r.piecesListed(i, next)) && !r.wordAt(next+1, "of", "de") {
		return countAt{n, i, next}, true
	}
	if r.wordAt(next, "unidades") && r.wordAt(next+1, "completas", "nuevas", "enteras") {
		return countAt{n, i, next}, true
	}
	if n <= 24 && !(r.markAt(next, ',') && next+1 < len(r.toks) && r.toks[next+1].kind == numToken) && !r.wordsIn(max(0, i-7), i, "gave", "got", "had", "has", "other", "another", "paid", "they") && r.wordAt(i-1, "for", "on") && r.wordAt(i-2, "quote", "price", "pricing", "quotes") && (next >= len(r.toks) || r.toks[next].kind == markToken || r.wordAt(next, "please", "pls", "thanks", "delivered", "shipped")) {
		return countAt{n, i, next - 1}, true // "quote for 5 please"
	}
	if r.wordAt(i-1, "qty", "quantity", "cantidad", "quant") || i >= 2 && r.wordAt(i-2, "qty", "quantity", "cantidad") && r.toks[i-1].kind == markToken {
		return countAt{n, i, next - 1}, true
	}
	for j := next; j < len(r.toks) && j < next+6; j++ {
		t := &r.toks[j]
		if t.mark('.') && r.wordAt(j-1, "ea", "pc", "pcs") || t.mark('-') && t.glued {
			continue
		}
		if t.kind == numToken && j == next && n < 50 && r.unitAt(j+1) == inch && r.wordAt(j+2, "round", "square", "diameter", "dia") {
			j++ // "two 24 inch round domes"
			continue
		}
		if t.kind != wordToken {
			break
		}
		if countNouns.has(t.text) {
			if n > 1 && r.wordAt(j, "unit", "skylight", "dome") && r.wordAt(j+1, "apartment", "building", "complex", "condo", "house") {
				return countAt{}, false
			}
			if n > 12 && (r.wordAt(j-1, "square", "round", "inch") || j == next && r.wordAt(i-1, "and", "by")) && r.wordAt(j, "skylight", "dome", "unit") {
				return countAt{}, false // "a 49 square skylight"
			}
			if r.wordAt(j+1, "frame", "frames", "is", "size", "layer", "layers") && n == 1 || r.eachBuilding(n, j+1) {
				return countAt{}, false
			}
			return countAt{n, i, j}, r.wordAt(i-1, "the") && n > 1 && r.wordAt(i-2, "replace", "replacing", "redo", "order", "change", "swap", "need") || r.wordAt(i-1, "that") && r.wordAt(i-2, "make") || !r.wordAt(i-1, "the", "that", "this", "of", "each", "every", "other", "no", "number", "unit", "any", "el", "la")
		}
		if !r.countAdjective(j) && (r.layersNamed(i) || !r.saysKind(j)) {
			break
		}
	}
	if r.wordAt(next, "of", "de") && r.wordAt(next+1, "my", "our", "the", "his", "her", "their", "los", "las", "mis", "nuestros", "nuestras") && n > 1 {
		for j := next + 2; j < next+5 && j < len(r.toks) && r.toks[j].kind == wordToken && !r.wordAt(j, "on", "in", "over", "for", "en", "sobre"); j++ {
			if countNouns.has(r.toks[j].text) {
				return countAt{n, i, j}, true // "10 of our stairwell skylights"
			}
		}
	}
	if r.wordAt(next, "ea", "each", "pcs") && !r.wordsIn(next+1, min(next+4, len(r.toks)), "screws", "nails", "bolts", "washers", "tubes", "clips") && r.wordAt(i-1, "need", "needing", "order", "want", "require", "quote", "price", "bid") {
		return countAt{n, i, next}, true // "need 12 ea complete"
	}
	if r.wordAt(next, "of", "de") && r.refAt(next+1, next+3) {
		return countAt{n, i, next}, true
	}
	if r.wordsIn(next, min(next+5, len(r.toks)), "line", "lines", "mark", "marks", "tick", "ticks", "notches", "rayitas", "lineas") {
		return countAt{}, false // "25 and 3 of the little lines past the half"
	}
	if r.wordAt(i-1, "the", "los", "las") && (r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicColor)) {
		return countAt{}, false // "clear on the two of them"
	}
	if r.wordAt(next, "of", "de") && r.wordAt(next+1, "them", "em", "these", "those", "ellos", "ellas", "estos", "estas", "the") && !r.wordAt(next+2, "panels", "panes", "screws", "corners", "sides", "edges", "clips", "seams", "rooms", "buildings", "walls", "boards", "bolts", "layers", "guys", "kids") && (n > 1 || r.markAt(i-1, ':') && r.refAt(0, i)) {
		return countAt{n, i, next + 1}, true
	}
	return countAt{}, false
}

// countClause: "just 1", "I need three": a number that ends its clause after a word of
// needing, with nothing that it could measure.
func (r *reader) countClause(i int) (countAt, bool) {
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 100 || r.used(i) || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicCount) {
		return countAt{}, false
	}
	sized := len(r.Asked) > 0 && r.askedSize() != "none"
	if sized && !r.pairBefore(i) && !(r.wordAt(i+1, "all") && r.wordAt(i+2, "the", "same", "alike")) && !r.wordAt(i+1, "iguales") || r.negated(i) || r.countOfSummary(i) {
		return countAt{}, false
	}
	if len(r.Asked) == 0 && n > 1 && r.wordAt(i-1, "all") && r.markAt(i-2, ',') && r.endsCount(next) && r.wordsIn(max(0, i-8), i, "skylights", "domes", "bubbles", "units") {
		return countAt{n, i, next - 1}, true // "hail got my shop skylights, all 6"
	}
	if r.saidBackWrong(i, next) || len(r.Asked) == 0 && r.madeInstead(i, next) || len(r.Asked) == 0 && n > 1 && r.wordAt(i-1, "so") && r.endsCount(next) && r.wordsIn(0, i, "each", "apiece") && r.skylightNamed(0, i) {
		return countAt{n, i, next - 1}, true
	}
	if r.markAt(i-1, '(') && r.markAt(next, ')') && r.wordAt(i-2, "on", "for", "need", "quote", "order", "want") {
		return countAt{n, i, next - 1}, true // "price on (8), mill finish"
	}
	if r.asked(fitcheck.TopicConfirm) && (r.countCorrected(i, next) || r.miscounted(i, next) || r.endsCount(next) && r.inRef(i-1) && r.wordsIn(r.clauseStart(i), i, "make", "put", "need", "want")) {
		return countAt{n, i, next - 1}, true
	}
	if n > 1 && n <= 24 && !sized && r.alikeByThemselves(i, next) {
		return countAt{n, i, next - 1}, true
	}
	if len(r.Asked) == 0 && n > 1 && n <= 24 && r.countedOn(i, next) {
		return countAt{n, i, next - 1}, true
	}
	if next < len(r.toks) && !r.softBreak(next) && !r.sentenceEnd(next) && !r.wordAt(next, "total", "please", "pls", "shipped", "delivered", "sent", "iguales", "igual") && !(n > 1 && (r.wordsAfterBy(next+1) || r.wordAt(next, "asap") || r.forBuilding(next))) && !(r.wordAt(next, "in") && r.wordAt(next+1, "over", "above", "sobre")) && !(r.wordAt(next, "all") && r.wordAt(next+1, "the", "same", "identical", "alike")) && !(r.wordAt(i-1, "be") && r.wordAt(next, "not", "instead") || r.wordAt(next, "not", "no") && r.wholeAt(next+1) > 0) {
		return countAt{}, false
	}
	j := i - 1
	for r.wordAt(j, "the", "about") || r.wordAt(j, "just", "only", "solo", "nomas") && r.wordAt(j-1, needWords...) {
		j--
	}
	if !sized && (r.putDownFor(j) || r.recounted(j) || r.listedCount(j)) {
		return countAt{n, i, next - 1}, true
	}
	if len(r.Asked) == 0 && (r.wordAt(j, "are") && r.wordAt(j-1, "there") || r.wordAt(j, "theres", "hay")) && r.wordsIn(0, j, "skylights", "domes", "bubbles", "tragaluces", "domos") {
		return countAt{n, i, next - 1}, true // "the skylights are all yellow. There are 7."
	}
	if r.wordAt(j, "son") && !sized && r.clauseStart(i) == j {
		return countAt{n, i, next - 1}, true // "son dos y los dos están quebrados"
	}
	if r.wordAt(j, "be", "is") && r.wordsIn(max(0, j-3), j, "count", "quantity", "qty", "number") && !r.wordsIn(max(0, j-3), j, "layers", "layer", "capas", "sides", "panes") || r.asked(fitcheck.TopicConfirm) && r.wordAt(j, "it", "that") && r.wordAt(j-1, "make") || r.wordAt(j, needWords...) || r.wordAt(j, "like") && r.wordAt(j-1, "id", "would") || r.wordAt(j, "tengo", "tenemos", "hay") && r.wordAt(next, "iguales") || r.wordAt(j, "just", "only", "nomas", "solo") && (r.clauseStart(i) == j || r.wordAt(j-1, "mas", "actually", "sorry", "well", "no")) {
		if sized {
			r.use(i, next-1) // "25 x 49, need 3"
		}
		return countAt{n, i, next - 1}, true
	}
	return countAt{}, false
}

func (r *reader) countNumber(i int) (n, next int) {
	if i >= len(r.toks) || r.wordAt(i+1+number(r.wordAt(i+1, "left", "bad", "big", "little", "young", "small", "old")), "perros", "gatos", "hijos", "hijas", "nietos", "dogs", "cats", "kids", "children", "sons", "daughters", "grandkids", "boys", "girls", "thumbs", "hands", "knees", "stitches", "puntadas", "chickens", "horses", "cows", "beers", "trucks") {
		return 0, i // "I've got two left thumbs"
	}
	t := &r.toks[i]
	if t.kind == numToken {
		if t.dec > 0 || t.bad || t.code || t.whole > 500 || r.markAt(i+1, '/') || r.markAt(i-1, '/') || r.by(i+1) && !r.wordsAfterBy(i+2) || r.by(i-1) || r.unitAt(i+1) != noUnit {
			return 0, i
		}
		if _, _, _, part := r.slashed(i + 1 + number(r.wordAt(i+1, "y", "and"))); part {
			return 0, i // "22 1/4", "son 6 y 3/8"
		}
		return int(t.whole), i + 1
	}
	switch {
	case r.by(i-1) && r.numberAt(i-2).kind != notNumber, r.numberAt(i-1).kind == tensWord:
		return 0, i // "a two by four skylight", "half by thirty five"
	case r.wordAt(i, "a") && r.wordAt(i+1, "pair", "couple") && r.wordAt(i+2, "of"):
		if r.wordAt(i+1, "couple") {
			return 0, i
		}
		return 2, i + 3
	case r.wordAt(i, "half") && r.wordAt(i+1, "a") && r.wordAt(i+2, "dozen"):
		return 6, i + 3
	case r.wordAt(i, "half") && r.wordAt(i+1, "dozen"):
		return 6, i + 2
	case r.wordAt(i, "dozen") && (r.wordAt(i-1, "half") || r.wordAt(i-1, "a") && r.wordAt(i-2, "half")):
		return 0, i
	case r.wordAt(i, "dozen"):
		return 12, i + 1
	}
	if n := r.soundsLike(i); n > 0 {
		return n, i + 1
	}
	if v, end := r.cardinal(i); end > i && !(r.by(end) && r.numberAfter(end+1)) && r.unitAt(end) == noUnit {
		return int(v), end
	}
	return 0, i
}

// countAnswer reads a bare number as the answer to "how many?".
func (r *reader) countAnswer() {
	if c, ok := r.timesAnswer(); ok {
		r.use(c.first, c.last)
		r.countFact(c)
		return
	}
	if c, ok := r.countDrawn(); ok {
		r.use(c.first, c.last)
		if r.wordAt(c.first-1, "be") && r.wordAt(c.first-2, "would", "will") && r.wordsIn(max(0, c.first-5), c.first-2, "so") {
			r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(c.value), c.first, c.last)
			return // "the owner roofed over one, so it would be two": what it comes to
		}
		r.countFact(c)
		return
	}
	if c, ok := r.onlyThat(); ok {
		r.countFact(c)
		return
	}
	from := r.countAlone()
	for i := from; i < len(r.toks); i++ {
		if r.used(i) || r.negated(i) && !r.corrects(i) || r.overtaken(i) || r.wordAt(i-1, "were", "had", "replaced", "fixed", "bought", "sold", "did", "after", "before", "until", "till") {
			continue // "call me after 5", "there were 4, I replaced 2, so 2 left"
		}
		if r.layersCounted(i) || r.measureAt(i) || r.bothOfLayers(i) || r.priceOfOne(i) {
			continue
		}
		if r.wordAt(i, "one") && r.wordAt(i-1, "newer", "old", "bigger", "better", "nicer", "fresh", "cheaper", "fancier", "which", "what", "each", "every") {
			continue // "I just want a newer one", "he circled each one", "how do I know which one it is?"
		}
		n, next := r.countNumber(i)
		if r.fractionAt(next) {
			continue
		}
		switch {
		case r.wordAt(i, "a") && r.wordAt(i+1, "half") && r.wordAt(i+2, "dozen"):
			n, next = 6, i+3
		case r.wordAt(i, "half") && r.wordAt(i+1, "dozen"):
			n, next = 6, i+2
		case r.wordAt(i, "half") && r.wordAt(i+1, "a") && r.wordAt(i+2, "dozen"):
			n, next = 6, i+3
		case r.wordAt(i, "a") && r.wordAt(i+1, "dozen"):
			n, next = 12, i+2
		case r.wordAt(i, "media") && r.wordAt(i+1, "docena"):
			n, next = 6, i+2
		case r.wordAt(i, "pair", "both", "par") && !r.wordAt(i+1, "ways", "sides", "directions", "edges"): // not "27 1/2 both ways"
			n, next = 2, i+1
		case r.wordAt(i, "couple", "few", "several", "varios", "algunos", "bunch"):
			r.unclear(fitcheck.TopicCount, 0, WhyRough, nil, i, i)
			return
		case r.wordAt(i, "una") && (i == 0 || r.wordAt(i-1, "nomas", "solo", "es", "solamente", "nada", "mas", "son", "tengo")) && (i+1 >= len(r.toks) || r.toks[i+1].kind == markToken):
			n, next = 1, i+1
		case r.wordAt(i, "single", "solo") && r.endsCount(i+1):
			n, next = 1, i+1
		}
		if next == i || r.countsElse(i, next) || n < 1 || n > 500 || r.wordAt(next, "days", "weeks", "minutes", "photos", "second", "sec") {
			continue
		}
		if r.countRange(i, next) || r.maybeMore(n, i, next) {
			return
		}
		if r.correctedTo(next) {
			continue // "one. wait no, two, forgot the laundry room"
		}
		if r.needsFewer(n, next) {
			continue // "14 total but only need to do 4"
		}
		if r.countTakenBack(countAt{n, i, next - 1}) {
			r.unclear(fitcheck.TopicCount, 0, WhyNumber, nil, i, next-1)
			return
		}
		if r.countOfKind(next) || r.countsOfSorts(next) || r.twoCounts(next) {
			r.unclear(fitcheck.TopicCount, 0, WhyNumber, nil, i, next-1)
			return
		}
		if m, end := r.countTurned(n, next); end > next {
			r.use(i, end-1)
			r.countFact(countAt{m, end - 1, end - 1})
			return
		}
		n, next = r.countSum(n, next)
		r.use(i, next-1)
		r.countFact(countAt{n, i, next - 1})
		r.sharesOf(next)
		return
	}
}
