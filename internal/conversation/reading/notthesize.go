package reading

import "example.com/intake-bot/internal/fitcheck"

// Lengths of the right kind that are of another thing: what a web site says, how far two numbers are apart,
// what somebody else read off the tape.

var (
	ownMeasure = wordsOf(`mine my our ours measured measure measures measuring need want order instructions
		directions guide video got get mio mia mi medi sticker label`)
	printedPlaces = wordsOf(`site website webpage page catalog catalogue chart brochure listing pagina catalogo
		sitio internet ad`)
	showVerbs      = wordsOf(`says say said shows show lists listed has have is are it gives dice muestra pone tiene trae`)
	apartWords     = wordsOf(`off out differ differs different apart longer shorter varies vary`)
	offTolerance   = wordsOf(`off ok okay too much fine bad matter difference acceptable alright`)
	secondTakes    = wordsOf(`gets got measured says said reads measures has had comes came`)
	lessWords      = wordsOf(`subtract deduct minus discount without take took ignore restar resta quitar quita sin`)
	tolerableWords = wordsOf(`off ok okay too much fine matter difference acceptable alright close`)
)

// printed: the size is one that a web site, a catalog or an old order tells: "your site says 25 x 49", "the new
// one I saw online is 26 x 50". Who measured by it tells their own.
func (r *reader) printed(m *measure) bool {
	from := r.clauseStart(m.first)
	for i := m.first - 1; i >= from; i-- {
		if r.among(i, ownMeasure) {
			return false
		}
		if r.among(i, printedPlaces) && (r.among(i+1, showVerbs) || m.first == i+1) ||
			r.wordAt(i, "online") && r.wordAt(i+1, "is", "are", "was", "were", "says") ||
			r.wordAt(i, "store", "tienda") && r.wordAt(i+1, "that", "is", "was", "que") &&
				r.wordsIn(from, i, "saw", "seen", "found", "vi") {
			return true
		}
	}
	return false
}

// farBetween: "one is off by 1/4", "they differ by 3/8", "is an eighth off okay?": how far two measures are apart.
func (r *reader) farBetween(m *measure) bool {
	if m.shape != lone || m.parts[0].length() >= 2*fitcheck.Inch {
		return false
	}
	from, to := r.sentence(m.first)
	if r.wordAt(m.first-1, "by", "por") && r.among(m.first-2, apartWords) {
		return true
	}
	if r.markAt(to, '?') && r.anyOf(m.last, to, offTolerance) &&
		(r.wordsIn(from, m.first, "is", "does", "will", "would") || r.wordsIn(m.last, to, "ok", "okay", "fine")) {
		return true // "54 5/8 and 54 3/4. Is an eighth off okay?"
	}
	return r.wordsIn(m.last+1, min(m.last+3, len(r.toks)), "difference", "apart")
}

// secondTaker: of two measures of one thing, somebody else took the second: "I get 25 1/2 x 49 1/2, my son
// gets 25 5/8 x 49 1/2".
func (r *reader) secondTaker(a, b *judged) bool {
	if sameLengths(a, b) || r.wordsIn(a.first, len(r.toks), "right", "trust", "believe", "correct", "use", "better", "go") {
		return false
	}
	for i := a.last + 1; i < b.first; i++ {
		if r.among(i, secondTakes) && r.personBetween(a.last+1, i) {
			return true
		}
	}
	return false
}

// lessFlashing: "if you subtract the flashing it is 25 x 49": reckoned and not measured.
func (r *reader) lessFlashing(m *measure) bool {
	from := r.sentenceFirst(m.first)
	return r.askedSize() != "none" && r.anyOf(from, m.first, lessWords) &&
		r.wordsIn(from, m.first, "flashing", "flashings", "shingles", "drywall", "trim", "caulk", "caulking", "lamina",
			"vierteaguas") &&
		r.wordsIn(from, m.first, "if", "would", "should", "si", "seria")
}

// ofParapet: "the parapet is 30 inches": the wall around the roof.
func (r *reader) ofParapet(m *measure) bool {
	from := r.clauseStart(m.first)
	return m.shape == lone && r.wordsIn(from, m.first, "parapet", "parapets", "pretil") &&
		r.wordAt(m.first-1, "is", "are", "stands", "measures", "about", "es", "mide", "at") &&
		!r.wordsIn(from, m.first, "curb", "skylight", "box")
}

// tolerable: "54 5/8 and 54 3/4. Is an eighth off okay?", "will 1/8 matter?": whether a difference may be.
func (r *reader) tolerable(i int) bool {
	from, to := r.sentence(i)
	if from == 0 || !r.markAt(to, '?') ||
		!r.wordAt(from, "is", "are", "does", "will", "would", "can", "importa", "afecta") ||
		!r.anyOf(i+1, to, tolerableWords) {
		return false
	}
	if r.toks[i].kind == wordToken && !r.wordAt(i, "eighth", "quarter", "half", "sixteenth", "eighths", "sixteenths") ||
		r.toks[i].kind == numToken && !r.markAt(i+1, '/') || r.by(i+1) || r.numberIn(from, i) {
		return false
	}
	_, next := r.numeralAt(i)
	r.use(i, max(i, next-1))
	return true
}
