package reading

var (
	iCanWords = wordsOf(`puede pueden podria podrian posible hay tienen tiene manejan hacen venden possible can could do
		have carry sell make able allowed`)
	ifFillers = wordsOf(`se es fuera esta lo la los las le eso its it that is you u yall we i ya guys one in them de ese esa
		of not at all asi`)
)

// politeIf: a clause that only makes a wish polite begins at the token: "en blanco si se puede", "bronce si
// tienen", "white if you have it". What the value is it leaves as it is.
func (r *reader) politeIf(i int) bool {
	if !r.wordAt(i, "si", "if") {
		return false
	}
	able := false
	for i++; i < len(r.toks) && r.toks[i].kind == wordToken; i++ {
		if !r.among(i, iCanWords) && !r.among(i, ifFillers) {
			return able && r.wordAt(i, "please", "por", "thanks", "gracias")
		}
		able = able || r.among(i, iCanWords)
	}
	return able && !r.markAt(i, '?')
}

// wishedAloud: "I'd like just the plastic if possible", "just the plastic please", where what was asked is how large
// the plastic is: what is wanted, not what was measured.
func (r *reader) wishedAloud(h *hit) bool {
	from, to := r.sentence(h.first)
	for i := from; i <= to; i++ {
		if r.numberAt(i).kind != notNumber || r.toks[i].kind == numToken {
			return false // "I'd like just the plastic, 25 x 49"
		}
	}
	return !r.markAt(to, '?') && (r.wishBefore(h.last) || r.politeIf(h.last+1) || r.wordAt(h.last+1, "please", "pls"))
}
