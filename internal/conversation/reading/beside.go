package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	notOnlyFrame = wordsOf(`flange flanges old existing caps cap curb viejo pestana ceja brida under
		underneath`)
	tookOffVerbs = wordsOf(`took taken pulled lifted removed popped brought quite quito quitamos saque
		sacamos saco`)
	wallBoards    = wordsOf(`drywall sheetrock plaster studs rafters joists`)
	fromIndoors   = wordsOf(`inside indoors below underneath adentro dentro abajo`)
	solidParts    = wordsOf(`plastic dome frame ring metal marco aro plastico domo`)
	otherOpenings = wordsOf(`curb wood roof rough box ceiling caja techo madera old mounting flange window
		house under existing drywall inside adentro dentro`)
	notMetalAlone = wordsOf(`inside in under not without no between hides plastic plastico sin bajo adentro
		dentro minus past to tape roof off removed took fine good rusted bent`)
)

// besidePlastic: an "opening" told beside the plastic's own size is the one that the
// plastic shows in; what is told as the inside of a frame and is smaller than the
// plastic may be that too.
func (r *reader) besidePlastic(j *judged, ms []measure) {
	plastic := r.plasticOf(j, ms)
	if plastic == nil || len(j.parts) > 2 ||
		len(plastic.parts) != len(j.parts) && !j.square && !plastic.square && j.shape != lone {
		return
	}
	least := bySides(plastic, j.measure)
	switch {
	case least < fitcheck.Inch:
	case j.topic == "" && j.part == "opening" && r.plasticsOpening(j, plastic, least):
		j.topic, j.candidates = fitcheck.TopicRetainerOpening, nil
	case j.topic == "" && least <= mostLip && r.frameOpening(j.measure):
		j.topic, j.candidates = fitcheck.TopicRetainerOpening, nil
	case j.topic == fitcheck.TopicFrameInside && least > fitcheck.Inch*21/16 && r.maybeRetainer(j, ms):
		if r.asked(fitcheck.TopicPlasticSize) && least <= mostLip {
			j.topic, j.candidates = fitcheck.TopicRetainerOpening, nil // asked for the plastic, which is checked by it
			return
		}
		j.topic, j.candidates = "", []fitcheck.Topic{fitcheck.TopicRetainerOpening, fitcheck.TopicFrameInside}
	}
}

// mostLip is how much of the plastic a retaining frame covers at most, both sides together.
const mostLip = fitcheck.Inch * 11 / 4

// plasticOf is the size of the plastic that is told beside another measure, nil for none.
func (r *reader) plasticOf(j *judged, ms []measure) *measure {
	var plastic *measure
	for k := range ms {
		if m := &ms[k]; m != j.measure && !m.drop && slices.Equal(m.units, j.units) && r.ofPlasticSize(m) {
			plastic = m
		}
	}
	return plastic
}

// ofPlasticSize: a measure is the plastic's, by its name or because that was asked for.
func (r *reader) ofPlasticSize(m *measure) bool {
	switch {
	case m.topic != "":
		return m.topic == fitcheck.TopicPlasticSize
	case m.part == "plastic":
		return m.face != "inside"
	}
	return m.part == "" && (m.face == "" || m.face == "edge") && r.asked(fitcheck.TopicPlasticSize)
}

// plasticsOpening: the opening is the one that the plastic shows in, and not the box's.
func (r *reader) plasticsOpening(j *judged, plastic *measure, least fitcheck.Length) bool {
	switch r.onlyPart() {
	case "plastic":
		return true
	case "":
		ofPlastic := r.asked(fitcheck.TopicPlasticSize) || plastic.part == "plastic" && !r.curbNamed()
		return ofPlastic && least <= mostLip && !r.otherOpening(j.measure)
	}
	return false
}

// maybeRetainer: the inside of "the frame" may be the opening of the one that holds the plastic.
func (r *reader) maybeRetainer(j *judged, ms []measure) bool {
	return !r.retainerTold(ms) && !r.asked(fitcheck.TopicFrameInside) && r.onlyFrame(j.measure)
}

// curbNamed: the message speaks of the box, which has an opening as well.
func (r *reader) curbNamed() bool {
	for n := range r.labels {
		h := &r.labels[n]
		if h.is("part", "curb") || h.is("topic", string(fitcheck.TopicCurbOutside)) ||
			h.is("topic", string(fitcheck.TopicCurbInside)) {
			return true
		}
	}
	return false
}

// bySides is how much larger one size is than another, on the side where it is least.
func bySides(a, b *measure) fitcheck.Length {
	la, sa := a.longShort()
	lb, sb := b.longShort()
	return min(la-lb, sa-sb)
}

func (m *measure) longShort() (long, short fitcheck.Length) {
	long = m.parts[0].length()
	short = long
	for k := range m.parts {
		long, short = max(long, m.parts[k].length()), min(short, m.parts[k].length())
	}
	return long, short
}

func (r *reader) retainerTold(ms []measure) bool {
	for k := range ms {
		if ms[k].topic == fitcheck.TopicRetainerOpening || ms[k].part == "retainer" {
			return true
		}
	}
	return false
}

// onlyFrame: the words name the inside of "the frame", not of the flange or the old
// frame: where the retaining frame was asked about, it is that.
func (r *reader) onlyFrame(m *measure) bool {
	from, to := max(m.from, r.clauseStart(m.first)), r.clauseEnd(m.last)+1
	if !r.labelled(from, to-1) && from > 0 { // named in the sentence before
		from = max(m.from, r.sentenceFirst(from-1))
	}
	return m.part != "flange" && !r.tookOff(from, to) && !r.anyOf(from, to, notOnlyFrame)
}

// tookOff: "took the frame off and measured the inside of it": what came off whole is the old frame.
func (r *reader) tookOff(from, to int) bool {
	from = r.sentenceFirst(from)
	if !r.anyOf(from, to, tookOffVerbs) {
		return false
	}
	for i := from; i < to; i++ {
		switch {
		case r.wordAt(i, "inside", "insides"):
			if r.wordAt(i+1, "of") && r.wordAt(i+2, "it", "that", "this") || r.wordAt(i+1, "it") {
				return true
			}
		case r.wordAt(i, "lo") && r.wordAt(i+1, "medi", "midio", "medimos"):
			return true
		}
	}
	return false
}

// besideCurb: what is told as taken from inside, beside the outside of the box and so much
// smaller as its walls make it, is the box's inside.
func (r *reader) besideCurb(j *judged, ms []measure) {
	if r.betweenWalls(j) {
		j.topic, j.candidates = fitcheck.TopicCurbInside, nil
		return
	}
	if !r.takenInside(j) || r.wordsIn(r.clauseStart(j.first), r.clauseEnd(j.last)+1, "house", "spare", "garage", "shed") {
		return
	}
	curb := curbOf(j, ms)
	if curb == nil || len(curb.parts) != len(j.parts) {
		return
	}
	if least := bySides(curb, j.measure); least >= fitcheck.Inch && least <= 8*fitcheck.Inch {
		j.topic, j.candidates = fitcheck.TopicCurbInside, nil
	}
}

// betweenWalls: "inside the opening, drywall to drywall".
func (r *reader) betweenWalls(j *judged) bool {
	return j.topic == "" && j.part == "opening" && j.face != "outside" &&
		r.anyOf(r.sentenceFirst(j.first), r.sentenceLast(j.last)+1, wallBoards)
}

// takenInside: two sides that no name of another part stands with were taken from inside.
func (r *reader) takenInside(j *judged) bool {
	named := j.topic != "" || j.part != "" && j.part != "opening"
	if named && !r.namedBehind(j.measure) || len(j.parts) > 2 {
		return false
	}
	return j.face == "inside" || r.bareHole(j.measure) ||
		r.anyOf(r.sentenceFirst(j.first), r.clauseEnd(j.last)+1, fromIndoors)
}

// curbOf is the outside of the box that is told beside a measure; nil for none, and where the
// measure may be of another size that is told there.
func curbOf(j *judged, ms []measure) *measure {
	var curb *measure
	for k := range ms {
		m := &ms[k]
		if m == j.measure || m.drop || !slices.Equal(m.units, j.units) {
			continue
		}
		topic := m.topic
		if topic == "" {
			topic, _ = sizeTopic(m.part, m.face)
		}
		switch {
		case topic == fitcheck.TopicCurbOutside:
			curb = m
		case topic.OfSize():
			return nil // the opening may be that one's
		}
	}
	return curb
}

// bareHole: "what it sits on is 30 by 30 on the outside and the hole is 27 by 27".
func (r *reader) bareHole(m *measure) bool {
	from := r.clauseStart(m.first)
	return m.part == "opening" && m.face == "" && r.wordsIn(from, m.first, "hole", "hoyo", "hueco", "agujero") &&
		!r.otherOpening(m) && !r.anyOf(from, m.first, solidParts)
}

// frameOpening: the words beside the measure, in its clause, name the opening of "the frame".
func (r *reader) frameOpening(m *measure) bool {
	from, to := max(r.clauseStart(m.first), r.sentenceFirst(m.first)), r.clauseEnd(m.last)+1
	return (r.openingOfFrame(from, m.first) || r.openingOfFrame(m.last+1, to)) && !r.otherOpening(m)
}

func (r *reader) openingOfFrame(from, to int) bool {
	return r.wordsIn(from, to, "opening", "abertura", "hueco", "hole") && r.wordsIn(from, to, "frame", "marco", "metal")
}

// otherOpening: the clause speaks of an opening that is none of a metal frame's.
func (r *reader) otherOpening(m *measure) bool {
	return r.anyOf(max(r.clauseStart(m.first), r.sentenceFirst(m.first)), r.clauseEnd(m.last)+1, otherOpenings)
}

// namedBehind: "ID 48 x 48, mill frame", "inside 22 x 22, acrylic": what comes after the comma is
// chosen, and is nothing that was measured.
func (r *reader) namedBehind(m *measure) bool {
	end := m.last + 1
	for r.unitAt(end) != noUnit {
		end++
	}
	if m.face != "inside" || m.part != "plastic" && m.part != "frame" || !r.markAt(end, ',') {
		return false
	}
	for i := r.clauseStart(m.first); i < m.first; i++ {
		if r.labelKind(i, "part") || r.labelKind(i, "topic") {
			return false
		}
	}
	return true
}

// metalMeasured: asked for the plastic alone, "the metal is 28 x 28" tells of something else.
func (r *reader) metalMeasured(j *judged) {
	if j.topic != fitcheck.TopicPlasticSize || j.where || !r.asked(j.topic) {
		return
	}
	from, to := r.clauseStart(j.first), r.clauseEnd(j.last)+1
	if r.markAt(to-1, ',') || r.markAt(to, ',') && r.wordAt(to+1, "thats", "that") {
		to = r.sentenceLast(j.last) + 1 // "28 x 28, that's the metal"
	}
	if r.wordsIn(from, to, "metal", "aluminum", "aluminio") && !r.anyOf(from, to, notMetalAlone) {
		j.topic, j.candidates = "", []fitcheck.Topic{fitcheck.TopicRetainerOutside, fitcheck.TopicPlasticSize}
	}
}
