package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// firmInLine: "ann bell bell roofing duluth 55805. cracked dome": a hurried opening with the person, the
// firm and the place, and no sign between them. A second given name is left to the question: nobody can tell
// where the name ends.
func (r *reader) firmInLine() bool {
	first := 0
	for r.among(first, firmNameLeads) || first < len(r.toks) && r.toks[first].kind == markToken {
		first++
	}
	if !r.hurriedName(first) || r.among(first+1, firmNouns) || r.givenAt(first+1) && r.toks[first+1].text != r.wordText(first+2) {
		return false
	}
	for i := first + 2; i <= first+5 && i < len(r.toks); i++ {
		if r.toks[i].kind != wordToken || r.toks[i].used || r.toks[i].word != nil && r.toks[i].word.filler {
			return false
		}
		if r.among(i, firmNouns) && i > first+2 {
			r.nameFact(first, first+1)
			return true
		}
	}
	return false
}

// familyNotTown: "Paul Yoder, 46526": the family's name is a town of the same state as well, and the ZIP code
// is another's.
func (r *reader) familyNotTown(first, end int) bool {
	if end != first+1 || !r.toks[end].used || !r.markAt(end+1, ',') {
		return false
	}
	for _, f := range r.out.Facts {
		if p, ok := f.Value.(fitcheck.Place); ok {
			return p.City != "" && !strings.EqualFold(p.City, r.said(end, end))
		}
	}
	return false
}
