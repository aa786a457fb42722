package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Of several towns, the one where the skylight goes.

var (
	billPlaces = wordsOf(`billing billed invoice invoices payment statement not mailing factura cobro facturar
		office oficina hq headquarters moved used grew`)
	shipWords = wordsOf(`ship ships shipped shipping deliver delivered delivery send sent goes going envio enviar
		envien manden mandar mandenlo envienlo entregar entrega freight`)
	jobPlaces = wordsOf(`building job jobsite project site customer client homeowner house casa cliente skylight
		skylights dome domes church warehouse cabin rental property install installed edificio obra trabajo tragaluz
		domo propiedad`)
	officeWords = wordsOf(`live vivo vivimos billing office oficina based im am estoy`)
	placeOfJob  = wordsOf(`its is goes ship building house cabin job it church es esta va casa edificio shop rental
		rentals property skylight dome`)
	placeOfJobOnly = wordsOf(`building house cabin job church rental rentals property skylight dome casa edificio
		ship goes`)
	afterBillPlace = wordsOf(`in from near here out over down up of with again`)
)

// whereItGoes finds the one town of several that the skylight is to be sent to, or failing
// that the one where the building is: "ship to my shop in Medford OR, bill to Ashland OR".
func (r *reader) whereItGoes(all []found) (found, bool) {
	best, at, tie := 0, -1, false
	for k := range all {
		from := r.clauseStart(all[k].first)
		if k > 0 {
			from = max(from, all[k-1].last+1)
		}
		switch n := r.goesThere(from, all[k].first); {
		case n > best:
			best, at, tie = n, k, false
		case n == best && at >= 0 && all[at].Place != all[k].Place:
			tie = true
		}
	}
	if at < 0 || tie {
		return found{}, false
	}
	return all[at], true
}

// goesThere weighs the words that lead to a town: 2 where something is sent, 1 where the
// building is, less where bills go or somebody lives.
func (r *reader) goesThere(from, to int) int {
	if r.billIn(from, to) || r.anyOf(from, to, billPlaces) {
		return -1
	}
	if r.anyOf(from, to, shipWords) {
		return 2
	}
	if r.anyOf(from, to, jobPlaces) {
		return 1
	}
	return 0
}

// buildingElsewhere: "es en Pecos pero yo vivo en Odessa Texas": the town with its state is
// where somebody lives, and another clause tells where the building is.
func (r *reader) buildingElsewhere(home found) bool {
	from := r.clauseStart(home.first)
	if r.goesThere(from, home.first) > 0 || !r.billIn(from, home.first) && !r.anyOf(from, home.first, officeWords) {
		return false
	}
	just := !r.billIn(from, home.first) &&
		!r.wordsIn(from, home.first, "live", "vivo", "vivimos", "billing", "office", "oficina", "based")
	var buf [8]string
	for i := range r.toks {
		if i >= from && i <= home.last || r.toks[i].kind != wordToken || r.toks[i].used ||
			!r.wordAt(i-1, "in", "to", "en", "a") || r.negated(i) || r.overtaken(i) ||
			r.anotherThings(i, i) {
			continue
		}
		ahead := r.wordsFrom(i, 4, buf[:])
		n := place.Scan(ahead, "")
		if n == 0 || n == 1 && !r.townWord(i) || !r.anyOf(r.clauseStart(i), i, placeOfJob) {
			continue
		}
		if just && !r.anyOf(r.clauseStart(i), i, placeOfJobOnly) {
			continue
		}
		last := r.tokenOf(i, n)
		r.name(home.first, home.last)
		if e, ok := r.surelyMeant(i, last, joined(ahead[:n])); ok {
			return r.townFact(i, last, e)
		}
		return r.townUnclear(i, last)
	}
	return false
}

// betterTown: a later town is where the skylight goes, rather than this one: "we are a roofing
// company out of Dallas, this one is going on a church in Waco".
func (r *reader) betterTown(i, last int) bool {
	for k := last + 1; k+1 < len(r.toks); k++ {
		if r.wordAt(k, "in", "to", "near", "en", "a") && (r.surelyTown(k+1) || r.townSomewhere(k+1)) {
			return r.goesThere(max(last+1, r.clauseStart(k)), k) > r.goesThere(r.clauseStart(i), i)-number(r.passingTown(i, last))
		}
	}
	return false
}

// billsThere: only the bill goes to the town: "bill to Denver, ship to Gunnison".
func (r *reader) billsThere(i int) bool {
	from := r.clauseStart(i)
	return (r.billIn(from, i) || r.wordsIn(from, i, "billing", "billed", "invoice", "invoices", "factura", "facturar", "cobro")) &&
		!r.wordsIn(from, i, "ship", "shipping", "send", "sent", "and", "y", "enviar", "envio", "same")
}

// billIn: a bill is spoken of between the tokens, and nobody called Bill: "This is Bill Hanks in
// Tulsa" tells where Bill lives.
func (r *reader) billIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "bill") &&
			!((r.opensClause(i) || r.introEnds(i-1)) &&
				(r.among(i+1, afterBillPlace) || r.markAt(i+1, ',') || i+1 < to && r.surname(i+1))) {
			return true
		}
	}
	return false
}

// eachTown: "two places, one in Mesa and one in Payson AZ": neither is the place.
func (r *reader) eachTown() bool {
	n := 0
	for i := range r.toks {
		if r.wordAt(i, "in", "en") && r.wordAt(i-1, "one", "uno", "una", "other", "otro", "otra", "another") {
			n++
		}
	}
	return n > 1
}

// useBefore: a building is named right before the token: "a warehouse in Houston".
func (r *reader) useBefore(from, i int) bool {
	hits := within(r.choices, from, i)
	for n := range hits {
		if h := &hits[n]; h.last == i && h.senses[0].topic == fitcheck.TopicUse && !r.negated(h.first) {
			return true
		}
	}
	return false
}
