package reading

import "slices"

// howAsked: how to measure, told by its parts where no phrase knows it: "¿de dónde a dónde le mido,
// joven?", "pregunta cómo hay que tomar la medida".
func (r *reader) howAsked() {
	if slices.Contains(r.out.Requests, RequestHowTo) || r.askedSize() == "none" {
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
