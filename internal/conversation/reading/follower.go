package reading

// What may stand after a length, and what makes the number before it a count or a code.

var (
	fastenersCounted = wordsOf(`screws bolts nails clips washers tornillos`)
	furtherNth       = wordsOf(`2nd 3rd second third segunda segundo`)
)

// countsOther says whether the words after a number without unit make it a count or
// a code: a known small word, a side's name or a sign may follow a length, little else.
func (r *reader) countsOther(i int) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	switch t.kind {
	case numToken, mailToken, phoneToken, linkToken:
		return false
	case markToken:
		return r.codeMark(i)
	}
	if t.text == "x" || r.by(i) || r.by(i-2) && i >= 3 && (r.toks[i-3].kind == numToken || r.unitAt(i-3) != noUnit) {
		return false
	}
	if t.is("of") {
		return true
	}
	if r.among(i, furtherNth) && r.numberAfter(i+1) {
		return false // "1st diagonal 71.25 2nd 71.375"
	}
	if h := r.labelFrom(i); h != nil {
		return r.labelCounts(h, i)
	}
	if t.glued && r.toks[i-1].kind == numToken {
		return true
	}
	return !lengthFollowers.has(t.text) && (t.word == nil || !t.word.filler && t.word.number.kind == notNumber)
}

// codeMark: a sign that makes the number before it none of inches: "50%", "8:30", "20$".
func (r *reader) codeMark(i int) bool {
	switch t := &r.toks[i]; t.text[0] {
	case '%', '$':
		return true
	case ':':
		return t.glued && i+1 < len(r.toks) && r.toks[i+1].glued
	case '#':
		return t.glued
	}
	return false
}

func (r *reader) labelCounts(h *hit, i int) bool {
	s := h.senses[0]
	if r.among(i, fastenersCounted) {
		return true // "six screws each side"
	}
	switch s.kind {
	case "other":
		return s.value == "other" && r.toks[i-1].kind == numToken && r.toks[i-1].dec == 0
	case "part":
		return len(r.toks[i].text) > 2 && r.toks[i].text[len(r.toks[i].text)-1] == 's' && !r.by(i-2)
	}
	return false
}

// lengthFollowers are ordinary words that may follow a length.
var lengthFollowers = wordsOf(`and or to on at in for from if but i it across each both not no sorry wait please pls
	thanks thank thx y o por de en a pero with so now too as we he plus by ish up down over under above total edge when
	without including around give maybe probably then while because cuz bc lol haha ok measured off oops correction
	instead con nose dot even flat within best call b c d al hasta before after she my which what how can dont didnt
	havent cant hope let you u per min max pretty final tho though also tall high long wide is says according corner
	end e n nd square strong heavy light shy scant something odd full thru through plywood yes si tops sir maam roughly
	approx about gracias depending depends wherever im ive were weve thats cause since until estoy soy porque afuera
	adentro dentro fuera same twice again right where would should ft mas menos`)
