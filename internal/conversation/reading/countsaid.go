package reading

import "example.com/intake-bot/internal/fitcheck"

// Counts in other words than a number before a noun: "both our domes", "2 in the kitchen, 1
// in the hall", "only the one over the tub", "too of them".

var (
	pluralOfOwners = pluralOwners.and(`of these those de`)
	notCountPlaces = wordsOf(`now later sure starters ahora bad good rough poor great need each terrible okay
		mal buen`)
	tellsMoreVerbs = wordsOf(`is are need needs leak leaks has have got estan gotean`)
	onlyThatLeads  = wordsOf(`its oh well um es pues no for now right de momento i need`)
	theOneBefore   = wordsOf(`the this that my our el la este ese`)
	oneNouns       = wordsOf(`skylight dome bubble skylite tragaluz domo`)
	onePlaces      = wordsOf(`over in on above at de del en`)
	datePreps      = wordsOf(`on since by until before after from of`)
	dayOfThing     = wordsOf(`one skylight dome unit is was has`)
)

// bothUnits: "hail busted both our bubble skylights", "ambos domos", "all four skylights on our
// church cracked".
func (r *reader) bothUnits() (countAt, bool) {
	if r.Units > 1 || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicColor) {
		return countAt{}, false
	}
	for i := range r.toks {
		n, next := r.bothOrAll(i)
		if n == 0 || r.negated(i) || r.questioned(i) && !r.ordered(i) {
			continue
		}
		j := r.severalAt(next)
		if j < len(r.toks) && r.among(j, countNouns) && r.toks[j].text[len(r.toks[j].text)-1] == 's' {
			return countAt{n, i, j}, true
		}
	}
	return countAt{}, false
}

// bothOrAll is the number that "both", "all four" tells, and where it ends; 0 for none.
func (r *reader) bothOrAll(i int) (n, next int) {
	if r.wordAt(i, "both", "ambos", "ambas") {
		return 2, i + 1
	}
	if n := r.wholeSaid(i + 1); n > 2 && r.wordAt(i, "all", "todos", "todas") {
		return n, i + 2
	}
	return 0, i
}

// severalAt is where the noun should stand behind articles and up to three words that tell of what kind it is.
func (r *reader) severalAt(j int) int {
	for r.among(j, pluralOfOwners) {
		j++
	}
	for k := 0; k < 3 && j < len(r.toks) && r.toks[j].kind == wordToken && !countNouns.has(r.toks[j].text); k++ {
		if !r.countAdjective(j) && !r.room(j) && !r.saysKind(j) {
			break
		}
		j++
	}
	return j
}

// choiceIs: the phrase that covers the token may say something of the topic.
func (r *reader) choiceIs(i int, t fitcheck.Topic) bool {
	for n := range r.choices {
		if h := &r.choices[n]; h.first <= i && i <= h.last {
			return h.has1(string(t))
		}
	}
	return false
}

// soundsLike: a number as dictation writes it before "of them": "too of them", "for of em".
func (r *reader) soundsLike(i int) int {
	if !r.wordAt(i+1, "of") || !r.wordAt(i+2, "them", "em", "those", "these") {
		return 0
	}
	switch {
	case r.wordAt(i, "too", "to", "tu"):
		return 2
	case r.wordAt(i, "for", "fore"):
		return 4
	case r.wordAt(i, "won"):
		return 1
	case r.wordAt(i, "ate"):
		return 8
	}
	return 0
}

// countSum: "4 on the front and 2 on the back", "2 in the kitchen, 1 in the hall".
func (r *reader) countSum(n, next int) (int, int) {
	if !r.countPlace(next) {
		return n, next
	}
	end := next
	for i := next; i < len(r.toks) && !r.sentenceEnd(i); i++ {
		m, after := r.countNumber(i)
		if after == i || m < 1 || m > 50 || !r.countPlace(after) {
			continue
		}
		if !r.wordAt(i-1, "and", "y", "plus") && (r.wordsIn(next, i, "roof", "total", "building", "techo") || r.tellsMore(after)) {
			continue // "12 on the roof, 3 in the back leak"
		}
		n, end = n+m, after
	}
	return n, end
}

// countPlace: words that tell where the counted ones are begin at the token.
func (r *reader) countPlace(i int) bool {
	return r.among(i, placePreps) && !r.among(i+1, notCountPlaces)
}

// tellsMore: the clause goes on to tell what is the matter with them.
func (r *reader) tellsMore(i int) bool {
	for ; i < len(r.toks) && r.toks[i].kind == wordToken && !r.wordAt(i, "and", "y", "plus"); i++ {
		if r.among(i, tellsMoreVerbs) || r.choiceIs(i, fitcheck.TopicProblem) {
			return true
		}
	}
	return false
}

// onlyThat: "just the kitchen skylight", "nada más el de la cocina": the one that is named, where
// how many was asked.
func (r *reader) onlyThat() (countAt, bool) {
	if c, ok := r.countThere(); ok {
		r.use(c.first, c.last)
		return c, true
	}
	i := 0
	for r.among(i, onlyThatLeads) || r.markAt(i, ',') {
		i++
	}
	first := i
	if r.wordAt(i, "nada") && r.wordAt(i+1, "mas") {
		i++
	} else if !r.among(i, onlyWords) {
		return countAt{}, false
	}
	if r.wordAt(i+1, "el", "la") && r.wordAt(i+2, "de", "del", "que") {
		return countAt{1, first, i + 2}, true
	}
	if !r.among(i+1, theOneBefore) {
		return countAt{}, false
	}
	for j := i + 2; j < i+6 && j < len(r.toks) && r.toks[j].kind == wordToken; j++ {
		if r.among(j, oneNouns) {
			placed := r.wordAt(j, "skylight", "skylite", "tragaluz") || r.room(j-1) || r.among(j+1, onePlaces)
			return countAt{1, first, j}, placed && !r.wordAt(j+1, "covers", "lids", "tops", "and")
		}
	}
	return countAt{}, false
}

// roughAfter: "six give or take", "a dozen or so", "8 más o menos".
func (r *reader) roughAfter(last int) bool {
	i := last + 1
	if r.markAt(i, ',') || r.markAt(i, '-') {
		i++
	}
	switch {
	case r.wordAt(i, "give") && r.wordAt(i+1, "or"), r.wordAt(i, "o") && r.wordAt(i+1, "algo"):
		return true
	case r.wordAt(i, "or") && r.wordAt(i+1, "so", "thereabouts", "something"):
		return true
	case r.wordAt(i, "or") && r.wordAt(i+1, "more") && r.wordAt(i-1, "dozen"):
		return true
	case r.wordAt(i, "more", "mas") && r.wordAt(i+1, "or", "o") && r.wordAt(i+2, "less", "menos"):
		return true
	}
	return r.wordAt(i, "ish", "something", "odd", "plus") && last+2 >= len(r.toks)
}

// onTheDay: "hail on the 3rd broke it": a day, where no other kind of unit is named.
func (r *reader) onTheDay(h *hit) bool {
	if h.is("nth", "all") || h.is("nth", "other") || !r.anyOf(max(0, h.first-2), h.first+1, datePreps) {
		return false
	}
	if !isDigit(r.toks[h.last].text[0]) && !(h.last > 0 && r.toks[h.last-1].kind == numToken) {
		return false
	}
	for n := range r.intros {
		if o := &r.intros[n]; o.first != h.first && o.has1("nth") {
			return false
		}
	}
	return !r.among(h.last+1, dayOfThing)
}

// countRange: "3 or 4".
func (r *reader) countRange(i, next int) bool {
	between := r.wordAt(i-1, "between", "entre") && r.wordAt(next, "and", "y")
	if !(between || r.wordAt(next, "or", "to", "o", "a") || r.markAt(next, '-')) {
		return false
	}
	if _, end := r.countNumber(next + 1); end > next+1 && !r.wordAt(end, "layer", "layers", "capas") {
		r.use(i, end-1)
		r.unclear(fitcheck.TopicCount, 0, WhyRange, nil, i, end-1)
		return true
	}
	return false
}
