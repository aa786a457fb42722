package reading

// namedAgain: "a round one in the hall and a square one over the stairs. The round one is cracked": a
// kind that the message has named is spoken of again by the word that it was called by.
func (r *reader) namedAgain() {
	if len(r.refs) < 2 || r.Units > 1 {
		return
	}
	named := r.refs
	for _, m := range r.mentions() {
		if m.bySize || r.inRef(m.first) || r.inRef(m.key) || m.first < named[len(named)-1].first {
			continue
		}
		units := []int(nil)
		for k := range named {
			if len(named[k].units) == 1 && r.calledBy(named[k], m.key) {
				if units != nil && units[0] != named[k].units[0] {
					units = nil
					break
				}
				units = named[k].units
			}
		}
		if units != nil {
			r.refs = append(r.refs, unitRef{m.first, m.last, units})
		}
	}
}

// calledBy: the word at the token, or another for the same look or room, stands in what the kind is called.
func (r *reader) calledBy(ref unitRef, key int) bool {
	w := r.toks[key].text
	for i := ref.first; i <= ref.last; i++ {
		t := r.wordText(i)
		if t == w && t != "" || lookOf[t] != "" && lookOf[t] == lookOf[w] || r.room(i) && sameRoom(t, w) {
			return true
		}
	}
	return false
}
