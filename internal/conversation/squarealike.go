package conversation

import (
	"regexp"

	"example.com/intake-bot/internal/fitcheck"
)

// oneWay says that a number is of one side only.
var oneWay = regexp.MustCompile(`(?i)\b(one (way|side|direction)|wide|width|long|length|tall|high|across|short|other|` +
	`(de )?(un|el otro) lado|ancho|largo|so far|por lo pronto)\b`)

// squared makes a lone number both sides, where another part of the same skylight is square and so near that the one
// lies about the other: a plastic of 26 x 26 and an opening of "24".
func (t *turn) squared(v fitcheck.Value, topic fitcheck.Topic, unit int, text string) fitcheck.Value {
	s, ok := v.(fitcheck.Size)
	if !ok || s.One == 0 || !topic.OfSize() || !t.isAsked(topic) || oneWay.MatchString(text) || t.talk.Value(topic, unit) != nil {
		return v
	}
	both := fitcheck.Size{Width: s.One, Length: s.One, Resolution: s.Resolution}
	for _, other := range fitcheck.SizeTopics {
		known, _ := t.talk.Value(other, unit).(fitcheck.Size)
		if other != topic && known.Width > 0 && known.Width == known.Length && near(known, both) {
			return both
		}
	}
	return v
}
