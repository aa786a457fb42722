package reading

import "example.com/intake-bot/internal/fitcheck"

var formerUse = wordsOf(`was used former formerly old converted originally era fue antigua antiguo vieja viejo`)

// livedIn: a building that was something else and is lived in is a home: "it was a church, now we live in
// it", "era una iglesia, ahora vivimos ahí", "an old schoolhouse that we live in".
func (r *reader) livedIn() {
	if !r.asked(fitcheck.TopicUse) {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "live", "living", "lives", "vivimos", "vivo", "viven") || r.negated(i) || r.questioned(i) {
			continue
		}
		here := r.wordAt(i+1, "there", "here", "ahi", "alli", "aqui") && !r.wordAt(i+2, "in", "en") ||
			r.wordAt(i+1, "in", "en") &&
				(r.wordAt(i+2, "it", "ella", "el") || r.endsClauseAt(i+2) && r.wordsIn(max(0, i-3), i, "that", "which")) ||
			r.wordAt(i-2, "where", "donde")
		if here && r.anyOf(0, i, formerUse) {
			r.forget(fitcheck.TopicUse)
			r.dropDoubt(fitcheck.TopicUse)
			r.fact(fitcheck.TopicUse, 0, fitcheck.Choice(fitcheck.UseHome), i, min(i+1, len(r.toks)-1))
			return
		}
	}
}
