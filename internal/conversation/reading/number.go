package reading

var eightMisheard = wordsOf(`exactly square even including edge wide long both each round across`)

// tapeParts are the bottoms of fractions that a tape has, and thirds, which it has not.
func tapePart(d int64) bool {
	switch d {
	case 2, 4, 8, 16, 32, 64:
		return true
	}
	return false
}

// numeral is a number as written: num/den of some unit.
type numeral struct {
	num, den int64
	fine     int64 // the bottom of the finest part written: 25 8/16 is fine 16, 25.50 fine 100
	frac     bool  // written as a fraction of a tape
	words    bool  // written in words
	bad      bool  // can't be read
}

const maxWhole = 99_999 // larger numbers are no lengths

// numeralAt reads the number that starts at token i; next is the token after it.
func (r *reader) numeralAt(i int) (n numeral, next int) {
	if i < 0 || i >= len(r.toks) || r.toks[i].used {
		return n, i
	}
	t := &r.toks[i]
	if t.kind == numToken {
		if t.code || r.ordinalSuffix(i+1) {
			return n, i
		}
		if t.dec > 0 || t.bad {
			return r.decimal(i)
		}
		if t.whole > maxWhole {
			return n, i
		}
		if a, b, end, ok := r.slashed(i); ok {
			return fraction(a, b), end
		}
		if d, end, ok := r.spokenDecimal(t.whole, i+1); ok {
			return d, end
		}
		if r.toks[i].whole <= maxWhole && r.partAt(i+1) > 0 && !r.unitOrdinal(i+1) {
			if end := r.partEnd(i + 2); t.whole < r.partAt(i+1) {
				return fraction(t.whole, r.partAt(i+1)), end
			}
		}
		return r.withPart(numeral{num: t.whole, den: 1, fine: 1}, i+1)
	}
	if t.kind != wordToken {
		return n, i
	}
	return r.numeralInWords(i)
}

func (r *reader) numeralInWords(i int) (n numeral, next int) {
	if a, b, end, ok := r.spokenPart(i); ok { // "three quarters", "half an inch"
		n = fraction(a, b)
		n.words = true
		return n, end
	}
	v, next := r.cardinal(i)
	if next == i {
		return numeral{}, i
	}
	if n, end := r.misheard(v, next); end > next {
		return n, end
	}
	if d, end, ok := r.spokenDecimal(v, next); ok {
		return d, end
	}
	n, next = r.withPart(numeral{num: v, den: 1, fine: 1}, next)
	n.words = true
	return n, next
}

// misheard: a voice keyboard wrote "for", "to" or "ate" for the last digit: "twenty for
// inches", "thirty ate by forty". A "to" that ends the number may be the small word: the
// number can't be read then, rather than being the first half.
func (r *reader) misheard(tens int64, i int) (numeral, int) {
	ones := r.numberAt(i)
	if r.numberAt(i-1).kind != tensWord || ones.kind != soundsLike || ones.value > 9 || r.wordAt(i, "un", "una") {
		return numeral{}, i
	}
	heard := numeral{num: tens + ones.value, den: 1, fine: 1, words: true}
	if u := r.unitAt(i + 1); u != noUnit && !r.wordAt(i+1, "in", "m") {
		return heard, i + 1
	}
	if _, _, _, part := r.spokenPart(i + 2); part && r.wordAt(i+1, "and", "n") {
		n, next := r.withPart(heard, i+1)
		n.words = true
		return n, next
	}
	switch {
	case r.by(i+1) && r.numberAfter(i+2), r.wordAt(i+1, "between", "is", "was"), r.wordAt(i, "ate") &&
		!r.wordAt(i+1, "the", "a", "it"):
		return heard, i + 1
	case i+1 >= len(r.toks), r.toks[i+1].kind == markToken, r.unitAt(i+1) != noUnit,
		r.among(i+1, eightMisheard):
		heard.bad = !r.wordAt(i, "ate")
		return heard, i + 1
	}
	return numeral{}, i
}

func (r *reader) decimal(i int) (numeral, int) {
	t := &r.toks[i]
	n := numeral{num: t.whole, den: 1, fine: 1, bad: t.bad}
	for range t.dec {
		n.den *= 10
	}
	n.fine = n.den
	if r.markAt(i+1, '/') && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && r.toks[i+1].glued && r.toks[i+2].dec == 0 &&
		tapePart(r.toks[i+2].whole) {
		n.bad = true // 25.1/2
		return n, i + 3
	}
	return n, i + 1
}

// ordinalSuffix: "1st", "2nd": the letters of an ordinal glued to its digits.
func (r *reader) ordinalSuffix(i int) bool {
	return i < len(r.toks) && r.toks[i].glued && r.wordAt(i, "st", "nd", "rd", "th", "ro", "do", "er", "o", "a")
}

// unitOrdinal: a word that is more often an ordinal than a part ("third").
func (r *reader) unitOrdinal(i int) bool {
	return r.wordAt(i, "third", "fourth", "4th", "8th", "16th", "32nd")
}

// fraction is a/b where a tape could show it.
func fraction(a, b int64) numeral {
	if !tapePart(b) || a <= 0 || a >= b {
		return numeral{num: 0, den: 1, fine: 1, frac: true, bad: true}
	}
	return numeral{num: a, den: b, fine: b, frac: true}
}

// withPart adds the part of a mixed number: 25 1/2, 25-1/2, 25 and a half, 25 y medio.
func (r *reader) withPart(n numeral, i int) (numeral, int) {
	j := i
	joined := r.joiner(j)
	for joined && r.joiner(j) { // "twenty-five-and-a-half"
		j++
	}
	if r.wordAt(j, "something", "some", "few", "couple") && r.partAt(j+1) > 0 {
		n.bad = true // "22 and something sixteenths"
		return n, j + 2
	}
	if r.wordAt(i, "something", "odd") &&
		(r.unitAt(i+1) != noUnit || i+1 == len(r.toks) || r.toks[i+1].kind == markToken && !r.by(i+1)) {
		n.bad = true // "forty something inches"
		return n, i + 1
	}
	a, b, end, ok := r.slashed(j)
	if !ok {
		a, b, end, ok = r.spokenPart(j)
		if ok && !joined && a == 1 && b > 2 && end == j+1 {
			ok = false // "25 fourth" without "a": an ordinal
		}
		if ok && !joined && r.wordAt(j, "halves", "halfs", "quarters", "fourths", "eighths", "sixteenths") {
			n.bad = true // "26 halves"
			return n, end
		}
	}
	if ok {
		p := fraction(a, b)
		p.num += n.num * p.den
		return p, end
	}
	if bad := r.brokenPart(n, i); bad > i {
		n.bad = true
		return n, bad
	}
	return n, i
}

// joiner: what may stand between a whole number and its part.
func (r *reader) joiner(i int) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	return t.mark('-') || t.mark('&') || t.mark('+') || t.is("and", "y", "an", "n", "con", "in", "nd")
}

// slashed reads "1/2" or "1 / 2" or "5/8ths" at token i.
func (r *reader) slashed(i int) (a, b int64, next int, ok bool) {
	if i+2 >= len(r.toks) || r.toks[i].kind != numToken || r.toks[i].dec > 0 || r.toks[i].used || !r.toks[i+1].mark('/') {
		return 0, 0, i, false
	}
	bottom := &r.toks[i+2]
	if bottom.kind != numToken || bottom.dec > 0 {
		return 0, 0, i, false
	}
	if !(r.toks[i+1].glued && bottom.glued) && !(r.toks[i].whole < bottom.whole && tapePart(bottom.whole)) {
		return 0, 0, i, false // "25 / 49"
	}
	next = i + 3
	if r.wordAt(next, "ths", "th", "thsin") || r.wordAt(next, "rds", "nds", "nd", "s") && r.toks[next].glued {
		next++
	}
	return r.toks[i].whole, bottom.whole, next, true
}

// spokenPart reads a part in words at token i: "a half", "half", "three quarters",
// "5 eighths", "un cuarto".
func (r *reader) spokenPart(i int) (a, b int64, next int, ok bool) {
	if r.wordAt(i, "a", "an") && r.markAt(i+1, '-') && r.partAt(i+2) > 0 {
		i++
		return 1, r.partAt(i + 1), r.partEnd(i + 2), true
	}
	if r.wordAt(i, "a", "an", "one", "un", "una") && r.partAt(i+1) > 0 && !(r.wordAt(i+1, "third", "4th") && r.wordAt(i, "one")) {
		return 1, r.partAt(i + 1), r.partEnd(i + 2), true
	}
	if r.wordAt(i, "half") && r.wordAt(i+1, "are", "were", "is", "the", "have", "dont") {
		return 0, 0, i, false // "it has 12 screws and half are rusted"
	}
	if p := r.partAt(i); p > 0 && !r.unitOrdinal(i) && !r.wordAt(i, "mitad", "eights") {
		return 1, p, r.partEnd(i + 1), true
	}
	if i+2 < len(r.toks) && r.toks[i].kind == numToken && r.toks[i].dec == 0 && r.toks[i+1].kind == numToken &&
		tapePart(r.toks[i+1].whole) && r.wordAt(i+2, "th", "ths") && r.toks[i+2].glued {
		return r.toks[i].whole, r.toks[i+1].whole, i + 3, true // "5 8ths"
	}
	if w := r.wholeAt(i); w > 0 {
		j := i + 1
		if r.markAt(j, '-') {
			j++
		}
		if r.wordAt(j, "of") && r.wordAt(j+1, "the", "those", "them") {
			j += 2 // "3 of the sixteenths"
		}
		if p := r.partAt(j); p > w {
			return w, p, r.partEnd(j + 1), true
		}
	}
	return 0, 0, i, false
}

// partEnd skips "of", "of an", "an" before the unit: "half of an inch", "half a foot".
func (r *reader) partEnd(i int) int {
	j := i
	if r.wordAt(j, "of", "de") {
		j++
	}
	if r.wordAt(j, "a", "an", "un", "una") {
		j++
	}
	if j > i && r.unitAt(j) != noUnit {
		return j
	}
	return i
}

func (r *reader) partAt(i int) int64 {
	if n := r.numberAt(i); n.kind == partWord {
		return n.value
	}
	return 0
}

// brokenPart finds the rest of a mixed number that nobody can read: "25 /2", "25 1/".
// It gives the token after it, i where there is none.
func (r *reader) brokenPart(n numeral, i int) int {
	if n.words || i >= len(r.toks) {
		return i
	}
	if r.markAt(i, '/') && !r.toks[i].glued && i+1 < len(r.toks) && r.toks[i+1].kind == numToken && r.toks[i+1].glued {
		return i + 2
	}
	if r.toks[i].kind == numToken && r.toks[i].dec == 0 && r.markAt(i+1, '/') && r.toks[i+1].glued &&
		(i+2 >= len(r.toks) || r.toks[i+2].kind != numToken) {
		if r.markAt(i+2, '/') && r.toks[i+2].glued && i+3 < len(r.toks) && r.toks[i+3].kind == numToken && r.toks[i+3].glued {
			return i + 4 // 25 1//2
		}
		return i + 2
	}
	if r.markAt(i, '.') && r.toks[i].glued || r.markAt(i, '?') && r.toks[i].glued {
		if _, _, next, ok := r.slashed(i + 1); ok && r.toks[i+1].from == r.toks[i].to {
			return next
		}
	}
	if r.markAt(i, '?') && r.toks[i].glued && i+1 < len(r.toks) && r.toks[i+1].kind == numToken && r.toks[i+1].glued {
		if _, _, next, ok := r.slashed(i + 1); ok {
			return next
		}
		return i + 2
	}
	return i
}
