package reading

var (
	soManyAlike  = wordsOf(`alike identical same matching iguales identicos identicas igualitos parejos mismos mismo`)
	alikeLinks   = wordsOf(`of them all the exact exactly just que son todos todas de los las lo`)
	beforeAlikes = wordsOf(`son are theres have got there hay tengo tenemos and y its todos they theyre`)
)

// alikeByThemselves: "3 iguales.", "two, all the same", "son 4 idénticos": a clause that tells of so many alike, and
// not what they are.
func (r *reader) alikeByThemselves(i, next int) bool {
	k := next
	if r.markAt(k, ',') {
		k++
	}
	for r.among(k, alikeLinks) {
		k++
	}
	if !r.among(k, soManyAlike) {
		return false
	}
	k += 1 + number(r.wordAt(k+1, "ones", "kind", "size", "tamano"))
	return r.stopAt(k) && (i == 0 || r.stopAt(i-1) || r.among(i-1, beforeAlikes))
}
