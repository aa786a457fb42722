package reading

// pastGroupLink is the token of the look that is told of a number of skylights in a sentence of its own: "3 are
// small and 2 are big", "two of them are round", "3 son chicos"; where there is none, the same token.
func (r *reader) pastGroupLink(i int) int {
	k := i
	if r.wordAt(k, "of", "de") && r.wordAt(k+1, "them", "those", "these", "ellos", "ellas", "esos", "estos") {
		k += 2
	}
	if !r.wordAt(k, "are", "is", "were", "son", "es") {
		return i
	}
	for k++; r.wordAt(k, "the", "pretty", "really", "very", "de", "los", "las", "mas"); {
		k++
	}
	if k < len(r.toks) && lookOf[r.toks[k].text] != "" && (r.groupEnds(k+1) || r.wordAt(k+1, "one", "ones") || r.noun(k+1)) {
		return k
	}
	return i
}
