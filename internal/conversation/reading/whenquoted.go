package reading

// whenQuoted: "when can I get a quote?", "how soon do you send the estimate", "¿cuándo me mandan la cotización?": the
// time is asked for, and no sum.
func (r *reader) whenQuoted(h *hit) bool {
	from, to := r.sentence(h.first)
	if !r.wordsIn(h.first, to+1, "quote", "quotes", "estimate", "bid", "cotizacion", "presupuesto") ||
		r.wordsIn(from, to+1, "much", "price", "cost", "costs", "cuesta", "precio") {
		return false
	}
	for i := from; i < h.last; i++ {
		if r.wordAt(i, "when", "cuando") || r.wordAt(i, "how") && r.wordAt(i+1, "soon", "long", "fast", "quick", "quickly") ||
			r.wordAt(i, "cuanto") && r.wordAt(i+1, "tarda", "tardan", "tiempo") {
			return true
		}
	}
	return false
}
