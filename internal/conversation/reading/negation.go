package reading

var (
	newSubject       = wordsOf(`it its the i we they theres there a is yes yeah yep`)
	beforeOtherNamed = wordsOf(`of on in for and or to from de en y o ni`)
	harmAdjectives   = wordsOf(`roto rota rotos quebrado quebrada rajado rajada danado gotera goteras opaco podrido
		oxidado`)
	riskOrHarmNouns = wordsOf(`arboles arbol ramas golf granizo graniza pelotas goteras gotera grietas grieta
		filtraciones rajaduras trees tree branches hail limbs balls course courses`)
	existVerbs   = wordsOf(`hay tenemos tengo tiene tienen existe existen cae caen veo`)
	afterNoAlone = wordsOf(`is s was got broken cracked leaking leaks wrong has are`)
	letItBeVerbs = wordsOf(`sea sean venga vengan vaya vayan quede queden lleve lleven`)
	statedLinks  = wordsOf(`if whether that when what how because say says think sure why where and or does do like
		see know si que cuando`)
	questionOpeners = wordsOf(`is are do does did can could will would should what which how why whats es son cual
		que tienen hacen`)
	plainAskOpeners = wordsOf(`is are does do did if happens would should comes kind color one`)
	plainAskVerbs   = wordsOf(`cost costs last come make fit work yellow get have need help stop crack scratch hold
		look run`)
)

// negStops end the reach of a "not" before them.
var negStops = wordsOf(`but just only except pero solo sino its it rather though although however theres there i
	we nomas now because since thats so me us porque lol haha jaja somebody someone alguien`)

const negReach = 6 // words that a "not" reaches over, common practice

// negated says whether a "not" before the token holds for it: "not cracked", "no cracks
// or leaks"; not "not cracked, just hazy", "no, it leaks".
func (r *reader) negated(i int) bool {
	if i < len(r.toks) && negStops.has(r.toks[i].text) {
		return false
	}
	if r.notThought(i) {
		return true
	}
	for n, j := 0, i-1; j >= 0 && n < negReach; j-- {
		t := &r.toks[j]
		if t.kind == markToken {
			if t.text[0] == '-' || t.text[0] == '/' || t.text[0] == '"' || t.text[0] == '\'' {
				continue
			}
			return false
		}
		if t.kind != wordToken {
			n++
			continue
		}
		if r.wordAt(j, "no") && r.wordAt(j+1, "wait") {
			return false // "no wait my wife wants clear"
		}
		if negWords.has(t.text) {
			return !r.noAlone(j, i) && !r.otherNamed(j+1, i)
		}
		if r.insteadOf(j) && !(r.wordAt(j, "than") && i-j > 2 && !r.wordAt(j-1, "rather", "other")) {
			return true
		}
		if negStops.has(t.text) || t.text == "and" && r.among(j+1, newSubject) {
			return false
		}
		n++
	}
	return false
}

// otherNamed: "not the frame the plastic has split": what is denied has its article, and
// another one begins what follows.
func (r *reader) otherNamed(from, i int) bool {
	if r.wordAt(from, "the", "my") && r.wordAt(from+1, "frame", "metal") && i > from+1 &&
		r.wordAt(from-2, "dome", "plastic", "bubble", "acrylic") {
		return true // "only the dome not the frame cracked pretty bad"
	}
	if !r.wordAt(from, "the", "my", "our", "el", "la", "mi") {
		return false
	}
	for j := from + 2; j < i; j++ {
		if r.wordAt(j, "the", "my", "our", "el", "la", "mi", "its", "theres") && !r.among(j-1, beforeOtherNamed) {
			return true
		}
	}
	return r.wordAt(i, "big", "huge", "its") && i > from+1
}

// deniedAfter: "trees? no", "hail: none".
func (r *reader) deniedAfter(last int) bool {
	if r.wordAt(last+1, "no") && last+2 >= len(r.toks) && !r.markAt(last, ',') && last > 2 {
		return true // "ya no pasa luz, pero rajado no"
	}
	if r.wordAt(last+1, "no", "nope") && r.yesAfter() &&
		(last+2 >= len(r.toks) || r.toks[last+2].kind == markToken || len(within(r.choices, last+2, last+2)) > 0) {
		return true // "trees yes hail no"
	}
	for i := last + 1; i < last+5 && r.wordsIn(max(0, last-4), last, "looked", "checked", "searched", "look") &&
		r.wordAt(last-1, "for"); i++ {
		if r.wordAt(i, "saw", "found", "see", "seen") && r.wordAt(i+1, "none", "nothing", "no") {
			return true // "I looked for cracks and saw none"
		}
	}
	if r.noneAfter(last) {
		return true
	}
	return (r.markAt(last+1, '?') || r.markAt(last+1, ':')) &&
		r.wordAt(last+2, "no", "nope", "none", "nah", "never", "not", "nothing", "nada", "ninguno") &&
		(last+3 >= len(r.toks) || r.toks[last+3].kind == markToken || r.wordAt(last+3, "really"))
}

// noneAfter: the noun stands before its denial: "árboles no hay", "goteras no tiene", "trees
// we don't have", "golf tampoco".
func (r *reader) noneAfter(last int) bool {
	if r.among(last, harmAdjectives) && r.wordAt(last+1, "no") && r.wordAt(last+2, "esta", "estan", "es", "son", "se") &&
		!r.wordAt(last+3, "si", "como", "tan") {
		return true // "todo opaco. Roto no está"
	}
	if !r.among(last, riskOrHarmNouns) {
		return false
	}
	i := last + 1
	if r.wordAt(i, "cerca", "aqui", "alrededor", "here", "nearby", "around") {
		i++
	}
	if r.wordAt(i, "we", "i", "there", "it") &&
		(r.wordAt(i+1, "dont", "arent", "isnt") || r.wordAt(i+1, "do") && r.wordAt(i+2, "not")) &&
		!r.wordsIn(i+2, min(i+4, len(r.toks)), "know", "think", "see", "worry", "care", "mind") {
		return true
	}
	if r.wordAt(i, "there", "we", "i") && r.wordAt(i+1, "are", "is", "have", "got") && r.wordAt(i+2, "none") {
		return true
	}
	if r.wordAt(i, "no", "nunca") && r.among(i+1, existVerbs) &&
		!r.wordAt(i+2, "muchos", "muchas", "mucho", "tantos", "tanto", "de", "tan") {
		return true
	}
	return r.wordAt(i, "no", "none", "never", "tampoco", "nunca", "nope", "ninguno", "ningunos") &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken || r.wordAt(i+1, "but", "pero", "and", "y"))
}

// yesAfter: a yes stands right after some value.
func (r *reader) yesAfter() bool {
	for n := range r.choices {
		if r.wordAt(r.choices[n].last+1, "yes", "yeah", "yep", "si") {
			return true
		}
	}
	return false
}

// insteadOf: "instead of", "rather than", "anything but", "other than", "en vez de".
func (r *reader) insteadOf(j int) bool {
	return r.wordAt(j, "than") && r.wordsIn(max(0, j-6), j, "rather") ||
		r.wordAt(j, "of") && r.wordAt(j-1, "instead") ||
		r.wordAt(j, "than") && r.wordAt(j-1, "rather", "other") ||
		r.wordAt(j, "but", "except", "besides") &&
			(r.wordAt(j-1, "anything", "everything", "any") || r.wordAt(j-1, "color", "thing") && r.wordAt(j-2, "any", "every")) ||
		r.wordAt(j, "menos", "excepto") && (r.wordAt(j-1, "cualquiera", "todo", "todos") || r.wordAt(j-2, "cualquier")) ||
		r.wordAt(j, "de") && r.wordAt(j-1, "vez", "lugar", "nada")
}

// noAlone: the "no" at j answers a question and says nothing of what follows: "no the
// dome is cracked", "no problem", or it belongs to words of doubt: "not sure".
func (r *reader) noAlone(j, i int) bool {
	if r.wordAt(j, "nothing") && (j+1 == i || j+3 == i && r.wordAt(i-1, "or") && covers(r.choices, i-2)) &&
		!r.wordAt(i, "but", "left") {
		return false // "weathered, but nothing bent"
	}
	if r.wordAt(j, "nothing") && !r.among(j+1, afterNoAlone) {
		return true // "nothing but a crack", "nothing left of it, it broke"
	}
	if r.wordAt(j, "no") && r.wordAt(j+1, "se") && j+2 == i &&
		r.wordAt(i, "gotea", "gotean", "filtra", "cuela", "mete", "quebro", "rompio", "rajo", "chorrea") {
		return false // "no se gotea, solo se puso amarillo"
	}
	if r.wordAt(j+1, "sure", "idea", "clue", "problem", "longer", "question", "doubt", "only", "se") && j+1 < i {
		return !r.wordAt(j+1, "longer")
	}
	if r.wordAt(j+1, "matter", "care", "mind", "preference", "importa") && j+1 < i &&
		!r.wordAt(j+2, "for", "about", "on", "the", "if", "el", "la", "si") {
		return true // "doesn't matter to me, poly carbonate"
	}
	if r.wordAt(j, "no") && (r.wordAt(j-1, "oh") || r.wordAt(j-1, "wait", "oops", "actually", "sorry", "hang") && j+1 == i) {
		return true // "clear.. wait no bronze"
	}
	if r.wordAt(j, "no") && r.wordAt(j+1, "deja", "para", "dejan") && r.wordAt(j+2, "de") {
		return true
	}
	if r.wordAt(j, "no") && r.wordAt(j+1, "the", "my", "they", "this", "that", "our", "el", "la") &&
		(j+2 < i || j+2 == i && r.wordAt(i+1, "is", "are", "has", "was", "es", "esta", "looks")) {
		return true
	}
	if r.wordAt(j, "cant", "cannot", "couldnt") && r.wordAt(j+1, "get", "make") && r.wordsIn(j+2, i, "stop", "quit") {
		return true // "can't get the skylight to stop leaking"
	}
	return r.wordAt(j, "dont", "cant", "wont", "couldnt") && r.wordAt(j+1, "stop", "quit", "fix", "know", "wait", "tell", "say")
}

// questioned says whether the token stands in a question, so that it states nothing.
func (r *reader) questioned(i int) bool {
	first, last := r.sentence(i)
	if r.letItBe(first, i) {
		return false
	}
	talk := within(r.talk, first, last)
	for n := range talk {
		h := &talk[n]
		if h.is("req", "howto") && h.first < i && r.wordsIn(h.last+1, last+1, "or", "o") {
			return true // "where do I put the tape, on the metal or on the wood"
		}
		if (h.is("req", "question") && r.asks(h) || h.is("req", "howto")) && (h.first < i || h.first <= i+1 && r.compares(h)) &&
			!r.commaBetween(h.last+1, i) && !r.statedAfter(h.last+1, i) {
			return true
		}
	}
	return false
}

// letItBe: "que sea blanco": a wish, no question.
func (r *reader) letItBe(first, i int) bool {
	for k := first; k < i; k++ {
		if r.wordAt(k, "que") && r.among(k+1, letItBeVerbs) {
			return true
		}
	}
	return false
}

// statedAfter: a statement of its own begins between a question and the token: "is it hard
// to put in myself our house just one it has a hairline crack".
func (r *reader) statedAfter(from, i int) bool {
	for k := from + 2; k <= i; k++ {
		if r.among(k-1, statedLinks) {
			continue
		}
		if r.wordAt(k, "marco", "domo", "plastico") && r.wordAt(k+1, "esta", "mide", "se") && k+1 <= i+1 &&
			!r.wordsIn(from, k, "si", "cuando", "cuanto") {
			return true // "¿qué diferencia hay entre acrílico y policarbonato el marco está bien"
		}
		if r.wordsIn(from, k, "if", "whether", "when") {
			return false
		}
		if r.wordAt(k, "theres", "measures") ||
			(r.wordAt(k, "it") || r.wordAt(k, "plastic", "dome") && r.wordAt(k-1, "the", "my", "our")) && r.wordAt(k+1, "has", "had") &&
				k+1 <= i ||
			r.wordAt(k, "it") && r.wordAt(k+1, "leaks", "leaked", "drips", "cracked", "broke") && k+1 <= i ||
			r.wordAt(k, "we") && r.wordAt(k+1, "get", "got") && r.wordsIn(k+2, min(k+4, len(r.toks)), "water", "leaks", "drips") ||
			r.wordAt(k, "came") && r.wordAt(k+1, "out") ||
			r.wordAt(k, "tape") && r.wordAt(k+1, "says") {
			return true
		}
	}
	return false
}

// yesNoQuestion: the sentence opens like a question and ends with a question mark.
func (r *reader) yesNoQuestion(i int) bool {
	first, last := r.sentence(i)
	if r.wordAt(first, "is", "are", "do", "does", "did", "can", "will") &&
		r.wordAt(first+1, "yours", "your", "you", "u", "ur", "these", "they", "yall") {
		return true // "is yours glass or plastic"
	}
	if r.asksPlainly(first, last) {
		return true
	}
	return r.markAt(last, '?') && r.among(first, questionOpeners)
}

// asksPlainly: a sentence that opens like a question, with or without its mark: "whats
// included in the complete one", "do 2 layers cost a lot more".
func (r *reader) asksPlainly(first, last int) bool {
	for r.wordAt(first, "so", "and", "but", "ok", "well", "also", "hi", "hey") || r.markAt(first, ',') {
		first++
	}
	switch {
	case r.wordAt(first, "whats", "why", "wheres", "whens"):
		return true
	case r.wordAt(first, "what", "which", "how", "when", "where"):
		return r.among(first+1, plainAskOpeners) && !r.wordAt(first+2, "about")
	case r.wordAt(first, "do", "does", "did"):
		return r.anyOf(first+2, last+1, plainAskVerbs)
	}
	return false
}

func (r *reader) commaBetween(from, to int) bool {
	for i := from; i < to; i++ {
		if r.toks[i].mark(',') || r.sentenceEnd(i) || r.wordAt(i, "because", "since") ||
			r.wordAt(i, "and") && r.wordAt(i+1, "theres", "its", "i", "we", "it", "my", "they") {
			return true
		}
	}
	return false
}

// commaOnly: nothing but a comma stands between, and the doubt ends the sentence:
// "clear, i think"; not "clear, not sure on the material".
func (r *reader) commaOnly(from int, h *hit) bool {
	return h.first == from+1 && r.markAt(from, ',') &&
		!(r.wordAt(h.first, "kinda", "kind", "sort", "sorta") && r.choiceAt(h.last+1)) &&
		!r.wordAt(h.last+1, "on", "about", "of", "what", "which", "if", "how", "the", "whether")
}
