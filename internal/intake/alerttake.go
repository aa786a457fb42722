package intake

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// takeForm is how a person of staff answers an alert: "take R7KQ4".
var takeForm = regexp.MustCompile(`(?i)^\s*take\s+([CDFGHJKMNPQRTWXY34679]{5})\s*[.!]?\s*$`)

// replyArgs ask to text a person of staff an answer.
type replyArgs struct {
	StaffID int64  `json:"staff_id"`
	Text    string `json:"text"`
}

func (replyArgs) Kind() string { return "reply_to_staff" }
func (replyArgs) InsertOpts() river.InsertOpts {
	return river.InsertOpts{Queue: alertQueue, MaxAttempts: alertTries}
}

func (s *Service) workReply(ctx context.Context, job *river.Job[replyArgs]) error {
	p, err := db.StaffByID(ctx, s.opts.Pool, job.Args.StaffID)
	if errors.Is(err, db.ErrNotFound) || err == nil && (p.LeftAt != nil || p.Phone == "") {
		return nil
	}
	if err != nil {
		return err
	}
	return s.textTo(ctx, p, job.Args.Text)
}

// staffWord takes a text for what it is where one of staff answers an alert from their
// known number: they get the lead. Done is false for anything else, which goes its usual
// way. The same text again changes nothing.
func (s *Service) staffWord(ctx context.Context, in Inbound, now time.Time) (done bool, err error) {
	m := takeForm.FindStringSubmatch(in.Text)
	if in.Channel != conversation.SMS || m == nil {
		return false, nil
	}
	who, err := db.StaffByPhone(ctx, s.opts.Pool, in.From)
	if errors.Is(err, db.ErrNotFound) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	ref := strings.ToUpper(m[1])
	err = pgx.BeginFunc(ctx, s.opts.Pool, func(tx pgx.Tx) error {
		news, err := db.Tell(ctx, tx, who.ID, "answer "+clipped(in.ID, 90), 0, now)
		if err != nil || !news {
			return err
		}
		reply, err := s.takeFor(ctx, tx, who, ref, now)
		if err != nil {
			return err
		}
		_, err = s.queue.InsertTx(ctx, tx, replyArgs{StaffID: who.ID, Text: reply}, nil)
		return err
	})
	if err != nil {
		return false, fmt.Errorf("staff's answer %s: %w", in.ID, err)
	}
	return true, nil
}

// takeFor puts a lead into a person's hands, unless another was faster, and says which.
func (s *Service) takeFor(ctx context.Context, tx pgx.Tx, who db.Staff, ref string, now time.Time) (reply string, err error) {
	id, err := db.TalkOf(ctx, tx, ref)
	if errors.Is(err, db.ErrNotFound) {
		return "There is no lead " + ref + ".", nil
	}
	if err != nil {
		return "", err
	}
	h, err := db.HoldTalk(ctx, tx, id)
	if err != nil {
		return "", err
	}
	hands, err := db.HandsOf(ctx, tx, id)
	switch {
	case err != nil:
		return "", err
	case hands.StaffID == who.ID:
		return "You have " + ref + " already.", nil
	case hands.StaffID != 0:
		return hands.Name + " was faster: " + ref + " is in their hands.", nil
	}
	switch h.Talk.Lead.Status {
	case conversation.StatusOpen, conversation.StatusReady, conversation.StatusNeedsPerson:
		out, err := conversation.StaffMark(h.Talk, conversation.StatusPickedUp, now, s.shop.Load())
		if err != nil {
			return "", err
		}
		if _, err := db.SaveDeed(ctx, tx, h, out, s.opts.Brain.Record(out.Talk), "", db.Address{}, now); err != nil {
			return "", err
		}
	}
	if err := db.TakeInHand(ctx, tx, id, who.ID, now); err != nil {
		return "", err
	}
	if _, err := db.Note(ctx, tx, who.ID, id, db.DeedTookByText, db.HistoryDetail{}, now); err != nil {
		return "", err
	}
	return ref + " is yours. " + s.opts.Alerts.Page + "/lead/" + ref, nil
}
