package reading

import "example.com/intake-bot/internal/fitcheck"

// What a sentence says is wanted where no phrase of the lists has told it: a wish, and what it is for by
// its parts, whatever stands between: "it folded up when they pried it off, so it has to be the full
// unit", "need the plastic lid and that's all".

var (
	wholeUnitWords = wordsOf(`unit units whole entire complete full completo completa todo entero`)
	sureWords      = wordsOf(`know sure certain decided decide se sabemos seguro segura decido`)
	beforeReplaced = wordsOf(`i we they he she ive weve just already had`)
	keptFrame      = wordsOf(`no not without sin keep keeping reuse reusing leave leaving save dejo conservo reusar`)
	bothWishes     = wordsOf(`need want order replace get buy take ocupo necesito quiero cambiar`)
)

var (
	orderWords = wordsOf(`want wants wanted need needs needing wanna buy buying order ordering purchase take
		replace replaced replacing swap swapping price quote pricing looking after rather sell prefer buying make give
		quiero queremos necesito necesitamos ocupo ocupamos comprar pedir cambiar cambiarlo cambiarlos busco buscamos
		llevo mandeme cotice cotizar encargar quisiera quisieramos prefiero preferimos`)
	wholeNouns = wordsOf(`unit units thing skylight skylights skylite skylites assembly assemblies setup kit works
		shebang package replacement one ones tragaluz tragaluces unidad unidades domo domos`)
	wantDoubts = wordsOf(`or whether if maybe might unsure versus vs either torn between difference should could
		depends deciding decide o si depende quizas talvez both unless probably wondering wonder sure ambos entre`)
)

// wantSaid records what a sentence of the message wishes for.
func (r *reader) wantSaid() {
	t := fitcheck.TopicWant
	if r.known(t) || r.doubtful(t) || len(r.refs) > 0 || r.Units > 1 ||
		r.asked(fitcheck.TopicConfirm) || r.asked(t) && r.firstTalk("dontknow") != nil ||
		r.out.Language != "en" && r.out.Language != "es" {
		return
	}
	if i := r.opinionsDiffer(); i >= 0 && (r.asked(t) || r.namesWant(0, len(r.toks)-1)) {
		r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), r.sentenceFirst(i), i)
		return
	}
	for n := range r.wants {
		if h := &r.wants[n]; r.asked(t) && r.domeAndFrame(h.senses[0], h) {
			r.fact(t, 0, fitcheck.Choice(fitcheck.WantCompleteUnit), h.first, h.last+2)
			return
		}
	}
	value, first, last := "", 0, 0
	for i := 0; i < len(r.toks); i = r.sentenceLast(i) + 1 {
		to := r.sentenceLast(i)
		if r.neitherChosen(i, to) {
			r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), i, to)
			return
		}
		whole, only := r.wholeWanted(i, to), r.domeWanted(i, to)
		switch {
		case !whole && !only && !(r.namesWant(i, to) && r.wantDoubted(i, to)):
			continue
		case whole == only, r.asksPlainly(i, to), r.markAt(to, '?'), r.wantDoubted(i, to):
			return
		}
		v := fitcheck.WantDomeOnly
		if whole {
			v = fitcheck.WantCompleteUnit
		}
		if value != "" && value != v {
			return
		}
		value, first, last = v, i, to
	}
	if value != "" {
		r.fact(t, 0, fitcheck.Choice(value), first, last)
	} else if i := r.undecided(); i >= 0 && r.asked(t) {
		r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), i, len(r.toks)-1)
	}
}

// neitherChosen: the sentence names both and leaves open which: "maybe the dome, maybe the full unit",
// "no sé si comprar el domo o todo el tragaluz".
func (r *reader) neitherChosen(from, to int) bool {
	dome := r.wordsIn(from, to+1, "dome", "domes", "bubble", "plastic", "domo", "plastico", "lens")
	whole := r.anyOf(from, to+1, wholeUnitWords)
	if !dome || !whole || r.markAt(to, '?') || r.asksPlainly(from, to) {
		return false
	}
	for i := from; i <= to; i++ {
		switch {
		case r.among(i, sureWords) && r.wordsIn(max(from, i-3), i, "not", "dont", "no", "havent", "cant", "didnt", "doesnt") &&
			r.wordsIn(i, min(i+12, to+1), "or", "o", "if", "whether", "si", "which", "between", "entre", "yet") &&
			!r.wordsIn(i+1, min(i+4, to+1), "frame", "marco"),
			r.wordAt(i, "maybe", "quizas") &&
				r.wordsIn(i+1, to+1, "maybe", "quizas", "or", "o"), r.wordAt(i, "torn", "unsure", "undecided"), r.wordAt(i, "minds") &&
				r.wordAt(i-1, "two"),
			r.wordAt(i, "whatever", "whichever") && r.wordsIn(i+1, min(i+5, to+1), "cheaper", "cheapest", "less", "costs", "least") &&
				r.wordsIn(from, to+1, "or"):
			return true
		}
	}
	return false
}

// namesWant: the sentence names the dome or the whole.
func (r *reader) namesWant(from, to int) bool {
	return r.wordsIn(from, to+1, "whole", "entire", "complete", "completo", "completa", "dome", "domes", "domo", "domos")
}

func (r *reader) wantDoubted(from, to int) bool {
	for i := from; i <= to; i++ {
		if wantDoubts.has(r.wordText(i)) && !r.bothWished(i, from) && !r.politeIf(i) {
			return true
		}
	}
	return false
}

// wishIn: a word of wishing stands in the sentence and nothing denies it.
func (r *reader) wishIn(from, to int) bool {
	wish := false
	for i := from; i <= to; i++ {
		if !orderWords.has(r.wordText(i)) || r.wordAt(i, "replaced") && r.among(i-1, beforeReplaced) {
			continue // "we replaced the whole unit in 2010"
		}
		if r.negated(i) || r.wordAt(i-1, "dont", "didnt", "not", "no", "doesnt", "never") ||
			r.wordsIn(max(from, i-2), i, "he", "they", "neighbor") {
			return false
		}
		wish = true
	}
	return wish
}

// wholeWanted: the sentence wishes for all of it: "we will take the entire unit", "the frame is shot so I
// want everything new", "los quiero cambiar completos".
func (r *reader) wholeWanted(from, to int) bool {
	if !r.wishIn(from, to) {
		return false
	}
	for i := from; i <= to; i++ {
		switch {
		case r.wordAt(i, "whole", "entire", "complete", "full") && !r.wordsIn(max(from, i-2), i, "across", "around", "over"):
			for k := i + 1; k <= min(i+3, to); k++ {
				if wholeNouns.has(r.wordText(k)) {
					return !r.deniesBetween(max(from, i-3), i)
				}
			}
		case r.wordAt(i, "completo", "completa", "completos", "completas", "entero", "entera"):
			return !r.deniesBetween(max(from, i-3), i)
		case r.bothWished(i, from), r.withDome(i, from, to):
			return !r.deniesBetween(max(from, i-4), i)
		case r.wordAt(i, "unit", "units") && r.wordAt(i-1, "new"):
			return true
		case r.wordAt(i, "frame", "frames", "marco") && r.wordsIn(max(from, i-3), i, "with", "con") &&
			r.wordsIn(max(from, i-2), i, "new", "nuevo", "complete"), r.wordAt(i, "marco") && r.wordAt(i+1, "nuevo") &&
			r.wordsIn(max(from, i-2), i, "con"):
			return true
		}
	}
	return false
}

// domeWanted: the sentence wishes for the plastic and for nothing else: "a new top, that's all we'd
// buy", "necesito la tapa, no el marco".
func (r *reader) domeWanted(from, to int) bool {
	if !r.wishIn(from, to) {
		return false
	}
	dome := -1
	for i := from; i <= to && dome < 0; i++ {
		if (domeWords.has(r.wordText(i)) ||
			r.wordAt(i, "top", "tops") && r.wordAt(i-1, "new", "plastic", "clear", "replacement", "the", "need", "want", "domed") &&
				!r.wordAt(i+1, "floor", "of")) &&
			!r.insteadWished(&hit{first: i}) && !r.wordAt(i+1, "skylight", "skylights", "unit", "units") {
			dome = i
		}
	}
	if dome < 0 {
		return false
	}
	for i := from; i <= to; i++ {
		switch {
		case (r.wordAt(i, "just", "solo", "nomas", "solamente", "unicamente") && i < dome ||
			r.wordAt(i, "only", "alone", "nomas", "solamente") && i <= dome+3) &&
			i >= dome-3 && !r.softBetween(min(i, dome), max(i, dome)) && !r.wordAt(i-1, "not", "no", "isnt") &&
			!r.wordAt(i+1, "one", "uno", "una", "two", "dos") && !(i+1 < len(r.toks) && r.toks[i+1].kind == numToken),
			r.wordAt(i, "thats", "that") && r.wordsIn(i+1, min(i+3, to+1), "all") && i > dome,
			r.wordAt(i, "nothing", "nada") && r.wordAt(i+1, "else", "mas"), r.wordAt(i, "own") && r.wordAt(i-2, "on") &&
				i > dome, r.wordAt(i, "itself", "themselves") && r.wordAt(i-1, "by"),
			r.wordAt(i, "all") &&
				(r.wordAt(i+1, "i", "im", "we", "were", "he", "she") && r.wordAt(i-1, "is", "be") && i > dome ||
					r.wordAt(i+1, "i", "we", "he", "she") && i < dome && r.wordsIn(i, dome, "is")):
			return true
		case r.wordAt(i, "frame", "frames", "marco", "marcos"), r.wordAt(i, "metal") && r.wordAt(i-1, "the", "my", "our"):
			if r.anyOf(max(from, i-3), i, keptFrame) || r.wordAt(i+1, "stays", "already") ||
				r.wordsIn(max(from, i-3), i, "got", "have") && r.wordAt(i+1, "already") {
				return true
			}
		}
	}
	return false
}

// bothWished: "frame bent, dome cracked, so I need both".
func (r *reader) bothWished(i, from int) bool {
	return r.wordAt(i, "both", "ambos") && r.anyOf(max(from, i-3), i, bothWishes) &&
		!r.wordAt(i+1, "ways", "sides", "directions", "of", "ends", "lados") && r.namesBoth()
}

// namesBoth: the message names the plastic and the frame, of which "both" can be said.
func (r *reader) namesBoth() bool {
	n := len(r.toks)
	return r.wordsIn(0, n, "dome", "domes", "plastic", "bubble", "domo", "plastico", "lens") &&
		r.wordsIn(0, n, "frame", "marco", "metal") && !r.wordsIn(0, n, "frames", "skylights", "units", "tragaluces", "marcos")
}

// withDome: the frame is wished for beside the plastic: "I'd want the frame along with the dome".
func (r *reader) withDome(i, from, to int) bool {
	if !r.wordAt(i, "frame", "frames", "marco") ||
		!r.wordAt(i-1, "the", "a", "new", "metal", "el", "un") ||
		r.wordsIn(from, i, "if", "keep", "reuse", "si") {
		return false
	}
	k := i + 1
	switch {
	case r.wordAt(k, "along", "together") && r.wordAt(k+1, "with"), r.wordAt(k, "junto") && r.wordAt(k+1, "con"):
		k += 2
	case r.wordAt(k, "as") && r.wordAt(k+1, "well") && r.wordAt(k+2, "as"):
		k += 3
	case r.wordAt(k, "plus"):
		k++
	default:
		return false
	}
	return r.wordsIn(k, min(k+3, to+1), "dome", "domes", "plastic", "bubble", "lens", "domo", "plastico", "burbuja", "top")
}
