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
		switch {
		case k < 0 || j.topic == "" && !j.fixed:
			out = append(out, j)
		case j.was:
		case j.shape == pair && out[k].shape == pair && r.secondTaker(&out[k], &j):
			out = append(out, conflict(&out[k], j))
		case out[k].shape == ranged && j.shape == lone && j.parts[0].side != noSide && !j.fixed && !r.fixedBetween(&out[k], &j):
			out[k].last = j.last // "between 22 and 23 wide and 46 long"
		case r.wordAt(j.first-1, "or", "o") && j.why == "" && out[k].why == "":
			out[k].why, out[k].last = WhyRange, j.last
		case j.shape == pair && out[k].shape == pair && !j.fixed && !r.fixedBetween(&out[k], &j) && j.topic.OfSize() && !sameLengths(&out[k], &j):
			out = append(out, conflict(&out[k], j))
			r.betweenAsked(out[len(out)-1:])
			r.betweenAsked(out[k : k+1])
		case j.shape == lone && out[k].shape == pair && j.parts[0].side != height && j.parts[0].side != across && j.fixed:
			out[k].replaceSide(&j)
		case j.shape == lone && out[k].shape == lone && (sidesMeet(&out[k].parts[0], &j.parts[0]) || out[k].paired(&j)) && !(j.topic.OfSize() && r.acrossFrom(&out[k].parts[0], &j.parts[0])):
			out[k].parts = []quantity{out[k].parts[0], j.parts[0]}
			out[k].shape, out[k].last = pair, j.last
			if out[k].why == "" { // "25 1/2 exactly, the length I'm guessing 49"
				out[k].why = j.why
				out[k].half = j.why == WhyRough
			}
		case j.shape == lone && out[k].shape == lone && out[k].why == WhyRough && !j.fixed && r.wordsIn(out[k].last+1, j.first, "side", "end", "lado", "front") && r.wordsIn(out[k].last+1, j.first, "and", "y"):
			out[k].last, out[k].why = j.last, WhyRange // "about 4 on the high side and 6 on the low side"
		case j.fixed || r.fixedBetween(&out[k], &j) || out[k].why != "" && out[k].shape != broken || sameValue(r.value(&out[k]), r.value(&j)):
			out[k] = j
		default: // two measures of one thing: which of them holds is asked
			out[k].parts, out[k].shape, out[k].last = append(append([]quantity{}, out[k].parts...), j.parts...), broken, j.last
			out[k].why = WhyNumber
		}
	}
	return out
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
