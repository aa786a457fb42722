package reading

import "slices"

// Kinds that are called by how many there are of each: "23 1/2 x 23 1/2 on the three and 35 1/2 x
// 35 1/2 on the one".

var (
	beforeKindNumber = wordsOf(`the los las el la these those my our mis`)
	afterKindNumber  = wordsOf(`and y are is son es measure measures miden mide has have tienen tiene`)
	allKindsLinks    = wordsOf(`are is the same measure measures at son miden mide de es`)
	beforeShape      = wordsOf(`for on of square para en de cuadrado cuadrados are`)
	squareWords      = wordsOf(`square squared round in inch inches for on is the opening openings same cuadrado
		cuadrados pulgadas para en de`)
)

// calledByNumber finds such kinds, where each number is that of just one kind and two of them are
// named, or one that can be no other's.
func (r *reader) calledByNumber() {
	if r.Units < 2 || r.asked("count") {
		return
	}
	var found []unitRef
	for i := range r.toks {
		if unit := r.kindOfNumber(i); unit > 0 && !r.refAt(i, i+1) {
			found = append(found, unitRef{i, i, []int{unit}})
		}
	}
	if other := r.otherThanNumber(found); other != nil {
		found = append(found, *other)
	}
	several := slices.ContainsFunc(found, func(ref unitRef) bool { return ref.units[0] != found[0].units[0] })
	for _, ref := range found {
		if several || r.wholeSaid(ref.first) > r.Units {
			r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return u.first <= ref.first && ref.first <= u.last })
			r.refs = append(r.refs, ref)
			r.use(ref.first, ref.last)
		}
	}
}

// otherThanNumber: "the three: 23 1/2 x 23 1/2. the other: 35 1/2 x 35 1/2": the second of two kinds,
// where the first is called by its number.
func (r *reader) otherThanNumber(found []unitRef) *unitRef {
	if len(found) != 1 || r.Units != 2 {
		return nil
	}
	for i := range r.toks {
		if r.wordAt(i, "other", "otro", "otra", "single") && r.wordAt(i-1, "the", "el", "la") && !r.refAt(i, i+1) &&
			(i+1 >= len(r.toks) || r.toks[i+1].kind != wordToken || r.wordAt(i+1, "is", "measures", "at", "es", "mide", "de")) {
			return &unitRef{i, i, []int{3 - found[0].units[0]}}
		}
	}
	return nil
}

// kindOfNumber is the kind of which there are as many as the number at a token says, 0 for none or
// where the number is no name: "the three", "on one", not "the one in the hall".
func (r *reader) kindOfNumber(i int) int {
	n := r.wholeSaid(i)
	if n < 1 || n > 99 || r.by(i+1) || r.by(i-1) || r.unitAt(i+1) != noUnit || r.markAt(i-1, '/') || r.markAt(i+1, '/') {
		return 0
	}
	the := r.among(i-1, beforeKindNumber)
	alone := i+1 >= len(r.toks) || r.toks[i+1].kind == markToken || r.among(i+1, afterKindNumber)
	next := alone || n > 1 && r.wordAt(i+1, "alike", "same", "identical", "matching", "iguales", "de")
	switch {
	case the && (next || r.choiceBegins(i+1) || r.wordAt(i+1, "in", "en") && r.choiceBegins(i+2)):
	case r.wordAt(i-1, "on", "for", "of") && alone && n != r.Units && !r.asked("layers"):
	case r.wordAt(i-1, "the", "el", "la", "los", "las") &&
		(i+1 < len(r.toks) && r.toks[i+1].kind == numToken || n == 1 && r.wordAt(i+1, "de")):
	default:
		return 0
	}
	unit := 0
	for u, count := range r.Counts {
		if count != n {
			continue
		}
		if unit > 0 {
			return 0
		}
		unit = u
	}
	return unit
}

// plainAll: "they are all 23 1/2 x 23 1/2", "23 1/2 square for all", "todos de 60 x 60": where several
// kinds are known and none is named, a word for all beside a size.
func (r *reader) plainAll() {
	if r.Units < 2 || len(r.refs) > 0 {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "all", "each", "every", "everything", "todo", "todos", "todas", "cada") {
			continue
		}
		last := i + number(r.wordAt(i+1, "one", "uno", "una", "kind"))
		k := last + 1
		for r.among(k, allKindsLinks) || r.markAt(k, ':') {
			k++
		}
		before := r.markAt(i-1, ',') || r.among(i-1, beforeShape) || i > 0 && r.toks[i-1].kind == numToken
		if !r.pairAt(k) &&
			!(before && (last+1 >= len(r.toks) || r.toks[last+1].kind == markToken) &&
				(r.pairBetween(0, i) || r.wordsIn(0, i, "square", "cuadrado", "cuadrados"))) {
			continue
		}
		ref := unitRef{first: i, last: last}
		for unit := 1; unit <= r.Units; unit++ {
			ref.units = append(ref.units, unit)
		}
		r.refs = []unitRef{ref}
		return
	}
}

// ofAllKinds: "23 1/2 square all of them", "23 1/2 x 23 1/2 for both": the kinds that are all named
// right after a size, at the end of its clause; nil where they are not.
func (r *reader) ofAllKinds(last int) []int {
	i := last + 1
	for i < len(r.toks) && (r.markAt(i, ',') || r.among(i, squareWords)) {
		i++
	}
	for k := range r.refs {
		ref := &r.refs[k]
		if ref.first == i && len(ref.units) > 1 && len(ref.units) == r.Units &&
			(ref.last+1 >= len(r.toks) || r.toks[ref.last+1].kind == markToken) {
			return ref.units
		}
	}
	return nil
}

// allUnits: "both", "all three": the units that the talk knows, where it knows so many.
func (r *reader) allUnits(h *hit) []int {
	n := 2
	for i := h.first; i <= h.last; i++ {
		if w := r.wholeAt(i); w > 2 {
			n = int(w)
		}
	}
	if r.wordAt(h.first, "all", "each") && r.wordAt(h.first+1, "of") || r.Units > 1 && r.countOfAll() == n {
		n = max(2, r.Units) // "all three", of two kinds that are three together
	}
	if r.Units != n {
		return nil
	}
	all := make([]int, n)
	for i := range all {
		all[i] = i + 1
	}
	return all
}

// countOfAll is how many there are of all kinds, 0 where one was not counted.
func (r *reader) countOfAll() int {
	sum := 0
	for _, n := range r.Counts {
		sum += n
	}
	if len(r.Counts) != r.Units {
		return 0
	}
	return sum
}

// firstAlone: where no second kind is known or named, the words for a first one name none: "I did it
// in feet first and then noticed", "my first time measuring".
func (r *reader) firstAlone() {
	if r.Units > 1 || r.Count > 1 {
		return
	}
	for _, ref := range r.refs {
		if len(ref.units) != 1 || ref.units[0] != 1 ||
			!r.wordsIn(ref.first, ref.last+1, "first", "1st", "primero", "primera") ||
			r.wordsIn(ref.first, ref.last+2, "kind", "type", "group", "size", "batch", "set", "tipo") {
			return
		}
	}
	r.refs = nil
}
