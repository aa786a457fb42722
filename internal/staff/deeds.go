package staff

import (
	"errors"
	"fmt"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// deed is something done with a lead, in a transaction that holds its talk: of two people
// at once, the second finds what the first did.
type deed struct {
	v     *visit
	tx    pgx.Tx
	held  *db.Held
	hands db.Hands
	out   conversation.Outcome
	text  string     // staff's own message to the customer
	to    db.Address // where it goes
}

// do runs a deed on the lead that the address names, and saves what came of it.
func (v *visit) do(work func(*deed) error) error {
	err := pgx.BeginFunc(v.ctx, v.s.opts.Pool, func(tx pgx.Tx) error {
		id, err := db.TalkOf(v.ctx, tx, strings.ToUpper(v.r.PathValue("ref")))
		if err != nil {
			return err
		}
		return v.doIn(tx, id, work)
	})
	if errors.Is(err, conversation.ErrNotNow) {
		return refuse("That can't be done as the talk stands now: %s.", strings.TrimPrefix(err.Error(), conversation.ErrNotNow.Error()+": "))
	}
	return err
}

func (v *visit) doIn(tx pgx.Tx, id int64, work func(*deed) error) error {
	held, err := db.HoldTalk(v.ctx, tx, id)
	if err != nil {
		return err
	}
	d := &deed{v: v, tx: tx, held: held, out: conversation.Outcome{Talk: held.Talk}}
	if d.hands, err = db.HandsOf(v.ctx, tx, id); err != nil {
		return err
	}
	if err := work(d); err != nil {
		return err
	}
	return d.save()
}

// save keeps the talk as the deed left it, with the job that sends what it says.
func (d *deed) save() error {
	if d.out.Talk.Lead.Units == nil {
		return nil // nothing was done in the talk itself
	}
	record := conversation.NewRecord(d.out.Talk, nil, nil)
	queued, err := db.SaveDeed(d.v.ctx, d.tx, d.held, d.out, record, d.text, d.to, d.v.now)
	if err != nil || queued == 0 {
		return err
	}
	return d.v.s.opts.Send(d.v.ctx, d.tx, d.held.ID)
}

// then runs one more pure step on what the ones before it left.
func (d *deed) then(step func(conversation.Talk) (conversation.Outcome, error)) error {
	next, err := step(d.out.Talk)
	if err != nil {
		return err
	}
	next.Say = append(d.out.Say, next.Say...)
	d.out = next
	return nil
}

func (d *deed) note(what db.Deed, detail db.HistoryDetail) error {
	_, err := db.Note(d.v.ctx, d.tx, d.v.who.ID, d.held.ID, what, detail, d.v.now)
	return err
}

// hold makes sure that the lead is in the visitor's own hands, taking it where nobody has
// it. Where somebody else was faster, nothing is done.
func (d *deed) hold() error {
	switch {
	case d.hands.StaffID == d.v.who.ID:
		return nil
	case d.hands.StaffID != 0:
		return refuse("%s has this lead in hand. Nothing was done.", d.hands.Name)
	}
	return d.take(db.DeedTook, "")
}

func (d *deed) take(what db.Deed, from string) error {
	switch d.out.Talk.Lead.Status {
	case conversation.StatusOpen, conversation.StatusReady, conversation.StatusNeedsPerson:
		if err := d.then(d.marking(conversation.StatusPickedUp)); err != nil {
			return err
		}
	}
	if err := db.TakeInHand(d.v.ctx, d.tx, d.held.ID, d.v.who.ID, d.v.now); err != nil {
		return err
	}
	return d.note(what, db.HistoryDetail{Holder: from})
}

func (d *deed) marking(status conversation.Status) func(conversation.Talk) (conversation.Outcome, error) {
	return func(t conversation.Talk) (conversation.Outcome, error) {
		return conversation.StaffMark(t, status, d.v.now, d.v.shop())
	}
}

// take puts a lead into the visitor's hands: exactly one of many at once gets it.
func (s *Server) take(v *visit) error {
	var had bool
	err := v.do(func(d *deed) error {
		if had = d.hands.StaffID == v.who.ID; had {
			return nil
		}
		if d.hands.StaffID != 0 && v.r.PostFormValue("over") != "1" {
			return refuse("%s was faster: the lead is in their hands.", d.hands.Name)
		}
		return d.take(db.DeedTook, d.hands.Name)
	})
	switch {
	case err != nil:
		return err
	case had:
		return v.done(v.back(), "You have it already.")
	}
	return v.done(v.back(), "The lead is in your hands.")
}

func (s *Server) putBack(v *visit) error {
	err := v.do(func(d *deed) error {
		if d.hands.StaffID != v.who.ID && v.who.Role != db.RoleOwner {
			return refuse("The lead is not in your hands.")
		}
		if err := d.letGo(); err != nil {
			return err
		}
		return d.note(db.DeedPutBack, db.HistoryDetail{})
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "The lead waits again for whoever takes it.")
}

// letGo gives the lead back to all; one that is finished stays so.
func (d *deed) letGo() error {
	if d.out.Talk.Lead.Status == conversation.StatusPickedUp || d.out.Talk.Lead.Status == conversation.StatusQuoted {
		err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.StaffReturn(t, d.v.now, d.v.shop())
		})
		if err != nil {
			return err
		}
	}
	return db.LetGo(d.v.ctx, d.tx, d.held.ID)
}

// mostWritten is two long texts; a mail may take as much.
const mostWritten = 1200

func (s *Server) write(v *visit) error {
	text, err := v.field("text", mostWritten)
	if err != nil {
		return err
	}
	if text == "" {
		return refuse("Nothing was written, so nothing was sent.")
	}
	channel, address, _ := strings.Cut(v.r.PostFormValue("to"), " ")
	err = v.do(func(d *deed) error {
		d.text, d.to = text, db.Address{Channel: conversation.Channel(channel), Address: address}
		if err := d.mayReach(); err != nil {
			return err
		}
		if err := d.hold(); err != nil {
			return err
		}
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.StaffWrote(t, v.now, v.shop())
		}); err != nil {
			return err
		}
		return d.note(db.DeedWrote, db.HistoryDetail{})
	})
	if err != nil {
		return err
	}
	return v.done(v.back()+"#talk", "Sent. The assistant is silent in this talk until you let it go on.")
}

// mayReach refuses an address that is not this customer's, or at which they opted out.
func (d *deed) mayReach() error {
	all, err := db.AddressesOf(d.v.ctx, d.tx, d.held.ID)
	if err != nil {
		return err
	}
	for _, r := range all {
		if r.Address == d.to && r.OptedOut {
			return refuse("They opted out of messages there. Nothing was sent; call them instead.")
		}
		if r.Address == d.to {
			return nil
		}
	}
	return refuse("That address is not one of this customer's.")
}

func (s *Server) goOn(v *visit) error {
	err := v.do(func(d *deed) error {
		if err := d.hold(); err != nil {
			return err
		}
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.Release(t, v.now, v.shop())
		}); err != nil {
			return err
		}
		return d.note(db.DeedReleased, db.HistoryDetail{})
	})
	if err != nil {
		return err
	}
	return v.done(v.back()+"#talk", "The assistant goes on, by day where they are.")
}

func (s *Server) askFor(v *visit) error {
	var a conversation.Ask
	if err := a.UnmarshalText([]byte(v.r.PostFormValue("what"))); err != nil || a.Topic == "" {
		return refuse("Choose what is to be asked for.")
	}
	if a.Topic != fitcheck.TopicPhotos && (!a.Topic.OfUnit() || a.Unit < 1) {
		return refuse("Choose what is to be asked for.")
	}
	err := v.do(func(d *deed) error {
		if a.Unit > max(1, d.held.Talk.UnitCount()) {
			return refuse("There is no skylight %d.", a.Unit)
		}
		if err := d.hold(); err != nil {
			return err
		}
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.AskFor(t, a, fitcheck.TopicStyle, v.now, v.shop())
		}); err != nil {
			return err
		}
		return d.note(db.DeedAsked, db.HistoryDetail{Topic: a.String()})
	})
	if err != nil {
		return err
	}
	return v.done(v.back()+"#talk", "The assistant asks for it, by day where they are, and goes on from there.")
}

func (s *Server) note(v *visit) error {
	text, err := v.field("text", 2000)
	if err != nil {
		return err
	}
	if text == "" {
		return refuse("The note was empty.")
	}
	if err := v.do(func(d *deed) error { return d.note(db.DeedNoted, db.HistoryDetail{Text: text}) }); err != nil {
		return err
	}
	return v.done(v.back()+"#history", "Noted.")
}

// mark sets what came of a lead.
func (s *Server) mark(v *visit) error {
	reason, err := v.field("reason", 500)
	if err != nil {
		return err
	}
	status := conversation.Status(v.r.PostFormValue("status"))
	switch status {
	case conversation.StatusQuoted, conversation.StatusOrdered, conversation.StatusDeclined:
	default:
		return refuse("Choose what came of it.")
	}
	if status == conversation.StatusDeclined && reason == "" {
		return refuse("Say in a few words why nothing came of it.")
	}
	err = v.do(func(d *deed) error {
		if err := d.hold(); err != nil {
			return err
		}
		from := d.out.Talk.Lead.Status
		if err := d.then(d.marking(status)); err != nil {
			return err
		}
		return d.note(db.DeedMarked, db.HistoryDetail{Status: string(status), From: string(from), Text: reason})
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "Marked: %s.", statusWords[status])
}

// spam shuts a lead that is none: nothing is sent there any more.
func (s *Server) spam(v *visit) error {
	err := v.do(func(d *deed) error {
		if d.hands.StaffID != 0 && d.hands.StaffID != v.who.ID {
			return refuse("%s has this lead in hand. Nothing was done.", d.hands.Name)
		}
		from := d.out.Talk.Lead.Status
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.StaffShut(t, v.now, v.shop())
		}); err != nil {
			return err
		}
		if err := d.optOut(true); err != nil {
			return err
		}
		if err := db.LetGo(v.ctx, d.tx, d.held.ID); err != nil {
			return err
		}
		return d.note(db.DeedShut, db.HistoryDetail{From: string(from)})
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "Shut. Nothing is sent there any more.")
}

// optOut keeps anything from being sent to the lead's addresses, or lifts only that.
func (d *deed) optOut(out bool) error {
	all, err := db.AddressesOf(d.v.ctx, d.tx, d.held.ID)
	if err != nil {
		return err
	}
	for _, r := range all {
		if out {
			err = db.OptOut(d.v.ctx, d.tx, r.Address, db.OptOutStaff, d.v.now)
		} else {
			err = db.LiftStaffOptOut(d.v.ctx, d.tx, r.Address, d.v.now)
		}
		if err != nil {
			return fmt.Errorf("talk %d: %w", d.held.ID, err)
		}
	}
	return nil
}
