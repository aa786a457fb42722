package conversation

import (
	"regexp"
	"slices"
	"strconv"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// nominalCall is what a kind is called that was named by a nominal size: "2x4".
var nominalCall = regexp.MustCompile(`^([1-9]) ?(?:x|by|por) ?([1-9])$`)

// nominalOf is the size in feet that a kind was called by or is asked about, so that "the 2x4" finds it before it is
// measured.
func (t *turn) nominalOf(unit int) (fitcheck.Size, bool) {
	names := []string{t.talk.Memory.Called[unit]}
	for _, p := range append(slices.Clone(t.talk.Memory.Early), t.talk.Memory.Pending) {
		if p != nil && p.Unit == unit && p.Why == reading.WhyNominal {
			names = append(names, p.Said)
		}
	}
	for _, topic := range fitcheck.SizeTopics {
		names = append(names, t.talk.Memory.Rough[Ask{topic, unit}])
	}
	for _, name := range names {
		if m := nominalCall.FindStringSubmatch(name); m != nil {
			a, _ := strconv.Atoi(m[1]) // a digit each
			b, _ := strconv.Atoi(m[2])
			short, long := fitcheck.Length(min(a, b)), fitcheck.Length(max(a, b))
			return fitcheck.Size{Width: short * fitcheck.Foot, Length: long * fitcheck.Foot}, true
		}
	}
	return fitcheck.Size{}, false
}
