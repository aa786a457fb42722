package reading

// How many of the skylights are harmed: "they're all cracked and two leak", "2 of them leak", "uno gotea". Where the
// talk or the message tells of more, or of all, they are a part of those and no number that is wanted.

var (
	partHarms = wordsOf(`leak leaks leaking leaked leakin drip drips dripping dripped crack cracks cracked broken broke
		busted split shattered bad badly worse worst hazy cloudy foggy yellow yellowed gone missing smashed damaged
		gotea gotean goteando filtra filtran rajado rajada rajados rajadas roto rota rotos rotas quebrado quebrada
		quebrados quebradas estrellado estrellados mal peor peores malo malos feo feos`)
	partLinks = wordsOf(`of them em the these those ones are is have has got look looks really also actually even
		pretty badly just now still already starting started to a crack that which do de ellos ellas esta estan se le
		les ya muy bien mas tambien estos esos son`)
	allOfThem   = wordsOf(`all both each every todos todas ambos ambas cada everything`)
	wantedParts = wordsOf(`need needs want wants only just replace replacing order actually make quote so no not sorry
		instead solo solamente nomas necesito ocupo quiero cambiar son mejor perdon`)
)

// partHarmed: the number is of those that are harmed, and more are known of.
func (r *reader) partHarmed(i, n, next int) bool {
	if !r.harmBehind(next) || r.anyOf(max(r.clauseStart(i), i-4), i, wantedParts) {
		return false
	}
	known := r.Count
	for _, c := range r.Counts {
		known = max(known, c)
	}
	return n < known || r.anyOf(r.sentenceFirst(i), i, allOfThem) || r.moreTold(i, n)
}

// harmBehind: nothing but small words stands between the number and a word of harm.
func (r *reader) harmBehind(next int) bool {
	for k := next; k < next+6; k++ {
		if r.among(k, partHarms) {
			return true
		}
		if !r.among(k, partLinks) {
			return false
		}
	}
	return false
}

// moreTold: "need 4 domes, two leak": a larger number of skylights stands before.
func (r *reader) moreTold(i, n int) bool {
	for k := range i {
		more, next := r.countNumber(k)
		if next > k && more > n && more < 100 && r.noun(next) {
			return true
		}
	}
	return false
}
