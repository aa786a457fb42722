package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Parts told by what they do, whatever words stand between: what holds the plastic down is the
// retaining frame, a frame that goes over the box is the old one. The part that is only spoken of
// then, the plastic or the box, was not measured.

var (
	holdsFillers = wordsOf(`just actually really is all lo la los only solo`)
	capsFillers  = wordsOf(`it they just actually se the frame metal flange skirt lip el la marco simply`)
)

var (
	ringWords = wordsOf(`ring rings band bands strip strips frame frames bar bars rim rims trim edging metal piece
		pieces border aro aros anillo marco tira tiras barra barras cincho fleje cinta metalico`)
	holdWords = wordsOf(`hold holds holding held clamp clamps clamping clamped keep keeps keeping pin pins pinning
		secure secures securing press presses pressing squeezes grabs grips traps fastens sujeta sujetan sostiene
		sostienen detiene detienen aprieta aprietan agarra agarran fija fijan prensa prensan aguanta presiona asegura
		aseguran`)
	heldWords = wordsOf(`plastic plastics dome domes it acrylic lens bubble sheet panel plexi plexiglass
		polycarbonate everything lo la plastico domo burbuja acrilico lamina cupula policarbonato`)
	frameWords = wordsOf(`frame frames metal flange lip skirt skirts apron collar marco pestana falda faldon ceja
		lamina aluminio aluminum part piece parte pieza`)
	capWords = wordsOf(`goes go went caps cap capped fits fit sits sit sat slides slide slips slip drops drop hangs
		hang comes come laps lap wraps wrap covers cover grips hugs hug rests falls lips folds turns bends tapa cubre
		abraza monta entra va baja cae encaja agarra envuelve sienta asienta queda`)
	overWords   = wordsOf(`over onto around outside sobre encima fuera afuera`)
	cappedWords = wordsOf(`curb curbs curbing kerb curbe box wood wooden lumber cajon brocal madera caja bordillo
		base boards 2x4 2x6`)
	thatWords   = wordsOf(`that which thats what where que donde`)
	withoutOver = wordsOf(`caps cap capped covers cover grips hugs hug wraps tapa cubre abraza agarra envuelve`)
)

// partsByWork renames the labels of parts that a clause tells by what they do.
func (r *reader) partsByWork() {
	for i := range r.toks {
		if r.among(i, holdWords) {
			r.holdsPlastic(i)
		}
		if r.among(i, capWords) {
			r.capsBox(i)
		}
	}
}

// holdsPlastic: "the ring around the top, the one that holds the plastic down", "el aro que lo
// sujeta": the verb at the token makes the nearest ring, band or frame before it the retainer.
func (r *reader) holdsPlastic(verb int) {
	first, last := r.sentence(verb)
	rel := verb - 1
	for rel > first && r.among(rel, holdsFillers) {
		rel--
	}
	if !r.among(rel, thatWords) &&
		!(rel == verb-1 && r.wordAt(verb, "holding", "clamping", "keeping", "pinning", "securing", "pressing")) {
		return
	}
	held := -1
	for i := verb + 1; i <= min(verb+4, last) && held < 0; i++ {
		if r.among(i, heldWords) {
			held = i
		} else if r.wordAt(i, "skylight", "tragaluz", "glass", "screen", "curb", "wood") {
			return
		}
	}
	if r.wordsIn(rel, verb, "lo", "la") && r.out.Language == "es" {
		held = verb
	}
	noun := r.nounBefore(rel, first, ringWords)
	if held < 0 || noun < 0 {
		return
	}
	r.renamePart(noun, "retainer", "frame", "flange", "skylight")
	r.dropLabels(rel, min(held+1, last), "part", "axis")
}

// capsBox: "the metal frame that hangs down over the wood curb", "the inside of it where it caps
// over the curb": the verb at the token makes the frame before it the one that caps the box.
func (r *reader) capsBox(verb int) {
	first, last := r.sentence(verb)
	rel := verb - 1
	for rel > first && r.among(rel, capsFillers) {
		rel--
	}
	if !r.wordAt(rel, "that", "which", "where", "que", "donde") {
		return
	}
	over, box := r.among(verb, withoutOver), -1
	for i := verb + 1; i <= min(verb+7, last) && box < 0 && r.toks[i].kind == wordToken; i++ {
		over = over || r.among(i, overWords)
		if over && r.among(i, cappedWords) {
			box = i
		}
	}
	noun := r.nounBefore(rel, first, frameWords)
	if n := r.nounBefore(verb, rel, frameWords); n >= 0 {
		noun = n // "the inside where the metal laps over the wood"
	}
	if box < 0 && over && r.labelledCurb(first, rel) {
		r.dropLabels(rel, verb, "part") // "the wood curb that the frame goes over"
	}
	if box < 0 || noun < 0 {
		return
	}
	for r.among(box+1, cappedWords) {
		box++ // "the wood box"
	}
	if r.renamePart(noun, "flange", "frame", "flange") {
		r.faceAlone(box)
		r.dropLabels(verb, box, "part", "topic", "axis", "rough")
	}
}

// nounBefore is the nearest of the words before a token that names a thing, where it is one of those,
// and no number stands between; -1 for none.
func (r *reader) nounBefore(to, from int, nouns *wordSet) int {
	for i := to - 1; i >= from && r.toks[i].kind != numToken; i-- {
		if r.among(i, nouns) && !r.wordAt(i+1, "curb", "box") {
			return i
		}
		if h := r.labelAround(i); h != nil && h.has1("part") {
			return -1
		}
	}
	return -1
}

// labelledCurb: the box is named between two tokens.
func (r *reader) labelledCurb(from, to int) bool {
	return slices.ContainsFunc(r.labels, func(h hit) bool { return h.first >= from && h.last < to && h.is("part", "curb") })
}

// labelAround is the label that covers the token, before they are placed.
func (r *reader) labelAround(i int) *hit {
	for n := range r.labels {
		if h := &r.labels[n]; h.first <= i && i <= h.last {
			return h
		}
	}
	return nil
}

// renamePart makes the word at the token name that part, unless it has a name already that is none
// of those which it may have as well.
func (r *reader) renamePart(i int, part string, unless ...string) bool {
	named := []sense{{kind: "part", value: part}}
	if h := r.labelAround(i); h != nil {
		if v, ok := h.has("part"); !ok || !slices.Contains(unless, v) {
			return ok && v == part
		}
		h.senses = named
		return true
	}
	at := slices.IndexFunc(r.labels, func(h hit) bool { return h.first > i })
	if at < 0 {
		at = len(r.labels)
	}
	r.labels = slices.Insert(r.labels, at, hit{first: i, last: i, senses: named})
	return true
}

// dropLabels forgets the labels of some kinds from one token to another.
func (r *reader) dropLabels(from, to int, kinds ...string) {
	r.labels = slices.DeleteFunc(r.labels, func(h hit) bool {
		return h.first >= from && h.last <= to && slices.ContainsFunc(kinds, h.has1)
	})
}

// faceAlone: in "over the wood curb has an inside of 26 by 50" the face is not the curb's.
func (r *reader) faceAlone(box int) {
	h := r.labelAround(box)
	if h == nil || h.last == box {
		return
	}
	switch {
	case h.is("topic", string(fitcheck.TopicCurbInside)):
		*h = hit{first: h.last, last: h.last, senses: []sense{{kind: "face", value: "inside"}}}
	case h.is("topic", string(fitcheck.TopicCurbOutside)):
		*h = hit{first: h.last, last: h.last, senses: []sense{{kind: "face", value: "outside"}}}
	}
}
