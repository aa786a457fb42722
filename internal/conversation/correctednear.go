package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// setsRight are words by which something told before is put right.
var setsRight = regexp.MustCompile(`(?i)\b(sorry|actually|wait|oops|whoops|correction|scratch that|my mistake|my bad|misread|i meant|meant to say|` +
	`re-?measured|should (be|have been|say)|perd[oó]n|disculpe|me equivoqu[eé]|en realidad|quise decir|digo|mejor dicho)\b`)

// veryNear is how far a size that is put right lies from what stood, where only a correcting word and the numbers
// tell which it is.
const veryNear = fitcheck.Inch

// correctedNear takes a size that comes with a correcting word for the one known measure that it lies near:
// "sorry the outside is 25 1/4 x 49 1/2", where the plastic stands as 25 1/2 x 49 1/2.
func (t *turn) correctedNear(u reading.Unclear, text string) (reading.Fact, bool) {
	now, ok := u.Guess.(fitcheck.Size)
	if !ok || u.Why != reading.WhyWhich || !setsRight.MatchString(text) || slices.ContainsFunc(u.Candidates, t.isAsked) || ofBox(u.Candidates) {
		return reading.Fact{}, false
	}
	var found []reading.Fact
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		if u.Unit > 0 && u.Unit != unit {
			continue
		}
		for _, topic := range fitcheck.SizeTopics {
			if stands, ok := t.talk.Value(topic, unit).(fitcheck.Size); ok && misreadOf(stands, now) {
				found = append(found, reading.Fact{Topic: topic, Unit: unit, Value: now, Said: u.Said})
			}
		}
	}
	if len(found) != 1 {
		return reading.Fact{}, false
	}
	return found[0], true
}

// misreadOf: the one size may be what the other was misread as.
func misreadOf(a, b fitcheck.Size) bool {
	if a.Diameter > 0 || b.Diameter > 0 {
		return a.Diameter > 0 && b.Diameter > 0 && distance(a.Diameter, b.Diameter) <= veryNear
	}
	return a.Complete() && b.Complete() && len(a.Sides)+len(b.Sides) == 0 &&
		distance(a.Width, b.Width) <= veryNear && distance(a.Length, b.Length) <= veryNear
}

// ofBox: the words name the box, whichever face of it: that is no other part's measure.
func ofBox(candidates []fitcheck.Topic) bool {
	return len(candidates) > 0 && !slices.ContainsFunc(candidates, func(c fitcheck.Topic) bool {
		return c != fitcheck.TopicCurbOutside && c != fitcheck.TopicCurbInside && c != fitcheck.TopicCurbDiagonals
	})
}

// unplaced is a size that was told and is in no measure of the list, since what it is of was asked and never
// said; "" for none.
func (t *turn) unplaced() string {
	p := t.talk.Memory.Unplaced
	if p == nil || len(p.Candidates) == 0 || slices.ContainsFunc(p.Candidates, func(c fitcheck.Topic) bool { return t.complete(Ask{c, p.Unit}) }) {
		return ""
	}
	return p.Said
}
