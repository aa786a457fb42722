package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// A list of questions is often answered a line each, and each line in its own way:
// "24 x 39 for the first and 32 x 48 for the second", then "1: 25 x 41 2: 33 x 49".

// lineOf gives the tokens of the line around a token; to is not part of it.
func (r *reader) lineOf(i int) (from, to int) {
	for from = i; from > 0 && !r.toks[from-1].mark('\n'); from-- {
	}
	for to = i; to < len(r.toks) && !r.toks[to].mark('\n'); to++ {
	}
	return from, to
}

// refsOfLine gives the kinds of unit that the line around the token names, where it
// names several, and whether they stand after what is said of them; else all.
func (r *reader) refsOfLine(i int) ([]unitRef, bool) {
	from, to := r.lineOf(i)
	lo, hi := 0, 0
	for k := range r.refs {
		if r.refs[k].last < from {
			lo = k + 1
		}
		if r.refs[k].first < to {
			hi = k + 1
		}
	}
	if hi-lo < 2 || hi-lo == len(r.refs) {
		return r.refs, r.trailing
	}
	return r.refs[lo:hi], r.namedAfter(r.refs[lo:hi], from, to)
}

// lineTopics gives the sizes that were asked for to the lines that tell sizes, in
// their order, where there are as many of each and no size is named.
func (r *reader) lineTopics(ms []measure) {
	var asked []fitcheck.Topic
	for _, t := range r.Asked {
		if t.OfLength() && !slices.Contains(asked, t) {
			asked = append(asked, t)
		}
	}
	lines := make([]int, len(ms))
	n, last := 0, -1
	for k := range ms {
		from, _ := r.lineOf(ms[k].first)
		if from != last {
			n, last = n+1, from
		}
		lines[k] = n - 1
		if ms[k].where || ms[k].diag || ms[k].shape == broken {
			return
		}
	}
	if len(asked) < 2 || n != len(asked) {
		return
	}
	for k := range ms {
		ms[k].topic = asked[lines[k]]
	}
}
