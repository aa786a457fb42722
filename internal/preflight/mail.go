package preflight

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"example.com/intake-bot/internal/channels/email"
)

func checkMailbox(ctx context.Context, s *Settings) []Line {
	const check = "mailbox"
	if s.Mail == nil {
		return []Line{off(check, "no mail is set: the bot only texts")}
	}
	cfg := s.Mail.Box
	cfg.Command = s.Patience
	cfg.Store = func(context.Context, email.Incoming) error { return errors.New("nothing is taken in by looking") }
	watcher, err := email.NewWatcher(cfg)
	if err != nil {
		return []Line{wrong(check, err.Error(), "correct IMAP_ADDRESS (host, or host:port) and IMAP_SECURITY")}
	}
	idle, err := watcher.Look(ctx)
	if err != nil {
		return []Line{wrong(check, inTime(ctx, err), mailboxFailed(err))}
	}
	folder := cfg.Folder
	if folder == "" {
		folder = "INBOX"
	}
	lines := []Line{ok(check, "%s lets us in; %s can be read", cfg.Address, folder)}
	if !idle {
		return append(lines, unknown("mailbox news", "the server does not tell of new mail by itself (no IDLE)", "nothing must be done: it is asked every minute, so answers to mail take that much longer"))
	}
	return append(lines, ok("mailbox news", "the server tells of new mail by itself (IDLE)"))
}

func mailboxFailed(err error) string {
	said := err.Error()
	switch {
	case strings.HasPrefix(said, "log in"), strings.HasPrefix(said, "access token"):
		return "correct IMAP_USER and IMAP_PASSWORD; many providers want IMAP switched on first, or a password made for this program alone, or IMAP_TOKEN_COMMAND"
	case strings.HasPrefix(said, "open the mailbox"):
		return "correct IMAP_FOLDER: it must be there, written as the server writes it"
	case strings.Contains(said, "folder"):
		return "correct IMAP_TAKEN_IN: the account must be allowed to make that folder, or it must be there"
	}
	return unconnected(said, "IMAP", "993")
}

func checkPost(ctx context.Context, s *Settings) []Line {
	const check = "mail out"
	if s.Mail == nil {
		return []Line{off(check, "no mail is set: the bot only texts")}
	}
	cfg := s.Mail.Post
	cfg.Timeout = s.Patience
	sender, err := email.NewSender(cfg)
	if err != nil {
		return []Line{wrong(check, err.Error(), "correct SMTP_ADDRESS (host, or host:port) and SMTP_SECURITY")}
	}
	if err := sender.Check(ctx); err != nil {
		var said *email.SendError
		if errors.As(err, &said) && said.Stage == "auth" {
			return []Line{wrong(check, fmt.Sprintf("the server does not let us in (code %d)", said.Code),
				"correct SMTP_USER and SMTP_PASSWORD; many providers want a password made for this program alone, or SMTP_TOKEN_COMMAND")}
		}
		reason := err
		if said != nil && said.Unwrap() != nil {
			reason = said.Unwrap()
		}
		return []Line{wrong(check, inTime(ctx, reason), unconnected(reason.Error(), "SMTP", "465"))}
	}
	return []Line{ok(check, "%s lets us in; nothing was sent", cfg.Address)}
}

func inTime(ctx context.Context, err error) string {
	if ctx.Err() != nil {
		return "no answer in time"
	}
	return err.Error()
}

// unconnected says what to do where no connection came about.
func unconnected(said, which, port string) string {
	switch {
	case strings.Contains(said, "certificate"):
		return which + "_ADDRESS must be the name that the server's certificate is for, and the certificate in date"
	case strings.Contains(said, "no such host"):
		return which + "_ADDRESS is not a name that leads anywhere: your mail provider has the right one"
	case strings.Contains(said, "first record does not look like a TLS handshake"), strings.Contains(said, "STARTTLS"):
		return which + "_SECURITY does not go with the port: tls with " + port + ", starttls with " + map[string]string{"IMAP": "143", "SMTP": "587"}[which]
	}
	return "correct " + which + "_ADDRESS and " + which + "_SECURITY as your mail provider says; is the port open to this machine? (many hosts close mail ports at first)"
}
