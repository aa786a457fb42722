package rehearsal

import (
	"maps"
	"slices"
)

// Group is how one sort of customer fared.
type Group struct {
	By           string `json:"by"`
	Name         string `json:"name"`
	Customers    int    `json:"customers"`
	CouldBeReady int    `json:"could_be_ready"`
	Ready        int    `json:"ready_of_those"`
	Messages     Spread `json:"messages"`
}

// ways are the ways in which customers are put into groups.
var ways = []struct {
	name string
	of   func(*Talk) string
}{
	{"kind", func(t *Talk) string { return t.Kind }},
	{"manner", func(t *Talk) string { return t.Manner }},
	{"language", func(t *Talk) string { return t.Language }},
	{"channel", func(t *Talk) string { return t.Channel }},
}

func groups(talks []Talk) []Group {
	var out []Group
	for _, way := range ways {
		members := map[string][]*Talk{}
		for i := range talks {
			name := way.of(&talks[i])
			members[name] = append(members[name], &talks[i])
		}
		for _, name := range slices.Sorted(maps.Keys(members)) {
			out = append(out, group(way.name, name, members[name]))
		}
	}
	return out
}

func group(by, name string, members []*Talk) Group {
	g := Group{By: by, Name: name, Customers: len(members)}
	var messages []int
	for _, t := range members {
		if t.ShouldBeReady {
			g.CouldBeReady++
		}
		if t.ShouldBeReady && t.ready() {
			g.Ready++
		}
		if t.ready() {
			messages = append(messages, t.Messages)
		}
	}
	g.Messages = spread(messages)
	return g
}
