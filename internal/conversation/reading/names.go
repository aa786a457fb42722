package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

const maxNameWords = 5

// names finds who the customer is: after an introduction, or as the bare answer.
func (r *reader) names() {
	if r.introduced() || !r.asked(fitcheck.TopicName) {
		return
	}
	r.bareName()
}

// introduced finds "my name is …", "this is …", "… here".
func (r *reader) introduced() bool {
	for n := range r.intros {
		h := &r.intros[n]
		v, ok := h.has("intro")
		if !ok {
			continue
		}
		switch v {
		case "first":
			if r.firstAndLast(n) {
				return true
			}
		case "ask":
			if first, last, ok := r.nameFrom(h.last+1, true); ok && r.asked(fitcheck.TopicName) {
				r.nameFact(first, last)
				return true
			}
		case "kin":
			at := h.last + 1
			if r.markAt(at, ',') {
				at++
			}
			if first, last, ok := r.nameFrom(at, true); ok && r.asked(fitcheck.TopicName) {
				r.nameFact(first, last)
				return true
			}
		case "name":
			if first, last, ok := r.nameFrom(h.last+1, false); ok {
				first, last = r.longerName(first, last)
				r.nameFact(first, last)
				return true
			}
		case "im":
			if first, last, ok := r.nameFrom(h.last+1, true); ok && r.nameEnds(last+1) && r.surelyName(h, first, last) {
				r.nameFact(first, last)
				return true
			}
		case "here":
			if first, ok := r.nameBefore(h.first); ok && h.last-h.first == 0 && r.wordAt(h.first, "here") {
				r.nameFact(first, h.first-1)
				return true
			}
		}
	}
	return r.signedName() || r.loneName()
}

// loneName finds a name that stands alone between signs, or beside a place or a way
// to reach somebody: "… whole unit replaced. June Mills 801-555-0150".
func (r *reader) loneName() bool {
	for i := 0; i < len(r.toks); {
		first := i
		for i < len(r.toks) && r.toks[i].kind == wordToken && !r.toks[i].used || i > first && i+1 < len(r.toks) && (r.markAt(i, '&') || r.markAt(i, '-') && r.toks[i].glued) {
			i++
		}
		if last := i - 1; last >= first && r.standsAlone(first, last) {
			if r.wordAt(last, "again", "here") {
				last--
			}
			r.nameFact(first, last)
			return true
		}
		i++
	}
	return false
}

// standsAlone says whether the words from first to last, all between two signs, are a name.
func (r *reader) standsAlone(first, last int) bool {
	again := last > first && r.wordAt(last, "again", "here")
	end := last
	if again {
		end--
	}
	if end-first > 3 || r.toks[first].word == nil || !r.toks[first].word.given || len(r.toks) < 4 {
		return false
	}
	for i := first + 1; i <= end; i++ {
		if r.markAt(i, '&') || r.markAt(i, '-') || r.wordAt(i, "and") && i < end {
			continue
		}
		if !r.surname(i) && !(i == first+1 && i == end && r.toks[i].kind == wordToken && r.markAt(end+1, ',') && end+2 < len(r.toks) && r.toks[end+2].used) {
			return false
		}
	}
	if again {
		return true
	}
	if end > first {
		return first > 0 || end+1 < len(r.toks)
	}
	dash := first > 1 && r.markAt(first-1, '-')
	sentenceAlone := (first == 0 || r.sentenceEnd(first-1)) && (end+1 == len(r.toks) || end+2 == len(r.toks) && r.sentenceEnd(end+1))
	afterPlace := first > 1 && r.markAt(first-1, ',') && r.toks[first-2].used && (end+1 == len(r.toks) || r.sentenceEnd(end+1))
	return (dash || sentenceAlone || afterPlace) && !r.toks[first].word.common && first > 0
}

// surname: a word that may follow a given name: unknown, another given name, or one
// that is written like a name and no small word.
func (r *reader) surname(i int) bool {
	t := &r.toks[i]
	if t.kind != wordToken || t.used {
		return false
	}
	if t.word == nil || t.word.given || t.is("van", "der", "de", "la", "jr", "sr") {
		return true
	}
	return !t.word.common && !t.word.filler && t.word.number.kind == notNumber && t.word.unit == noUnit && !t.word.trade
}

// firstAndLast: "first name Dana last name Whitfield".
func (r *reader) firstAndLast(n int) bool {
	first, end, ok := r.nameFrom(r.intros[n].last+1, false)
	if !ok {
		return false
	}
	for k := n + 1; k < len(r.intros); k++ {
		if v, _ := r.intros[k].has("intro"); v != "last" {
			continue
		}
		if from, to, ok := r.nameFrom(r.intros[k].last+1, false); ok {
			name := properCase(r.said(first, end)) + " " + properCase(r.said(from, to))
			r.name(first, to)
			r.fact(fitcheck.TopicName, 0, fitcheck.Text(name), first, to)
			return true
		}
	}
	return false
}

// longerName: "Whitfeld, Dana Whitfeld": the whole name that follows says more.
func (r *reader) longerName(first, last int) (int, int) {
	if !r.markAt(last+1, ',') {
		return first, last
	}
	from, to, ok := r.nameFrom(last+2, true)
	if !ok || to-from <= last-first {
		return first, last
	}
	for i := from; i <= to; i++ {
		if r.toks[i].text == r.toks[first].text {
			return from, to
		}
	}
	return first, last
}

// surelyName: after "this is" or "I'm" one unknown word alone is a name only where it
// does not look like another kind of word.
func (r *reader) surelyName(h *hit, first, last int) bool {
	if last > first || r.toks[first].word != nil && r.toks[first].word.given {
		return true
	}
	text := r.toks[first].text
	for _, end := range []string{"ed", "ing", "ly", "ful", "ous", "able", "ible", "less", "ish", "est", "ated", "ted", "ive", "ic", "al"} {
		if len(text) > len(end)+2 && text[len(text)-len(end):] == end {
			return false
		}
	}
	if r.wordAt(h.first, "this") && !r.asked(fitcheck.TopicName) {
		return r.wordAt(last+1, "from", "with", "here", "calling", "texting", "in", "and")
	}
	return true
}

// nameFrom reads a name that starts at token i. After "I'm" it must not be an ordinary word.
func (r *reader) nameFrom(i int, strict bool) (first, last int, ok bool) {
	for r.markAt(i, ':') || r.wordAt(i, "spelled", "actually", "really") || r.markAt(i, '-') || r.markAt(i, ',') && !strict || r.wordAt(i, "is", "es", "its") {
		i++
	}
	first, last = i, i-1
	for last-first+1 < maxNameWords*2 && last+1 < len(r.toks) {
		j := last + 1
		switch {
		case j > first && r.wordAt(j, "will") && r.verbAfterWill(j+1):
			return first, last, r.likelyName(first, last, strict)
		case j > first && r.wordAt(j, "de", "del", "la") && !r.nameWord(j+1, true):
			return first, last, r.likelyName(first, last, strict)
		case r.nameWord(j, strict || j > first):
			last = j
		case j > first && (r.wordAt(j, "and", "y") || r.markAt(j, '&')) && r.nameWord(j+1, true) && r.properName(j+1):
			last = j + 1
		case j > first && r.markAt(j, '.') && len(r.toks[j-1].text) <= 3 && r.toks[j].glued && r.titleOrInitial(j-1):
			last = j
		case j > first && r.markAt(j, '-') && r.toks[j].glued && r.nameWord(j+1, true):
			last = j + 1
		default:
			return first, last, last >= first && r.likelyName(first, last, strict)
		}
	}
	return first, last, last >= first && r.likelyName(first, last, strict)
}

func (r *reader) verbAfterWill(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == wordToken && (r.toks[i].word == nil || !r.toks[i].word.given)
}

func (r *reader) titleOrInitial(i int) bool {
	return len(r.toks[i].text) == 1 || r.wordAt(i, "mr", "mrs", "ms", "dr", "jr", "sr", "st", "sra", "sr")
}

// nameWord says whether a token can be a word of a name.
func (r *reader) nameWord(i int, strict bool) bool {
	if i >= len(r.toks) {
		return false
	}
	t := &r.toks[i]
	if t.kind != wordToken || t.used {
		return false
	}
	if t.word == nil || t.word.given || t.is("mr", "mrs", "ms", "dr", "van", "der", "von", "la", "de", "del", "st", "mc", "mac", "jr", "sr", "sra", "le", "el", "los") {
		return true
	}
	if t.word.common || t.word.unit != noUnit {
		return false
	}
	if t.word.filler || t.word.number.kind != notNumber {
		return false
	}
	return !strict || r.properBefore(i)
}

// properBefore: the word before is a given name, so this is likely the family's.
func (r *reader) properBefore(i int) bool {
	return i > 0 && r.toks[i-1].kind == wordToken && (r.toks[i-1].word == nil || r.toks[i-1].word.given)
}

func (r *reader) properName(i int) bool {
	t := &r.toks[i]
	return t.word == nil || t.word.given
}

// likelyName: at least one word of it is a given name or none that a list knows.
func (r *reader) likelyName(first, last int, strict bool) bool {
	for i := first; i <= last; i++ {
		t := &r.toks[i]
		if t.kind == wordToken && (t.word == nil || t.word.given) {
			return true
		}
	}
	return !strict
}

// nameEnds: after "I'm …" a name is followed by the end, a sign, or words like "from".
func (r *reader) nameEnds(i int) bool {
	if i >= len(r.toks) || r.toks[i].kind != wordToken {
		return true
	}
	return r.toks[i].used || r.wordAt(i, "from", "in", "at", "with", "and", "here", "calling", "texting", "i", "we", "my", "of", "again", "im", "on", "over",
		"de", "y", "en", "desde", "will", "who", "writing", "looking", "the", "out", "asking", "but", "tengo", "vivo", "con", "would")
}

// nameBefore reads a name that ends before token i: "Hal here".
func (r *reader) nameBefore(i int) (first int, ok bool) {
	first = i
	if i == 2 && r.toks[0].word != nil && r.toks[0].word.given && r.toks[1].kind == wordToken && !(r.toks[1].word != nil && (r.toks[1].word.filler || negWords[r.toks[1].text])) && !r.wordAt(1, "and", "is", "not", "over") {
		return 0, true // "Elaine Good here"
	}
	for first > 0 && i-first < 3 && r.nameWord(first-1, true) && (r.toks[first-1].word == nil || r.toks[first-1].word.given) {
		first--
	}
	if first == i {
		return 0, false
	}
	return first, first == 0 || r.toks[first-1].kind == markToken || r.talkBefore(first-1)
}

// signedName: a last line or last words that are a name after thanks: "Thanks, Hal".
func (r *reader) signedName() bool {
	n := len(r.toks)
	for n > 0 && (r.toks[n-1].mark('.') || r.toks[n-1].mark('!') || r.toks[n-1].mark('\n')) {
		n--
	}
	for k := range r.talk {
		h := &r.talk[k]
		if !h.is("small", "thanks") || !(r.markAt(h.last+1, ',') || r.markAt(h.last+1, '\n') || r.markAt(h.last+1, '-') || r.markAt(h.last+2, '-') || r.markAt(h.last+2, '\n')) {
			continue
		}
		i := h.last + 2
		for r.markAt(i, '\n') || r.markAt(i, '-') || r.markAt(i, '!') || r.markAt(i, '.') {
			i++
		}
		first, last, ok := r.nameFrom(i, true)
		if ok && last == n-1 && first > 0 {
			r.nameFact(first, last)
			return true
		}
	}
	return false
}

// nameFact records a name as it was written; one in all small or all capital letters
// gets the usual capitals.
func (r *reader) nameFact(first, last int) {
	said := r.said(first, last)
	r.name(first, last)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(properCase(said)), first, last)
}

func properCase(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if s != strings.ToLower(s) && (s != strings.ToUpper(s) || len(s) < 4) {
		return s
	}
	b := []rune(strings.ToLower(s))
	start := true
	for i, c := range b {
		if start {
			b[i] = []rune(strings.ToUpper(string(c)))[0]
		}
		start = c == ' ' || c == '-' || c == '.' || (c == '\'' || c == '’') && i == 1
	}
	out := strings.ReplaceAll(string(b), " And ", " and ")
	return strings.ReplaceAll(out, " Y ", " y ")
}

// bareName reads the answer to "what's your name?" without an introduction.
func (r *reader) bareName() {
	if r.firstTalk("refuse") != nil {
		return
	}
	i := 0
	for i < len(r.toks) && (r.toks[i].kind == markToken || r.smallTalkAt(i) > i || r.wordAt(i, "its", "it", "is", "the", "sure", "yes", "yeah", "ok", "okay", "well", "um", "es", "si", "claro", "oh", "first", "name")) {
		if end := r.smallTalkAt(i); end > i {
			i = end
			continue
		}
		i++
	}
	first, last, ok := r.answerName(i)
	if !ok || i > 0 && r.wordAt(i-1, "its", "is", "it") && !r.surelyName(&hit{}, first, last) {
		return
	}
	r.nameFact(first, last)
}

func (r *reader) smallTalkAt(i int) int {
	for n := range r.talk {
		h := &r.talk[n]
		if h.first == i {
			if _, ok := h.has("small"); ok {
				return h.last + 1
			}
			if v, _ := h.has("say"); v == "yes" && !(r.toks[i].word != nil && r.toks[i].word.given) {
				return h.last + 1
			}
		}
	}
	return i
}

// answerName takes the name at the start of an answer and checks that what follows is
// no sentence of which it is a part.
func (r *reader) answerName(i int) (first, last int, ok bool) {
	first, last, ok = r.nameFrom(i, false)
	if !ok || last-first+1 > maxNameWords+2 {
		return 0, 0, false
	}
	next := last + 1
	if next < len(r.toks) && r.toks[next].kind == wordToken && !r.toks[next].used && !r.nameEnds(next) && !r.wordAt(next, "wants", "and", "last", "zip") {
		return 0, 0, false
	}
	if next < len(r.toks) && r.markAt(next, '?') {
		return 0, 0, false
	}
	return first, last, true
}

// wholeName reads the bare answer to "what's your name?" before its words are looked
// at otherwise: Hal White is no color.
func (r *reader) wholeName() {
	if r.asked(fitcheck.TopicName) && (r.markAt(1, ',') && r.turned(0, 1) || r.markAt(1, '-') && r.markAt(3, ',') && r.turned(0, 3)) {
		return
	}
	if !r.asked(fitcheck.TopicName) || r.firstTalk("refuse") != nil {
		return
	}
	first, last, n := -1, -1, 0
	for i := range r.toks {
		t := &r.toks[i]
		switch {
		case t.used:
			if first >= 0 && last < i-1 && !r.toks[i-1].mark(',') && !r.toks[i-1].used && r.toks[i-1].kind == wordToken && last != i-1 {
				return
			}
			continue
		case n > 0 && (t.mark('-') && !t.glued || t.mark('(')):
			if n <= 4 {
				r.nameFact(first, last)
			}
			return
		case t.kind == markToken:
			if n > 0 && r.sentenceEnd(i) && !(t.text[0] == '.' && (len(r.toks[i-1].text) == 1 || r.titleOrInitial(i-1))) && !r.onlyUsedAfter(i) {
				if n <= 4 && r.smallAfter(i+1) {
					r.nameFact(first, last)
				}
				return
			}
			if t.text[0] == ',' && n == 1 && r.turned(first, i) {
				return
			}
			if t.text[0] == '?' || (t.text[0] == ',' && !r.spelledFrom(i+1) || t.text[0] == '.' && i > last+1) && n > 0 && !r.onlyUsedAfter(i) {
				return
			}
			continue
		case t.kind != wordToken:
			return
		case first < 0 && (r.smallTalkAt(i) > i || r.leadWord(i)):
			continue
		case n > 0 && r.spelledFrom(i) && r.markAt(i-1, ','):
			r.nameFact(first, last)
			return
		case t.is("in", "from") && r.onlyUsedAfter(i):
			continue
		}
		if n == 0 && t.word != nil && !t.word.given && !t.is("mr", "mrs", "ms", "dr", "sr", "sra", "j", "x") || negWords[t.text] && n == 0 {
			return
		}
		if n > 0 && (t.word != nil && (t.word.filler && !t.is("la", "del", "las", "los", "el") || negWords[t.text]) || t.is("will", "wants", "can", "here", "said", "in", "is", "from", "and", "y", "on", "at", "needs")) {
			return
		}
		if first < 0 {
			first = i
		}
		last = i
		n++
	}
	if n == 0 || n > 5 || n == 1 && len(r.toks[first].text) < 2 {
		return
	}
	r.nameFact(first, last)
}

// turned reads "Morrow, Tess".
func (r *reader) turned(first, comma int) bool {
	if r.wordAt(first, "hi", "hello", "hey", "ok", "okay", "sure", "yes", "yeah", "yep", "thanks", "no", "well", "hola", "si") || comma+2 != len(r.toks) || r.toks[comma+1].kind != wordToken ||
		r.toks[comma+1].word != nil && !r.toks[comma+1].word.given || r.toks[comma+1].word == nil && comma < first+3 || r.toks[first].word != nil && r.toks[first].word.given {
		return false
	}
	name := properCase(r.said(comma+1, comma+1)) + " " + properCase(r.said(first, comma-1))
	r.name(first, comma+1)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(name), first, comma+1)
	return true
}

// smallAfter: nothing but small talk and places follow.
func (r *reader) smallAfter(i int) bool {
	for i < len(r.toks) {
		if end := r.smallTalkAt(i); end > i {
			i = end
			continue
		}
		if r.toks[i].kind != markToken && !r.toks[i].used && !r.wordAt(i, "you", "u", "too") {
			return false
		}
		i++
	}
	return true
}

// spelledFrom: "K-R-Z-Y": a word spelled out.
func (r *reader) spelledFrom(i int) bool {
	for k := 0; k < 3; k++ {
		if i+2*k >= len(r.toks) || r.toks[i+2*k].kind != wordToken || len(r.toks[i+2*k].text) != 1 || k < 2 && !r.markAt(i+2*k+1, '-') {
			return false
		}
	}
	return true
}

// leadWord: small words before a bare name: "it's Dana", "sure, Dana".
func (r *reader) leadWord(i int) bool {
	return r.wordAt(i, "its", "it", "is", "thats", "sure", "yes", "yeah", "ok", "okay", "well", "um", "es", "si", "claro", "oh", "hi", "hello", "hey", "name")
}

func (r *reader) onlyUsedAfter(i int) bool {
	for i++; i < len(r.toks); i++ {
		if !r.toks[i].used && r.toks[i].kind != markToken {
			return false
		}
	}
	return true
}
