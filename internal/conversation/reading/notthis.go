package reading

// notThis: "41 3/8 not 41 5/8 outside the curb": the second of two measures is taken back, and
// what is named after it is said of the first.
func (r *reader) notThis(ms []measure) {
	for k := 1; k < len(ms); k++ {
		a, b := &ms[k-1], &ms[k]
		if r.wordAt(b.first-1, "de") && r.wordAt(b.first-2, "no") && r.markAt(b.first-3, ',') && a.shape == b.shape && !a.drop {
			b.drop = true // "es de 22 por 46 pulgadas, no de 22 por 48"
			continue
		}
		if r.wordAt(b.first-1, "not", "no") && a.shape == lone && b.shape == lone && a.parts[0].side == noSide &&
			a.last+1 >= b.first-2 {
			a.parts[0].side = b.parts[0].side // "it's 49 7/8 not 49 3/8 long"
		}
		if !r.wordAt(b.first-1, "not", "no") || a.where || !b.where || a.shape != b.shape ||
			a.last+1 != b.first-1 && !(r.markAt(a.last+1, ',') && a.last+2 == b.first-1) {
			continue
		}
		own := a.context
		a.context = b.context
		a.drop, a.from, a.shaped, a.units = false, own.from, own.shaped, own.units
		b.drop = true
	}
}
