package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// answers reads yes and no, "don't know" and "doesn't matter" as answers to what was
// asked.
func (r *reader) answers() {
	if len(r.Asked) == 0 {
		return
	}
	if r.asked(fitcheck.TopicConfirm) {
		r.confirm()
	}
	if r.asked(fitcheck.TopicPhotos) {
		r.photos()
	}
	if r.asked(fitcheck.TopicFrameCondition) {
		r.noFrame()
	}
	for n := range r.talk {
		switch h := &r.talk[n]; {
		case r.toks[h.first].used:
		case h.is("say", "dontknow") && r.forgotThing(h):
		case h.is("say", "dontknow") && r.wordsIn(max(0, h.first-1), h.last, "how") && r.wordsIn(h.last, min(h.last+2, len(r.toks)), "if"):
		case h.is("say", "dontknow") && r.wordsIn(h.first, h.last+1, "puedo", "subir") && r.wordsIn(0, len(r.toks), "rato", "manana", "luego", "despues"):
			// "ahorita no puedo subir, te mando foto al rato": it is to come
		case h.is("say", "dontknow") && !r.questioned(h.last):
			r.unknown(h, r.dontKnow)
		case h.is("say", "refuse"):
			r.unknown(h, func(t fitcheck.Topic, _ *hit) { r.out.DontKnow = append(r.out.DontKnow, t) })
		}
	}
	r.bareNo()
	for n := range r.talk {
		if h := &r.talk[n]; h.is("say", "usual") {
			r.leftToShop(h)
		}
	}
}

// leftToShop gives a "whatever" to the questions that it answers: all that are still
// open, or, where another answer follows, the one whose turn it is.
func (r *reader) leftToShop(h *hit) {
	if _, end := r.sentence(h.first); r.wordAt(h.first, "either") && r.wordsIn(h.first+1, end+1, "or") {
		return // "either 2 or 3"
	}
	if r.saysWhich(h) {
		return
	}
	if r.bestForWhat(h) {
		r.request(RequestQuestion)
		return
	}
	if r.wordAt(h.last, "regular", "normal", "usual", "standard") && r.saysUse(h.last+1) {
		return // "just a regular house"
	}
	var open []fitcheck.Topic
	for _, t := range r.openTopics() {
		if t.OfUnit() && !t.OfLength() && !slices.Contains(r.out.Usual, t) {
			open = append(open, t)
		}
	}
	follows := slices.ContainsFunc(r.where, func(w saidAt) bool { return w.first > h.last && r.asked(w.topic) })
	if follows && len(open) > 1 {
		open = []fitcheck.Topic{r.turnOf(h, open)}
	}
	for _, t := range open {
		r.usual(t, h)
	}
}

// firstTalk is the first "say" of a kind that is not part of a denial.
func (r *reader) firstTalk(value string) *hit {
	for n := range r.talk {
		if r.talk[n].is("say", value) {
			return &r.talk[n]
		}
	}
	return nil
}

// dontKnow: some topics have a value for it.
func (r *reader) dontKnow(t fitcheck.Topic, h *hit) {
	switch t {
	case fitcheck.TopicStyle, fitcheck.TopicFrameCondition, fitcheck.TopicWant:
		if r.guessed(t) {
			return // "I think it's a metal frame on a box, no idea if I need all of it": a yes to the guess is enough
		}
		if !r.doubtful(t) {
			r.fact(t, 0, fitcheck.Choice("unsure"), h.first, h.last)
			return
		}
	}
	r.out.DontKnow = append(r.out.DontKnow, t)
}

// guessed: the message says of the topic what it likely is.
func (r *reader) guessed(t fitcheck.Topic) bool {
	return slices.ContainsFunc(r.out.Unclear, func(u Unclear) bool { return u.Topic != nil && *u.Topic == t && u.Why == WhyRough })
}

// asksForUsual: "what do most people get?" is all that is said, and asks for what the shop
// would choose, which is its answer.
func (r *reader) asksForUsual() bool {
	if len(r.out.Usual) == 0 || len(r.out.Facts) > 0 {
		return false
	}
	if _, last := r.sentence(0); last+1 < len(r.toks) {
		return false
	}
	for n := range r.talk {
		if h := &r.talk[n]; h.is("say", "usual") && r.wordsIn(max(0, h.first-1), h.last+1, "what", "whats", "most", "que", "cual") {
			return true
		}
	}
	return false
}

func (r *reader) usual(t fitcheck.Topic, h *hit) {
	if t == fitcheck.TopicWant && !r.doubtful(t) {
		r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), h.first, h.last)
		return
	}
	if t == fitcheck.TopicStyle && r.wordsIn(h.first, h.last+1, "standard", "usual", "regular", "normal", "estandar") {
		if !r.doubtful(t) {
			r.unclear(t, 0, WhyChoice, nil, h.first, h.last) // no style is the usual one
		}
		return
	}
	if next := h.last + 1; r.wordAt(h.first, "both", "all") && r.wordAt(h.last, "are", "is") && next < len(r.toks) && r.toks[next].kind == wordToken {
		return // "both are the metal kind"
	}
	r.dropDoubt(t)
	r.out.Usual = append(r.out.Usual, t)
}

// dropDoubt takes a doubt about a topic back: what is left to the shop is not asked again.
func (r *reader) dropDoubt(t fitcheck.Topic) {
	kept := r.out.Unclear[:0]
	for _, u := range r.out.Unclear {
		if u.Topic == nil || *u.Topic != t {
			kept = append(kept, u)
		}
	}
	r.out.Unclear = kept
}

// confirm reads yes or no; a correction beside it stands for itself.
func (r *reader) confirm() {
	corrected := len(r.out.Unclear) > 0 || slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		if f.Topic == fitcheck.TopicCount && (r.asked(f.Topic) || f.Value == fitcheck.Value(fitcheck.Whole(1))) {
			return false // "yes, and it's just the one"
		}
		return f.Topic != fitcheck.TopicName && f.Topic != fitcheck.TopicPhone && f.Topic != fitcheck.TopicEmail
	})
	if !corrected && (r.confirmedAsWhole() || r.confirmSaid()) {
		return
	}
	yes, no := -1, -1
	for n := range r.talk {
		h := &r.talk[n]
		v, _ := h.has("say")
		switch {
		case v == "no" && r.negated(h.first) && h.first > 0 && r.wordAt(h.first-1, "yes"):
		case v == "yes" && r.notAYes(h), v == "no" && r.notANo(h):
		case v == "yes" && h.last > h.first && r.yesNoQuestion(h.first): // "is everything correct on your end?"
		case v == "yes" && h.first == h.last && r.wordAt(h.first, "copy", "exactamente", "efectivamente", "roger") && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken && !r.wordAt(h.last+1, "that", "si", "todo"):
		case v == "yes" && h.first == h.last && (r.wordAt(h.first, "y") || r.wordAt(h.first, "va", "si", "ya") && r.markAt(r.sentenceLast(h.first), '?')) && r.wordAt(h.last+1, "con", "puesto", "puestos", "el", "la", "lo", "los", "cuanto", "que", "si", "a", "no", "es", "se"): // "y con el envío, ¿cuánto?"
		case v == "yes" && h.last > h.first && r.halfYes(h):
		case v == "yes" && (r.excepted(h.last+1) || r.notYet(h) || r.wordAt(h.last+1, "me", "if")):
		case v == "no" && h.last == h.first && r.wordAt(h.last+1, "photo", "photos", "pic", "pics", "picture", "pictures", "foto", "fotos", "camera", "camara", "email", "mail", "correo", "rush", "hurry"):
		case v == "no" && h.last == h.first && r.wordAt(h.first-1, "si") && (r.wordAt(h.first-2, "y") || r.markAt(r.sentenceLast(h.first), '?')) && h.last+1 < len(r.toks) && r.toks[h.last+1].kind == wordToken: // "¿y si no queda me lo cambian?"
		case v == "no" && r.wordAt(h.last+1, "wait", "hold", "let", "not") && h.last == h.first:
		case v == "yes" && yes < 0 && !r.negated(h.first) && !r.questioned(h.first) && r.clauseIs(h):
			yes = n
		case v == "no" && no < 0 && (r.clauseIs(h) || n == 0 && h.first == 0):
			no = n
		}
	}
	switch {
	case corrected:
	case no >= 0 && yes >= 0 && r.talk[no].last-r.talk[no].first > 0 || no >= 0 && yes < 0:
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmNo), r.talk[no].first, r.talk[no].last)
	case no >= 0:
		if yes < no {
			return
		}
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmNo), r.talk[no].first, r.talk[no].last)
	case yes >= 0:
		r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmYes), r.talk[yes].first, r.talk[yes].last)
	default:
		if len(r.toks) >= 3 && r.toks[0].text == "10" && r.markAt(1, '-') && r.toks[2].text == "4" {
			r.fact(fitcheck.TopicConfirm, 0, fitcheck.Choice(fitcheck.ConfirmYes), 0, 2)
			return
		}
		if m := r.firstTalk("maybe"); m != nil && !r.wordAt(m.first, "let", "wait", "hold") && r.firstTalk("later") == nil { // not "hmm let me go check"
			r.unclear(fitcheck.TopicConfirm, 0, WhyChoice, nil, m.first, m.last)
		}
	}
}

// excepted: what follows takes something out of a yes: "all good except my name".
func (r *reader) excepted(i int) bool {
	for ; i < len(r.toks); i++ {
		if r.wordAt(i, "except", "excepting", "besides", "excepto", "menos", "apart", "aside") || r.wordAt(i, "other") && r.wordAt(i+1, "than") || r.wordAt(i, "only", "one", "just", "just") && r.wordAt(i+1, "thing", "change", "correction", "fix", "mistake", "problem") {
			return true
		}
	}
	return false
}

// halfYes: a longer yes that the rest of its words takes back: "not sure all the numbers are
// right", "measurements are right, color isn't".
func (r *reader) halfYes(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)
	for i := range r.toks {
		switch {
		case i >= h.first && i <= h.last:
		case r.wordAt(i, "isnt", "arent", "wasnt"), r.wordAt(i, "wrong", "mal", "off") && r.wordAt(i-1, "is", "are", "was", "looks", "esta", "estan"):
			return true
		case i >= from && i <= to && r.wordAt(i, "not", "most", "but", "unless", "until", "has", "pero", "creo", "error", "menos", "guess"):
			return !r.wordAt(i, "not") || !r.wordsIn(i+1, min(i+4, len(r.toks)), "giving", "bad")
		case r.wordAt(i, "make") && r.wordAt(i+1, "sure"):
			return true
		}
	}
	return r.wordAt(h.last, "agree") && r.wordAt(h.last+1, "on", "with") || r.wordAt(h.last, "right") && r.wordAt(h.last+1, "handed", "side", "away")
}

// notYet: a word like "right" that leads on to something else than a yes: "yes I have
// a question", "ok but when does it ship".
func (r *reader) notYet(h *hit) bool {
	i, ended := h.last+1, false
	for r.markAt(i, ',') || r.markAt(i, '.') || r.markAt(i, '!') {
		ended = ended || !r.markAt(i, ',')
		i++
	}
	k := i
	for r.wordAt(k, "but", "and", "pero", "y", "please", "just", "por", "favor") {
		k++
	}
	if k > i && (r.wordAt(k, "call", "text", "email", "phone", "ring") && r.wordAt(k+1, "me", "us") || r.wordAt(k, "llameme", "llamenme", "llamen", "marqueme", "marquenme")) {
		return false // "yes, but call me when you have it"
	}
	if r.wordAt(i, "let") && r.wordAt(i+2, "know") || ended && r.wordAt(i, "im", "ill") && r.wordsIn(i+1, i+3, "home", "here", "around", "free", "good", "up", "available") {
		return false // "correct. let me know if you need anything else", "yes. I'm home today"
	}
	if r.wordAt(i, "so") && r.requestAt(i+1) {
		return false // "correct. so how much is it"
	}
	if r.wordAt(i, "but", "so", "pero") || r.wordAt(i, "i") && r.wordAt(i+1, "have", "still", "need", "want", "got") || r.wordAt(i, "im", "not", "no", "wait", "let", "ill", "hold") {
		return !r.wordAt(i, "no") || !r.wordAt(i+1, "changes", "problem", "problems", "issues")
	}
	return false
}

// requestAt: what the token begins is asked, or is no statement.
func (r *reader) requestAt(i int) bool {
	for n := range r.talk {
		if h := &r.talk[n]; h.first >= i && h.first <= i+1 {
			return h.has1("req") && !h.is("req", "none")
		}
	}
	return false
}

// clauseIs says whether the phrase starts its clause or fills it, as an answer does.
func (r *reader) clauseIs(h *hit) bool {
	if h.first < h.last && r.wordAt(h.first-1, "i", "we") && (h.first == 1 || r.softBreak(h.first-2) || r.sentenceEnd(h.first-2)) {
		return true // "I looked it over and I can't find anything wrong"
	}
	return h.first == 0 || r.wordAt(h.first-1, "says", "said", "wife", "husband", "dice") || r.softBreak(h.first-1) || r.sentenceEnd(h.first-1) || r.talkBefore(h.first-1) ||
		r.only(r.clauseStart(h.first), h.first-1)
}

func (r *reader) talkBefore(i int) bool {
	for n := range r.talk {
		if r.talk[n].first <= i && i <= r.talk[n].last {
			return true
		}
	}
	return false
}

// inLongYes: the words are part of a longer yes.
func (r *reader) inLongYes(h *hit) bool {
	for n := range r.talk {
		if o := &r.talk[n]; o.first < o.last && o.first <= h.first && h.last <= o.last && o.is("say", "yes") {
			return true
		}
	}
	return false
}

// noFrame: "there is no metal frame" to what the frame is like: the plastic is screwed down
// bare.
func (r *reader) noFrame() {
	if r.known(fitcheck.TopicStyle) || r.known(fitcheck.TopicFrameCondition) || r.tookAway() {
		return
	}
	for i := range r.toks {
		if !r.wordAt(i, "frame", "marco", "frames", "marcos") || r.wordAt(i+1, "damage", "problem", "problems", "issues", "bent", "rust") {
			continue
		}
		k := i - 1
		for r.wordAt(k, "metal", "aluminum", "a", "any", "un", "de", "real", "ningun") {
			k--
		}
		if r.wordAt(k, "no") && (k == 0 || r.wordAt(k-1, "theres", "is", "has", "have", "got", "hay") || r.toks[k-1].kind == markToken) || r.wordAt(k, "hay", "tiene", "lleva", "trae", "tengo") && r.wordAt(k-1, "no") || r.wordAt(k, "have", "isnt") && r.wordAt(k-1, "doesnt", "dont", "there") {
			r.fact(fitcheck.TopicStyle, 0, fitcheck.Choice(fitcheck.StyleBareDome), k, i)
			return
		}
	}
}
