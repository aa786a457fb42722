package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	clauseJoins     = wordsOf(`and but y pero while then also plus e whereas mientras`)
	namedLinks      = wordsOf(`el la the is es for de of what lo que`)
	beforePlaceName = wordsOf(`on of the my de del el la mi`)
)

// context is what the words around a measure say of it.
type context struct {
	topic   fitcheck.Topic // named outright: "rough opening"
	part    string         // curb, retainer, frame, flange, plastic, dome, bulge, opening, skylight
	face    string         // inside, outside, edge, clear
	thing   bool           // of something that is measured, but not for a part: how thick it is
	other   bool           // of something that is not measured for a part
	rough   bool           // said to be a guess
	half    bool           // that is said of the second side alone
	nominal bool           // called a standard or nominal size
	named   bool           // a name stands right beside it
	drop    bool           // "not 25", "instead of 25"
	was     bool           // what it used to be
	fixed   bool           // a word of correction comes before it
	square  bool
	round   bool
	girth   bool // measured around
	radius  bool // half of a diameter
	diag    bool
	both    bool
	slope   bool
	either  bool   // of one of two sizes that were asked for
	where   bool   // labels were found at all
	from    int    // token at which its own words start
	shaped  [2]int // first and last token of the words that tell its shape, {-1, -1} for none
	units   []int  // kinds of unit, empty where the message names none
}

// describe gives every measure what the words before and after it say.
func (r *reader) describe(ms []measure) {
	left, right := r.shares(ms)
	after := r.allNamedAfter(ms)
	for k := range ms {
		own := max(left[k][0], r.sentenceFirst(ms[k].first))
		if after || r.namedRightAfter(&ms[k]) {
			own = max(own, r.clauseStart(ms[k].first)) // "metal frame, 49 1/2 x 49 1/2 the plastic"
		}
		r.wordsBefore(&ms[k], [2]int{own, left[k][1]})
		r.wordsAfter(&ms[k], right[k])
		if !ms[k].where && own > left[k][0] {
			r.wordsBefore(&ms[k], [2]int{left[k][0], own - 1})
		}
		r.beside(&ms[k])
		r.sameSide(&ms[k])
		if ms[k].units = r.refRightAfter(ms[k].last); ms[k].units == nil {
			ms[k].units = r.unitsAt(ms[k].first, ms[k].last)
		}
		ms[k].from = left[k][0]
	}
	r.notThis(ms)
	r.wroteThen(ms)
	r.moreDiagonals(ms)
	r.lineTopics(ms)
	r.orderedTold(ms)
	r.firstOfTwo(ms)
	r.roundAll(ms)
	r.squareAll(ms)
	r.equalBothWays(ms)
	r.eachInTurn(ms)
	r.inherit(ms)
	r.askedTogether(ms)
}

// shares are the first and the last token of the words before and after each measure that are its own.
func (r *reader) shares(ms []measure) (left, right [][2]int) {
	left, right = make([][2]int, len(ms)), make([][2]int, len(ms))
	from := 0
	for k := range ms {
		if k > 0 {
			from = r.cut(ms, k)
			right[k-1] = [2]int{ms[k-1].last + 1, from - 1}
		}
		left[k] = [2]int{from, ms[k].first - 1}
	}
	last := len(ms) - 1
	right[last] = [2]int{ms[last].last + 1, len(r.toks) - 1}
	return left, right
}

// allNamedAfter: "25 1/2 x 25 1/2 plastic, 22 x 22 opening": each of several sizes has its name
// right after it, and none before it in its clause.
func (r *reader) allNamedAfter(ms []measure) bool {
	for k := range ms {
		m := &ms[k]
		h := r.labelFrom(m.last + 1)
		if m.shape != pair || h == nil || !isName(h) || r.labelled(r.clauseStart(m.first), m.first-1) {
			return false
		}
		if k+1 < len(ms) && r.labelled(h.last+1, ms[k+1].first-1) {
			return false
		}
	}
	return len(ms) > 1
}

// namedRightAfter: what it is of stands right after the measure, and nothing of the
// kind before it in its own clause.
func (r *reader) namedRightAfter(m *measure) bool {
	if r.faceAndTopicAfter(m) {
		return true
	}
	if m.shape == lone || r.labelled(r.clauseStart(m.first), m.first-1) {
		return false
	}
	i := m.last + 1
	for r.among(i, namedLinks) {
		i++
	}
	h := r.labelFrom(i)
	if h == nil || h.first == h.last && r.domeNamed(r.sentenceFirst(m.first), m.first) {
		return false
	}
	if h.has1("face") {
		for i = h.last + 1; r.labelFrom(i) == nil && r.among(i, beforePlaceName); {
			i++
		}
		p := r.labelFrom(i)
		if p != nil && (p.is("part", "plastic") || p.is("part", "curb") && !h.is("face", "edge")) {
			return true // "38 x 49 1/4 lip to lip on the plastic", "49 x 49 por fuera de la base"
		}
	}
	s := h.senses[0]
	return (s.kind == "topic" || s.kind == "part" && s.value == "plastic") && i <= r.clauseEnd(m.last)
}

// faceAndTopicAfter: "stuck to the plastic, 24 both ways outside, over the flashing".
func (r *reader) faceAndTopicAfter(m *measure) bool {
	h := r.labelFrom(m.last + 1)
	if h != nil && h.senses[0].kind == "shape" {
		h = r.labelFrom(h.last + 1)
	}
	if h == nil || h.senses[0].kind != "face" || !r.markAt(h.last+1, ',') || r.labelled(r.clauseStart(m.first), m.first-1) {
		return false
	}
	t := r.labelFrom(h.last + 2)
	return t != nil && t.senses[0].kind == "topic"
}

// cut decides where the words between two measures part: those before it speak of
// the first, those from it on of the second.
func (r *reader) cut(ms []measure, k int) int {
	from, to := ms[k-1].last+1, ms[k].first
	if ref := r.listedBetween(from, to); ref != nil {
		return ref.first // "the curb is 33 x 49 outside to outside second kind: 11 of them …"
	}
	if to-from > 2 && r.wordAt(to-1, "not", "no") && r.labelled(from, to-2) {
		return to - 1 // "the curb is 25 3/4 wide on the outside not 25 1/2"
	}
	if end := r.parenthesis(from, to); end > 0 {
		return end
	}
	comma, lastComma := -1, -1
	for i := from; i < to; i++ {
		if r.sentenceEnd(i) {
			return i + 1
		}
		if r.softBreak(i) && !r.withinLabel(i) {
			if lastComma = i; comma < 0 {
				comma = i
			}
		}
	}
	if comma >= 0 {
		if lastComma > comma && r.cutsAtLast(&ms[k-1], &ms[k], comma, lastComma) {
			return lastComma
		}
		return comma
	}
	if second := r.secondName(&ms[k-1], &ms[k]); second >= 0 {
		return second
	}
	if r.labelled(r.clauseStart(ms[k-1].first), ms[k-1].first) || ms[k-1].first == from {
		return from
	}
	if k == len(ms)-1 && r.labelled(ms[k].last+1, r.clauseEnd(ms[k].last)) {
		return to
	}
	return from
}

// listedBetween is a kind that a colon sets off between two tokens; nil where there is none.
func (r *reader) listedBetween(from, to int) *unitRef {
	for n := range r.refs {
		ref := &r.refs[n]
		if ref.first > from && ref.last < to && (r.markAt(ref.last+1, ':') || r.markAt(ref.last, ':')) {
			return ref
		}
	}
	return nil
}

// cutsAtLast: what stands between the first and the last comma is of the first measure.
func (r *reader) cutsAtLast(a, b *measure, comma, last int) bool {
	if r.markAt(b.first-1, ':') && r.labelled(last, b.first-1) {
		return true // "24 both ways outside, over the flashing, inside: 22 1/2"
	}
	if !r.labelled(comma, last) {
		return false
	}
	if r.faceAndTopicAfter(a) {
		return true // "855 by 1192 mm outside, over the flashing, 775 x 1111 inside"
	}
	// "49 1/2 across, over the flashing, from indoors 46 1/2 between the wood"
	return !r.labelled(r.clauseStart(a.first), comma) &&
		(r.labelled(last, b.first-1) || r.labelled(b.last+1, r.clauseEnd(b.last)))
}

// parenthesis: "25 x 49 (plastic edge to edge), opening 22 x 46": what stands in brackets right
// after a measure is of that one, where another name follows. 0 where it is not so.
func (r *reader) parenthesis(from, to int) int {
	if !r.markAt(from, '(') {
		return 0
	}
	for i := from + 1; i < to; i++ {
		if r.markAt(i, ')') && r.labelled(from+1, i-1) && r.labelled(i+1, to-1) {
			return i + 1
		}
	}
	return 0
}

// softBreak: a comma or a word that starts a new clause.
func (r *reader) softBreak(i int) bool {
	return i >= 0 && i < len(r.toks) && r.breaksClause(i)
}

func (r *reader) breaksClause(i int) bool {
	t := &r.toks[i]
	if t.kind == wordToken {
		return clauseJoins.has(t.text)
	}
	return t.mark(',') || t.mark('(') || t.mark(')') || t.mark('-') && !t.glued || t.mark('/') || t.mark('&')
}

// labelled says whether a part, a face or a topic is named between two tokens.
func (r *reader) labelled(from, to int) bool {
	for i := from; i <= to && i < len(r.toks); i++ {
		if h := r.labelFrom(i); h != nil && isName(h) {
			return true
		}
	}
	return false
}

func isName(h *hit) bool {
	switch h.senses[0].kind {
	case "part", "face", "topic":
		return true
	}
	return false
}

// partOfStyle: the part belongs to what the skylight is like: "metal frame on a wood box. It is …".
func (r *reader) partOfStyle(h *hit) bool {
	return !h.is("part", "plastic") && slices.ContainsFunc(r.styles, func(s hit) bool {
		tells := s.senses[0].topic == fitcheck.TopicStyle && s.senses[0].value != "?"
		return tells && s.first <= h.first && h.last <= s.last && s.last > s.first
	})
}

func (r *reader) softBetween(from, to int) bool {
	for i := from; i < to; i++ {
		if r.softBreak(i) || r.sentenceEnd(i) {
			return true
		}
	}
	return false
}
