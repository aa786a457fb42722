package reading

// A building where the writer is, or where a thing lies: it tells nothing of where the skylight is.

var (
	aboutTheSkylight = wordsOf(`skylight skylights roof roofs leak leaks leaking hole tragaluz domo techo live vivo
		vivimos goes going installed install`)
	keepVerbs = wordsOf(`set put store stored keep kept left leave laid lay saved stash stashed stuck guarde deje
		puse tengo`)
	keptThings = wordsOf(`it them tape ladder sheet plastic box paper phone glasses piece pieces cinta escalera lo
		la los celular lentes`)
	notKeptHere      = wordsOf(`often usually always mostly out working outside busy sitting back all`)
	comesHome        = wordsOf(`get got go went come came stay stayed drive drove back be`)
	beforeHomecoming = wordsOf(`i we he she ill well when till until once will gets im`)
	homecomers       = wordsOf(`i we he she wife husband somebody someone mother son daughter`)
	homeTimes        = wordsOf(`most after all evenings mornings every days now today tomorrow by before around until till
		weekends anytime usually from nights again`)
)

// keptThere: "I will set it in the garage in case you want it", "we are home most evenings", "I left
// the tape at my sister's house", "he's in school for engineering".
func (r *reader) keptThere(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if r.anyOf(from, to+1, aboutTheSkylight) {
		return false
	}
	i := h.first - 1
	for i >= from && i > h.first-4 && !r.wordAt(i, "in", "at", "inside", "from", "en", "dentro") {
		i--
	}
	if i >= from && r.wordAt(i, "at", "in", "from", "en") &&
		r.wordsIn(i+1, h.first, "friends", "neighbors", "buddys", "friend", "amigo", "vecino") {
		return true // "I saw the sample at a friend's house"
	}
	if r.wordAt(h.first, "home") && h.first == h.last {
		return r.wordAt(i+1, "home") && i >= from && r.wordAt(i, "from") || r.homeNow(h.first, to)
	}
	if i < from || i <= h.first-4 {
		return false
	}
	if r.wordAt(h.first, "school", "church", "college") && i == h.first-1 {
		return r.wordsIn(from, i, "hes", "shes", "he", "she", "is", "im", "was", "still") && !r.wordsIn(from, i, "it", "its")
	}
	if r.anyOf(from, i, keepVerbs) && r.anyOf(from, i, keptThings) {
		return true
	}
	return r.wordsIn(from, i, "im", "ill", "were", "hes", "shes") && r.anyOf(from, i, notKeptHere) ||
		r.wordAt(i-1, "out", "working") && r.wordsIn(from, i, "am", "be", "is", "are", "was") &&
			r.wordsIn(from, i, "i", "we", "he", "she")
}

// homeNow: "we are home most evenings", "I'm home after five", "when I get home", "be home by then".
func (r *reader) homeNow(i, to int) bool {
	if r.among(i-1, comesHome) {
		return r.anyOf(r.clauseStart(i), i, beforeHomecoming)
	}
	if r.wordAt(i-1, "husband", "wife", "son", "daughter", "hubby", "him", "her", "them") &&
		r.wordAt(i+1, "to", "first", "before", "so", "when", "from") {
		return true // "need my husband home to hold the tape"
	}
	if !r.wordAt(i-1, "im", "am", "are", "were", "hes", "shes", "is", "was") ||
		!(r.wordAt(i-1, "im", "hes", "shes", "were") || r.among(i-2, homecomers)) {
		return false
	}
	return r.anyOf(i+1, to+1, homeTimes) || i == to
}
