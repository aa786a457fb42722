package reading

import "strings"

// wordSet is a class of words that rules ask for by one name ("kin", "frameNouns"), each as the
// lexer spells it: lower case, without accents and apostrophes.
type wordSet struct {
	spelt spelt // what it lacks the set lacks: most words are told off by it
	words map[string]bool
}

// wordsOf is the set of the words of one or several lists, with spaces between them.
func wordsOf(lists ...string) *wordSet {
	s := &wordSet{words: map[string]bool{}}
	for _, list := range lists {
		for _, w := range strings.Fields(list) {
			s.words[w] = true
			s.spelt.add(w)
		}
	}
	return s
}

// and is the set with more words: `negWords.and("except")`.
func (s *wordSet) and(list string) *wordSet {
	more := wordsOf(list)
	for w := range s.words {
		more.words[w] = true
		more.spelt.add(w)
	}
	return more
}

func (s *wordSet) has(word string) bool {
	return word != "" && s.spelt.may(word) && s.words[word]
}

// among says whether a token is a word of the set.
func (r *reader) among(i int, s *wordSet) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].kind == wordToken && s.has(r.toks[i].text)
}

// anyOf says whether a word of the set stands from one token up to, not at, another.
func (r *reader) anyOf(from, to int, s *wordSet) bool {
	if r.spelled && !r.spelt.meets(&s.spelt) {
		return false
	}
	for i := max(from, 0); i < min(to, len(r.toks)); i++ {
		if r.among(i, s) {
			return true
		}
	}
	return false
}

// among says whether the token is a word of the set.
func (t *token) among(s *wordSet) bool { return t.kind == wordToken && s.has(t.text) }
