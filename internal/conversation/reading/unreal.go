package reading

import "example.com/intake-bot/internal/fitcheck"

// What is only supposed, feared, or over is no fact: "what if the frame is bent",
// "I want it before it leaks", "it used to be acrylic".

// unreal says whether the words before a value make it one that does not hold.
func (r *reader) unreal(t fitcheck.Topic, first int) bool {
	from, _ := r.sentence(first)
	for i := first - 1; i >= from; i-- {
		switch {
		case r.wordAt(i, "if", "whether", "unless"):
			if r.wordAt(i-1, "what") || !r.commaBetween(i, first) && !r.newClause(i+2, first) {
				return !r.wordAt(i+1, "possible", "so")
			}
		case r.wordAt(i, "si") && r.out.Language == "es" && r.wordAt(i-1, "que", "y", "pasa", "saber"):
			return !r.commaBetween(i, first)
		case r.wordAt(i, "used") && r.wordAt(i+1, "to"):
			if !r.commaBetween(i, first) && !r.wordsIn(i, first, "but", "now") {
				return true
			}
		case t == fitcheck.TopicProblem && r.feared(i, first):
			return true
		}
	}
	return false
}

// newClause: a subject with its verb starts a clause of its own between two tokens: "if
// you need to know its acrylic".
func (r *reader) newClause(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "its", "theyre", "theres") || r.wordAt(i, "it", "they", "we", "i", "the", "my", "our") && r.wordAt(i-1, "then", "know", "helps", "matters", "care", "asking", "wondering") {
			return true
		}
	}
	return false
}

// feared: a harm that is to come or to be kept off: "before it leaks", "so it won't
// crack", "worried that it will break".
func (r *reader) feared(i, first int) bool {
	switch {
	case r.commaBetween(i, first) || first-i > 8:
		return false
	case r.wordAt(i, "before", "antes"):
		return r.wordAt(i+1, "it", "they", "this", "the", "something", "anything", "more", "de", "que")
	case r.wordAt(i, "waiting") && r.wordAt(i+1, "room", "area", "list", "hall"):
		return false
	case r.wordAt(i, "worried", "afraid", "scared", "prevent", "avoid", "keep", "concerned", "waiting", "evitar", "miedo"):
		return first-i > 1 || r.wordAt(i, "prevent", "avoid", "evitar")
	case r.wordAt(i, "so") && r.wordAt(i+1, "the", "it", "they", "that", "this", "my", "kids", "hail") && r.wordsIn(first+1, min(first+3, len(r.toks)), "dont", "wont", "doesnt", "cant", "cannot"):
		return true // "so the hail don't bust it"
	case r.wordAt(i, "will", "itll", "gonna", "might", "could", "would"):
		return first-i <= 3 && !r.wordAt(i, "might", "could") && !r.wordAt(i-1, "it") && !r.wordAt(first-1, "been")
	}
	return false
}
