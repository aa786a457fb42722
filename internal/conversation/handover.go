package conversation

import (
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// conclude ends the talk: a complete and confirmed lead, or one that a person must
// see to.
func (t *turn) conclude() error {
	m := &t.talk.Memory
	m.Asking = nil
	if !m.Confirmed && m.Relisted && m.Said["summary.head"] >= mostLists {
		t.say.add(t.summary()) // put right at the last: it is said back, and not asked about again
	}
	if len(t.blockers()) > 0 || !m.Confirmed {
		return t.toStaff()
	}
	t.say.add(t.line("end.ready", 0, wording.Args{"name": t.comma(), "next": t.nextLine("quote"), "ref": t.talk.Ref}))
	return t.move(HandedOver)
}

func (t *turn) comma() string {
	if name := t.talk.text(fitcheck.TopicName, 0); name != "" {
		return " " + firstName(name)
	}
	return ""
}

// toStaff hands the lead to a person as it is.
func (t *turn) toStaff() error {
	t.talk.Memory.Asking = nil
	switch {
	case t.talk.Memory.Foreign:
		t.say.add(t.line("answer.other_language", 0, nil))
	case t.talk.Memory.PersonAsked && t.heard.sorry:
		t.say.add(t.line("answer.sorry", 0, nil))
	case t.talk.Memory.PersonAsked:
		t.say.add(t.line("answer.person", 0, nil))
	case t.talk.Memory.Abroad:
		t.say.add(t.line("end.not_ours.place", 0, nil))
	}
	t.whyNotOurs()
	if t.talk.Memory.Hurt {
		return t.move(WithStaff) // nothing beside the emergency number matters now
	}
	t.say.add(t.line("end.person", 0, wording.Args{"next": t.nextLine("person"), "ref": t.talk.Ref}))
	return t.move(WithStaff)
}

// whyNotOurs tells honestly why a person has to look at it.
func (t *turn) whyNotOurs() {
	told := map[string]bool{}
	tell := func(key string) {
		if t.book.Has(key) && !told[key] {
			told[key] = true
			t.say.add(t.line(key, 0, nil))
		}
	}
	for i, u := range t.talk.Units() {
		if i >= len(t.check.Units) || t.check.Units[i].Replace != fitcheck.ReplaceStaff {
			if i < len(t.check.Units) && contradicts(t.check.Units[i].Verdict) {
				tell("end.no_fit")
			}
			continue
		}
		if slices.Contains([]string{fitcheck.StyleGlass, fitcheck.StyleTubular, fitcheck.StyleSelfFlashing, fitcheck.StyleNoneYet}, u.Style) {
			tell("end.not_ours." + u.Style)
		}
	}
}

func contradicts(v fitcheck.Verdict) bool {
	return v == fitcheck.VerdictRemeasure || v == fitcheck.VerdictNoFit
}

// afterwards answers what comes in when the lead is with a person already: it is added
// and passed on, and the talk is not begun again.
func (t *turn) afterwards() error {
	h := &t.heard
	t.talk.Memory.Asking = nil
	t.firstAid()
	if h.asks(reading.RequestUndo) && len(h.entries) == 0 {
		t.takeBack()
	}
	if h.asks(reading.RequestPrice) {
		t.say.add(t.priceLine())
	}
	for _, a := range h.answers {
		t.say.add(a)
	}
	t.ackLooks()
	ref := wording.Args{"ref": t.talk.Ref}
	switch {
	case h.off:
		t.out.Alert = true
		t.say.add(t.line("end.called_off", 0, nil))
	case h.asks(reading.RequestPerson) && t.talk.State == HandedOver:
		return t.toStaff()
	case len(h.entries) > 0 || len(h.unclear) > 0:
		t.out.Alert = true
		t.ackNew()
		t.ackChanged()
		t.ackUnclear()
		t.say.add(t.vary("end.passed", ref))
	case h.passes(), h.asks(reading.RequestPerson):
		t.out.Alert = true
		t.say.add(t.vary("end.waiting", ref))
	case h.wordy && h.nothing() && len(t.say.parts) == 0: // for staff to read
		t.out.Alert = true
		t.say.add(t.vary("end.passed", ref))
	}
	return nil
}
