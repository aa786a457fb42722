package reading

import (
	"maps"
	"slices"
	"strings"
)

// Kinds that an earlier message called by their room or by how they look.

var beforeRoom = wordsOf(`the my our el la del for in over on at en`)

// knownRooms: "the hall one should be bronze", where a message before called a kind by its room.
func (r *reader) knownRooms() bool {
	for k := range r.refs {
		if !r.wordAt(r.refs[k].last, "other", "others", "rest", "otro", "otra", "otros", "otras", "demas") &&
			len(r.refs[k].units) == 1 {
			return false // numbered already
		}
	}
	var found []unitRef
	for i := range r.toks {
		if r.calledWithNumber(i) {
			r.use(i-1, i-1)
		}
		if unit, last := r.calledBySize(i); unit > 0 {
			r.use(i, last)
			found = append(found, unitRef{i, last, []int{unit}})
			continue
		}
		if unit := r.Names[r.toks[i].text]; unit > 0 && r.toks[i].kind == wordToken && !r.domeWord(i) && r.calledByLook(i) {
			found = append(found, unitRef{i, i + number(r.wordAt(i+1, "one", "ones")), []int{unit}})
			continue
		}
		if unit := r.lookKnown(i); unit > 0 && r.calledByLook(i) {
			found = append(found, unitRef{i, i + number(r.wordAt(i+1, "one", "ones")), []int{unit}})
			continue
		}
		if unit := r.domeKind(i); unit > 0 {
			r.noPart(i)
			found = append(found, unitRef{i, i + number(r.wordAt(i+1, "one", "ones")), []int{unit}})
			continue
		}
		if unit := r.otherRoom(i); unit > 0 {
			found = append(found, unitRef{i, i + number(r.wordAt(i+1, "one")), []int{unit}})
			continue
		}
		if unit := r.unitOfRoom(i); unit > 0 {
			room := r.Input.Rooms[unit]
			called := r.wordAt(i+1, "one", "ones", "skylight", "skylights", "dome", "domes", "unit", "units")
			place := !sizeWords.has(room) &&
				(len(found) > 0 && i+1 < len(r.toks) && (r.colorAt(i+1) || r.toks[i+1].kind == numToken) ||
					r.among(i-1, beforeRoom) || i == 0 || r.toks[i-1].kind == markToken ||
					r.wordAt(i-1, "but", "and", "y", "pero"))
			place = place || covers(r.choices, i-1) && r.endsRoom(i)
			// "make it 2 kitchen"
			counted := r.asked("confirm") && r.wholeSaid(i-1) > 0 && r.putsRight(i-1) && (r.endsLook(i) || r.wordAt(i+1, "please", "not"))
			if called || place || counted || sizeWords.has(room) && r.wordAt(i-1, "el", "la") {
				if !called && i+1 < len(r.toks) && room == r.toks[i].text+" "+r.toks[i+1].text {
					called = true
					r.use(i+1, i+1)
				}
				if !called && r.wordAt(i+1, "room", "rooms", "area", "side", "roof") && !(sizeWords.has(room) && r.wordAt(i+1, "side")) {
					called = true // "living room bronze"
				}
				if r.kindsWord(i) > 0 {
					r.noPart(i)
				}
				found = append(found, unitRef{i, i + number(called), []int{unit}})
			}
		}
	}
	if len(found) > 0 {
		r.refs = r.withOther(found) // "kitchen white outside, bath clear both": both layers
	}
	return len(found) > 0
}

// endsRoom: the room at a token ends what is said: "1 layer acrylic clear kitchen, white bath".
func (r *reader) endsRoom(i int) bool {
	next := i + 1 + number(r.wordAt(i+1, "room", "area"))
	return next >= len(r.toks) || r.toks[next].kind == markToken || r.wordAt(next, "and", "y")
}

// withOther adds "the others" beside the one of two kinds that is named.
func (r *reader) withOther(found []unitRef) []unitRef {
	if r.Units != 2 || slices.ContainsFunc(found, func(u unitRef) bool { return u.units[0] != found[0].units[0] }) {
		return found
	}
	for i := range r.toks {
		if r.wordAt(i, "other", "others", "rest", "otro", "otra", "otros", "otras", "demas") &&
			r.wordAt(i-1, "the", "el", "la", "los", "las") && !r.wordAt(i+1, "way", "side", "direction", "end", "day", "lado") {
			found = append(found, unitRef{i, i, []int{3 - found[0].units[0]}})
		}
	}
	return found
}

// otherRoom: "the bathroom one is 25 x 49", where the one skylight so far is another room's.
func (r *reader) otherRoom(i int) int {
	if r.Units != 1 || r.Input.Rooms[1] == "" || !r.room(i) ||
		sizeWords.has(r.toks[i].text) ||
		!(r.wordAt(i+1, "one") && r.wordAt(i-1, "the", "my", "our", "and")) && !r.roomOpens(i) ||
		sameRoom(r.Input.Rooms[1], r.toks[i].text) || r.Input.Rooms[1] == r.toks[i].text ||
		!r.pairSoon(i+1) {
		return 0
	}
	return 2
}

// roomOpens: "living room: 25 x 49": the room opens its clause, and a size follows right after.
func (r *reader) roomOpens(i int) bool {
	next := i + 1
	for r.wordAt(next, "room", "is") || r.markAt(next, ':') {
		next++
	}
	return r.Count > 1 && r.clauseStart(i) == i && r.pairAt(next)
}

// unitOfRoom is the kind that was called by the room at a token, by its very word before a
// shorter or longer one; 0 for none.
func (r *reader) unitOfRoom(i int) int {
	if !r.room(i) {
		return 0
	}
	near := 0
	for _, unit := range slices.Sorted(maps.Keys(r.Input.Rooms)) {
		switch room := r.Input.Rooms[unit]; {
		case room == r.toks[i].text, i+1 < len(r.toks) && room == r.toks[i].text+" "+r.toks[i+1].text:
			return unit
		case near == 0 && (!strings.Contains(room, " ") || !isDigit(room[len(room)-1])) && sameRoom(room, r.toks[i].text):
			near = unit
		}
	}
	return near
}

// lookKnown is the kind that was called by the look of a token in an earlier message, 0 for none.
func (r *reader) lookKnown(i int) int {
	look := lookOf[r.toks[i].text]
	if look == "" || r.toks[i].kind != wordToken {
		return 0
	}
	for _, unit := range slices.Sorted(maps.Keys(r.Input.Rooms)) {
		if lookOf[r.Input.Rooms[unit]] == look {
			return unit
		}
	}
	return 0
}
