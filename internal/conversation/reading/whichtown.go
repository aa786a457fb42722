package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Which of the towns of one name is meant.

var (
	churchNames = wordsOf(`baptist methodist lutheran presbyterian fellowship ministries tabernacle cathedral
		elementary preschool montessori academy apartments island islands county township episcopal nazarene`)
	afterTo = wordsOf(`going goes go get moved moving move sent send mail mailed close closer near next drive coming
		freight up out over down back`)
	townCorrected = wordsOf(`town city place location ciudad pueblo lugar im we were am live ship ships goes going
		vivo estoy estamos not no envio`)
)

// unaskedPopulation is how many people live in a town that is taken for meant where no place
// was asked for.
const unaskedPopulation = 5_000

// surelyMeant finds the town that a name alone means: the one well-known town, or the only
// one of that name ("Kalispell") where the name is no other word.
func (r *reader) surelyMeant(first, last int, name string) (place.Entry, bool) {
	if e, ok := place.WellKnown(name); ok {
		return e, true
	}
	asked := r.asked(fitcheck.TopicPlace)
	told := r.wordAt(first-1, "is", "es", "called") && r.wordAt(first-2, "town", "city", "ciudad", "pueblo") // "town is Ruidoso"
	if w := r.toks[first].word; first == last && w != nil && !told &&
		(!asked || w.common || w.filler || w.trade || w.given && r.asked(fitcheck.TopicName)) {
		return place.Entry{}, false
	}
	e, ok := place.Only(name)
	return e, ok && (asked || e.Population >= unaskedPopulation)
}

// inNamedState finds the town of a name in the one state that the message names elsewhere:
// "Ontario, the California one", "do you ship to Alaska, we are in Homer".
func (r *reader) inNamedState(first, last int, name string) (place.Entry, bool) {
	var buf [8]string
	state := ""
	for i := 0; i < len(r.toks); i++ {
		// "… the one they say Bew-fort, SC"
		short := len(r.toks[i].text) == 2 && r.wordAt(i-1, "the") && r.wordAt(i+1, "one", "side") ||
			len(r.toks[i].text) == 2 && r.markAt(i-1, ',') && (i+1 >= len(r.toks) || r.sentenceEnd(i+1)) && r.asked(fitcheck.TopicPlace)
		if i >= first && i <= last || r.toks[i].kind != wordToken || len(r.toks[i].text) < 4 && !short || r.overtaken(i) {
			continue
		}
		n, code := place.ScanState(r.wordsFrom(i, 3, buf[:]))
		if n == 0 {
			continue
		}
		if r.wordsIn(max(0, i-3), i, "not", "no", "moved", "from") {
			continue
		}
		if state != "" && state != code {
			return place.Entry{}, false
		}
		state = code
	}
	if state == "" {
		return place.Entry{}, false
	}
	towns := place.Towns(name, state)
	if len(towns) == 0 {
		return place.Entry{}, false
	}
	return towns[0], true
}

// ofFirm: the word before is part of a name of a church, a school or a firm: "from Mt Zion
// Baptist".
func (r *reader) ofFirm(i int) bool {
	return i < len(r.toks) && r.among(i, firmWords)
}

// churchWord: "Grace Fellowship", "Faith Chapel": no family is called so.
func (r *reader) churchWord(i int) bool {
	return r.among(i, churchNames)
}

var firmWords = wordsOf(`baptist methodist lutheran presbyterian catholic episcopal mennonite nazarene
	pentecostal adventist church chapel cathedral fellowship ministries ministry assembly temple synagogue mosque
	elementary academy preschool daycare montessori university roofing construction builders contracting
	contractors remodeling exteriors glazing glass plumbing electric properties property management realty rentals
	apartments apts dental clinic veterinary hospital motel hotel inn diner grill cafe bakery llc inc corp company
	enterprises industries farms dairy nursery greenhouse storage warehouse lodge foundation library museum iglesia
	escuela construcciones techos`)

// verbAfterTo: "do I need to hunt up a roofer": after "to", where nothing is sent or moved, a
// town's name that is no well-known one's is more likely what somebody does.
func (r *reader) verbAfterTo(i int) bool {
	if !r.wordAt(i-1, "to") || r.shipsTo(i) || r.sentThere(i) {
		return false
	}
	for k := i - 2; k >= 0 && k > i-5 && r.toks[k].kind == wordToken; k-- {
		if t := r.toks[k].text; strings.HasPrefix(t, "ship") || strings.HasPrefix(t, "deliver") || r.among(k, afterTo) {
			return false
		}
	}
	_, known := place.WellKnown(r.toks[i].text)
	return !known
}

// correctsTown: "town is wrong, its Visalia", "no, I'm in Chico not Fresno": said of the
// summary, or of the town itself.
func (r *reader) correctsTown(i int) bool {
	if !r.asked(fitcheck.TopicConfirm) || r.negated(i) {
		return false
	}
	if r.wordAt(i+1, "not", "no") && r.surelyTown(i) && r.surelyTown(i+2) {
		return true // "Mesa not Tempe"
	}
	if r.markAt(i+1, ',') && r.wordAt(i+2, "not", "no") && r.anyTown(i) && r.surelyTown(i+3) {
		return true // "it is Enid, not Edmond"
	}
	if !r.wordAt(i-1, "its", "is", "be", "in", "to", "es", "en", "say") {
		return false
	}
	named := r.wordsIn(max(0, i-8), i, "town", "city", "place", "location", "ciudad", "pueblo", "lugar")
	if w := r.toks[i].word; w != nil && !named && !r.wordAt(i-1, "in", "to", "en") && !r.wordAt(i, "el", "la", "las", "los") &&
		(w.common || w.filler || w.trade) ||
		!named && !r.surelyTown(i) {
		return false // "the color should be white"
	}
	return r.anyOf(max(0, i-8), i, townCorrected)
}

// anyTown: the word is a well-known town, though it may be a name as well.
func (r *reader) anyTown(i int) bool {
	_, ok := place.WellKnown(r.toks[i].text)
	return ok
}
