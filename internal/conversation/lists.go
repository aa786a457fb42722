package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Lists that grow with what is said, unless the words put them right.

// joinedList adds what is newly said to a list, unless the words put it right.
func joinedList(topic fitcheck.Topic, before, now fitcheck.Value, text, said string) fitcheck.Value {
	b, ok := before.(fitcheck.ChoiceList)
	n, also := now.(fitcheck.ChoiceList)
	if !ok || !also || topic != fitcheck.TopicProblem || len(n) == 0 || correcting(text, said) {
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

// correcting: "no, it's cracked", "not leaking, just cracked"; "just dripping" alone tells one more, and
// so does "not just cracked".
func correcting(text, said string) bool {
	return denies(clauseOf(text, said)) || justThis.MatchString(clauseOf(text, said)) && denies(sentenceOf(text, said))
}

// denies: the words say that something is not so.
func denies(text string) bool {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r < 'a' && r != '\'' || r > 'z' && r < 128 })
	for i, w := range words {
		switch w {
		case "not", "no", "isn't", "isnt":
			if i+1 == len(words) || !slices.Contains([]string{"just", "only", "solo", "sólo"}, words[i+1]) {
				return true
			}
		case "actually", "sino":
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

// sentenceOf is what a sentence says up to some words that it holds.
func sentenceOf(text, said string) string {
	before, _, _ := strings.Cut(text, said)
	if ends := sentenceEnds.FindAllStringIndex(before, -1); ends != nil {
		before = before[ends[len(ends)-1][1]:]
	}
	return before
}

var (
	sentenceEnds = regexp.MustCompile(`[.!?;\n]+(\s|$)`)
	justThis     = regexp.MustCompile(`(?i)\b(just|only|s[oó]lo|solamente|nom[aá]s)\b`)
	clauseEnds   = regexp.MustCompile(`[,.!?;\n]`)
)
