package reading

// What the vocabulary knows of the words, and sounds that are none.

// spot tells each word what the vocabulary knows of it.
func (l *lexer) spot() {
	v := words()
	for i := range l.toks {
		switch t := &l.toks[i]; {
		case t.kind == wordToken:
			t.word = v.known[t.text]
			if t.word != nil && len(t.text) > 2 { // ND is a state
				t.text = t.word.text // "hight", "nesesito"
			}
		case t.kind == numToken && t.dec == 0 && t.whole < int64(len(unitNames)) && !t.code:
			t.word = v.known[unitNames[t.whole]] // "2 layers" is "two layers"
		}
	}
}

// withoutHums leaves out the sounds of somebody who thinks, and a "by the way": "is um white on the
// outside", "I'm Walt Greer by the way".
func withoutHums(toks []token) []token {
	out := toks[:0]
	for i := 0; i < len(toks); i++ {
		t := &toks[i]
		if i+2 < len(toks) && t.is("by") && toks[i+1].is("the") && toks[i+2].is("way") && len(toks) > 4 &&
			!(i+3 < len(toks) && toks[i+3].is("of", "to", "in", "it", "you", "they")) {
			i += 2
			continue
		}
		if t.is("um", "umm", "uhm", "uh", "uhh", "erm", "hmm", "hm") && len(toks) > 2 &&
			!(i+1 < len(toks) && (toks[i+1].is("huh", "uh") || toks[i+1].mark('-'))) {
			continue
		}
		out = append(out, *t)
	}
	return out
}
