package staff

import (
	"fmt"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// fact adds what staff know better, or newly; the check runs at once, and the next page
// says what that changed.
func (s *Server) fact(v *visit) error {
	var a conversation.Ask
	if err := a.UnmarshalText([]byte(v.r.PostFormValue("topic"))); err != nil || topicNames[a.Topic] == "" {
		return refuse("Choose what the value is of.")
	}
	typed, err := v.field("value", 200)
	if err != nil {
		return err
	}
	why, err := v.field("why", 300)
	if err != nil {
		return err
	}
	value, err := readValue(a.Topic, typed)
	if err != nil {
		return err
	}
	var changed string
	err = v.do(func(d *deed) error {
		before := conversation.Look(d.held.Talk, v.shop())
		e := conversation.Entry{Topic: a.Topic, Unit: a.Unit, Value: value, Said: firstOf(why, typed)}
		was := valueWords(d.held.Talk.Value(a.Topic, a.Unit))
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			out, err := conversation.StaffFact(t, e, v.now, v.shop())
			if err != nil {
				return out, refuse("That can't be kept: %s.", err.Error())
			}
			return out, nil
		}); err != nil {
			return err
		}
		if len(d.out.Facts) == 0 {
			return refuse("Just that stands there already.")
		}
		changed = changes(before, conversation.Look(d.out.Talk, v.shop()))
		return d.note(db.DeedCorrected, db.HistoryDetail{Topic: a.String(), Seq: len(d.out.Talk.Ledger), Before: was,
			After: valueWords(value), Verdict: changed, Text: why})
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "%s is now %s. %s", topicName(a.Topic), valueWords(value), changed)
}

// changes say what a new value did to the check, unit by unit.
func changes(before, after fitcheck.Result) string {
	var out []string
	for i, now := range after.Units {
		name := ""
		if len(after.Units) > 1 {
			name = fmt.Sprintf("Skylight %d: ", i+1)
		}
		if i >= len(before.Units) {
			out = append(out, name+"new, "+verdictWords[now.Verdict]+".")
			continue
		}
		if c := unitChanges(before.Units[i], now); c != "" {
			out = append(out, name+c)
		}
	}
	if len(out) == 0 {
		return "The check says the same as before."
	}
	return strings.Join(out, " ")
}

func unitChanges(was, now fitcheck.UnitResult) string {
	var out []string
	told := func(what, a, b string) {
		if a != b {
			out = append(out, what+firstOf(a, "nothing")+" → "+firstOf(b, "nothing")+".")
		}
	}
	told("", verdictWords[was.Verdict], verdictWords[now.Verdict])
	told("Part: ", partWords[was.Replace], partWords[now.Replace])
	told("To order: ", orderWords(was.Order), orderWords(now.Order))
	for _, f := range now.Findings {
		if f.Severity != fitcheck.Note && !hasCode(was.Findings, f.Code) {
			out = append(out, "New: "+f.Text)
		}
	}
	for _, f := range was.Findings {
		if f.Severity != fitcheck.Note && !hasCode(now.Findings, f.Code) {
			out = append(out, "Settled: "+plain(string(f.Code))+".")
		}
	}
	return strings.Join(out, " ")
}

func hasCode(fs []fitcheck.Finding, c fitcheck.Code) bool {
	for _, f := range fs {
		if f.Code == c {
			return true
		}
	}
	return false
}

func orderWords(o *fitcheck.Order) string {
	var u unitPart
	u.order(o)
	return firstOf(u.Order, u.Span)
}

// undo takes back a line of the history, where that makes sense.
func (s *Server) undo(v *visit) error {
	var id int64
	if _, err := fmt.Sscan(v.r.PostFormValue("line"), &id); err != nil {
		return refuse("Choose a line of the history.")
	}
	err := v.do(func(d *deed) error {
		h, err := db.HistoryEntryOf(v.ctx, d.tx, d.held.ID, id)
		if err != nil {
			return err
		}
		if !undoable(h) {
			return refuse("That can't be undone.")
		}
		return d.undo(h)
	})
	if err != nil {
		return err
	}
	return v.done(v.back(), "Undone.")
}

func (d *deed) undo(h db.HistoryEntry) error {
	v := d.v
	detail := db.HistoryDetail{Undoes: h.ID}
	switch h.Deed {
	case db.DeedTook, db.DeedTookByText:
		if d.hands.StaffID != h.StaffID || d.hands.StaffID != v.who.ID && v.who.Role != db.RoleOwner {
			return refuse("The lead is not in those hands any more.")
		}
		if err := d.letGo(); err != nil {
			return err
		}
		return d.note(db.DeedPutBack, detail)
	case db.DeedCorrected:
		before := conversation.Look(d.held.Talk, v.shop())
		if err := d.then(func(t conversation.Talk) (conversation.Outcome, error) {
			return conversation.StaffUndo(t, h.Detail.Seq, v.now, v.shop())
		}); err != nil {
			return err
		}
		detail.Topic, detail.Before, detail.After = h.Detail.Topic, h.Detail.After, h.Detail.Before
		detail.Verdict = changes(before, conversation.Look(d.out.Talk, v.shop()))
		return d.note(db.DeedTookBack, detail)
	case db.DeedMarked, db.DeedShut:
		return d.unmark(h, detail)
	case db.DeedMerged:
		return d.unmerge(h, detail)
	}
	return refuse("That can't be undone.")
}

// unmark gives a lead the status again that it had.
func (d *deed) unmark(h db.HistoryEntry, detail db.HistoryDetail) error {
	if h.Deed == db.DeedMarked && string(d.held.Talk.Lead.Status) != h.Detail.Status {
		return refuse("The lead was marked anew since.")
	}
	step := func(t conversation.Talk) (conversation.Outcome, error) {
		return conversation.StaffReturn(t, d.v.now, d.v.shop())
	}
	switch from := conversation.Status(h.Detail.From); from {
	case conversation.StatusPickedUp, conversation.StatusQuoted, conversation.StatusOrdered, conversation.StatusDeclined:
		if h.Deed == db.DeedMarked {
			step = d.marking(from)
		}
	}
	if err := d.then(step); err != nil {
		return err
	}
	if h.Deed == db.DeedShut {
		if err := d.optOut(false); err != nil {
			return err
		}
		return d.note(db.DeedReopened, detail)
	}
	detail.Status, detail.From = string(d.out.Talk.Lead.Status), h.Detail.Status
	return d.note(db.DeedMarked, detail)
}
