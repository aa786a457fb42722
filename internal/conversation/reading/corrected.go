package reading

import (
	"fmt"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	triedAgainOrder = wordsOf(`second 2nd third 3rd segunda tercera`)
	correctedTold   = wordsOf(`said thought wrote told gave sent had dije`)
	triedAgainWords = wordsOf(`not no sorry actually wait instead again remeasured redid retook rechecked
		checked wrong now`)
)

// corrected leaves out what a later measure of the same thing replaces.
func (r *reader) corrected(all []judged) []judged {
	var out []judged
	for _, j := range all {
		k := lastOf(out, &j)
		if r.triedAgain(&j) {
			j.was, j.fixed = false, true
		}
		if k < 0 || j.topic == "" && !j.fixed {
			out = append(out, j)
		} else if !j.was {
			out = r.correctedBy(out, k, j)
		}
	}
	return out
}

// correctedBy joins a measure with an earlier one of the same thing, replaces it, or asks which holds.
func (r *reader) correctedBy(out []judged, k int, j judged) []judged {
	old := &out[k]
	pairs, lones := j.shape == pair && old.shape == pair, j.shape == lone && old.shape == lone
	fixed := j.fixed || r.fixedBetween(old, &j)
	switch {
	case pairs && r.secondTaker(old, &j):
		return append(out, conflict(old, j))
	case old.shape == ranged && j.shape == lone && j.parts[0].side != noSide && !fixed:
		old.last = j.last // "between 22 and 23 wide and 46 long"
	case r.wordAt(j.first-1, "or", "o") && j.why == "" && old.why == "":
		old.why, old.last = WhyRange, j.last
	case pairs && !fixed && j.topic.OfSize() && !sameLengths(old, &j):
		out = append(out, conflict(old, j))
		r.betweenAsked(out[len(out)-1:])
		r.betweenAsked(out[k : k+1])
	case j.shape == lone && old.shape == pair && j.parts[0].side != height && j.parts[0].side != across && j.fixed:
		old.replaceSide(&j)
	case lones && r.twoSides(old, &j):
		old.joinSide(&j)
	case lones && !j.fixed && r.guessedSides(old, &j):
		old.last, old.why = j.last, WhyRange
	case fixed || old.why != "" && old.shape != broken || sameValue(r.value(old), r.value(&j)):
		*old = j
	default: // two measures of one thing: which of them holds is asked
		old.parts = append(append([]quantity{}, old.parts...), j.parts...)
		old.shape, old.last, old.why = broken, j.last, WhyNumber
	}
	return out
}

// twoSides: two single lengths are the sides of one size, or two diagonals.
func (r *reader) twoSides(a, b *judged) bool {
	return (sidesMeet(&a.parts[0], &b.parts[0]) || a.paired(b)) &&
		!(b.topic.OfSize() && r.acrossFrom(&a.parts[0], &b.parts[0]))
}

// joinSide makes one size of two single lengths: "25 1/2 exactly, the length I'm guessing 49".
func (j *judged) joinSide(b *judged) {
	j.parts = []quantity{j.parts[0], b.parts[0]}
	j.shape, j.last = pair, b.last
	if j.why == "" {
		j.why = b.why
		j.half = b.why == WhyRough
	}
}

// guessedSides: "about 4 on the high side and 6 on the low side".
func (r *reader) guessedSides(a, b *judged) bool {
	return a.why == WhyRough && r.wordsIn(a.last+1, b.first, "side", "end", "lado", "front") &&
		r.wordsIn(a.last+1, b.first, "and", "y")
}

// triedAgain: "the second time it was 37 3/4 by 49 3/4": the later try counts.
func (r *reader) triedAgain(j *judged) bool {
	from := r.sentenceFirst(j.first)
	return r.anyOf(from, j.first, triedAgainOrder) && r.wordsIn(from, j.first, "time", "try", "attempt", "vez", "intento")
}

// conflict: of two sizes of one thing, that which names what it is of stands; where
// both or neither do, it is asked which holds. A guess stays one.
func conflict(a *judged, b judged) judged {
	if (!a.where || b.where) && a.why == "" {
		a.why, a.topic = WhyWhich, ""
	}
	if b.why == "" {
		b.why, b.topic = WhyWhich, ""
	}
	return b
}

// betweenAsked: a size that can't be told which it is of the two that were asked for.
func (r *reader) betweenAsked(js []judged) {
	for k := range js {
		if js[k].why == WhyWhich && r.askedTwoSizes() {
			js[k].candidates = r.Asked
		}
	}
}

func sameValue(a, b fitcheck.Value) bool { return fmt.Sprint(a) == fmt.Sprint(b) }

// fixedBetween: the measure before is taken back or what it was before.
func (r *reader) fixedBetween(a, b *judged) bool {
	return a.was || r.anyOf(max(0, a.first-5), a.first, correctedTold) ||
		r.anyOf(a.last+1, b.first, triedAgainWords)
}

func sameLengths(a, b *judged) bool {
	for k := range a.parts {
		if a.parts[k].length() != b.parts[k].length() {
			return false
		}
	}
	return true
}

// paired: two diagonals, or two numbers called one way and the other.
func (j *judged) paired(k *judged) bool {
	a, b := j.parts[0].side, k.parts[0].side
	if j.topic.OfSize() && !k.fixed && (a == noSide && (b == width || b == length) || b == noSide && (a == width || a == length)) {
		return true
	}
	return !k.fixed && (j.topic == fitcheck.TopicCurbDiagonals || a == someSide && b == someSide)
}

func sidesMeet(a, b *quantity) bool {
	return a.side == width && b.side == length || a.side == length && b.side == width
}

func lastOf(all []judged, j *judged) int {
	for k := len(all) - 1; k >= 0; k-- {
		if all[k].topic == j.topic && slices.Equal(all[k].units, j.units) {
			return k
		}
	}
	return -1
}

// otherSide: one part of the pair is called by the other side: "24 1/2 wide by 36, no wait,
// 38 inches long".
func (j *judged) otherSide(s side) bool {
	for k := range j.parts {
		if a := j.parts[k].side; s == width && a == length || s == length && a == width {
			return j.parts[1-k].side == noSide
		}
	}
	return false
}

// replaceSide: "25 1/2 x 49 1/2, sorry 49 3/4" corrects the side that it is nearer to, "25 wide by
// 30, sorry 26 long" the one that has no name.
func (j *judged) replaceSide(with *judged) {
	parts := append([]quantity{}, j.parts...)
	l := with.parts[0].length()
	if s := with.parts[0].side; s != noSide && (parts[0].side == s || parts[1].side == s) {
		same := 0
		if parts[1].side == s {
			same = 1
		}
		parts[same] = with.parts[0] // "25 wide by 49 long, no wait, the width is 26"
	} else if j.otherSide(s) {
		unnamed := 0
		if parts[0].side != noSide {
			unnamed = 1
		}
		parts[unnamed] = with.parts[0]
	} else if abs(parts[0].length()-l) < abs(parts[1].length()-l) {
		parts[0] = with.parts[0]
	} else {
		parts[1] = with.parts[0]
	}
	j.parts, j.last = parts, with.last
}

// domeNamed: a dome is spoken of between two tokens, so "the plastic" may be it.
func (r *reader) domeNamed(from, to int) bool {
	hits := within(r.labels, from, to)
	for n := range hits {
		if hits[n].is("part", "dome") || hits[n].is("part", "skylight") {
			return true
		}
	}
	return false
}

func abs(l fitcheck.Length) fitcheck.Length { return max(l, -l) }
