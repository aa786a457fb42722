package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	measureFollows = wordsOf(`x by layer layers inches ft feet cm mm sides capas`)
	mendedGoesOn   = wordsOf(`not no instead total skylights domes of now altogether in tragaluces domos please`)
	mendedWords    = wordsOf(`actually sorry wait miscounted total another instead oops meant mejor perdon digo`)
	mendedThings   = wordsOf(`miscounted skylights domes them total tragaluces domos found`)
	mendedLeads    = wordsOf(`its is be actually no wait sorry only just`)
	hourPreps      = wordsOf(`at until till after by before around hasta las`)
)

// countMended reads another number of skylights than the talk knows: "actually it's 14", "4 not
// 3, found another one", "make it 3", whatever was asked.
func (r *reader) countMended() bool {
	if r.Count == 0 || r.Units > 1 || r.asked(fitcheck.TopicCount) || len(r.refs) > 0 && !r.onlyAnother() {
		return false
	}
	if r.pairBetween(0, len(r.toks)) {
		return false
	}
	at, old, ok := r.mendedNumber()
	if !ok || r.goesOnOtherwise(at+1) || r.among(at-1, hourPreps) {
		return false // "I had 2 guys look at it already, sorry", "sorry, I work until 5"
	}
	counts := r.tellsSkylights(at)
	if !old && !(r.mends(at) && (counts || r.mendedLead(at) && !r.otherNumberAsked())) {
		return false
	}
	if !r.asked(fitcheck.TopicConfirm) && len(r.toks) > 14 {
		return false
	}
	r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(r.wholeSaid(at)), at, at)
	r.useNumbers()
	r.refs = nil
	return true
}

// mendedNumber is the one number that may be the new count; old says that the known one stands beside it
// and is denied.
func (r *reader) mendedNumber() (at int, old, ok bool) {
	at = -1
	for i := range r.toks {
		n := r.wholeSaid(i)
		if r.toks[i].kind != numToken && n < 0 || r.wordAt(i, "one", "uno", "una", "un") {
			continue
		}
		if n < 1 || n > 99 || r.toks[i].used || r.measuresAt(i+1) {
			return -1, false, false
		}
		switch {
		case !old && n == r.Count && r.deniedNumber(i, at):
			old = true
		case at < 0 && n != r.Count:
			at = i
		default:
			return -1, false, false
		}
	}
	if r.labelled(0, len(r.toks)-1) && !r.wordsIn(0, len(r.toks), "skylight", "skylights", "dome", "domes") {
		return -1, false, false
	}
	return at, old, at >= 0
}

// measuresAt: what follows makes a number one of a size or of layers.
func (r *reader) measuresAt(i int) bool {
	return r.markAt(i, '/') || r.markAt(i, '"') || r.markAt(i, '\'') || r.among(i, measureFollows)
}

// deniedNumber: "4 not 3", "instead of 3".
func (r *reader) deniedNumber(i, at int) bool {
	return at >= 0 && r.wordAt(i-1, "not", "no", "instead") || r.wordAt(i-1, "of") && r.wordAt(i-2, "instead")
}

// goesOnOtherwise: a word follows the number that makes it one of something else.
func (r *reader) goesOnOtherwise(i int) bool {
	return !r.stopAt(i) && !r.onlyBehind(i) && !r.among(i, mendedGoesOn)
}

// mends: words of correction stand in the message or right before the number.
func (r *reader) mends(at int) bool {
	return r.anyOf(0, len(r.toks), mendedWords) || r.wordAt(at-1, "no") ||
		r.wordAt(at-1, "it") && r.wordAt(at-2, "make") || r.wordAt(at-1, "be") && r.wordAt(at-2, "should")
}

// tellsSkylights: "there are 4", or a word for skylights or counting stands in the message.
func (r *reader) tellsSkylights(at int) bool {
	return r.anyOf(0, len(r.toks), mendedThings) || r.wordAt(at-1, "are") && r.wordAt(at-2, "there")
}

// mendedLead: "actually it's 14", "make it 3", "wait, 4".
func (r *reader) mendedLead(at int) bool {
	return r.wordAt(at-2, "make", "its", "is", "be") || r.among(at-1, mendedLeads) || r.markAt(at-1, ',')
}

// otherNumberAsked: a number may be the answer to what was asked.
func (r *reader) otherNumberAsked() bool {
	return r.askedSize() != "none" || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicRoofSlope) ||
		r.asked(fitcheck.TopicPlace) || r.asked(fitcheck.TopicPhone)
}

func (r *reader) useNumbers() {
	for i := range r.toks {
		if r.toks[i].kind == numToken || r.wholeSaid(i) > 0 && !r.wordAt(i, "one") {
			r.use(i, i)
		}
	}
}

// onlyAnother: what looks like a kind is the one more that makes the new number.
func (r *reader) onlyAnother() bool {
	for k := range r.refs {
		if ref := &r.refs[k]; !r.wordsIn(ref.first, ref.last+1, "another", "other", "otro", "otra") {
			return false
		}
	}
	return true
}

// onlyBehind: "son 2 nomás", "son dos nada más", "it's 2 only": the number, and no more.
func (r *reader) onlyBehind(next int) bool {
	last := next
	if r.wordAt(next, "nada") && r.wordAt(next+1, "mas") {
		last++
	}
	return (last > next || r.among(next, onlyWords)) && r.stopAt(last+1)
}

// noMoreThan: "it's just 2", "there's only two", "2 only" as a clause.
func (r *reader) noMoreThan(i, next int) bool {
	if r.onlyBehind(next) && (i == 0 || r.stopAt(i-1)) {
		return true
	}
	return r.among(i-1, onlyWords) && (i == 1 || r.stopAt(i-2) || r.among(i-2, beWords) || r.among(i-2, andWords) ||
		r.wordAt(i-2, "theres", "there", "need", "want"))
}
