package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds of unit named by the room or the side of the house that they are over.

var (
	roomSizeVerbs = wordsOf(`mide miden es tiene esta estan son tienen igual tambien`)
	beforeLook    = wordsOf(`a an the un una very really pretty muy mas`)
	doorNouns     = wordsOf(`apt apartment suite ste room classroom lot space bldg building house door apartamento casa
		cuarto edificio`)
)

// roomUnits: "the kitchen one … the bathroom one": two or more rooms, in the order named.
func (r *reader) roomUnits() {
	if r.knownRooms() || len(r.refs) > 0 {
		return
	}
	if r.refs = r.roomClauses(); len(r.refs) > 0 {
		return
	}
	var found []unitRef
	var seen []string
	var places []int
	for i := 0; i < len(r.toks); i++ {
		if r.wordAt(i, "one") && r.wordAt(i-1, "the") && r.wordAt(i+1, "in", "on", "over", "at") && r.wordAt(i+2, "the", "our", "my") &&
			r.room(i+3) {
			seen, found = r.seeRoom(seen, found, r.toks[i+3].text, i-1, i+3)
			continue
		}
		if n := r.roomAfter(i); n > 0 {
			seen, found = r.seeRoom(seen, found, r.toks[n].text, i, n)
			continue
		}
		if r.room(i) && r.wordAt(i-1, "the", "my", "our") && r.wordAt(i-2, "on", "in", "for", "over") &&
			!r.wordAt(i+1, "one", "skylight", "roof", "floor", "is", "was") {
			places = append(places, i)
		}
		if (r.room(i) && (r.wordAt(i-1, "del") || r.wordAt(i-1, "la", "el") && r.wordAt(i-2, "de")) ||
			r.wordAt(i, "adelante", "atras", "enfrente") && r.wordAt(i-1, "de") && r.wordAt(i-2, "el", "los")) &&
			i+1 < len(r.toks) &&
			(r.among(i+1, roomSizeVerbs) || r.markAt(i+1, ':') || r.toks[i+1].kind == numToken ||
				r.colorAt(i+1) || r.wordAt(i+1, "en") && r.colorAt(i+2)) {
			seen, found = r.seeRoom(seen, found, r.toks[i].text, i-1, i) // "el de la cocina mide 22 x 22 y el del baño 14 x 30"
			continue
		}
		if r.room(i) && r.wordAt(i-1, "la", "el") &&
			(r.wordAt(i+1, "mide", "miden") || len(seen) > 0 && i+1 < len(r.toks) && r.toks[i+1].kind == numToken) &&
			(i < 2 || r.softBreak(i-2) || r.sentenceEnd(i-2)) {
			seen, found = r.seeRoom(seen, found, r.toks[i].text, i-1, i) // "la sala mide 25 x 25, el pasillo 30 x 46"
			continue
		}
		named := r.wordAt(i+1, "one", "ones", "skylight", "skylights", "dome", "domes", "unit", "units")
		if !r.room(i) && !(named && r.kindWord(i) && r.pairSoon(i+2)) ||
			!named && !r.pairAt(i+1) &&
				!(len(seen) > 0 &&
					(r.wordAt(i+1, "is", "measures") || r.markAt(i+1, ':') || i+1 < len(r.toks) && r.toks[i+1].kind == numToken)) ||
			!r.wordAt(i-1, "the", "my", "our", "and") && i > 0 && r.toks[i-1].kind != markToken && r.toks[i-1].kind != numToken &&
				!(named && r.wholeSaid(i-1) > 0) {
			continue
		}
		last := i
		if named {
			last++
		}
		name := r.toks[i].text
		if at := r.roomOfLook(i, last+1); at > 0 {
			name, last = r.toks[at].text, at // "the small one over the kitchen": one kind
		}
		seen, found = r.seeRoom(seen, found, name, i, last)
		i = last
	}
	if len(seen) > 1 {
		r.refs = found
		return
	}
	r.roomPlaces(places)
}

// roomOfLook is the room that follows a skylight that is called by its look, or by another word that
// is no room, "the wee one in the closet"; 0 for none.
func (r *reader) roomOfLook(i, next int) int {
	if lookOf[r.toks[i].text] == "" && (r.room(i) || next < i+2) || !r.whereWord(next) {
		return 0
	}
	if next++; r.wordAt(next, "the", "my", "our") {
		next++
	}
	if !r.room(next) || sizeWords.has(r.toks[next].text) {
		return 0
	}
	return next
}

// sizeWords tell skylights apart by how large they are, and tell of much else as well.
var sizeWords = wordsOf(`big bigger small smaller large larger little round square left right front back chico
	chica grande grandes`)

// sameRoom: "hall" and "hallway", "bath" and "bathroom", "break room" and "breakroom".
func sameRoom(a, b string) bool {
	a, b = strings.ReplaceAll(a, " ", ""), strings.ReplaceAll(b, " ", "")
	return len(a) > 3 && len(b) > 3 && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a))
}

// callRooms notes by which rooms the message calls kinds of unit.
func (r *reader) callRooms() {
	for i := range r.toks {
		if unit := r.roomOfNumber(i); unit > 0 {
			r.callRoom(unit, i)
		}
	}
	for k := range r.refs {
		ref := &r.refs[k]
		if len(r.refs) > 1 && len(ref.units) == 1 {
			r.looksAfter(ref)
		}
		for i := ref.first; i <= ref.last && len(ref.units) == 1; i++ {
			if look := lookOf[r.toks[i].text]; look != "" {
				r.lookOfKind(ref.units[0], look)
			}
			if r.room(i) && !(i > 0 && r.room(i-1) && i > ref.first) || lookOf[r.toks[i].text] != "" {
				r.callRoom(ref.units[0], i)
			}
		}
	}
	for k := range r.refs {
		if len(r.refs[k].units) == 1 && len(r.refs) > 1 {
			r.callOwn(&r.refs[k])
		}
	}
}

// lookOfKind notes how a kind looks.
func (r *reader) lookOfKind(unit int, look string) {
	if r.out.Looks == nil {
		r.out.Looks = map[int]string{}
	}
	r.out.Looks[unit] = AddLook(r.out.Looks[unit], look)
}

// looksAfter: "the other one is a big rectangle": the looks that are told of a kind right after it.
func (r *reader) looksAfter(ref *unitRef) {
	i := ref.last + 1 + number(r.wordAt(ref.last+1, "one", "ones"))
	if !r.wordAt(i, "is", "are", "was", "es", "son") {
		return
	}
	for i++; r.among(i, beforeLook); i++ {
	}
	for ; i < len(r.toks) && lookSort[lookOf[r.toks[i].text]] > 0; i++ {
		r.lookOfKind(ref.units[0], lookOf[r.toks[i].text])
	}
}

// callRoom notes the room or the look at a token as the name of a kind, with what belongs to it.
func (r *reader) callRoom(unit, i int) {
	name := r.toks[i].text
	if strings.HasPrefix(r.Input.Rooms[unit], name+" ") {
		return // the living room's "living"
	}
	if before, look := r.Input.Rooms[unit], lookOf[name]; before != "" && look != "" &&
		(lookOf[before] == "" || lookOf[before] == look) {
		name = before // "squares", of the square one or of the kitchen's
	} else if words := r.wordsOfRoom(i); words != "" {
		name = words
	} else if next := i + 1; next < len(r.toks) && (r.toks[next].kind == numToken && r.inRef(next) || r.wordAt(next, "room")) {
		name += " " + r.toks[next].text // "bedroom 2", "living room"
	}
	if r.out.Rooms == nil {
		r.out.Rooms = map[int]string{}
	}
	r.out.Rooms[unit] = name
}

// roomPlaces: "single on the garage, double on the house": two places with a value each.
func (r *reader) roomPlaces(places []int) {
	if r.asked(fitcheck.TopicCount) || len(places) != 2 ||
		r.toks[places[0]].text == r.toks[places[1]].text ||
		r.softBetween(r.sentenceFirst(places[0]), places[0]) ||
		!r.softBetween(places[0], places[1]) {
		return
	}
	values := 0
	for n := range r.choices {
		if h := &r.choices[n]; h.first < places[1] && h.senses[0].topic != "" && h.senses[0].topic != fitcheck.TopicUse {
			values++
		}
	}
	for n := range r.wants {
		if h := &r.wants[n]; h.first < places[1] && h.senses[0].topic != "" && h.last-h.first > 0 {
			values++
		}
	}
	if values >= 2 {
		for k, i := range places {
			r.refs = append(r.refs, unitRef{i - 2, i, []int{k + 1}})
		}
	}
}

// seeRoom notes that a room's unit is named; the same room again is the same unit.
func (r *reader) seeRoom(seen []string, found []unitRef, room string, first, last int) ([]string, []unitRef) {
	n := slices.Index(seen, room)
	if n < 0 {
		n, seen = len(seen), append(seen, room)
	}
	return seen, append(found, unitRef{first, last, []int{n + 1}})
}

// roomsBeforeSizes: "hallway 25 x 49, kitchen 33 x 33", "A: 25 x 49, B: 33 x 33".
func (r *reader) roomsBeforeSizes() {
	defer r.itemUnits()
	if len(r.refs) > 0 {
		return
	}
	var found []unitRef
	var seen []string
	for i := 0; i+1 < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || slices.Contains(seen, r.toks[i].text) {
			continue
		}
		if n := r.doorAt(i, seen); n != "" {
			seen = append(seen, n)
			found = append(found, unitRef{i, i + 1, []int{len(seen)}})
			continue
		}
		last := i + number(r.room(i) && r.wordAt(i+1, "room"))
		j := last + 1
		letter := r.letter(i) &&
			(r.markAt(j, ':') || r.markAt(j, ')') || r.markAt(j, '=') || r.markAt(j, '-') ||
				r.wordAt(j, "is", "es", "mide", "measures") || r.pairAt(j) && r.clauseStart(i) == i ||
				r.wordAt(i-1, "skylight", "dome", "unit", "opening"))
		if letter || r.markAt(j, ':') || r.wordAt(j, "is") {
			j++
		}
		if !letter && !r.room(i) ||
			!r.pairAt(j) && !((r.markAt(last+1, ':') || letter && r.wordAt(i-1, "skylight", "dome", "unit")) && r.pairSoon(j)) {
			continue
		}
		seen = append(seen, r.toks[i].text)
		found = append(found, unitRef{i, last, []int{len(seen)}})
	}
	if len(found) == 1 && r.Count > 1 && r.Units < 2 && r.askedSize() != "none" {
		if before := r.Input.Rooms[1]; before != "" && !strings.HasPrefix(before, seen[0]) && !sameRoom(before, seen[0]) {
			found[0].units = []int{2}
		}
		r.refs = found // one of several that were told of
	}
	if len(found) > 1 {
		r.refs = found
	}
}

// opensSize: a room stands right before a size, at the start of its clause.
func (r *reader) opensSize(h *hit, m *measure) bool {
	from := r.clauseStart(h.first)
	for r.wordAt(from, "the", "my", "our", "la", "el", "and", "y") {
		from++
	}
	to := h.last + 1
	for r.markAt(to, ':') || r.wordAt(to, "room", "is", "one", "es", "mide") {
		to++
	}
	return r.room(from) && from >= h.first-1 && to == m.first
}

// doorAt: "apt 4 is 22 1/2 x 46 1/2, apt 6 is …": the number on a door, once each, "" for none.
func (r *reader) doorAt(i int, seen []string) string {
	numbered := r.room(i) && i+1 < len(r.toks) && r.toks[i+1].kind == numToken && r.toks[i+1].dec == 0 && r.toks[i+1].whole > 0 &&
		r.toks[i+1].whole < 10 && !r.by(i+2) && !r.markAt(i+2, '/') && r.unitAt(i+2) == noUnit
	if numbered && r.otherNumbered(i) {
		name := r.toks[i].text + " " + r.toks[i+1].text
		if slices.Contains(seen, name) {
			return ""
		}
		r.use(i+1, i+1)
		return name
	}
	if !r.among(i, doorNouns) {
		return ""
	}
	if r.pairAt(i + 1) {
		return "" // "tack room 25 1/4 x 49 1/4"
	}
	j := i + 2
	if r.wordAt(j, "is", "mide", "measures") || r.markAt(j, ':') || r.markAt(j, '-') {
		j++
	}
	if j >= len(r.toks) || !r.pairAt(j) || r.by(i+2) {
		return ""
	}
	name := r.toks[i].text + " " + r.toks[i+1].text
	if slices.Contains(seen, name) {
		return ""
	}
	r.use(i+1, i+1)
	return name
}

// kindsByRoom: "36x36 for the bathroom and 24x48 for the stairwell", "Bathroom curb: 26 x 26
// outside. Bedroom curb: 26 x 38 outside": sizes of the same thing, each with a room of its own
// among its words.
func (r *reader) kindsByRoom(ms []measure) {
	var rooms []string
	for k := range ms {
		m := &ms[k]
		if m.shape == lone && m.parts[0].side == height || m.drop {
			continue
		}
		if m.shape != pair && !m.square || len(m.units) > 0 || m.topic != ms[0].topic ||
			m.face != ms[0].face && m.face != "" && ms[0].face != "" {
			return
		}
		to := len(r.toks)
		if k+1 < len(ms) {
			to = ms[k+1].from
		}
		room := r.roomIn(m.from, to)
		if room == "" || slices.Contains(rooms, room) {
			return
		}
		rooms = append(rooms, room)
	}
	if len(rooms) < 2 {
		return
	}
	for k, n := 0, 0; k < len(ms); k++ {
		if ms[k].shape == pair || ms[k].square {
			n++
		}
		ms[k].units = []int{max(n, 1)}
	}
}

// roomWords tell skylights apart by where they are or how large.
var roomWords = wordsOf(`kitchen bathroom bath bedroom hall hallway living dining den office garage attic
	stairway stair closet laundry family front back big bigger small smaller large larger stairwell lobby breakroom
	conference storage gym sanctuary classroom cafeteria loft landing mudroom sunroom utility shower basement
	stairs nursery library north south east west left right upstairs downstairs little round square master guest
	porch entry house barn shed cabin foyer pantry studio shop stockroom locker entryway restroom restrooms nave
	chapel narthex vestibule fellowship parlor warehouse showroom corridor atrium powder carport patio lanai
	playroom workshop milkroom bunkhouse study bonus addition kennel restaurant school church stairs cocina bano
	sala pasillo recamara comedor oficina garaje cochera escalera escaleras entrada lavanderia capilla bodega
	taller granero tienda salon closet gallinero pasadizo corredor vestibulo terraza sotano atico walkway breezeway
	stockroom greenhouse gazebo solarium conservatory cellar nook reception mezzanine clinic coop sunporch
	penthouse infirmary rectory entrance salesroom washroom bunkroom cloakroom schoolroom weightroom craftroom
	rotunda mezzanine greatroom`)
