package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

var (
	byDates = wordsOf(`next this tomorrow tonight then monday tuesday wednesday thursday friday saturday sunday
		spring summer fall winter christmas thanksgiving easter truck freight mail ups ground boat barge plane
		whatever whichever`)
	codeOwners = wordsOf(`vendor reference contract project tracking customer license policy claim requisition
		contrato poliza proveedor cliente reclamo`)
)

// zipAt is a five-digit token that may be a ZIP code.
type zipAt struct {
	code        string
	first, last int
	entry       place.Entry
	known       bool
}

func (r *reader) zips() []zipAt {
	var out []zipAt
	if z, ok := r.spokenZIP(); ok {
		out = append(out, z)
	}
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || len(t.text) != 5 || t.dec > 0 || t.code || t.comma || t.used {
			continue
		}
		if r.markAt(i-1, '-') && r.toks[i-1].glued && i > 1 && r.toks[i-2].kind == numToken && r.toks[i-2].dec == 0 {
			continue // "claim no. is 44-10982"
		}
		if r.markAt(i-1, '#') || r.markAt(i-1, '$') || r.by(i-1) ||
			r.by(i+1) && !r.wordsAfterBy(i+2) || r.unitAt(i+1) != noUnit ||
			r.wordAt(i-1, "not", "no") || r.afterCode(i) {
			continue
		}
		z := zipAt{code: t.text, first: i, last: i}
		if r.markAt(i+1, '-') && r.toks[i+1].glued && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && len(r.toks[i+2].text) == 4 {
			z.last = i + 2
		}
		z.entry, z.known = place.ByZIP(z.code)
		if !z.known && !r.asked(fitcheck.TopicPlace) && !r.wordAt(i-1, "zip", "code", "zipcode", "is", "postal") &&
			!place.Military(r.stateBefore(i)) {
			continue
		}
		out = append(out, z)
	}
	return out
}

// spokenZIP: five digits told one by one: "zip is four four oh one two".
func (r *reader) spokenZIP() (zipAt, bool) {
	if !r.asked(fitcheck.TopicPlace) && !r.wordsIn(0, len(r.toks), "zip", "zips", "zipcode", "postal") {
		return zipAt{}, false
	}
	var code [5]byte
	n, first := 0, 0
	for i := range r.toks {
		d := r.spokenDigit(i)
		if r.toks[i].used {
			d = -1
		}
		switch {
		case d < 0 && n == 5:
			return r.zipInWords(string(code[:]), first, i-1)
		case d < 0 || n == 5:
			n = 0
			continue
		case n == 0:
			first = i
		}
		code[n] = byte('0' + d)
		n++
	}
	if n == 5 {
		return r.zipInWords(string(code[:]), first, len(r.toks)-1)
	}
	return zipAt{}, false
}

func (r *reader) zipInWords(code string, first, last int) (zipAt, bool) {
	z := zipAt{code: code, first: first, last: last}
	z.entry, z.known = place.ByZIP(code)
	return z, z.known
}

// wordsAfterBy: "it would go to 98225 by truck", "need 20 by Friday": what follows "by" is no other
// side.
func (r *reader) wordsAfterBy(i int) bool {
	return r.wordAt(i-1, "by") &&
		(i < len(r.toks) && monthWords.has(r.toks[i].text) || r.among(i, byDates) ||
			r.wordAt(i, "the") && r.wordAt(i+1, "end", "time", "weekend", "holidays", "first", "middle"))
}

func (r *reader) afterCode(i int) bool {
	j := i - 1
	if r.markAt(j, '.') && r.wordAt(j-1, "floor", "room", "lot", "road") {
		return false // "a condo, top floor. 23220 is the zip"
	}
	for r.markAt(j, '#') || r.markAt(j, '.') || r.markAt(j, ':') || r.wordAt(j, "number", "no", "is", "es", "numero") {
		j--
	}
	if r.gateCode(j) || j < i-1 && r.wordsIn(j+1, i, "number", "no", "numero") && r.among(j, codeOwners) {
		return true // "our vendor number is 55821"
	}
	if r.wordAt(i-1, "is", "es") && r.wordAt(j, "box", "floor", "road", "room", "route", "part", "lot", "exit", "since") {
		return false
	}
	return j >= 0 && r.among(j, beforeCode) && !r.wordAt(j, "road", "st", "ave")
}

// gateCode: "the gate code is 55821", "lockbox 55821".
func (r *reader) gateCode(i int) bool {
	return r.wordAt(i, "code", "codigo") &&
		r.wordAt(i-1, "gate", "door", "lockbox", "access", "entry", "alarm", "keypad", "building") ||
		r.wordAt(i, "lockbox", "keypad") ||
		r.wordAt(i, "porton") && r.wordsIn(max(0, i-4), i, "codigo")
}

func (r *reader) stateBefore(i int) string {
	if i < 1 || i > len(r.toks) || r.toks[i-1].kind != wordToken {
		return ""
	}
	code, _ := place.State(r.toks[i-1].text)
	return code
}

func (r *reader) zipFact(z zipAt) {
	first := z.first
	if !z.known {
		r.militaryOrUnknown(z)
		return
	}
	r.use(first, z.last)
	if f, ok := r.townBefore(first, z.entry.State); ok && !r.personBefore(f, z) { // its words tell nothing of the language
		r.name(f.first, first-1)
	}
	p := fitcheck.Place{City: z.entry.City, State: z.entry.State, ZIP: z.code}
	r.fact(fitcheck.TopicPlace, 0, p, first, z.last)
}

// personBefore: what names a town of the ZIP code's state is a person's name: "this is
// Hope, 66044", "Faye O'Dell. 78501", and unasked "Bill Ray 43612 toledo".
func (r *reader) personBefore(f found, z zipAt) bool {
	if f.City == z.entry.City {
		return false
	}
	if !r.asked(fitcheck.TopicName) {
		return f.first == 1 && z.first == 2 && r.givenAt(0) && !r.notByPlace(0)
	}
	if _, known := place.WellKnown(r.toks[f.first].text); known {
		return false // "Austin, 78660"
	}
	return r.givenAt(f.first) && (r.toks[f.first+1].kind == markToken || f.first == 0 || r.introEnds(f.first-1)) ||
		r.givenAt(f.first-1) &&
			(r.toks[z.first-1].kind == markToken ||
				f.first == z.first-1 && (f.first == 1 || r.opensClause(f.first-1) || r.introEnds(f.first-2)))
}

// militaryOrUnknown: a ZIP code that the table lacks.
func (r *reader) militaryOrUnknown(z zipAt) {
	r.use(z.first, z.last)
	if code := r.stateBefore(z.first); place.Military(code) {
		p := fitcheck.Place{State: code, ZIP: z.code}
		first := z.first - 1
		if r.wordAt(first-1, "apo", "fpo", "dpo") {
			first--
			p.City = map[string]string{"apo": "APO", "fpo": "FPO", "dpo": "DPO"}[r.toks[first].text]
		}
		r.use(first, z.last)
		r.fact(fitcheck.TopicPlace, 0, p, first, z.last)
		return
	}
	r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, z.first, z.last)
}
