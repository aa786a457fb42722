package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	notIntroduced = wordsOf(`les see guy an my you ha tu so do`)
	staysAsIs     = wordsOf(`stays remains same unchanged stay igual mismo sigue queda no bien correcto fine right
		correct good ok okay`)
	lastNameLater  = wordsOf(`later unknown none no withheld private same below above not`)
	tradeTitles    = wordsOf(`hermano hermana maestro maestra ingeniero inge doctor doctora licenciado contratista`)
	besideGreeting = wordsOf(`here now today already lol anyway again week day hi hey`)
)

const maxNameWords = 5

// names finds who the customer is: after an introduction, or as the bare answer.
func (r *reader) names() {
	if r.known(fitcheck.TopicName) || slices.Contains(r.out.DontKnow, fitcheck.TopicName) || r.introduced() {
		return
	}
	if r.noteName() || r.openingName() || r.lineName() || !r.asked(fitcheck.TopicName) {
		return
	}
	if r.bareName(); !r.known(fitcheck.TopicName) && !r.doubtful(fitcheck.TopicName) {
		r.closingName()
	}
}

// introduced finds "my name is …", "this is …", "… here".
func (r *reader) introduced() bool {
	for n := range r.intros {
		h := &r.intros[n]
		v, ok := h.has("intro")
		if !ok {
			continue
		}
		if r.wordsIn(h.first, h.last+1, "under") && !r.asked(fitcheck.TopicName) && !r.wordAt(h.last, "name") {
			continue // "its been under plywood"
		}
		if v == "name" && r.negated(h.first) && r.wordAt(h.first-1, "dar", "give", "share", "say", "decir", "leave", "dejar") {
			continue // "no quiero dar mi nombre todavía"
		}
		if r.talkCovers(h.first) && r.firstTalk("refuse") != nil {
			continue // "skip the name please"
		}
		if r.wordAt(h.last, "say", "read") && r.toChoose(h.last+1) {
			continue // "the order should say polycarbonate"
		}
		if r.deniedName(h) || v == "last" && r.partStays(h.last+1) {
			continue
		}
		switch v {
		case "first":
			if r.firstAndLast(n) {
				return true
			}
		case "ask":
			if first, last, ok := r.nameFrom(h.last+1, true); ok &&
				(r.asked(fitcheck.TopicName) ||
					r.wordAt(h.first, "attn", "attention") && r.givenAt(first) ||
					r.known(fitcheck.TopicPhone) && r.wordAt(h.last, "for", "por") && r.givenAt(first) ||
					r.wordAt(h.first, "ask") && r.givenAt(first) && r.sentenceFirst(h.first) == h.first &&
						(last+1 >= len(r.toks) || r.sentenceEnd(last+1))) {
				r.nameFact(first, last)
				return true
			}
		case "kin":
			if r.ownName(n) {
				continue
			}
			at := h.last + 1
			if r.markAt(at, ',') {
				at++
			}
			if first, last, ok := r.nameFrom(at, true); ok && r.asked(fitcheck.TopicName) &&
				(r.toks[first].word != nil || r.nameEnds(last+1)) {
				r.nameFact(first, last)
				return true
			}
		case "name":
			if n+1 < len(r.intros) && r.intros[n+1].is("intro", "last") && r.wordAt(h.last, "by", "is", "me") && r.firstAndLast(n) {
				return true // "I go by Summer. Last name Fields."
			}
			if r.ofThing(h) ||
				r.wordAt(h.first, "told", "tell") && r.wordAt(h.last, "its") && !r.asked(fitcheck.TopicName) && !r.givenAt(h.last+1) {
				continue // "I told you its corroded"
			}
			if first, last, ok := r.nameFrom(r.behindWhich(h), false); ok && (last > first || !r.wordAt(first, "w", "n", "u", "b")) {
				first, last = r.longerName(first, last)
				r.nameFact(first, last)
				return true
			}
			if i := r.afterIntro(h.last + 1); r.among(i, notIntroduced) && r.wordsIn(h.first, h.last+1, "name", "names") &&
				(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken && !r.markAt(i+1, ',')) {
				r.nameFact(i, i)
				return true // "name is Les"
			}
		case "im":
			if first, last, ok := r.nameAfterJob(h.last + 1); ok {
				r.nameFact(first, last)
				return true
			}
			if first, last, ok := r.nameFrom(h.last+1, true); ok && !jobWords.has(r.toks[first].text) &&
				!(r.wordAt(first, "la", "el", "the") && first < last && jobWords.has(r.toks[first+1].text)) &&
				!(r.wordAt(h.last, "somos") && !r.givenAt(first) &&
					!(r.wordAt(first, "los") && last > first && r.toks[first+1].word == nil)) &&
				r.nameEnds(last+1) && r.surelyName(h, first, last) {
				r.nameFact(first, last)
				return true
			}
		case "last":
			if r.lastAndFirst(n) {
				return true
			}
			if from, to, ok := r.nameFrom(h.last+1, false); ok && !r.asked(fitcheck.TopicName) && r.nameEnds(to+1) {
				r.nameFact(from, to)
				return true
			}
		case "behind":
			if first, ok := r.nameBefore(h.first); ok && (first == 0 || r.toks[first-1].kind == markToken) {
				r.nameFact(first, h.first-1)
				return true
			}
		case "here":
			if first, ok := r.nameBefore(h.first); ok && h.last-h.first == 0 && r.wordAt(h.first, "here") &&
				!r.wordAt(first, "moved", "moving", "relocated", "lived", "living", "came", "born", "raised", "settled") &&
				!r.wordAt(h.last+1, "are", "get", "have", "usually") &&
				!(first == h.first-1 && (jobWords.has(r.toks[first].text) || r.wordAt(first-1, "no", "not", "any", "zero"))) &&
				!r.wordsIn(first, h.first, "department", "dept", "maintenance", "facilities", "office", "crew", "team", "district",
					"services") {
				r.nameFact(first, h.first-1)
				return true
			}
		}
	}
	return r.calledName() || r.itsName() || r.signedName() || r.signedLine() || r.firmName() || r.loneName() || r.nameBesideZIP()
}

// deniedName: "no me llamo Ana, me llamo Eva", "I'm not Ann": the name after it is another's.
func (r *reader) deniedName(h *hit) bool {
	return r.wordAt(h.first-1, "no", "not") && r.wordAt(h.first, "me", "soy") ||
		r.wordAt(h.last+1, "not", "isnt", "no") || r.talksElsewhere(h)
}

// behindWhich: the name begins after ", which is": "you asked for my name, which is Dora Lind".
func (r *reader) behindWhich(h *hit) int {
	at := h.last + 1
	if !r.wordAt(h.last, "name") {
		return at
	}
	for r.markAt(at, ',') || r.markAt(at, '-') || r.markAt(at, ';') {
		at++
	}
	if r.wordAt(at, "which", "that", "it", "thats", "its", "que") {
		for at++; r.wordAt(at, "is", "would", "will", "be", "should", "es"); at++ {
		}
		if r.toks[at-1].kind == wordToken && r.wordAt(at-1, "is", "be", "es", "its", "thats") {
			return at
		}
	}
	return h.last + 1
}

// partStays: "el apellido es igual", "last name stays the same": no name.
func (r *reader) partStays(i int) bool {
	for r.wordAt(i, "is", "es", "the", "el", "esta", "se", "still", "all") {
		i++
	}
	return r.among(i, staysAsIs)
}

// lastNext: after one word and a comma stands "last name".
func (r *reader) lastNext(n int) bool {
	if n+1 >= len(r.intros) {
		return false
	}
	v, _ := r.intros[n+1].has("intro")
	return v == "last" && r.intros[n+1].first-r.afterIntro(r.intros[n].last+1) == 2 && r.markAt(r.intros[n+1].first-1, ',')
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
		from, to, ok := r.nameFrom(r.intros[k].last+1, false)
		if at := r.intros[k].last + 1; !ok && at < len(r.toks) && r.toks[at].kind == wordToken && !r.among(at, lastNameLater) &&
			(at+1 == len(r.toks) || r.toks[at+1].kind == markToken) {
			from, to, ok = at, at, true // "last name Price"
		}
		if ok {
			name := properCase(r.said(first, end)) + " " + properCase(r.said(from, to))
			r.name(first, to)
			r.fact(fitcheck.TopicName, 0, fitcheck.Text(name), first, to)
			return true
		}
	}
	return false
}

// lastAndFirst: "the last name is Vandermeer, first name Ruth".
func (r *reader) lastAndFirst(n int) bool {
	if n+1 >= len(r.intros) || !r.intros[n+1].is("intro", "first") {
		return false
	}
	from, to, ok := r.nameFrom(r.intros[n].last+1, false)
	if at := r.intros[n].last + 1; !ok && at < len(r.toks) && r.toks[at].kind == wordToken {
		from, to, ok = at, at, true
	}
	first, end, given := r.nameFrom(r.intros[n+1].last+1, false)
	if !ok || !given || r.intros[n+1].first > to+3 ||
		r.wordAt(first, "stays", "stay", "same", "remains", "unchanged", "igual", "sigue") {
		return false
	}
	r.name(from, end)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(properCase(r.said(first, end))+" "+properCase(r.said(from, to))), from, end)
	return true
}

// longerName: "Whitfeld, Dana Whitfeld": the whole name that follows says more.
func (r *reader) longerName(first, last int) (int, int) {
	if !r.markAt(last+1, ',') && !r.markAt(last+1, '.') {
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
	for r.markAt(i, ':') ||
		r.wordAt(i, "el", "la", "the", "su") && i+1 < len(r.toks) && len(r.toks[i+1].text) > 1 && r.titleOrInitial(i+1) ||
		r.wordAt(i, "spelled", "actually", "really") || r.markAt(i, '-') ||
		r.markAt(i, ',') && !strict || r.wordAt(i, "is", "es") ||
		r.wordAt(i, "its") && !r.wordAt(i-1, "me") {
		i++
	}
	for r.wordAt(i, "el", "la") && r.among(i+1, tradeTitles) && r.nameWord(i+2, true) {
		i += 2 // "soy la hermana Lucha"
	}
	first, last = i, i-1
	if r.wordAt(i, "el", "ella", "him", "her", "them", "ellos") && !r.nameWord(i+1, true) {
		return first, last, false // "a nombre de él"
	}
	if r.wordAt(i, "hope") && (i == 0 || r.toks[i-1].kind == markToken) &&
		r.wordAt(i+1, "that", "this", "it", "you", "youre", "so", "to", "all", "everything") {
		return first, last, false // "call me, hope that makes sense"
	}
	for last-first+1 < maxNameWords*2 && last+1 < len(r.toks) {
		j := last + 1
		switch {
		case j > first && (r.wordAt(j-1, "jr", "sr") || r.markAt(j-1, '.') && r.wordAt(j-2, "jr", "sr")) && !r.markAt(j, '.'):
			// "Jim Jr. Jim Sr. is my dad"
			return first, last, r.likelyName(first, last, strict)
		case j > first && r.wordAt(j, "w") && r.wordAt(j+1, "the", "my", "our", "a", "your"): // "Toya w the HOA"
			return first, last, r.likelyName(first, last, strict)
		case j == first && r.wordAt(j, "big", "lil") && r.givenAt(j+1): // "Big Ron"
			last = j
		case j > first && r.wordAt(j, "de") && r.wordAt(j+1, "la", "el", "los", "las") && !r.nameWord(j+2, true):
			return first, last, r.likelyName(first, last, strict) // "el pastor Efraín de la iglesia"
		case j > first &&
			(r.wordAt(j, "will") && r.verbAfterWill(j+1) ||
				r.wordAt(j, "hope") && r.wordAt(j+1, "that", "this", "it", "you", "all", "to")):
			return first, last, r.likelyName(first, last, strict)
		case j > first && r.wordAt(j, "la", "el", "los") && !r.wordAt(j-1, "de", "y"), j > first && r.wordAt(j, "de", "del", "la") &&
			!r.nameWord(j+1, true), j > first && r.wordAt(j, "de") &&
			r.wordAt(j+1, "mantenimiento", "ventas", "compras", "limpieza", "obra", "oficina", "proyectos", "techos"):
			return first, last, r.likelyName(first, last, strict)
		case r.nameWord(j, strict || j > first):
			last = j
		case j > first && (r.wordAt(j, "and", "y", "e") || r.markAt(j, '&')) && r.nameWord(j+1, true) && r.properName(j+1):
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

// nameBefore reads a name that ends before token i: "Hal here".
func (r *reader) nameBefore(i int) (first int, ok bool) {
	first = i
	if i == 2 && r.toks[0].word != nil && r.toks[0].word.given && r.toks[1].kind == wordToken &&
		!(r.toks[1].word != nil && (r.toks[1].word.filler || negWords.has(r.toks[1].text))) &&
		!r.wordAt(1, "and", "is", "not", "over") {
		return 0, true // "Elaine Good here"
	}
	for first > 0 && i-first < 3 && r.nameWord(first-1, true) && (r.toks[first-1].word == nil || r.toks[first-1].word.given) {
		first--
	}
	if first == i {
		return 0, false
	}
	if first > 0 && r.titleOrInitial(first-1) && len(r.toks[first-1].text) > 1 {
		first-- // "Officer Dan Pike here"
	}
	if r.asked(fitcheck.TopicName) && first > 0 && r.givenAt(first) && !r.toks[first].word.common &&
		r.among(first-1, besideGreeting) && (i+1 >= len(r.toks) || r.toks[i+1].used || r.toks[i+1].kind == markToken) {
		return first, true // "it's been raining all week over here pat hale here 03801"
	}
	return first, first == 0 || r.toks[first-1].kind == markToken || r.talkBefore(first-1)
}

// calledName: "please call Ray 806-555-0177": a name between the call and its number.
func (r *reader) calledName() bool {
	for i := range r.toks {
		if !r.wordAt(i, "call", "text", "contact", "reach", "phone") || !r.givenAt(i+1) ||
			r.negated(i) ||
			r.wordsIn(max(0, i-5), i, "tried", "told", "said", "when", "if", "did", "dont", "used") {
			continue
		}
		last := i + 1
		if last+1 < len(r.toks) && r.surname(last+1) && !r.wordAt(last+1, "at", "on") {
			last++
		}
		k := last + 1
		for r.wordAt(k, "at", "on", "back") || r.markAt(k, ',') || r.markAt(k, ':') {
			k++
		}
		if k < len(r.toks) && r.toks[k].kind == phoneToken {
			r.nameFact(i+1, last)
			r.request(RequestPerson)
			return true
		}
	}
	return false
}

// talksElsewhere: "I was talking to Mike": only what opens a sentence, "speaking with Dan Moss", names the writer.
func (r *reader) talksElsewhere(h *hit) bool {
	return r.wordAt(h.first, "speaking", "talking", "chatting") && h.first > 0 && !r.sentenceEnd(h.first-1) &&
		!r.markAt(h.first-1, ',')
}
