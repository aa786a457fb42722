package reading

// namedAtTheEnd: "one 25 1/4 square and one 25 1/4 x 49 1/4, plastic edge to edge": one size of each kind in a
// sentence, and behind the last the part that they all are of.
func (r *reader) namedAtTheEnd(ms []measure) bool {
	last := &ms[len(ms)-1]
	if r.labelled(r.clauseStart(last.first), last.first-1) || !r.labelled(last.last+1, r.sentenceLast(last.last)) {
		return false
	}
	for k := range ms {
		m := &ms[k]
		counted := len(m.units) == 0 && r.wholeSaid(m.first-1) > 0 // "one 25 1/4 x 49 1/4"
		if !counted && len(m.units) != 1 || m.shape != pair && !m.square {
			return false
		}
		if k > 0 && !counted && len(ms[k-1].units) == 1 && m.units[0] == ms[k-1].units[0] {
			return false
		}
		if k < len(ms)-1 && (m.where && !m.ofWhole() || r.sentenceFirst(m.first) != r.sentenceFirst(last.first)) {
			return false
		}
	}
	return true
}
