package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// A list of skylights in one message: "4 whole units curb outside 25 x 49, and one round dome
// 30 across", each with a number and a size, or a kind of frame, of its own.

var (
	itemNouns       = wordsOf(`unit units skylight skylights one ones unidad unidades tragaluz tragaluces`)
	afterPlainCount = wordsOf(`with in con is are es son has have tiene tienen`)
	beforeItemCount = wordsOf(`and y plus need needs want wants order quote get buy for also necesito ocupo quiero
		have got then replace replacing mas on me us quote price`)
)

// item is one of the list: from its number to where the next begins.
type item struct {
	first, last int
	count       countAt
}

// itemUnits makes each item of such a list a kind of unit. What is said in between belongs to
// the item before it.
func (r *reader) itemUnits() {
	if r.Units > 1 {
		return
	}
	items := r.items()
	if len(items) < 2 || !r.onlyRooms(items) {
		return
	}
	r.refs = nil
	sum := 0
	for _, it := range items {
		sum += it.count.value
	}
	for i := range items[0].first {
		if r.wholeSaid(i) == sum && r.wordAt(i+1, "total", "altogether", "all", "in", "en") {
			r.use(i, i) // "nine total, seven of 50 x 50 and two of 26 x 50"
		}
	}
	for k, it := range items {
		r.refs = append(r.refs, unitRef{it.first, it.first, []int{k + 1}})
		r.fact(fitcheck.TopicCount, k+1, fitcheck.Whole(it.count.value), it.count.first, it.count.last)
		r.use(it.count.first, it.count.last)
	}
	r.itemsEnd = r.sentenceLast(items[len(items)-1].first)
	r.itemWants(items)
}

// onlyRooms: no kinds are named but by the rooms of the items: "a 24 x 24 dome for the bathroom
// and a 30 x 30 one for the hall".
func (r *reader) onlyRooms(items []item) bool {
	for k := range r.refs {
		if ref := &r.refs[k]; len(ref.units) != 1 || ref.units[0] > len(items) ||
			ref.first < items[ref.units[0]-1].first || ref.first > items[ref.units[0]-1].last ||
			!r.room(ref.last) {
			return false
		}
	}
	return true
}

// itemWants: "a complete 30 x 30 unit", "24 x 48 whole units": the size may stand between the
// words. Beside a complete one a dome is the dome alone.
func (r *reader) itemWants(items []item) {
	complete := func(it item) bool {
		return r.wordsIn(it.first, it.last+1, "complete", "whole", "entire", "completo", "completa", "completos", "completas") &&
			r.anyOf(it.first, it.last+1, itemNouns)
	}
	dome := func(it item) bool {
		return r.wordsIn(it.first, it.last+1, "dome", "domes", "bubble", "bubbles", "domo", "domos") && !complete(it)
	}
	if !slices.ContainsFunc(items, complete) {
		return
	}
	last := len(items) - 1
	for k, it := range items {
		if k < last && complete(items[last]) &&
			!slices.ContainsFunc(items[:last], func(it item) bool { return r.skylightNamed(it.count.last+1, it.last+1) }) {
			it = items[last] // "three 25 x 25 and two 25 x 49 complete skylights"
		}
		it.last = min(it.last, r.itemsEnd)
		switch {
		case complete(it):
			at := r.firstOf(it, "complete", "whole", "entire", "completo", "completa", "completos", "completas")
			r.fact(fitcheck.TopicWant, k+1, fitcheck.Choice(fitcheck.WantCompleteUnit), at, at)
		case dome(it):
			at := r.firstOf(it, "dome", "domes", "bubble", "bubbles", "domo", "domos")
			r.fact(fitcheck.TopicWant, k+1, fitcheck.Choice(fitcheck.WantDomeOnly), at, at)
		}
	}
}

// firstOf is where the first of some words stands in an item.
func (r *reader) firstOf(it item, words ...string) int {
	for i := it.first; i <= it.last; i++ {
		if r.wordAt(i, words...) {
			return i
		}
	}
	return it.first
}

// items are what stands from one number to the next, where each has a size, and names a
// skylight or begins with a number; or, without sizes, where each has its own kind of frame.
// A number before them that is their sum is that of all.
func (r *reader) items() []item {
	var starts []item
	for i := range r.toks {
		if c, ok := r.itemCount(i, starts); ok {
			starts = append(starts, item{first: i, count: c})
		}
	}
	var out []item
	sized, sum := 0, 0
	for k, it := range starts {
		to := len(r.toks)
		if k+1 < len(starts) {
			to = starts[k+1].first
		}
		named, size := r.skylightNamed(it.count.last+1, to), r.sizeIn(it.count.last+1, to)
		if !named && !r.countsPlainly(it.count.last+1, to) {
			continue
		}
		if r.wordsIn(it.first, to, "measured", "said", "told", "was", "were", "says", "had") {
			return nil // a story, no list
		}
		it.last = to - 1
		sized += number(size)
		sum += it.count.value
		out = append(out, it)
	}
	if len(out) > 2 && 2*out[0].count.value == sum && !r.sizeIn(out[0].count.last+1, out[0].last+1) &&
		!r.styleIn(out[0].first, out[0].last+1) {
		out = out[1:] // "4 skylights, 2 bronze 24 x 48 and 2 clear 24 x 24"
	}
	if sized == len(out) || sized == 0 && r.stylesOfItems(out) {
		return out
	}
	return nil // one without a size may be part of another
}

// countsPlainly: a number with no word for a skylight counts where a size or a kind of frame is
// all that follows it: "2 bronze 24 x 48", "1 with plastic bent over", "otro más grande de 38 x 38".
func (r *reader) countsPlainly(i, to int) bool {
	if r.wordAt(i-1, "a", "an", "un", "una") {
		return false
	}
	if r.among(i, afterPlainCount) && r.styleIn(i, to) {
		return true
	}
	for r.colorAt(i) || i < len(r.toks) && lookOf[r.toks[i].text] != "" ||
		r.wordAt(i, "mas", "ea", "each", "pcs", "pc", "of", "at", "cada", "de") ||
		r.markAt(i, '@') || r.markAt(i, '.') && r.wordAt(i-1, "ea", "pc", "pcs") {
		i++ // "4 ea. 24 x 48"
	}
	return r.pairAt(i)
}

// stylesOfItems: "2 with a metal frame on a curb, and 1 with the plastic bent over".
func (r *reader) stylesOfItems(items []item) bool {
	for _, it := range items {
		if !r.styleIn(it.first, it.last+1) || r.wordAt(it.first, "a", "an", "un", "una") || r.wordAt(it.first+1, "of", "de") {
			return false
		}
	}
	return len(items) > 1
}

// styleIn: a kind of frame is told between two tokens.
func (r *reader) styleIn(from, to int) bool {
	for i := from; i < to; i++ {
		if covers(r.styles, i) {
			return true
		}
	}
	return false
}

// itemCount reads a number of skylights where one may begin an item.
func (r *reader) itemCount(i int, before []item) (countAt, bool) {
	if i > 0 && r.toks[i-1].kind != markToken &&
		!(r.wordAt(i-1, "need", "needs", "want", "wants") && r.wordsIn(max(0, i-4), i, "building", "bldg", "unit", "house")) &&
		len(before) > 0 && !r.wordAt(i-1, "and", "y", "plus", "also", "mas", "then") {
		return countAt{}, false // a new clause: "and the guy said I need a dome 49 x 49"
	}
	if i > 0 && r.toks[i-1].kind != markToken && !r.among(i-1, beforeItemCount) {
		return countAt{}, false
	}
	n, next := r.countNumber(i)
	if next == i && (r.wordAt(i, "a", "an", "un", "una") || len(before) > 0 && r.wordAt(i, "otro", "otra", "another")) {
		n, next = 1, i+1
	}
	if r.numberAt(next).kind == partWord || r.wordAt(next, "half", "quarter", "quarters", "medio", "media", "cuarto", "cuartos") {
		return countAt{}, false // "seventeen and three quarters by thirty four"
	}
	if next == i || n < 1 || n > 99 || r.used(i) ||
		r.wordAt(next, "layer", "layers", "capas", "sides", "weeks", "days", "years", "hours") ||
		r.markAt(next, ')') || r.markAt(next, ':') {
		return countAt{}, false
	}
	return countAt{n, i, next - 1}, true
}

// skylightNamed: one of the next words is one for a skylight or a part that is ordered.
func (r *reader) skylightNamed(from, to int) bool {
	for i := from; i < min(to, from+12, len(r.toks)); i++ {
		if t := &r.toks[i]; t.kind == wordToken && (countNouns.has(t.text) || t.is("one", "ones", "unidad", "unidades")) {
			return true
		}
	}
	return false
}

// sizeIn: a size of two sides or a diameter stands between two tokens.
func (r *reader) sizeIn(from, to int) bool {
	if r.pairBetween(from, to) {
		return true
	}
	for i := from; i < to; i++ {
		if r.toks[i].kind == numToken &&
			r.wordsIn(max(from, i-3), min(i+5, to), "across", "diameter", "dia", "round", "diametro", "redondo", "redonda", "circle",
				"circular") {
			return true
		}
	}
	return false
}

// layersAfter: the number counts layers: "a bronze dome 2 layers, …", not "unit 2 layer is hazy".
func (r *reader) layersAfter(i int) bool {
	return r.wordAt(i+1, "layers", "ply", "capas") && r.wholeAt(i) > 1 ||
		r.wordAt(i+1, "layer", "layers", "ply") &&
			(r.wordAt(i+2, "of") || i+2 >= len(r.toks) || r.markAt(i+2, ',') || r.sentenceEnd(i+2))
}
