package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// What is only supposed, feared, or over is no fact: "what if the frame is bent",
// "I want it before it leaks", "it used to be acrylic".

var (
	concludes = wordsOf(`id say its probably must be i guess the that thats it is son es`)
	fearWords = wordsOf(`worried afraid scared prevent avoid keep concerned waiting evitar miedo`)
)

// unreal says whether the words before a value make it one that does not hold.
func (r *reader) unreal(t fitcheck.Topic, first int) bool {
	from, _ := r.sentence(first)
	for i := first - 1; i >= from; i-- {
		switch {
		case r.wordAt(i, "if", "whether", "unless"):
			if r.concluded(i, first) || r.contrary(first) {
				return false
			}
			if r.wordAt(i-1, "what") || !r.commaBetween(i, first) && !r.newClause(i+2, first) {
				return !r.wordAt(i+1, "possible", "so")
			}
		case r.wordAt(i, "si") && r.out.Language == "es" && r.wordAt(i-1, "que", "y", "pasa", "saber") &&
			!(r.wordAt(i-1, "que") && r.wordAt(i-2, "lo", "eso", "esa", "ese")): // "lo que sí le digo"
			return !r.commaBetween(i, first)
		case r.wordAt(i, "used") && r.wordAt(i+1, "to") && !(r.wordAt(i+2, "be") && r.wordsIn(max(from, i-4), i, "where")):
			if !r.commaBetween(i, first) && !r.wordsIn(i, first, "but", "now") {
				return true
			}
		case t == fitcheck.TopicProblem && r.feared(i, first):
			return true
		}
	}
	return false
}

// concluded: "if I shine a light in I see two edges so two": what is drawn from it holds.
func (r *reader) concluded(from, first int) bool {
	i := first - 1
	for r.among(i, concludes) {
		i--
	}
	return i > from+2 && r.wordAt(i, "so", "entonces") && !r.wordAt(i-1, "if", "is", "its", "not", "be", "that")
}

// newClause: a subject with its verb starts a clause of its own between two tokens: "if
// you need to know its acrylic".
func (r *reader) newClause(from, to int) bool {
	for i := from; i < to; i++ {
		if r.wordAt(i, "its", "theyre", "theres") ||
			r.wordAt(i, "it", "they", "we", "i", "the", "my", "our") &&
				r.wordAt(i-1, "then", "know", "helps", "matters", "care", "asking", "wondering") {
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
	case r.wordAt(i, "no") && r.wordAt(i-1, "que") && r.wordAt(i+1, "se", "me", "nos") && i+1 < first:
		return !r.wordAt(i-2, "es", "ya") && !r.wordsIn(i, first+2, "ve", "mira") // "el que no se ponga amarillo"
	case r.wordAt(i, "waiting") && r.wordAt(i+1, "room", "area", "list", "hall"):
		return false
	case r.among(i, fearWords):
		return first-i > 1 || r.wordAt(i, "prevent", "avoid", "evitar")
	case r.wordAt(i, "so") && r.wordAt(i+1, "the", "it", "they", "that", "this", "my", "kids", "hail") && i > 0 &&
		!r.sentenceEnd(i-1) && r.wordsIn(first+1, min(first+3, len(r.toks)), "dont", "wont", "doesnt", "cant", "cannot"):
		return true // "so the hail don't bust it"
	case r.wordAt(i, "will", "itll", "gonna", "might", "could", "would"):
		return first-i <= 3 && !r.wordAt(i, "might", "could") && !r.wordAt(i-1, "it") && !r.wordAt(first-1, "been")
	}
	return false
}

// ifElse: "plastic only if the frames are good, otherwise the whole thing": the customer
// leaves open which.
func (r *reader) ifElse(all []saying) []saying {
	if !r.asked(fitcheck.TopicWant) || !r.wordsIn(0, len(r.toks), "if", "si") ||
		!r.wordsIn(0, len(r.toks), "otherwise", "else", "then", "sino") && !r.ifNot() {
		return all
	}
	first, last, dome, whole := -1, -1, false, false
	for n := range r.wants {
		h := &r.wants[n]
		d, w := h.is("want", fitcheck.WantDomeOnly), h.is("want", fitcheck.WantCompleteUnit)
		if !d && !w || r.toks[h.first].used || r.wordAt(h.first-1, "not") && !r.wordAt(h.first-2, "if") {
			continue
		}
		if dome, whole, last = dome || d, whole || w, h.last; first < 0 {
			first = h.first
		}
	}
	if !dome || !whole || !r.conditional(first) {
		return all
	}
	all = slices.DeleteFunc(all, func(s saying) bool { return s.topic == fitcheck.TopicWant })
	return append(all, saying{topic: fitcheck.TopicWant, value: fitcheck.WantUnsure, first: first, last: last})
}

// conditional: the sentence hangs on an "if", which is no "if possible" nor a "si" for yes.
func (r *reader) conditional(i int) bool {
	from, to := r.sentence(i)
	for k := from; k <= to; k++ {
		if r.wordAt(k, "if") && !r.wordAt(k+1, "possible", "i", "so", "that", "you") ||
			r.wordAt(k, "si") && r.wordAt(k+1, "el", "los", "esta", "estan", "se", "sirve", "sale") {
			return true
		}
	}
	return false
}

// ifNot: "if not", "si no", "if they aren't".
func (r *reader) ifNot() bool {
	for i := range r.toks {
		if r.wordAt(i, "if", "si") &&
			(r.wordAt(i+1, "not", "no") ||
				r.wordAt(i+1, "it", "they", "that", "the", "theyre", "its", "el", "la") &&
					r.wordsIn(i+1, min(i+4, len(r.toks)), "not", "no", "isnt", "arent", "cant")) {
			return true
		}
	}
	return false
}
