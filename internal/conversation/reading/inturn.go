package reading

import "slices"

// eachInTurn: "small ones 26 x 26, big ones 26 x 50. opening 24 x 24 and 24 x 48", "plastic for both,
// 25 x 25 and 25 x 49": as many sizes in a row as there are kinds, none of them called by its kind,
// are one of each, in the order in which the kinds were named.
func (r *reader) eachInTurn(ms []measure) {
	order := r.kindsInOrder()
	n := len(order)
	if n < 2 || n < r.Units {
		return
	}
	for k := 0; k+n <= len(ms); k++ {
		row := ms[k : k+n]
		if !r.inRow(row, n) {
			continue
		}
		for i := range row {
			row[i].units = []int{order[i]}
			row[i].topic, row[i].part, row[i].face, row[i].where = row[0].topic, row[0].part, row[0].face, row[0].where
		}
		k += n - 1
	}
}

// kindsInOrder are the kinds in the order in which the message names them, or by their numbers
// where it names none by itself.
func (r *reader) kindsInOrder() []int {
	var order []int
	kinds := r.Units
	for k := range r.refs {
		units := r.refs[k].units
		kinds = max(kinds, len(units))
		if len(units) == 1 && !slices.Contains(order, units[0]) {
			order = append(order, units[0])
		}
	}
	if len(order) == 0 && kinds < len(r.kindList) {
		return r.kindList // "a small one and a big one. Curbs are 25 x 25 and 25 x 49"
	}
	if len(order) == 0 {
		for unit := 1; unit <= kinds; unit++ {
			order = append(order, unit)
		}
	}
	return order
}

// inRow: the sizes stand side by side, as of one thing of unlike skylights, and their sentence
// calls none by its kind.
func (r *reader) inRow(row []measure, kinds int) bool {
	first := &row[0]
	from, to := r.sentenceFirst(first.first), r.sentenceLast(row[len(row)-1].last)
	for k := range r.refs {
		if ref := &r.refs[k]; ref.first >= from && ref.first <= to && len(ref.units) != kinds {
			return false
		}
	}
	for k := range row {
		m := &row[k]
		if _, ok := m.extent(); !ok || m.drop || m.other || m.diag || m.fixed ||
			!slices.Equal(m.units, first.units) || r.sentenceFirst(m.first) != from {
			return false
		}
		if m.where && (m.topic != first.topic || m.part != first.part || m.face != first.face) {
			return false
		}
		if k > 0 && (!m.unlike(&row[k-1]) || r.correctedBetween(&row[k-1], m)) {
			return false
		}
	}
	return true
}

// unlike: the sizes lie further apart than parts of one skylight.
func (m *measure) unlike(o *measure) bool {
	a, _ := m.extent()
	b, _ := o.extent()
	return abs(a[0]-b[0]) > FarSizes || abs(a[1]-b[1]) > FarSizes
}
