package intake

import (
	"context"
	"slices"

	"example.com/intake-bot/internal/db"
)

// Answers finds the owner's answers to what customers ask. A wrong answer is worse than
// none: what does not fit well goes to staff.
type Answers struct {
	// Asked are the questions in a message, without accents.
	Asked func(message string) []string
	// Same says whether a question asks for what one of the ways to ask for an answer does:
	// when, how much, where.
	Same func(question string, ways []string) bool
}

// How well a question must fit, and by how much better than any other answer does; tried
// on the example shop's questions and near misses of them, see the test.
const (
	fitsFrom   = 0.65
	fitsByMore = 0.25
)

// Find is the owner's answer to a question in a message, empty where none fits well. It
// is a Brain's Answer.
func (a Answers) Find(ctx context.Context, c db.Conn, message string) (string, error) {
	best := db.AnswerFit{}
	for _, question := range a.Asked(message) {
		fits, err := db.FitAnswers(ctx, c, question)
		if err != nil {
			return "", err
		}
		fits = slices.DeleteFunc(fits, func(f db.AnswerFit) bool { return !a.Same(question, f.Ways) })
		if f := clearest(fits); f.Fit > best.Fit {
			best = f
		}
	}
	return best.Answer, nil
}

// clearest is the answer that fits well and clearly better than the others; none of
// itself otherwise.
func clearest(fits []db.AnswerFit) db.AnswerFit {
	if len(fits) == 0 || fits[0].Fit < fitsFrom || len(fits) > 1 && fits[0].Fit-fits[1].Fit < fitsByMore {
		return db.AnswerFit{}
	}
	return fits[0]
}
