package reading

import "example.com/intake-bot/internal/fitcheck"

// What shape their skylights have, told by the parts of a clause where no phrase of the lists has told it:
// "the skylights are all round", "you can see it's round", "it's got eight sides, like a stop sign".

var (
	relationLinks = wordsOf(`under to over by beside near around above of behind`)
	skylightWords = wordsOf(`skylight skylights skylite skylites dome domes bubble bubbles it they ours mine one
		ones both all these those this that`)
	thoughtEnds = wordsOf(`and but so like if with y pero as because in not no como too also instead`)
)

var (
	roundWords = wordsOf(`round circular circle circles rounded redondo redonda redondos redondas circular
		circulares circulo`)
	shapeLinks = wordsOf(`is are s all both every each one of them just perfectly completely totally quite also
		nice big a simply pretty little es son todos todas ambos bien una un perfectamente completamente`)
	// itsShape names what is spoken of and its verb in one word.
	itsShape = wordsOf(`its theyre thats is are es son`)
)

// shapeTold records such an outline.
func (r *reader) shapeTold() {
	t := fitcheck.TopicOutline
	if r.known(t) || r.doubtful(t) || r.Units > 1 || len(r.refs) > 0 ||
		r.asked(fitcheck.TopicConfirm) || r.out.Language != "en" && r.out.Language != "es" {
		return
	}
	for i := range r.toks {
		if r.toks[i].kind != wordToken || r.toks[i].named || r.markAt(r.sentenceLast(i), '?') ||
			r.clauseUnsure(i) || r.hearsay(i) || r.unreal(t, i) || r.othersClause(i, i) {
			continue
		}
		if roundWords.has(r.toks[i].text) && r.endsThought(i+1) && r.saidOfSkylight(i) {
			r.fact(t, 0, fitcheck.Choice(fitcheck.OutlineRound), i, i)
			return
		}
		if n := r.sidesAt(i); n > 2 && !r.known(fitcheck.TopicPlasticSize) &&
			(r.asked(t) && r.clauseStart(i) == r.clauseStart(0) || r.asked(t) && r.hasBefore(i)) {
			v := fitcheck.OutlineOther
			if n == 4 {
				v = fitcheck.OutlineRectangle
			}
			r.fact(t, 0, fitcheck.Choice(v), i, i+1)
			return
		}
	}
}

// saidOfSkylight: a verb of being leads from their skylight, or an "it", to the word.
func (r *reader) saidOfSkylight(i int) bool {
	k := i - 1
	for shapeLinks.has(r.wordText(k)) && !itsShape.has(r.wordText(k)) {
		k--
	}
	switch {
	case !itsShape.has(r.wordText(k)):
		return false
	case r.wordAt(k, "its", "theyre", "thats", "es", "son"):
		return !otherThings.has(r.wordText(k-1)) || theirThings.has(r.wordText(k-1))
	}
	if r.among(k-2, relationLinks) || r.wordAt(k-3, "under", "to", "over", "by", "beside", "near", "around", "above", "behind") {
		return false // "the table under it is round"
	}
	return r.among(k-1, skylightWords)
}

// flatTold: to how high the bulge is, "nothing to measure, ours is flat".
func (r *reader) flatTold() {
	t := fitcheck.TopicProfile
	if !r.asked(fitcheck.TopicDomeRise) && !r.asked(fitcheck.TopicBulgeBase) || r.known(t) ||
		r.doubtful(t) || r.known(fitcheck.TopicDomeRise) || r.Units > 1 || len(r.refs) > 0 {
		return
	}
	for i := range r.toks {
		if r.wordAt(i, "flat", "plano", "plana", "planos", "planas") && r.endsThought(i+1) && r.saidOfSkylight(i) &&
			!r.clauseUnsure(i) && !r.hearsay(i) && !r.markAt(r.sentenceLast(i), '?') {
			r.fact(t, 0, fitcheck.Choice(fitcheck.ProfileFlat), i, i)
			return
		}
	}
}

// endsThought: the words before the token end a clause or lead to another thought.
func (r *reader) endsThought(i int) bool {
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.among(i, thoughtEnds)
}

// sidesAt is how many sides or corners are told of at a token, 0 for none.
func (r *reader) sidesAt(i int) int {
	if n := r.wholeAt(i); n > 2 && n < 13 && r.wordAt(i+1, "sides", "corners", "lados", "esquinas") && r.endsThought(i+2) {
		return int(n)
	}
	return 0
}

// hasBefore: "the skylight has eight sides".
func (r *reader) hasBefore(i int) bool {
	for r.wordAt(i-1, "got", "exactly", "like", "about") {
		i--
	}
	return r.wordAt(i-1, "has", "have", "its", "with", "tiene", "tienen", "son")
}

// clauseUnsure: words before the token in its clause deny, doubt or set in another time what it says.
func (r *reader) clauseUnsure(i int) bool {
	for k := r.clauseStart(i); k < i; k++ {
		w := r.wordText(k)
		if stateDenials.has(w) || otherTense.has(w) && !r.wordAt(k, "habia") ||
			stateDoubts.has(w) && !r.wordAt(k, "know", "tell", "seem") {
			return true
		}
	}
	return r.doubted(i, i) && !r.seen(fitcheck.TopicOutline, &hit{first: i, last: i})
}

// soldSo: "the shops only sell them domed these days": what others sell is not what is up there.
func (r *reader) soldSo(h *hit) bool {
	from := r.clauseStart(h.first)
	return r.wordsIn(from, h.first, "sell", "sells", "make", "makes", "stock", "carry", "carries", "venden", "hacen") &&
		r.wordsIn(from, h.first, "shops", "stores", "they", "places", "store", "everybody", "everyone", "people", "tiendas") &&
		r.wordsIn(from, h.first, "only", "just", "all", "mostly", "solo", "nomas")
}
