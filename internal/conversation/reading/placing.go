package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

var (
	zipOwners = wordsOf(`daughter son mom mother dad sister brother friend parents hija hijo mama papa hermano
		hermana she he they`)
	placedBy   = wordsOf(`put have has says said wrote wrong pusieron puso dice dije`)
	afterState = wordsOf(`and but its zip here with i we usa my for`)
)

// found is a place that the message names.
type found struct {
	fitcheck.Place
	first, last int
}

// places finds where the part goes: town and state, ZIP code, a state or a well-known
// town alone.
func (r *reader) places() {
	zips := slices.DeleteFunc(r.zips(), func(z zipAt) bool { return r.whereKinIs(z.first) })
	towns := slices.DeleteFunc(r.townsWithState(), func(f found) bool {
		return r.whereKinIs(f.first) ||
			r.anotherThings(f.first, f.last)
	})
	switch {
	case len(towns) > 1 && !sameTown(towns):
		r.severalTowns(towns, zips)
	case len(towns) > 0 && r.asked(fitcheck.TopicPlace) && r.eachTown():
		r.use(towns[0].first, towns[0].last)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, towns[0].first, towns[0].last)
	case len(towns) == 1 && r.buildingElsewhere(towns[0]):
	case len(towns) > 0:
		for _, f := range towns[:len(towns)-1] {
			r.name(f.first, f.last) // said twice
		}
		r.placeFact(towns[len(towns)-1], zips)
	case len(zips) > 1 && zips[0].code != zips[len(zips)-1].code &&
		r.wordsIn(zips[0].last+1, zips[len(zips)-1].first, "or", "o", "and"):
		r.use(zips[0].first, zips[len(zips)-1].last)
		r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, zips[0].first, zips[len(zips)-1].last)
	case len(zips) > 0:
		r.zipFact(r.zipOf(zips))
	case r.foreign():
	default:
		r.partOfPlace()
	}
}

// zipOf is the ZIP code among several where the part goes: not the one where somebody else
// lives or a bill goes, else the last.
func (r *reader) zipOf(zips []zipAt) zipAt {
	best := zips[len(zips)-1]
	weigh := func(z zipAt) int {
		from := r.clauseStart(z.first)
		if r.wordsIn(from, z.first, "lives", "live", "grew", "vive", "from") && r.anyOf(from, z.first, zipOwners) {
			return -1
		}
		return r.goesThere(from, z.first)
	}
	for _, z := range zips {
		if weigh(z) > weigh(best) {
			best = z
		}
	}
	return best
}

func sameTown(all []found) bool {
	for _, f := range all[1:] {
		if f.Place != all[0].Place {
			return false
		}
	}
	return true
}

// zipsOf are the ZIP codes right after a town.
func zipsOf(f found, zips []zipAt) []zipAt {
	var own []zipAt
	for _, z := range zips {
		if z.first >= f.first && z.first-f.last <= 2 {
			own = append(own, z)
		}
	}
	return own
}

// severalTowns: two towns: the one after "ship to" or in a correction, else a question.
func (r *reader) severalTowns(all []found, zips []zipAt) {
	for k := len(all) - 1; k > 0; k-- {
		if r.wordsIn(all[k-1].last+1, all[k].first, "not", "sorry", "actually") && !r.negated(all[k].first) {
			r.placeFact(all[k], zipsOf(all[k], zips))
			return
		}
		said := r.anyOf(r.sentenceFirst(all[k-1].first), all[k-1].first, placedBy)
		if said && r.wordsIn(all[k-1].last+1, all[k].first, "its", "should", "is", "es", "im", "meant") ||
			r.wordsIn(all[k-1].last+1, all[k].first, "but", "pero") { // "you put Toledo Ohio. its Toledo Oregon"
			r.placeFact(all[k], zipsOf(all[k], zips))
			return
		}
	}
	if f, ok := r.whereItGoes(all); ok {
		for _, other := range all {
			if other != f {
				r.name(other.first, other.last)
			}
		}
		r.placeFact(f, zipsOf(f, zips))
		return
	}
	for _, f := range all {
		r.use(f.first, f.last)
	}
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, all[0].first, all[len(all)-1].last)
}

// run is a stretch of words without a sign between, for looking names up.
func (r *reader) wordsFrom(i, most int, buf []string) []string {
	buf = buf[:0]
	for i < len(r.toks) && len(buf) < most && r.toks[i].kind == wordToken && !r.toks[i].used {
		buf = append(buf, r.toks[i].text)
		i++
		if code := r.toks[i-1].text; r.markAt(i, '.') && len(code) == 2 && code != "st" && code != "ft" && code != "mt" &&
			code != "so" && code != "no" && i+1 < len(r.toks) && !r.toks[i+1].glued {
			break // "Erie PA. Ron"
		}
		for r.markAt(i, '.') && r.toks[i].glued || r.markAt(i, '-') && r.toks[i].glued {
			i++
		}
	}
	return buf
}

// townsWithState finds every "Town, ST".
func (r *reader) townsWithState() []found {
	var out []found
	var buf [8]string
	for i := 0; i < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || r.toks[i].used {
			continue
		}
		ahead := r.wordsFrom(i, 4, buf[:])
		n, code := place.ScanState(ahead)
		if n == 0 || n > 1 && (r.wordAt(i, "a") || r.strayLetters(i, ahead)) || place.Scan(ahead, "") > n {
			continue // also "with a K", "Oklahoma City"
		}
		if r.wordAt(i, "ill") && i+1 < len(r.toks) && r.toks[i+1].kind == wordToken && !r.wordAt(i+1, "zip", "usa", "and") {
			continue // "leaks in the bath, I'll measure later"
		}
		if r.wordAt(i, "in") && r.givenAt(i-1) && i+1 < len(r.toks) && r.toks[i+1].kind == numToken && r.toks[i+1].whole > 500 {
			continue // "its Dana in 30117"
		}
		last := r.tokenOf(i, n)
		if f, ok := r.townBefore(i, code); ok && (r.stateHolds(i, last) || code == "OK" && knownIn(f)) {
			f.last = last
			out = append(out, f)
			i = last
		}
	}
	return out
}

// knownIn: the one well-known town of the name lies in that state: "GC in Tulsa OK doing a
// remodel".
func knownIn(f found) bool {
	e, ok := place.WellKnown(strings.ToLower(f.City))
	return ok && e.State == f.State
}

// strayLetters: "around w a tape": two small letters that stand alone are words, no state.
func (r *reader) strayLetters(i int, ahead []string) bool {
	if len(ahead) < 2 || len(ahead[0]) != 1 || len(ahead[1]) != 1 || r.asked(fitcheck.TopicPlace) || r.markAt(i+1, '.') {
		return false
	}
	return true
}

// tokenOf is the token of the n-th word from token i on.
func (r *reader) tokenOf(i, n int) int {
	for n > 1 {
		i++
		if r.toks[i].kind == wordToken {
			n--
		}
	}
	return i
}

// townBefore finds the town of a state whose name ends right before token i.
func (r *reader) townBefore(i int, state string) (found, bool) {
	end := i
	for end > 0 && (r.markAt(end-1, ',') || r.markAt(end-1, '.') || r.markAt(end-1, '-')) {
		end--
	}
	var starts [5]int
	n := 0
	for j := end - 1; j >= 0 && n < len(starts); j-- {
		if r.markAt(j, '.') && r.toks[j].glued || r.markAt(j, '-') && r.toks[j].glued {
			continue
		}
		if r.toks[j].kind != wordToken || r.toks[j].used {
			break
		}
		starts[n] = j
		n++
	}
	var buf [8]string
	for k := n - 1; k >= 0; k-- {
		name := r.wordsFrom(starts[k], k+1, buf[:])
		if len(name) != k+1 || place.Scan(name, state) != k+1 {
			continue
		}
		towns := place.Towns(joined(name), state)
		if len(towns) > 0 && !r.wordAt(starts[k]-1, "not") && !r.newTown(starts[k]-1, name) {
			return found{Place: fitcheck.Place{City: towns[0].City, State: state}, first: starts[k]}, true
		}
	}
	return found{}, false
}

// newTown: "new" before a town's name makes another town of it: New Orleans is no Orleans.
func (r *reader) newTown(i int, name []string) bool {
	return r.wordAt(i, "new") && place.Scan(append([]string{"new"}, name...), "") == len(name)+1
}

func joined(words []string) string {
	s := words[0]
	for _, w := range words[1:] {
		s += " " + w
	}
	return s
}

// stateHolds: many codes are words: "or", "in", "me". They are states at the end of a
// clause or before a ZIP code only.
func (r *reader) stateHolds(first, last int) bool {
	if first != last || len(r.toks[first].text) != 2 {
		return true
	}
	if last+1 >= len(r.toks) || r.toks[last+1].kind != wordToken {
		return true
	}
	switch r.toks[first].text {
	case "mi": // "New Orleans, mi teléfono es …"
		return r.out.Language != "es" || r.wordAt(last+1, "y", "pero", "zip", "codigo")
	case "or", "in", "me", "hi", "oh", "ok", "id", "la", "de", "al", "so", "pa", "ma", "mo", "as":
		return r.among(last+1, afterState) ||
			// "hilo hi have a good one"
			r.asked(fitcheck.TopicPlace) && r.wordAt(first-1, "hilo", "kailua", "lihue", "honolulu", "kona", "kahului")
	}
	return true
}

func (r *reader) placeFact(f found, zips []zipAt) {
	p, first, last := f.Place, f.first, f.last
	for _, z := range zips {
		gap := 3
		if r.wordsIn(last+1, z.first, "zip", "zipcode", "code", "codigo", "postal") {
			gap = 6 // "Laredo Texas el codigo es 78041"
		}
		entries := place.Towns(p.City, p.State)
		// "Athens Georgia, sorry, phone put Greece. 30601"
		later := z.known && z.first > last && len(entries) > 0 && place.Agree(entries[0], z.entry)
		if z.first < first {
			if len(entries) > 0 && r.zipAhead(z, entries[0], first) {
				p.ZIP, first = z.code, z.first
			}
			continue
		}
		if z.first-last > gap && !later {
			continue
		}
		if z.known {
			if len(entries) > 0 && !place.Agree(entries[0], z.entry) {
				r.use(first, z.last)
				r.unclear(fitcheck.TopicPlace, 0, WhyPlace, p, first, z.last)
				return
			}
		}
		p.ZIP = z.code
		if z.first-last > gap { // what stands between is something else
			if !r.toks[z.first].used {
				r.name(z.first, z.last)
			}
			continue
		}
		last = z.last
	}
	if r.toks[first].used {
		return
	}
	r.name(first, last)
	r.fact(fitcheck.TopicPlace, 0, p, first, last)
}

// zipAhead: "55805 Duluth MN", "55805, in Duluth": the ZIP code of the town right after it.
func (r *reader) zipAhead(z zipAt, town place.Entry, first int) bool {
	for i := z.last + 1; i < first; i++ {
		if r.toks[i].kind != markToken && !r.wordAt(i, "in", "en") {
			return false
		}
	}
	return z.known && place.Agree(town, z.entry) && !r.toks[z.first].used
}
