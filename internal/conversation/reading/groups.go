package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Groups of skylights in one message, each with its number and the place or the look that tells it
// apart: "2 skylights in the kitchen and 1 in the bath", "my barn has 4 and the house has 2".

var (
	theOrMy          = wordsOf(`the my our la el mi`)
	groupsPast       = wordsOf(`replaced had fixed installed bought sold used cambie cambiamos tenia compre`)
	oneWords         = wordsOf(`a an one un una uno otro otra another`)
	groupGoesOn      = wordsOf(`that which of leaking cracked hazy big small que`)
	oneArticles      = wordsOf(`a an un una otro otra another`)
	placeArticles    = wordsOf(`the our my la el mi los las a`)
	placeLeads       = wordsOf(`in over on for above at en sobre para inside`)
	groupLookLinks   = wordsOf(`es son is are a one ones and y`)
	afterGroupNumber = wordsOf(`rotos roto rajados rajado mas que gotean them those these ellos ellas`)
	groupHarm        = wordsOf(`crack cracks leak leaks hole holes`)
	groupEnders      = wordsOf(`and y plus with con are is son es`)
	notGroupLeads    = wordsOf(`unit skylight dome suite apt building no number each every that this which other not like
		than last next only same about of or`)
	notGroupFollowers = wordsOf(`layer layers capas or o to years weeks days way side of`)
	notPlaces         = wordsOf(`roof metal wood same curb box frame one other mail way hail storm side sides moment total all
		top phone whole file files record records paperwork techo marco caja winter summer morning`)
	placeParts = wordsOf(`room rooms area floor house building hall porch bay side office shop store`)
	placeSides = wordsOf(`side sides lado lados end edge`)
)

// skylightGroup is one of them.
type skylightGroup struct {
	first, last, n int
	place, look    string
	lookAt         int  // the token with the look
	added          bool // "also a smaller one": beside what was spoken of before
}

// countedGroups makes a kind of each group, where there are two or more. Where each is of one
// and only the places differ, they tell no more than how many there are.
func (r *reader) countedGroups() {
	if len(r.refs) > 0 || r.Units > 1 || r.asksAnything() {
		return
	}
	found, total := withoutSum(r.groupsFound())
	if len(found) < 2 || len(found) > 6 || !toldApart(found) ||
		r.wordAt(found[0].first, "the", "my", "el", "mi") && !found[1].added {
		return
	}
	counted := r.asked(fitcheck.TopicCount)
	differ := slices.ContainsFunc(found, func(g skylightGroup) bool { return g.look != "" || g.added && !counted })
	placed := slices.ContainsFunc(found, func(g skylightGroup) bool { return g.place != "" || g.added })
	if !placed && r.articled(found) {
		return // "a round one and a square one": see bylook.go
	}
	if !differ && (counted || r.pairBetween(0, len(r.toks))) {
		return
	}
	for _, t := range total {
		r.use(t.first, t.first)
	}
	several := slices.ContainsFunc(found, func(g skylightGroup) bool { return g.n > 1 })
	if !differ && !several {
		r.onePerPlace(found)
		return
	}
	for k, g := range found {
		r.groupKind(k+1, g)
	}
}

// groupsFound are the groups that the message names; none where one is told that is past.
func (r *reader) groupsFound() []skylightGroup {
	var found []skylightGroup
	for i := 0; i < len(r.toks); i++ {
		g, ok := r.countedGroupAt(i)
		if !ok {
			continue
		}
		if r.anyOf(r.clauseStart(i), i, groupsPast) {
			return nil // of which nothing is wanted
		}
		if !r.ofThoseCounted(g, found) {
			found = append(found, g)
		}
		i = g.last
	}
	return found
}

// groupKind makes a kind of a group.
func (r *reader) groupKind(unit int, g skylightGroup) {
	r.refs = append(r.refs, unitRef{g.first, g.last, []int{unit}})
	r.fact(fitcheck.TopicCount, unit, fitcheck.Whole(g.n), g.first, g.last)
	r.use(r.groupNumberAt(g), r.groupNumberAt(g))
	r.groups = append(r.groups, g)
	for i := g.first; i <= g.last; i++ {
		if r.wordAt(i, "one", "ones") {
			r.use(i, i)
		}
	}
	if g.look != "" {
		r.lookFact(unit, g.look, g.lookAt)
	}
}

// ofThoseCounted: "three skylights on my house, … the bath one is cracked": one of those that were counted
// for the whole building, and no further one.
func (r *reader) ofThoseCounted(g skylightGroup, found []skylightGroup) bool {
	if len(found) == 0 || found[0].n < 2 || !r.wordAt(g.first, "the", "my", "el", "mi") {
		return false
	}
	whole := found[0]
	return whole.look == "" && (whole.place == "" || r.saysUse(whole.last))
}

// articled: one of the groups has an article for its number.
func (r *reader) articled(found []skylightGroup) bool {
	for _, g := range found {
		if r.wordAt(r.groupNumberAt(g), "a", "an", "un", "una") {
			return true
		}
	}
	return false
}

// onePerPlace: "1 in the gym, 1 in the locker room": so many in all.
func (r *reader) onePerPlace(found []skylightGroup) {
	if r.articled(found) {
		return
	}
	r.fact(fitcheck.TopicCount, 0, fitcheck.Whole(len(found)), found[0].first, found[len(found)-1].last)
	r.groups = found
	for _, g := range found {
		r.use(r.groupNumberAt(g), r.groupNumberAt(g))
	}
}

// toldApart: no two of the groups may be the same.
func toldApart(found []skylightGroup) bool {
	for k, g := range found {
		for _, o := range found[:k] {
			places := g.place != "" && o.place != "" && g.place != o.place
			looks := lookSort[g.look] == lookSort[o.look] && g.look != o.look
			if !g.added && !places && !looks {
				return false
			}
		}
	}
	return true
}

// withoutSum takes out the numbers that are the sum of the groups: "3 domes, 2 small 1 big".
func withoutSum(found []skylightGroup) (groups, total []skylightGroup) {
	for len(found) > 2 {
		sum := 0
		for _, g := range found[1:] {
			sum += g.n
		}
		if found[0].n != sum || found[0].look != "" {
			break
		}
		total, found = append(total, found[0]), found[1:]
	}
	return found, total
}

// groupNumberAt is the token with the number of a group.
func (r *reader) groupNumberAt(g skylightGroup) int {
	for i := g.first; i <= g.last; i++ {
		if n, next := r.countNumber(i); next > i && n == g.n || r.oneWord(i) {
			return i
		}
	}
	return g.first
}

// oneWord: a word for a single thing of its kind.
func (r *reader) oneWord(i int) bool {
	return r.among(i, oneWords)
}

// countedGroupAt reads a group whose number, or whose place before its number, stands at a token.
func (r *reader) countedGroupAt(i int) (skylightGroup, bool) {
	if name, next := r.placeAt(i); next > i && r.placeHas(i, next) {
		return r.groupInPlace(i, name, next+1)
	}
	n, next := r.groupNumber(i)
	if next == i {
		return skylightGroup{}, false
	}
	g := skylightGroup{first: i, last: next - 1, n: n}
	g.added = r.oneWord(i) && (r.wordAt(i-1, "also", "plus", "tambien", "ademas") || r.wordAt(i, "another"))
	next = r.pastGroupLink(next)
	noun := r.ofTheLook(next)
	if noun {
		next += 2
	}
	for k := next; k < next+6 && k < len(r.toks) && r.toks[k].kind == wordToken; k++ {
		t := &r.toks[k]
		look := r.lookAt(k)
		switch {
		case look != "" && g.look == "":
			g.look, g.lookAt = look, k
		case r.among(k, countNouns) || t.is("one", "ones") || noun && t.is("size", "kind", "type"):
			noun = true
		case g.place == "" && r.room(k) && !sizeWords.has(t.text) && r.skylightNamed(k+1, k+3):
			g.place = t.text // "2 kitchen skylights"
		case r.groupStops(k, look):
			return r.groupPlace(g, k, noun)
		}
		g.last = k
	}
	return r.groupPlace(g, g.last+1, noun)
}

// placeHas: "the kitchen has …", from the place up to the verb.
func (r *reader) placeHas(i, next int) bool {
	return r.among(i-1, theOrMy) && r.wordAt(next, "has", "have", "got", "tiene", "with") && (r.room(i) || r.saysUse(i))
}

// groupInPlace reads the number after "the kitchen has", from a token on.
func (r *reader) groupInPlace(i int, name string, at int) (skylightGroup, bool) {
	n, end := r.groupNumber(at)
	if end == at {
		return skylightGroup{}, false
	}
	noun := r.among(end, countNouns)
	if !noun && !r.groupEnds(end) && !r.among(end, groupGoesOn) {
		return skylightGroup{}, false
	}
	return skylightGroup{first: i, last: end - 1 + number(noun), n: n, place: name}, true
}

// groupStops: the word tells nothing of the group's own: what leads to a place or tells of harm.
func (r *reader) groupStops(k int, look string) bool {
	if r.whereWord(k) || r.among(k, groupHarm) {
		return true
	}
	return look == "" && !r.countAdjective(k) && !covers(r.choices, k) && !r.among(k, afterGroupNumber)
}

// groupPlace adds where the skylights of a group are, told from a token on; they need a place, a
// look or a word for them.
func (r *reader) groupPlace(g skylightGroup, k int, noun bool) (skylightGroup, bool) {
	if r.among(g.first, oneArticles) && !noun && g.look == "" && !r.wordAt(g.first, "otro", "otra", "another") {
		return g, false
	}
	if g.place == "" && r.whereWord(k) {
		det := r.among(k+1, placeArticles)
		if name, end := r.placeAt(k + 1 + number(det)); end > k+1 && (det || r.room(k+1)) {
			g.place, g.last = name, end-1
			return r.groupLook(g), true
		}
	}
	// "3 domos chicos y 2 grandes para una bodega"
	forPlace := r.wordAt(k, "for", "para") && r.wordAt(k+1, "a", "an", "un", "una")
	return g, noun || g.look != "" && (forPlace || r.groupEnds(k))
}

// whereWord: a word that leads to a place.
func (r *reader) whereWord(k int) bool {
	return r.among(k, placeLeads)
}

// groupLook adds a look that is told after the place: "1 for the stairwell, round; 2 for …".
func (r *reader) groupLook(g skylightGroup) skylightGroup {
	k := g.last + 1
	if !r.markAt(k, ',') && !r.markAt(k, '(') && !r.wordAt(k, "que") {
		return g
	}
	if next, ok := r.countedGroupAt(k + 1); ok && next.place != "" {
		return g // "four in the hall, one barrel in the entry"
	}
	for k++; k < len(r.toks) && r.toks[k].kind == wordToken; k++ {
		look := r.lookAt(k)
		if look == "" && !r.among(k, groupLookLinks) {
			return g
		}
		if look == "" {
			continue
		}
		if g.last = k; g.look == "" || lookSort[look] < lookSort[g.look] {
			g.look, g.lookAt = look, k
		}
	}
	return g
}

// groupEnds: what belongs to a group ends before a token.
func (r *reader) groupEnds(k int) bool {
	return k >= len(r.toks) || r.toks[k].kind != wordToken || r.among(k, groupEnders) || r.wholeAt(k) > 0
}

// groupNumber reads the number of a group.
func (r *reader) groupNumber(i int) (n, next int) {
	if i >= len(r.toks) || r.used(i) || r.noGroupAfter(i-1) {
		return 0, i
	}
	n, next = r.countNumber(i)
	if next == i && (r.oneWord(i) || r.wordAt(i, "the", "my", "el", "mi") && r.skylightNamed(i+1, i+3)) {
		n, next = 1, i+1
	}
	if n < 1 || n > 50 || r.numbersElse(next) {
		return 0, i
	}
	return n, next
}

// noGroupAfter: what stands before the number makes it no group's: "unit 3", "25 x 49", "#2", "bath 2".
func (r *reader) noGroupAfter(i int) bool {
	return r.by(i) || r.markAt(i, '#') || r.markAt(i, '/') || r.among(i, notGroupLeads) ||
		r.room(i) && !sizeWords.has(r.toks[i].text)
}

// numbersElse: what follows the number makes it a length's or something else's: "2 layers", "3 ft"; not "2 of
// them".
func (r *reader) numbersElse(next int) bool {
	if next >= len(r.toks) {
		return false
	}
	return r.unitAt(next) != noUnit || r.by(next) || r.toks[next].kind == numToken || r.markAt(next, '-') ||
		r.among(next, notGroupFollowers) && !r.wordAt(next+1, "them") && !r.ofTheLook(next)
}

// ofTheLook: "2 of the small size and 1 of the large": the look follows.
func (r *reader) ofTheLook(i int) bool {
	return r.wordAt(i, "of", "de") && r.wordAt(i+1, "the", "los", "las", "el", "la") && lookOf[r.wordText(i+2)] != ""
}

// placeAt is the place that is named at a token and where its name ends: a room or a building that
// is known, with "room" after it, or any one or two words that end their clause or go before a
// verb or a joining word.
func (r *reader) placeAt(i int) (name string, next int) {
	name = r.wordText(i)
	if name == "" || notPlaces.has(name) || lookOf[name] != "" || r.wholeAt(i) > 0 {
		return "", i
	}
	end := i + 1
	for end < len(r.toks) && end < i+3 && r.toks[end].kind == wordToken &&
		(r.among(end, placeParts) || r.room(end) && !r.room(i)) {
		end++
	}
	if r.among(end-1, placeSides) || end == i+1 && !r.room(i) && r.saysElse(i) {
		return "", i
	}
	for k := i + 1; k < end; k++ {
		name += " " + r.toks[k].text
	}
	return name, end
}

// saysElse: the word is a small one or tells of the skylight, and is no place.
func (r *reader) saysElse(i int) bool {
	w := r.toks[i].word
	return w != nil && w.filler || covers(r.choices, i) && !r.saysUse(i) || covers(r.labels, i)
}

// callGroups notes what the groups are called by.
func (r *reader) callGroups() {
	for k, g := range r.groups {
		name := g.place
		if name == "" && g.look != "" {
			name = r.toks[g.lookAt].text
		}
		if name == "" {
			continue
		}
		if r.out.Rooms == nil {
			r.out.Rooms = map[int]string{}
		}
		r.out.Rooms[k+1] = name
	}
}
