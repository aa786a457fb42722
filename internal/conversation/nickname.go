package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// wholeFeet is a size as skylights are called by: "4 by 8 foot", "4' x 8'".
var wholeFeet = regexp.MustCompile(`(?i)^\D*\d+\W*(ft|foot|feet|pies?|')?\s*(x|by|por)\s*\d+[\s-]*(ft|foot|feet|pies?|')\W*$`)

// withoutNickname leaves out a size in whole feet where the measure that it would replace was
// taken with a tape and lies close by: it is what such a skylight is called.
func (t *turn) withoutNickname(r reading.Reading) reading.Reading {
	r.Facts = slices.DeleteFunc(slices.Clone(r.Facts), func(f reading.Fact) bool {
		now, ok := f.Value.(fitcheck.Size)
		unit := f.Unit
		if unit == 0 {
			unit = t.focus()
		}
		known, told := t.talk.Value(f.Topic, unit).(fitcheck.Size)
		return ok && told && known.Complete() && now.Complete() && inInches(known) && wholeFeet.MatchString(f.Said) && near(known, now)
	})
	return r
}
