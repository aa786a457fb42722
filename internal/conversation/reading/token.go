package reading

// kind tells tokens apart.
type kind uint8

const (
	wordToken  kind = iota // letters
	numToken               // digits, perhaps with decimals
	markToken              // one sign
	mailToken              // a mail address
	phoneToken             // a phone number
	linkToken              // a web address
	refToken               // the ref of a lead
)

// token is one word, number or sign of a message.
type token struct {
	kind  kind
	glued bool // nothing stands between it and the token before
	comma bool // number with a decimal comma
	bad   bool // number that nobody can read: 25.5.5, twenty digits
	code  bool // number stuck to letters, as in a model number
	named bool // part of a name or a place, so it tells nothing of the language
	used  bool // taken by what was read already: no size or name
	from  int  // bytes of the original
	to    int
	text  string // folded
	whole int64  // number: its digits without the decimal point
	dec   int    // number: how many of them are decimals
	word  *word  // what the vocabulary says of it, nil where nothing
}

// mark says whether the token is that sign.
func (t *token) mark(c byte) bool { return t.kind == markToken && t.text[0] == c }

// is says whether the token is one of the words.
func (t *token) is(words ...string) bool {
	if t.kind != wordToken {
		return false
	}
	text := t.text
	for _, w := range words {
		if len(w) == len(text) && w[0] == text[0] && w == text { // most differ at the start
			return true
		}
	}
	return false
}

// ends says whether a sentence ends at the token.
func (t *token) ends() bool {
	if t.kind != markToken {
		return false
	}
	switch t.text[0] {
	case '\n', '.', '!', '?', ';':
		return true
	}
	return false
}
