package intake

import (
	"context"
	"errors"
	"regexp"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// A ref may be named outright, in brackets or after a word for it, in any spelling; by
// itself only in capitals, for what else would be so written: "R7KQ4". Hardly a word has
// only these letters; a ZIP code may have only these digits.
const refLetters = `[CDFGHJKMNPQRTWXYcdfghjkmnpqrtwxy34679]{5}`

var (
	namedRef = regexp.MustCompile(`(?i)(?:\[|\b(?:ref|reference|request|referencia|solicitud)\b(?: +(?:is|es|no|number|code))?[ .:#]{0,4})(` + refLetters + `)\b`)
	bareRef  = regexp.MustCompile(`\b[CDFGHJKMNPQRTWXY34679]{5}\b`)
	aloneRef = regexp.MustCompile(`^\W*(` + refLetters + `)\W*$`)
	sizeLike = regexp.MustCompile(`(?i)^([0-9X]+|[0-9]+(ST|ND|RD|TH))$`)
	lettered = regexp.MustCompile(`[A-Z]`)
)

// refIn is the ref that a message names, in capitals; empty where it names none. A size
// such as 46X49 is none.
func refIn(text string) string {
	for _, form := range []*regexp.Regexp{namedRef, aloneRef} {
		if m := form.FindStringSubmatch(text); len(m) > 1 && !sizeLike.MatchString(m[1]) {
			return strings.ToUpper(m[1])
		}
	}
	for _, word := range bareRef.FindAllString(text, 20) {
		if lettered.MatchString(word) && !sizeLike.MatchString(word) {
			return word
		}
	}
	return ""
}

// knownTalk is the talk that a message from a new address belongs to without doubt: one
// whose customer gave that address, where the message also names its ref, or comes by the
// customer's name. 0: none.
func (s *Service) knownTalk(ctx context.Context, tx pgx.Tx, in Inbound, now time.Time) (int64, error) {
	if in.Unproven {
		return 0, nil // anybody can write an address on an envelope
	}
	found, err := db.ClaimedByWay(ctx, tx, db.Address{Channel: in.Channel, Address: in.From}, 0, s.endedBefore(now))
	if errors.Is(err, db.ErrNotFound) {
		return 0, nil
	}
	if err != nil {
		return 0, err
	}
	ref := refIn(in.Subject + "\n" + in.Text)
	if ref == found.Ref || in.Name != "" && strings.EqualFold(strings.Join(strings.Fields(in.Name), " "), found.Name) {
		return found.ID, nil
	}
	return 0, nil
}

// claim notes with the messages of a turn which talk they may belong to: the one whose
// ref they name, or one that gave this number or address.
func (s *Service) claim(ctx context.Context, tx pgx.Tx, h *db.Held, subjects map[int64]string, now time.Time) error {
	for i := range h.Waiting {
		m := &h.Waiting[i].Message
		if ref := refIn(subjects[h.Waiting[i].ID] + "\n" + m.Text); ref != "" && ref != h.Talk.Ref {
			m.Claims = ref
		}
	}
	first := len(h.Waiting) > 0 && h.LastN == 0 && h.Waiting[0].Message.Claims == ""
	if !first || h.Waiting[0].Message.Unproven {
		return nil
	}
	found, err := db.ClaimedByWay(ctx, tx, h.Newest, h.ID, s.endedBefore(now))
	if errors.Is(err, db.ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	h.Waiting[0].Message.Claims, h.Waiting[0].Message.Given = found.Ref, true
	return nil
}

// joined is what a turn comes to where its talk turns out to be of the same person as the
// one that it claims; ok is false where it does not.
func (s *Service) joined(ctx context.Context, tx pgx.Tx, h *db.Held, out conversation.Outcome, now time.Time) (into *db.Held, joined conversation.Outcome, ok bool, err error) {
	found, err := db.ClaimedByRef(ctx, tx, out.Talk.Memory.Claims, s.endedBefore(now))
	if errors.Is(err, db.ErrNotFound) || err == nil && found.ID == h.ID {
		return nil, joined, false, nil
	}
	if err != nil {
		return nil, joined, false, err
	}
	into, err = db.HoldTalk(ctx, tx, found.ID)
	if err != nil || !conversation.SamePerson(out.Talk, into.Talk) {
		return nil, joined, false, err
	}
	shift := into.LastN
	into.Talk.Phone, into.Talk.Email = orElse(into.Talk.Phone, h.Talk.Phone), orElse(into.Talk.Email, h.Talk.Email)
	joined, err = guarded("join", func() (conversation.Outcome, error) {
		return conversation.Join(into.Talk, out.Talk, func(n int) int { return n + shift }, now, s.shop.Load())
	})
	if err != nil {
		return nil, joined, false, err
	}
	for n, topic := range out.PhotosOf {
		joined.PhotosOf[n+shift] = topic
	}
	if err := db.MoveTalk(ctx, tx, h.ID, into.ID, shift, now); err != nil {
		return nil, joined, false, err
	}
	into.LastN, into.Waiting, into.Newest = shift+h.LastN, h.Waiting, h.Newest
	for i := range into.Waiting {
		into.Waiting[i].Message.N += shift
	}
	s.log.InfoContext(ctx, "two talks of one person were joined", "conversation", into.ID, "joined", h.ID)
	return into, joined, true, nil
}

func orElse(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
