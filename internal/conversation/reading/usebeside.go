package reading

// Buildings that are named and don't tell where the skylight is: where somebody is, goes to
// school, or leaves a thing: "I'll set it in the garage", "out in the barn with no signal".

var (
	peopleSpokenOf = wordsOf(`kid kids son daughter sons daughters boys girls children grandkids he she i they hijo
		hijos`)
	beforeUseNoun = wordsOf(`the my our his her their a sisters brothers neighbors moms dads sons daughters front
		side back el la mi`)
	useTimes = wordsOf(`most all after by until till in from every evenings mornings weekends tomorrow today tonight
		now during around before`)
	putVerbs  = wordsOf(`set put leave left keep kept store stored drop lay laid stuck stashed hang hung`)
	putThings = wordsOf(`it them that tape ladder package box message sheet piece note notes phone everything boxes`)
)

// aboutPeople says whether the words of a use tell where a person or a thing is.
func (r *reader) aboutPeople(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	if r.wordsIn(from, to+1, "skylight", "skylights", "dome", "domes", "roof", "bubble", "tragaluz", "domo", "techo") ||
		r.wordsIn(from, h.first, "need", "want") {
		return false
	}
	i := h.first - 1
	if r.wordAt(h.last, "house") && r.wordAt(i, "keep", "keeps", "kept", "keeping") {
		return true // "I keep house for two elderly ladies"
	}
	if r.wordAt(h.last, "school", "college", "kindergarten", "preschool") && r.wordAt(i, "in", "at", "to", "from", "through") &&
		r.anyOf(from, i, peopleSpokenOf) {
		return true // "since my kids were in grade school"
	}
	if r.wordAt(h.first, "school") && r.wordAt(i, "in", "at", "to", "from", "after") {
		return true // "he's in school for engineering"
	}
	for r.among(i, beforeUseNoun) {
		i--
	}
	if r.wordAt(i, "of") && r.wordAt(i-1, "side", "sides") && r.wordAt(h.last, "house", "home", "barn", "garage") {
		return true // "big oaks on both sides of the house"
	}
	if r.wordAt(h.last, "home") && r.wordAt(h.first-1, "are", "am", "is", "im", "be", "were", "hes", "shes") &&
		r.among(h.last+1, useTimes) {
		return true // "we are home most evenings"
	}
	if !r.wordAt(i, "in", "at", "on", "inside", "behind", "by", "to", "en") {
		return false
	}
	for k := i - 1; k >= max(from, i-7); k-- {
		if r.among(k, putVerbs) && r.anyOf(k+1, i, putThings) && !r.wordsIn(from, k, "where") {
			return true
		}
		if r.wordAt(k, "im", "am") &&
			r.onlyWords(k+1, i, "often", "usually", "always", "mostly", "out", "down", "over", "up", "back", "working", "still", "right",
				"now", "busy") &&
			i > k+1 {
			return true
		}
	}
	return false
}
