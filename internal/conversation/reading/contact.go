package reading

import "strings"

// address takes a mail address that starts at the current place.
func (l *lexer) address() bool {
	if l.at > 0 && isMailRune(l.text[l.at-1]) {
		return false
	}
	at := l.at
	for at < len(l.text) && isMailRune(l.text[at]) {
		at++
	}
	if at == l.at || at >= len(l.text) || l.text[at] != '@' {
		return false
	}
	end, dot := at+1, -1
	for end < len(l.text) && (isMailRune(l.text[end])) {
		if l.text[end] == '.' {
			dot = end
		}
		end++
	}
	for end > at && !isDigit(l.text[end-1]) && !isLetter(l.text[end-1]) { // a full stop after it
		end--
	}
	if dot = strings.LastIndexByte(l.text[at:end], '.'); dot < 2 || at+dot+2 >= end {
		return false
	}
	l.add(mailToken, end)
	return true
}

func isMailRune(c byte) bool {
	return isLetter(c) || isDigit(c) || c == '.' || c == '-' || c == '_' || c == '+' || c == '%'
}

// withinWord: a letter, a digit or the point of a number stands right before.
func (l *lexer) withinWord() bool {
	if l.at == 0 {
		return false
	}
	before := l.text[l.at-1]
	return isDigit(before) || isLetter(before) || before == '.' && l.at > 1 && isDigit(l.text[l.at-2])
}

// phone takes a phone number that starts at the current place: ten digits as people
// group them, perhaps with +1 before, or any number with + and a country's code.
func (l *lexer) phone() bool {
	if l.withinWord() {
		return false
	}
	var digits [16]byte
	n, i, plus := 0, l.at, false
	if l.text[i] == '+' {
		plus = true
		i++
	}
	groups, last, end := 0, 0, i
	for i < len(l.text) && groups < 6 {
		start := i
		for i < len(l.text) && isDigit(l.text[i]) && n < len(digits) {
			digits[n] = l.text[i]
			n++
			i++
		}
		if i > start {
			groups, last, end = groups+1, i-start, i
		}
		if wholePhone(digits[:n], plus) && last >= 4 || n == len(digits) {
			break
		}
		skipped := l.phoneGap(&i, n)
		if !skipped {
			break
		}
	}
	if end < len(l.text) && (isDigit(l.text[end]) || isLetter(l.text[end])) {
		return false
	}
	number := phoneNumber(digits[:n], plus)
	if number == "" || last < 4 && !plus && !(groups == 4 && n == 10 && last == 2) { // "956 555 01 77"
		return false
	}
	l.add(phoneToken, end).text = number
	return true
}

// phoneGap skips what may stand between groups of digits.
func (l *lexer) phoneGap(i *int, digits int) bool {
	start := *i
	for *i < len(l.text) && *i-start < 3 {
		switch l.text[*i] {
		case ' ', '-', '.', '/':
		case '(':
			if digits > 1 {
				return false
			}
		case ')':
			if digits < 3 {
				return false
			}
		default:
			return *i > start && isDigit(l.text[*i])
		}
		*i++
	}
	return *i > start && *i < len(l.text) && isDigit(l.text[*i])
}

func wholePhone(d []byte, plus bool) bool {
	if plus && len(d) > 0 && d[0] != '1' {
		return false // other countries' numbers end where the digits end
	}
	return len(d) == 10 && d[0] != '1' || len(d) == 11 && d[0] == '1'
}

// phoneNumber writes digits in E.164, "" where they are no phone number. North
// American numbers are NPA-NXX-XXXX with N from 2 to 9, and neither code may end in 11.
func phoneNumber(d []byte, plus bool) string {
	if plus && len(d) >= 8 && len(d) <= 15 && d[0] != '0' && d[0] != '1' {
		return "+" + string(d)
	}
	if len(d) == 11 && d[0] == '1' {
		d = d[1:]
	}
	if len(d) != 10 || d[0] < '2' || d[3] < '2' {
		return ""
	}
	if d[1] == '1' && d[2] == '1' || d[4] == '1' && d[5] == '1' {
		return ""
	}
	return "+1" + string(d)
}
