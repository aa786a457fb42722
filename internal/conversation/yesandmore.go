package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
)

// yesAndMore says whether a yes to a measure that was doubtful may stand before another fact: "yes thats what it showed.
// and i want it white like the old one". What tells a length, or doubts, is no such answer.
func yesAndMore(r reading.Reading, text string) bool {
	length := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic.OfLength() }) ||
		slices.ContainsFunc(r.Unclear, func(u reading.Unclear) bool { return u.Topic == nil || u.Topic.OfLength() })
	return len(r.Facts) > 0 && !length && !measureDoubted.MatchString(text)
}

var measureDoubted = regexp.MustCompile(`(?i)\b(?:about|around|roughly|approx\w*|think|guess|maybe|ish|close|not sure|unsure|` +
	`probably|more or less|m[aá]s o menos|creo|casi|como)\b`)
