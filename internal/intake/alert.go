package intake

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Alerts are how people of staff and the owner's other systems hear of leads. The zero
// value tells nobody.
type Alerts struct {
	// Mail sends a mail to one of staff; nil: there is no mail.
	Mail func(ctx context.Context, m AlertMail) error
	// Sheet makes the lead sheet of a ref as PDF; nil: mail goes without.
	Sheet func(ctx context.Context, ref string) ([]byte, error)
	// Page is where the staff's page begins: https://bot.example.com/staff
	Page string
	// LateAfter is how long a lead may wait in open hours before the owner is told; 0: two hours.
	LateAfter time.Duration
	// Webhook tells each step of a lead; nil: nobody is told.
	Webhook *Webhook
}

// AlertMail is a mail to one of staff. ID is the same at each try.
type AlertMail struct {
	ID, To, Subject, Text string
	PDFName               string
	PDF                   []byte // nil: none
	Date                  time.Time
}

const (
	alertQueue   = "alerts"
	alertWorkers = 4
	// alertTries is about a day: the queue tries once a minute at the least often.
	alertTries  = 1450
	alertLimit  = 200
	defaultLate = 2 * time.Hour
)

// tellArgs ask to tell one person one thing.
type tellArgs struct {
	StaffID int64  `json:"staff_id"`
	About   string `json:"about"` // of staff_told: makes the mail's id
	Ref     string `json:"ref,omitempty"`
	Why     string `json:"why"`
	Text    bool   `json:"text"` // by text, not by mail
}

func (tellArgs) Kind() string { return "tell" }
func (tellArgs) InsertOpts() river.InsertOpts {
	return river.InsertOpts{Queue: alertQueue, MaxAttempts: alertTries}
}

// addAlerts registers the work of telling.
func (s *Service) addAlerts(workers *river.Workers, queues map[string]river.QueueConfig) {
	river.AddWorker(workers, river.WorkFunc(s.workTell))
	river.AddWorker(workers, river.WorkFunc(s.workStep))
	river.AddWorker(workers, river.WorkFunc(s.workReply))
	queues[alertQueue] = river.QueueConfig{MaxWorkers: alertWorkers}
}

// tellAll looks for what people and systems are to be told of; each sweep does.
func (s *Service) tellAll(ctx context.Context) error {
	return errors.Join(s.tellAlerts(ctx), s.tellLate(ctx), s.tellDigest(ctx), s.tellSteps(ctx))
}

// tellAlerts asks for a job for each person and each thing that is news to them.
func (s *Service) tellAlerts(ctx context.Context) error {
	now := s.now()
	err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		alerts, err := db.OpenAlerts(ctx, tx, alertLimit)
		if err != nil || len(alerts) == 0 {
			return err
		}
		people, err := db.ToAlert(ctx, tx)
		if err != nil {
			return err
		}
		for _, a := range alerts {
			for _, p := range people {
				if err := s.tell(ctx, tx, p, a, now); err != nil {
					return err
				}
			}
			if err := db.AlertsTold(ctx, tx, a.IDs, now); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("tell staff: %w", err)
	}
	return nil
}

// tell asks to tell one person of one lead, if it concerns them and is news to them.
func (s *Service) tell(ctx context.Context, tx pgx.Tx, p db.Staff, a db.OpenAlert, now time.Time) error {
	about, why := whatIsNew(a, now)
	if about == "" || a.HolderID != 0 && a.HolderID != p.ID {
		return nil
	}
	return s.inform(ctx, tx, p, about, tellArgs{StaffID: p.ID, Ref: a.Ref, Why: why}, a.ConversationID, a.Urgent, now)
}

// whatIsNew names a lead's news, so that the same is told once, and says it in words.
func whatIsNew(a db.OpenAlert, now time.Time) (about, why string) {
	other := slices.DeleteFunc(slices.Clone(a.Reasons), func(r string) bool { return r == db.AlertLead })
	switch {
	case len(other) > 0 && crowdWords[other[0]] != "":
		// One word an hour for all of them: what comes in a crowd must not go out in one.
		return "crowd " + other[0] + " " + now.UTC().Format("2006-01-02T15"), crowdWords[other[0]]
	case len(other) > 0:
		return fmt.Sprintf("%s %s %d", a.Ref, other[0], a.LastN), alertWords[other[0]]
	case a.HolderID != 0:
		return fmt.Sprintf("%s word %d", a.Ref, a.LastN), "the customer wrote"
	case a.Urgent && a.Status == conversation.StatusOpen:
		return a.Ref + " urgent", "urgent, and still talking"
	case a.Status == conversation.StatusReady:
		return a.Ref + " ready", "ready to order from"
	case a.Status == conversation.StatusNeedsPerson:
		return a.Ref + " needs_person", "needs one of us"
	}
	return "", ""
}

// crowdWords are for what befalls many leads at once; the page shows all.
var crowdWords = map[string]string{
	db.AlertFlood:  "held back with others like it: more messages than are answered",
	db.AlertBudget: "a message was held back: the budget is used up",
}

var alertWords = map[string]string{
	db.AlertTrouble: "the assistant could not go on", db.AlertUnreachable: "the number takes no texts",
	db.AlertNotSent: "a message was refused", db.AlertSendUnknown: "nobody can tell whether a message went",
}

// inform asks for the mail and the text to one person. By night only what is urgent is
// texted; the rest is in the morning's digest.
func (s *Service) inform(ctx context.Context, tx pgx.Tx, p db.Staff, about string, args tellArgs, conversationID int64, urgent bool, now time.Time) error {
	news, err := db.Tell(ctx, tx, p.ID, about, conversationID, now)
	if err != nil || !news {
		return err
	}
	args.About = about
	if p.MailAlerts && s.opts.Alerts.Mail != nil {
		if _, err := s.queue.InsertTx(ctx, tx, args, nil); err != nil {
			return fmt.Errorf("ask to tell: %w", err)
		}
	}
	hours := s.shop.Load().Hours
	if p.TextAlerts && s.opts.Senders[conversation.SMS] != nil && (urgent || hours == nil || hours.Open(now)) {
		args.Text = true
		if _, err := s.queue.InsertTx(ctx, tx, args, nil); err != nil {
			return fmt.Errorf("ask to tell: %w", err)
		}
	}
	return nil
}

// tellLate tells the owners of leads that wait longer in open hours than they want.
func (s *Service) tellLate(ctx context.Context) error {
	limit, now, hours := s.opts.Alerts.LateAfter, s.now(), s.shop.Load().Hours
	if limit <= 0 {
		limit = defaultLate
	}
	if hours != nil && !hours.Open(now) {
		return nil
	}
	people, err := db.ToAlert(ctx, s.opts.Pool)
	people = slices.DeleteFunc(people, func(p db.Staff) bool { return p.Role != db.RoleOwner })
	if err != nil || len(people) == 0 {
		return err
	}
	late, err := db.LateLeads(ctx, s.opts.Pool, now.Add(-limit), alertLimit)
	if err != nil {
		return err
	}
	for _, l := range late {
		if openFor(hours, *l.WaitingSince, now) < limit {
			continue
		}
		err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
			var errs error
			for _, p := range people {
				args := tellArgs{StaffID: p.ID, Ref: l.Ref, Why: "waits too long"}
				errs = errors.Join(errs, s.inform(ctx, tx, p, l.Ref+" late", args, l.ID, l.Urgent, now))
			}
			return errs
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// openFor is how much of a span the shop was open, to the quarter of an hour, of the last
// fortnight at the most.
func openFor(hours conversation.Calendar, from, to time.Time) time.Duration {
	if hours == nil {
		return to.Sub(from)
	}
	const step = 15 * time.Minute
	if most := to.Add(-14 * 24 * time.Hour); from.Before(most) {
		from = most
	}
	var open time.Duration
	for at := from; at.Before(to); at = at.Add(step) {
		if hours.Open(at) {
			open += min(step, to.Sub(at))
		}
	}
	return open
}

// tellDigest tells everybody once each morning who waits, if anyone does.
func (s *Service) tellDigest(ctx context.Context) error {
	now, shop := s.now(), s.shop.Load()
	if shop.Hours == nil || shop.Zone == nil || !shop.Hours.Open(now) || shop.Hours.Open(now.Add(-2*time.Hour)) {
		return nil // not the hours after opening
	}
	waiting, _, err := db.CountWaiting(ctx, s.opts.Pool)
	if err != nil || waiting == 0 {
		return err
	}
	people, err := db.ToAlert(ctx, s.opts.Pool)
	if err != nil {
		return err
	}
	about := "digest " + now.In(shop.Zone).Format("2006-01-02")
	for _, p := range people {
		if err := pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
			return s.inform(ctx, tx, p, about, tellArgs{StaffID: p.ID, Why: "digest"}, 0, false, now)
		}); err != nil {
			return err
		}
	}
	return nil
}

// mailID is the Message-ID's left part for what a person is told: the same at each try.
func mailID(args tellArgs) string {
	return fmt.Sprintf("told-%d-%s", args.StaffID, strings.ReplaceAll(args.About, " ", "-"))
}
