package place

import (
	"cmp"
	"math/bits"
	"slices"
	"sync"
)

// Match is a town that a misspelt name can mean.
type Match struct {
	Entry    Entry
	Distance int // edits: letters left out, put in, changed, or two swapped
}

// nearMost is how many matches Near gives at most.
const nearMost = 8

// Near finds towns whose names are a few edits from what was written, in one state or,
// with "", in all: the fewest edits first, then those with the same first letter (people
// seldom get it wrong), then the most populous. Short names allow no edit or one, long
// ones up to three. A match is something to ask about, not to assume.
func Near(name, state string) []Match {
	var buf [96]byte
	key := appendKey(buf[:0], name)
	limit := nearLimit(len(key))
	wanted, ok := stateNumber(state)
	if len(key) > maxEditLength || state != "" && !ok {
		return nil
	}
	t := load()
	var found []nearTown
	for _, i := range lookalikes().candidates(key, limit) {
		if state != "" && t.towns[i].state != wanted {
			continue
		}
		if d := editDistance(string(key), string(t.keyAt(i)), limit); d <= limit {
			found = append(found, nearTown{town: i, edits: d, otherStart: t.keyAt(i)[0] != key[0]})
		}
	}
	return t.best(found)
}

func nearLimit(length int) int {
	switch {
	case length < 4:
		return 0
	case length < 7:
		return 1
	case length < 12:
		return 2
	}
	return 3
}

type nearTown struct {
	town       int32
	edits      int
	otherStart bool
}

func (t *table) best(found []nearTown) []Match {
	slices.SortFunc(found, func(a, b nearTown) int {
		return cmp.Or(cmp.Compare(a.edits, b.edits), compareBool(a.otherStart, b.otherStart),
			cmp.Compare(t.towns[b.town].population, t.towns[a.town].population),
			cmp.Compare(a.town, b.town))
	})
	var matches []Match
	for _, f := range found[:min(len(found), nearMost)] {
		matches = append(matches, Match{Entry: t.entry(f.town), Distance: f.edits})
	}
	return matches
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// looks says which letters a key has, a bit each, and how many: two keys that differ
// in more than twice as many letters as edits allowed can't be near.
type looks struct {
	letters []uint32
	lengths []uint8
}

var lookalikes = sync.OnceValue(func() looks {
	t := load()
	l := looks{letters: make([]uint32, len(t.towns)), lengths: make([]uint8, len(t.towns))}
	for i := range t.towns {
		key := t.keyAt(int32(i))
		l.letters[i], l.lengths[i] = lettersOf(key), uint8(min(len(key), 255))
	}
	return l
})

func lettersOf(key []byte) uint32 {
	set := uint32(0)
	for _, c := range key {
		set |= 1 << (c & 31)
	}
	return set
}

func (l looks) candidates(key []byte, limit int) []int32 {
	letters := lettersOf(key)
	var found []int32
	for i, n := range l.lengths {
		if d := int(n) - len(key); d > limit || d < -limit {
			continue
		}
		if bits.OnesCount32(letters^l.letters[i]) <= 2*limit {
			found = append(found, int32(i))
		}
	}
	return found
}
