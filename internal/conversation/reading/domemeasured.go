package reading

import "example.com/intake-bot/internal/fitcheck"

// domeMeasured: who asks for a replacement dome and tells what the plastic measures wants
// the plastic. Without its size "a dome" may be the whole thing.
func (r *reader) domeMeasured() {
	if !r.known(fitcheck.TopicPlasticSize) || r.known(fitcheck.TopicWant) || r.doubtful(fitcheck.TopicWant) || len(r.Asked) > 0 {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "replacement", "replacements") || !r.wordAt(i+1, "dome", "domes", "bubble", "bubbles", "lens", "lenses", "plastic", "skylight", "acrylic") || r.negated(i) {
			continue
		}
		last := i + 1
		if r.wordAt(last+1, "dome", "domes", "bubble", "lens") {
			last++
		}
		if !r.wordAt(last, "skylight") {
			r.fact(fitcheck.TopicWant, 0, fitcheck.Choice(fitcheck.WantDomeOnly), i, last)
			return
		}
	}
}
