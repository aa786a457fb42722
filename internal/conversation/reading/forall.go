package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What is said of all kinds in a message that names several.

// restForAll: "bedroom 1 bronze, bedroom 2 clear, 1 layer acrylic", "… the second is 25 x 49.
// Metal frames, only plastic": what comes last, in a clause of its own and of no one's else, is
// said of all, and what comes after it.
func (r *reader) restForAll() {
	if len(r.refs) < 2 {
		return
	}
	r.headForAll()
	r.firstForAll()
	end := r.refs[len(r.refs)-1]
	if len(end.units) != 1 || r.trailing && !r.markAt(end.last+1, ',') && !r.sentenceEnd(end.last+1) {
		return
	}
	from := len(r.toks)
	if r.trailing || r.onlyListed() && (r.markAt(end.last+1, ',') || r.sentenceEnd(end.last+1)) {
		from = end.last + 1 // "one in the den, one in the hall, metal frame on a curb"
	} else if len(r.groups) > 0 && r.onlyListed() && r.wordAt(end.last+1, "are", "all", "both", "have", "estan", "son", "tienen", "todos") {
		from = r.clauseEnd(end.last) + 1 // "2 in the den and 1 in the hall are cracked, metal frame"
	} else if k := r.clauseEnd(end.last) + 2; r.onlyListed() && k < len(r.toks) && r.markAt(k-1, ',') && !r.saidOfKind(end.last+1, k) {
		from = k // "4 big domes and 2 small ones cracked, metal frame on a curb"
	}
	if k := r.allOpens(end.last + 1); k > 0 {
		from = min(from, k)
	}
	if at := r.nextSentenceForAll(end); at > 0 {
		from = min(from, at)
	}
	for _, w := range r.where {
		if w.first > end.last+1 && w.first < from && r.opensRest(w, end) {
			from = w.first
		}
	}
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		if f.Unit == end.units[0] && f.Topic != fitcheck.TopicCount && !f.Topic.OfLength() && r.saidFrom(f.Topic) >= from && !r.saidOfOther(f.Topic, f.Unit) {
			f.Unit = 0
		}
	}
}

// saidOfKind: something of a kind of its own is said between two tokens.
func (r *reader) saidOfKind(from, to int) bool {
	return slices.ContainsFunc(r.where, func(w saidAt) bool { return w.first >= from && w.first < to && w.topic.OfUnit() })
}

// allOpens is where a clause after the last kind begins with a word for all: "… single on the
// bath. all clear acrylic"; 0 for none.
func (r *reader) allOpens(from int) int {
	for i := max(from, 1); i < len(r.toks); i++ {
		before := i - 1
		if r.wordAt(before, "and", "but", "y", "pero") {
			before--
		}
		if r.wordAt(i, "all", "both", "everything", "each", "todo", "todos", "todas", "ambos", "ambas") && (r.markAt(before, ',') || r.sentenceEnd(before)) &&
			r.wholeSaid(i+1) < 0 && !r.wordAt(i+1, "layers", "layer", "sides", "the", "around", "capas", "las", "los") {
			return i // not "all 3 layers"
		}
	}
	return 0
}

// nextSentenceForAll is where a sentence begins that comes after those that name the kinds, and
// goes on from none of them: "#1 kitchen …, #2 hall …. Metal frame on a curb, frames good".
func (r *reader) nextSentenceForAll(end unitRef) int {
	at := r.sentenceLast(end.last) + 1
	if at >= len(r.toks) || r.wordAt(at, "it", "its", "one", "that", "thats", "this", "which", "same", "and", "also", "but", "with", "plus", "es", "esta", "ese", "esa", "este", "ese", "tiene", "con", "tambien") {
		return 0
	}
	return at
}

// opensRest: a choice that the shop asks for, after another word on the last kind, or anything
// that is said of several.
func (r *reader) opensRest(w saidAt, end unitRef) bool {
	before := w.first - 1 - number(r.wordAt(w.first-1, "frame", "frames", "marco", "marcos", "finish")) // "…, frame mill"
	if !r.markAt(before, ',') && !r.sentenceEnd(before) && !r.wordAt(before, "and", "all", "y") || w.topic.OfLength() || r.saidOfOther(w.topic, end.units[0]) {
		return false
	}
	if w.topic == fitcheck.TopicStyle && r.markAt(w.first-1, ',') && r.countedOnly() && !r.wordsIn(0, w.first, "metal", "aluminum", "fiberglass", "frame", "frames", "marco", "marcos", "glass") {
		return true // "3 domes 25 x 25 and 2 of 25 x 49, metal frame on a wood curb"
	}
	told := false
	for _, v := range r.where {
		told = told || v.topic != w.topic && v.first > end.last && v.first < w.first-1
	}
	return chosen(w.topic) && told && (r.Units > 1 || r.itemsEnd > 0) || r.wordsIn(w.first, min(w.first+3, len(r.toks)), "frames", "domes", "curbs", "marcos", "domos", "all", "both", "todos", "ambos")
}

// countedOnly: nothing but how many there are of each tells the kinds apart.
func (r *reader) countedOnly() bool {
	for _, ref := range r.refs {
		if len(ref.units) != 1 || r.refNumber(ref) == 0 {
			return false
		}
		for i := ref.first; i <= ref.last; i++ {
			if r.room(i) || lookOf[r.wordText(i)] != "" {
				return false
			}
		}
	}
	return true
}

// saidFrom is the token where the last of a topic was said, -1 where it was not.
func (r *reader) saidFrom(t fitcheck.Topic) int {
	first := -1
	for _, w := range r.where {
		if w.topic == t {
			first = w.first
		}
	}
	return first
}

// saidOfOther: a fact of the topic is of another kind than the unit.
func (r *reader) saidOfOther(t fitcheck.Topic, unit int) bool {
	return slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Topic == t && f.Unit != unit })
}

// countKinds notes how many kinds are named, where something is said of one of them.
func (r *reader) countKinds() {
	kinds := r.kindsNamed()
	r.dropped()
	if kinds > 0 && r.Units < 2 {
		kinds = max(kinds, r.roomsListed()) // what is said of one room is not said of the others
	}
	if kinds == 1 && r.Units < 2 && r.Count == 2 && len(r.out.Rooms) == 1 && !sizeWords.has(r.out.Rooms[1]) && slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Unit == 1 && f.Topic.OfSize() }) {
		kinds = 2 // "kitchen: 25 x 25", of two
	}
	if kinds > 1 && slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Unit > 0 }) {
		r.out.Kinds = kinds
	}
}

// kindsNamed is the highest number of a kind that the message names, 0 for none.
func (r *reader) kindsNamed() int {
	kinds := 0
	for k := range r.refs {
		kinds = max(kinds, slices.Max(r.refs[k].units))
	}
	return kinds
}

// refOfClause: "claro sobre blanco el del taller; …", "white squares": the one kind that ends the
// clause of the words, after a word that leads to it or right after them.
func (r *reader) refOfClause(first, last int) []int {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	var found *unitRef
	for k := range r.refs {
		ref := &r.refs[k]
		if ref.last < from || ref.first > to {
			continue
		}
		if found != nil || ref.first <= last {
			return nil
		}
		found = ref
	}
	if found == nil || len(found.units) != 1 && !(found.first == last+1 && r.toks[last].kind == wordToken && covers(r.choices, last)) {
		return nil // but "acrylic both"
	}
	end := found.last + 1
	for r.wordAt(end, "one", "ones", "please", "room") {
		end++
	}
	if end <= to && end < len(r.toks) && r.toks[end].kind != markToken {
		return nil
	}
	if len(found.units) == 1 && r.onlyChosen(from, found.first) {
		return found.units
	}
	lead := r.wordBefore(*found)
	if !(found.first == last+1 && (lookOf[r.toks[found.first].text] != "" || len(found.units) > 1)) && !r.wordAt(found.first, "for", "on", "in", "over", "para", "en", "el", "del", "de") && !r.wordAt(lead, "for", "on", "in", "over", "para", "en", "del", "el", "la", "de", "los", "las") && !(r.wordAt(lead, "the") && r.wordAt(lead-1, "for", "on", "in", "over")) {
		return nil
	}
	return found.units
}

// onlyChosen: nothing but what the shop lets choose stands between two tokens, an article at its end
// left out: "1 layer acrylic clear", before "kitchen".
func (r *reader) onlyChosen(from, to int) bool {
	for to > from && r.wordAt(to-1, "the", "el", "la", "los", "las") {
		to--
	}
	for i := from; i < to; i++ {
		if r.toks[i].kind != markToken && !r.toChoose(i) && !r.wordAt(i, "and", "over", "on", "in", "y", "de", "sobre") {
			return false
		}
	}
	return to > from
}

// toChoose: the word is part of a value of what the shop lets choose, or of the layer that it is of.
func (r *reader) toChoose(i int) bool {
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		s := h.senses[0]
		return h.first <= i && i <= h.last && (chosen(s.topic) && (!s.asked || r.asked(s.topic)) || h.has1("color") || h.has1("layer"))
	})
}

// headForAll: "1 layer acrylic, white for the squares, bronze for the long ones": what stands in a
// clause before the first kind's own is said of all.
func (r *reader) headForAll() {
	first := r.refs[0]
	if len(first.units) != 1 {
		return
	}
	start := r.clauseStart(first.first)
	if last := r.refs[len(r.refs)-1]; r.trailing && r.sentenceFirst(first.first) == r.sentenceFirst(last.first) && r.onlyChosen(start, first.first) {
		start = first.first // "1 layer acrylic clear kitchen, white bath"
	}
	if start < 2 || start < first.first && !r.markAt(start-1, ',') && !r.sentenceEnd(start-1) {
		return
	}
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		if from := r.saidFrom(f.Topic); f.Unit == first.units[0] && chosen(f.Topic) && f.Topic != fitcheck.TopicColor && from >= 0 && from < start && !r.saidOfOther(f.Topic, f.Unit) {
			f.Unit = 0
		}
	}
}

// firstForAll: "kitchen 1 layer acrylic clear, bath white": where each later kind has but its color told,
// in the one sentence that names all kinds of the talk, the layers and material of the first are those of all.
func (r *reader) firstForAll() {
	if r.Units < 2 || len(r.refs) != r.Units || r.trailing || r.sentenceFirst(r.refs[0].first) != r.sentenceFirst(r.refs[len(r.refs)-1].first) {
		return
	}
	for k, ref := range r.refs {
		if len(ref.units) != 1 || slices.ContainsFunc(r.refs[:k], func(o unitRef) bool { return o.units[0] == ref.units[0] }) {
			return
		}
		for i := ref.last + 1; k > 0 && i <= r.clauseEnd(ref.last) && i < len(r.toks); i++ {
			if r.toks[i].kind == numToken || !r.explained(i) {
				return // perhaps of its layers
			}
		}
		colored := false
		for _, f := range r.out.Facts {
			if f.Unit != ref.units[0] {
				continue
			}
			colored = colored || f.Topic == fitcheck.TopicColor
			if f.Topic.OfLength() || k > 0 && chosen(f.Topic) && f.Topic != fitcheck.TopicColor {
				return
			}
		}
		if !colored {
			return
		}
	}
	for k := range r.out.Facts {
		if f := &r.out.Facts[k]; f.Unit == r.refs[0].units[0] && r.asked(f.Topic) && (f.Topic == fitcheck.TopicLayers || f.Topic == fitcheck.TopicMaterial) {
			f.Unit = 0
		}
	}
}

// onlyListed: nothing is said of a kind where the kinds are named.
func (r *reader) onlyListed() bool {
	from, to := r.refs[0].first, r.refs[len(r.refs)-1].last
	for _, w := range r.where {
		if w.first >= from && w.first <= to && w.topic != fitcheck.TopicCount && w.topic != fitcheck.TopicOutline && w.topic != fitcheck.TopicProfile && w.topic != fitcheck.TopicUse && w.topic.OfUnit() {
			return false
		}
	}
	return true
}
