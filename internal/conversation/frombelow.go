package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// cantGetUp says that the customer does not get to the skylight: "i can't get on the roof", "no
// alcanzo", "no ladder here", "I don't do heights".
var cantGetUp = regexp.MustCompile(`(?i)\b((can'?t|cannot|can not|couldn'?t|won'?t|(not|isn'?t|aren'?t) (able|going|gonna)( to)?|unable to|no way (for me )?to|(don'?t|do not) (want|dare|like)( to)?|(afraid|scared) (to|of)|too old to|hate|not) (\w+ ){0,2}(get|getting|go|going|climb|climbing|be|being) (\w+ ){0,2}(roofs?|up|ladders?)\b|` +
	`(can'?t|cannot|can not|not|no way to|unable to|don'?t|do not|won'?t) (\w+ )?climb(ing)?\b|` +
	`(can'?t|cannot|can not|no way to) (\w+ )?(reach|get to|get at) (it|that|there|that high|` +
	`(the|that|its) (plastic|dome|skylight|roof|top|edges?|lip|frame|metal))\b|` +
	`(i'?m|am|we'?re|are|is) not (going|getting|climbing) (\w+ ){0,2}(up|roofs?)\b|((don'?t|do not) (have|own) a|have no|no|without a|(need|needs) a) (long |longer |tall |taller |big |bigger )?ladder\b|(don'?t|do not|not (good|great) with|afraid of|scared of|not ok with) (do |like )?(heights|roofs|ladders)\b|` +
	`(roof|house|ceiling|it) (is|it'?s|looks|'s) (\w+ )?too (steep|high|tall)\b|too (steep|high|tall) (for me|to (reach|climb|get to|get at))\b|ladder (is|isn'?t|'s|won'?t|doesn'?t|is not) (too short|(\w+ )?(tall|long|high) enough|reach)\b|` +
	`(no|not) (puedo|podemos|quiero|pienso|debo|voy a|me atrevo a|me animo a) (subir\w*|treparme|trepar|alcanzar\w*)|no (lo |la |le )?(alcanzo|alcanzamos)\b|(no tengo|no tenemos|no hay|sin) escalera|(me da |le tengo )?miedo (de |a )?(subir\w*|las? alturas?)|(est[aá]|queda|es) (muy|demasiado|bien) (alto|alta|empinado)\b)`)

// neitherWay answers "… or send a photo; if neither works, just say so".
var neitherWay = regexp.MustCompile(`(?i)^\W*(?:(?:no|nope|nah|sorry|sir|ma'?am|lo siento|perd[oó]n|pues|well)\W+)*(?:(?:no|nope|nah|neither|none|nothing)(?: (?:of (?:those|them|that|the two|it)|one|works?|is possible|will work|can do|i can'?t|sir|ma'?am|sorry|thanks))*|(?:i )?(?:can'?t|cannot|can not)(?: (?:do )?(?:either|any|that|those|it|neither)(?: (?:either|one|of (?:them|those|that)))?)?|(?:not )?(?:either|neither)(?: one)?(?: works?)?|(?:that|it|those|they) (?:won'?t|don'?t|doesn'?t) work(?: either)?|ningun[oa](?: de (?:l[oa]s dos|es[oa]s))?|ni una ni otra|tampoco(?: (?:puedo|se puede|sirve))?|no (?:puedo|se puede|funciona|sirve)(?: tampoco| ningun[oa])?)\W*$`)

// photoComes answers it with the photo: "I'll send a pic", "le mando una foto".
var photoComes = regexp.MustCompile(`(?i)\b((i'?ll|ill|i will|i can|can|will|let me|gonna|going to|we'?ll|i could) (\w+ ){0,3}(send|text|take|get|snap|email|shoot) (\w+ ){0,3}(photos?|pictures?|pics?)\b|(le|les|te)? ?(mando|env[ií]o|paso|puedo (mandar|enviar)(le)?|voy a (mandar|enviar)(le)?|tomo|mandar[eé]) (\w+ ){0,2}fotos?\b)`)

// notComes takes such words back.
var notComes = regexp.MustCompile(`(?i)\b(can'?t|cannot|won'?t|don'?t|not|unable|no (puedo|voy|tengo))\b|\?`)

// belowTopics are measured up there; each has another that can be had from indoors.
var belowTopics = []fitcheck.Topic{fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening, fitcheck.TopicRetainerOutside, fitcheck.TopicFrameInside,
	fitcheck.TopicCurbOutside, fitcheck.TopicCurbDiagonals, fitcheck.TopicBulgeBase}

// fromBelow tells once, in place of how to lay the tape up there, what can be measured from indoors
// and that a photo does.
func (t *turn) fromBelow() bool {
	if !t.tellsBelow() {
		return false
	}
	t.say.picture = fitcheck.TopicCurbInside
	t.say.add(t.vary("howto.indoors", nil))
	for _, a := range t.talk.Memory.Asking {
		t.talk.Memory.Tries[a]++ // the question stays open, which is asking it once more
	}
	return true
}

// tellsBelow says whether what helps from indoors is told now: they don't get up, were asked for
// what is measured up there and have told nothing else.
func (t *turn) tellsBelow() bool {
	m := &t.talk.Memory
	return t.heard.below && m.Said["howto.indoors"] == 0 && len(m.Asking) > 0 && len(t.heard.entries) == 0 && slices.Contains(belowTopics, m.Asking[0].Topic) &&
		!m.LetGo[m.Asking[0]] // asked twice already
}

// measuredBelow lets a measure go that can't be taken, once the one from indoors has come for it, or
// that can't be had either.
func (t *turn) measuredBelow(text string) {
	m := &t.talk.Memory
	h := &t.heard
	if m.Said["howto.indoors"] == 0 && !h.below {
		return
	}
	h.comes = h.nothing() && len(m.Asking) > 0 && slices.Contains(belowTopics, m.Asking[0].Topic) && photoComes.MatchString(text) && !notComes.MatchString(text)
	for _, a := range m.Asking {
		still := m.Said["howto.indoors"] > 0 && (t.heard.below || neitherWay.MatchString(text)) &&
			len(t.heard.entries) == 0 // told what else helps, and they don't get there either
		if slices.Contains(belowTopics, a.Topic) && (still || t.complete(Ask{fitcheck.TopicCurbInside, a.Unit})) {
			m.LetGo[a] = true
			if still && !slices.Contains(t.heard.dontKnow, a) {
				t.heard.dontKnow = append(t.heard.dontKnow, a)
			}
		}
	}
}
