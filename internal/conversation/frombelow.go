package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// cantGetUp says that the customer does not get to the skylight: "i can't get on the roof", "no
// alcanzo", "I don't have a ladder".
var cantGetUp = regexp.MustCompile(`(?i)\b((can'?t|cannot|can not|couldn'?t|won'?t|(not|isn'?t|aren'?t) (able|going|gonna)( to)?|unable to|no way (for me )?to|(don'?t|do not) (want|dare|like)( to)?|(afraid|scared) (to|of)|too old to|hate) (\w+ ){0,2}(get|getting|go|going|climb|climbing|be|being) (\w+ ){0,2}(roofs?|up|ladders?)\b|(can'?t|cannot|can not) (\w+ )?(reach|get to) (it|that|there|that high)\b|(i'?m|am|we'?re|are|is) not (going|getting|climbing) (\w+ ){0,2}(up|roofs?)\b|((don'?t|do not) (have|own) a|have no|no|without a) (long |tall |big )?ladder\b|(no|not) (puedo|quiero|pienso|debo|voy a|me atrevo a|me animo a) (subir\w*|treparme|trepar|alcanzar\w*)|no (lo |la |le )?alcanzo|no tengo escalera|(me da )?miedo (de )?(subir\w*|las? alturas?))`)

// belowTopics are measured up there; each has another that can be had from indoors.
var belowTopics = []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside, fitcheck.TopicFrameInside,
	fitcheck.TopicCurbOutside, fitcheck.TopicCurbDiagonals, fitcheck.TopicBulgeBase}

// fromBelow tells once, in place of how to lay the tape up there, what can be measured from indoors
// and that a photo does.
func (t *turn) fromBelow() bool {
	m := &t.talk.Memory
	if !t.heard.below || m.Said["howto.indoors"] > 0 || len(t.heard.answers)+len(t.heard.dontKnow) > 0 && !t.asksHow() || !slices.Contains(belowTopics, m.Asking[0].Topic) {
		return false
	}
	t.say.picture = fitcheck.TopicCurbInside
	t.say.add(t.vary("howto.indoors", nil))
	return true
}

// measuredBelow lets a measure go that can't be taken, once the one from indoors has come for it.
func (t *turn) measuredBelow() {
	m := &t.talk.Memory
	if m.Said["howto.indoors"] == 0 {
		return
	}
	for _, a := range m.Asking {
		if slices.Contains(belowTopics, a.Topic) && t.complete(Ask{fitcheck.TopicCurbInside, a.Unit}) {
			m.LetGo[a] = true
		}
	}
}
