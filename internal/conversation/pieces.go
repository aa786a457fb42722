package conversation

import (
	"regexp"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// pieces are what is to be read at once, since people send one thought in several
// messages; of a mail that answers in between what it quotes, each piece by itself.
func (t *turn) pieces(in []Message) []Block {
	asked := topicsOf(t.talk.Memory.Asking)
	if t.summed() && len(asked) == 0 {
		asked = []fitcheck.Topic{fitcheck.TopicConfirm} // what is written now puts the summary right
		if t.numberOpen() && justNumber.MatchString(joined(in)) {
			asked = append(asked, fitcheck.TopicCount)
		}
	}
	var out []Block
	var plain []Message
	for _, m := range in {
		if len(m.Blocks) == 0 {
			plain = append(plain, m)
			continue
		}
		out = append(out, t.answers(m.Blocks, asked)...)
	}
	if text := joined(plain); strings.TrimSpace(text) != "" {
		out = append([]Block{{Asked: asked, Text: text}}, out...)
	}
	return out
}

// justNumber is a word with no others around it but those that go with a number of pieces: "oh,
// just 2 of them"; "call me after 5" is none.
var justNumber = regexp.MustCompile(`(?i)^\W*(?:(?:oh|and|sorry|forgot|i|we|need|want|just|only|it'?s|the|ok|yes|s[ií]|y|perd[oó]n|quiero|necesito|ser[ií]an?|es|s[oó]lo|solamente|nada m[aá]s)\W+)*` +
	`\w+(?:\W+(?:of|them|those|please|thanks|thank|you|dome|domes|skylights?|total|domos?|tragaluz|tragaluces|por|favor|gracias|nada|m[aá]s))*\W*$`)

// numberOpen says whether the summary asked how many, and got a yes alone.
func (t *turn) numberOpen() bool {
	a := Ask{fitcheck.TopicCount, 1}
	return t.talk.UnitCount() == 1 && t.talk.Memory.Tries[a] > 0 && t.talk.Value(a.Topic, a.Unit) == nil
}

// answers are a mail's pieces; one with no question above it answers what the talk asks.
func (t *turn) answers(blocks []Block, asked []fitcheck.Topic) []Block {
	var out []Block
	for _, b := range blocks {
		if strings.TrimSpace(b.Text) == "" {
			continue
		}
		if len(b.Asked) == 0 {
			b.Asked = asked
		}
		out = append(out, b)
	}
	return out
}
