package reading

import "example.com/intake-bot/internal/fitcheck"

// Buildings that are named and are not where the skylight is: the shop's own, and the one
// that a telephone rings in.

var (
	shopPeople    = wordsOf(`alguien persona encargado encargada gerente dueno gente senor muchacho quien`)
	ownPhoneLinks = wordsOf(`my our for on over its it im i were we me to because mi nuestro nuestra para`)
	phoneLinks    = wordsOf(`is es number phone line landline cell at num no numero main telefono s el`)
)

// ofShop: "do you guys have a store I can come by", "your warehouse".
func (r *reader) ofShop(first int) bool {
	if r.wordAt(first, "our", "my", "mi") {
		return false
	}
	if r.wordAt(first, "tienda", "oficina") && r.wordAt(first-1, "la", "su") && r.wordAt(first-2, "de", "en") &&
		r.among(first-3, shopPeople) {
		return true // "¿me podría llamar alguien de la tienda?"
	}
	for i := first - 1; i >= r.clauseStart(first); i-- {
		switch {
		case r.wordAt(i, "your", "ur", "yalls", "su", "sus", "tu"):
			return first-i <= 3 && !r.wordsIn(i+1, first, "number", "numero")
		case r.wordAt(i, "you", "u", "yall", "ya", "ustedes", "tienen"), r.wordAt(i, "guys") && r.wholeAt(i-1) < 0:
			return true
		case r.among(i, ownPhoneLinks):
			return false
		case i == r.sentenceFirst(first) && r.wordAt(i, "is", "r") && r.wordAt(i+1, "this", "that"):
			return r.wordAt(first-1, "the")
		}
	}
	return false
}

// ofPhone: "office is 970 555 0134": where the number rings.
func (r *reader) ofPhone(last int) bool {
	for i := last + 1; i < len(r.toks) && i < last+6; i++ {
		t := &r.toks[i]
		if t.kind == phoneToken {
			return true
		}
		if t.kind == wordToken && !r.among(i, phoneLinks) || t.ends() && !t.mark('.') {
			return false
		}
	}
	return r.asked(fitcheck.TopicPhone) && r.spokenNumberAfter(last+1)
}

// spokenNumberAfter: a number in digits or words follows, with nothing but small words between.
func (r *reader) spokenNumberAfter(i int) bool {
	for r.wordAt(i, "is", "es", "number", "phone", "line", "at") {
		i++
	}
	return i < len(r.toks) && (r.toks[i].kind == numToken || r.spokenDigit(i) >= 0)
}
