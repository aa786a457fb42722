package reading

import "strings"

// What a lead's ref is made of; its letters spell no word, so that in capitals it can
// stand for nothing else.
const (
	refLetters = "CDFGHJKMNPQRTWXY"
	refDigits  = "34679"
	refLength  = 5
)

// ref takes the ref of a lead as one token: "R7KQ4". It says nothing of who or what. A
// ZIP code (only digits) and a size such as 46X49 are none.
func (l *lexer) ref() bool {
	end := l.at
	for end < len(l.text) && (isLetter(l.text[end]) || isDigit(l.text[end])) {
		end++
	}
	if end-l.at != refLength || l.at > 0 && isDigit(l.text[l.at-1]) {
		return false
	}
	code := l.src[l.from[l.at]:l.to[end-1]]
	if strings.Trim(code, refLetters+refDigits) != "" || strings.Trim(code, refDigits+"X") == "" || sized(code) {
		return false
	}
	l.add(refToken, end)
	return true
}

// sized: a number with its unit or side: "643MM", "36W47".
func sized(code string) bool {
	rest := strings.TrimLeft(code, refDigits)
	if rest == code {
		return false
	}
	for _, sign := range []string{"MM", "CM", "FT", "X", "W", "H"} {
		if after, ok := strings.CutPrefix(rest, sign); ok && strings.Trim(after, refDigits+"X") == "" {
			return true
		}
	}
	return false
}
