package conversation

import (
	"regexp"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// byname is what somebody is called beside the name that they give: "…, pero me dicen Lupe",
// "… but everyone calls me Bob".
var byname = regexp.MustCompile(`(?i)[\s,;.(]*\b(?:(?:pero|but|aunque|though|y|and) )?(?:(?:todos|todo el mundo|everyone|everybody|people|folks|friends|they|most people|mis amigos) )?(?:me (?:dicen|llaman|conocen como)|calls? me|know me as|(?:i )?(?:go|goes) by)\s+[\p{L}'-]+\)?`)

// withoutByname leaves a byname out where the whole name was given before it: the surname is
// what an order is found by.
func (t *turn) withoutByname(text string, asked []fitcheck.Topic) string {
	at := byname.FindStringIndex(text)
	if at == nil || len(strings.Fields(text[:at[0]])) < 2 {
		return text
	}
	without := text[:at[0]] + text[at[1]:]
	if nameIn(t.read(text, asked)) < 2 && nameIn(t.read(without, asked)) >= 2 {
		return without
	}
	return text
}

// nameIn is of how many words the name is that a message tells.
func nameIn(r reading.Reading) int {
	for _, f := range r.Facts {
		if name, ok := f.Value.(fitcheck.Text); ok && f.Topic == fitcheck.TopicName {
			return len(strings.Fields(string(name)))
		}
	}
	return 0
}
