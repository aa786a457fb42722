package reading

import (
	"maps"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Rooms that a message lists without telling of any of them: "two cracked, bath and porch",
// "skylights in the kitchen and the hall". They make no kinds yet, and are what kinds are called
// by when something is said of one.

var betweenRooms = wordsOf(`the my our in over one en la el otro uno sobre`)

// listedRooms notes such rooms, and how many skylights there are where that is their number.
func (r *reader) listedRooms() {
	if len(r.refs) > 0 || r.Units > 1 || len(r.out.Rooms) > 0 || len(r.Input.Rooms) > 0 || r.pairBetween(0, len(r.toks)) {
		return
	}
	for i := range r.toks {
		if r.wordAt(i, "house", "home", "casa") && r.wordAt(i-1, "my", "our", "mi") && r.markAt(i+1, ',') {
			continue // "two on my house, kitchen and bath": where the rooms are
		}
		rooms, last := r.roomRun(i)
		if len(rooms) < 2 {
			continue
		}
		n := r.countBeforeRooms(i, len(rooms))
		if n < 0 && r.Count != len(rooms) &&
			!r.wordsIn(max(r.sentenceFirst(i), i-6), i, "skylights", "domes", "tragaluces", "domos", "claraboyas") {
			return
		}
		r.out.Rooms = map[int]string{}
		for k, room := range rooms {
			r.out.Rooms[k+1] = room
		}
		if n >= 0 {
			r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(len(rooms)), n, last)
			r.use(n, n)
		}
		return
	}
}

// roomRun reads two rooms or more, with nothing but joining words between them.
func (r *reader) roomRun(i int) (rooms []string, last int) {
	joined := false
	for k := i; k < len(r.toks); k++ {
		switch {
		case r.room(k) && !sizeWords.has(r.toks[k].text) && (joined || k == i):
			name := r.toks[k].text
			if r.wordAt(k+1, "room") {
				k++
				name += " room"
			}
			if slices.Contains(rooms, name) {
				return nil, 0
			}
			rooms, last, joined = append(rooms, name), k, false
		case k > i && (r.markAt(k, ',') || r.markAt(k, '&') || r.wordAt(k, "and", "y")):
			joined = true
		case joined && r.among(k, betweenRooms):
		default:
			return rooms, last
		}
	}
	return rooms, last
}

// countBeforeRooms is the token of a number before the rooms that is as many as they are, and
// counts nothing else; -1 for none.
func (r *reader) countBeforeRooms(to, n int) int {
	if r.known(fitcheck.TopicCount) {
		return -1
	}
	for i := r.sentenceFirst(to); i < to; i++ {
		if r.wholeSaid(i) == n && !r.used(i) &&
			(r.markAt(i+1, ',') || r.markAt(i+1, ':') || covers(r.choices, i+1) ||
				r.wordAt(i+1, "in", "over", "en", "are", "that", "of")) {
			return i
		}
	}
	return -1
}

// roomsListed is how many kinds the rooms of earlier messages stand for.
func (r *reader) roomsListed() int {
	listed := 0
	for unit := range maps.Keys(r.Input.Rooms) {
		listed = max(listed, unit)
	}
	return listed
}
