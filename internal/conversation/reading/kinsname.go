package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	nameVerbs  = wordsOf(`is s name names named called goes by se llama es`)
	nameChange = wordsOf(`under in put use change to bajo nombre ponga pongalo cambie`)
)

// nameOfKin: "my wife's name is Rosa", where no name was asked for, tells who Rosa is; the customer
// keeps their own. What is to be "under my wife's name" is hers.
func (r *reader) nameOfKin() {
	if r.asked(fitcheck.TopicName) || !r.known(fitcheck.TopicName) {
		return
	}
	for _, w := range r.where {
		if w.topic != fitcheck.TopicName {
			continue
		}
		j := w.first - 1
		said := false
		for r.among(j, nameVerbs) || j >= 0 && r.toks[j].mark(':') {
			said = said || !r.wordAt(j, "is", "s", "es")
			j--
		}
		if said && j >= 0 && r.among(j, otherPersons) && !r.anyOf(max(0, j-4), j, nameChange) {
			r.forget(fitcheck.TopicName)
			r.use(w.first, w.first)
			r.introduced() // "my wife's name is Ann and mine is Bob Bell"
			return
		}
	}
}
