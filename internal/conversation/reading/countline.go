package reading

import "example.com/intake-bot/internal/fitcheck"

// The number of skylights in a hurried line, told by its parts where no word for skylights stands behind it:
// a number and a word of pieces or needing ("two needed", "2 pcs"), "ones" behind how they look ("2 pyramid
// ones"), how they are or are to be ("tengo dos quebrados", "price on 2 bronze over clear"), or a verb of harm
// and "all four". Numbers of parts, layers, places and sizes are none.

var (
	// notCounted are words before a number that is no number of pieces.
	notCounted = wordsOf(`in at after past since by no number unit bldg building apt suite ste room phase option of another
		other first last every model type size lot hwy route en a top bottom outer inner over only about
		like`)
	allKindsWords  = wordsOf(`all both todos todas ambos ambas`)
	neededPieces   = wordsOf(`needed wanted pc pcs pzas pza piezas`)
	lineHas        = wordsOf(`tengo have got hay theres are tenemos with w n and y`)
	linePriceAsked = wordsOf(`quote price pricing cost costs much bid`)
	lineHarm       = wordsOf(`smashed broke busted cracked shattered wrecked ruined killed destroyed took got hit
		rompio quebro trono`)
	lineLooks = wordsOf(`pyramid barrel round square flat domed rectangular big small old bronze white clear
		smoked acrylic`)
	partsCounted = wordsOf(`corner corners side sides edge edges layer layers ply pane panes panel panels sheet
		sheets wall walls screw screws bolt bolts clip clips seam seams spot spots place places frame frames curb
		curbs season tab way ways end ends window windows tile tiles shingle shingles inch foot feet ft year years
		time times bedroom story car of x skin wides wide lados esquinas capa capas hojas tornillos lugares partes
		veces ventanas marcos anos pipe pipes boards rooms roofs`)
)

// countInLine takes such a number where it is the only one of the message that can be.
func (r *reader) countInLine() bool {
	if r.Units > 1 || !r.onlyAllMeant() || r.wordsIn(0, len(r.toks), "each", "apiece", "cada", "or", "o") {
		return false
	}
	if r.asked(fitcheck.TopicImpactRisk) || r.asked(fitcheck.TopicLayers) || r.asked(fitcheck.TopicConfirm) {
		return false
	}
	found := r.lineCounts()
	if len(found) != 1 {
		return false
	}
	r.countFact(found[0])
	for i := found[0].first; i <= found[0].last; i++ {
		if _, next := r.countNumber(i); next > i {
			r.use(i, next-1)
		}
	}
	return true
}

// lineCounts are all numbers of the message that may be a count told by its parts.
func (r *reader) lineCounts() []countAt {
	var found []countAt
	for i := 0; i < len(r.toks); i++ {
		if r.wordAt(i, "both", "ambos", "ambas") && r.harmBefore(i) && r.stopAt(i+1) {
			found = append(found, countAt{2, i, i}) // "wind took out both"
			continue
		}
		n, next := r.countNumber(i)
		if next == i || n < 1 || n > 60 || n == 1 && r.toks[i].kind != numToken || r.countsNothing(i, next) {
			continue
		}
		if c, ok := r.lineCount(n, i, next); ok {
			found = append(found, c)
		}
		i = next - 1
	}
	return found
}

// countsNothing: the number is a size's, of layers or other things, denied or only asked about.
func (r *reader) countsNothing(i, next int) bool {
	return r.used(i) || r.measureAt(i) || r.layersCounted(i) || r.countsElse(i, next) || r.fractionAt(next) ||
		r.negated(i) || r.overtaken(i) || r.countAsked(i)
}

// onlyAllMeant: no kind of skylight is called, or only all of them.
func (r *reader) onlyAllMeant() bool {
	for n := range r.refs {
		if !r.among(r.refs[n].first, allKindsWords) {
			return false
		}
	}
	return true
}

func (r *reader) lineCount(n, i, next int) (countAt, bool) {
	if r.numberAround(i, next) || r.among(i-1, notCounted) {
		return countAt{}, false
	}
	if n > 1 && r.wordAt(i-1, "all", "todos", "todas") && r.harmBefore(i-1) && !r.partAfter(next) {
		return countAt{n, i - 1, next - 1}, true // "smashed all four"
	}
	if r.among(next, neededPieces) && (n > 1 || r.toks[i].kind == numToken) && !r.wordAt(next+1, "of", "de") {
		return countAt{n, i, next}, true // "two needed", "2 pcs"
	}
	if n > 1 && next >= len(r.toks) && r.wordAt(i-1, "got", "have", "need", "tengo", "ocupo") {
		return countAt{n, i, next - 1}, true // "… over the outside of the frame got 2"
	}
	return r.lineCountOfLook(n, i, next)
}

// numberAround: another number or a sign of a size stands right beside it.
func (r *reader) numberAround(i, next int) bool {
	return i > 0 && (r.toks[i-1].kind == numToken || r.toks[i].glued) ||
		next < len(r.toks) && r.toks[next].kind == numToken || r.by(next) || r.by(i-1)
}

// lineCountOfLook: how what is counted looks, is or is to be stands behind the number: "2 pyramid ones",
// "tengo dos quebrados", "price on 2 bronze over clear".
func (r *reader) lineCountOfLook(n, i, next int) (countAt, bool) {
	j := r.afterLooks(next)
	switch {
	case j > next && r.wordAt(j, "ones"):
		return countAt{n, i, j}, true
	case r.partAfter(j), r.choiceIs(next, fitcheck.TopicLayers), r.choiceIs(next, fitcheck.TopicUse):
		return countAt{}, false
	case n > 1 && r.choiceIs(next, fitcheck.TopicProblem) && !negWords.has(r.wordText(next)):
		return countAt{n, i, j - 1}, r.among(i-1, lineHas) || r.saysUse(i-1) || r.lineEnds(j)
	case j > next && (r.choiceIs(next, fitcheck.TopicColor) || r.choiceIs(next, fitcheck.TopicMaterial)):
		return countAt{n, i, j - 1}, r.neededBefore(i)
	}
	return countAt{}, false
}

// afterLooks is the first of up to five words that tells nothing of how a skylight looks.
func (r *reader) afterLooks(next int) int {
	j := next
	for j < len(r.toks) && j < next+5 && r.toks[j].kind == wordToken &&
		(r.looksSo(j) || j > next && r.wordAt(j, "over", "and", "y", "con")) {
		j++
	}
	return j
}

// neededBefore: "need 2", "price on 2", "order 2".
func (r *reader) neededBefore(i int) bool {
	return r.among(i-1, needWords) || r.wordAt(i-1, "order", "quote", "price", "buy", "get") ||
		r.wordAt(i-1, "for", "on") && r.anyOf(max(0, i-6), i-1, linePriceAsked)
}

// harmBefore: right before stands what harm was done: "busted all three".
func (r *reader) harmBefore(i int) bool {
	return i > 0 && (r.choiceIs(i-1, fitcheck.TopicProblem) || r.among(i-1, lineHarm))
}

// looksSo: the word tells how a skylight looks or is wanted.
func (r *reader) looksSo(i int) bool {
	return r.among(i, lineLooks) || covers(r.choices, i) && r.countAdjective(i) ||
		r.choiceIs(i, fitcheck.TopicColor) || r.choiceIs(i, fitcheck.TopicMaterial) || r.choiceIs(i, fitcheck.TopicProfile) ||
		r.choiceIs(i, fitcheck.TopicOutline) || r.choiceIs(i, fitcheck.TopicProblem)
}

// partAfter: what is counted are parts, layers or places.
func (r *reader) partAfter(i int) bool {
	return r.among(i, partsCounted) || i < len(r.toks) && r.toks[i].kind == numToken
}
