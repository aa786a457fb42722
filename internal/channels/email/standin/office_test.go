package standin_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
)

const (
	shop     = "hello@pinwheel.example"
	password = "loopback"
)

func open(t *testing.T) (*standin.Office, *email.Sender) {
	t.Helper()
	o, err := standin.New(standin.Config{Address: shop, Password: password})
	if err != nil {
		t.Fatal(err)
	}
	if err := o.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { o.Close() })
	s, err := email.NewSender(email.SenderConfig{Address: o.SMTP(), Security: email.Insecure, Timeout: time.Minute,
		Account: email.Account{User: shop, Password: password}})
	if err != nil {
		t.Fatal(err)
	}
	return o, s
}

func soon(t *testing.T) context.Context {
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	t.Cleanup(cancel)
	return ctx
}

// A person writes, the shop answers in the thread, the person answers with a photo.
func TestThereAndBackAgain(t *testing.T) {
	o, s := open(t)
	ctx := soon(t)
	photo, err := os.ReadFile("../testdata/dome.jpg")
	if err != nil {
		t.Fatal(err)
	}
	came := make(chan email.Message, 10)
	w, err := email.NewWatcher(email.WatcherConfig{Address: o.IMAP(), Security: email.Insecure, Backoff: 10 * time.Millisecond, Poll: 200 * time.Millisecond,
		Account: email.Account{User: shop, Password: password},
		Store: func(_ context.Context, in email.Incoming) error {
			m, err := email.Parse(bytes.NewReader(in.Raw), email.Limits{})
			came <- m
			return err
		}})
	if err != nil {
		t.Fatal(err)
	}
	go w.Run(ctx)
	dana := email.Mailbox{Name: "Dana Fields", Address: "dana@example.com"}
	id, err := o.Write(standin.Letter{From: dana, Subject: "Cracked dome", Text: "It is 25½ × 49½."})
	if err != nil {
		t.Fatal(err)
	}
	first := <-came
	if first.ID != id || first.Text != "It is 25½ × 49½." || first.ReturnPath != dana.Address || first.Auto {
		t.Errorf("%+v", first)
	}
	reply, refs := email.Thread(first)
	raw, err := email.Compose(email.Outgoing{ID: "ours@pinwheel.example", From: email.Mailbox{Name: "Pinwheel", Address: shop}, To: dana,
		Subject: email.ReplySubject(first.Subject, "R7KQ4"), InReplyTo: reply, References: refs, Date: time.Now(), Cause: email.Answer, Text: "Outside?"})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Send(ctx, shop, dana.Address, raw); err != nil {
		t.Fatal(err)
	}
	sent, err := o.WaitTo(ctx, dana.Address, 1)
	if err != nil || !bytes.Equal(sent[0].Raw, raw) {
		t.Fatalf("%d mails, %v", len(sent), err)
	}
	if err := o.StopMailbox(); err != nil {
		t.Fatal(err)
	}
	if _, err := o.Write(standin.Letter{From: dana, Text: "Yes, outside.", Answers: &sent[0],
		Files: []standin.File{{Name: "dome.jpg", Type: "image/jpeg", Data: photo}}}); err != nil {
		t.Fatal(err)
	}
	if err := o.StartMailbox(); err != nil {
		t.Fatal(err)
	}
	second := <-came
	for second.ID == first.ID { // handed over again where the mailbox stopped before it was put away
		second = <-came
	}
	if second.Text != "Yes, outside." || second.InReplyTo != "ours@pinwheel.example" || len(second.References) != 2 ||
		second.Subject != "Re: Cracked dome [R7KQ4]" || len(second.Photos) != 1 {
		t.Errorf("%q, %q, %q, %d photos", second.Text, second.InReplyTo, second.Subject, len(second.Photos))
	}
}

func TestFaults(t *testing.T) {
	o, s := open(t)
	for _, f := range []struct {
		name  string
		fault standin.Fault
		kind  email.SendKind
		taken int
	}{
		{"greylisted", standin.Greylisted, email.SendTemporary, 0},
		{"refused", standin.Rejected, email.SendPermanent, 0},
		{"cut before", standin.CutBefore, email.SendUnknown, 0},
		{"cut after", standin.CutAfter, email.SendUnknown, 1},
		{"slow", standin.Fault{Delay: 50 * time.Millisecond}, "", 1},
	} {
		before := len(o.To("dana@example.com"))
		o.Fail(f.fault)
		err := s.Send(soon(t), "", "dana@example.com", []byte("Subject: x\r\n\r\nx\r\n"))
		var e *email.SendError
		if errors.As(err, &e) != (f.kind != "") || (e != nil && e.Kind != f.kind) {
			t.Errorf("%s: %v", f.name, err)
		}
		if got := len(o.To("dana@example.com")) - before; got != f.taken {
			t.Errorf("%s: %d taken", f.name, got)
		}
	}
	o.Refuse("dana@example.com", 550)
	var e *email.SendError
	if err := s.Send(soon(t), "", "dana@example.com", []byte("x")); !errors.As(err, &e) || e.Kind != email.SendPermanent || e.Stage != "recipient" {
		t.Errorf("refused address: %v", err)
	}
}
