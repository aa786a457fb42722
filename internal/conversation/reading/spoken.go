package reading

import "example.com/intake-bot/internal/fitcheck"

var beforeSpokenMail = wordsOf(`is its email es correo to at mail address use`)

// spokenContacts reads what voice keyboards make of phone numbers and mail addresses:
// "two one eight five five five …", "jo underscore pelt at example dot com".
func (r *reader) spokenContacts() {
	if r.areaCodeApart() {
		return
	}
	for i := 0; i < len(r.toks); i++ {
		if r.spokenPhone(i) || r.spokenMail(i) {
			return
		}
	}
}

// spokenPhone: ten or eleven digits in words, one after another.
func (r *reader) spokenPhone(i int) bool {
	var digits [16]byte
	n, j := 0, i
	for ; j < len(r.toks) && n < len(digits); j++ {
		if r.markAt(j, '-') || r.markAt(j, ',') || r.markAt(j, '.') {
			continue
		}
		d := r.spokenDigit(j)
		if t := &r.toks[j]; n > 0 && d < 0 && t.kind == numToken && !t.used && t.dec == 0 && (len(t.text) == 3 || len(t.text) == 4) &&
			n+len(t.text) <= len(digits) {
			n += copy(digits[n:], t.text) // "nine two eight 555 0161"
			continue
		}
		if d < 0 {
			break
		}
		digits[n] = byte('0' + d)
		n++
	}
	number := phoneNumber(digits[:n], false)
	if number == "" {
		return false
	}
	for r.toks[j-1].kind == markToken {
		j--
	}
	r.use(i, j-1)
	r.fact(fitcheck.TopicPhone, 0, fitcheck.Text(number), i, j-1)
	return true
}

func (r *reader) spokenDigit(i int) int {
	if r.wordAt(i, "oh", "o", "zero", "cero") {
		return 0
	}
	if n := r.numberAt(i); n.kind == digitWord {
		return int(n.value)
	}
	if t := &r.toks[i]; t.kind == numToken && len(t.text) == 1 && !t.used {
		return int(t.whole)
	}
	return -1
}

// spokenMail: words joined by "at" and "dot".
func (r *reader) spokenMail(i int) bool {
	if !r.wordAt(i, "at", "arroba") || i == 0 {
		return false
	}
	domain, end := r.spokenDomain(i + 1)
	if domain == "" {
		return false
	}
	first, local := i, ""
	for j := i - 1; j >= 0; j-- {
		t := &r.toks[j]
		sign, is := spokenSign(t.text)
		switch {
		case is && t.kind == wordToken:
			local = sign + local
		case local != "" && t.kind == markToken && t.glued && r.toks[j+1].glued && isSign(r.said(j, j)[0]):
			// "pat.r at example dot com"
			local = r.said(j, j) + local
		case t.kind == wordToken && local != "" && !isSign(local[0]) && !r.numberOfName(j, local) ||
			t.kind != wordToken && t.kind != numToken || t.used:
			j = -1
			continue
		default:
			local = t.text + local
		}
		first = j
	}
	if local == "" || isSign(local[0]) {
		return false
	}
	if k := end + number(r.markAt(end, ',')); first > 0 && r.toks[first-1].kind == wordToken &&
		(r.wordAt(k, "all") && r.wordAt(k+1, "one", "together") || r.wordAt(k, "todo") && r.wordAt(k+1, "junto")) {
		for first > 0 && r.toks[first-1].kind == wordToken && !r.among(first-1, beforeSpokenMail) {
			first--
			local = r.toks[first].text + local // "bevs quilts at example dot com all one word"
		}
	}
	r.use(first, end-1)
	r.fact(fitcheck.TopicEmail, 0, fitcheck.Text(local+"@"+domain), first, end-1)
	return true
}

// numberOfName: the digits that an address would start with belong to the word before
// them: "pat1950", also dictated as "pat 1950".
func (r *reader) numberOfName(i int, local string) bool {
	t := &r.toks[i]
	return isDigit(local[0]) && r.toks[i+1].kind == numToken &&
		(r.toks[i+1].glued || t.word == nil || !t.word.filler && !r.wordAt(i, "email", "mail", "address", "at", "to", "correo"))
}

// spokenDomain reads "example dot com" at token i.
func (r *reader) spokenDomain(i int) (string, int) {
	if i >= len(r.toks) || r.toks[i].kind != wordToken {
		return "", i
	}
	domain, end := r.toks[i].text, i+1
	for (r.wordAt(end, "dot", "punto") || r.markAt(end, '.')) && end+1 < len(r.toks) && r.toks[end+1].kind == wordToken {
		domain += "." + r.toks[end+1].text
		end += 2
	}
	if end < i+3 || r.markAt(end-2, '.') && !mailEnds.has(r.toks[end-1].text) ||
		len(r.toks[end-1].text) < 2 ||
		len(r.toks[end-1].text) > 6 && !mailEnds.has(r.toks[end-1].text) {
		return "", i
	}
	return domain, end
}

// mailEnds are ends of addresses; after a full stop other words begin a sentence: "20
// years at least. That's it".
var mailEnds = wordsOf(`com net org edu gov mx us co test example info biz io ca me`)

func spokenSign(word string) (string, bool) {
	switch word {
	case "dot", "punto", "period":
		return ".", true
	case "underscore", "guionbajo":
		return "_", true
	case "dash", "hyphen", "guion":
		return "-", true
	}
	return "", false
}

func isSign(c byte) bool { return c == '.' || c == '_' || c == '-' }

// areaCodeApart: "area code 828, 555-0171": the area code stands apart from the rest.
func (r *reader) areaCodeApart() bool {
	code, rest, end := -1, -1, 0
	for i := range r.toks {
		t := &r.toks[i]
		if t.kind != numToken || t.dec > 0 {
			continue
		}
		switch {
		case len(t.text) == 3 && r.markAt(i+1, '-') && i+2 < len(r.toks) && r.toks[i+2].kind == numToken && len(r.toks[i+2].text) == 4:
			rest, end = i, i+2
		case len(t.text) == 3 && i > 0 && code >= 0 && i+1 < len(r.toks) && r.toks[i+1].kind == numToken && len(r.toks[i+1].text) == 4:
			// "area code 559 then 555 0164"
			rest, end = i, i+1
		case len(t.text) == 3 && r.wordsIn(max(0, i-3), i, "code") && r.wordsIn(max(0, i-4), i, "area"):
			code = i
		}
	}
	if code < 0 || rest < 0 {
		return false
	}
	number := phoneNumber([]byte(r.toks[code].text+r.toks[rest].text+r.toks[end].text), false)
	if number == "" {
		return false
	}
	first, last := min(code, rest), max(code, end)
	r.use(first, last)
	r.fact(fitcheck.TopicPhone, 0, fitcheck.Text(number), first, last)
	return true
}
