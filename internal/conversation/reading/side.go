package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	notedVerbs  = wordsOf(`wrote written writing write put jotted marked got have took scribbled set me it them`)
	sideLinks   = wordsOf(`it its that thats is son es mide fue should`)
	sideMissing = wordsOf(`cant cannot couldnt havent didnt dont puedo pude falta later still need tomorrow luego
		forgot missing next manana despues tonight`)
	besideSideName = wordsOf(`for i we have got get the it la el del mi lo este esta`)
	sideVerbs      = wordsOf(`is was at of to be exactly measures about es son de mide miden tiene have has had should
		its a comes came come just says reads read measured gives gave makes runs ran shows goes da dio marca salio
		out around now still stays remains sigue`)
	sidePrepositions = wordsOf(`across along in on the to at de of en el it is its a por y for para`)
)

// nameSides gives each length the side that it is called by the words beside it:
// "25 wide", "W 25", "width is 25".
func (r *reader) nameSides(qs []quantity) {
	for n := range r.labels {
		h := &r.labels[n]
		name, ok := h.has("axis")
		if !ok || r.namesUnit(h) || name == "down" && r.among(h.first-1, notedVerbs) {
			continue // "he wrote down 33 5/8 and 57 5/8"
		}
		if r.wordAt(h.last, "right") && r.wordAt(h.last+1, "now") || name == "some" && r.wordAt(h.last+1, "came") {
			continue // "nobody called me back came out to 27 x 27"
		}
		q, reach := r.sideOf(qs, h)
		if q == nil || q.side != noSide && !(q.side == someSide) {
			continue
		}
		q.side = sideNames[name]
		if reach == after {
			q.last = max(q.last, h.last)
			if r.markAt(q.last+1, ')') {
				q.last++
			}
		} else {
			if !r.labelled(h.last+1, q.first-1) { // else the name between must be read too
				q.first = min(q.first, h.first)
			}
			if r.markAt(q.first-1, '(') && q.first > 0 {
				q.first--
			}
		}
	}
	r.compassSides(qs)
	r.sideBefore(qs)
	r.sideOfDenied(qs)
	r.sideTold(qs)
	tallSides(qs)
}

// sideBefore: "I only got the width before the rain. It is 33 1/2": the sentence before
// names the side of the only length that is told.
func (r *reader) sideBefore(qs []quantity) {
	if len(qs) == 0 || qs[0].side != noSide || len(qs) > 1 && (len(qs) > 2 || !r.wordsIn(qs[0].last+1, qs[1].first, "not", "no")) {
		return
	}
	from := r.sentenceFirst(qs[0].first)
	if from == 0 || !r.among(from, sideLinks) {
		return
	}
	before := r.sentenceFirst(from - 1)
	if r.anyOf(before, from, sideMissing) {
		return
	}
	found := noSide
	labels := within(r.labels, before, from-1)
	for n := range labels {
		name, ok := labels[n].has("axis")
		if !ok {
			continue
		}
		if s := sideNames[name]; found == noSide && (s == width || s == length) {
			found = s
		} else if s != found {
			return
		}
	}
	qs[0].side = found
}

// sideOfDenied: "the length wasn't 49, it was 49 1/4".
func (r *reader) sideOfDenied(qs []quantity) {
	if len(qs) != 2 || qs[0].side != noSide || qs[1].side != noSide ||
		!r.wordsIn(max(0, qs[0].first-3), qs[0].first, "not", "wasnt", "isnt", "no") ||
		!r.wordsIn(qs[0].last+1, qs[1].first, "its", "was", "is", "it", "era", "es", "sino", "but") {
		return
	}
	from := r.sentenceFirst(qs[0].first)
	labels := within(r.labels, from, qs[0].first-1)
	for n := range labels {
		if name, ok := labels[n].has("axis"); ok && (sideNames[name] == width || sideNames[name] == length) {
			qs[1].side = sideNames[name]
		}
	}
}

// namesUnit: the word names a kind of unit here, no side: "the other is 30x30".
func (r *reader) namesUnit(h *hit) bool {
	for k := range r.refs {
		if r.refs[k].first <= h.last && h.first <= r.refs[k].last {
			return true
		}
	}
	return false
}

// tallSides: beside a width, what is "high" or "tall" by more than a curb or a bulge
// would be is the length.
func tallSides(qs []quantity) {
	const tallest = 14 * fitcheck.Inch // of a curb, dossier of common practice: no source
	for i := range qs {
		if qs[i].side != height || qs[i].length() <= tallest {
			continue
		}
		if i > 0 && qs[i-1].side == width || i+1 < len(qs) && qs[i+1].side == width {
			qs[i].side = length
		}
	}
}

type reach uint8

const (
	nowhere reach = iota
	before
	after
)

// sideOf finds the length that a side's name belongs to: the one right before it,
// unless that has a name already or a comma stands between; else the one right after.
func (r *reader) sideOf(qs []quantity, h *hit) (*quantity, reach) {
	var left, right *quantity
	for i := range qs {
		if qs[i].last < h.first {
			left = &qs[i]
		} else if qs[i].first > h.last {
			right = &qs[i]
			break
		}
	}
	short := h.first == h.last && len(r.toks[h.first].text) == 1
	if right != nil && right.side == noSide && r.wordAt(h.first, "ht", "hgt", "height") && right.first == h.last+1 {
		return right, before // "25 x 49 ht 4"
	}
	if right != nil && right.side == noSide && right.first == h.last+1 && left != nil && r.by(left.first-1) &&
		r.wordAt(h.first, "h", "high") && !r.by(right.last+1) && !r.axisAt(right.last+1) {
		return right, before // "22 x 46 H 5"
	}
	if right != nil && right.side == noSide && left != nil && r.wordAt(left.last+1, "y", "and") && right.first == h.last+1 &&
		r.near(left.last+2, h.first-1, short, false) {
		return right, before // "49 y el ancho 25"
	}
	if left == nil && right != nil && right.side == noSide && len(qs) == 1 && r.markAt(right.first-1, ',') &&
		r.near(h.last+1, right.first-2, short, true) {
		return right, before // "just the width for now, 33"
	}
	// "you're right 48 long 24 wide": a side's own name counts more than "right" or "top".
	if next := right != nil && right.side == noSide && r.near(h.last+1, right.first-1, short, true); left != nil &&
		!(next && r.sentenceEnd(left.last)) && (left.side == noSide || left.side == someSide && !h.is("axis", "some")) &&
		r.near(left.last+1, h.first-1, short, false) {
		return left, after
	}
	if right != nil && right.side == noSide && r.near(h.last+1, right.first-1, short, true) {
		return right, before
	}
	return nil, nowhere
}

// near says whether only small words stand from one token to another: "is", "the",
// "on the"; after a name also a colon. A single letter must stand right beside.
func (r *reader) near(from, to int, short, forward bool) bool {
	for i := from; i <= to; i++ {
		t := &r.toks[i]
		switch {
		case t.mark('(') || t.mark(')'):
		case t.mark('-') && !forward && t.glued: // 25-wide
		case forward && !short && (t.mark(',') && r.wordAt(i+1, "which") || t.is("which")):
		case forward && (t.mark(':') || t.mark('=') || t.mark('-') || t.mark('~')):
		case short && forward && t.is("is", "es", "of"):
		case short:
			return false
		case forward && !short && r.labelAt[i] >= 0 && isName(&r.labels[r.labelAt[i]]):
		case forward && t.among(besideSideName):
		case forward && (t.among(sideVerbs)):
		case !forward && t.among(sidePrepositions):
			if t.is("y") && i > from {
				return false
			}
		case !forward &&
			(t.is("what") && r.wordAt(i-1, "is", "was", "thats") ||
				t.is("i", "we", "have", "got", "get", "measured") && r.wordsIn(from, i, "what")): // "50 5/8 is what I have for the long side"
		case r.roughAt(i):
		default:
			return false
		}
	}
	return true
}

func (r *reader) axisAt(i int) bool {
	return i < len(r.toks) && r.labelKind(i, "axis")
}

func (r *reader) roughAt(i int) bool {
	if r.labelAt[i] < 0 {
		return false
	}
	_, ok := r.labels[r.labelAt[i]].has("rough")
	return ok
}
