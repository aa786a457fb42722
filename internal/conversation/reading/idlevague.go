package reading

import "example.com/intake-bot/internal/fitcheck"

// Everyday words that tell something of a skylight only where one is spoken of: "broken", "round", "office".

var (
	vagueProblems = wordsOf(`missing break broke broken split splits bust busted smashed chipped puncture punctured
		brittle crumbling cloud fog yellow smoky dingy loose draft drafty noise noisy birds bird bees wasps mice rats
		squirrel squirrels rot rotted rotten mold moldy moho roto rota rotos partido partida volo arranco lona hoyo
		agujero damp condensation sweats sweating suelto feo amarillo manchado opaque milky`)
	vagueUses = wordsOf(`mobile manufactured plant business office offices store retail shelter art van stable gym
		salon boat bote bus commercial industrial negocio oficina tienda remolque coop library hospital airport mall
		comercial`)
	vagueOutlines     = wordsOf(`round circle triangle oval rectangle circulo`)
	skylightJobTitles = wordsOf(`facilities maintenance director engineer custodian janitor dept department secretary
		principal administrator`)
	useSpeakers   = wordsOf(`i im we at to from near by my is was`)
	skylightHints = wordsOf(`it its one ones both ours mine ambos they them these esta this cover thing lid job project
		building manage outline shape footprint own manager roof lo la se`)
	harmedHints = wordsOf(`hit got damage damaged from by took came size sized destroyed last por after cayo dano in`)
	hurtWords   = wordsOf(`hit damage damaged destroyed cracked broke broken took last dano rompio quebro`)
	thingLinks  = wordsOf(`from by where when for so because cause since over above like porque para cuando donde`)
)

// skylightInText are the words by which a message says what it is about.
var skylightInText = wordsOf(`skylight skylights dome domes bubbles`)

// vague: such a word, in a message that does not speak of a skylight there.
func (r *reader) vague(t fitcheck.Topic, h *hit) bool {
	words := vagueWords(t)
	if words == nil || h.last > h.first || !r.among(h.first, words) || r.asked(t) {
		return false
	}
	first, last := r.sentence(h.first)
	return !r.ofSkylight(first, last, h) && !r.useAlone(t, h)
}

// vagueWords are such words of a topic, nil for none.
func vagueWords(t fitcheck.Topic) *wordSet {
	switch t {
	case fitcheck.TopicProblem:
		return vagueProblems
	case fitcheck.TopicUse:
		return vagueUses
	case fitcheck.TopicOutline:
		return vagueOutlines
	}
	return nil
}

// ofSkylight: the sentence names a part of a skylight, a job, or says "it".
func (r *reader) ofSkylight(first, last int, h *hit) bool {
	if last-first < 3 || last-first == 3 && r.toks[last].kind == markToken || r.wordsIn(first, h.first, "para") {
		return true
	}
	if r.problemAlone(last, h) || len(r.Asked) == 0 && r.buildingFirst(first, last, h) {
		return true
	}
	for i := first; i <= last; i++ {
		if r.toks[i].kind == numToken && r.wordAt(h.first, "round", "circle", "oval", "rectangle", "triangle") {
			return true
		}
		if i >= h.first && i <= h.last {
			continue
		}
		if l := r.labelFrom(i); l != nil && skylightLabel(l.senses[0].kind) || r.among(i, skylightHints) {
			return true
		}
	}
	return false
}

func skylightLabel(kind string) bool { return kind == "part" || kind == "topic" || kind == "shape" }

// problemAlone: "casa en Houston 77036, roto": a clause of its own at the end.
func (r *reader) problemAlone(last int, h *hit) bool {
	return h.has1(string(fitcheck.TopicProblem)) && h.first == r.clauseStart(h.first) &&
		(h.last >= last || r.softBreak(h.last+1) || r.sentenceEnd(h.last+1))
}

// buildingFirst: a message that opens with who writes or for which building.
func (r *reader) buildingFirst(first, last int, h *hit) bool {
	if r.anyOf(first, last+1, skylightJobTitles) && r.anyOf(0, len(r.toks), skylightInText) {
		return true // "Facilities at the airport. We have 11 domes …"
	}
	// "Public library, Minot ND. 9 domes …"
	return first == 0 && h.first <= 2 && last < 10 && r.anyOf(last+1, len(r.toks), skylightInText) &&
		!r.anyOf(first, last, useSpeakers)
}

// useAlone: "Joan Becker, 68502, office. Three skylights …": the building by itself beside who
// and where.
func (r *reader) useAlone(t fitcheck.Topic, h *hit) bool {
	if t != fitcheck.TopicUse || h.first < 2 || r.toks[h.first-1].kind != markToken {
		return false
	}
	ends := h.last+1 == len(r.toks) || r.toks[h.last+1].kind == markToken
	return ends && (r.toks[h.first-2].used || r.toks[h.first-2].named)
}

// harmed: the sentence says that something was hit or broken.
func (r *reader) harmed(first, last int, h *hit) bool {
	if r.anyOf(first, last, harmedHints) {
		return true
	}
	choices := within(r.choices, first, last-1)
	for n := range choices {
		if o := &choices[n]; o.first != h.first && o.senses[0].topic == fitcheck.TopicProblem && !o.senses[0].asked {
			return true
		}
	}
	return h.first == first && h.last+1 >= last
}

// hurt: the sentence says that it was hit or broken, not that it may be.
func (r *reader) hurt(h *hit) bool {
	first, last := r.sentence(h.first)
	return r.anyOf(first, last+1, hurtWords)
}

// inSizeName: the words name what a size is of: "the hole in the roof is 22 x 22".
func (r *reader) inSizeName(h *hit) bool {
	if r.labelAt[h.first] < 0 {
		return false
	}
	l := &r.labels[r.labelAt[h.first]]
	if !l.named || r.asked(fitcheck.TopicProblem) && r.wordAt(h.last, "hole", "hoyo", "agujero") {
		return false // "now there's a 6 inch hole"
	}
	topic, opening := l.senses[0].kind == "topic", l.is("part", "opening")
	switch {
	case opening && l.first == h.first, topic && h.first <= l.last:
		return true
	case l.first <= h.first && h.last <= l.last:
		return topic || opening || l.last > l.first
	}
	return false
}

// thingIn: the clause of a short answer names some other thing: "triple A battery".
func (r *reader) thingIn(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := from; i <= to; i++ {
		if i >= h.first && i <= h.last || !r.thingAt(i) || r.speaks(i) ||
			r.wordsIn(from, i, "match", "matching", "matches") {
			continue
		}
		apart := i < h.first && r.wordsIn(i+1, h.first, "so", "entonces") || i > h.last && r.anyOf(h.last+1, i, thingLinks)
		if !apart {
			return true
		}
	}
	return false
}
