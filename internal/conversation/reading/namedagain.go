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

// namedBySizes: "small and big. … inside of box small 22 1/2 x 22 1/2, big 22 1/2 x 46 1/2": the word that a kind
// was called by stands right before a further size, whatever the size is of.
func (r *reader) namedBySizes() {
	if len(r.refs) < 2 || r.Units > 1 {
		return
	}
	named := r.refs
	for i := range r.toks {
		called := r.room(i) || lookOf[r.wordText(i)] != ""
		if !called || i < named[0].last || r.inRef(i) || !r.sizeFollows(i+1) {
			continue
		}
		units := map[int]bool{}
		for k := range named {
			if len(named[k].units) == 1 && r.calledBy(named[k], i) {
				units[named[k].units[0]] = true
			}
		}
		for unit := range units {
			if len(units) == 1 {
				r.refs = append(r.refs, unitRef{i, i, []int{unit}})
			}
		}
	}
}

// sizeFollows: a size begins at the token, a word for the skylight or a mark before it left out.
func (r *reader) sizeFollows(i int) bool {
	for r.wordAt(i, "one", "ones", "is", "are") || r.noun(i) || r.markAt(i, ':') || r.markAt(i, '=') {
		i++
	}
	_, next := r.numeralAt(i)
	return r.pairAt(i) || next > i && r.wordAt(next, "square", "sq", "round", "across", "diameter", "cuadrado")
}
