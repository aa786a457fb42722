package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	photosLater = wordsOf(`ill will gonna later tonight tonite tomorrow can luego manana voy`)
	sentVerbs   = wordsOf(`sent attached attaching heres sending texted emailed mande envie mandado mando adjunto
		adjunte van`)
	afterSent    = wordsOf(`you u ya them all le les de mandar enviar over just`)
	sentWhen     = wordsOf(`just of now already this more from earlier right ahorita hace ya de`)
	brokenCamera = wordsOf(`broken broke busted dead cracked bad old descompuesta descompuesto rota roto flip basic`)
	photoNouns   = wordsOf(`photo photos pic pics picture pictures camera foto fotos camara one any smartphone image`)
)

// photos: how many were sent, as far as a message says; the talk counts those that came.
// A plain no, a "can't" or a camera that fails says that none will come.
func (r *reader) photos() {
	if r.photosSent() {
		return
	}
	for i := range r.toks {
		if r.wholeAt(i) == 0 && !r.used(i) {
			r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(0), i, i)
			return
		}
	}
	if first, ok := r.noPictures(); ok {
		r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(0), first, first+1)
		return
	}
	if r.photoRefused() {
		r.out.DontKnow = append(r.out.DontKnow, fitcheck.TopicPhotos)
	}
}

var photoWords = wordsOf(`photo photos pic pics picture pictures image images foto fotos imagen imagenes`)

// photosSent: "just sent 3 pics"; not "will send 3 pics tonight".
func (r *reader) photosSent() bool {
	if r.anyOf(0, len(r.toks), photosLater) {
		return false
	}
	if r.notSentYet() {
		return false
	}
	for i := range r.toks {
		n, next := r.countNumber(i)
		if next > i && n > 0 && n <= 50 && r.sentNow(i, next) {
			r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(n), i, next-1)
			return true
		}
		if next == i || n < 1 || n > 50 || next >= len(r.toks) ||
			!photoWords.has(r.toks[next].text) &&
				!(r.toks[next].kind == wordToken && next+1 < len(r.toks) && photoWords.has(r.toks[next+1].text)) {
			continue
		}
		if r.photoRefused() || r.wordsIn(0, i, "cant", "cannot", "wont", "couldnt", "no") {
			return false
		}
		if r.anyOf(0, len(r.toks), sentVerbs) || r.wordAt(0, "here", "aqui") {
			r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(n), i, next)
			return true
		}
	}
	return false
}

// notSentYet: "I have five on my phone but I haven't sent them yet", "todavía no se las he mandado".
func (r *reader) notSentYet() bool {
	for i := range r.toks {
		if r.wordAt(i, "sent", "emailed", "texted", "attached", "mandado", "enviado", "mande", "envie") &&
			r.wordsIn(max(r.sentenceFirst(i), i-5), i, "havent", "not", "no", "didnt", "aun", "never") {
			return true
		}
	}
	return false
}

// numberSent keeps the number of pictures from being taken for a length: "sent two, you can see it's round".
func (r *reader) numberSent() {
	for i := range r.toks {
		if n, next := r.countNumber(i); r.asked(fitcheck.TopicPhotos) && next > i && n > 0 && n <= 50 && r.sentNow(i, next) {
			r.use(i, next-1)
		}
	}
}

// sentNow: "sent two just now", "acabo de mandar 3": a number right after the verb, and nothing that it counts.
func (r *reader) sentNow(i, next int) bool {
	k := i - 1
	for r.among(k, afterSent) && !r.wordAt(k, "mandar", "enviar") {
		k--
	}
	return (r.wordAt(k, "sent", "emailed", "texted", "attached", "mande", "envie", "mando", "envio") ||
		r.wordAt(k, "mandar", "enviar") && r.wordsIn(max(0, k-3), k, "acabo")) &&
		(r.endsThought(next) || r.among(next, sentWhen)) &&
		!r.wordsIn(next, min(next+3, len(r.toks)), "minutes", "days", "weeks", "hours", "emails", "messages", "texts", "people")
}

// noPictures: "sorry, no pictures" says how many there will be.
func (r *reader) noPictures() (int, bool) {
	for i := range r.toks {
		if !r.wordAt(i, "no", "zero", "sin", "ninguna") || i+1 >= len(r.toks) || !photoWords.has(r.toks[i+1].text) {
			continue
		}
		bare := r.beforePoliteness(len(r.toks)-1) == i+1 || r.sentenceEnd(i+2)
		return i, bare && (i == 0 || r.softBreak(i-1) || r.wordAt(i-1, "sorry", "perdon", "nope", "nah", "i", "have", "got"))
	}
	return 0, false
}

func (r *reader) photoRefused() bool {
	if r.wordsIn(0, len(r.toks), "sent", "attached", "sending", "later", "tomorrow", "luego", "manana", "problem", "here") {
		return false
	}
	camera := r.wordsIn(0, len(r.toks), "camera", "phone", "camara", "celular", "telefono", "flip")
	for i := range r.toks {
		if camera && r.among(i, brokenCamera) {
			return true
		}
		if r.toks[i].kind != wordToken || !(negWords.has(r.toks[i].text) || r.wordAt(i, "nope", "nah", "unable", "rather")) {
			continue
		}
		if r.wordAt(i, "cant", "cannot", "unable", "couldnt", "wont", "nope", "nah") ||
			r.wordAt(i+1, "puedo", "podemos", "tengo", "way", "can") {
			return true
		}
		if len(r.toks) <= 3 && r.wordAt(i, "no") || r.anyOf(i, min(i+7, len(r.toks)), photoNouns) {
			return !r.wordAt(i+1, "problem", "problema", "worries", "sure")
		}
	}
	return false
}
