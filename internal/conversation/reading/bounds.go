package reading

import "sort"

// maxSentence bounds what is taken for one sentence, so that reading stays linear in
// a message without a full stop.
const maxSentence = 80 // tokens

// bounds are the first and last token of the sentence and of the clause around a token.
type bounds struct {
	first, last             int32
	clauseFirst, clauseLast int32
}

// bound finds where sentences and clauses start and end. A sign that ends a sentence
// belongs to the one before it.
func (r *reader) bound() {
	r.spell()
	r.bounds = make([]bounds, len(r.toks))
	first, clause := 0, 0
	for i := range r.toks {
		r.bounds[i].first, r.bounds[i].clauseFirst = int32(first), int32(clause)
		switch {
		case r.endsSentence(i) || i-first+1 >= maxSentence:
			first, clause = i+1, i+1
		case r.breaksClause(i):
			clause = i + 1
		}
	}
	last, end := len(r.toks)-1, len(r.toks)-1
	for i := len(r.toks) - 1; i >= 0; i-- {
		if i+1 < len(r.toks) && r.bounds[i+1].first == int32(i+1) {
			last, end = i, i
		}
		r.bounds[i].last = int32(last)
		if r.endsSentence(i) && i > 0 || r.breaksClause(i) {
			r.bounds[i].clauseLast = int32(i)
			end = i - 1
			continue
		}
		r.bounds[i].clauseLast = int32(end)
	}
}

// sentence gives the first and last token of the sentence around token i.
func (r *reader) sentence(i int) (first, last int) {
	if i < 0 || i >= len(r.toks) {
		return 0, len(r.toks) - 1
	}
	return int(r.bounds[i].first), int(r.bounds[i].last)
}

func (r *reader) sentenceFirst(i int) int {
	first, _ := r.sentence(i)
	return first
}

func (r *reader) clauseStart(i int) int {
	if i < 0 || i >= len(r.toks) {
		return max(0, i)
	}
	return int(r.bounds[i].clauseFirst)
}

func (r *reader) clauseEnd(i int) int {
	if i < 0 || i >= len(r.toks) {
		return min(i, len(r.toks)-1)
	}
	return int(r.bounds[i].clauseLast)
}

// within gives the hits that start between two tokens.
func within(hits []hit, from, to int) []hit {
	lo := sort.Search(len(hits), func(n int) bool { return hits[n].first >= from })
	hi := lo + sort.Search(len(hits)-lo, func(n int) bool { return hits[lo+n].first > to })
	return hits[lo:hi]
}
