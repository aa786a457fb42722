package reading

import "strings"

var beforePeriod = wordsOf(`a the long short this that time trial same warranty grace waiting what which your`)

// lexer cuts a folded message into tokens.
type lexer struct {
	folded
	src  string
	at   int
	toks []token
	mail bool // the message has an @ somewhere
}

func lex(src string) []token {
	l := lexer{folded: fold(src), src: src}
	l.mail = strings.IndexByte(l.text, '@') >= 0
	l.toks = make([]token, 0, len(l.text)/3+4)
	for l.at < len(l.text) {
		l.token()
	}
	l.spot()
	return l.toks
}

func (l *lexer) token() {
	c := l.text[l.at]
	switch {
	case c == ' ':
		l.at++
	case l.mail && l.address():
	case (isLetter(c) || isDigit(c)) && l.ref():
	case (isDigit(c) || c == '(' || c == '+') && l.phone():
	case isLetter(c):
		l.word()
	case isDigit(c) || c == '.' && l.pointNumber():
		l.number()
	default:
		l.add(markToken, l.at+1)
	}
}

// add appends the token that reaches from the current place to end.
func (l *lexer) add(k kind, end int) *token {
	glued := l.at > 0 && l.text[l.at-1] != ' ' && l.text[l.at-1] != '\n'
	t := token{kind: k, glued: glued, text: l.text[l.at:end], from: int(l.from[l.at]), to: int(l.to[end-1])}
	l.toks = append(l.toks, t)
	l.at = end
	return &l.toks[len(l.toks)-1]
}

func (l *lexer) word() {
	end := l.at
	for end < len(l.text) && isLetter(l.text[end]) {
		end++
	}
	if strings.HasPrefix(l.text[l.at:end], "http") || l.text[l.at:end] == "www" {
		if l.link() {
			return
		}
	}
	if l.dotted(end) || l.with(end) || l.onFace(end) || l.spokenMark(end) {
		return
	}
	if end-l.at > 1 && l.text[end-1] == 'x' && end < len(l.text) && isDigit(l.text[end]) && measuring(l.text[l.at:end-1]) {
		end-- // "12 inchesx12"
	}
	if n := gluedNumber(l.text[l.at:end]); n > 0 {
		end = l.at + n
	}
	l.add(wordToken, end)
}

// gluedNumber: where a word is a number and something glued to it ("eighthin",
// "halfxtwenty", "xtwenty"), it gives the length of the first, else 0.
func gluedNumber(word string) int {
	if len(word) < 4 || words().known[word] != nil {
		return 0
	}
	for _, u := range []string{"inches", "inch", "in", "feet", "ft", "cm", "mm"} {
		if n := len(word) - len(u); n > 2 && word[n:] == u && realNumber(word[:n]) {
			return n
		}
	}
	if n := tensEnd(word); n > 0 {
		return n
	}
	for i := range len(word) - 3 {
		if word[i] == 'x' && realNumber(word[i+1:]) && (i == 0 || realNumber(word[:i]) || unitWords[word[:i]] != noUnit) {
			return max(i, 1)
		}
		if word[i] == 'x' && i > 2 && realNumber(word[:i]) && realNumber(word[i+1:]) {
			return i
		}
	}
	return 0
}

// tensEnd: "twentyfive", "treintaycinco": where the tens end; 0 where the word is no such
// number.
func tensEnd(word string) int {
	if (word[0] == 'y' || word[0] == 'i') && numberWords[word[1:]].kind == digitWord {
		return 1
	}
	for n := 5; n <= len(word)-2 && n <= 9; n++ {
		rest := word[n:]
		if numberWords[word[:n]].kind == tensWord &&
			(numberWords[rest].kind == digitWord || (rest[0] == 'y' || rest[0] == 'i') && numberWords[rest[1:]].kind == digitWord) {
			return n
		}
	}
	return 0
}

// realNumber: the word is a number and no small word that sounds like one.
func realNumber(word string) bool {
	k := numberWords[word].kind
	return k != notNumber && k != soundsLike
}

// measuring: the word is a unit or a number, so an x glued to it stands between two sides.
func measuring(word string) bool {
	return unitWords[word] != noUnit || numberWords[word].kind != notNumber || word == "w" || word == "wide"
}

// dotted takes initials in one: "O.D." is the word "od".
func (l *lexer) dotted(end int) bool {
	if end-l.at != 1 {
		return false
	}
	i, letters := l.at, 0
	for i+1 < len(l.text) && isLetter(l.text[i]) && l.text[i+1] == '.' {
		i += 2
		letters++
	}
	if letters >= 1 && i < len(l.text) && isLetter(l.text[i]) && (i+1 == len(l.text) || !isLetter(l.text[i+1])) {
		i++ // "o.d" without the last dot
		letters++
	}
	if letters < 2 {
		return false
	}
	whole := strings.ReplaceAll(l.text[l.at:i], ".", "")
	l.add(wordToken, i).text = whole
	return true
}

// onFace writes out "o/s" and "i/s", outside and inside.
func (l *lexer) onFace(end int) bool {
	if end-l.at != 1 || end+1 >= len(l.text) || l.text[end] != '/' || l.text[end+1] != 's' ||
		end+2 < len(l.text) && (isLetter(l.text[end+2]) || isDigit(l.text[end+2])) {
		return false
	}
	switch l.text[l.at] {
	case 'o':
		l.add(wordToken, end+2).text = "outside"
	case 'i':
		l.add(wordToken, end+2).text = "inside"
	default:
		return false
	}
	return true
}

// with writes out "w/", "w/o" and the "w" before what goes along: "w the lip".
func (l *lexer) with(end int) bool {
	if end-l.at == 1 && l.text[l.at] == 'w' && l.at > 0 && l.text[l.at-1] == ' ' {
		rest := strings.TrimLeft(l.text[end:], " ")
		for _, next := range []string{"the ", "lip", "a lip", "flange", "frame", "screws"} {
			if len(rest) < len(l.text)-end && strings.HasPrefix(rest, next) {
				l.add(wordToken, end).text = "with"
				return true
			}
		}
	}
	if end-l.at != 1 || l.text[l.at] != 'w' || end >= len(l.text) || l.text[end] != '/' {
		return false
	}
	if l.at > 0 && isDigit(l.text[l.at-1]) || end+1 < len(l.text) && isDigit(l.text[end+1]) {
		return false
	}
	rest := l.text[end+1:]
	if strings.HasPrefix(rest, "o") && (len(rest) == 1 || !isLetter(rest[1])) {
		l.add(wordToken, end+2).text = "without"
		return true
	}
	l.add(wordToken, end+1).text = "with"
	return true
}

// spokenMark: voice keyboards write signs out: "comma", and "period" at the end.
func (l *lexer) spokenMark(end int) bool {
	switch l.text[l.at:end] {
	case "comma":
		l.add(markToken, end).text = ","
	case "question":
		rest := strings.TrimLeft(l.text[end:], " ")
		if end += len(l.text[end:]) - len(rest); !strings.HasPrefix(rest, "mark") || len(rest) > 4 && isLetter(rest[4]) {
			return false
		}
		l.add(markToken, end+4).text = "?"
	case "period":
		if strings.TrimRight(l.text[end:], " \n.") != "" && !l.dictatedStop(end) {
			return false
		}
		l.add(markToken, end).text = "."
	default:
		return false
	}
	return true
}

func (l *lexer) link() bool {
	end := l.at
	for end < len(l.text) && l.text[end] != ' ' && l.text[end] != '\n' {
		end++
	}
	if strings.IndexByte(l.text[l.at:end], '.') < 0 && strings.IndexByte(l.text[l.at:end], ':') < 0 {
		return false
	}
	l.add(linkToken, end)
	return true
}

// pointNumber: ".5" where no digit stands before the point.
func (l *lexer) pointNumber() bool {
	return l.at+1 < len(l.text) && isDigit(l.text[l.at+1]) && (l.at == 0 || !isDigit(l.text[l.at-1]) && l.text[l.at-1] != '.')
}

const maxDigits = 9

// maxDecimals is how many of them may be decimals: a converted length has up to five.
const maxDecimals = 5

// number takes digits, a decimal point or comma, and commas between thousands.
func (l *lexer) number() {
	start, i := l.at, l.at
	var whole int64
	digits, dec := 0, 0
	comma := false
	take := func() (n int) {
		for i < len(l.text) && isDigit(l.text[i]) {
			if digits < maxDigits {
				whole = whole*10 + int64(l.text[i]-'0')
			}
			digits++
			n++
			i++
		}
		return n
	}
	take()
	for l.thousands(start, i) {
		i++
		take()
	}
	switch {
	case l.pointAt(i):
		i++
		dec = take()
	case l.commaAt(start, i):
		i++
		dec = take()
		comma = true
	}
	bad := digits > maxDigits || dec > maxDecimals
	if i+2 < len(l.text) && l.text[i] == '.' && l.text[i+1] == '.' && isDigit(l.text[i+2]) { // 25..5
		bad = true
		i += 2
		take()
	}
	if l.pointAt(i) { // 25.5.5
		bad = true
		for l.pointAt(i) {
			i++
			take()
		}
	}
	if end := l.ordinal(start, i, dec); end > i {
		l.add(wordToken, end)
		return
	}
	t := l.add(numToken, i)
	t.whole, t.dec, t.comma, t.bad = whole, dec, comma, bad
	t.code = l.afterLetters(start)
}

// ordinal: "2nd", "1st": a word, unless it is the bottom of a fraction ("5/8th").
func (l *lexer) ordinal(start, i, dec int) int {
	if dec > 0 || i+2 > len(l.text) || start > 0 && l.text[start-1] == '/' || i+2 < len(l.text) && isLetter(l.text[i+2]) {
		return i
	}
	switch l.text[i : i+2] {
	case "st", "nd", "rd", "th":
		return i + 2
	}
	return i
}

func (l *lexer) pointAt(i int) bool {
	return i+1 < len(l.text) && l.text[i] == '.' && isDigit(l.text[i+1])
}

// thousands: a comma at i with just three digits after it, one to three before.
func (l *lexer) thousands(start, i int) bool {
	if i-start > 3 && (i-start)%4 != 3 || i == start || i >= len(l.text) || l.text[i] != ',' {
		return false
	}
	if l.text[start] == '0' {
		return false
	}
	return l.digitsFrom(i+1) == 3
}

// commaAt: a decimal comma at i: one, two or four digits after it, and no list of numbers.
func (l *lexer) commaAt(start, i int) bool {
	if i >= len(l.text) || l.text[i] != ',' || i == start {
		return false
	}
	if start > 0 && l.text[start-1] == ',' {
		return false
	}
	n := l.digitsFrom(i + 1)
	if n < 1 || n == 3 || n > 4 || n == 4 && i-start > 3 {
		return false // three may be thousands
	}
	end := i + 1 + n
	return !(end+1 < len(l.text) && (l.text[end] == ',' || l.text[end] == '/') && isDigit(l.text[end+1]))
}

func (l *lexer) digitsFrom(i int) int {
	n := 0
	for i+n < len(l.text) && isDigit(l.text[i+n]) {
		n++
	}
	return n
}

// afterLetters: the number at start is glued to letters that make it part of a code;
// not so to a side's letter or a times sign ("x49", "W25").
func (l *lexer) afterLetters(start int) bool {
	if start == 0 || !isLetter(l.text[start-1]) {
		return false
	}
	if n := len(l.toks); n > 1 && l.toks[n-2].text == "x" { // the last is the number itself
		return false
	}
	from := start
	for from > 0 && isLetter(l.text[from-1]) {
		from--
	}
	switch l.text[from:start] {
	case "x", "w", "l", "h", "by", "bt", "id", "od", "dia", "ft", "in", "and", "por", "to":
		return false
	}
	return true
}

// dictatedStop: "… wood box period the frame is good": said as a sign, and no stretch of time.
func (l *lexer) dictatedStop(end int) bool {
	rest := strings.TrimLeft(l.text[end:], " ")
	if strings.HasPrefix(rest, "of ") || strings.HasPrefix(rest, "for ") || strings.HasPrefix(rest, "and ") || len(l.toks) == 0 {
		return false
	}
	return !l.toks[len(l.toks)-1].among(beforePeriod)
}
