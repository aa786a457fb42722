package reading

import "example.com/intake-bot/internal/fitcheck"

// Skylights that are counted by being alike: "there are two alike", "son dos iguales".

var (
	alikeWords  = wordsOf(`alike identical matching same igual iguales igualitos igualitas identicos identicas mismo`)
	alikeFiller = wordsOf(`of them em just exactly all both pretty much the de ellos ellas exactamente lo los las todos
		todas bien muy`)
	existWords = wordsOf(`theres there are have got need want its make hay son tengo tenemos ocupo necesito quiero serian
		fueran sean`)
	afterAlike = wordsOf(`ones up there here please not instead actually really though tho now thanks por favor ahi alla
		aqui arriba`)
)

// countAlike: "no sorry, my tenant says there are two alike", "me dice el inquilino que son dos
// iguales": so many skylights, whatever was asked. What else may be alike is named: "two sides the same".
func (r *reader) countAlike(i int) (countAt, bool) {
	n, next := r.countNumber(i)
	there := r.among(i-1, existWords)
	if next == i || n < 2 || n > mostBeside || r.toks[i].used || !there && (r.asked(fitcheck.TopicLayers) || !r.correctsFrom(i)) {
		return countAt{}, false
	}
	end := next
	for r.among(end, alikeFiller) || there && r.wordAt(end, "that", "which", "que", "are", "son") {
		end++
	}
	measure := r.toks[i].kind == numToken && r.askedSize() != "none" && !r.wordAt(i-1, "are", "theres", "hay", "have")
	goesOn := end+1 < len(r.toks) && r.toks[end+1].kind == wordToken && !r.among(end+1, afterAlike)
	if measure || goesOn || !r.among(end, alikeWords) {
		return countAt{}, false // "its 9 the same", "two the same size as the sink"
	}
	denied := r.negated(i) && !r.wordAt(r.sentenceFirst(i), "no") || r.among(i-2, negWords) // not "no dice mi esposa que hay dos"
	if denied || r.overtaken(i) || r.questioned(i) || r.layersCounted(i) {
		return countAt{}, false
	}
	r.use(i, next-1) // no size
	return countAt{n, i, end}, true
}

// correctsFrom: a clause begins at the token, perhaps with "no" or "sorry" before it.
func (r *reader) correctsFrom(i int) bool {
	for r.among(i-1, correcting) || r.wordAt(i-1, "no", "oh") {
		i--
	}
	return i == 0 || r.toks[i-1].kind == markToken
}
