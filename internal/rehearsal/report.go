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

// Group is how one sort of customer fared.
type Group struct {
	By           string `json:"by"`
	Name         string `json:"name"`
	Customers    int    `json:"customers"`
	CouldBeReady int    `json:"could_be_ready"`
	Ready        int    `json:"ready_of_those"`
	Messages     Spread `json:"messages"`
}

// MistakeCount is what became of one way of measuring wrong.
type MistakeCount struct {
	Mistake  string  `json:"mistake"`
	Made     int     `json:"made"`
	Outcomes []Count `json:"outcomes"`
}

func newReport(seed uint64, talks []Talk) *Report {
	r := &Report{Seed: seed, Customers: len(talks), Missed: []Missed{}, Wrong: []Talk{}, talks: talks}
	ends, stuck, left, caught, faults := tally{}, tally{}, tally{}, tally{}, tally{}
	outcomes := map[string]tally{}
	var messages []int
	for i := range talks {
		t := &talks[i]
		ready := t.ready()
		ends[t.Status]++
		if ready {
			r.Ready++
			messages = append(messages, t.Messages)
		}
		switch {
		case t.ShouldBeReady && ready:
			r.CouldBeReady, r.ReadyOfThose = r.CouldBeReady+1, r.ReadyOfThose+1
		case t.ShouldBeReady:
			r.CouldBeReady++
			stuck[t.OpenAsk+" ("+strings.Join(t.Why, "; ")+")"]++
		case t.Leaving == string(leaves) || t.Leaving == string(optsOut):
			left[t.OpenAsk]++
		}
		for _, c := range t.Caught {
			caught[string(c)]++
		}
		for _, k := range t.faultKinds() {
			faults[string(k)]++
		}
		if t.Became != "" {
			if outcomes[t.Mistake] == nil {
				outcomes[t.Mistake] = tally{}
			}
			outcomes[t.Mistake][t.Became]++
		}
		r.Missed = append(r.Missed, t.Missed...)
		if t.wrong() {
			r.Wrong = append(r.Wrong, *t)
		}
	}
	r.Messages = spread(messages)
	r.Ends, r.Stuck, r.Left, r.Caught, r.Faults = ends.counts(), stuck.counts(), left.counts(), caught.counts(), faults.counts()
	for _, m := range slices.Sorted(maps.Keys(outcomes)) {
		r.Mistakes = append(r.Mistakes, MistakeCount{m, outcomes[m].sum(), outcomes[m].counts()})
	}
	r.group(talks)
	return r
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

func (r *Report) group(talks []Talk) {
	for _, by := range []struct {
		name string
		of   func(*Talk) string
	}{
		{"kind", func(t *Talk) string { return t.Kind }},
		{"manner", func(t *Talk) string { return t.Manner }},
		{"language", func(t *Talk) string { return t.Language }},
		{"channel", func(t *Talk) string { return t.Channel }},
	} {
		groups, messages := map[string]*Group{}, map[string][]int{}
		for i := range talks {
			t := &talks[i]
			name := by.of(t)
			if groups[name] == nil {
				groups[name] = &Group{By: by.name, Name: name}
			}
			g := groups[name]
			g.Customers++
			if t.ShouldBeReady {
				g.CouldBeReady++
				if t.ready() {
					g.Ready++
				}
			}
			if t.ready() {
				messages[name] = append(messages[name], t.Messages)
			}
		}
		for _, name := range slices.Sorted(maps.Keys(groups)) {
			groups[name].Messages = spread(messages[name])
			r.Groups = append(r.Groups, *groups[name])
		}
	}
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
