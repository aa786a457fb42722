package reading

import "slices"

var (
	wantsToKnow = wordsOf(`wants want wanted asks asking wonders wondering wondered curious insists likes like needs
		need quiere quieren pregunta preguntan preguntando gustaria quisiera quiero`)
	indirectly   = wordsOf(`if whether how why when where what which si como cuando donde cual cuanto que`)
	notWondering = wordsOf(`not dont doesnt didnt never no`)
)

// asksForAnother: "he wants to know if it matters that he measured in the cold", "my wife is asking whether the
// plastic yellows": a question in the words of a wish to know, beside whatever else the message tells.
func (r *reader) asksForAnother() {
	if slices.ContainsFunc(r.out.Requests, func(q Request) bool {
		return q == RequestQuestion || q == RequestPrice || q == RequestHowTo || q == RequestPerson
	}) {
		return
	}
	for i := range r.toks {
		if !r.among(i, wantsToKnow) || r.anyOf(max(0, i-2), i, notWondering) {
			continue
		}
		k := i + 1
		if r.wordAt(k, "to", "a") && r.wordAt(k+1, "know", "find", "ask") {
			k += 2
		} else if r.wordAt(k, "saber") {
			k++
		} else if r.wordAt(i, "want", "wants", "wanted", "like", "likes", "need", "needs", "quiere", "quieren", "quiero", "insists") {
			continue // "he wants what was there before"
		}
		for r.wordAt(k, "out", "me", "us", "him", "about") {
			k++
		}
		if r.askedSize() != "none" && r.wordAt(k, "how", "como") && r.measures(k+1, min(k+5, len(r.toks))) {
			r.request(RequestHowTo) // "he wants to know how to measure it"
			return
		}
		if r.among(k, indirectly) && r.sentenceLast(i)-k >= 2 && !r.wordAt(k+1, "to", "medir", "mido", "mide") && !r.fellTo(i) {
			r.request(RequestQuestion)
			return
		}
	}
}
