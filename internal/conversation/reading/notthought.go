package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	thinkVerbs   = wordsOf(`think believe feel reckon want creo`)
	thoughtOf    = wordsOf(`it its they theyre there theres that any he she que`)
	thoughtStops = wordsOf(`but just only except pero solo sino though although because since so`)
)

// notThought: "I don't think it leaks", "I don't want it to leak": the "not" before the thought holds for what
// is thought, where that is a harm and no "but" comes after it.
func (r *reader) notThought(i int) bool {
	hits := within(r.choices, i, i)
	if len(hits) == 0 || !hits[0].has1(string(fitcheck.TopicProblem)) || r.anyOf(i, r.sentenceLast(i)+1, butWords) {
		return false
	}
	from := r.clauseStart(i)
	for j := i - 1; j > from && j >= i-7 && !r.among(j, thoughtStops); j-- {
		if r.among(j, thinkVerbs) {
			return r.wordAt(j-1, "dont", "doesnt", "not", "no", "cant", "didnt") && r.among(j+1, thoughtOf)
		}
	}
	return false
}
