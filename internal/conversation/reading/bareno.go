package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// A refusal that is all that is said: "can't", "no puedo" where a measure was asked, "nope" where
// the name was.

var (
	cannots = answersOf(`cant, i cant, we cant, cannot, i cannot, no can do, unable, unable to, i am unable, cant do it,
		cant do that, i cant do that, cant get it, i have no way to measure that, i have no way to measure it,
		no way to measure it, i have no way, no way, not possible, its not possible, not able to, im not able to,
		impossible, no puedo, no se puede, no podemos, no puedo medirlo, no puedo medirla, no lo puedo medir,
		no la puedo medir, ya le dije que no lo puedo medir, ya le dije que no puedo, imposible, no es posible,
		no tengo como, no tengo como medirlo, no hay manera`)
	noNames = answersOf(`no, nope, nah, no thanks, no thank you, no way, rather not, id rather not, no gracias, mejor no,
		prefiero no, not saying, does it matter, skip, pass`)
)

// answersOf is a set of whole answers, with commas between them.
func answersOf(list string) map[string]bool {
	answers := map[string]bool{}
	for _, a := range strings.Split(list, ",") {
		answers[strings.TrimSpace(a)] = true
	}
	return answers
}

// bareNo lets go of what was asked last.
func (r *reader) bareNo() {
	if len(r.Asked) == 0 || len(r.out.Facts)+len(r.out.Unclear)+len(r.out.DontKnow) > 0 {
		return
	}
	text := politeness(bareWords(r.Text))
	switch {
	case r.asked(fitcheck.TopicName) && noNames[text]:
		r.out.DontKnow = append(r.out.DontKnow, fitcheck.TopicName)
	case r.askedSize() != "none" && cannots[text]:
		for _, t := range r.openTopics() {
			if t.OfLength() {
				r.out.DontKnow = append(r.out.DontKnow, t)
			}
		}
	}
}
