package reading

// numberWord is what a word says as a part of a number.
type numberWord struct {
	kind  numberKind
	value int64
}

type numberKind uint8

const (
	notNumber   numberKind = iota
	digitWord              // one to nine
	teenWord               // ten to nineteen
	tensWord               // twenty, thirty
	wholeWord              // a whole number in one word: veintiuno
	hundredWord            // hundred
	partWord               // the bottom of a fraction: half, quarter, eighth
	soundsLike             // "too", "for", "ate": a number only before a unit
)

// unitNames are the words of 0 to 12, for digits to be found as words.
var unitNames = [...]string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight",
	"nine", "ten", "eleven", "twelve"}

// numberWords are English and Spanish; misspellings are those that people make often.
var numberWords = map[string]numberWord{
	"zero": {wholeWord, 0}, "cero": {wholeWord, 0},
	"one": {digitWord, 1}, "two": {digitWord, 2}, "three": {digitWord, 3}, "four": {digitWord, 4},
	"five": {digitWord, 5}, "six": {digitWord, 6}, "seven": {digitWord, 7}, "eight": {digitWord, 8},
	"nine": {digitWord, 9}, "foure": {digitWord, 4}, "fiv": {digitWord, 5}, "sevn": {digitWord, 7},
	"ten": {teenWord, 10}, "eleven": {teenWord, 11}, "twelve": {teenWord, 12}, "dozen": {teenWord, 12},
	"thirteen": {teenWord, 13}, "fourteen": {teenWord, 14}, "forteen": {teenWord, 14},
	"fifteen": {teenWord, 15}, "sixteen": {teenWord, 16}, "seventeen": {teenWord, 17},
	"eighteen": {teenWord, 18}, "nineteen": {teenWord, 19}, "ninteen": {teenWord, 19},
	"twenty": {tensWord, 20}, "twenny": {tensWord, 20}, "thirty": {tensWord, 30}, "forty": {tensWord, 40},
	"thrity": {tensWord, 30}, "thirdy": {tensWord, 30}, "thirthy": {tensWord, 30}, "twety": {tensWord, 20},
	"twnety": {tensWord, 20}, "fifity": {tensWord, 50},
	"fourty": {tensWord, 40}, "fifty": {tensWord, 50}, "sixty": {tensWord, 60}, "seventy": {tensWord, 70},
	"eighty": {tensWord, 80}, "ninety": {tensWord, 90}, "ninty": {tensWord, 90},
	"hundred": {hundredWord, 100}, "cien": {wholeWord, 100}, "ciento": {hundredWord, 100},
	"half": {partWord, 2}, "halfs": {partWord, 2}, "halves": {partWord, 2}, "haf": {partWord, 2},
	"haff": {partWord, 2}, "ahalf": {partWord, 2}, "aquarter": {partWord, 4},
	"quarter": {partWord, 4}, "fourth": {partWord, 4}, "fourths": {partWord, 4},
	"qtr": {partWord, 4}, "eighth": {partWord, 8}, "eighths": {partWord, 8},
	"eigth": {partWord, 8}, "eights": {partWord, 8},
	"4th": {partWord, 4}, "8th": {partWord, 8}, "16th": {partWord, 16}, "32nd": {partWord, 32},
	"sixteenth": {partWord, 16}, "sixteens": {partWord, 16}, "sixtenths": {partWord, 16},
	"sixteeth": {partWord, 16}, "sixteeths": {partWord, 16},
	"eighs": {partWord, 8}, "eighthes": {partWord, 8}, "eigthths": {partWord, 8}, "eightth": {partWord, 8},
	"eightths": {partWord, 8}, "eigths": {partWord, 8},
	"qtrs": {partWord, 4}, "quaters": {partWord, 4}, "quarer": {partWord, 4}, "quater": {partWord, 4},
	"quarters": {partWord, 4}, "sixteenths": {partWord, 16}, "third": {partWord, 3}, "thirds": {partWord, 3},
	"to": {soundsLike, 2}, "too": {soundsLike, 2}, "tu": {soundsLike, 2}, "for": {soundsLike, 4},
	"fore": {soundsLike, 4}, "fir": {soundsLike, 4}, "ate": {soundsLike, 8}, "won": {soundsLike, 1},
	"tree": {soundsLike, 3}, "free": {soundsLike, 3}, "sex": {soundsLike, 6}, "tin": {soundsLike, 10},

	"uno": {digitWord, 1}, "un": {soundsLike, 1}, "una": {soundsLike, 1}, "dos": {digitWord, 2},
	"tres": {digitWord, 3}, "cuatro": {digitWord, 4}, "quatro": {digitWord, 4}, "cinco": {digitWord, 5},
	"sinco": {digitWord, 5}, "seis": {digitWord, 6}, "siete": {digitWord, 7}, "ocho": {digitWord, 8},
	"nueve": {digitWord, 9}, "diez": {teenWord, 10}, "once": {soundsLike, 11}, "doce": {teenWord, 12},
	"docena": {teenWord, 12}, "trece": {teenWord, 13}, "catorce": {teenWord, 14}, "quince": {teenWord, 15},
	"dieciseis": {teenWord, 16}, "diecisiete": {teenWord, 17}, "dieciocho": {teenWord, 18},
	"diecinueve": {teenWord, 19}, "veinte": {tensWord, 20}, "veintiuno": {wholeWord, 21},
	"veintiun": {wholeWord, 21}, "veintidos": {wholeWord, 22}, "veintitres": {wholeWord, 23},
	"veinticuatro": {wholeWord, 24}, "veinticinco": {wholeWord, 25}, "veintiseis": {wholeWord, 26},
	"veintisiete": {wholeWord, 27}, "veintiocho": {wholeWord, 28}, "veintinueve": {wholeWord, 29},
	"beinte": {tensWord, 20}, "beintiuno": {wholeWord, 21}, "beintidos": {wholeWord, 22}, "beintitres": {wholeWord, 23},
	"beinticuatro": {wholeWord, 24}, "beinticinco": {wholeWord, 25}, "beintiseis": {wholeWord, 26},
	"beintisiete": {wholeWord, 27},
	"beintiocho":  {wholeWord, 28}, "beintinueve": {wholeWord, 29}, "trenta": {tensWord, 30},
	"sincuenta": {tensWord, 50}, "cinquenta": {tensWord, 50},
	"treinta": {tensWord, 30}, "cuarenta": {tensWord, 40}, "quarenta": {tensWord, 40},
	"cincuenta": {tensWord, 50}, "sesenta": {tensWord, 60}, "setenta": {tensWord, 70},
	"ochenta": {tensWord, 80}, "noventa": {tensWord, 90},
	"medio": {partWord, 2}, "media": {partWord, 2}, "medios": {partWord, 2}, "mitad": {partWord, 2},
	"cuarto": {partWord, 4}, "cuartos": {partWord, 4}, "octavo": {partWord, 8}, "octavos": {partWord, 8},
	"dieciseisavo": {partWord, 16}, "dieciseisavos": {partWord, 16},
}

// cardinal reads a whole number in words from token i; next is the token after it, i
// where there is none.
func (r *reader) cardinal(i int) (value int64, next int) {
	n := r.numberAt(i)
	switch n.kind {
	case wholeWord, teenWord:
		value, next = n.value, i+1
	case tensWord:
		value, next = r.afterTens(i, n.value)
	case digitWord:
		value, next = n.value, i+1
	case hundredWord:
		value, next = 0, i
	default:
		return 0, i
	}
	if h := r.numberAt(next); h.kind == hundredWord {
		return r.afterHundred(next, max(value, 1)*h.value)
	}
	return value, next
}

// afterTens adds the ones: "twenty five", "twenty-five", "treinta y dos"; not those
// that start a fraction: "twenty five eighths" is twenty and five eighths.
func (r *reader) afterTens(i int, tens int64) (int64, int) {
	j := i + 1
	if r.markAt(j, '-') || r.wordAt(j, "y", "i") {
		j++
	}
	if d := r.numberAt(j); d.kind == digitWord && !r.used(j) {
		part := r.numberAt(j + 1)
		if part.kind != partWord || part.value < 8 && part.value != 4 || r.numberAt(j+2).kind == partWord {
			return tens + d.value, j + 1
		}
		if part.kind == partWord && part.value == 4 && d.value == 1 {
			return tens, i + 1 // "twenty one quarter"
		}
		if part.value <= d.value {
			return tens + d.value, j + 1
		}
	}
	return tens, i + 1
}

// afterHundred adds what follows: "one hundred and twenty two", "ciento veinte".
func (r *reader) afterHundred(i int, hundreds int64) (int64, int) {
	j := i + 1
	if r.wordAt(j, "and") {
		j++
	}
	switch r.numberAt(j).kind {
	case wholeWord, teenWord, tensWord, digitWord:
		rest, next := r.cardinal(j)
		if next > j && rest < 100 && rest > 0 && r.numberAt(next).kind != partWord {
			return hundreds + rest, next
		}
	}
	return hundreds, i + 1
}

func (r *reader) numberAt(i int) numberWord {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken || r.toks[i].word == nil || r.toks[i].used {
		return numberWord{}
	}
	if r.toks[i].is("for") && r.fortTown(i+1) {
		return numberWord{} // "order for Ft. Collins"
	}
	if r.toks[i].word.number.kind == partWord && r.toks[i].is("medio") && r.wordAt(i-1, "en") && r.wordAt(i+1, "del", "de") {
		return numberWord{} // "por en medio del marco"
	}
	return r.toks[i].word.number
}

// fortTown: "Ft. Collins": a word follows that is neither a number nor a side's.
func (r *reader) fortTown(i int) bool {
	if !r.wordAt(i, "ft") {
		return false
	}
	if i++; r.markAt(i, '.') {
		i++
	}
	return i < len(r.toks) && r.toks[i].kind == wordToken && len(r.toks[i].text) > 3 &&
		(r.toks[i].word == nil || !r.toks[i].word.common && !r.toks[i].word.filler && r.toks[i].word.number.kind == notNumber)
}

func (r *reader) wordAt(i int, words ...string) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].is(words...)
}

func (r *reader) markAt(i int, c byte) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].mark(c)
}

func (r *reader) used(i int) bool { return i >= 0 && i < len(r.toks) && r.toks[i].used }

// wholeAt is the whole number at a token, in digits or one word; -1 where there is none.
func (r *reader) wholeAt(i int) int64 {
	if i < 0 || i >= len(r.toks) {
		return -1
	}
	t := &r.toks[i]
	if t.kind == numToken && t.dec == 0 && !t.bad {
		return t.whole
	}
	if v, next := r.cardinal(i); next == i+1 {
		return v
	}
	return -1
}
