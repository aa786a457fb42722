package demo

import (
	"bytes"
	"context"
	"fmt"
	"time"

	"example.com/intake-bot/internal/channels/email"
	office "example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/channels/sms/standin"
)

// way is how a customer writes to the shop.
type way interface {
	// send returns when the bot has what was sent.
	send(ctx context.Context, words string, photos [][]byte) error
	// texts are all that the shop wrote, in order.
	texts() ([]string, error)
}

func (s *Stage) wayOf(c *Customer) way {
	if c.Mail != "" {
		return byMail{s, c}
	}
	return byText{s, c}
}

// byText texts through the stand-in carrier, whose webhooks are acknowledged.
type byText struct {
	stage    *Stage
	customer *Customer
}

func (w byText) send(ctx context.Context, words string, photos [][]byte) error {
	var files []standin.File
	for _, p := range photos {
		files = append(files, standin.File{Type: "image/jpeg", Data: p})
	}
	_, err := w.stage.Carrier.Text(ctx, w.customer.Number, words, files...)
	return err
}

func (w byText) texts() ([]string, error) {
	var out []string
	for _, m := range w.stage.Carrier.To(w.customer.Number) {
		out = append(out, m.Body)
	}
	return out, nil
}

// byMail writes letters, each as the answer to the shop's last, quoted below it.
type byMail struct {
	stage    *Stage
	customer *Customer
}

func (w byMail) send(ctx context.Context, words string, photos [][]byte) error {
	l := office.Letter{From: email.Mailbox{Name: w.customer.Name, Address: w.customer.Mail}, Subject: w.customer.Subject, Text: words}
	if mails := w.stage.Office.To(w.customer.Mail); len(mails) > 0 {
		l.Answers, l.Subject = &mails[len(mails)-1], ""
	}
	for n, p := range photos {
		l.Files = append(l.Files, office.File{Name: fmt.Sprintf("skylight-%d.jpg", n+1), Type: "image/jpeg", Data: p})
	}
	if _, err := w.stage.Office.Write(l); err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(ctx, w.stage.Patience)
	defer cancel()
	for w.stage.Office.Left("INBOX") > 0 { // moved away only once it is stored
		select {
		case <-time.After(15 * time.Millisecond):
		case <-ctx.Done():
			return fmt.Errorf("the bot does not take the mail in: %w", ctx.Err())
		}
	}
	return nil
}

func (w byMail) texts() ([]string, error) {
	var out []string
	for _, m := range w.stage.Office.To(w.customer.Mail) {
		parsed, err := email.Parse(bytes.NewReader(m.Raw), email.Limits{})
		if err != nil {
			return nil, fmt.Errorf("the shop's mail: %w", err)
		}
		out = append(out, parsed.Text)
	}
	return out, nil
}
