package reading

// Where a message calls a skylight by something that may set it against another.

// mention is one place where a skylight is called by something.
type mention struct {
	first, last int
	key         int  // the token of the word that tells it apart
	bySize      bool // any word right before a size
}

var (
	// mentionHeads are the words for one skylight of several, or for a part of it that each has.
	mentionHeads = wordsOf(`one ones skylight skylights dome domes unit units curb curbs box boxes opening openings frame frames
		bubble window plastic tragaluz tragaluces domo domos claraboya cupula marco caja`)
	// mentionArticles stand before them, and belong to what they are called by.
	mentionArticles = wordsOf(`the al my our your that el la los las mi nuestro`)
	// whereWords lead to where it is.
	whereWords = wordsOf(`over in on by above near nearest at behind beside under for closest next facing out off toward
		across from with around sobre en junto arriba cerca para con`)
	// fixtures are what a skylight is over.
	fixtures = wordsOf(`sink tub bathtub stove island bed toilet table desk counter fireplace couch crib register altar
		stage pews pulpit choir pool aisle bench lavabo tina regadera cama mesa estufa altar fregadero`)
	// looksApart tell skylights apart by themselves: "for the short one", "el viejo".
	looksApart = wordsOf(`short shorter long longer tall taller wide wider narrow narrower old older new newer left right
		first second third front back rear upper lower north south east west viejo vieja nuevo nueva corto
		corta largo larga ancho angosto primero segundo tercero primera segunda`)
	// notApart tell no skylight from another.
	notApart = wordsOf(`full now today later regular normal standard typical usual ordinary plain basic same new other whole
		complete old broken cracked leaky damaged entire replacement wrong only single first second third
		next last plastic acrylic metal wood wooden aluminum two three four five six both all each every
		existing current actual roof skylight dome outside inside inner outer top bottom rough finished
		mismo misma nuevo completo roto techo afuera adentro arriba abajo madera aluminio side interior
		exterior fuera dentro retaining retainer mounting curb frame box sheet lip edge flange way time day
		thing reason price kind type size number`)
	// lookTells stand between a look and what is said of it: "el viejo tiene …".
	lookTells   = wordsOf(`is has gets es tiene mide en con ya lleva`)
	placePreps  = wordsOf(`in on over above for at en para sobre`)
	towardPreps = wordsOf(`to of de al del side a`)
)

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
	return r.namedMention(i, head)
}

// namedMention: a word that tells it apart goes before a word for a skylight: "the north one", "left curb".
func (r *reader) namedMention(i, head int) (mention, bool) {
	if head > i && (r.wholeSaid(head) > 0 || r.wordAt(head, "single")) { // "on my two little ones"
		head++
	}
	if !r.tellsApart(head) || !r.headAt(head+1) || head == i && !r.opensMention(i) {
		return mention{}, false
	}
	last := head + 1
	if m, ok := r.placeMention(i, last+1); ok {
		return m, true // "the small one in the closet"
	}
	if r.wordAt(last, "one", "ones") && covers(r.choices, head) && lookOf[r.toks[head].text] == "" {
		return mention{}, false // "the tougher one, … the anodized one": what is chosen
	}
	opening := r.wordAt(head, "clear") && r.wordAt(last, "opening", "box", "curb") // "the clear opening is 19 x 43"
	return mention{first: i, last: last, key: head}, !opening
}

// opensMention: a mention without an article may begin at the token.
func (r *reader) opensMention(i int) bool {
	return i == 0 || r.toks[i-1].kind == markToken || r.breaksClause(i-1) || r.wordAt(i-1, "for", "on", "of", "in", "para")
}

// lookMention: a look alone, of what was named before: "31 x 55 for the long", "el más viejo tiene
// …", "A is 24 x 24"; key is the token after an article, or the first.
func (r *reader) lookMention(first, key int) (mention, bool) {
	if key == first {
		opens := first == 0 || r.softBreak(first-1) || r.sentenceEnd(first-1)
		told := r.pairAt(key+1) || r.wordAt(key+1, "is", "has", "es")
		return mention{first: first, last: key, key: key}, opens && r.letterAt(key) && told
	}
	key += number(r.wordAt(key, "mas"))
	if key >= len(r.toks) || !r.isLook(key) {
		return mention{}, false
	}
	ends := r.clauseEnd(key) == key || r.sentenceEnd(key+1) || r.softBreak(key+1) ||
		r.pairAt(key+1) || r.colorAt(key+1) || r.among(key+1, lookTells)
	return mention{first: first, last: key, key: key}, ends
}

// isLook: "short", "redondo"; "bubble" and "flat" are words for the plastic as well.
func (r *reader) isLook(i int) bool {
	text := r.toks[i].text
	return looksApart.has(text) || lookOf[text] != "" && !r.wordAt(i, "bubble", "flat")
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
	fixture := key > i+1 && r.among(key, fixtures) && r.wordAt(i, "over", "above", "sobre")
	if !fixture && !r.room(key) && !r.wordAt(key, "rear", "adelante", "atras") || r.headAt(key+1) {
		return mention{}, false
	}
	last := key
	for last+1 < len(r.toks) && (r.wordAt(last+1, "room", "side", "area", "roof") || r.room(last+1)) {
		last++
	}
	opens := r.clauseStart(i) == i && r.tellsOfRoom(last+1)
	if sizeWords.has(r.toks[key].text) && !r.wordAt(last, "side") && !opens {
		return mention{}, false // "46 1/8 on the left": of one skylight
	}
	return mention{first: i, last: last, key: key}, place && key > i || opens
}

// tellsOfRoom: what the skylight of a room is like begins at the token.
func (r *reader) tellsOfRoom(i int) bool {
	return r.markAt(i, ':') || r.markAt(i, '=') || r.markAt(i, ',') || r.pairAt(i) || r.colorAt(i) ||
		r.wordAt(i, "is", "wants", "gets", "es")
}

// headAt: a word for one skylight stands at the token.
func (r *reader) headAt(i int) bool { return r.among(i, mentionHeads) }

// placeMention: what tells the skylight apart follows a word of place at a token: "by the
// chimney", "de la cocina", "#1", "A".
func (r *reader) placeMention(first, at int) (mention, bool) {
	if at >= len(r.toks) {
		return mention{}, false
	}
	if next := at + number(r.markAt(at, '#') || r.wordAt(at, "number", "no", "numero")); next > at || r.letterAt(at) {
		numbered := r.wholeAt(next) > 0 && r.wholeAt(next) < 7 && !r.by(next+1)
		return mention{first: first, last: next, key: next}, numbered || r.letterAt(next)
	}
	of := r.wordAt(at, "de", "del")
	if !of && !r.among(at, whereWords) {
		return mention{}, false
	}
	key := r.placeKey(at + 1)
	room := r.room(key) || r.wordAt(key, "cuarto")
	if of && !room && !mentionArticles.has(r.toks[at-1].text) {
		return mention{}, false // "el marco de metal"
	}
	if key >= len(r.toks) || !room && (!r.tellsApart(key) || covers(r.choices, key) || covers(r.styles, key)) {
		return mention{}, false
	}
	return mention{first: first, last: key, key: key}, true
}

// placeKey is the word that names the place, behind articles and words like "side of".
func (r *reader) placeKey(i int) int {
	for r.among(i, mentionArticles) || r.among(i, towardPreps) {
		i++
	}
	if r.room(i + 1) {
		i++ // "in the choir loft"
	}
	return i
}

// letterAt: a skylight called by a letter: "A is 24 x 24"; "a" is mostly an article.
func (r *reader) letterAt(i int) bool {
	return r.wordAt(i, "a", "b", "c", "d") &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind != wordToken || r.wordAt(i+1, "is", "has", "es", "was"))
}

// tellsApart: a word that can tell one skylight from another.
func (r *reader) tellsApart(i int) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	if lookOf[t.text] != "" {
		return true
	}
	if t.kind != wordToken || notApart.has(t.text) {
		return false
	}
	if looksApart.has(t.text) {
		return true
	}
	return !t.named && !negWords.has(t.text) && !mentionHeads.has(t.text) && (t.word == nil || !t.word.filler) &&
		r.numberAt(i).kind == notNumber && r.unitAt(i) == noUnit
}
