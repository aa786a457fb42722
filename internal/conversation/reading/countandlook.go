package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	themWords       = wordsOf(`them those these em ellos ellas esos esas`)
	countAdjectives = wordsOf(`identical same matching old cracked leaking broken hazy plastic acrylic bubble
		square round big small large different separate skylight leaky yellow clear replacement new of the these
		those more bad flat curb mount stairwell hallway bathroom mounted complete whole pyramid glass domed total
		ea each pcs pc pieces self flashing fixed older newer original existing aging vintage damaged yellowed
		cloudy faded foggy dirty ugly individual rooftop rated proof hurricane hail impact storm heavy duty
		standard ordinary single double triple layer layered pane`)
)

// countedAndLook: "2 of them are 30 x 30 and the big one is 46 x 46": of two kinds one is told apart by
// its number, the other by its look.
func (r *reader) countedAndLook() {
	if len(r.refs) > 0 || r.Units > 1 || r.asksAnything() {
		return
	}
	counted, look := -1, -1
	for i := range r.toks {
		switch {
		case r.someOfThem(i):
			if counted >= 0 {
				return
			}
			counted = i
		case r.oneOfLook(i):
			if look >= 0 {
				return
			}
			look = i
		case r.wordAt(i-1, "the", "el", "la") && r.toks[i].kind == wordToken && lookOf[r.toks[i].text] != "":
			return // a third kind, or "the long side"
		}
	}
	if counted < 0 || look < 0 {
		return
	}
	unit := 1 + number(look > counted)
	r.refs = []unitRef{{counted, counted, []int{3 - unit}}, {look - 1, look + number(r.wordAt(look+1, "one")), []int{unit}}}
	r.fact(fitcheck.TopicCount, unit, fitcheck.Whole(1), look-1, look)
	r.fact(fitcheck.TopicCount, 3-unit, fitcheck.Whole(r.wholeSaid(counted)), counted, counted)
	r.use(counted, counted)
	if what := lookOf[r.toks[look].text]; what != "square" {
		r.lookFact(unit, what, look)
	}
}

// someOfThem: so many begin a clause, and their size follows: "two of them are 30 x 30".
func (r *reader) someOfThem(i int) bool {
	n := r.wholeSaid(i)
	if n < 2 || n > 50 || r.used(i) || !r.beginsCount(i) {
		return false
	}
	counts := r.wordAt(i+1, "of", "de") && r.among(i+2, themWords) || r.wordAt(i+1, "are", "measure", "son", "miden")
	return counts && r.pairSoon(i+1)
}

// beginsCount: a clause begins with the number.
func (r *reader) beginsCount(i int) bool {
	return i == 0 || r.toks[i-1].kind == markToken && !r.toks[i].glued || r.wordAt(i-1, "and", "y", "but", "pero")
}

// oneOfLook: one is called by its look, and its size follows: "the big one is 46 x 46".
func (r *reader) oneOfLook(i int) bool {
	return r.toks[i].kind == wordToken && lookOf[r.toks[i].text] != "" && !r.pluralLook(i) && r.wordAt(i-1, "the", "el", "la") &&
		(r.wordAt(i+1, "one", "is", "es", "mide") || r.noun(i+1) || r.pairAt(i+1)) && r.pairSoon(i+1)
}

// saysKind: the word is part of what is said of a skylight: "2 pyramid shape skylights".
func (r *reader) saysKind(i int) bool {
	if r.wordAt(i, "both", "ways") {
		return false
	}
	return covers(r.choices, i) && !r.saysUse(i) || covers(r.styles, i) || covers(r.wants, i) ||
		r.wordAt(i, "shape", "shaped", "type", "style")
}

// countAdjective: a word that may stand between a number and the units.
func (r *reader) countAdjective(i int) bool {
	return r.among(i, countAdjectives)
}
