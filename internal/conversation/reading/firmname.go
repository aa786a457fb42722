package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// A firm that stands where a name was asked, and a title before a name.

var (
	firmNameLeads = wordsOf(`hi hello hey hola morning good afternoon this is its`)
	firmNouns     = wordsOf(`roofing construction properties management llc inc builders contracting contractors
		exteriors remodeling homes company realty rentals glass glazing storage rentals apartments church school farms
		ranch motors supply services restaurant bakery maintenance mantenimiento techos construcciones`)
	firmEnds = wordsOf(`glass roofing construction builders exteriors glazing homes properties contracting llc inc
		co mgmt mgt management realty rentals`)
	titledNames = wordsOf(`father sister st jr sr coach chief major don dona judge`)
)

// firmName: "Rick w/ Tri-County Roofing, 60540", "Mike from Apex Roofing": a given name at the
// start, and the firm after it.
func (r *reader) firmName() bool {
	first := 0
	for r.among(first, firmNameLeads) || first < len(r.toks) && r.toks[first].kind == markToken {
		first++
	}
	if !r.givenAt(first) || r.toks[first].used || len(r.Asked) > 0 && !r.asked(fitcheck.TopicName) && !r.asked(fitcheck.TopicPlace) {
		return false
	}
	last := first
	if last+1 < len(r.toks) && r.surname(last+1) && !r.wordAt(last+1, "with", "w", "from", "at") {
		last++
	}
	i := last + 1
	if r.markAt(i, ',') || r.markAt(i, '-') {
		i++
	}
	if !r.wordAt(i, "with", "w", "from", "at", "of", "de") {
		return false
	}
	for i++; i < len(r.toks) && i < last+9 && !r.sentenceEnd(i) && !r.markAt(i, ','); i++ {
		if r.among(i, firmNouns) {
			r.nameFact(first, last)
			return true
		}
	}
	return false
}

// firmGoesOn: a firm's name goes on with the word: "Ridgeway Property Mgmt".
func (r *reader) firmGoesOn(i int) bool {
	return r.among(i, firmEnds) ||
		r.wordAt(i, "property", "building", "facility", "home") && r.wordAt(i+1, "mgmt", "mgt", "management", "services", "co")
}

// titledName: "… old ones are cracked. Pastor Glen Hovland": a title and a name that are a
// sentence of their own.
func (r *reader) titledName(first, end int) bool {
	if !r.titleOrInitial(first) || len(r.toks[first].text) < 3 || end <= first ||
		end-first > 3 || r.among(first, titledNames) && len(r.toks) < 4 {
		return false
	}
	if first > 0 && !r.sentenceEnd(first-1) && !r.markAt(first-1, ',') ||
		end+1 < len(r.toks) && !r.sentenceEnd(end+1) && !r.markAt(end+1, ',') {
		return false
	}
	for i := first + 1; i <= end; i++ {
		if !r.surname(i) && !r.markAt(i, '.') {
			return false
		}
	}
	return true
}

// notOfName takes back what a word of the name had seemed to say: "Saludos, Blanca" is no color.
func (r *reader) notOfName(first, last int) {
	said := strings.ToLower(r.said(first, last))
	r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool {
		return (chosen(f.Topic) || f.Topic == fitcheck.TopicUse || f.Topic == fitcheck.TopicProblem) && len(f.Said) > 1 &&
			strings.Contains(said, strings.ToLower(f.Said)) &&
			slices.ContainsFunc(r.where, func(w saidAt) bool { return w.topic == f.Topic && first <= w.first && w.first <= last })
	})
}
