package conversation

import (
	"fmt"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// updateLead brings the lead up to what the talk now knows.
func (t *turn) updateLead() {
	l := &t.talk.Lead
	blockers := t.blockers()
	l.Qualified = len(blockers) == 0
	l.Urgent = t.talk.Memory.Urgent
	l.AfterHours = t.shop.Hours != nil && !t.shop.Hours.Open(t.talk.OpenedAt)
	l.Units = make([]LeadUnit, 0, len(t.check.Units))
	for i, u := range t.talk.Units() {
		l.Units = append(l.Units, LeadUnit{Unit: u, Check: t.check.Units[i]})
	}
	if byStaff(l.Status) || t.talk.Memory.Shut {
		return
	}
	l.Status = t.status(blockers)
	l.WhyStaff = t.whyStaff(blockers)
	if l.Status == StatusReady && l.ReadyAt == nil {
		at := t.now
		l.ReadyAt = &at
	}
}

// byStaff says whether staff have the lead in hand, so that the talk no longer sets
// its status.
func byStaff(s Status) bool {
	return slices.Contains([]Status{StatusPickedUp, StatusQuoted, StatusOrdered, StatusDeclined}, s)
}

func (t *turn) status(blockers []string) Status {
	switch t.talk.State {
	case HandedOver:
		if len(blockers) > 0 || t.talk.Memory.CalledOff {
			return StatusNeedsPerson // a later word undid what was confirmed
		}
		return StatusReady
	case WithStaff, Lapsed:
		return StatusNeedsPerson
	case Silenced:
		if s := t.talk.Lead.Status; s == StatusReady || s == StatusNeedsPerson {
			return s // complete before they opted out of texts: still worth a call
		}
		return StatusClosed
	}
	return StatusOpen
}

// whyStaff says in plain words what lacks or why a person is needed.
func (t *turn) whyStaff(blockers []string) []string {
	why := []string{}
	m := t.talk.Memory
	for _, r := range []struct {
		is  bool
		say string
	}{
		{m.Hurt, "somebody is hurt"},
		{m.PersonAsked, "asked for a person"},
		{m.Lost >= lostTurns, "was not understood several times in a row"},
		{m.Foreign, "wrote in another language"},
		{m.Abroad, "writes from outside the US"},
		{m.LeftOut != "", "wants to leave one out: " + m.LeftOut},
		{m.CalledOff, "called it off"},
		{t.talk.State == Lapsed && !m.CalledOff, "stopped answering"},
		{m.Stopped, "opted out of messages"},
		{m.Unproven, "the mail's sender is not proven"},
		{m.Claims != "" && !m.Given, "says it is about " + m.Claims},
		{m.Claims != "" && m.Given, "may be the same person as " + m.Claims},
		{m.Flood != "", m.Flood},
		{t.barren(), "nothing new for many messages; it may be a program that answers"},
	} {
		if r.is {
			why = append(why, r.say)
		}
	}
	why = append(why, t.unreached()...)
	why = append(why, blockers...)
	if t.talk.State == WithStaff && len(why) == 0 {
		why = append(why, "not confirmed by the customer")
	}
	return why
}

// blockers are what keeps a lead from being qualified.
func (t *turn) blockers() []string {
	var b []string
	if !t.reachable() {
		b = append(b, "no way to reach the customer")
	}
	if p := t.placeBlocker(); p != "" {
		b = append(b, p)
	}
	if w := t.countTrouble(); w != "" {
		b = append(b, w)
	}
	units := t.talk.Units()
	if len(units) == 0 {
		b = append(b, "no skylight described yet")
	}
	for i, u := range units {
		if i >= len(t.check.Units) {
			break
		}
		if t.talk.Memory.Out[i+1] {
			b = append(b, fmt.Sprintf("unit %d: no more wanted", i+1))
			continue
		}
		for _, w := range append(t.unitBlockers(i+1, t.check.Units[i]), t.notSold(u)...) {
			if len(units) > 1 {
				w = fmt.Sprintf("unit %d: %s", i+1, w)
			}
			b = append(b, w)
		}
	}
	return b
}

func (t *turn) placeBlocker() string {
	p := t.talk.Place()
	switch states := t.shop.Rules.Sells.States; {
	case p.State == "":
		return "place not known"
	case len(states) > 0 && !slices.Contains(states, p.State):
		return "outside the shipping area: " + p.State
	}
	return ""
}

func (t *turn) unitBlockers(unit int, r fitcheck.UnitResult) []string {
	var b []string
	if r.Replace == fitcheck.ReplaceStaff {
		b = append(b, "which part to replace: "+strings.ReplaceAll(strings.Join(r.Reasons, ", "), "_", " "))
	}
	switch r.Verdict {
	case fitcheck.VerdictRemeasure:
		b = append(b, "the measurements contradict each other")
	case fitcheck.VerdictNoFit:
		b = append(b, "the measurements can't fit")
	case fitcheck.VerdictIncomplete:
		b = append(append(b, t.missingMeasures(unit, r)...), t.sizesOfNothing(unit)...)
	}
	return b
}

// sizesOfNothing are the sizes that were told before it was known, or asked, what they are of.
func (t *turn) sizesOfNothing(unit int) []string {
	var b []string
	for _, p := range append(slices.Clone(t.talk.Memory.Early), t.talk.Memory.Pending) {
		if p != nil && p.Unit == unit && p.Why == reading.WhyWhich {
			b = append(b, fmt.Sprintf("a size, not known of what: %q", p.Said))
		}
	}
	return b
}

func (t *turn) missingMeasures(unit int, r fitcheck.UnitResult) []string {
	var names []string
	for _, topic := range r.Missing {
		if topic.OfLength() {
			names = append(names, strings.ReplaceAll(string(topic), "_", " ")+t.roughly(Ask{topic, unit}))
		}
	}
	if len(names) == 0 {
		return []string{"measurements incomplete"}
	}
	return []string{"missing: " + strings.Join(names, ", ")}
}
