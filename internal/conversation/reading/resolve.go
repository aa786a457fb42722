package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// inherit lets a measure that names only a face take the part of the one before it,
// or of the whole message: "OD of the curb 25 x 49, ID 22 x 46".
func (r *reader) inherit(ms []measure) {
	part := ""
	for k := range ms {
		m := &ms[k]
		if k > 0 && !m.where && m.topic == "" && len(m.units) > 0 && len(ms[k-1].units) > 0 && !slices.Equal(m.units, ms[k-1].units) &&
			m.shape != lone {
			from := likeOfKind(ms, k)
			m.topic, m.part, m.face = from.topic, from.part, from.face // "outside is 24 x 48 on the first and 30 x 30 on the second"
		}
		if len(ms) == 2 && k == 1 && r.otherWay(&ms[0], m) {
			ms[0].parts[0].side = someSide
			m.topic, m.part, m.face = ms[k-1].topic, ms[k-1].part, ms[k-1].face // "22 1/2 between the rafters and 46 1/2 the other way"
		}
		if m.part == "" && m.topic == "" && m.face != "" && part != "" {
			m.part = part
		}
		if m.part == "opening" && m.face == "" && m.topic == "" && part == "retainer" &&
			(r.wordAt(m.first-1, "it") || r.wordAt(m.first-2, "it")) {
			m.part, m.face = part, "clear" // "outside of the retaining frame 26 x 50, opening of it 24 x 48"
		}
		if k > 0 && r.openingOfRetainer(&ms[k-1], m) {
			m.part, m.face = "retainer", "clear"
		}
		if m.part == "frame" && m.face == "outside" && part == "retainer" &&
			!r.wordsIn(r.clauseStart(m.first), m.first, "old", "existing", "other", "wood", "viejo") {
			m.part = part // "opening of the retaining frame is 21 x 45, outside of the same frame 24 x 48"
		}
		switch {
		case m.topic != "":
			part = partOf(m.topic)
		case m.part != "":
			part = m.part
		}
	}
	if whole := r.measuredPart(); whole != "" {
		for k := range ms {
			if m := &ms[k]; m.part == "" && m.topic == "" && m.face != "" && !ofOtherKind(ms, m, whole) &&
				!(m.face == "edge" && (whole == "frame" || whole == "bulge") && r.asked(fitcheck.TopicPlasticSize)) {
				m.part = whole
			}
		}
	}
	r.allOf(ms)
	r.insideAndOutside(ms)
}

// likeOfKind is the size of the kind before that stands there where a size does among its own: the
// first of both in "kitchen 25 x 25 opening 23 x 23, bath 17 x 25 opening 15 x 23".
func likeOfKind(ms []measure, k int) *measure {
	start := func(k int) int {
		for k > 0 && slices.Equal(ms[k-1].units, ms[k].units) {
			k--
		}
		return k
	}
	own := start(k)
	return &ms[min(start(own-1)+k-own, own-1)]
}

// ofOtherKind: the part is named with a size of another kind, or the plastic with a size of its own:
// "bath 25 x 25 outside, porch plastic 25 x 49".
func ofOtherKind(ms []measure, m *measure, part string) bool {
	other := false
	for k := range ms {
		o := &ms[k]
		switch {
		case o.part != part:
		case slices.Equal(o.units, m.units) && (len(m.units) > 0 || part != "plastic" || o.shape != m.shape):
			return false
		default:
			other = true
		}
	}
	return other
}

// allOf: "25 x 49, 30 x 30, all outside of the curb": the words after the last size
// hold for all before it that say nothing of their own.
func (r *reader) allOf(ms []measure) {
	last := &ms[len(ms)-1]
	if len(ms) < 2 || !last.where {
		return
	}
	i := last.last + 1
	for i < len(r.toks) && r.toks[i].kind == markToken {
		i++
	}
	those := r.thoseAfter(i)
	i = max(i, those)
	plural := those > 0 || r.wordAt(i, "these", "those", "they", "theyre", "son", "estas", "esas") && r.breakBetween(last.last, i)
	if r.wordAt(i, "these", "those", "they", "theyre", "son", "estas", "esas") {
		i++
	}
	if r.wordAt(i, "are", "were", "re") {
		i++
	}
	if r.wordAt(i, "los", "las") && r.wordAt(i+1, "dos", "tres", "cuatro") {
		plural = true // "… los dos de plástico, de orilla a orilla"
	}
	plural = plural || r.namedAtTheEnd(ms)
	if !plural && !(r.markAt(last.last+1, ',') && r.labelsOnly(i) && last.shape == pair) &&
		!(r.wordAt(i, "measured", "measuring", "measure", "dims", "medidos", "medidas") && len(last.units) > 0) &&
		!r.wordAt(i, "all", "both", "everything", "todo", "todos", "todas", "ambos", "ambas") {
		return
	}
	for k := range ms[:len(ms)-1] {
		if m := &ms[k]; (!m.where || m.ofWhole()) && m.topic == "" && (m.shape == last.shape || m.square) {
			m.topic, m.part, m.face, m.where = last.topic, last.part, last.face, true
		}
	}
}

// thoseAfter is where a clause after the last size begins that does nothing but name what they all
// are: "two 25 x 49 complete skylights, those are curb outside"; 0 for none.
func (r *reader) thoseAfter(from int) int {
	for i := from + 1; i < len(r.toks) && i < from+8; i++ {
		if !r.wordAt(i, "these", "those", "they", "theyre", "esas", "estas", "esos", "estos") ||
			!r.softBreak(i-1) && !r.sentenceEnd(i-1) {
			continue
		}
		next := i + 1
		for r.wordAt(next, "are", "were", "son", "re") {
			next++
		}
		if r.labelsOnly(next) {
			return i
		}
	}
	return 0
}

// labelsOnly: nothing but names of what a size is of stands from token i to the end of its
// sentence.
func (r *reader) labelsOnly(i int) bool {
	_, end := r.sentence(i)
	if i > end {
		return false
	}
	for ; i <= end; i++ {
		if r.toks[i].kind == wordToken && r.labelAt[i] < 0 && (r.toks[i].word == nil || !r.toks[i].word.filler) &&
			!r.wordAt(i, "size", "sizes", "dims", "measurements", "medidas") {
			return false
		}
	}
	return true
}

// otherWay: the second of two numbers is called the other side of the first.
func (r *reader) otherWay(a, b *measure) bool {
	return !b.where && b.topic == "" && b.shape == lone && b.parts[0].side == someSide && !b.diag && !b.fixed &&
		a.where && a.shape == lone && a.parts[0].side == noSide && r.wordsIn(a.last+1, b.last+1, "other", "otro", "otra")
}

// partOf is the part that a topic measures.
func partOf(t fitcheck.Topic) string {
	switch t {
	case fitcheck.TopicCurbInside, fitcheck.TopicCurbOutside, fitcheck.TopicCurbHeight, fitcheck.TopicCurbDiagonals:
		return "curb"
	case fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside:
		return "retainer"
	case fitcheck.TopicPlasticSize:
		return "plastic"
	case fitcheck.TopicBulgeBase, fitcheck.TopicDomeRise:
		return "bulge"
	case fitcheck.TopicFrameInside:
		return "frame"
	}
	return ""
}

// onlyPart is the part that the message names, "" where it names none or several.
func (r *reader) onlyPart() string {
	return r.partNamed(func(*hit) bool { return true })
}

// partNamed is the part that those labels name, "" where they name none or several.
func (r *reader) partNamed(counts func(*hit) bool) string {
	found := ""
	for n := range r.labels {
		p, ok := r.labels[n].has("part")
		if !ok || !counts(&r.labels[n]) || p == "skylight" || p == "dome" || p == "opening" {
			continue
		}
		if found != "" && p != found {
			return ""
		}
		found = p
	}
	return found
}

// insideAndOutside: both faces of one skylight without a part are the curb's.
func (r *reader) insideAndOutside(ms []measure) {
	bare := func(m *measure, face string) bool {
		return m.face == face && m.topic == "" && (m.part == "" || m.part == "skylight")
	}
	var curbs []*measure
	for k := range ms {
		for n := range ms {
			in, out := &ms[k], &ms[n]
			if bare(in, "inside") && bare(out, "outside") && slices.Equal(in.units, out.units) {
				curbs = append(curbs, in, out)
			}
		}
	}
	for _, m := range curbs {
		m.part = "curb"
	}
}

var (
	curbSizes     = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside}
	retainerSizes = []fitcheck.Topic{fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside}
	outsideSizes  = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicRetainerOutside}
	insideSizes   = []fitcheck.Topic{fitcheck.TopicCurbInside, fitcheck.TopicFrameInside, fitcheck.TopicRetainerOpening}
	frameSizes    = []fitcheck.Topic{fitcheck.TopicFrameInside, fitcheck.TopicRetainerOutside, fitcheck.TopicRetainerOpening,
		fitcheck.TopicCurbOutside}
	domeSizes   = []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicBulgeBase}
	openings    = []fitcheck.Topic{fitcheck.TopicCurbInside, fitcheck.TopicRetainerOpening}
	flangeSizes = []fitcheck.Topic{fitcheck.TopicFrameInside, fitcheck.TopicPlasticSize}
)
