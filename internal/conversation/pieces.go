package conversation

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// pieces are what is to be read at once, since people send one thought in several
// messages; of a mail that answers in between what it quotes, each piece by itself.
func (t *turn) pieces(in []Message) []Block {
	asked := topicsOf(t.talk.Memory.Asking)
	if t.summed() && len(asked) == 0 {
		asked = []fitcheck.Topic{fitcheck.TopicConfirm} // what is written now puts the summary right
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
