package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What is said of all kinds in a message that names several.

var (
	allAfterKinds = wordsOf(`are all both have estan son tienen todos`)
	forAllWords   = wordsOf(`all both everything each todo todos todas ambos ambas`)
	allOfParts    = wordsOf(`layers layer sides the around capas las los`)
	goesOnOfLast  = wordsOf(`it its one that thats this which same and also but with plus es esta ese esa este tiene con
		tambien`)
	frameNamers  = wordsOf(`metal aluminum fiberglass frame frames marco marcos glass`)
	severalWords = wordsOf(`frames domes curbs marcos domos all both todos ambos`)
	kindLeads    = wordsOf(`for on in over para en el del de la los las`)
	chosenLinks  = wordsOf(`and over on in y de sobre`)
)

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
	if len(end.units) != 1 || r.trailing && !r.breakAt(end.last+1) {
		return
	}
	from := r.restFrom(end)
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		if f.Unit == end.units[0] && f.Topic != fitcheck.TopicCount && !f.Topic.OfLength() &&
			r.saidFrom(f.Topic) >= from && !r.saidOfOther(f.Topic, f.Unit) {
			f.Unit = 0
		}
	}
}

// breakAt: a comma or the end of a sentence.
func (r *reader) breakAt(i int) bool { return r.markAt(i, ',') || r.sentenceEnd(i) }

// restFrom is where what is said of all begins, after the last of the kinds.
func (r *reader) restFrom(end unitRef) int {
	from := r.afterListed(end)
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
	return from
}

// afterListed is where the words begin that follow a mere list of the kinds; the end of the message
// where there is none.
func (r *reader) afterListed(end unitRef) int {
	listed, next := r.onlyListed(), end.last+1
	if r.trailing || listed && r.breakAt(next) {
		return next // "one in the den, one in the hall, metal frame on a curb"
	}
	if !listed {
		return len(r.toks)
	}
	clauseEnd := r.clauseEnd(end.last)
	if len(r.groups) > 0 && r.among(next, allAfterKinds) {
		return clauseEnd + 1 // "2 in the den and 1 in the hall are cracked, metal frame"
	}
	if k := clauseEnd + 2; k < len(r.toks) && r.markAt(k-1, ',') && !r.saidOfKind(next, k) {
		return k // "4 big domes and 2 small ones cracked, metal frame on a curb"
	}
	return len(r.toks)
}

// saidOfKind: something of a kind of its own is said between two tokens.
func (r *reader) saidOfKind(from, to int) bool {
	return slices.ContainsFunc(r.where, func(w saidAt) bool {
		return w.first >= from && w.first < to && w.topic.OfUnit()
	})
}

// allOpens is where a clause after the last kind begins with a word for all: "… single on the
// bath. all clear acrylic"; 0 for none.
func (r *reader) allOpens(from int) int {
	for i := max(from, 1); i < len(r.toks); i++ {
		if !r.among(i, forAllWords) {
			continue
		}
		before := i - 1
		if r.wordAt(before, "and", "but", "y", "pero") {
			before--
		}
		if r.breakAt(before) && r.wholeSaid(i+1) < 0 && !r.among(i+1, allOfParts) {
			return i // not "all 3 layers"
		}
	}
	return 0
}

// nextSentenceForAll is where a sentence begins that comes after those that name the kinds, and
// goes on from none of them: "#1 kitchen …, #2 hall …. Metal frame on a curb, frames good".
func (r *reader) nextSentenceForAll(end unitRef) int {
	at := r.sentenceLast(end.last) + 1
	if at >= len(r.toks) || r.among(at, goesOnOfLast) {
		return 0
	}
	return at
}

// opensRest: a choice that the shop asks for, after another word on the last kind, or anything
// that is said of several.
func (r *reader) opensRest(w saidAt, end unitRef) bool {
	before := w.first - 1
	if r.wordAt(before, "frame", "frames", "marco", "marcos", "finish") {
		before-- // "…, frame mill"
	}
	if w.topic.OfLength() || !r.breakAt(before) && !r.wordAt(before, "and", "all", "y") ||
		r.saidOfOther(w.topic, end.units[0]) {
		return false
	}
	if w.topic == fitcheck.TopicStyle && r.markAt(before, ',') && r.countedOnly() && !r.anyOf(0, w.first, frameNamers) {
		return true // "3 domes 25 x 25 and 2 of 25 x 49, metal frame on a wood curb"
	}
	if r.anyOf(w.first, min(w.first+3, len(r.toks)), severalWords) {
		return true
	}
	return chosen(w.topic) && (r.Units > 1 || r.itemsEnd > 0) && slices.ContainsFunc(r.where, func(v saidAt) bool {
		return v.topic != w.topic && v.first > end.last && v.first < before
	})
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
	if kinds == 1 && r.oneOfTwo() {
		kinds = 2
	}
	if kinds > 1 && slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Unit > 0 }) {
		r.out.Kinds = kinds
	}
}

// oneOfTwo: "kitchen: 25 x 25", of two.
func (r *reader) oneOfTwo() bool {
	return r.Units < 2 && r.Count == 2 && len(r.out.Rooms) == 1 && !sizeWords.has(r.out.Rooms[1]) &&
		slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Unit == 1 && f.Topic.OfSize() })
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
	found := r.refAfter(from, last, to)
	if found == nil {
		return nil
	}
	adjoins := found.first == last+1
	if len(found.units) != 1 && !(adjoins && r.toks[last].kind == wordToken && covers(r.choices, last)) {
		return nil // but "acrylic both"
	}
	if !r.endsClause(found.last+1, to) {
		return nil
	}
	if len(found.units) == 1 && r.onlyChosen(from, found.first) {
		return found.units
	}
	looks := lookOf[r.toks[found.first].text] != "" || len(found.units) > 1
	if adjoins && looks || r.ledTo(found) {
		return found.units
	}
	return nil
}

// refAfter is the only kind that is named in a clause, where it is named after the words.
func (r *reader) refAfter(from, last, to int) *unitRef {
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
	return found
}

// endsClause: no word but "one" or "please" follows in the clause.
func (r *reader) endsClause(i, to int) bool {
	for r.wordAt(i, "one", "ones", "please", "room") {
		i++
	}
	return i > to || i >= len(r.toks) || r.toks[i].kind == markToken
}

// ledTo: a word that leads to a kind begins its name or stands before it: "for the squares".
func (r *reader) ledTo(ref *unitRef) bool {
	lead := r.wordBefore(*ref)
	return r.among(ref.first, kindLeads) || r.among(lead, kindLeads) ||
		r.wordAt(lead, "the") && r.wordAt(lead-1, "for", "on", "in", "over")
}

// onlyChosen: nothing but what the shop lets choose stands between two tokens, an article at its end
// left out: "1 layer acrylic clear", before "kitchen".
func (r *reader) onlyChosen(from, to int) bool {
	for to > from && r.wordAt(to-1, "the", "el", "la", "los", "las") {
		to--
	}
	for i := from; i < to; i++ {
		if r.toks[i].kind != markToken && !r.toChoose(i) && !r.among(i, chosenLinks) {
			return false
		}
	}
	return to > from
}

// toChoose: the word is part of a value of what the shop lets choose, or of the layer that it is of.
func (r *reader) toChoose(i int) bool {
	return slices.ContainsFunc(r.choices, func(h hit) bool {
		if i < h.first || i > h.last {
			return false
		}
		s := h.senses[0]
		return chosen(s.topic) && (!s.asked || r.asked(s.topic)) || h.has1("color") || h.has1("layer")
	})
}

// headForAll: "1 layer acrylic, white for the squares, bronze for the long ones": what stands in a
// clause before the first kind's own is said of all.
func (r *reader) headForAll() {
	first, last := r.refs[0], r.refs[len(r.refs)-1]
	if len(first.units) != 1 {
		return
	}
	start := r.clauseStart(first.first)
	if r.trailing && r.sentenceFirst(first.first) == r.sentenceFirst(last.first) && r.onlyChosen(start, first.first) {
		start = first.first // "1 layer acrylic clear kitchen, white bath"
	}
	if start < 2 || start < first.first && !r.breakAt(start-1) {
		return
	}
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		if f.Unit != first.units[0] || !chosen(f.Topic) || f.Topic == fitcheck.TopicColor {
			continue
		}
		if from := r.saidFrom(f.Topic); from >= 0 && from < start && !r.saidOfOther(f.Topic, f.Unit) {
			f.Unit = 0
		}
	}
}

// firstForAll: "kitchen 1 layer acrylic clear, bath white": where each later kind has but its color told,
// in the one sentence that names all kinds of the talk, the layers and material of the first are those of all.
func (r *reader) firstForAll() {
	if r.Units < 2 || len(r.refs) != r.Units || r.trailing ||
		r.sentenceFirst(r.refs[0].first) != r.sentenceFirst(r.refs[len(r.refs)-1].first) {
		return
	}
	for k, ref := range r.refs {
		if len(ref.units) != 1 || r.namedTwice(k) || k > 0 && r.unexplainedAfter(ref) || !r.onlyColored(ref, k == 0) {
			return
		}
	}
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		if f.Unit == r.refs[0].units[0] && r.asked(f.Topic) &&
			(f.Topic == fitcheck.TopicLayers || f.Topic == fitcheck.TopicMaterial) {
			f.Unit = 0
		}
	}
}

// namedTwice: the k-th kind was named before.
func (r *reader) namedTwice(k int) bool {
	return slices.ContainsFunc(r.refs[:k], func(o unitRef) bool { return o.units[0] == r.refs[k].units[0] })
}

// unexplainedAfter: a number or a strange word follows in the clause, perhaps of the kind's layers.
func (r *reader) unexplainedAfter(ref unitRef) bool {
	for i := ref.last + 1; i <= r.clauseEnd(ref.last) && i < len(r.toks); i++ {
		if r.toks[i].kind == numToken || !r.explained(i) {
			return true
		}
	}
	return false
}

// onlyColored: a color is told of the kind, and, but for the first, nothing else that the shop lets choose.
func (r *reader) onlyColored(ref unitRef, first bool) bool {
	colored := false
	for _, f := range r.out.Facts {
		if f.Unit != ref.units[0] {
			continue
		}
		isColor := f.Topic == fitcheck.TopicColor
		if f.Topic.OfLength() || !first && !isColor && chosen(f.Topic) {
			return false
		}
		colored = colored || isColor
	}
	return colored
}

// onlyListed: nothing is said of a kind where the kinds are named.
func (r *reader) onlyListed() bool {
	from, to := r.refs[0].first, r.refs[len(r.refs)-1].last
	return !slices.ContainsFunc(r.where, func(w saidAt) bool {
		return w.first >= from && w.first <= to && w.topic.OfUnit() && !tellsApart(w.topic)
	})
}

// tellsApart: a topic by which one kind is told from another.
func tellsApart(t fitcheck.Topic) bool {
	return t == fitcheck.TopicCount || t == fitcheck.TopicOutline || t == fitcheck.TopicProfile || t == fitcheck.TopicUse
}
