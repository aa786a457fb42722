package reading

import "example.com/intake-bot/internal/fitcheck"

var notAPlainThought = wordsOf(`is was were are its has had have there theres now currently originally existing old
	current es era eran son tiene tenia hay habia maybe perhaps probably not dont no sure or o might but pero if si
	quizas talvez tal guess know se wife husband let ask check`)

// thoughtOver: "two layers for the both of them I think", to the question for it, is a choice: the
// customer is the one who chooses. What is up there now, or was, is a guess, and so is anything that
// is doubted in other words as well.
func (r *reader) thoughtOver(t fitcheck.Topic, first int) bool {
	if !chosen(t) || !r.asked(t) {
		return false
	}
	from, to := r.sentence(first)
	if r.markAt(to, '?') || r.markAt(to+1, '?') || !r.wordsIn(from, to+1, "think", "believe", "creo", "parece") {
		return false
	}
	return !r.anyOf(from, to+1, notAPlainThought)
}
