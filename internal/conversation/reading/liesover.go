package reading

// liesOver: the color is one of two that lie over each other, as only the plastic's layers do: "bronze over
// clear".
func (r *reader) liesOver(h *hit) bool {
	for n := range r.choices {
		if r.choices[n].first == h.first {
			return r.overPair(n, 1) || r.overPair(n, -1)
		}
	}
	return false
}
