package staff

import (
	"errors"
	"strings"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// merge joins another lead of the same person into this one: its messages, facts and
// addresses go along, and its ref leads here from then on. This one is taken in hand
// first, so that undoing the joining leaves it there.
func (s *Server) merge(v *visit) error {
	other := strings.ToUpper(strings.TrimSpace(v.r.PostFormValue("other")))
	more := v.r.PostFormValue("units") == "more"
	err := pgx.BeginFunc(v.ctx, s.opts.Pool, func(tx pgx.Tx) error {
		into, err := db.TalkOf(v.ctx, tx, strings.ToUpper(v.r.PathValue("ref")))
		if err != nil {
			return err
		}
		from, err := db.TalkOf(v.ctx, tx, other)
		switch {
		case errors.Is(err, db.ErrNotFound):
			return refuse("There is no lead %q.", other)
		case err != nil:
			return err
		case from == into:
			return refuse("A lead can't be joined into itself.")
		}
		if err := db.LockTalks(v.ctx, tx, from, into); err != nil {
			return err
		}
		if err := v.doIn(tx, into, (*deed).hold); err != nil {
			return err
		}
		return v.doIn(tx, into, func(d *deed) error { return d.merge(from, more) })
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "Lead %s was joined into this one.", other)
}

func (d *deed) merge(from int64, more bool) error {
	v := d.v
	held, err := db.HoldTalk(v.ctx, d.tx, from)
	if err != nil {
		return err
	}
	hands, err := db.HandsOf(v.ctx, d.tx, from)
	switch {
	case err != nil:
		return err
	case hands.StaffID != 0 && hands.StaffID != v.who.ID:
		return refuse("%s has lead %s in hand. Nothing was done.", hands.Name, held.Talk.Ref)
	case len(held.Talk.Ledger)+held.LastN+len(held.Waiting) == 0:
		return refuse("There is nothing in lead %s.", held.Talk.Ref)
	}
	behind := d.held.LastN
	if err := db.MergeTalk(v.ctx, d.tx, held, d.held, v.now); err != nil {
		return err
	}
	d.out.Talk.Phone, d.out.Talk.Email = d.held.Talk.Phone, d.held.Talk.Email
	older := held.Talk.OpenedAt.Before(d.held.Talk.OpenedAt)
	if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
		return conversation.StaffJoin(t, held.Talk, behind, more, older, v.now, v.shop())
	}); err != nil {
		return err
	}
	return d.note(db.DeedMerged, db.HistoryDetail{Ref: held.Talk.Ref})
}

// unmerge takes apart what was joined by mistake.
func (d *deed) unmerge(h db.HistoryEntry, detail db.HistoryDetail) error {
	if d.hands.StaffID != 0 && d.hands.StaffID != d.v.who.ID {
		return refuse("%s has this lead in hand. Nothing was done.", d.hands.Name)
	}
	err := db.SplitTalk(d.v.ctx, d.tx, h.Detail.Ref, d.held.ID, h.ID, d.v.now)
	if errors.Is(err, db.ErrGoneOn) {
		return refuse("Somebody wrote or changed something since the two were joined, so they can't be taken apart any more.")
	}
	if err != nil {
		return err
	}
	detail.Ref = h.Detail.Ref
	return d.note(db.DeedTookApart, detail)
}
