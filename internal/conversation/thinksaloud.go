package conversation

import (
	"regexp"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
)

// ownWonder is a question to oneself about the old one: "what color is it now its so yellow", "de qué color era".
var ownWonder = regexp.MustCompile(`(?i)\b((what|which) (colou?r|kind|material|plastic|finish|type)s? (is|was|were|are|did|do) (it|that|this|they|mine|ours|the old|we|i)\b|` +
	`how many (layers|panes) (is|was|did|does|do|has|are) (it|that|this|they|mine|ours|the old|we|i)\b|(de )?qu[eé] color (es|era|ser[aá]|tiene|ten[ií]a)\b|` +
	`cu[aá]ntas capas (tiene|ten[ií]a|son|eran)\b)`)

// thinksAloud: the question is one to oneself, since the choice is left to the shop in the same breath.
func thinksAloud(r reading.Reading, text string) bool {
	return len(r.Usual) > 0 && !strings.Contains(text, "?") && ownWonder.MatchString(text)
}
