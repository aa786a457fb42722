package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds that a message sets against each other in words of its own: "the one by the chimney is
// 26 x 50, the one over the sink 22 x 22", "left curb 30 x 30, right curb 30 x 54", "el del taller
// transparente y el de la casa blanco". What they are called by is any word; that they are kinds
// shows where each of them has a value of the same topic.

var (
	lookTells   = wordsOf(`is has gets es tiene mide en con ya lleva`)
	placePreps  = wordsOf(`in on over above for at en para sobre`)
	towardPreps = wordsOf(`to of de al del side a`)
)

// mention is one place where a skylight is called by something.
type mention struct {
	first, last int
	key         int  // the token of the word that tells it apart
	bySize      bool // any word right before a size
}

// contrast makes kinds of such mentions where the other rules find fewer.
func (r *reader) contrast() {
	if r.Units > 1 || r.asked(fitcheck.TopicCurbDiagonals) || r.itemsEnd > 0 {
		return
	}
	all := r.mentions()
	if len(all) < 2 {
		return
	}
	kinds := make([]int, len(all))
	n := 0
	for k := range all {
		kinds[k] = r.kindOfMention(all[:k], kinds, all[k], n)
		n = max(n, kinds[k])
	}
	if n < 2 || n > 6 || n <= r.kindsFound() || !r.setApart(all, kinds, n) {
		return
	}
	if (slices.ContainsFunc(all, func(m mention) bool { return m.bySize }) || r.partsMeasured(all)) && !r.sizesFar(all, kinds) {
		return
	}
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return len(u.units) < 2 })
	for k, m := range all {
		r.noPart(m.key) // "ladder side 25 x 25"
		r.refs = append(r.refs, unitRef{m.first, m.last, []int{kinds[k]}})
	}
	r.colorsOfMentions(all, kinds, n)
}

// colorsOfMentions: "bronze dome by the garage, white dome by the pool": each kind is called by the
// color that it has.
func (r *reader) colorsOfMentions(all []mention, kinds []int, n int) {
	colors, at := make([]string, n), make([]mention, n)
	for k, m := range all {
		if c := r.valueIn(fitcheck.TopicColor, m.first, m.last+1); c != "" && colors[kinds[k]-1] == "" {
			colors[kinds[k]-1], at[kinds[k]-1] = c, m
		}
	}
	if !contrasts(fitcheck.TopicColor, colors) {
		return
	}
	for k, c := range colors {
		r.fact(fitcheck.TopicColor, k+1, fitcheck.Color{Outer: c}, at[k].first, at[k].last)
	}
}

// kindsFound is how many kinds the other rules have found.
func (r *reader) kindsFound() int {
	var seen []int
	for k := range r.refs {
		if u := r.refs[k].units; len(u) == 1 && !slices.Contains(seen, u[0]) {
			seen = append(seen, u[0])
		}
	}
	return len(seen)
}

// mentions are the places where a skylight is called by something, in order.
func (r *reader) mentions() []mention {
	var all []mention
	for i := 0; i < len(r.toks); i++ {
		m, ok := r.mentionAt(i)
		if !ok {
			m, ok = r.wordBeforeSize(i)
		}
		if ok {
			all = append(all, m)
			i = m.last
		}
	}
	return all
}

var (
	// mentionHeads are the words for one skylight of several, or for a part of it that each has.
	mentionHeads = wordsOf(`one ones skylight skylights dome domes unit units curb curbs box boxes opening openings frame frames bubble window plastic tragaluz tragaluces domo domos claraboya cupula marco caja`)
	// mentionArticles stand before them, and belong to what they are called by.
	mentionArticles = wordsOf(`the al my our your that el la los las mi nuestro`)
	// whereWords lead to where it is.
	whereWords = wordsOf(`over in on by above near nearest at behind beside under for closest next facing out off toward across from with around sobre en junto arriba cerca para con`)
	// fixtures are what a skylight is over.
	fixtures = wordsOf(`sink tub bathtub stove island bed toilet table desk counter fireplace couch crib register altar stage pews pulpit choir pool aisle bench
		lavabo tina regadera cama mesa estufa altar fregadero`)
	// looksApart tell skylights apart by themselves: "for the short one", "el viejo".
	looksApart = wordsOf(`short shorter long longer tall taller wide wider narrow narrower old older new newer left right first second third front back rear upper lower north south east west
		viejo vieja nuevo nueva corto corta largo larga ancho angosto primero segundo tercero primera segunda`)
	// notApart tell no skylight from another.
	notApart = wordsOf(`full now today later regular normal standard typical usual ordinary plain basic same new other whole complete old broken cracked leaky damaged entire replacement wrong only single first second third next last plastic acrylic metal wood wooden aluminum
		two three four five six both all each every existing current actual roof skylight dome outside inside inner outer top bottom rough finished mismo misma nuevo completo roto techo
		outside inside outer inner afuera adentro arriba abajo madera metal aluminio side adentro interior exterior fuera dentro retaining retainer mounting curb frame box sheet lip edge flange way time day thing reason side price kind type size number`)
)

// mentionAt is the mention that starts at a token.
func (r *reader) mentionAt(i int) (mention, bool) {
	if r.toks[i].kind != wordToken {
		return mention{}, false
	}
	if r.wordAt(i, "el", "la", "los", "las") && r.wordAt(i+1, "de", "del") {
		return r.placeMention(i, i+1)
	}
	if m, ok := r.roomMention(i); ok {
		return m, true
	}
	head := i + number(mentionArticles.has(r.toks[i].text))
	if head >= len(r.toks) || r.toks[head].kind != wordToken {
		return mention{}, false
	}
	if mentionHeads.has(r.toks[head].text) { // "the one by the chimney", "skylight over the sink"
		return r.placeMention(i, head+1)
	}
	if m, ok := r.lookMention(i, head); ok {
		return m, true
	}
	if key := head + number(r.wholeSaid(head) > 0 || r.wordAt(head, "single")); key > head && head > i { // "on my two little ones"
		head = key
	}
	if !r.tellsApart(head) || !r.headAt(head+1) || head == i && i > 0 && r.toks[i-1].kind != markToken && !r.breaksClause(i-1) && !r.wordAt(i-1, "for", "on", "of", "in", "para") {
		return mention{}, false
	}
	last := head + 1 // "the north one", "left curb"
	if m, ok := r.placeMention(i, last+1); ok {
		return m, true // "the small one in the closet"
	}
	if r.wordAt(last, "one", "ones") && covers(r.choices, head) && lookOf[r.toks[head].text] == "" {
		return mention{}, false // "the tougher one, … the anodized one": what is chosen
	}
	return mention{first: i, last: last, key: head}, !r.wordAt(head, "clear") || !r.wordAt(last, "opening", "box", "curb") // "the clear opening is 19 x 43"
}

// lookMention: a look alone, of what was named before: "31 x 55 for the long", "el más viejo tiene
// …", "A is 24 x 24"; key is the token after an article, or the first.
func (r *reader) lookMention(first, key int) (mention, bool) {
	if key == first {
		opens := first == 0 || r.softBreak(first-1) || r.sentenceEnd(first-1)
		return mention{first: first, last: key, key: key}, opens && r.letterAt(key) && (r.pairAt(key+1) || r.wordAt(key+1, "is", "has", "es"))
	}
	key += number(r.wordAt(key, "mas"))
	if key >= len(r.toks) || !looksApart.has(r.toks[key].text) && (lookOf[r.toks[key].text] == "" || r.wordAt(key, "bubble", "flat")) {
		return mention{}, false
	}
	ends := r.clauseEnd(key) == key || r.sentenceEnd(key+1) || r.softBreak(key+1) || r.pairAt(key+1) || r.colorAt(key+1) || r.among(key+1, lookTells)
	return mention{first: first, last: key, key: key}, ends
}

// roomMention: a room alone: "white in the sewing room", "loft = self flashing", "rear: …".
func (r *reader) roomMention(i int) (mention, bool) {
	key, place := i, r.among(i, placePreps)
	if place {
		key++
	}
	for key < len(r.toks) && r.among(key, mentionArticles) {
		key++
	}
	if r.room(key+1) && key > i && !r.room(key) {
		key++
	}
	fixture := key > i+1 && key < len(r.toks) && fixtures.has(r.toks[key].text) && r.wordAt(i, "over", "above", "sobre")
	if !fixture && !r.room(key) && !r.wordAt(key, "rear", "adelante", "atras") || r.headAt(key+1) {
		return mention{}, false
	}
	last := key
	for last+1 < len(r.toks) && (r.wordAt(last+1, "room", "side", "area", "roof") || r.room(last+1)) {
		last++
	}
	opens := r.clauseStart(i) == i && (r.markAt(last+1, ':') || r.markAt(last+1, '=') || r.markAt(last+1, ',') || r.pairAt(last+1) || r.colorAt(last+1) || r.wordAt(last+1, "is", "wants", "gets", "es"))
	if sizeWords.has(r.toks[key].text) && !r.wordAt(last, "side") && !opens {
		return mention{}, false // "46 1/8 on the left": of one skylight
	}
	return mention{first: i, last: last, key: key}, place && key > i || opens
}

// headAt: a word for one skylight stands at the token.
func (r *reader) headAt(i int) bool {
	return i < len(r.toks) && r.among(i, mentionHeads)
}

// placeMention: what tells the skylight apart follows a word of place at a token: "by the
// chimney", "de la cocina", "#1", "A".
func (r *reader) placeMention(first, at int) (mention, bool) {
	if at >= len(r.toks) {
		return mention{}, false
	}
	if next := at + number(r.markAt(at, '#') || r.wordAt(at, "number", "no", "numero")); next > at || r.letterAt(at) {
		if next < len(r.toks) && (r.wholeAt(next) > 0 && r.wholeAt(next) < 7 && !r.by(next+1) || r.letterAt(next)) {
			return mention{first: first, last: next, key: next}, true
		}
		return mention{}, false
	}
	if !r.wordAt(at, "de", "del") && !(r.among(at, whereWords)) {
		return mention{}, false
	}
	key := at + 1
	for key < len(r.toks) && r.toks[key].kind == wordToken && (mentionArticles.has(r.toks[key].text) || r.among(key, towardPreps)) {
		key++
	}
	if r.room(key + 1) {
		key++ // "in the choir loft"
	}
	if !mentionArticles.has(r.toks[at-1].text) && r.wordAt(at, "de", "del") && !r.room(key) && !r.wordAt(key, "cuarto") {
		return mention{}, false // "el marco de metal"
	}
	if key >= len(r.toks) || !r.room(key) && !r.wordAt(key, "cuarto") && (!r.tellsApart(key) || covers(r.choices, key) || covers(r.styles, key)) {
		return mention{}, false
	}
	return mention{first: first, last: key, key: key}, true
}

func (r *reader) letterAt(i int) bool {
	return r.wordAt(i, "a", "b", "c", "d") && (i+1 >= len(r.toks) || r.toks[i+1].kind != wordToken || r.wordAt(i+1, "is", "has", "es", "was"))
}

// tellsApart: a word that can tell one skylight from another.
func (r *reader) tellsApart(i int) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	if looksApart.has(t.text) && !notApart.has(t.text) || lookOf[t.text] != "" {
		return true
	}
	return t.kind == wordToken && !t.named && !notApart.has(t.text) && !negWords.has(t.text) && r.numberAt(i).kind == notNumber && (t.word == nil || !t.word.filler) && r.unitAt(i) == noUnit && !mentionHeads.has(t.text)
}

// kindOfMention is the kind of a mention: one named before by the same word, else the next.
func (r *reader) kindOfMention(before []mention, kinds []int, m mention, n int) int {
	for k := range before {
		a, b := r.toks[before[k].key].text, r.toks[m.key].text
		if a == b || sameRoom(a, b) {
			return kinds[k]
		}
	}
	return n + 1
}

// contrasted are the topics by which kinds can be set against each other.
var contrasted = []fitcheck.Topic{anySize, fitcheck.TopicColor, fitcheck.TopicLayers, fitcheck.TopicStyle, fitcheck.TopicProfile, fitcheck.TopicOutline,
	fitcheck.TopicFrameCondition, fitcheck.TopicWant, fitcheck.TopicMaterial}

const anySize fitcheck.Topic = "size" // any of them

// setApart: each kind has a size, or a value of its own of one choice, all of them in its mention
// or behind it, or all of them before it.
func (r *reader) setApart(all []mention, kinds []int, n int) bool {
	for _, topic := range contrasted {
		ahead, behind := make([]string, n+1), make([]string, n+1)
		for k, m := range all {
			from, to := r.sentenceFirst(m.first), len(r.toks)
			if k > 0 {
				from = max(from, all[k-1].last+1)
			}
			if k+1 < len(all) {
				to = all[k+1].first
			}
			if kind := kinds[k]; ahead[kind] == "" {
				ahead[kind] = r.valueIn(topic, m.first, to)
			}
			if kind := kinds[k]; behind[kind] == "" {
				behind[kind] = r.valueIn(topic, from, m.first)
			}
		}
		if contrasts(topic, behind[1:]) {
			r.trailing = true
			return true
		}
		if contrasts(topic, ahead[1:]) {
			return true
		}
	}
	return false
}

// contrasts: each kind has a value, and they are not all the same one.
func contrasts(topic fitcheck.Topic, values []string) bool {
	if slices.Contains(values, "") {
		return false
	}
	return topic == anySize || slices.ContainsFunc(values, func(v string) bool { return v != values[0] })
}

// valueIn is a value of the topic between two tokens, "" where none is.
func (r *reader) valueIn(topic fitcheck.Topic, from, to int) string {
	if topic == anySize {
		for i := from; i < to; i++ {
			if _, next := r.numeralAt(i); r.pairAt(i) || next > i && (r.unitAt(next) != noUnit || r.wordAt(next, "across", "diameter")) {
				return r.said(i, i)
			}
		}
		return ""
	}
	for _, layer := range [][]hit{r.choices, r.styles, r.wants} {
		hits := within(layer, from, to-1)
		for k := range hits {
			if hits[k].last >= to {
				continue
			}
			for _, s := range hits[k].senses {
				if (s.topic == topic && (!s.asked || r.asked(topic) || topic == fitcheck.TopicFrameCondition && r.wordsIn(r.sentenceFirst(from), to, "frame", "frames", "marco", "marcos")) || topic == fitcheck.TopicColor && s.kind == "color") && s.value != "?" {
					return s.value
				}
			}
		}
	}
	return ""
}

// toldOfOthers: once a message tells of one kind what its frame is like, what part it wants or how
// it is shaped, the short words for it count of the others too: "the frame in the hall is bent, the
// one in the bath looks perfect".
func (r *reader) toldOfOthers() {
	if len(r.refs) < 2 {
		return
	}
	for _, t := range []fitcheck.Topic{fitcheck.TopicFrameCondition, fitcheck.TopicWant, fitcheck.TopicOutline} {
		if !r.toldOfKind(t, -1) {
			continue
		}
		for _, layer := range [][]hit{r.choices, r.wants} {
			for n := range layer {
				h := &layer[n]
				units := r.unitsAt(h.first, h.last)
				if len(units) != 1 || r.toldOfKind(t, units[0]) || r.toldOfKind(t, 0) || r.negated(h.first) || r.doubtBetween(r.clauseStart(h.first), h.first) || r.markAt(r.sentenceLast(h.last), '?') {
					continue
				}
				for _, s := range h.senses {
					if s.topic == t && s.asked && s.value != "?" {
						r.fact(t, units[0], fitcheck.Choice(s.value), h.first, h.last)
						break
					}
				}
			}
		}
	}
}

// toldOfKind: a fact of the topic is there for the kind; -1 for any kind.
func (r *reader) toldOfKind(t fitcheck.Topic, unit int) bool {
	return slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Topic == t && (f.Unit == unit || unit < 0 && f.Unit > 0) })
}
