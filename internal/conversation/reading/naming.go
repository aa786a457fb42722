package reading

import "example.com/intake-bot/internal/fitcheck"

// What one name beside a measure says of it: which part and face, which topic, or some
// other thing that is not measured at all.

var (
	afterTakenSense = wordsOf(`very too that really sure quite more less much exactly even`)
	dwellingNouns   = wordsOf(`trailer camper motorhome rv house home garage shed barn building`)
)

func (r *reader) takeBefore(m *measure, h *hit, same bool) {
	for _, s := range h.senses {
		r.takeSenseBefore(m, h, s, same)
	}
}

func (r *reader) takeSenseBefore(m *measure, h *hit, s sense, same bool) {
	switch s.kind {
	case "topic", "part", "face", "other", "where":
		r.takeName(m, h, s, true)
	case "shape":
		if same && !(s.value == "diagonal" && r.noDiagonal(h)) {
			m.takeShape(s.value)
			if r.only(h.last+1, m.first-1) {
				m.shapedBy(h)
			}
		}
	case "both":
		// "both diagonals on the outside of the curb come to 42 3/4"
		m.both = m.both || same && (m.first-h.last <= 4 || h.is("shape", "diagonal"))
	case "slope":
		m.slope = m.slope || same
	case "rough":
		if same {
			r.takeRough(m, h, s.value, true)
		}
	case "not":
		if r.among(h.last+1, afterTakenSense) {
			return
		}
		m.drop = m.drop || same && r.only(h.last+1, m.first-1)
	case "few":
	case "yours":
		m.drop = m.drop ||
			r.asked(fitcheck.TopicConfirm) && same && !r.wordAt(h.first-1, "if", "can", "could", "did", "do", "would", "si") &&
				r.only(h.last+1, m.first-1) // "you put down 38 1/2"
	case "was":
		m.was = m.was || same && r.only(h.last+1, m.first-1)
	case "fix":
		if r.wordAt(h.first, "no") && r.out.Language == "es" && h.first > 0 && r.only(h.last+1, m.first-1) {
			m.drop = true
		}
		m.fixed = true
	}
}

func (r *reader) takeAfter(m *measure, h *hit) {
	for _, s := range h.senses {
		r.takeSenseAfter(m, h, s)
	}
}

func (r *reader) takeSenseAfter(m *measure, h *hit, s sense) {
	switch s.kind {
	case "topic", "part", "face", "other", "where":
		r.takeName(m, h, s, false)
	case "shape":
		if s.value == "same" {
			m.both = m.both || m.diag && m.shape == lone
			m.square = m.square || !m.diag && r.sameAgain(m, h)
			return
		}
		if s.value == "square" && r.negated(h.first) {
			return // "36 round, not square"
		}
		m.takeShape(s.value)
		if h.first-m.last <= 3 {
			m.shapedBy(h)
		}
	case "both":
		if !m.diag &&
			(r.wordsIn(h.first, h.last+2, "them") ||
				h.last+1 < len(r.toks) && countNouns.has(r.toks[h.last+1].text) ||
				r.wordAt(h.last+1, "ones", "of")) {
			return // "24 inches, both domes"
		}
		m.both = m.both || h.first-m.last <= 3 || m.diag && m.shape == lone
		if h.first-m.last <= 3 {
			m.shapedBy(h)
		}
	case "undone":
		m.drop = m.drop || h.first == m.last+1
	case "slope":
		m.slope = m.slope || h.first-m.last <= 2
	case "rough":
		r.takeRough(m, h, s.value, false)
	}
}

// takeName takes what the measure is of; what was taken first stands.
func (r *reader) takeName(m *measure, h *hit, s sense, before bool) {
	if r.wordAt(h.first, "id") && h.first == h.last && r.idVerb(h.first+1) {
		return // "I'd call it 25"
	}
	if before && (s.kind == "part" || s.kind == "topic") && h.last+1 < m.first && r.wordsIn(h.last+1, m.first, "for", "para") &&
		r.wordsIn(m.last+1, min(m.last+4, len(r.toks)), "skylight", "skylights", "opening", "hole") ||
		before && (s.kind == "part" || s.kind == "topic") && r.wordsIn(h.last+1, m.first, "for", "para") &&
			r.wordsIn(h.last+1, m.first, "skylight", "tragaluz", "claraboya", "opening") {
		return // "a plastic cover for a 4 x 4 foot skylight"
	}
	switch s.kind {
	case "where":
		return
	case "other":
		if r.roomOfNumber(h.first) > 0 {
			return
		}
		if before && m.shape == pair && m.parts[0].frac && r.askedSize() != "none" && r.opensSize(h, m) {
			return // "kitchen: 25 1/4 x 25 1/4"
		}
		if r.wordAt(h.last, "every") && r.wordAt(h.last+1, "time", "way", "try", "direction", "side", "single") {
			return // "I got 22 1/4 x 22 1/4 every time"
		}
		if r.asked(fitcheck.TopicBulgeBase) && r.wordAt(h.first, "lip", "rim") &&
			r.wordsIn(max(0, h.first-2), h.first, "at", "inside", "within") && !r.wordsIn(0, len(r.toks), "bulge", "bubble", "over") {
			return // "29 1/2 round at the lip"
		}
		if h.first > 0 && (before || h.first > m.last+2) && r.wordAt(h.first, "thick", "thickness", "grueso") &&
			(r.toks[h.first-1].kind == numToken || r.unitAt(h.first-1) != noUnit) {
			return // "1/4 inch thick plastic 25 x 49"
		}
		if r.wordAt(h.first, "thick", "thickness", "grueso", "espesor") && r.otherHolds(m, h, before) {
			m.other, m.thing = true, true
		}
		if !before && h.first == m.last+1 && m.shape == lone && m.parts[0].unit == foot {
			m.other, m.thing = true, true // "8 feet above the floor"
		}
		if before && r.wordAt(h.first, "ladder", "escalera") &&
			r.wordsIn(h.last+1, m.first, "got", "get", "measured", "says", "read", "reads", "midio", "salio") {
			return // "my wife holding the ladder got 30 x 30"
		}
		if before && r.wordAt(h.first, "ladder", "escalera") && r.wordsIn(h.last+1, m.first, "looks", "look", "ve", "mira", "see") {
			return // "desde la escalera se ve como de 24 por 48"
		}
		if before && r.labelled(r.clauseStart(h.first), h.first-1) {
			return // "the dome on our RV is 14 x 14"
		}
		if !before && m.shape == pair && (r.whereabouts(m, h) || r.weatherActs(h)) {
			return
		}
		if !before && m.shape == pair && r.among(h.last, dwellingNouns) {
			return // "355 mm x 560 mm its a camper"
		}
		if !before && r.wordAt(h.first, "home") && r.wordAt(h.first-1, "im", "am", "be", "back", "were", "are", "gets", "get") {
			return // "length 51 I'm home until 3"
		}
		if !m.where && r.otherHolds(m, h, before) && !r.namesUnit(h) {
			m.other = true
		}
		return
	case "topic":
		if t := fitcheck.Topic(s.value); (t == fitcheck.TopicDomeRise || t == fitcheck.TopicCurbHeight) &&
			(m.shape == pair || m.shape == fourSides) {
			return // "17 3/4 x 23 3/4 over the lip"
		}
		if s.value == string(fitcheck.TopicPlasticSize) &&
			r.wordAt(h.first, "includes", "include", "counting", "counts", "including", "included") &&
			(r.negated(h.first) || r.askedSize() != "none" && !r.asked(fitcheck.TopicPlasticSize)) {
			return // "25 x 49, that doesn't include the lip"
		}
		if t := fitcheck.Topic(s.value); t == fitcheck.TopicCurbHeight && r.wordAt(h.last, "roof") &&
			(r.asked(fitcheck.TopicDomeRise) ||
				r.wordsIn(r.clauseStart(m.first), m.first, "dome", "bubble", "chimney", "vent", "sticks") &&
					!r.wordsIn(r.clauseStart(m.first), m.first, "curb", "box", "wood")) {
			return // "it's 9 above the metal roof" of the dome
		}
		if r.wordAt(h.first, "por") && (before || h.first > m.last+1) &&
			r.wordsIn(r.sentenceFirst(h.first), m.first, "plastico", "domo", "acrilico", "burbuja") {
			return // "el plástico está por fuera de la madera y mide 25 x 49"
		}
		if before && r.brokenHole(h) && r.softBetween(h.last+1, m.first) {
			return // "there's an open hole in my roof, diameter is 27 1/2"
		}
		if before && m.topic == "" && r.otherNearer(m, h, fitcheck.Topic(s.value)) {
			return
		}
		h.named = true
		if before && r.ofSheetBesideBox(m, h, s) {
			m.face, m.where = r.toks[h.last].text, true
			return
		}
		if m.topic == "" && !(m.part != "" && m.face != "" && !before) {
			m.topic = fitcheck.Topic(s.value)
		}
	case "part":
		if !before && (r.negated(h.first) || r.besidesFinish(h)) {
			return
		}
		if before && s.value == "curb" && r.wordsIn(max(0, h.first-5), h.first, "where") &&
			r.wordsIn(max(0, h.first-4), h.first, "caps", "cap", "over", "onto", "covers", "on") &&
			r.labelled(r.sentenceFirst(h.first), h.first-1) {
			return // "inside of the flange, where it caps the curb, 41 7/8 by 41 7/8"
		}
		h.named = true
		if s.value == "plastic" && !before && m.part == "" && r.wordAt(h.last+1, "one", "ones", "skylight", "unit") {
			s.value = "skylight" // "a 4 ft square plastic one"
		}
		if m.part == "" || (m.part == "skylight" || m.part == "dome") && before {
			m.part = s.value
		}
	case "face":
		if s.value == "clear" && h.first == h.last &&
			(before && r.wordAt(h.first-1, "over", "bronze", "white", "double", "single", "triple", "acrylic") ||
				!(before && r.joins(h.last+1, m.first-1)) && !(!before && r.joins(m.last+1, h.first-1))) {
			return // a color
		}
		if s.value == "clear" && h.first == h.last && !before && r.clearPlastic(h) {
			return
		}
		if r.ofColor(h) {
			return
		}
		if m.face == "" {
			m.face = s.value
		}
	}
	m.where = true
	if before && r.joins(h.last+1, m.first-1) || !before && r.joins(m.last+1, h.first-1) {
		m.named = true
	}
}

// clearPlastic: "25 x 49 clear over bronze", "25 x 49 clear acrylic": more of what the plastic is to
// be follows the color. "25 x 49 clear, curb mount" says how the skylight is made, and not that the
// size is of its curb.
func (r *reader) clearPlastic(h *hit) bool {
	_, end := r.sentence(h.first)
	return covers(r.choices, h.last+1) || r.wordsIn(h.last+1, end+1, "mount", "mounted", "mounts")
}

// otherNearer: "those were the outside of the box, inside is 22 x 46": a face or an opening stands
// nearer to the size, in a clause of its own, than the name of another measure. What part that is of
// still tells.
func (r *reader) otherNearer(m *measure, h *hit, t fitcheck.Topic) bool {
	other := m.part == "opening" && t == fitcheck.TopicPlasticSize
	if m.part == "" && partOf(t) == "curb" &&
		(m.face == "inside" && t == fitcheck.TopicCurbOutside || m.face == "outside" && t == fitcheck.TopicCurbInside) {
		m.part, other = "curb", true
	}
	return other && r.softBetween(h.last+1, m.first)
}

// brokenHole: the words are part of what is wrong.
func (r *reader) brokenHole(h *hit) bool {
	if !r.wordsIn(max(0, h.first-3), h.first+1, "open", "gaping", "big", "huge", "theres") {
		return false
	}
	hits := within(r.choices, h.first-3, h.last)
	for n := range hits {
		if hits[n].is(string(fitcheck.TopicProblem), fitcheck.ProblemHoleOpen) && hits[n].last >= h.first {
			return true
		}
	}
	return false
}

// otherHolds: a word for some other thing makes the measure that thing's only where
// it is near: "the screws are 1 1/2", "12 inches on center".
func (r *reader) otherHolds(m *measure, h *hit, before bool) bool {
	if before {
		if r.wordAt(h.first-1, "in", "from", "inside") ||
			r.wordAt(h.first-1, "the", "my", "our") && r.wordAt(h.first-2, "in", "from", "inside", "under") {
			return false // "from in the hallway looking up its 14 x 30"
		}
		if r.wordAt(h.first, "ladder", "stool", "chair", "bucket", "scaffold", "escalera") &&
			r.wordsIn(max(0, h.first-3), h.first, "on", "off", "from", "en", "using", "with") {
			return false // "standing on a ladder I get 21 7/8"
		}
		if r.wordAt(h.first-1, "to", "from", "past", "between") ||
			r.wordAt(h.first-1, "the") && r.wordAt(h.first-2, "to", "from", "past", "between") {
			return false // "to the drywall it's 30"
		}
		if r.wordAt(h.first, "up") && r.wordsIn(h.last+1, m.first, "its", "theyre", "got", "get", "measured", "measures", "is") {
			return false // "just went up there again, its 25 3/4"
		}
		if r.wordsIn(h.last+1, m.first, "its", "measures", "mide") ||
			m.shape == pair && r.wordAt(h.first, "up", "snow", "rain", "nieve") {
			return false // "my brother has a 10 foot ladder it's 24 x 48"
		}
		return !r.softBetween(h.last+1, m.first) && m.first-h.last <= 6
	}
	if r.wordAt(m.last+1, "i", "we", "he", "she", "im", "ive") {
		return false // "2 ft by 4 ft I haven't been up there yet"
	}
	return !r.softBetween(m.last+1, h.first) && h.first-m.last <= 5
}

// differenceBetween: the words name what is compared: "the difference between acrylic and …".
func (r *reader) differenceBetween(first int) bool {
	for i := max(r.sentenceFirst(first), first-6); i+1 < first; i++ {
		if r.wordAt(i, "difference", "diferencia") && r.wordsIn(i+1, i+4, "between", "entre") {
			return true
		}
	}
	return false
}
