package reading

import "example.com/intake-bot/internal/fitcheck"

// How many there are of a kind that the talk knows, told once more or put right.

var (
	countStays = wordsOf(`not no instead nomas solamente now nada`)
	kindLinks  = wordsOf(`the el la los las for of in on over del de para en ones skylights domes domos
		tragaluces`)
	quantityWords = wordsOf(`count number quantity qty cantidad numero`)
	kindTails     = wordsOf(`ones skylights domes is are should be es son to at just only`)
	kindCopulas   = wordsOf(`should be needs to is are has have tiene tienen just only debe ser a`)
	rightsCount   = correcting.and(`not no only just miscounted make hold solo solamente`)
	lookCountEnds = wordsOf(`after not no only total instead now and y`)
	kindPlaces    = wordsOf(`de del en la el los las in over on the`)
)

// countsByKind: "2 del taller y 3 de la oficina", "it's 4 kitchen ones", "only 2 round, not 3",
// "the number of round ones is 2".
func (r *reader) countsByKind() bool {
	if r.Units < 2 {
		return false
	}
	found := 0
	for k := range r.refs {
		ref := &r.refs[k]
		if len(ref.units) != 1 {
			continue
		}
		i := r.countBeforeKind(ref)
		if i < 0 {
			i = r.countAfterKind(ref)
		}
		if i < 0 {
			r.countOrElse(ref)
			continue
		}
		r.fact(fitcheck.TopicCount, ref.units[0], fitcheck.Whole(r.wholeSaid(i)), min(i, ref.first), max(i, ref.last))
		r.use(i, i)
		r.deniedCount(max(i, ref.last) + 1)
		found++
	}
	if found > 0 && found == len(r.refs) && r.onlyCounted() {
		for _, ref := range r.refs {
			r.use(ref.first, ref.last)
		}
		r.refs = nil
	}
	return found > 0
}

// onlyCounted: the sentence that names kinds says no more of them than their numbers, and goes before
// others: "make it 2 round and 5 square. 2 layers acrylic".
func (r *reader) onlyCounted() bool {
	from, to := r.sentence(r.refs[0].first)
	if to+1 >= len(r.toks) || r.refs[len(r.refs)-1].first > to {
		return false
	}
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken && !r.toks[i].used {
			return false
		}
	}
	for _, h := range within(r.choices, from, to) {
		if s := h.senses[0]; !s.asked && s.topic != "" && !namesKinds(s.topic) {
			return false
		}
	}
	return true
}

// namesKinds: kinds may be told apart by what is said of the topic.
func namesKinds(t fitcheck.Topic) bool {
	return t == fitcheck.TopicOutline || t == fitcheck.TopicProfile || t == fitcheck.TopicProblem
}

// countsInRooms: "kitchen 25 x 25 and 2 in the bedrooms 25 x 49": how many there are where a kind of
// that size is, which is no length.
func (r *reader) countsInRooms() {
	if len(r.refs) < 2 || r.Units > 1 {
		return
	}
	for _, ref := range r.refs {
		i := ref.first
		for r.wordAt(i, "one", "uno", "un") || r.wordAt(i, "in", "over", "on", "en", "sobre") {
			i++ // the ref may begin before the room
		}
		for i > 0 && r.among(i-1, theOrMine) {
			i--
		}
		if n := r.countInRoom(i); n > 0 && r.pairSoon(ref.last+1) {
			r.fact(fitcheck.TopicCount, ref.units[0], fitcheck.Whole(n), i-2, i-2)
			r.use(i-2, i-2)
		}
	}
}

// countInRoom is the number that begins a clause with "2 in" before a room; 0 for none.
func (r *reader) countInRoom(room int) int {
	i := room - 2
	n := r.wholeSaid(i)
	if n < 1 || n > 12 || r.toks[i].used || !r.wordAt(room-1, "in", "over", "on", "en", "sobre") || r.markAt(i-1, '/') {
		return 0
	}
	if i > 0 && r.toks[i-1].kind != markToken && !r.wordAt(i-1, "and", "y", "plus") {
		return 0
	}
	return n
}

// countBeforeKind is where the number stands that goes before what the kind is called by, -1
// for none. Where a size was asked for it is one only in words that put it right.
func (r *reader) countBeforeKind(ref *unitRef) int {
	i := ref.first - 1
	for r.among(i, kindLinks) {
		i--
	}
	n := r.wholeSaid(i)
	if n < 1 || n > 50 || r.toks[i].used || r.by(i-1) || r.markAt(i-1, '/') {
		return -1
	}
	named := i < ref.first-1 && !r.asked(fitcheck.TopicLayers) || r.calledAsThing(ref)
	if !named && r.asked(fitcheck.TopicLayers) && n < 4 {
		return -1 // "2 on the kitchen and 1 on the bath"
	}
	right := r.putsRight(i)
	if !named && !(right && n <= 12) {
		return -1
	}
	if r.sizedNow() && !(right && (named || n <= 12 && r.otherDenied(ref.last))) {
		return -1
	}
	return i
}

// calledAsThing: "the big ones", "kitchen skylights", "redondos": things that can be counted.
func (r *reader) calledAsThing(ref *unitRef) bool {
	last := ref.last
	return last > ref.first && r.wordAt(last, "ones", "one") || r.noun(last) || r.noun(last+1) || r.pluralLook(last) ||
		lookOf[r.toks[last].text] != "" && r.countedLook(last)
}

// countAfterKind: "count of the round is 2", "round ones: qty 2".
func (r *reader) countAfterKind(ref *unitRef) int {
	from, i := r.sentenceFirst(ref.first), ref.last+1
	counted := r.anyOf(from, ref.first, quantityWords) || r.severalAre(ref)
	for i < len(r.toks) && (r.among(i, kindTails) || r.markAt(i, ':') || r.markAt(i, '=') || r.countWord(i)) {
		counted = counted || r.countWord(i)
		i++
	}
	counted = counted || i > ref.last+1 && r.tooManyForLayers(i) || i == ref.last+1 && r.eachNumbered()
	if n := r.wholeSaid(i); !counted || n < 1 || n > 50 || r.toks[i].used {
		return -1
	}
	if r.by(i+1) || r.unitAt(i+1) != noUnit || r.markAt(i+1, '/') {
		return -1
	}
	return i
}

func (r *reader) countWord(i int) bool {
	return r.wordAt(i, "count", "number", "quantity", "qty", "cantidad")
}

// severalAre: "round ones are 2", "squares: 5".
func (r *reader) severalAre(ref *unitRef) bool {
	i := ref.last + 1
	if r.sizedNow() && !r.severalKnown(ref.units[0]) || !r.pluralAt(ref.last) || !r.wordAt(i, "are", "son", "should") && !r.markAt(i, ':') {
		return false
	}
	n := r.pastOnly(i + 1 + number(r.wordAt(i, "should") && r.wordAt(i+1, "be")))
	return r.wholeSaid(n) > 0 && (r.endsCount(n+1) || r.among(n+1, countStays))
}

// tooManyForLayers: "the kitchen should be 4 not 1", said to the list: of the two numbers one is no number of layers.
func (r *reader) tooManyForLayers(i int) bool {
	n := r.wholeSaid(i)
	return n > 0 && r.asked(fitcheck.TopicConfirm) && r.wordAt(i+1, "not", "no") && r.wholeSaid(i+2) > 0 &&
		r.endsCount(i+3) && max(n, r.wholeSaid(i+2)) > 3
}

// eachNumbered: "bath 1 and kitchen 2", at the list, of all kinds: the layers are settled by then.
func (r *reader) eachNumbered() bool {
	if !r.asked(fitcheck.TopicConfirm) || len(r.refs) < 2 || len(r.refs) != r.Units {
		return false
	}
	for _, ref := range r.refs {
		if r.wholeSaid(ref.last+1) < 1 || !r.endsCount(ref.last+2) && !r.wordAt(ref.last+2, "and", "y") {
			return false
		}
	}
	return true
}

// sizedNow: a number may be the answer to how large something is.
func (r *reader) sizedNow() bool {
	return r.askedSize() != "none" && !r.asked(fitcheck.TopicConfirm)
}

// otherDenied: "… round after all", "… round, not 3": what was told before was wrong.
func (r *reader) otherDenied(i int) bool {
	_, to := r.sentence(i)
	return r.wordsIn(i+1, to+1, "not", "no", "instead") || r.wordsIn(i+1, to+1, "after") && r.wordsIn(i+1, to+1, "all")
}

// countOrElse: "change the round to 2", "the kitchen should be 2": a number that may be one of
// pieces or of layers, which is asked about.
func (r *reader) countOrElse(ref *unitRef) {
	i := ref.last + 1
	for r.among(i, kindCopulas) || r.markAt(i, ':') {
		i++
	}
	n := r.wholeSaid(i)
	if !r.asked(fitcheck.TopicConfirm) || i == ref.last+1 || n < 1 || n > 12 || !r.bareNumber(i) {
		return
	}
	if n > 3 { // nothing has so many layers
		r.fact(fitcheck.TopicCount, ref.units[0], fitcheck.Whole(n), ref.first, i)
		r.use(i, i)
		return
	}
	r.unclear(fitcheck.TopicCount, ref.units[0], WhyChoice, nil, ref.first, i)
	r.use(i, i)
}

// bareNumber: the number ends its clause and says nothing of what it is one of.
func (r *reader) bareNumber(i int) bool {
	if r.toks[i].used || r.wordAt(i, "one", "uno", "una") || r.wordAt(i+1, "of", "de") || r.markAt(i+1, '/') {
		return false
	}
	return r.endsCount(i+1) || r.wordAt(i+1, "not", "instead")
}

// putsRight: the sentence of a number says that another was told or is wrong.
func (r *reader) putsRight(i int) bool {
	from, to := r.sentence(i)
	return r.anyOf(from, to+1, rightsCount) || r.wordsIn(from, to+1, "after") && r.wordsIn(from, to+1, "all")
}

// deniedCount marks the number that the words after a count say that it is not: "2 round, not 3".
func (r *reader) deniedCount(i int) {
	for end := i + 4; i < end && i < len(r.toks) && !r.sentenceEnd(i); i++ {
		if r.wordAt(i, "not", "no") || r.wordAt(i-1, "instead") && r.wordAt(i, "of") {
			if next := i + 1; r.wholeSaid(next) > 0 && !r.by(next+1) && !r.markAt(next+1, '/') {
				r.use(next, next)
			}
			return
		}
	}
}

// pluralAt: what a kind is called by ends in a word for several.
func (r *reader) pluralAt(i int) bool {
	return r.wordAt(i, "ones") || r.noun(i) && r.toks[i].text[len(r.toks[i].text)-1] == 's' || r.pluralLook(i)
}

// pluralLook: the look is told of several: "squares", "redondos".
func (r *reader) pluralLook(i int) bool {
	text := r.toks[i].text
	return lookOf[text] != "" && text[len(text)-1] == 's'
}

// countedLook: "it's 2 round after all, not 3", "son dos redondos": a look after a number of
// skylights, which is no length.
func (r *reader) countedLook(i int) bool {
	n := r.wholeSaid(i - 1)
	if n < 1 || n > 12 || r.by(i-2) || r.markAt(i-2, '/') {
		return false
	}
	if i > 1 && r.toks[i-1].glued && r.toks[i-2].kind == markToken {
		return false
	}
	if !r.sizedNow() && (r.pluralLook(i) || r.wordAt(i-2, "and", "y") && r.endsLook(i)) {
		return true // "3 big ones and 2 small"
	}
	return (r.stopAt(i+1) || r.among(i+1, lookCountEnds)) && r.putsRight(i) && (!r.sizedNow() || r.otherDenied(i))
}

// countsKindAt: the number at a token counts what comes after it: "2 round ones", "3 kitchen
// skylights".
func (r *reader) countsKindAt(i int) bool {
	if r.wholeSaid(i) < 1 {
		return false
	}
	return r.wordAt(i+1, "of") || r.wordAt(i+2, "ones") || r.noun(i+2) ||
		i+1 < len(r.toks) && (lookOf[r.toks[i+1].text] != "" || r.noun(i+1))
}

// countsKnown: "los 2 chicos", "los dos de la sala": the number counts a kind that the talk knows, and
// does not stand for all.
func (r *reader) countsKnown(h *hit) bool {
	next := h.last + 1
	if r.Units < 2 || next >= len(r.toks) || r.wholeSaid(h.last) < 2 {
		return false
	}
	if r.pluralLook(next) {
		return r.Names[r.toks[next].text] > 0 || r.lookKnown(next) > 0
	}
	for r.among(next, kindPlaces) {
		next++
	}
	return r.unitOfRoom(next) > 0
}

// afterNumber: a number of things goes right before the token: "son 3, no 1".
func (r *reader) afterNumber(i int) bool {
	i -= 1 + number(r.markAt(i-1, ','))
	return r.wholeSaid(i) > 0 && !r.by(i-1) && !r.markAt(i-1, '/')
}
