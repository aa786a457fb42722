package reading

// Questions told by their parts beside an answer, where no phrase of the lists has found one: "they want
// notice, so when does it ship?", "he says to ask whether you take credit cards", "whatll that run me".

var (
	costAsks        = wordsOf(`what whatll whats whatd much would will`)
	costWords       = wordsOf(`cost costs cuesta cuestan price prices`)
	whetherSubjects = wordsOf(`you u yall ya ustedes aceptan venden hacen mandan entregan tienen`)
	whetherDenials  = wordsOf(`not dont didnt no let you`)
	whetherTheirs   = wordsOf(`need want got have see saw know can could`)
	talkLeads       = wordsOf(`so and but then also y pero entonces now well pues ok okay hmm um bueno`)
	askVerbs        = wordsOf(`ask asking asks wondering wonder wonders know curious find see check tell preguntar pregunta
		saber digame dime`)
	askOpeners = wordsOf(`when how where why which who what do does did can could will would should is are cuando
		donde como cuanto cual quien puedo puede pueden`)
	askSubjects = wordsOf(`you u ya yall it they that this these those one i we the an a my your there me le lo se`)
)

// askedBeside records such a question.
func (r *reader) askedBeside() {
	for _, q := range r.out.Requests {
		if q == RequestQuestion || q == RequestPrice || q == RequestHowTo {
			return
		}
	}
	for i := range r.toks {
		if r.costWondered(i) {
			r.request(RequestPrice)
			return
		}
	}
	for i := range r.toks {
		if r.whetherYou(i) || r.clauseAsks(i) {
			r.request(RequestQuestion)
			return
		}
	}
}

// costWondered: "whatll that run me", "what would it set me back", "it depends what they cost, so tell
// me that first".
func (r *reader) costWondered(i int) bool {
	from, to := r.sentence(i)
	if r.wordAt(i, "run", "set") && r.wordAt(i+1, "me", "us") && r.anyOf(max(from, i-5), i, costAsks) &&
		!r.wordsIn(i+2, min(i+4, to+1), "out", "off", "up", "down", "through") {
		return r.wordAt(i, "run") || r.wordsIn(i+2, to+1, "back")
	}
	return r.among(i, costWords) && r.wordsIn(from, i, "depends", "depend", "depende") &&
		r.wordsIn(i+1, to+1, "tell", "first", "know", "digame", "primero")
}

// whetherYou: "he says to ask whether you take credit cards", "I was wondering if you ship to Guam".
func (r *reader) whetherYou(i int) bool {
	if !r.among(i, askVerbs) || !r.wordAt(i+1, "if", "whether", "si") || !r.among(i+2, whetherSubjects) {
		return false
	}
	return !r.anyOf(max(r.sentenceFirst(i), i-3), i, whetherDenials) && !r.anyOf(i+3, i+6, whetherTheirs) && !r.fellTo(i)
}

// fellTo: what the sentence says was understood as something else.
func (r *reader) fellTo(i int) bool {
	from, to := r.sentence(i)
	for k := i; k <= to; k++ {
		if r.toks[k].kind == numToken {
			return true
		}
	}
	for _, w := range r.where {
		if w.first > i && w.first <= to && w.first >= from {
			return true
		}
	}
	return false
}

// clauseAsks: the sentence ends with its sign, and its last clause opens as questions do and says nothing
// else that is understood.
func (r *reader) clauseAsks(i int) bool {
	if !r.markAt(i, '?') || i == 0 {
		return false
	}
	k := r.clauseStart(i - 1)
	for r.among(k, talkLeads) {
		k++
	}
	if i-k < 3 || !r.among(k, askOpeners) || !r.among(k+1, askSubjects) && !r.among(k+2, askSubjects) {
		return false
	}
	for j := k; j < i; j++ {
		if r.toks[j].used || r.toks[j].kind == numToken || r.wordAt(j, "llama", "llamas") {
			return false
		}
	}
	return !r.fellTo(k) && !r.talkWithin(k, i)
}

// talkWithin: words between two tokens have a meaning of the talk's own, such as a repeat or a way to measure.
func (r *reader) talkWithin(from, to int) bool {
	for _, h := range within(r.talk, from, to) {
		again := h.first == h.last && h.is("req", "again")
		if h.has1("req") && !h.is("req", "none") && !again || h.is("say", "dontknow") {
			return true
		}
	}
	return false
}
