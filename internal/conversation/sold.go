package conversation

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// What the shop sells of a choice: a question offers no more than that, nothing is asked where
// there is but one to choose, and what a customer wants beyond it goes to a person.

// sold is what the shop sells of a choice; empty where it sells all that there is.
func (t *turn) sold(topic fitcheck.Topic) []string {
	sells := t.shop.Rules.Sells
	switch topic {
	case fitcheck.TopicLayers:
		words := make([]string, len(sells.Layers))
		for i, n := range sells.Layers {
			words[i] = strconv.Itoa(n)
		}
		return words
	case fitcheck.TopicMaterial:
		return sells.Materials
	case fitcheck.TopicColor:
		return sells.Colors
	case fitcheck.TopicFinish:
		return sells.Finishes
	}
	return nil
}

// usuallySold is what the questions name when nothing else is set.
var usuallySold = map[fitcheck.Topic]int{fitcheck.TopicLayers: 3, fitcheck.TopicMaterial: 2, fitcheck.TopicColor: 3, fitcheck.TopicFinish: 3}

// noChoice says whether the shop sells but one of a choice.
func (t *turn) noChoice(topic fitcheck.Topic) bool { return len(t.sold(topic)) == 1 }

// offer words a choice, as a question or in a list, of which the shop does not sell all that
// the usual words name; "" where those will do.
func (t *turn) offer(key string, topic fitcheck.Topic) string {
	sold := slices.DeleteFunc(slices.Clone(t.sold(topic)), func(w string) bool { return w == fitcheck.ColorOther })
	if len(sold) == 0 || len(sold) >= usuallySold[topic] {
		return ""
	}
	words := make([]string, len(sold))
	for i, w := range sold {
		words[i] = t.word(topic, w)
	}
	return t.vary(key, wording.Args{"label": t.label(topic), "sold": strings.Join(words, ", ")})
}

// notSold are the choices of a unit that the shop does not sell, for staff. A color or a
// finish is a finding of the fit check and no hindrance: it can often be had.
func (t *turn) notSold(u fitcheck.Unit) []string {
	var out []string
	if u.Layers > 0 && len(t.shop.Rules.Sells.Layers) > 0 && !slices.Contains(t.shop.Rules.Sells.Layers, u.Layers) {
		out = append(out, fmt.Sprintf("not sold here: %d layers", u.Layers))
	}
	if u.Material != "" && len(t.shop.Rules.Sells.Materials) > 0 && !slices.Contains(t.shop.Rules.Sells.Materials, u.Material) {
		out = append(out, "not sold here: "+u.Material)
	}
	return out
}
