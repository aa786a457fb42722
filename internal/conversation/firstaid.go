package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// lostTurns is after how many turns in a row without anything usable a person takes
// over: nobody is to feel trapped.
const lostTurns = 3

// hurt finds that somebody is hurt. It would rather see one too many: all that follows
// is a word about the emergency number and a person who looks at once.
var hurt = regexp.MustCompile(`(?i)\b(hurt|injured|bleeding|unconscious|ambulance|fell (through|off|in)|broke (his|her|my) (leg|arm|back|neck)|herid[oa]|lastimad[oa]|sangra(ndo)?|ambulancia|inconsciente|se cay[oó] (por|del|de))\b`)

// notHurt are the same words where they speak of things.
var notHurt = regexp.MustCompile(`(?i)\b((limb|branch|tree|hail|ice|rama|[aá]rbol|raccoon|coon|squirrel|possum|opossum|bird|cat|bear|deer|rock|brick|ball|mapache|ardilla|gato|p[aá]jaro)\s+(\w+\s+){0,2}(fell|se cay[oó])|(won't|wont|doesn't|doesnt|can't|cant|not|nobody|no one|n?either)\s+(\w+\s+)?hurt|(nobody|no one|noone|none of us)(['’]?s)?\s+((is|was|got|gets|been|has|seriously|badly|even)\s+){0,3}(hurt|injured)|nadie)\b`)

// emergency notes what is urgent in the messages of this turn.
func (t *turn) emergency(text string) {
	m := &t.talk.Memory
	m.Hurt = hurt.MatchString(text) && !notHurt.MatchString(text)
	problems, _ := t.talk.words(fitcheck.TopicProblem)
	open := slices.Contains(problems, fitcheck.ProblemHoleOpen)
	m.Urgent = m.Urgent || m.Hurt || t.heard.asks(reading.RequestUrgent) || open
	m.Danger = m.Hurt || open || m.Urgent && slices.Contains(problems, fitcheck.ProblemLeaking)
}

// firstAid says once what matters before everything else, and has staff told now.
func (t *turn) firstAid() {
	m := &t.talk.Memory
	if m.Urgent && !m.Rushed {
		m.Rushed, t.out.Alert = true, true
	}
	if !m.Danger || m.FirstAid && !m.Hurt {
		return
	}
	m.FirstAid = true
	key := "safe.urgent"
	if m.Hurt {
		m.Introduced = true
		key = "safe.hurt"
	}
	t.say.add(t.line(key, 0, wording.Args{"shop": t.shop.Name}))
}
