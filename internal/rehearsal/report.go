package rehearsal

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation"
)

// Report is how a rehearsal went.
type Report struct {
	Seed      uint64 `json:"seed"`
	Customers int    `json:"customers"`
	// CouldBeReady: customers whose part the shop can make and who play along to the end.
	CouldBeReady int     `json:"could_be_ready"`
	Ready        int     `json:"ready"`
	ReadyOfThose int     `json:"ready_of_those"`
	Messages     Spread  `json:"messages"` // the customer's, of ready leads of one kind of unit
	Ends         []Count `json:"ends"`
	Groups       []Group `json:"groups"`
	// Stuck counts, by state and question, where those ended who could have been ready.
	Stuck []Count `json:"stuck"`
	// Left counts where those stood who left or opted out.
	Left     []Count        `json:"left"`
	Caught   []Count        `json:"caught"` // talks by finding code
	Mistakes []MistakeCount `json:"mistakes"`
	Faults   []Count        `json:"faults"`
	Missed   []Missed       `json:"not_understood"`
	Wrong    []Talk         `json:"wrong_facts"` // talks with a wrong fact, whole

	talks []Talk
}

// Count is how often something came.
type Count struct {
	What string `json:"what"`
	N    int    `json:"n"`
}

// Spread is the middle of a list of numbers, and what nine in ten stay within.
type Spread struct {
	Median int `json:"median"`
	P90    int `json:"p90"`
}

// MistakeCount is what became of one way of measuring wrong.
type MistakeCount struct {
	Mistake  string  `json:"mistake"`
	Made     int     `json:"made"`
	Outcomes []Count `json:"outcomes"`
}

func newReport(seed uint64, talks []Talk) *Report {
	r := &Report{Seed: seed, Customers: len(talks), Missed: []Missed{}, Wrong: []Talk{}, talks: talks}
	b := books{ends: tally{}, stuck: tally{}, left: tally{}, caught: tally{}, faults: tally{}, became: map[string]tally{}}
	var messages []int
	for i := range talks {
		t := &talks[i]
		b.enter(t)
		if t.ready() {
			messages = append(messages, t.Messages)
		}
		r.Missed = append(r.Missed, t.Missed...)
		if t.wrong() {
			r.Wrong = append(r.Wrong, *t)
		}
	}
	r.Ready, r.CouldBeReady, r.ReadyOfThose = len(messages), b.could, b.did
	r.Messages = spread(messages)
	r.Ends, r.Stuck, r.Left, r.Caught, r.Faults = b.ends.counts(), b.stuck.counts(), b.left.counts(), b.caught.counts(), b.faults.counts()
	for _, m := range slices.Sorted(maps.Keys(b.became)) {
		r.Mistakes = append(r.Mistakes, MistakeCount{m, b.became[m].sum(), b.became[m].counts()})
	}
	r.Groups = groups(talks)
	return r
}

// books are kept while the talks are gone through.
type books struct {
	ends, stuck, left, caught, faults tally
	became                            map[string]tally // by mistake
	could, did                        int              // be ready
}

func (b *books) enter(t *Talk) {
	b.ends[t.Status]++
	switch {
	case t.ShouldBeReady && t.ready():
		b.could, b.did = b.could+1, b.did+1
	case t.ShouldBeReady:
		b.could++
		b.stuck[t.OpenAsk+" ("+strings.Join(t.Why, "; ")+")"]++
	case t.Leaving == string(leaves) || t.Leaving == string(optsOut):
		b.left[t.OpenAsk]++
	}
	for _, c := range t.Caught {
		b.caught[string(c)]++
	}
	for _, k := range t.faultKinds() {
		b.faults[string(k)]++
	}
	if t.Became == "" {
		return
	}
	if b.became[t.Mistake] == nil {
		b.became[t.Mistake] = tally{}
	}
	b.became[t.Mistake][t.Became]++
}

func (t *Talk) ready() bool { return t.Status == string(conversation.StatusReady) }

// faultKinds are the kinds of fault of a talk, each once.
func (t *Talk) faultKinds() []FaultKind {
	var kinds []FaultKind
	for _, f := range t.Faults {
		if !slices.Contains(kinds, f.Kind) {
			kinds = append(kinds, f.Kind)
		}
	}
	return kinds
}

// Failed says whether something was noted down that nobody said, or a text went out after
// an opt-out.
func (r *Report) Failed() bool { return len(r.Wrong) > 0 }

// Talks are the first n talks, to be read.
func (r *Report) Talks(n int) []Talk { return r.talks[:min(max(n, 0), len(r.talks))] }

type tally map[string]int

func (t tally) sum() int {
	n := 0
	for _, k := range t {
		n += k
	}
	return n
}

// counts are the most frequent first.
func (t tally) counts() []Count {
	out := []Count{}
	for _, what := range slices.Sorted(maps.Keys(t)) {
		out = append(out, Count{what, t[what]})
	}
	slices.SortStableFunc(out, func(a, b Count) int { return cmp.Or(b.N-a.N, strings.Compare(a.What, b.What)) })
	return out
}

func spread(n []int) Spread {
	if len(n) == 0 {
		return Spread{}
	}
	slices.Sort(n)
	return Spread{Median: n[(len(n)-1)/2], P90: n[(len(n)*9+9)/10-1]}
}
