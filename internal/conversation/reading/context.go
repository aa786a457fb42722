package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	namedLinks      = wordsOf(`el la the is es for de of what lo que`)
	beforePlaceName = wordsOf(`on of the my de del el la mi`)
	contextHalts    = wordsOf(`no wait hang hold on sorry oops actually espere perdon`)
	contextPointers = wordsOf(`that thats this those these theyre its it is all both eso esa esas es son
		estas`)
	theOrMine     = wordsOf(`the my our el la los mi las`)
	saysOfItVerbs = wordsOf(`is are was looks look has have seems s got esta estan se tiene`)
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
	left := make([][2]int, len(ms)) // tokens of each one's words before
	right := make([][2]int, len(ms))
	for k := range ms {
		if k == 0 {
			left[k] = [2]int{0, ms[k].first - 1}
		} else {
			cut := r.cut(ms, k)
			right[k-1] = [2]int{ms[k-1].last + 1, cut - 1}
			left[k] = [2]int{cut, ms[k].first - 1}
		}
	}
	last := len(ms) - 1
	right[last] = [2]int{ms[last].last + 1, len(r.toks) - 1}
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
	if h.has1("face") && m.shape != lone { // "38 x 49 1/4 lip to lip on the plastic", "49 x 49 por fuera de la base"
		for i = h.last + 1; r.labelFrom(i) == nil && r.among(i, beforePlaceName); i++ {
		}
		if p := r.labelFrom(i); p != nil && (p.is("part", "plastic") || p.is("part", "curb") && !h.is("face", "edge")) {
			return true
		}
	}
	return (h.senses[0].kind == "topic" || h.senses[0].kind == "part" && h.senses[0].value == "plastic") && i <= r.clauseEnd(m.last)
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
	for n := range r.refs {
		if ref := &r.refs[n]; ref.first > from && ref.last < to && (r.markAt(ref.last+1, ':') || r.markAt(ref.last, ':')) {
			return ref.first // "the curb is 33 x 49 outside to outside second kind: 11 of them …"
		}
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
		if lastComma > comma && r.faceAndTopicAfter(&ms[k-1]) && r.labelled(comma, lastComma) {
			return lastComma // "855 by 1192 mm outside, over the flashing, 775 x 1111 inside"
		}
		if lastComma > comma && r.markAt(to-1, ':') && r.labelled(lastComma, to-1) {
			return lastComma // "24 both ways outside, over the flashing, inside: 22 1/2"
		}
		if lastComma > comma && !r.labelled(r.clauseStart(ms[k-1].first), comma) && r.labelled(comma, lastComma) &&
			(r.labelled(lastComma, to-1) || r.labelled(ms[k].last+1, r.clauseEnd(ms[k].last))) {
			return lastComma // "49 1/2 across, over the flashing, from indoors 46 1/2 between the wood"
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
	return t.mark(',') || t.mark('(') || t.mark(')') || t.is("and", "but", "y", "pero", "while", "then", "also", "plus", "e", "whereas", "mientras") ||
		t.mark('-') && !t.glued || t.mark('/') || t.mark('&')
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
		return s.first <= h.first && h.last <= s.last && s.last > s.first && s.senses[0].topic == fitcheck.TopicStyle && s.senses[0].value != "?"
	})
}

// wordsBefore reads the labels before a measure, the nearest first. Those of earlier
// sentences count only where its own has none.
func (r *reader) wordsBefore(m *measure, region [2]int) {
	own, _ := r.sentence(m.first)
	named := own // the sentence that says what the measure is of
	for i := region[1]; i >= region[0]; i-- {
		if (r.wordAt(i, "came") && r.wordAt(i+1, "out") && r.wordAt(i+2, "to") || r.wordAt(i, "tape") && r.wordAt(i+1, "says")) && r.otherTold(r.sentenceFirst(i), i) {
			return // "it's been up there 20 years at least came out to 16 x 15"
		}
		if r.labelAt[i] < 0 {
			continue
		}
		h := &r.labels[r.labelAt[i]]
		i = h.first
		if h.first < own && r.wordsIn(own, m.first, "asked", "pregunto", "pidio") && r.wordsIn(own, m.first, "height", "altura", "size", "medida") {
			return // "The outside was right. As for the height you asked about, it is 6 inches"
		}
		if r.differenceBetween(h.first) {
			return // "what's the difference between acrylic and polycarbonate 30 x 46"
		}
		if r.bearsSkylight(h) || r.standsBy(h) || r.cappedOver(h) || r.cantBeHad(h, h.last+1, m.first) || r.onlyTold(h) && r.softBetween(h.last+1, m.first) {
			continue
		}
		if h.has1("face") && h.last+1 < len(r.toks) && r.toks[h.last+1].named {
			continue // "a barn outside Burlington"
		}
		if h.first < own && m.where && h.first >= named && !h.has1("face") {
			continue // of what is named only the face may still be told: "the outside length for the curb"
		}
		if h.first < own && (m.where && h.first < named || r.denied(h.first) && !r.toldWrong(h.first, own) || r.endsAsked(h.first) || r.harmedPart(h) || r.partOfStyle(h)) {
			if m.where {
				return
			}
			continue
		}
		r.takeBefore(m, h, h.first >= own)
		if m.where && named == own {
			named = min(own, r.sentenceFirst(h.first))
		}
	}
}

// wordsAfter reads the labels after a measure up to the end of its sentence; where it
// has none at all, also those of the next: "25 x 49. That's the outside of the curb."
func (r *reader) wordsAfter(m *measure, region [2]int) {
	_, end := r.sentence(m.last)
	if r.sentenceEnd(m.last) {
		end = m.last
	}
	for i := region[0]; i <= region[1] && i <= end; i++ {
		if r.toks[i].used && r.toks[i].kind == numToken {
			break // a slope or a count: what follows is of that
		}
		if r.asksFrom(i) || r.markAt(i, ',') && (m.face != "" && r.markAt(m.first-1, ':') || r.turnsAway(i+1)) {
			break // "116,8 cm por 116,8 cm, ¿qué diferencia hay entre acrílico y …", "inside: 46 x 46, single layer plastic"
		}
		if h := r.labelFrom(i); h != nil {
			if r.ownStatement(m.last+1, h) || r.materialChosen(m, h) || r.cantBeHad(h, m.last+1, h.first) || r.onlyTold(h) && r.softBetween(m.last+1, h.first) {
				break
			}
			r.takeAfter(m, h)
			i = h.last
		}
	}
	m.rough = m.rough || r.doubtedNext(end+1)
	if end+1 > region[1] || m.where && !r.namedLater(m, end+1) {
		return
	}
	i := end + 1
	for i < region[1] && (r.among(i, contextHalts) || r.markAt(i, ',')) {
		i++ // "50 by 26. No hang on, that's the plastic"
	}
	if r.among(i, contextPointers) || r.labelFrom(i) != nil {
		_, end = r.sentence(i)
		if r.denied(i) || r.labelFrom(i) != nil && r.tellsState(i, end) {
			return
		}
		alone := m.shape == lone && r.labelsOnly(i) // "51 1/2. Both ways"
		for ; i <= end && i <= region[1]; i++ {
			if h := r.labelFrom(i); h != nil && isName(h) && !r.materialChosen(m, h) {
				r.takeName(m, h, h.senses[0], false)
			} else if h != nil && alone && h.senses[0].kind == "shape" {
				m.takeShape(h.senses[0].value)
			}
		}
	}
}

// ownStatement: a new clause says what a part is like: "33 by 57 and the frame is rusty".
func (r *reader) ownStatement(from int, h *hit) bool {
	return isName(h) && r.softBetween(from, h.first) && r.anyOf(max(from, h.first-2), h.first, theOrMine) &&
		r.among(h.last+1, saysOfItVerbs) && r.tellsState(h.first, r.clauseEnd(h.last))
}

// tellsState: the sentence says what a part is like: "33 1/2 by 57 1/2. The frame has old
// caulk all over it".
func (r *reader) tellsState(from, to int) bool {
	hits := within(r.choices, from, to)
	for n := range hits {
		if hits[n].has1(string(fitcheck.TopicFrameCondition)) || hits[n].has1(string(fitcheck.TopicProblem)) {
			return true
		}
	}
	return false
}

// turnsAway: after the comma at i-1 the layers are told, whatever they are of: "from
// inside, single layer plastic".
func (r *reader) turnsAway(i int) bool {
	labels := within(r.labels, i, r.sentenceLast(i))
	for n := range labels {
		if k := labels[n].senses[0].kind; k == "face" || k == "topic" {
			return false
		}
	}
	hits := within(r.choices, i, i+1)
	for n := range hits {
		if hits[n].has1(string(fitcheck.TopicLayers)) && !hits[n].senses[0].asked {
			return true
		}
	}
	return false
}

// asksFrom: a question opens a clause at the token.
func (r *reader) asksFrom(i int) bool {
	talk := within(r.talk, i, i)
	return len(talk) > 0 && talk[0].is("req", "question") && (r.softBreak(i-1) || r.wordAt(i, "whats", "how", "why")) && r.asks(&talk[0])
}

func (r *reader) softBetween(from, to int) bool {
	for i := from; i < to; i++ {
		if r.softBreak(i) || r.sentenceEnd(i) {
			return true
		}
	}
	return false
}
