package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
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
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || len(t.text) != 5 || t.dec > 0 || t.code || t.comma || t.used {
			continue
		}
		if r.markAt(i-1, '#') || r.markAt(i-1, '$') || r.by(i-1) || r.by(i+1) || r.unitAt(i+1) != noUnit || r.wordAt(i-1, "not", "no") || r.afterCode(i) {
			continue
		}
		z := zipAt{code: t.text, first: i, last: i}
		if r.markAt(i+1, '-') && r.toks[i+1].glued && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && len(r.toks[i+2].text) == 4 {
			z.last = i + 2
		}
		z.entry, z.known = place.ByZIP(z.code)
		if !z.known && !r.asked(fitcheck.TopicPlace) && !r.wordAt(i-1, "zip", "code", "zipcode", "is", "postal") && !place.Military(r.stateBefore(i)) {
			continue
		}
		out = append(out, z)
	}
	return out
}

func (r *reader) afterCode(i int) bool {
	j := i - 1
	for r.markAt(j, '#') || r.markAt(j, '.') || r.wordAt(j, "number", "no") {
		j--
	}
	return j >= 0 && r.toks[j].kind == wordToken && beforeCode[r.toks[j].text] && !r.wordAt(j, "road", "st", "ave")
}

func (r *reader) stateBefore(i int) string {
	if i < 1 || r.toks[i-1].kind != wordToken {
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
	p := fitcheck.Place{City: z.entry.City, State: z.entry.State, ZIP: z.code}
	r.fact(fitcheck.TopicPlace, 0, p, first, z.last)
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
