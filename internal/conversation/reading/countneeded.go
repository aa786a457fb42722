package reading

import "example.com/intake-bot/internal/fitcheck"

// How many are needed, told without a word for skylights behind the number.

var (
	buildingArticles = wordsOf(`the my our his her their a el la mi su una un nuestra nuestro`)
	recountedIs      = wordsOf(`are theres its is have son hay`)
	listNames        = quantityWords.and(`skylights domes units tragaluces domos`)
	eachPlaces       = wordsOf(`buildings houses units apartments condos cabins trailers duplexes sheds barns garages
		homes rooms bathrooms rentals offices classrooms churches casas edificios`)
	oneAloneWords = wordsOf(`solo sola solito solita solamente unicamente`)
)

// needWords stand before a number of pieces, whoever needs them.
var needWords = wordsOf(`need needs want wants needing wanting require necesito necesita necesitamos ocupo ocupa
	ocupamos quiero quiere queremos falta faltan`)

// forBuilding: "necesito dos para el garaje", "need two for the barn": what follows the number
// names where they go. "One for my RV" may be said of any number.
func (r *reader) forBuilding(i int) bool {
	if !r.wordAt(i, "for", "para") || !r.among(i+1, buildingArticles) {
		return false
	}
	return r.saysUse(i+2) || r.saysUse(i+3)
}

// putDownFor: "put me down for eleven", "sign us up for 4".
func (r *reader) putDownFor(j int) bool {
	return r.wordAt(j, "for") && r.wordAt(j-1, "down", "up") && r.wordAt(j-2, "me", "us") &&
		r.wordAt(j-3, "put", "sign", "mark", "write")
}

// recounted: "I counted wrong, there are seven", "just recounted and it's 5".
func (r *reader) recounted(j int) bool {
	if !r.among(j, recountedIs) {
		return false
	}
	return r.wordsIn(0, j, "miscounted", "recounted", "miscount", "recount") ||
		r.wordsIn(0, j, "counted", "count", "conte", "contamos") && r.wordsIn(0, j, "wrong", "off", "again", "mal", "bien")
}

// listedCount: "Name: Neil. Skylights: 3.": a list of answers with their names.
func (r *reader) listedCount(j int) bool {
	if !r.among(j-1, listNames) || !r.markAt(j, ':') && !(r.markAt(j, '-') && !r.toks[j].glued) {
		return false
	}
	return j == 1 || r.sentenceEnd(j-2) || r.markAt(j-2, ',') || r.markAt(j-2, ';') || r.wordAt(j-2, "of", "de")
}

// madeInstead: "make that two instead of one", where the talk tells no number yet.
func (r *reader) madeInstead(i, next int) bool {
	return r.wordAt(i-1, "it", "that") && r.wordAt(i-2, "make") && r.wordAt(next, "instead") && r.wordAt(next+1, "of") &&
		r.wholeSaid(next+2) > 0 && r.endsCount(next+3)
}

// eachBuilding: "three office buildings, one skylight each": how many there are on each, and not in
// all.
func (r *reader) eachBuilding(n, next int) bool {
	return n == 1 && r.wordAt(next, "each", "apiece", "per") && r.anyOf(0, next, eachPlaces)
}

// timesAnswer: "x3", "3x" as the answer to how many.
func (r *reader) timesAnswer() (countAt, bool) {
	if len(r.toks) < 2 || len(r.toks) > 3 || len(r.toks) == 3 && r.toks[2].kind != markToken {
		return countAt{}, false
	}
	at := 1
	if r.toks[0].kind == numToken {
		at = 0
	}
	t := &r.toks[at]
	if t.kind != numToken || t.dec > 0 || t.bad || t.whole < 1 || t.whole > 99 || !r.wordAt(1-at, "x") {
		return countAt{}, false
	}
	return countAt{int(t.whole), 0, 1}, true
}

// oneAlone: "es uno solo", "nada más es una": one, and no more.
func (r *reader) oneAlone(i int) bool {
	if !r.wordAt(i, "uno", "una") || r.layersCounted(i) || r.asked(fitcheck.TopicLayers) {
		return false
	}
	onlyIs := r.wordAt(i-1, "es") && r.wordAt(i-2, "solo", "nomas", "mas", "solamente")
	if onlyIs && r.stopAt(i+1) {
		return true
	}
	return (onlyIs || r.among(i+1, oneAloneWords)) && r.stopAt(i+2)
}
