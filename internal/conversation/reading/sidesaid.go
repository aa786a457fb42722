package reading

import "example.com/intake-bot/internal/fitcheck"

// Sides that are named further from their length than a word or two.

var (
	moreThanOneSide = wordsOf(`but pero and y cant couldnt havent later tomorrow still need luego falta if twice
		half than like same not no isnt wasnt era`)
	sideUnmeasured = wordsOf(`cant cannot couldnt havent didnt dont besides without except forget asked need puedo
		pude`)
	sideMeasures   = wordsOf(`is was comes came to out measures measured reads at exactly es fue mide midio da son`)
	reachesOnLinks = wordsOf(`its it is thats that es son me mide i we which`)
	beforeSideName = wordsOf(`on of the its my for at in de del la el en`)
)

// sideTold: "the length there is 50 5/8", "the curb's width on the outside is 25 3/4": of a lone
// length the only side that its sentence names before it; or after it, behind a name: "50 7/8 on its
// outside length".
func (r *reader) sideTold(qs []quantity) {
	for i := range qs {
		q := &qs[i]
		if q.side != noSide || r.by(q.first-1) || r.by(q.last+1) || r.turnedBoth(q.last+1) {
			continue
		}
		from := r.sentenceFirst(q.first)
		if i > 0 {
			from = max(from, qs[i-1].last+1)
		}
		if s := r.onlySide(from, q.first-1); s != noSide && r.reachesOn(q.first) {
			q.side = s
			continue
		}
		if s := r.sideOfThat(from, q.first-1); s != noSide {
			q.side = s
			continue
		}
		to := r.clauseEnd(q.last)
		if i+1 < len(qs) {
			to = min(to, qs[i+1].first-1)
		}
		if h := r.sideBehindName(q.last+1, to); h != nil {
			q.side = r.onlySide(h.first, h.last)
		}
	}
}

// onlySide is the side that nouns between two tokens name, where they name one and nothing says that
// it was not measured: "the width is all I can reach" does not hold for what follows "the length".
func (r *reader) onlySide(from, to int) side {
	found := noSide
	labels := within(r.labels, from, to)
	for n := range labels {
		h := &labels[n]
		name, ok := h.has("axis")
		switch {
		case !ok || name == "across":
			continue
		case name != "width" && name != "length" || h.last == h.first && !sideNouns.has(r.toks[h.first].text) || h.last > to:
			return noSide
		case found != noSide && found != sideNames[name]:
			return noSide
		}
		found = sideNames[name]
		if r.anyOf(h.last+1, to+1, moreThanOneSide) {
			return noSide
		}
	}
	if r.anyOf(from, to+1, sideUnmeasured) {
		return noSide
	}
	return found
}

// sideOfThat: "I only have the long side of the curb, and that one is 49 3/4", "only got one side so
// far, the long one, 46 3/8": the side that "that one" goes back to, or that a "one" beside it is called.
func (r *reader) sideOfThat(from, to int) side {
	i := to
	for i > from && (r.among(i, sideMeasures) || r.markAt(i, ':')) {
		i--
	}
	if r.wordAt(i, "one") {
		i--
	}
	if i < to && r.wordAt(i, "that", "thats", "it", "its", "this", "ese", "esa", "este", "esta") {
		i--
		for r.wordAt(i, "and", "y") || r.markAt(i, ',') || r.markAt(i, ';') {
			i--
		}
		return r.onlySide(from, i)
	}
	i = to
	for r.markAt(i, ',') || r.markAt(i, ':') || r.wordAt(i, "is", "its", "at", "es", "de", "son") {
		i--
	}
	one := r.wordAt(i, "one") && i > from+1
	if one {
		i--
	}
	if !one && !r.wordAt(i-1, "el", "la") ||
		!r.wordsIn(from, i-1, "side", "sides", "direction", "measurement", "number", "dimension", "lado", "medida") {
		return noSide
	}
	if h := r.labelAround(i); h != nil && (h.is("axis", "width") || h.is("axis", "length")) {
		name, _ := h.has("axis")
		return sideNames[name]
	}
	return shortOrLong[r.toks[i].text]
}

// shortOrLong are words that call a side of a skylight only beside a word for sides.
var shortOrLong = map[string]side{"short": width, "shorter": width, "shortest": width, "narrow": width, "small": width,
	"smaller": width, "longer": length, "longest": length, "corto": width, "corta": width, "chico": width,
	"angosto": width,
	"larga":   length}

// sideNouns are the words that are a side's by themselves; "long" and "wide" are said of much else.
var sideNouns = wordsOf(`width widths length lengths lenght ancho largo anchura longitud`)

// reachesOn: no clause ends before the token, or one that "it's" goes on from: "the outside curb
// length, it's 49 3/8", "long side only: 61 1/2".
func (r *reader) reachesOn(i int) bool {
	comma := -1
	for k := r.sentenceFirst(i); k < i; k++ {
		if h := r.labelAt[k]; h >= 0 && r.labels[h].has1("axis") {
			comma = -1
		} else if r.markAt(k, ',') || r.markAt(k, ';') {
			comma = k
		}
	}
	return comma < 0 || !r.asked(fitcheck.TopicConfirm) && r.among(comma+1, reachesOnLinks) && comma+4 >= i
}

// sideBehindName is the side's name right after the length, with nothing but names of parts and small
// words between: "on its outside length", nil for none.
func (r *reader) sideBehindName(from, to int) *hit {
	named := false
	for i := from; i <= to; i++ {
		h := r.labelFrom(i)
		switch {
		case h != nil && h.has1("axis"):
			if named && !r.axisAt(h.last+1) {
				return h
			}
			return nil
		case h != nil && isName(h):
			named, i = true, h.last
		case !r.among(i, beforeSideName):
			return nil
		}
	}
	return nil
}

// turnedBoth: what follows says that the length holds for both sides.
func (r *reader) turnedBoth(i int) bool {
	for r.unitAt(i) != noUnit {
		i++
	}
	h := r.labelFrom(i)
	return h != nil &&
		(h.is("shape", "square") || h.is("shape", "same") || h.is("both", "both") ||
			h.is("shape", "round") || h.is("shape", "diameter") || h.has1("axis"))
}
