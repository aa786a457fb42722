package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	homeRooms = wordsOf(`hallway kitchen bathroom bath bedroom den nursery pantry foyer stairwell staircase closet shower
		tub livingroom diningroom bathrooms bedrooms cocina bano banos recamara recamaras pasillo comedor sala cuarto
		dormitorio lavanderia regadera`)
	roomAtHome = wordsOf(`living dining family laundry bath powder guest master sitting sewing`)
	beforeHome = wordsOf(`upstairs downstairs front back old little small big main master second guest half spare kids
		hall only tiny first other`)
	homeOwners = wordsOf(`my his her mi`)
	kinOwners  = wordsOf(`moms mothers dads fathers mommas mamas daddys papas grandmas grandmothers grandpas
		grandfathers sons daughters sisters brothers wifes husbands aunts uncles inlaws parents grandparents folks
		nanas grannys cousins mother_in_laws`)
	roomLinks    = wordsOf(`over above in into for of on from sobre en de del arriba encima para`)
	skylightSaid = wordsOf(`skylight skylights skylite skylites dome domes bubble bubbles plastic sunroof tragaluz
		tragaluces domo domos claraboya claraboyas burbuja`)
)

// roomOfHome: "the dome over my father's hallway", "el domo del baño de mi mamá": the room of a person is
// one of a home, where no building is named and what it is on was asked or nothing has been yet.
func (r *reader) roomOfHome() {
	t := fitcheck.TopicUse
	if r.known(t) || r.doubtful(t) || r.Units > 0 || len(r.Asked) > 0 && !r.asked(t) || r.namesBuilding() {
		return
	}
	for i := range r.toks {
		first, owned := r.ownedRoom(i)
		if !owned || r.negated(first) || r.likened(first) {
			continue
		}
		from, to := r.sentence(i)
		linked := r.among(first-1, roomLinks) || r.among(i+1, skylightSaid)
		if linked && (r.asked(t) || r.anyOf(from, to+1, skylightSaid)) && !r.anyOf(from, first, putVerbs) {
			r.fact(t, 0, fitcheck.Choice(fitcheck.UseHome), first, i)
			return
		}
	}
}

// ownedRoom: at the token a room of a home ends that is some person's; first is where the owner or the room
// begins.
func (r *reader) ownedRoom(i int) (first int, owned bool) {
	first = i
	switch {
	case r.among(i, homeRooms):
	case r.wordAt(i, "room", "rooms") && r.among(i-1, roomAtHome):
		first--
	default:
		return i, false
	}
	if r.wordAt(i+1, "de") && r.wordAt(i+2, "mi", "mis", "su") && r.among(i+3, kin) {
		return first - number(r.wordAt(first-1, "el", "la", "los")), true
	}
	for r.among(first-1, beforeHome) {
		first--
	}
	switch {
	case r.among(first-1, kinOwners) || r.wordAt(first-1, "laws") && r.wordAt(first-2, "in"):
		for first--; r.among(first-1, ownWords) || r.wordAt(first-1, "his", "her", "in", "mother", "father", "the"); first-- {
		}
		return first, true
	case r.wordAt(first-1, "my") && r.wordAt(i, "hallway", "stairwell", "foyer"):
		return first, false // a landlord or a firm says that too
	case r.among(first-1, homeOwners):
		return first - 1, true
	}
	return first, false
}

// namesBuilding: the message names a building, whatever else it says of it.
func (r *reader) namesBuilding() bool {
	for n := range r.choices {
		if slices.ContainsFunc(r.choices[n].senses, func(s sense) bool { return s.topic == fitcheck.TopicUse && s.value != fitcheck.UseHome }) {
			return true
		}
	}
	return false
}
