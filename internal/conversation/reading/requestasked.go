package reading

// Whether the words of a request ask for it.

var (
	askedSubject = wordsOf(`one ones guy guys person wife husband man woman people somebody someone anybody friend
		son roofer`)
	verbsOfTelling  = wordsOf(`see can could have got get said told sent call called would wrote put asked described`)
	compareVerbs    = wordsOf(`trae traen viene vienen incluye incluyen aguanta aguantan dura duran sirve lleva resiste`)
	notInverted     = wordsOf(`know see on about from for with like of is exactly up than tell said`)
	wellEnough      = wordsOf(`ok okay right enough normal fine correct possible good bad alright`)
	helpedVerbs     = wordsOf(`had have having let made make got help helped watched saw`)
	beforeNoRequest = wordsOf(`will can ill could would lets gonna cant dont didnt wont must should please i we he
		she they you just what how where when why which who so as all that than if like to and not neither nor or
		whatever because usually always never really normally still`)
)

// asks: the words open a clause, or the sentence ends with a question mark.
func (r *reader) asks(h *hit) bool {
	first, last := r.sentence(h.first)
	if r.wordAt(h.first, "is", "are") && r.wordAt(h.first+1, "my", "mine", "our", "ours") && !r.markAt(last, '?') {
		return false // "is my house, only one", as some leave out the "it"
	}
	if !r.markAt(last, '?') && (r.toldWhere(h) || r.didOnly(h)) {
		return false
	}
	if r.wordAt(h.first, "did") && r.wordAt(h.first-1, "whoever", "who", "they", "he", "she") && !r.markAt(last, '?') {
		return false // "whoever did it used a whole tube"
	}
	if r.wordAt(h.first, "did") && r.wordAt(h.last+1, "off", "from", "with", "by", "at", "myself", "twice", "inside") &&
		!r.markAt(last, '?') {
		return false // "did it off the step ladder"
	}
	if r.markAt(last, '?') {
		return true
	}
	if r.politeIf(h.first - 1) {
		return false // "bronce si tienen"
	}
	if r.wordAt(h.first, "dont", "not", "never", "no") && r.wordsIn(h.first, h.last, "what") &&
		r.wordAt(h.first-1, "i", "im", "we", "have", "ive", "still", "really") {
		return true // "I don't know what a retaining frame is"
	}
	if r.wordAt(first, "what") && r.wordAt(first+1, "i", "we", "you", "he", "she") && h.first > first+2 &&
		r.wordAt(h.first, "is", "are") ||
		r.wordAt(h.first, "does") && r.wordAt(h.first+1, "i", "you", "we", "they") {
		return false // "what I see is plastic in the middle", "the plastic does I mean"
	}
	if r.compares(h) {
		return false // "el policarbonato es más fuerte": said, not asked
	}
	if r.wordAt(h.first, "which", "where", "when", "who") && h.first > first && r.markAt(h.first-1, ',') &&
		!(r.wordAt(h.first, "who") && !r.personAt(h.first-2)) &&
		!(r.wordAt(h.first+1, "do", "does", "did", "can", "should", "would") &&
			r.wordAt(h.first+2, "i", "we", "it", "you", "they", "u")) {
		return false // "the old one, which was clear"
	}
	if r.wordAt(h.last, "where", "when", "donde", "cuando") && h.last > 0 &&
		r.wordAt(h.last+1, "the", "it", "they", "el", "la", "los", "las") {
		return false // "and where the bubble starts to rise it's 23 by 47"
	}
	if r.wordAt(h.first, "donde") && r.wordAt(h.last+1, "empieza", "comienza", "termina", "arranca", "nace", "inicia") ||
		r.wordAt(h.first, "donde") && r.wordsIn(h.first, h.last+1, "empieza", "comienza", "termina", "arranca", "nace", "inicia") {
		return false // "donde empieza la bolita son 21 por 45"
	}
	if i := r.whereOf(h); i > first+1 && !r.softBreak(i-1) && r.toks[i-1].kind == wordToken &&
		!r.wordAt(i-1, "de", "a", "por", "hasta", "desde", "se", "y", "pero", "pues") {
		return false // "el salón donde dan clases a los niños"
	}
	if r.wordAt(h.first, "who", "whos") && h.first > first && r.among(h.first-1, askedSubject) {
		return false // "my wife is the one who will be home"
	}
	if r.wordAt(h.first, "would") && r.wordAt(h.first+1, "like", "love", "prefer", "appreciate", "need") ||
		r.wordAt(h.first, "did", "do", "does") && r.wordAt(h.first-1, "also", "then") && h.first-2 >= first &&
			r.toks[h.first-2].kind == wordToken {
		return false // "I make sculptures and would like a round dome", "he also did the diagonals"
	}
	if r.wordAt(h.first, "is", "are") && r.markAt(h.first-1, ')') {
		return false // "30 x 46 (inches) is the wood to wood"
	}
	if r.wordAt(h.first, "that", "thats") {
		return false // "yes that all looks right"
	}
	if r.wordAt(h.first, "what") && r.wordAt(h.last, "you", "u") && r.among(h.last+1, verbsOfTelling) {
		return false // "what u can see between the strips is 21 by 45"
	}
	if r.wordAt(h.first, "viene", "vienen", "hay", "tiene", "tienen") && r.wordAt(h.first-1, "ya", "que") {
		return false // "ya viene la lluvia"
	}
	if r.wordAt(h.first, "para") && r.wordAt(h.last, "que") &&
		!(h.first == first &&
			r.wordAt(h.last+1, "sirve", "es", "quiere", "quieren", "necesita", "necesitan", "ocupa", "ocupan", "piden")) {
		return false // "bronce, para que no entre tanto sol"
	}
	if r.wordAt(h.first, "sirve") && r.wordAt(h.first-1, "si", "le", "les") && r.wordsIn(max(0, h.first-3), h.first, "por", "si") {
		return false // "es de un remolque, por si sirve el dato"
	}
	if r.wordAt(h.first, "sirve", "puedo", "puede", "pueden", "sirven", "podemos") && r.wordAt(h.first-1, "no") {
		return false
	}
	if r.wordAt(h.first, "viene", "vienen", "sirve", "sirven", "trae", "traen") && h.first-1 > first &&
		(r.markAt(h.first-1, ',') && !r.talkEnds(h.first-2) || r.wordAt(h.first-1, "y", "que")) ||
		r.wordAt(h.first, "venden") && h.first-1 > first && r.wordAt(h.first-1, "que") {
		return false // "es de fibra de vidrio y viene pegado", "el que venden en todos lados"
	}
	if r.wordAt(h.first, "how") && r.wordAt(h.first+1, "would", "do", "can", "could") && r.wordAt(h.first+2, "i", "we", "you") &&
		r.wordAt(h.first-1, "idea", "clue") {
		return true // "no clue how would I tell"
	}
	if r.wordAt(h.first-1, "sure", "know", "idea", "clue", "tell", "decide", "remember", "se") &&
		r.wordsIn(max(first, h.first-4), h.first, "not", "dont", "no", "cant", "couldnt", "didnt") {
		return false // "not sure what's best"
	}
	if r.inverted(h.first) || r.wantsToKnow(h.first) {
		return true
	}
	return h.first == 0 || r.softBreak(h.first-1) || r.sentenceEnd(h.first-1) || r.talkEnds(h.first-1) ||
		r.wordAt(h.first-1, "so", "but", "and", "ok", "well", "um", "question", "ask", "wait") ||
		r.wordAt(h.first-1, "to") && !r.wordAt(h.first, "do", "does", "did", "be", "have")
}

// compares: the words say what one thing is like, which only a question mark makes a
// question: "el policarbonato es más fuerte", "el domo trae tornillos".
func (r *reader) compares(h *hit) bool {
	return r.among(h.last, compareVerbs) && h.last > h.first && !r.wordAt(h.first, "cuanto") ||
		r.wordAt(h.last, "mas", "mejor", "menos", "mejores") || r.wordAt(h.last-1, "mas", "menos")
}

// whereOf is the token of a "donde" at the words or right before them, -1 without one.
func (r *reader) whereOf(h *hit) int {
	switch {
	case r.wordAt(h.first, "donde"):
		return h.first
	case r.wordAt(h.first-1, "donde"):
		return h.first - 1
	}
	return -1
}

// inverted: a verb before its subject asks wherever it stands: "the tag says 2852 does
// that help".
func (r *reader) inverted(i int) bool {
	if i > 0 && r.wordAt(i, "whats", "wheres", "whens", "hows", "whos") && !r.among(i-1, notInverted) {
		return true // "I'm on the roof what's the measurement you need"
	}
	if i > 1 && r.wordAt(i, "is") && r.wordAt(i+1, "that", "this", "it") && r.among(i+2, wellEnough) && i+3 >= len(r.toks) {
		return true
	}
	if r.wordAt(i, "do") && r.anyOf(max(0, i-5), i, helpedVerbs) {
		return false // "I had my grandson do it"
	}
	return i > 1 && r.wordAt(i, "do", "does", "did", "can", "could", "should") &&
		r.wordAt(i+1, "i", "we", "you", "u", "they", "it", "that", "this", "yall") &&
		!r.among(i-1, beforeNoRequest)
}
