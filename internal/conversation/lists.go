package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Lists that grow with what is said, unless the words put them right.

// joinedList adds what is newly said to a list, unless the words put it right.
func joinedList(topic fitcheck.Topic, before, now fitcheck.Value, text string) fitcheck.Value {
	b, ok := before.(fitcheck.ChoiceList)
	n, also := now.(fitcheck.ChoiceList)
	if !ok || !also || topic != fitcheck.TopicProblem || len(n) == 0 || correcting(text) {
		return now
	}
	all := append(fitcheck.ChoiceList{}, b...)
	for _, w := range n {
		if !slices.Contains(all, w) {
			all = append(all, w)
		}
	}
	return all
}

func correcting(text string) bool {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r < 'a' && r != '\'' || r > 'z' && r < 128 })
	for _, w := range words {
		switch w {
		case "not", "no", "just", "only", "actually", "isn't", "solo", "sino":
			return true
		}
	}
	return false
}

// clauseOf is the clause of a text that holds some words, with a lone word or two that begin its
// sentence: "no, it's just cracked", not "two skylights actually, the one in the den is cracked".
func clauseOf(text, said string) string {
	at := strings.Index(text, said)
	if at < 0 {
		return text
	}
	from := 0
	for _, end := range sentenceEnds.FindAllStringIndex(text[:at], -1) {
		from = end[1]
	}
	head := text[from:at]
	clause := head[strings.LastIndexAny(head, ",;")+1:] + said
	if rest := text[at+len(said):]; rest != "" {
		clause += clauseEnds.Split(rest, 2)[0]
	}
	if first, _, more := strings.Cut(head, ","); more && len(strings.Fields(first)) < 3 {
		clause = first + " " + clause
	}
	return clause
}

var (
	sentenceEnds = regexp.MustCompile(`[.!?;\n]+(\s|$)`)
	clauseEnds   = regexp.MustCompile(`[,.!?;\n]`)
)
