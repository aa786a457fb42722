package reading

// Where kinds of unit are numbered: "#1", "1)", "1: 25 x 49  2: 30 x 30".

var beforeRoomNumber = wordsOf(`the my our is in over for la el en es del`)

// numberedUnits: "#1", "1)", "unit 2".
func (r *reader) numberedUnits() {
	if r.numberedAnswers() {
		return
	}
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || t.dec > 0 || t.whole < 1 || t.whole > 9 || t.used ||
			r.by(i-1) && i > 1 && r.toks[i-2].kind == numToken { // "2x4: 25 1/2 x 49 1/2"
			continue
		}
		switch {
		case r.markAt(i-1, '#') && t.glued && !r.wordAt(i-2, "order", "model", "part", "invoice", "apt"):
			r.refs = append(r.refs, unitRef{i - 1, i, []int{int(t.whole)}})
			r.use(i-1, i)
		case r.markAt(i+1, ')') && r.toks[i+1].glued && !r.markAt(i-1, '(') && !r.wordAt(i-1, "qty", "quantity", "cantidad", "need") &&
			r.listed(i):
			r.refs = append(r.refs, unitRef{i, i + 1, []int{int(t.whole)}})
			r.use(i, i+1)
		case r.atListHead(i) && r.listHeads(t.whole):
			last := i + 1
			r.refs = append(r.refs, unitRef{i, last, []int{int(t.whole)}})
			r.use(i, last)
		case r.markAt(i+1, ':') && r.toks[i+1].glued && r.colonList(i):
			r.refs = append(r.refs, unitRef{i, i + 1, []int{int(t.whole)}})
			r.use(i, i+1)
		case r.wordAt(i-1, "unit", "skylight", "dome", "tragaluz", "domo", "claraboya") && !r.by(i+1) && !r.markAt(i+1, '/') &&
			r.unitAt(i+1) == noUnit && !r.wordAt(i+1, "of", "over", "above", "off", "high", "tall", "up") && !r.mixedAt(i) &&
			!r.layersAfter(i):
			r.refs = append(r.refs, unitRef{i - 1, i, []int{int(t.whole)}})
			r.use(i, i)
		case r.numberedOn(i):
			r.refs = append(r.refs, unitRef{i, i, []int{int(t.whole)}})
			r.use(i, i)
		}
	}
}

// numberedOn: a bare number goes on from a kind that was named by its own: "skylight 1 is
// fine, 2 should be bronze". Two of them name each other: "1 is clear, 2 is bronze".
func (r *reader) numberedOn(i int) bool {
	if !r.saidOfOne(i) {
		return false
	}
	if n := len(r.refs); n > 0 {
		last := r.toks[r.refs[n-1].last]
		return last.kind == numToken && last.whole < r.toks[i].whole &&
			(r.markAt(i-1, ',') || r.sentenceEnd(i-1) || r.wordAt(i-1, "and", "but", "y", "pero"))
	}
	for k := i + 1; i == 0 && k < len(r.toks); k++ {
		if r.toks[k].kind == numToken && r.toks[k].dec == 0 && r.toks[k].whole == r.toks[i].whole+1 && r.saidOfOne(k) {
			return r.Units > 1
		}
	}
	return false
}

// saidOfOne: what follows the number is said of a single thing.
func (r *reader) saidOfOne(i int) bool {
	return r.wordAt(i+1, "should", "needs", "gets", "is", "debe", "es", "lleva")
}

// colonList: the message has "1:" and "2:", and a word or a number apart after each.
func (r *reader) colonList(at int) bool {
	other := false
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || t.dec > 0 || t.whole < 1 || t.whole > 9 || !r.markAt(i+1, ':') || !r.toks[i+1].glued {
			continue
		}
		if i+2 >= len(r.toks) || r.toks[i+2].glued && r.toks[i+2].kind == numToken || r.toks[i+2].mark('\n') {
			return false
		}
		other = other || i != at && t.whole != r.toks[at].whole
	}
	return other
}

// listed: the message has "1)" and "2)".
func (r *reader) listed(at int) bool {
	for i := range r.toks {
		if i != at && r.toks[i].kind == numToken && r.markAt(i+1, ')') && r.toks[i+1].glued && r.toks[i].whole <= 9 {
			return true
		}
	}
	return false
}

// atListHead: "1." or "1-" at the start of a line, "(1)" anywhere.
func (r *reader) atListHead(i int) bool {
	if i+2 >= len(r.toks) || r.toks[i].kind != numToken || r.toks[i].dec > 0 || !r.toks[i+1].glued {
		return false
	}
	if r.markAt(i-1, '(') {
		return r.markAt(i+1, ')')
	}
	return (i == 0 || r.markAt(i-1, '\n')) && (r.markAt(i+1, '.') || r.markAt(i+1, '-')) && !r.toks[i+2].glued
}

// listHeads: the message is a list numbered from 1 on.
func (r *reader) listHeads(n int64) bool {
	before := int64(0)
	for i := range r.toks {
		if !r.atListHead(i) {
			continue
		}
		if r.toks[i].whole != before+1 {
			return false // "(2) 36x36 (1) 24x48": how many of each
		}
		before++
	}
	return before > 1 && n <= before
}

// numberedAnswers: several questions are answered under their numbers: "1. double 2. clear
// 3. whatever 4. mill". The numbers tell nothing.
func (r *reader) numberedAnswers() bool {
	if len(r.Asked) < 2 || !chosen(r.Asked[0]) {
		return false
	}
	var heads []int
	for i := range r.toks {
		if t := &r.toks[i]; t.kind == numToken && t.dec == 0 && t.whole == int64(len(heads)+1) && i+2 < len(r.toks) &&
			r.toks[i+1].glued && (r.markAt(i+1, '.') || r.markAt(i+1, ')') || r.markAt(i+1, '-') || r.markAt(i+1, ':')) {
			heads = append(heads, i)
		}
	}
	if len(heads) < 2 || heads[0] != 0 {
		return false
	}
	for _, i := range heads {
		r.use(i, i+1)
	}
	return true
}

// roomOfNumber: "#1 kitchen 25 x 25", "2) the hall: 25 x 49": the room of a kind that goes by its
// number.
func (r *reader) roomOfNumber(i int) int {
	if r.wordAt(i, "room") && r.room(i-1) {
		i--
	}
	k := i - 1
	for k >= 0 && (r.markAt(k, '(') || r.markAt(k, '-') || r.markAt(k, ':') || r.markAt(k, ',') || r.among(k, beforeRoomNumber)) {
		k--
	}
	if !r.room(i) || sizeWords.has(r.toks[i].text) {
		return 0
	}
	for _, ref := range r.refs {
		if ref.last == k && len(ref.units) == 1 && (r.toks[k].kind == numToken || r.markAt(k, ')') || r.markAt(k, ':')) {
			return ref.units[0]
		}
	}
	return 0
}

// mixedAt: a fraction goes with the number: "dome 7 1/2 over its lip" numbers no dome.
func (r *reader) mixedAt(i int) bool {
	_, next := r.numeralAt(i)
	return next > i+1
}
