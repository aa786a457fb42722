package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// faceSaid: "that's the INSIDE of the hole, not outside", "es por dentro": the size that was told
// last is of this face of the box.
var faceSaid = regexp.MustCompile(`(?i)\b(?:it'?s|thats?|that'?s|that is|that was|those are|those were|i gave you|i measured|es|era|son|eran|medí|medi) (?:just |only |all |actually |really )?(?:the |from |from the |la |lo |el |de |por |la de |lo de )*(inside|indoors|outside|dentro|adentro|fuera|afuera)\b`)

// otherFace takes the size of one face of the box to the other, where the customer says that it
// is the other's.
func (t *turn) otherFace(r reading.Reading, text string) (reading.Reading, bool) {
	e := t.lastSize()
	if e == nil || e.Topic != fitcheck.TopicCurbOutside && e.Topic != fitcheck.TopicCurbInside {
		return r, false
	}
	other := fitcheck.TopicCurbInside
	if e.Topic == other {
		other = fitcheck.TopicCurbOutside
	}
	m := faceSaid.FindStringSubmatch(text)
	if m == nil || t.talk.Value(other, 1) != nil || slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic.OfSize() || f.Topic == fitcheck.TopicProblem }) || faceOf[strings.ToLower(m[1])] != other {
		return r, false
	}
	fact := reading.Fact{Topic: other, Unit: 1, Value: e.Value, Said: e.Said}
	t.talk.retract(e.Topic, 1)
	r.Facts = append(slices.Clone(r.Facts), fact)
	return r, true
}

var faceOf = map[string]fitcheck.Topic{"inside": fitcheck.TopicCurbInside, "indoors": fitcheck.TopicCurbInside, "dentro": fitcheck.TopicCurbInside, "adentro": fitcheck.TopicCurbInside,
	"outside": fitcheck.TopicCurbOutside, "fuera": fitcheck.TopicCurbOutside, "afuera": fitcheck.TopicCurbOutside}
