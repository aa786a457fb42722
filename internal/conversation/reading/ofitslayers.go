package reading

import "slices"

// bothOfItsLayers: "kitchen clear over white, bath white both", "el del baño blanco las dos", "both white in the
// bath": where every kind is named by itself and has a color, the word for both right beside the last one's
// color tells of its two layers.
func (r *reader) bothOfItsLayers() {
	for k := len(r.refs) - 1; k >= 0; k-- {
		if ref := &r.refs[k]; r.saysBoth(ref) && (r.ownColorBefore(k) || r.ownColorBehind(k)) && r.othersColored(k) {
			r.refs = append(r.refs[:k], r.refs[k+1:]...)
		}
	}
}

// saysBoth: the word stands for two kinds, and may as well stand for two layers.
func (r *reader) saysBoth(ref *unitRef) bool {
	return len(ref.units) == 2 &&
		(r.wordAt(ref.first, "both", "ambas") && ref.first == ref.last ||
			r.wordAt(ref.first, "las") && r.wordAt(ref.last, "dos") ||
			r.wordAt(ref.first, "los") && r.wordAt(ref.last, "dos") && r.wordsIn(0, len(r.toks), "lados"))
}

// ownColorBefore: "bath white both": the color between the kind and the word is the kind's own.
func (r *reader) ownColorBefore(k int) bool {
	if k == 0 || len(r.refs[k-1].units) != 1 {
		return false
	}
	from, at := r.refs[k-1].last+1, r.refs[k].first
	if r.onlyWords(from, at, "is", "should", "be", "in", "es", "en") && r.colorAt(r.refs[k].last+1) {
		return true // "bath both white"
	}
	for r.wordAt(at-1, "on", "in", "for", "en", "por") {
		at--
	}
	return r.colorAt(at-1) && at-1 >= from && !r.softBetween(from, at) && !r.breakBetween(from, at) &&
		!slices.ContainsFunc(within(r.choices, from, at-1), func(h hit) bool { return h.is("layers", "1") && !r.inRef(h.first) })
}

// ownColorBehind: "both white in the bath": the color between the word and the kind that is named behind it.
func (r *reader) ownColorBehind(k int) bool {
	if k+1 >= len(r.refs) || len(r.refs[k+1].units) != 1 || k == 0 {
		return false
	}
	i, end := r.refs[k].last+1, r.refs[k+1].first
	if !r.colorAt(i) {
		return false
	}
	for i < end && r.colorAt(i) {
		i++
	}
	if i == end && !r.wordAt(end, "in", "on", "for", "over", "en", "para") {
		return false // "both white bath"
	}
	return r.onlyWords(i, end, "in", "on", "for", "over", "the", "my", "our", "one", "en", "para", "la", "el", "de", "del")
}

// othersColored: each other kind that the word at k would stand for is named as well, with a color on its
// side of the name.
func (r *reader) othersColored(k int) bool {
	own := r.refs[max(k-1, 0)].units
	if !r.ownColorBefore(k) {
		own = r.refs[k+1].units
	}
	for _, unit := range r.refs[k].units {
		if unit == own[0] {
			continue
		}
		told := false
		for n := range r.refs {
			if o := &r.refs[n]; n != k && len(o.units) == 1 && o.units[0] == unit {
				told = told || r.coloredIn(r.clauseStart(o.first), r.clauseEnd(o.last))
			}
		}
		if !told {
			return false
		}
	}
	return true
}

func (r *reader) coloredIn(from, to int) bool {
	for i := from; i <= to; i++ {
		if r.colorAt(i) && !r.inRef(i) {
			return true
		}
	}
	return false
}
