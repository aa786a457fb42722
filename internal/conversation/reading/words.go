package reading

// Whether some words stand between two tokens is what most rules ask, of words that a message
// mostly has not. A small set of what it has at all spares the looking.

// spelt is a set of words by their ends and length: what it lacks the message lacks.
type spelt [4]uint64

func (s *spelt) add(w string) {
	k := speltKey(w)
	s[k>>6] |= 1 << (k & 63)
}

func (s *spelt) may(w string) bool {
	k := speltKey(w)
	return s[k>>6]&(1<<(k&63)) != 0
}

// meets says whether two sets may have a word in common.
func (s *spelt) meets(o *spelt) bool {
	return s[0]&o[0]|s[1]&o[1]|s[2]&o[2]|s[3]&o[3] != 0
}

// speltKey is a number below 256 that equal words share. A word is never empty.
func speltKey(w string) uint8 {
	return w[0]*7 + w[len(w)-1]*31 + uint8(len(w))*13
}

// spell notes which words the message has.
func (r *reader) spell() {
	for i := range r.toks {
		if r.toks[i].kind == wordToken {
			r.spelt.add(r.toks[i].text)
		}
	}
	r.spelled = true
}

// wordsIn says whether one of the words stands from one token up to, not at, another.
func (r *reader) wordsIn(from, to int, words ...string) bool {
	from, to = max(from, 0), min(to, len(r.toks))
	for _, w := range words {
		if r.spelled && !r.spelt.may(w) {
			continue
		}
		for i := from; i < to; i++ {
			if t := &r.toks[i]; len(t.text) == len(w) && t.text[0] == w[0] && t.kind == wordToken && t.text == w {
				return true
			}
		}
	}
	return false
}
