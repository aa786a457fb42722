package reading

import "example.com/intake-bot/internal/fitcheck"

// "I need two replacement domes" asks for domes, not for whole skylights: a wish that names
// what is wanted by the plastic part alone.

var (
	notTheDomeAlone = wordsOf(`skylight skylights skylite skylites style styles unit units shape shaped type types
		light lights window windows assembly assemblies kind ones cleaned off removed fixed checked repaired sealed
		resealed or vs versus out gone back o completo completos completa`)
	withFrameWords = wordsOf(`frame frames curb curbs flashing marco marcos base everything todo`)
	wishForWords   = wordsOf(`a an some the of new replacement plastic acrylic polycarbonate polycarb poly lexan
		plexiglass plexiglas skylight sky light round square double single triple layer layered walled clear tinted
		smoked un una unos unas el la los las nuevo nuevos nueva de repuesto plastico acrilico couple few another pair
		more big large small good cheap same inch custom size sized foot ft by for on para`)
	wishEndWords = wordsOf(`need needs needing want wants wanting looking order buy quote price prices pricing
		priced after wanted necesito necesitamos ocupo ocupamos quiero queremos busco buscando comprar cotizar
		cotizacion precio replace replacing`)
	wishSubjects = wordsOf(`i we do should if you u yall they he she it ustedes usted`)
	sellOpeners  = wordsOf(`sell sells make makes carry have do stock about in interested require requesting request
		hi hello venden tienen hacen ofrecen`)
)

// wishedDome records that only the dome is wanted, where a wish names it and nothing speaks
// of a frame or a whole unit.
func (r *reader) wishedDome() {
	if r.known(fitcheck.TopicWant) || r.doubtful(fitcheck.TopicWant) {
		return
	}
	for _, a := range r.Asked {
		if (a == fitcheck.TopicStyle || a == fitcheck.TopicFrameCondition) && r.wordsIn(0, len(r.toks), "just", "only", "rather") {
			continue // "frame is solid, we'd rather just replace the bubble"
		}
		if a != fitcheck.TopicName && a != fitcheck.TopicPlace && a != fitcheck.TopicUse && a != fitcheck.TopicProblem &&
			a != fitcheck.TopicCount {
			return
		}
	}
	for n := range r.wants {
		if s := r.wants[n].senses[0]; s.topic == fitcheck.TopicWant && s.value != fitcheck.WantDomeOnly && !s.asked {
			return // "the whole thing, dome and frame"
		}
	}
	if r.frameToo() || r.saysNoneYet() ||
		r.wordsIn(0, len(r.toks), "glass", "vs", "versus", "complete", "completo", "completa", "addition", "building", "construyendo") {
		return // "need new domes but the metal has to go as well"
	}
	for i := range r.toks {
		plastic := r.wordAt(i, "lens", "lenses", "plastic", "acrylic") && r.wordAt(i-1, "replacement")
		if !plastic && !r.wordAt(i, "dome", "domes", "bubble", "bubbles", "domo", "domos", "burbuja", "burbujas") || r.wholeNamed(i+1) {
			continue
		}
		if first := r.wishFor(i); first >= 0 && !r.negated(i) && !r.negated(first) && !r.hearsay(i) &&
			!r.wordsIn(r.clauseStart(i), i, "neighbor", "neighbors", "neighbour", "vecino", "vecina", "his", "her", "their") {
			r.fact(fitcheck.TopicWant, 0, fitcheck.Choice(fitcheck.WantDomeOnly), first, i)
			return
		}
	}
}

// wholeNamed: the words from token i on make more than a dome of it: "dome skylight",
// "domes with frames".
func (r *reader) wholeNamed(i int) bool {
	if r.among(i, notTheDomeAlone) {
		return true
	}
	if i < len(r.toks) && r.toks[i].kind == wordToken && !domeFollowers.has(r.toks[i].text) {
		return true // "dome gasket", "dome tracking number"
	}
	for k := i; k < i+5 && k < len(r.toks); k++ {
		if r.wordAt(k, "new", "nuevo") && r.wordAt(k+1, "room", "stairwell", "house", "cuarto") ||
			r.wordAt(k, "room", "cuarto") && r.wordAt(k+1, "nuevo") {
			return true // "a dome for my new room"
		}
		if r.wordAt(k, "and", "with", "plus", "y", "con") && !r.frameIs(k+1) && (r.anyOf(k+1, k+4, withFrameWords)) {
			return true
		}
	}
	return false
}

// wishFor is the token at which a wish for the dome at token i begins, -1 without one.
func (r *reader) wishFor(i int) int {
	j, fresh := i-1, false
	for ; j >= 0; j-- {
		t := &r.toks[j]
		fresh = (fresh || r.wordAt(j, "replacement", "repuesto")) && !r.wordAt(j, "the", "el", "los")
		switch {
		case t.kind == numToken || r.by(j) || r.unitAt(j) != noUnit || isWhole(numberWords[t.text].kind) || r.colorAt(j):
		case t.mark('"') || t.mark('\'') || t.mark('/') || t.mark('-') || t.mark('(') || t.mark(')'):
		case r.among(j, wishForWords):
		default:
			return r.wishEnds(i, j, fresh)
		}
	}
	return r.wishEnds(i, j, fresh)
}

// wishEnds: the words up to token j ask for what follows; a "replacement dome" needs no
// verb where nothing says that it was had before.
func (r *reader) wishEnds(i, j int, fresh bool) int {
	if j >= 0 && r.among(j, wishEndWords) && !r.among(j-1, wishSubjects) ||
		j >= 1 && r.wordAt(j, "need", "want", "order", "needed") && r.wordAt(j-1, "i", "we") &&
			!r.wordAt(j-2, "do", "should", "if", "did", "would", "think", "will", "when") {
		return j
	}
	if j >= 1 && r.wordAt(j, "me", "us") && r.wordAt(j-1, "sell", "send", "ship", "get", "mail") &&
		(j == 1 || r.softBreak(j-2) || r.sentenceEnd(j-2) || r.wordAt(j-2, "please", "just", "so")) {
		return j - 1 // "dome is toast. Sell me a dome."
	}
	if r.wordAt(j, "down") && r.wordAt(j-1, "track", "hunt") {
		j-- // "trying to track down a new dome"
	}
	if j >= 1 &&
		(r.wordAt(j, "like", "get") || r.wordAt(j, "find", "locate", "source", "track", "hunt") && !r.wordsIn(j, i, "for")) &&
		(r.wordAt(j-1, "id", "would", "to", "can", "could", "we") || r.wordAt(j-2, "can", "could")) {
		return j
	}
	if fresh && (j < 0 || r.toks[j].kind == markToken || r.among(j, sellOpeners)) {
		return j + 1
	}
	return -1
}

// saysNoneYet: there is no skylight so far, so "a dome" is a whole one.
func (r *reader) saysNoneYet() bool {
	for n := range r.out.Facts {
		if c, ok := r.out.Facts[n].Value.(fitcheck.Choice); ok && r.out.Facts[n].Topic == fitcheck.TopicStyle &&
			string(c) == fitcheck.StyleNoneYet {
			return true
		}
	}
	return r.wordsIn(0, len(r.toks), "hoyo", "hueco") && r.wordsIn(0, len(r.toks), "todavia", "aun")
}

// domeFollowers are words that may follow "dome" where a dome is what is asked for.
var domeFollowers = wordsOf(`wanted needed for on over in at to with that which please pls asap thanks thank and
	but only by from delivered overnighted overnight shipped as like edge since because cuz it its i im my our mine
	the is are double single triple acrylic polycarbonate plastic clear white bronze round square about around made
	measures measuring size sized that thats this today now soon quick fast replacement replacements new if when
	where who we they you u not no x by inch inches ft feet plz ok hi hello real really badly bad made up para de
	en con por que y nuevo nuevos nueva redondo redondos acrilico blanco claro transparente urgente porque pues mi
	el la los las es son mide miden ya hoy se me`)

// frameToo: the frame is to be replaced as well: "the metal has to go as well", "frame needs
// replaced too".
func (r *reader) frameToo() bool {
	for i := range r.toks {
		if r.wordAt(i, "frame", "frames", "metal", "marco", "marcos") &&
			(r.wordsIn(i+1, min(i+8, len(r.toks)), "too", "also", "tambien", "replaced") ||
				r.wordsIn(i+1, min(i+8, len(r.toks)), "well") && r.wordsIn(i+1, min(i+8, len(r.toks)), "as")) {
			return true
		}
	}
	return false
}

// frameIs: what follows only says what the frame is like: "and the frame is fine".
func (r *reader) frameIs(i int) bool {
	for ; r.wordAt(i, "the", "my", "our", "el", "los", "metal"); i++ {
	}
	return r.wordAt(i, "frame", "frames", "marco", "marcos") &&
		r.wordAt(i+1, "is", "are", "looks", "s", "stays", "stay", "esta", "estan", "se")
}
