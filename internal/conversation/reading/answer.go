package reading

import "example.com/intake-bot/internal/fitcheck"

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
		r.noPhotos()
	}
	dontknow, usual := r.firstTalk("dontknow"), r.firstTalk("usual")
	refuse := r.firstTalk("refuse")
	for _, t := range r.Asked {
		if t == fitcheck.TopicConfirm || r.known(t) {
			continue
		}
		switch {
		case dontknow != nil && !r.questioned(dontknow.last):
			r.dontKnow(t, dontknow)
		case usual != nil && (t.OfUnit() && !t.OfLength()):
			r.usual(t, usual)
		case refuse != nil:
			r.out.DontKnow = append(r.out.DontKnow, t)
		}
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
		if !r.doubtful(t) {
			r.fact(t, 0, fitcheck.Choice("unsure"), h.first, h.last)
			return
		}
	}
	r.out.DontKnow = append(r.out.DontKnow, t)
}

func (r *reader) usual(t fitcheck.Topic, h *hit) {
	if t == fitcheck.TopicWant && !r.doubtful(t) {
		r.fact(t, 0, fitcheck.Choice(fitcheck.WantUnsure), h.first, h.last)
		return
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
	corrected := len(r.out.Facts) > 0 || len(r.out.Unclear) > 0
	yes, no := -1, -1
	for n := range r.talk {
		h := &r.talk[n]
		v, _ := h.has("say")
		switch {
		case v == "no" && r.negated(h.first) && h.first > 0 && r.wordAt(h.first-1, "yes"):
		case v == "yes" && (r.notYet(h) || r.wordAt(h.last+1, "me", "if")):
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
		if m := r.firstTalk("maybe"); m != nil && !r.wordAt(m.first, "let", "wait", "hold") {
			r.unclear(fitcheck.TopicConfirm, 0, WhyChoice, nil, m.first, m.last)
		}
	}
}

// notYet: a word like "right" that leads on to something else than a yes: "yes I have
// a question", "ok but when does it ship".
func (r *reader) notYet(h *hit) bool {
	i := h.last + 1
	for r.markAt(i, ',') || r.markAt(i, '.') || r.markAt(i, '!') {
		i++
	}
	if r.wordAt(i, "but", "so", "pero") || r.wordAt(i, "i") && r.wordAt(i+1, "have", "still", "need", "want", "got") || r.wordAt(i, "im", "not", "no", "wait", "let", "ill", "hold") {
		return !r.wordAt(i, "no") || !r.wordAt(i+1, "changes", "problem", "problems", "issues")
	}
	return false
}

// clauseIs says whether the phrase starts its clause or fills it, as an answer does.
func (r *reader) clauseIs(h *hit) bool {
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

// noPhotos: a number of photos counts only as "none": photos are counted as they come.
func (r *reader) noPhotos() {
	for i := range r.toks {
		if r.wholeAt(i) == 0 && !r.used(i) {
			r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(0), i, i)
			return
		}
	}
}
