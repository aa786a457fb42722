package reading

// Two sizes told without a break between them: which of the names that stand there are of
// the first, and which of the second.

var (
	partOfLinks        = wordsOf(`of de del the la el`)
	measureVerbsDenied = wordsOf(`measure measured reach reached medi medimos llego`)
)

// secondName: "19 x 26 is the outside of the curb inside 15 x 23": the names between two
// measures are two, and neither measure has one on its other side; gives where the second
// begins, -1 where it is otherwise.
func (r *reader) secondName(before, after *measure) int {
	if r.labelled(r.clauseStart(before.first), before.first-1) || r.labelled(after.last+1, r.clauseEnd(after.last)) {
		return -1
	}
	from, to := before.last+1, after.first-1
	second := -1
	part, face := false, false
	labels := within(r.labels, from, to)
	for n := range labels {
		h := &labels[n]
		if !isName(h) {
			continue
		}
		k := h.senses[0].kind
		isPart, isFace := k != "face", k != "part"
		taken := isPart && part || isFace && face || isFace && !isPart && part && r.leadsToPart(h)
		if taken && (second >= 0 || part != face && !isFace) {
			return -1
		}
		if taken {
			second, part, face = h.first, false, false
		}
		part, face = part || isPart, face || isFace
	}
	return second
}

// withinLabel: the token is an inner word of a name: "el plástico con todo y pestaña".
func (r *reader) withinLabel(i int) bool {
	return r.labelAt[i] >= 0 && r.labels[r.labelAt[i]].first < i
}

// leadsToPart: "inside of the box": the face is of the part that comes after it.
func (r *reader) leadsToPart(h *hit) bool {
	i := h.last + 1
	if !r.wordAt(i, "of", "de", "del") {
		return false
	}
	for r.among(i, partOfLinks) {
		i++
	}
	p := r.labelFrom(i)
	return p != nil && p.has1("part")
}

// cantBeHad: in a clause of its own, apart from the measure, the part can't be reached:
// "couldn't reach the opening but 25 x 49", "25 x 49, no puedo medir por dentro".
func (r *reader) cantBeHad(h *hit, from, to int) bool {
	return isName(h) && r.softBetween(from, to) && r.cantTold(h)
}

// cantTold: the clause says that somebody can't reach or measure the part.
func (r *reader) cantTold(h *hit) bool {
	start, end := r.clauseStart(h.first), r.clauseEnd(h.last)
	if r.wordsIn(start, h.first, "so", "then", "instead", "asi", "entonces") {
		return false // "cant get on the roof so I measured the opening from inside"
	}
	if r.wordsIn(start, h.first, "never", "didnt", "havent", "nunca", "no") && r.anyOf(start, h.first, measureVerbsDenied) {
		return true
	}
	return r.wordsIn(start, h.first, "cant", "cannot", "couldnt", "unable") ||
		r.wordsIn(start, h.first, "can", "could") && r.wordsIn(start, h.first, "not") ||
		r.wordsIn(start, h.first, "no") && r.wordsIn(start, end+1, "puedo", "pude", "alcanzo", "alcance", "podemos")
}
