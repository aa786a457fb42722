package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// adviceAsked asks what to choose: "what would you advise?", "which do you recommend", "¿cuál me recomienda?".
var adviceAsked = regexp.MustCompile(`(?i)\b(what|which|any|whats|cu[aá]l(es)?|qu[eé])\b[^.?!\n]{0,40}` +
	`\b(advise|advice|recommend|recommendations?|suggest|suggestions?|` +
	`(would|do|should) (you|u|i|we) (get|pick|choose|take|go with|use|do)|` +
	`(is|are|works?) (best|better)|(me |nos )?(recomiendan?|aconsejan?|sugieren?|conviene|` +
	`recomendar[ií]an?)|(es|ser[ií]a) (el |la )?mejor)\b`)

// advisedOn are the choices of which the question itself tells what is usual, with the words that name each.
var advisedOn = []advised{
	{fitcheck.TopicLayers, regexp.MustCompile(`(?i)\b(layers?|single|double|triple|capas?)\b`)},
	{fitcheck.TopicMaterial, regexp.MustCompile(`(?i)\b(acrylic|polycarbonate|material|acr[ií]lico|policarbonato)\b`)},
}

type advised struct {
	topic fitcheck.Topic
	named *regexp.Regexp
}

// advise answers who asks what to choose, in place of the shop's people, with what is usual; the choice stays open.
func (t *turn) advise(text string) {
	if !adviceAsked.MatchString(text) || len(t.heard.answers) > 0 {
		return
	}
	named := slices.ContainsFunc(advisedOn, func(a advised) bool { return a.named.MatchString(text) })
	for _, a := range advisedOn {
		told := slices.ContainsFunc(t.heard.entries, func(e Entry) bool { return e.Topic == a.topic })
		if !t.isAsked(a.topic) || told || named && !a.named.MatchString(text) || !t.sellsAll(a.topic) {
			continue
		}
		t.heard.answers = append(t.heard.answers, t.line("advice."+string(a.topic), 0, nil))
		t.heard.dontKnow = slices.DeleteFunc(t.heard.dontKnow, func(k Ask) bool { return k.Topic == a.topic })
	}
}

// sellsAll says whether there is all to choose from that the question names.
func (t *turn) sellsAll(topic fitcheck.Topic) bool {
	sold := t.sold(topic)
	return len(sold) == 0 || len(sold) >= usuallySold[topic]
}
