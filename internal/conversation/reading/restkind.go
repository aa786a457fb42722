package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Where a kind of unit is what is left of the others: "the rest", "the last one".

var (
	restUnitLinks = wordsOf(`is are measure measures at son es mide miden de was were all`)
	undoneWords   = wordsOf(`havent didnt not still cant couldnt no falta faltan tell let`)
	goVerbs       = wordsOf(`go going back getting grab grabbing get check checking regreso voy subo volver subir vuelvo`)
	measureVerbs  = wordsOf(`measure measured measuring yet got gotten get do done reach medir medido todavia aun`)
)

// restUnits: "two are 24 x 24 and the rest are 30 x 46", "the last one is 24 x 48": a kind
// only where its size follows and another came before.
func (r *reader) restUnits(h *hit, v string) []int {
	i := h.last + 1
	for r.among(i, restUnitLinks) || r.markAt(i, ':') {
		i++
	}
	if !r.pairAt(i) || !r.pairBetween(0, h.first) || r.asked(fitcheck.TopicCurbDiagonals) ||
		v == "last" && !r.wordsIn(max(0, h.first-1), h.first+1, "the", "el", "la", "los", "las") {
		return nil
	}
	known := 1
	for k := range r.refs {
		known = max(known, slices.Max(r.refs[k].units))
	}
	return []int{known + 1}
}

// otherCounted: "los tres chicos miden 24 x 24 y los dos grandes 48 x 48": two numbers, each
// of a kind of its own.
func (r *reader) otherCounted(h *hit) bool {
	n := r.wholeAt(h.last)
	for k := range r.intros {
		if o := &r.intros[k]; n > 1 && o.is("nth", "all") && o.first != h.first && r.wholeAt(o.last) > 1 && r.wholeAt(o.last) != n {
			return true
		}
	}
	return false
}

// notHad: "25 x 49 for the plastic, I don't have the other one": another measure, where no
// second kind is known.
func (r *reader) notHad(h *hit) bool {
	return r.Units < 2 && r.wordsIn(max(0, h.first-3), h.first, "have", "get", "know", "tengo", "reach", "find", "measure", "got") &&
		r.wordsIn(max(0, h.first-5), h.first, "dont", "cant", "no", "couldnt", "didnt", "never")
}

// tryBefore: a first try at measuring was told of before the token.
func (r *reader) tryBefore(i int) bool {
	for k := 1; k < i; k++ {
		if r.wordAt(k, "try", "time", "attempt", "reading", "measurement", "shot", "pass", "vez", "intento") &&
			r.wordAt(k-1, "first", "1st", "primera", "primer") {
			return true
		}
	}
	return false
}

// afterCounted: "two are 24 x 24 and the third is 30 x 46": the third skylight is the
// second kind.
func (r *reader) afterCounted() {
	known := 1
	for k := range r.refs {
		ref := &r.refs[k]
		if n := ref.units[0]; r.Units == 0 && len(ref.units) == 1 && n > 2 && known == 1 && r.countedBefore(ref.first, int64(n-1)) {
			ref.units = []int{2}
		}
		known = max(known, slices.Max(ref.units))
	}
}

// countedBefore: so many have a size that is told before the token: "two are 24 x 24".
func (r *reader) countedBefore(to int, n int64) bool {
	for i := 0; i < to; i++ {
		if r.wholeAt(i) == n && r.wordAt(i+1, "of", "are", "is", "de", "son", "measure", "miden") && r.pairBetween(i+1, to) {
			return true
		}
	}
	return false
}

// countsFirst: "3 total, 2 of them 24 x 24 and the last one 30 x 46": a count of what comes
// before the second kind.
func (r *reader) countsFirst(c countAt) bool {
	return len(r.refs) > 0 && r.refs[0].first > c.last && slices.Equal(r.refs[0].units, []int{2}) &&
		r.wordAt(c.last, "them", "em", "those", "these", "ellos", "ellas") && r.pairBetween(c.last, r.refs[0].first)
}

// sameAs: "the second is the same as the first".
func (r *reader) sameAs(h *hit) {
	from, to := 2, 1
	if r.out.SameAs == nil {
		r.out.SameAs = map[int]int{}
	}
	for i := h.first; i <= h.last; i++ {
		if r.wordAt(i, "second", "2nd", "segundo", "segunda") && i > h.first+1 {
			from, to = 1, 2
			for k := i; k >= 0; k-- {
				if r.wordAt(k, "first") {
					from, to = 1, 2
				}
			}
		}
	}
	r.out.SameAs[from] = to
}

func (r *reader) numberBefore(i int) bool {
	for i--; i >= 0; i-- {
		if r.toks[i].kind == numToken {
			return true
		}
	}
	return false
}

// stillToDo: a clause without a number says that one of the units was not measured yet.
func (r *reader) stillToDo(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := h.first - 1; i > from; i-- {
		if r.wordAt(i, "havent", "didnt", "couldnt", "cant", "still") {
			from = i // "49.75 is the long side havent got the other one yet"
			break
		}
	}
	if !r.anyOf(from, h.first, undoneWords) || !r.measuresIn(from, to) {
		return false
	}
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken {
			return false
		}
	}
	return from > 0
}

// goesForIt: "let me go back up for the other one": the side that is still to be had.
func (r *reader) goesForIt(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if r.toks[i].kind == numToken {
			return false
		}
	}
	return from > 0 && r.Units < 2 && r.anyOf(from, h.first, goVerbs)
}

// measuresIn: the words speak of measuring, or of what is still to come.
func (r *reader) measuresIn(from, to int) bool {
	return r.anyOf(from, to+1, measureVerbs)
}

// notOther: "Idaho, not the other one", "no el otro": of one kind alone, what something is not is no
// second one.
func (r *reader) notOther(h *hit) bool {
	i := h.first - 1
	if r.wordAt(i, "the", "el", "la") {
		i--
	}
	return r.Units < 2 && r.wordAt(i, "not", "no") && !r.wordAt(h.last+1, "is", "are", "es", "mide")
}
