package reading

import "example.com/intake-bot/internal/fitcheck"

// Kinds that stand each before its size with any word of their own: "ladder side is 25 x 25,
// driveway side 25 x 49", "pool side one 25 x 25. vent stack one 25 x 49", "A 25 x 25 B 25 x 49".
// They are kinds where the sizes lie further apart than parts of one skylight do.

// noKindBefore are words before a size that tell of a part, of who measured or when.
var noKindBefore = wordsOf(`shaft well tunnel ceiling drywall hole glass pane screen shade flashing wall plywood
	decking rafter rafters joist inch inches measured measure measures measuring got get took read says said tried
	guess maybe think about around roughly almost exactly monday tuesday wednesday thursday friday saturday sunday
	today yesterday tomorrow earlier later before after again sorry wait actually correction instead quote order
	need want have tengo necesito quiero door window table truck trailer boat room floor tile hueco vidrio pared
	puerta ventana hoy ayer antes perdon medi dice`)

// wordBeforeSize is the mention that starts at a token and has its size right behind it.
func (r *reader) wordBeforeSize(i int) (mention, bool) {
	if i > 0 && r.clauseStart(i) != i && !r.breaksClause(i-1) && r.toks[i-1].kind != numToken && r.toks[i-1].kind != markToken {
		return mention{}, false
	}
	k := i
	for r.wordAt(k, "and", "y", "lado") ||
		(k == i || r.breaksClause(k-1)) && r.wordAt(k, "by", "near", "above", "beside", "behind", "cerca", "junto") ||
		k > i && r.wordAt(k-1, "cerca", "junto") && r.wordAt(k, "de", "del", "a", "al") ||
		k < len(r.toks) && r.among(k, mentionArticles) {
		k++
	}
	key := k
	for k < key+2 && (k == key && r.letterHeads(k) || r.wordBefores(k)) {
		k++
	}
	if k == key {
		return mention{}, false
	}
	for r.wordAt(k, "side", "roof", "house", "room", "lado") || r.headAt(k) {
		k++
	}
	last := k - 1
	for r.wordAt(k, "is", "are", "measures", "es", "mide", "de") || r.markAt(k, ':') || r.markAt(k, '=') || r.markAt(k, '-') {
		k++
	}
	return mention{first: i, last: last, key: key, bySize: true}, r.pairAt(k)
}

// wordBefores: a word that may call a kind before its size.
func (r *reader) wordBefores(i int) bool {
	return i < len(r.toks) && r.tellsApart(i) && !noKindBefore.has(r.toks[i].text) && !r.skylightPart(i) && !covers(r.intros, i) &&
		!r.otherPerson(i) && !r.wordAt(i, "side", "roof", "house", "room")
}

// skylightPart: a part of a skylight is named at the token, and not only a thing that is none: "ladder".
func (r *reader) skylightPart(i int) bool {
	return r.labelAt[i] >= 0 && !r.labels[r.labelAt[i]].is("other", "other")
}

// letterHeads: the letter heads its line or follows a size, so that it is no article: "and a half by …".
func (r *reader) letterHeads(i int) bool {
	return r.letter(i) && !r.wordAt(i+1, "half", "quarter", "third") &&
		(i == 0 || r.toks[i-1].kind == markToken && !r.markAt(i-1, ',') || r.toks[i-1].kind == numToken && !r.wordAt(i, "a"))
}

// sizesFar: the first sizes after the mentions of each kind lie so far apart that they are of no one
// skylight.
func (r *reader) sizesFar(all []mention, kinds []int) bool {
	type sides struct{ a, b fitcheck.Length }
	first := map[int]sides{}
	for k, m := range all {
		for i := m.last + 1; i < len(r.toks) && first[kinds[k]].a == 0; i++ {
			if a, b, _, ok := r.pairSides(i); ok {
				first[kinds[k]] = sides{min(a, b), max(a, b)}
			}
		}
	}
	for u, s := range first {
		for v, o := range first {
			if u != v && max(abs(s.a-o.a), abs(s.b-o.b)) <= FarSizes {
				return false
			}
		}
	}
	return len(first) > 1
}

// partsMeasured: different parts are measured after the mentions, as they are of one skylight: "plastic
// edge to edge 27 x 51, clear opening of the retaining frame 25 x 49".
func (r *reader) partsMeasured(all []mention) bool {
	parts := map[string]bool{}
	for i := all[0].first; i < len(r.toks); i++ {
		if !r.pairAt(i) {
			continue
		}
		part := ""
		for k := r.clauseStart(i); k < i; k++ {
			if h := r.labelFrom(k); h != nil && isName(h) {
				part += h.senses[0].kind + h.senses[0].value
			}
		}
		if part != "" {
			parts[part] = true
		}
	}
	return len(parts) > 1
}

// pairSides are the two sides of the pair at a token, in inches where no unit is told, and where it
// ends.
func (r *reader) pairSides(i int) (a, b fitcheck.Length, end int, ok bool) {
	if !r.pairAt(i) {
		return 0, 0, i, false
	}
	n, next := r.numeralAt(i)
	for r.unitAt(next) != noUnit {
		next++
	}
	if r.by(next) {
		next++
	}
	m, end := r.numeralAt(next)
	if end == next || n.bad || m.bad || n.den == 0 || m.den == 0 {
		return 0, 0, i, false
	}
	return fitcheck.Length(n.num) * fitcheck.Inch / fitcheck.Length(n.den), fitcheck.Length(m.num) * fitcheck.Inch / fitcheck.Length(m.den), end, true
}
