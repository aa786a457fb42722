package reading

import "slices"

var roomVerbs = wordsOf(`is isnt has was needs wants gets looks are have es tiene esta`)

// roomClauses: "bath: plastic screwed straight down. living room: aluminum frame on a curb", "den
// has …, hall bath is …": two rooms or more, each at the start of a clause that tells of it.
func (r *reader) roomClauses() []unitRef {
	var found []unitRef
	var seen []string
	for i := range r.toks {
		name, last := r.roomClause(i)
		if name == "" || slices.Contains(seen, name) {
			continue
		}
		seen = append(seen, name)
		found = append(found, unitRef{i, last, []int{len(seen)}})
	}
	if len(seen) < 2 {
		return nil
	}
	return found
}

// roomClause is the room whose clause starts at a token, and where its name ends.
func (r *reader) roomClause(i int) (name string, last int) {
	if i > 0 && r.toks[i-1].kind != markToken && !r.wordAt(i-1, "the", "my", "our", "and", "y", "el", "la") ||
		r.toks[i].kind != wordToken || !r.room(i) {
		return "", 0
	}
	k := i - 1
	for r.wordAt(k, "the", "my", "our", "and", "y", "el", "la") {
		k--
	}
	if k >= 0 && r.toks[k].kind != markToken && !r.wordAt(i-1, "and", "y") {
		return "", 0
	}
	last = i
	for r.room(last+1) || r.wordAt(last+1, "room", "one", "ones", "skylight", "skylights", "dome", "domes") {
		last++
	}
	verb := last + 1
	for r.wordAt(verb, "frame", "frames", "plastic", "bubble", "curb", "box", "s") || r.markAt(verb, '\'') {
		verb++ // "bath frame is corroded"
	}
	tells := r.markAt(verb, ':') || r.among(verb, roomVerbs)
	if !tells ||
		r.wordAt(i, "house", "barn", "shop", "office", "garage", "shed", "building", "church", "school") && !r.markAt(last+1, ':') ||
		sizeWords.has(r.toks[i].text) {
		return "", 0
	}
	return r.toks[last].text + r.toks[i].text, last
}
