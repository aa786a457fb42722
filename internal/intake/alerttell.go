package intake

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// workTell tells one person one thing. The queue tries for about a day.
func (s *Service) workTell(ctx context.Context, job *river.Job[tellArgs]) error {
	p, err := db.StaffByID(ctx, s.opts.Pool, job.Args.StaffID)
	if errors.Is(err, db.ErrNotFound) || err == nil && p.LeftAt != nil {
		return nil
	}
	if err != nil {
		return err
	}
	if job.Args.Ref == "" {
		return s.sendDigest(ctx, p, job.Args)
	}
	lead, err := s.leadLine(ctx, job.Args.Ref)
	if errors.Is(err, db.ErrNotFound) {
		return nil // erased since
	}
	if err != nil {
		return err
	}
	if job.Args.Text {
		return s.textTo(ctx, p, fmt.Sprintf("%s %s: %s. %s/lead/%s Answer TAKE %s to take it.", s.shop.Load().Name, job.Args.Ref, job.Args.Why,
			s.opts.Alerts.Page, job.Args.Ref, job.Args.Ref))
	}
	m := AlertMail{ID: mailID(job.Args), To: p.Email, Date: s.now(), Subject: fmt.Sprintf("Lead %s: %s", job.Args.Ref, job.Args.Why),
		Text: fmt.Sprintf("%s\n\n%s\n\n%s/lead/%s\n", sentence(job.Args.Why), lead, s.opts.Alerts.Page, job.Args.Ref)}
	if s.opts.Alerts.Sheet != nil {
		// A sheet that can't be made keeps nobody from being told.
		if pdf, err := s.opts.Alerts.Sheet(ctx, job.Args.Ref); err != nil {
			s.log.ErrorContext(ctx, "lead sheet for an alert", "ref", job.Args.Ref, "error", err.Error())
		} else {
			m.PDF, m.PDFName = pdf, "lead-"+job.Args.Ref+".pdf"
		}
	}
	return s.opts.Alerts.Mail(ctx, m)
}

func sentence(words string) string { return strings.ToUpper(words[:1]) + words[1:] + "." }

// leadLine says in a few lines who it is and what for.
func (s *Service) leadLine(ctx context.Context, ref string) (string, error) {
	lines, err := db.Find(ctx, s.opts.Pool, ref, nil, nil, 1)
	if err != nil {
		return "", err
	}
	if len(lines) == 0 {
		return "", db.ErrNotFound
	}
	return oneLine(lines[0]), nil
}

func oneLine(l db.QueueLine) string {
	parts := []string{l.Ref}
	for _, part := range []string{l.Name, l.Phone, l.Email, strings.TrimSpace(l.City + " " + l.Region + " " + l.ZIP)} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	if l.Urgent {
		parts = append(parts, "URGENT")
	}
	line := strings.Join(parts, ", ")
	if len(l.WhyStaff) > 0 {
		line += ": " + strings.Join(l.WhyStaff, "; ")
	}
	return strings.Join(strings.Fields(strings.Map(shown, line)), " ")
}

// shown drops what no text needs, and what could make one thing look like another: control
// characters, and the marks that turn the direction of writing.
func shown(r rune) rune {
	if unicode.IsControl(r) && r != '\n' && r != '\t' || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 {
		return -1
	}
	return r
}

// digestLines is how many leads the morning's mail lists at the most.
const digestLines = 50

// sendDigest tells who waits as it now stands.
func (s *Service) sendDigest(ctx context.Context, p db.Staff, args tellArgs) error {
	waiting, err := db.WaitingLeads(ctx, s.opts.Pool, db.QueueFilter{}, db.QueuePlace{}, digestLines+1)
	if err != nil || len(waiting) == 0 {
		return err
	}
	many := strconv.Itoa(len(waiting))
	if len(waiting) > digestLines {
		waiting, many = waiting[:digestLines], fmt.Sprintf("more than %d", digestLines)
	}
	if args.Text {
		return s.textTo(ctx, p, fmt.Sprintf("%s: %s waiting this morning. %s/", s.shop.Load().Name, many, s.opts.Alerts.Page))
	}
	var b strings.Builder
	for _, l := range waiting {
		fmt.Fprintln(&b, oneLine(l))
	}
	return s.opts.Alerts.Mail(ctx, AlertMail{ID: mailID(args), To: p.Email, Date: s.now(), Subject: many + " waiting this morning",
		Text: b.String() + "\n" + s.opts.Alerts.Page + "/\n"})
}

// textTo texts one of staff. A carrier that can't tell whether it went is not asked
// again: a second alert is worse than a look at the page.
func (s *Service) textTo(ctx context.Context, p db.Staff, text string) error {
	ctx, cancel := context.WithTimeout(ctx, s.callTime())
	defer cancel()
	to := db.Address{Channel: conversation.SMS, Address: p.Phone}
	_, err := s.opts.Senders[conversation.SMS].Send(ctx, Outgoing{To: to, Text: text, Since: s.now().Add(-skew)})
	var f *Failure
	if err == nil || errors.As(err, &f) && f.Kind == Temporary {
		return err
	}
	s.log.WarnContext(ctx, "text to staff not sent", "staff", p.ID, "error", failureOf(err).Code)
	return nil
}
