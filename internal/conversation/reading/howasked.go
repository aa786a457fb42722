package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// howAsked: how to measure, told by its parts where no phrase knows it: "¿de dónde a dónde le mido,
// joven?", "pregunta cómo hay que tomar la medida".
func (r *reader) howAsked() {
	if slices.Contains(r.out.Requests, RequestHowTo) {
		return
	}
	if r.tellApart() {
		r.request(RequestHowTo)
		r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestQuestion })
		return
	}
	if r.askedSize() == "none" {
		return
	}
	for _, t := range r.Asked {
		if r.known(t) {
			return
		}
	}
	for i := range r.toks {
		if !r.wordAt(i, "como", "donde", "cual", "how", "where", "which") || r.negated(i) {
			continue
		}
		from, to := r.sentence(i)
		asks := r.markAt(to, '?') || r.wordsIn(from, i, "pregunta", "preguntan", "digame", "diga", "dime", "explique", "expliqueme", "asks", "asking", "wonders", "tell", "explain")
		if asks && r.measures(i+1, min(i+7, to+1)) {
			r.request(RequestHowTo)
			r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestQuestion })
			return
		}
	}
}

// measures: the words tell of the customer's measuring: "le mido", "se toma la medida", "do I hook the tape".
func (r *reader) measures(from, to int) bool {
	if r.wordsIn(from, to, "you", "u", "ustedes", "usted", "they", "miden") && !r.wordsIn(from, to, "want", "need", "quiere", "quieren", "like") {
		return false
	}
	return r.wordsIn(from, to, "mido", "medir", "medirlo", "medirle", "mida", "medimos", "midiendo", "mide", "measure", "measuring", "measurement", "measured") && !r.wordsIn(from, to, "cuanto") ||
		r.wordsIn(from, to, "tomo", "tomar", "toma", "saco", "sacar", "agarro", "agarrar", "pongo", "poner", "empiezo", "take", "hook", "put", "hold", "start") && r.wordsIn(from, to, "medida", "medidas", "cinta", "metro", "tape", "ruler", "regla")
}

// tellApart: asked what is up there, "how can I tell what kind?", "what's the difference?", "¿cómo
// sé cuál es?": how to see which of those named it is.
func (r *reader) tellApart() bool {
	if !r.asked(fitcheck.TopicStyle) || r.known(fitcheck.TopicStyle) {
		return false
	}
	for i := range r.toks {
		_, to := r.sentence(i)
		switch {
		case r.wordAt(i, "difference", "diferencia", "distinguish", "distinguir"):
			if from, _ := r.sentence(i); r.wordsIn(from, i, "what", "whats", "cual", "que", "how", "como") && !r.wordsIn(i, to+1, "price", "cost", "precio", "first", "second", "acrylic", "polycarbonate", "acrilico", "policarbonato") {
				return true
			}
		case r.wordAt(i, "how", "hows", "howd"):
			if r.wordsIn(i+1, min(i+6, to+1), "tell", "know", "identify", "recognize", "see") || r.wordsIn(i+1, min(i+6, to+1), "find", "figure") && r.wordsIn(i+1, min(i+7, to+1), "out") {
				return !r.wordsIn(i+1, to+1, "size", "big", "measure", "fit", "fits", "much", "long", "layers", "many")
			}
		case r.wordAt(i, "como"):
			if r.wordsIn(i+1, min(i+4, to+1), "se", "sabe", "saber", "saberlo", "distingo", "reconozco", "identifico", "averiguo", "doy") && r.wordsIn(i+1, to+1, "cual", "tipo", "que", "clase", "saber", "saberlo", "distingo", "reconozco", "identifico", "cuenta", "sabe") {
				return !r.wordsIn(i+1, to+1, "medida", "medidas", "mide", "mido", "grande", "capas", "tamano")
			}
		}
	}
	return false
}
