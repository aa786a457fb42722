package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds of unit told apart by their shape or how large they are: "a round one screwed down and
// a square one in a metal frame", "el redondo es de 36 y el cuadrado de 24 x 24".

var (
	lookJoins        = wordsOf(`or o not no with con on in over en sobre like como than is es its instead of`)
	oneLookWords     = wordsOf(`a an un una uno one`)
	afterCountedLook = wordsOf(`and y in with that are is son es de mide miden`)
	spanishLookLeads = wordsOf(`el los la las uno una un dos tres`)
	lookArticles     = wordsOf(`a an one the my un una uno el la los las`)
)

// lookOf says which words tell of one look; a kind has one of them.
var lookOf = looksOf(map[string]string{
	"round":     `round rounds circular redondo redonda redondos redondas`,
	"square":    `square squares cuadrado cuadrada cuadrados cuadradas`,
	"rectangle": `rectangular rectangulares rectangle rectangles oblong`,
	"long":      `long longer largo largos skinny narrow angosto angostos angosta angostas`,
	"pyramid":   `pyramid pyramids piramide piramides`,
	"barrel":    `barrel barrels barril barriles`,
	"flat":      `flat flats plano planos`,
	"dome":      `bubble domed`,
	"big":       `big bigger large larger huge grande grandes`,
	"small": `small smaller little tiny wee chico chica chicos chicas pequeno pequena pequenos pequenas chiquito
		chiquita chiquitos chiquitas`,
})

// looksOf is the look of each word, of lists of words by look.
func looksOf(lists map[string]string) map[string]string {
	looks := map[string]string{}
	for look, list := range lists {
		for _, word := range strings.Fields(list) {
			looks[word] = look
		}
	}
	return looks
}

// lookSort parts the looks that one skylight can have at once: a shape, a profile, how large.
var lookSort = map[string]int{
	"round": 1, "square": 1, "rectangle": 1, "long": 1,
	"pyramid": 2, "barrel": 2, "flat": 2, "dome": 2,
	"big": 3, "small": 3,
}

// IsLook says whether a word tells how a skylight looks: "round", "grandes". It never fails.
func IsLook(word string) bool { return lookOf[word] != "" }

// AddLook adds a look to those of a kind, which stand behind each other: "big rectangle". It never
// fails.
func AddLook(looks, look string) string {
	have := strings.Fields(looks)
	for _, l := range strings.Fields(look) {
		if !slices.Contains(have, l) {
			have = append(have, l)
		}
	}
	return strings.Join(have, " ")
}

// lookUnits finds such kinds where two or more of different looks are named, all with an article of
// the same sort or a number.
func (r *reader) lookUnits() {
	if len(r.refs) > 0 || r.Units > 1 || r.wordsIn(0, len(r.toks), "instead", "rather", "lugar", "vez") || r.asksAnything() {
		return
	}
	named, ok := r.namedLooks()
	if !ok || len(named.looks) < 2 {
		return
	}
	r.refs = named.refs
	r.countLooks(named.refs)
	for k, i := range named.at {
		r.lookFact(k+1, named.looks[k], i)
	}
}

// namedLook are the kinds that a message tells apart by their looks.
type namedLook struct {
	refs  []unitRef
	looks []string // by kind
	at    []int    // by kind: the token that first tells its look
}

// namedLooks finds the kinds; not ok where one skylight has the looks, or where only some have an article
// that names a kind as known: "the round one …" is told apart as a room is; "the round one cracked, I want
// a square one".
func (r *reader) namedLooks() (named namedLook, ok bool) {
	article, known := false, false
	for i := range r.toks {
		look := r.lookAt(i)
		if look == "" {
			continue
		}
		first, last, ok := r.lookNamed(i)
		if !ok {
			continue
		}
		if len(named.looks) > 0 && r.among(first-1, lookJoins) || r.sameSkylight(&named, look, first) {
			return named, false // "a round one, not a square one", "a round dome on a square unit"
		}
		the := r.wordAt(first, "the", "el", "la", "los", "las") || r.wordAt(first-1, "los", "las")
		article, known = article || !the, known || the
		before := len(named.looks)
		named.looks, named.refs = r.seeRoom(named.looks, named.refs, look, first, last)
		if len(named.looks) > before {
			named.at = append(named.at, i)
		}
	}
	return named, !(article && known) && (article || r.spanishShapes(named.at))
}

// sameSkylight: "a large skylight, a square one": two looks of different sorts, which one skylight has.
func (r *reader) sameSkylight(named *namedLook, look string, first int) bool {
	n := len(named.refs)
	if n == 0 {
		return false
	}
	before := &named.refs[n-1]
	return lookSort[look] != lookSort[named.looks[before.units[0]-1]] && !r.wordsIn(before.last+1, first, "and", "y", "plus")
}

// lookFact records what a look at a token tells of a kind.
func (r *reader) lookFact(unit int, look string, i int) {
	switch look {
	case "round":
		r.fact(fitcheck.TopicOutline, unit, fitcheck.Choice("round"), i, i)
	case "pyramid", "barrel", "flat", "dome":
		r.fact(fitcheck.TopicProfile, unit, fitcheck.Choice(look), i, i)
	case "square", "rectangle", "long":
		r.fact(fitcheck.TopicOutline, unit, fitcheck.Choice("rectangle"), i, i)
	}
}

// countLooks: "a round one and two square ones": where each kind is named with an article or a
// number, that is how many there are.
func (r *reader) countLooks(found []unitRef) {
	counts := map[int]countAt{}
	for _, ref := range found {
		n := r.wholeSaid(ref.first)
		la := r.wordAt(ref.first, "el", "la") && ref.first != found[0].first && r.wholeSaid(found[0].first) > 0
		if la || r.among(ref.first, oneLookWords) {
			n = 1
		}
		if _, again := counts[ref.units[0]]; n > 0 && !again {
			counts[ref.units[0]] = countAt{n, ref.first, ref.first}
		}
	}
	sum := 0
	for _, c := range counts {
		sum += c.value
	}
	for i := range found[0].first {
		if int(r.wholeAt(i)) == sum && (r.markAt(i+1, ',') || r.markAt(i+1, ':')) {
			r.use(i, i) // "I have 2, a round one and a square one"
		}
	}
	for unit := 1; unit <= len(found); unit++ {
		if c := counts[unit]; c.value > 0 {
			r.use(c.first, c.last)
			r.fact(fitcheck.TopicCount, unit, fitcheck.Whole(c.value), c.first, c.last)
		}
	}
}

// spanishShapes: "el redondo … y el cuadrado": the look itself is the noun.
func (r *reader) spanishShapes(at []int) bool {
	for _, i := range at {
		if !r.wordAt(i-1, "el", "la", "los", "las") && !(r.wholeSaid(i-1) > 1 && r.wordAt(i-2, "los", "las")) {
			return false
		}
	}
	return true
}

// lookNamed says from where to where a skylight is called by the look at a token: after an
// article or a number, and beside a word for a skylight or, in Spanish, alone.
func (r *reader) lookNamed(i int) (first, last int, ok bool) {
	first, last = i, i
	switch {
	case r.noun(i+1) || r.wordAt(i+1, "one", "ones", "squares", "rounds"):
		last = i + 1
	case r.noun(i - 1):
		first = i - 1 // "un domo redondo"
	}
	if (i == 0 || r.toks[i-1].kind == markToken) && r.pairAt(i+1) {
		return i, i, true // "pyramid 37 1/2 x 37 1/2, the two flat ones …"
	}
	if !r.determined(first - 1) {
		return 0, 0, false
	}
	if r.lookCounted(i) || r.lookBySize(i) || r.lookByItself(i) {
		return first - 1, last, true
	}
	return first - 1, last, last > i || first < i || r.among(i-1, spanishLookLeads) && !r.wordAt(i+1, "de", "del")
}

// lookCounted: "one round and two rectangular".
func (r *reader) lookCounted(i int) bool {
	n := r.wholeAt(i - 1)
	return (n > 0 && n < 50 || r.wordAt(i-1, "one")) && !r.markAt(i-2, '/') && (r.stopAt(i+1) || r.among(i+1, afterCountedLook))
}

// lookBySize: "one square 24 x 24".
func (r *reader) lookBySize(i int) bool {
	return r.wordAt(i-1, "one", "a", "un", "una") && i+1 < len(r.toks) && r.toks[i+1].kind == numToken
}

// lookByItself: "2 domes and a pyramid".
func (r *reader) lookByItself(i int) bool {
	return r.wordAt(i-1, "a", "one", "1") && (r.nounLook(i) || r.domeWord(i)) && r.groupEnds(i+1)
}

// determined: an article, or a number of things.
func (r *reader) determined(i int) bool {
	if i < 0 {
		return false
	}
	n := r.wholeSaid(i)
	return r.among(i, lookArticles) || n > 0 && n < 50
}

// asksAnything: the message has a question mark.
func (r *reader) asksAnything() bool {
	for i := range r.toks {
		if r.markAt(i, '?') {
			return true
		}
	}
	return false
}
