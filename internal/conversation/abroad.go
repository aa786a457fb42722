package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// canadian is a Canadian postal code (letter-digit-letter digit-letter-digit; D, F, I, O,
// Q and U are not used, W and Z do not begin one: Canada Post addressing guidelines, from
// memory) or the country's name.
var canadian = regexp.MustCompile(`(?i)\b([abceghj-nprstvxy]\d[abceghj-nprstv-z] ?\d[abceghj-nprstv-z]\d|canada|ontario|quebec|alberta|manitoba|saskatchewan)\b`)

// abroad says whether the messages tell of a place outside the US that the reading
// could not take for one inside it.
func (t *turn) abroad(text string) bool {
	unclear := slices.ContainsFunc(t.heard.unclear, func(u reading.Unclear) bool {
		return u.Topic != nil && *u.Topic == fitcheck.TopicPlace
	})
	return unclear && canadian.MatchString(text)
}
