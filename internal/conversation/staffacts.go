package conversation

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// What staff do in a talk goes through the same pure code as what a customer says: the
// ledger keeps it, the check runs at once, and the lead follows.

// ErrNotNow says that staff can't do this while the talk stands as it does.
var ErrNotNow = errors.New("not possible as the talk stands")

// Look is what the check says of a talk as it stands.
func Look(talk Talk, shop *Shop) fitcheck.Result {
	return fitcheck.Check(talk.Job(site(talk.Place())), shop.Rules)
}

// StaffFact adds what a person of staff knows better, or newly. It stands from then on,
// marked as theirs, until the customer or staff say otherwise.
func StaffFact(talk Talk, e Entry, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if err := t.talk.takes(e); err != nil {
			return err
		}
		e.By, e.Message, e.Undone = FromStaff, 0, false
		t.talk.add(e)
		return nil
	})
}

// takes says whether a fact can be one of this talk.
func (t *Talk) takes(e Entry) error {
	switch {
	case e.Value == nil:
		return fmt.Errorf("%s: no value", e.Topic)
	case e.Topic.OfUnit() && (e.Unit < 1 || e.Unit > t.UnitCount()+1):
		return fmt.Errorf("%s: there is no unit %d", e.Topic, e.Unit)
	case e.Topic.OfUnit():
		var u fitcheck.Unit
		return u.Set(e.Topic, e.Value)
	case e.Unit != 0 || !slices.Contains(fitcheck.LeadTopics, e.Topic):
		return fmt.Errorf("%s is no topic of a whole lead", e.Topic)
	}
	return nil
}

// StaffUndo takes back a fact that staff added; seq is its place in the ledger, from 1.
func StaffUndo(talk Talk, seq int, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if seq < 1 || seq > len(t.talk.Ledger) || t.talk.Ledger[seq-1].By != FromStaff {
			return fmt.Errorf("%w: fact %d is not one of staff's", ErrNotNow, seq)
		}
		t.talk.Ledger[seq-1].Undone = true
		return nil
	})
}

// StaffMark sets how far staff have brought a lead: picked up, quoted, ordered, declined.
func StaffMark(talk Talk, status Status, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if !byStaff(status) {
			return fmt.Errorf("%w: %s is not for staff to set", ErrNotNow, status)
		}
		t.talk.Memory.Shut = false
		t.talk.Lead.Status = status
		return nil
	})
}

// StaffReturn gives a lead back: its status is again what the talk says.
func StaffReturn(talk Talk, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		t.talk.Memory.Shut = false
		t.talk.Lead.Status = StatusOpen
		return nil
	})
}

// StaffShut closes a lead that is none: spam, or a wrong number. The assistant says
// nothing more, and what still comes in does not bring the lead back.
func StaffShut(talk Talk, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		t.talk.Memory.Shut = true
		t.talk.Lead.Status = StatusClosed
		return t.fallSilent()
	})
}

// StaffWrote follows a message that a person of staff writes: the assistant is silent
// from then on, until it is let go on.
func StaffWrote(talk Talk, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if t.talk.State == Silenced {
			return fmt.Errorf("%w: the customer opted out of messages", ErrNotNow)
		}
		t.talk.Memory.Introduced = true
		return t.fallSilent()
	})
}

func (t *turn) fallSilent() error {
	t.talk.Memory.Quiet = true
	t.talk.Memory.Asking = nil
	if t.talk.State == HandedOver || t.talk.State == Silenced {
		return nil // over already
	}
	return t.move(WithStaff)
}

// Release lets the assistant go on where staff had the talk: it asks what is still open,
// once more.
func Release(talk Talk, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if err := t.wakeUp(); err != nil {
			return err
		}
		t.runCheck()
		return t.proceed()
	})
}

// AskFor has the assistant ask for one thing: a measurement, a choice, or a photo, in
// which case topic of is what it is to show. What is still open is asked after it.
func AskFor(talk Talk, a Ask, of fitcheck.Topic, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		if a.Topic == fitcheck.TopicConfirm || a.Topic == fitcheck.TopicEmail && t.talk.Channel == Email {
			return fmt.Errorf("%w: %s can't be asked for", ErrNotNow, a.Topic)
		}
		if err := t.wakeUp(); err != nil {
			return err
		}
		if a.Topic == fitcheck.TopicPhotos {
			t.talk.Memory.PhotoOf = of
		}
		delete(t.talk.Memory.Tries, a)
		delete(t.talk.Memory.LetGo, a)
		t.runCheck()
		return t.ask([]step{{stateOf(a.Topic), []Ask{a}}})
	})
}

// wakeUp makes the assistant lead the talk again. What it now says nobody asked for, so
// it goes out by day only.
func (t *turn) wakeUp() error {
	m := &t.talk.Memory
	if t.talk.State == Silenced {
		return fmt.Errorf("%w: the customer opted out of messages", ErrNotNow)
	}
	m.Quiet, m.Shut, m.PersonAsked, m.Foreign, m.Abroad, m.Lost, m.Nudges = false, false, false, false, false, 0, 0
	m.Flood, m.Barren = "", 0
	m.LastAt = t.now
	t.say.kind = Reminder
	if !byStaff(t.talk.Lead.Status) {
		t.talk.Lead.Status = StatusOpen
	}
	if !m.Introduced {
		t.greet()
	}
	var err error
	switch t.talk.State {
	case WithStaff:
		t.talk.State, err = happen(t.talk.State, eventRelease)
	case HandedOver:
		err = t.move(Measuring) // the law's way back from there
	}
	return err
}

// act runs one deed of staff's and brings the lead up to it.
func act(talk Talk, now time.Time, shop *Shop, do func(*turn) error) (Outcome, error) {
	t, err := begin(talk, now, shop)
	if err != nil {
		return Outcome{}, err
	}
	if err := do(t); err != nil {
		return Outcome{}, err
	}
	t.runCheck()
	before := t.out.Alert
	if err := t.finish(); err != nil {
		return Outcome{}, err
	}
	t.out.Alert = before // they did it themselves
	return t.out, nil
}

// listen takes what a customer writes while a person of staff talks with them: facts are
// kept and checked, staff are told, and nothing is said.
func (t *turn) listen() error {
	t.talk.Memory.Asking = nil
	t.out.Alert = !t.talk.Memory.Shut
	return nil
}

// StaffJoin adds the ledger of another talk of the same person: its messages have moved
// behind this talk's, after number behind, and its units are the same ones, or (more) come
// after this talk's. What was said last stands: older tells that the other talk began
// before this one.
func StaffJoin(talk, other Talk, behind int, more, older bool, now time.Time, shop *Shop) (Outcome, error) {
	return act(talk, now, shop, func(t *turn) error {
		units := 0
		if more {
			units = t.talk.UnitCount()
		}
		own := t.talk.clone()
		for _, e := range other.Ledger {
			if e.Unit > 0 {
				e.Unit += units
			}
			if e.Message > 0 {
				e.Message += behind
			}
			t.talk.Ledger = append(t.talk.Ledger, e)
			if mine := own.entry(e.Topic, e.Unit); older && mine != nil {
				t.talk.Ledger = append(t.talk.Ledger, *mine)
			}
		}
		t.talk.Memory.Urgent = t.talk.Memory.Urgent || other.Memory.Urgent
		return nil
	})
}
