package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	phoneRefusedLeads = wordsOf(`call text use me at on number my the llame llamen al`)
	phoneOwners       = wordsOf(`is was thats that s my the es era mi el an a`)
)

// contacts takes mail addresses and phone numbers as facts.
func (r *reader) contacts() {
	for i := range r.toks {
		if t := &r.toks[i]; t.kind == mailToken || t.kind == phoneToken || t.kind == linkToken {
			t.used = true
		}
	}
	if i := r.contactOf(mailToken); i >= 0 {
		r.fact(fitcheck.TopicEmail, 0, fitcheck.Text(strings.ToLower(r.said(i, i))), i, i)
	}
	if i := r.contactOf(phoneToken); i >= 0 {
		r.fact(fitcheck.TopicPhone, 0, fitcheck.Text(r.toks[i].text), i, i)
	}
	r.spokenContacts()
	r.shortPhone()
}

// phoneRefused: "not 555…", "don't call 555…", "555… is my old number".
func (r *reader) phoneRefused(i int) bool {
	if r.wordAt(i-1, "not", "no") {
		return true
	}
	if k := i - 1; r.wordAt(k, "fax") ||
		r.wordAt(k, "is", "number", "line", "es", "no") && r.wordsIn(max(0, k-2), k, "fax") ||
		r.markAt(k, ':') && r.wordAt(k-1, "fax") {
		return true // "fax is 307-555-0110"
	}
	k := i - 1
	for r.among(k, phoneRefusedLeads) {
		k--
	}
	if r.wordAt(k, "dont", "never") {
		return true
	}
	k = i + 1
	for r.among(k, phoneOwners) {
		k++
	}
	return k > i+1 && r.wordAt(k, "old", "wrong", "former", "viejo", "anterior", "fax")
}

// shortPhone: seven digits without an area code are asked about.
func (r *reader) shortPhone() {
	for i := range r.toks {
		last := r.sevenDigits(i)
		if last < 0 {
			continue
		}
		if r.asked(fitcheck.TopicPhone) || r.wordAt(i-1, "at", "number", "cell", "phone", "call", "text", "is", "al", "numero") {
			r.use(i, last)
			r.unclear(fitcheck.TopicPhone, 0, WhyNumber, nil, i, last)
		}
	}
	if !r.asked(fitcheck.TopicPhone) || r.known(fitcheck.TopicPhone) || r.doubtful(fitcheck.TopicPhone) {
		return
	}
	for i := range r.toks {
		if t := &r.toks[i]; t.kind == numToken && len(t.text) >= 7 && !t.used {
			t.used = true
			r.unclear(fitcheck.TopicPhone, 0, WhyNumber, nil, i, i)
			return
		}
	}
}

// sevenDigits is the last token of "555-0164" or, where a phone was asked for, "555 0164"; -1
// where there is none.
func (r *reader) sevenDigits(i int) int {
	last := i + 2
	if r.asked(fitcheck.TopicPhone) && i+1 < len(r.toks) && r.toks[i+1].kind == numToken {
		last = i + 1
	}
	if last >= len(r.toks) {
		return -1
	}
	a, b := &r.toks[i], &r.toks[last]
	if a.kind != numToken || b.kind != numToken || len(a.text) != 3 || len(b.text) != 4 || a.used && b.used {
		return -1
	}
	if dash := &r.toks[i+1]; last == i+2 && (!dash.mark('-') && !dash.mark('.') || !dash.glued || !b.glued) {
		return -1
	}
	return last
}
