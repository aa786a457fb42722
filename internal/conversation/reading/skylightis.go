package reading

import "example.com/intake-bot/internal/fitcheck"

// What is said of the skylight as a whole, by subject and predicate: "the plastic sheet is flat",
// "flat, not domed". A lone "flat" may be the roof's, the glass's or the flange's.

var (
	notFlatSheet = wordsOf(`on against to with edge lip flange roof roofs roofed glass around down onto part deck
		rubber tar rate fee out file bottom frame metal en sobre contra screw`)
	sheetAdverbs = wordsOf(`just completely totally perfectly all pretty very quite a plain todo toda muy simply
		only really actually nice and`)
	sheetRelations = wordsOf(`of on by to under over around below above beside inside del de`)
)

var (
	// isWords join what is spoken of and what is said of it.
	isWords = wordsOf(`is are was looks look lies es son esta estan era se ve`)
	// mineWords stand for the skylight.
	mineWords = wordsOf(`mine ours mio mia nuestro nuestra`)
	// bulgeWords are what a flat sheet has none of.
	bulgeWords = wordsOf(`dome domed domes bubble bubbled bubbles bulge bulging bulged hump curved curve rounded
		round bump raised burbuja domo cupula abombado abombada curva curvo bola bulto joroba redondo`)
)

// flatSheet adds a flat profile where the skylight or its plastic is said to be flat.
func (r *reader) flatSheet(all []saying) []saying {
	if len(r.Asked) > 0 && !r.asked(fitcheck.TopicProfile) || r.asksItself() {
		return all
	}
	for _, s := range all {
		if s.topic == fitcheck.TopicProfile && s.value != "?" && !s.negated {
			return all
		}
	}
	for i := range r.toks {
		if !r.wordAt(i, "flat", "plano", "plana", "planos", "planas", "flatt") || r.negated(i) || r.doubted(i, i) {
			continue
		}
		if r.among(i+1, notFlatSheet) || r.wordsIn(max(0, i-3), i, "lip", "flange", "edge", "roof", "techo", "losa") {
			continue
		}
		if r.sheetIs(i) || r.noBulgeNear(i) {
			return append(all, saying{topic: fitcheck.TopicProfile, value: fitcheck.ProfileFlat, first: i, last: i})
		}
	}
	return all
}

// sheetIs: "the plastic sheet is", "mine's", "el mío es" go before what is said at the token.
func (r *reader) sheetIs(i int) bool {
	k := i - 1
	for r.among(k, sheetAdverbs) {
		k--
	}
	if k >= 1 && r.among(k, isWords) {
		k--
		for r.wordAt(k, "sheet", "piece", "panel", "part", "itself", "top", "shape", "itself", "se") {
			k--
		}
	}
	if k < 0 || k == i-1 && !r.wordAt(k, "skylights", "mine", "mines", "ours") || r.toks[k].kind != wordToken {
		return false
	}
	before := k - 1
	for r.wordAt(before, "the", "a", "my", "our", "el", "la") {
		before--
	}
	if r.among(before, sheetRelations) {
		return false
	}
	t := r.toks[k].text
	return wholeWords.has(t) || mineWords.has(t) || sheetWords.has(t) && !bulgeWords.has(t)
}

// noBulgeNear: that there is a bulge is denied right beside the token: "flat, not domed".
func (r *reader) noBulgeNear(i int) bool {
	from, to := r.sentence(i)
	for k := max(from, i-7); k <= min(to, i+8); k++ {
		if r.toks[k].kind != wordToken || !bulgeWords.has(r.toks[k].text) ||
			r.wordAt(k+1, "skylight", "skylights", "is", "has", "esta") {
			continue
		}
		for j := k - 1; j >= max(from, k-6); j-- {
			if r.wordAt(j, "not", "no", "isnt", "without", "sin", "aint", "doesnt", "never", "instead") {
				return !r.wordsIn(j, k, "leak", "leaking", "crack", "cracked", "frame", "box", "curb", "roof")
			}
		}
	}
	return false
}
