package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Numbers beside the number of skylights: of people, taken back, of skylights that are fine. They are marked
// as used before anything is counted.

var (
	peopleGroups  = wordsOf(`family household party crew team group familia grupo equipo`)
	countedPeople = wordsOf(`person persons adults people us siblings cents men women ladies painters artists
		retirees seniors adultos centavos personas persona`)
	peopleLinks   = wordsOf(`of for in on from and is are`)
	meantLeads    = wordsOf(`the just only my our los las solo`)
	fineOnesWords = wordsOf(`fine ok okay good alright new newer bien buenos bueno`)
	countedSheets = wordsOf(`domes domos bubbles panels sheets lenses`)
	perOne        = wordsOf(`a one 1 each every un una cada skylight`)
	oneWhole      = wordsOf(`skylight unit tragaluz single curb frame`)
	everyOneIs    = wordsOf(`is has looks got leaks esta tiene`)
)

func (r *reader) numbersBeside() {
	meant := r.meantOnes()
	for i := range r.toks {
		if r.toks[i].used {
			continue
		}
		n, next := r.countNumber(i)
		if next > i && n > 0 && r.notOfSkylights(n, i, next, meant) {
			r.use(i, next-1)
		}
	}
}

func (r *reader) notOfSkylights(n, i, next, meant int) bool {
	return r.ofPeople(i, next) || r.withdrawn(i, next) || meant > i && r.fineOnes(i, meant) ||
		r.domesOfOne(n, next) || r.everyOne(i) || r.tilesOf(next) || r.partHarmed(i, n, next)
}

// ofPeople: "two artists", "three of us", "a family of 5", "one person", "my two sisters".
func (r *reader) ofPeople(i, next int) bool {
	if r.wordAt(i-1, "of", "de") && r.among(i-2, peopleGroups) && (r.stopAt(next) || !countNouns.has(r.toks[next].text)) {
		return true
	}
	if r.wordAt(next, "of") && r.wordAt(next+1, "us", "you") || r.wordAt(next, "de") && r.wordAt(next+1, "nosotros") {
		return true
	}
	for k := next; k < next+3 && k < len(r.toks) && r.toks[k].kind == wordToken; k++ {
		if r.among(k, countedPeople) || severalOfKin(r.toks[k].text) {
			return true
		}
		if r.among(k, peopleLinks) || r.toks[k].word == nil || !r.countAdjective(k) {
			return false
		}
	}
	return false
}

// severalOfKin: "sisters", "roofers".
func severalOfKin(word string) bool {
	if len(word) < 5 || !strings.HasSuffix(word, "s") {
		return false
	}
	one := word[:len(word)-1]
	return kin.has(word) || kin.has(one) || otherPersons.has(one)
}

// withdrawn: "scratch what I said about two of them, it's three", "forget the two, it's four", "olvide lo de
// dos, son tres": another number follows.
func (r *reader) withdrawn(i, next int) bool {
	if !r.asked(fitcheck.TopicCount) {
		return false
	}
	told := r.wordAt(i-1, "you") && r.wordAt(i-2, "told") ||
		r.wordAt(i-1, "said", "dije", "wrote", "texted") && r.wordAt(i-2, "i", "yo", "le", "we", "id")
	return (told || r.anyOf(max(r.sentenceFirst(i), i-7), i, forgetVerbs)) && r.countLater(next)
}

// meantOnes is the number that follows "this is for", "these are for the", -1 where none does: what is said of
// the others is beside the point.
func (r *reader) meantOnes() int {
	for i := range r.toks {
		if !r.thisIsFor(i) {
			continue
		}
		k := i + 1
		for r.among(k, meantLeads) {
			k++
		}
		if n, next := r.countNumber(k); next > k && n > 0 {
			return k
		}
	}
	return -1
}

// thisIsFor: "this is for", "it's for", "asking for", "es para" end at the token.
func (r *reader) thisIsFor(i int) bool {
	if r.wordAt(i, "para") {
		return r.wordAt(i-1, "es", "son")
	}
	return r.wordAt(i, "for") && (r.wordAt(i-1, "its", "asking") ||
		r.wordAt(i-1, "is", "are") && r.wordAt(i-2, "this", "these", "order", "it", "that"))
}

// fineOnes: the number before "this is for …" is of skylights that are sound or others.
func (r *reader) fineOnes(i, meant int) bool {
	return r.wordsIn(max(0, i-3), i+3, "other", "others", "another") || r.anyOf(i, meant, fineOnesWords)
}

// domesOfOne: "need 2 domes for a skylight, inner and outer": the sheets of one.
func (r *reader) domesOfOne(n, next int) bool {
	if n < 2 || !r.among(next, countedSheets) || !r.wordAt(next+1, "for", "on", "in", "para", "per") {
		return false
	}
	return r.among(next+2, perOne) && (r.among(next+3, oneWhole) || r.wordAt(next+2, "skylight"))
}

// everyOne: "with each one circled", and "one" after "none of them".
func (r *reader) everyOne(i int) bool {
	if !r.wordAt(i, "one", "uno", "una") {
		return false
	}
	return r.asked(fitcheck.TopicCount) && r.wordAt(i-1, "each", "cada") ||
		r.among(i+1, everyOneIs) && r.wordsIn(r.sentenceFirst(i), i, "none", "ninguno", "ninguna")
}
