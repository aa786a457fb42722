package reading

import "example.com/intake-bot/internal/fitcheck"

// A second layer that nobody wants leaves one: "no need for more than one layer", "I'd rather not pay
// for a second layer of plastic", "no hace falta otra capa".

var (
	withoutSecond = wordsOf(`no not dont doesnt wont without never skip sin cant`)
	needOrPay     = wordsOf(`need needs pay want wants reason point sense afford justify bother require falta necesito
		necesitamos quiero queremos pagar ocupo ocupamos skip`)
)

// noSecondLayer takes the one layer that is left. What is not there, or only asked about, tells
// nothing of what is wanted.
func (r *reader) noSecondLayer() {
	if r.known(fitcheck.TopicLayers) || r.Units > 1 || len(r.refs) > 1 {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "layer", "layers", "skin", "sheet", "pane", "ply", "capa", "capas") ||
			r.wordAt(i+1, "of") && !r.wordAt(i+2, "plastic", "acrylic", "polycarbonate", "glazing") ||
			!r.beyondFirst(i-1) {
			continue
		}
		from, to := r.sentence(i)
		if r.markAt(to, '?') || r.questioned(i) || r.yesNoQuestion(i) || r.doubted(i, i) ||
			r.wordsIn(from, i, "if", "whether", "sure", "know", "think", "third", "two", "dos", "tercera") ||
			r.unreal(fitcheck.TopicLayers, i) {
			return
		}
		if start := max(from, i-9); r.anyOf(start, i, withoutSecond) && r.anyOf(start, i, needOrPay) {
			r.out.Unclear = withoutTopic(r.out.Unclear, fitcheck.TopicLayers)
			r.fact(fitcheck.TopicLayers, 0, fitcheck.Whole(1), i-1, i)
			return
		}
	}
}

// beyondFirst: the words before a layer are of one beyond the first.
func (r *reader) beyondFirst(i int) bool {
	return r.wordAt(i, "second", "another", "2nd", "extra", "additional", "otra", "segunda") ||
		r.wordAt(i, "one", "1", "single", "una") && r.wordsIn(max(0, i-3), i, "more", "mas") &&
			r.wordsIn(max(0, i-3), i, "than", "de", "que")
}

// kindWith: "the kind with two domes", "the insulated ones with two bubbles": the number is what that
// kind is made of, and counts no skylights.
func (r *reader) kindWith(i int) bool {
	return r.wordAt(i-1, "with", "con") &&
		r.wordsIn(max(0, i-4), i-1, "kind", "type", "sort", "style", "version", "insulated", "tipo", "clase") &&
		r.wordAt(i+1, "domes", "bubbles", "plastics", "sheets", "skins", "domos", "plasticos")
}
