package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// styleLate takes in words what a photo was to show: "ok i looked. its plastic with a metal frame round it, sits up on a
// box", read as the answer to what is up there.
func (t *turn) styleLate(r reading.Reading, text string) reading.Reading {
	style := fitcheck.TopicStyle
	told := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == style })
	shows := t.isAsked(fitcheck.TopicPhotos) && t.photoTopic() == style
	if told || !shows || t.talk.UnitCount() > 1 || t.talk.text(style, 1) != fitcheck.StyleUnsure {
		return r
	}
	for _, f := range t.read(text, []fitcheck.Topic{style}).Facts {
		if f.Topic == style && f.Value != fitcheck.Choice(fitcheck.StyleUnsure) {
			r.Facts = append(slices.Clone(r.Facts), f)
		}
	}
	return r
}
