package reading

var (
	peopleOrPets = wordsOf(`perros gatos hijos hijas nietos dogs cats kids children sons daughters grandkids
		boys girls thumbs hands knees stitches puntadas chickens horses cows beers trucks`)
	handAdjectives = wordsOf(`left bad big little young small old`)
)

// countNumber reads a number of pieces in digits or words at token i: its value and where it ends, which
// is i where there is none.
func (r *reader) countNumber(i int) (n, next int) {
	if i >= len(r.toks) || r.among(i+1+number(r.among(i+1, handAdjectives)), peopleOrPets) {
		return 0, i // "I've got two left thumbs"
	}
	if r.toks[i].kind == numToken {
		return r.countDigits(i)
	}
	if r.by(i-1) && r.numberAt(i-2).kind != notNumber || r.numberAt(i-1).kind == tensWord {
		return 0, i // "a two by four skylight", "half by thirty five"
	}
	if n, next, ok := r.dozens(i); ok {
		return n, next
	}
	if n := r.soundsLike(i); n > 0 {
		return n, i + 1
	}
	if v, end := r.cardinal(i); end > i && !(r.by(end) && r.numberAfter(end+1)) && r.unitAt(end) == noUnit {
		return int(v), end
	}
	return 0, i
}

// countDigits is countNumber of a number in digits, which is none of a size.
func (r *reader) countDigits(i int) (n, next int) {
	t := &r.toks[i]
	if t.dec > 0 || t.bad || t.code || t.whole > 500 || r.markAt(i+1, '/') || r.markAt(i-1, '/') || r.unitAt(i+1) != noUnit {
		return 0, i
	}
	if r.by(i-1) || r.by(i+1) && !r.wordsAfterBy(i+2) {
		return 0, i
	}
	if _, _, _, part := r.slashed(i + 1 + number(r.wordAt(i+1, "y", "and"))); part {
		return 0, i // "22 1/4", "son 6 y 3/8"
	}
	return int(t.whole), i + 1
}

// dozens: "a pair of", "half a dozen"; "a couple of" is no number, which ok tells too.
func (r *reader) dozens(i int) (n, next int, ok bool) {
	switch {
	case r.wordAt(i, "a") && r.wordAt(i+1, "couple") && r.wordAt(i+2, "of"):
		return 0, i, true
	case r.wordAt(i, "a") && r.wordAt(i+1, "pair") && r.wordAt(i+2, "of"):
		return 2, i + 3, true
	case r.wordAt(i, "half") && r.wordAt(i+1, "a") && r.wordAt(i+2, "dozen"):
		return 6, i + 3, true
	case r.wordAt(i, "half") && r.wordAt(i+1, "dozen"):
		return 6, i + 2, true
	case r.wordAt(i, "dozen") && (r.wordAt(i-1, "half") || r.wordAt(i-1, "a") && r.wordAt(i-2, "half")):
		return 0, i, true
	case r.wordAt(i, "dozen"):
		return 12, i + 1, true
	}
	return 0, i, false
}
