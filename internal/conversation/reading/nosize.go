package reading

import "example.com/intake-bot/internal/fitcheck"

// Numbers of other things: money, dates, times, addresses, years. They are marked as
// used, so that no size is made of them.

var (
	thingOwners      = wordsOf(`brother neighbor neighbour friend husband wife dad son buddy uncle roofer handyman he she`)
	streetDirections = wordsOf(`n s e w county old oak main park lake hill north south east west state el`)
	besideStreet     = wordsOf(`one other each both this that same either any another short long narrow narrower shorter
		longer skinny wide big small tall fat the`)
	floorOrdinals = wordsOf(`top first second third ground upper main 1st 2nd 3rd`)
	partOfAName   = wordsOf(`metal plastic wood flat clear inside outside top frame widest cap this that lip bottom
		raised dome bubble wooden`)
	roomNameParts   = wordsOf(`locker rec game meeting board store break gym shop sales`)
	beforeNamedVerb = wordsOf(`to i we would please can could will gonna and`)
	afterMeasured   = wordsOf(`layer layers ply pane panes capas de redondos redondas cuadrados cuadradas round square
		wide long`)
)

var streetWords = wordsOf(`st street ave avenue av rd road dr drive ln lane blvd boulevard ct court way pl hwy
	highway cir pkwy parkway trl trail ter terrace route rt pike loop calle avenida carretera place row alley`)

// beforeCode are words after which a number is a name of something.
var beforeCode = wordsOf(`apt apartment suite ste order invoice model part po box item sku serial account acct
	job ticket ref rr lot route hwy highway road room rm bldg floor catalog permit channel exit ext extension lat
	interstate page since factura pedido orden depto modelo version`)

// afterCount are words after which a number counts something that is no length.
var afterCount = wordsOf(`years year times second yrs yr months month weeks week wks days day hours hour hrs hr
	minutes minute min mins seconds secs anos ano meses mes semanas dias horas hora minutos pm am oclock dollars
	dollar bucks budgeted usd dolares pesos grand k percent deg degrees mph lbs lb pounds miles mile gallons
	stories story people yards yard sqft acres kg oz psf psi gauge ga amp volts watt watts tops anios libras grados
	millas`)

func (r *reader) numbersOfOtherThings() {
	for i := range r.toks {
		t := &r.toks[i]
		if r.wordAt(i, "every", "cada") && r.wordAt(i+1, "foot", "inch", "pie") {
			r.use(i+1, i+1) // "screws every foot or so"
		}
		if t.used || t.kind != numToken {
			if t.kind == wordToken && t.word != nil && t.word.number.kind != notNumber {
				if r.wordAt(i, "cuarto", "cuartos") && r.wordAt(i-1, "del", "el", "mi", "al", "su", "los", "nuestro") {
					r.use(i, i) // a room
				} else if r.numberedSide(i) || r.accuracy(i) || r.howManyMeasures(i) || r.layersOr(i) && !r.asked(fitcheck.TopicLayers) {
					r.use(i, i)
				} else if !r.tolerable(i) && !r.outOf(i) && !r.aged(i) && !r.allSame(i) && !r.boards(i) {
					r.spokenCount(i)
				}
			}
			continue
		}
		switch {
		case r.markAt(i-1, '+') && r.wordAt(i-2, "zip"):
			r.use(i, i) // "zip+4 is 06511-0665"
		case r.by(i-1) && r.refAt(i+1, i+2): // "first 25 x 49 second 33 x 33"
		case r.numberedSide(i):
			r.use(i, i)
		case r.toks[i].whole == 2 && r.toks[i].dec == 0 && r.wordAt(i+1, "x") &&
			r.wordAt(i+2, "curb", "lumber", "wood", "frame", "box", "material", "framing"):
			r.use(i, i+1) // "over a 2x curb"
		case r.wroteBefore(i):
			_, next := r.numeralAt(i)
			r.use(i, next-1)
		case r.wordsIn(0, i, "lat", "latitude", "gps"):
			r.use(i, i)
		case r.codeList(i), r.stickerCode(i):
		case r.tolerable(i), r.snowed(i), r.spaced(i), r.boardSides(i), r.ownedThing(i), r.aged(i), r.allSame(i), r.boards(i):
		case r.money(i), r.date(i), r.clock(i), r.street(i), r.named(i), r.counted(i), r.year(i), r.outOf(i):
		}
	}
}

// accuracy: "down to the sixteenth", "to the nearest eighth": how finely it is to be measured.
func (r *reader) accuracy(i int) bool {
	if r.wordAt(i, "sixteenths", "eighths", "quarters", "32nds", "thirtyseconds") && r.wordAt(i-1, "for", "in", "about", "the") &&
		!r.wordAt(i-2, "of") && !r.numberAfter(i-2) {
		return true // "you asked for sixteenths"
	}
	return r.wordAt(i, "sixteenth", "eighth", "quarter", "half", "thirtysecond") &&
		(r.wordAt(i-1, "nearest", "closest") ||
			r.wordAt(i-1, "the", "a", "an") && r.wordAt(i-2, "to", "within") && !(r.toks[max(0, i-3)].kind == numToken))
}

// numberedSide: "diag 1 is 55 3/4", "side 2: 49 1/2".
func (r *reader) numberedSide(i int) bool {
	if n := r.wholeAt(i); n < 1 || n > 4 || !r.wordAt(i-1, "diag", "diagonal", "side", "diags", "wall", "edge", "lado") {
		return false
	}
	return r.wordAt(i+1, "is", "es", "was", "measures") || r.markAt(i+1, ':') ||
		r.markAt(i+1, '=') || r.markAt(i+1, '-') && !r.toks[i+1].glued ||
		i+1 < len(r.toks) && r.toks[i+1].kind == numToken && !r.markAt(i+2, '/') || r.toks[i].kind == wordToken && r.numberAfter(i+1)
}

// spokenCount: "five years", "two weeks".
func (r *reader) spokenCount(i int) {
	k := r.toks[i].word.number.kind
	if k == soundsLike || k == partWord || !r.among(i+1, afterCount) ||
		r.wordAt(i+1, "second") && r.wordAt(i+2, "one", "is", "skylight", "dome", "unit") {
		return
	}
	if r.wordAt(i+1, "cracks", "crack", "leaks", "leak", "holes", "hole", "drips") {
		r.use(i, i) // "it has two cracks": what is counted is told
		return
	}
	r.use(i, i+1)
}

func (r *reader) money(i int) bool {
	if r.wordAt(i-1, "budget", "spend", "paid", "pay", "spent") ||
		r.wordAt(i-1, "is", "of", "was") && r.wordAt(i-2, "budget", "price", "cost", "quote", "estimate", "bill") {
		r.use(i, i)
		return true
	}
	if r.markAt(i-1, '$') || r.wordAt(i-1, "usd") || r.markAt(i+1, '$') || r.markAt(i-1, '#') {
		r.use(i, i)
		return true
	}
	return false
}

// snowed: "we got 6 feet last winter": how deep the snow was.
func (r *reader) snowed(i int) bool {
	u := r.unitAt(i + 1)
	if u != foot && u != inch || r.by(i+2) || r.by(i-1) {
		return false
	}
	from, to := r.sentence(i)
	if r.wordAt(i-1, "snowed", "rained", "nevo", "llovio") ||
		r.wordsIn(max(from, i-6), i, "tape", "ladder", "ruler", "cinta", "escalera") &&
			r.wordsIn(max(from, i-4), i, "goes", "reaches", "extends") {
		r.use(i, i+1)
		return true // "it snowed 9 inches", "my tape only goes to 12 ft"
	}
	if r.wordAt(i+2, "of") && r.wordAt(i+3, "snow", "rain", "water", "ice", "slush") ||
		r.wordsIn(from, i, "got", "get", "had", "have") && r.wordAt(i+2, "last", "this", "every", "each", "in") &&
			r.wordsIn(i+2, min(i+5, to+1), "winter", "storm", "blizzard", "year") &&
			r.wordsIn(0, len(r.toks), "snow", "blizzard", "snowed") {
		r.use(i, i+1)
		return true
	}
	return false
}

// spaced: "screws through the lip every 6 inches", "tornillos cada 15 cm": how far apart
// something is.
func (r *reader) spaced(i int) bool {
	if r.unitAt(i+1) == noUnit ||
		r.wordAt(i-1, "every", "per", "cada") &&
			(r.unitAt(i+1) == foot && r.asked(fitcheck.TopicRoofSlope) ||
				r.twelve(i) && (r.asked(fitcheck.TopicRoofSlope) || r.roofRises(i)) &&
					!r.wordsIn(0, len(r.toks), "screws", "screw", "nails", "tornillos")) ||
		r.by(i+2) {
		return false
	}
	if r.wordAt(i-1, "every", "cada") || r.wordAt(i+2, "apart", "o.c", "oc") ||
		r.wordAt(i+2, "on") && r.wordAt(i+3, "center", "centers") {
		r.use(i, i+1)
		return true
	}
	return false
}

// boardSides: "4 wood sides coming up out of the roof": how many there are.
func (r *reader) boardSides(i int) bool {
	if r.toks[i].dec > 0 || r.toks[i].whole > 8 ||
		!r.wordAt(i+1, "wood", "wooden", "metal", "aluminum", "plastic") ||
		!r.wordAt(i+2, "sides", "walls", "boards", "pieces", "strips", "legs", "edges", "panels") {
		return false
	}
	r.use(i, i)
	return true
}

// ownedThing: a length of something that is had, under a name nobody knows: "my brother
// has a 10 foot laddder".
func (r *reader) ownedThing(i int) bool {
	j := i + 2
	if r.unitAt(i+1) != foot || !r.wordAt(i-1, "a", "an") ||
		!r.wordAt(i-2, "has", "have", "got", "owns", "borrowed", "bought") ||
		!r.among(i-3, thingOwners) || j >= len(r.toks) || r.toks[j].kind != wordToken ||
		r.toks[j].word != nil || r.by(j) ||
		r.wordsIn(j+1, min(j+3, len(r.toks)), "skylight", "dome", "one") {
		return false
	}
	r.use(i, i+1)
	return true
}

// street: "4821 Larkspur Ave", "1420 25th street", "25 1/2 Elm Street".
func (r *reader) street(i int) bool {
	if r.facedStreet(i) {
		return true
	}
	j := i + 1
	if r.markAt(j+1, '/') {
		j += 3
	}
	for n := 0; n < 5 && j < len(r.toks); n++ {
		t := &r.toks[j]
		if t.kind == markToken && !(t.text[0] == '.' && t.glued) && t.text[0] != '-' ||
			r.by(j) || t.kind == wordToken && r.unitAt(j) != noUnit && t.text != "ft" {
			return false
		}
		if n > 0 && t.kind == wordToken && (t.word != nil && t.word.common && !streetWords.has(t.text)) && !t.among(streetDirections) {
			return false
		}
		if t.is("way") && r.among(j-1, besideStreet) {
			return false
		}
		if t.kind == wordToken && streetWords.has(t.text) && (j > i+1 || !t.glued && t.text != "st" && t.text != "ft") {
			end := j
			for r.wordAt(end+1, "n", "s", "e", "w", "nw", "ne", "sw", "se") {
				end++
			}
			if end+1 < len(r.toks) && r.toks[end+1].kind == numToken && t.is("road", "hwy", "highway", "route", "rd") &&
				!r.wordAt(end+2, "and") && !r.by(end+2) && r.unitAt(end+2) == noUnit {
				end++
			}
			r.use(i, end)
			return true
		}
		j++
	}
	return false
}

// named: a number after "apt", "model", "order": a code, perhaps with letters after it.
func (r *reader) named(i int) bool {
	j := i - 1
	for j >= 0 &&
		(r.markAt(j, '#') || r.markAt(j, '.') || r.markAt(j, ':') || r.wordAt(j, "number", "no", "num", "is", "was", "from")) {
		j--
	}
	if j < 0 || r.toks[j].kind != wordToken || !beforeCode.has(r.toks[j].text) || j < r.sentenceFirst(i) {
		return false
	}
	if _, next := r.numeralAt(i); r.toks[j].is("order", "orden", "item") &&
		(r.wordAt(j-1, "in", "en") || r.by(i+1) || next > i+1 || r.unitAt(i+1) != noUnit ||
			i+1 < len(r.toks) && r.among(i+1, countNouns)) {
		return false // "sides in order: 24 1/2, 48 1/2"
	}
	if r.toks[j].is("floor") && (r.asked(fitcheck.TopicCount) || i+1 < len(r.toks) && countNouns.has(r.toks[i+1].text)) &&
		(r.sentenceEnd(i-1) || r.among(j-1, floorOrdinals)) {
		return false // "a condo, top floor. 1"
	}
	if r.toks[j].is("part") && j == i-1 && r.among(j-1, partOfAName) {
		return false // "metal part to metal part 22 5/16"
	}
	if r.toks[j].is("part", "box", "floor", "road", "room", "route") && j != i-1 && !r.markAt(i-1, '#') && !r.markAt(i-1, '.') &&
		!r.wordAt(i-1, "number", "no") {
		return false
	}
	if r.toks[j].is("room", "floor") && j == i-1 && r.pairAt(i) && (r.room(j-1) || r.among(j-1, roomNameParts)) {
		return false // "living room 25 x 49"
	}
	if r.wordAt(j, "box") && !(j > 0 && r.wordAt(j-1, "po", "p", "o")) && !r.markAt(i+1, ',') {
		return false
	}
	if r.wordAt(j, "order") && j == i-1 && r.among(j-1, beforeNamedVerb) {
		return false // "I would like to order 3 round domes"
	}
	end := i
	for end+1 < len(r.toks) && r.toks[end+1].glued && (r.toks[end+1].kind == wordToken || r.toks[end+1].kind == numToken) ||
		r.codeDash(end+1) {
		end++
	}
	r.use(i, end)
	return true
}

func (r *reader) codeDash(i int) bool {
	return r.markAt(i, '-') && r.toks[i].glued && i+1 < len(r.toks) && r.toks[i+1].glued
}

func (r *reader) counted(i int) bool {
	if r.wordAt(i+1, "second") && (r.toks[i].dec > 0 || r.asked(fitcheck.TopicCurbDiagonals)) && r.numberAfter(i+2) {
		return false // "first diagonal 71.25 second 71.375"
	}
	if r.wordAt(i+1, "second", "sec", "secs") || r.markAt(i+1, '%') ||
		r.among(i+1, afterCount) && !(r.wordAt(i+1, "min", "am", "k", "ga") && !r.toks[i+1].glued && !r.wordAt(i+1, "min", "am")) ||
		r.wordAt(i+1, "sq", "square", "cubic") && r.unitAt(i+2) == foot || r.markAt(i+1, '-') && r.among(i+2, afterCount) {
		r.use(i, i)
		return true
	}
	return false
}

func (r *reader) askedSize() fitcheck.Topic {
	for _, a := range r.Asked {
		if a.OfLength() {
			return a
		}
	}
	return "none"
}

// outOf: "9 out of 10", "9/10 sure", "1 of 2".
func (r *reader) outOf(i int) bool {
	j := i + 1
	if r.wordAt(j, "out") {
		j++
	}
	if (r.wordAt(j, "of") || r.wordAt(j, "de") && r.asked(fitcheck.TopicCount)) &&
		r.wordAt(j+1, "the", "my", "our", "those", "these", "las", "los", "mis") && r.wholeAt(j+2) > r.wholeAt(i) &&
		!r.measuredAt(j+2) {
		if r.asked(fitcheck.TopicCount) && !r.wordsIn(max(0, i-3), i, "checked", "measured", "tried", "looked", "medi", "revise") {
			r.use(j+2, j+2) // "just three of the five"
			return true
		}
		r.use(i, j+2) // "checked on three of the five"
		return true
	}
	if r.wordAt(j, "of") && r.wholeAt(j+1) > 0 && !r.by(j+2) && !r.markAt(j+2, '/') &&
		!(j+2 < len(r.toks) && r.toks[j+2].kind == numToken) {
		r.use(i, j+1)
		return true
	}
	return false
}

// measuredAt: the number is the start of a size, or tells of layers.
func (r *reader) measuredAt(i int) bool {
	next := i + 1
	return r.by(next) || r.unitAt(next) != noUnit || r.markAt(next, '"') ||
		r.markAt(next, '\'') || r.markAt(next, '/') || r.markAt(next, '-') ||
		next < len(r.toks) && r.toks[next].kind == numToken || r.among(next, afterMeasured)
}
