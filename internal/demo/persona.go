package demo

import (
	"slices"
	"strings"
)

// persona is a customer in the middle of a talk.
type persona struct {
	customer *Customer
	given    map[string]int // how many answers to a topic were given
}

func newPersona(c *Customer) *persona { return &persona{c, map[string]int{}} }

// text is one text that the customer sends.
type text struct {
	words  string
	photos int
}

// answer is what the customer sends when some topics are asked, as "topic" or "topic@2".
// One text answers all of them, as people do.
func (p *persona) answer(asking []string) text {
	var out text
	var words []string
	for _, asked := range asking {
		topic, _, _ := strings.Cut(asked, "@")
		if slices.Contains(p.customer.Photos, topic) && p.given["photo of "+topic] == 0 {
			p.given["photo of "+topic]++
			out.photos++
			continue
		}
		if said := p.next(asked, topic); said != "" && !slices.Contains(words, said) {
			words = append(words, said)
		}
	}
	if len(words) == 0 && out.photos == 0 {
		words = []string{p.customer.Otherwise}
	}
	out.words = strings.Join(words, ", ")
	return out
}

// next is the next answer to a topic, of one unit where there is one for it.
func (p *persona) next(asked, topic string) string {
	answers := p.customer.Answers[asked]
	if len(answers) == 0 {
		asked, answers = topic, p.customer.Answers[topic]
	}
	if len(answers) == 0 {
		return ""
	}
	n := min(p.given[asked], len(answers)-1)
	p.given[asked]++
	return answers[n]
}
