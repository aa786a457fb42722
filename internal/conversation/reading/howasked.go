package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	howWords        = wordsOf(`como donde cual how where which`)
	askingVerbs     = wordsOf(`pregunta preguntan digame diga dime explique expliqueme asks asking wonders tell explain`)
	othersMeasure   = wordsOf(`you u ustedes usted they miden`)
	howMeasureVerbs = wordsOf(`mido medir medirlo medirle mida medimos midiendo mide measure measuring measurement
		measured`)
	takeVerbs   = wordsOf(`tomo tomar toma saco sacar agarro agarrar pongo poner empiezo take hook put hold start`)
	tapeNouns   = wordsOf(`medida medidas cinta metro tape ruler regla`)
	whatDiffers = wordsOf(`what whats cual que how como`)
	differsElse = wordsOf(`price cost precio first second acrylic polycarbonate acrilico policarbonato`)
	tellSizes   = wordsOf(`size big measure fit fits much long layers many`)
	tellVerbsES = wordsOf(`se sabe saber saberlo distingo reconozco identifico averiguo doy`)
	tellWhatES  = wordsOf(`cual tipo que clase saber saberlo distingo reconozco identifico cuenta sabe`)
	tellSizesES = wordsOf(`medida medidas mide mido grande capas tamano`)
)

// howAsked: how to measure, told by its parts where no phrase knows it: "¿de dónde a dónde le mido,
// joven?", "pregunta cómo hay que tomar la medida".
func (r *reader) howAsked() {
	if slices.Contains(r.out.Requests, RequestHowTo) {
		return
	}
	if r.tellApart() {
		r.requestHowTo()
		return
	}
	if r.askedSize() == "none" || slices.ContainsFunc(r.Asked, r.known) {
		return
	}
	for i := range r.toks {
		if r.asksMeasuring(i) {
			r.requestHowTo()
			return
		}
	}
}

// requestHowTo notes that it is asked how, in place of any other question.
func (r *reader) requestHowTo() {
	r.request(RequestHowTo)
	r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestQuestion })
}

// asksMeasuring: a "how" or "where" at the token asks of the measuring that follows.
func (r *reader) asksMeasuring(i int) bool {
	if !r.among(i, howWords) || r.negated(i) {
		return false
	}
	from, to := r.sentence(i)
	return (r.markAt(to, '?') || r.anyOf(from, i, askingVerbs)) && r.measures(i+1, min(i+7, to+1))
}

// measures: the words tell of the customer's measuring: "le mido", "se toma la medida", "do I hook the tape".
func (r *reader) measures(from, to int) bool {
	if r.anyOf(from, to, othersMeasure) && !r.wordsIn(from, to, "want", "need", "quiere", "quieren", "like") {
		return false
	}
	return r.anyOf(from, to, howMeasureVerbs) && !r.wordsIn(from, to, "cuanto") ||
		r.anyOf(from, to, takeVerbs) && r.anyOf(from, to, tapeNouns)
}

// tellApart: asked what is up there, "how can I tell what kind?", "what's the difference?", "¿cómo
// sé cuál es?": how to see which of those named it is.
func (r *reader) tellApart() bool {
	if !r.asked(fitcheck.TopicStyle) || r.known(fitcheck.TopicStyle) {
		return false
	}
	for i := range r.toks {
		from, to := r.sentence(i)
		switch {
		case r.wordAt(i, "difference", "diferencia", "distinguish", "distinguir"):
			if r.anyOf(from, i, whatDiffers) && !r.anyOf(i, to+1, differsElse) {
				return true
			}
		case r.wordAt(i, "how", "hows", "howd"):
			if r.toTell(i+1, to+1) {
				return !r.anyOf(i+1, to+1, tellSizes)
			}
		case r.wordAt(i, "como"):
			if r.anyOf(i+1, min(i+4, to+1), tellVerbsES) && r.anyOf(i+1, to+1, tellWhatES) {
				return !r.anyOf(i+1, to+1, tellSizesES)
			}
		}
	}
	return false
}

// toTell: "… can I tell", "… do I find out", after a "how".
func (r *reader) toTell(from, to int) bool {
	end := min(from+5, to)
	return r.wordsIn(from, end, "tell", "know", "identify", "recognize", "see") ||
		r.wordsIn(from, end, "find", "figure") && r.wordsIn(from, min(from+6, to), "out")
}
