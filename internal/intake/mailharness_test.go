package intake

import (
	"context"
	"fmt"
	"log/slog"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/photo"
)

const (
	shopMail     = "hello@pinwheel.example"
	mailPassword = "not a real one"
)

var dana = email.Mailbox{Name: "Dana Fields", Address: "dana@example.com"}

// mailShop is a shop with a post office in miniature beside it.
type mailShop struct {
	*shop
	office *standin.Office
	sender *EmailSender
	watch  *email.Watcher
}

func newMailShop(t *testing.T, change func(*Options)) *mailShop {
	t.Helper()
	office, err := standin.New(standin.Config{Address: shopMail, Password: mailPassword, Now: func() time.Time { return noon }})
	if err != nil {
		t.Fatal(err)
	}
	if err := office.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { office.Close() })
	carrier, err := email.NewSender(email.SenderConfig{Address: office.SMTP(), Security: email.Insecure,
		Account: email.Account{User: shopMail, Password: mailPassword}})
	if err != nil {
		t.Fatal(err)
	}
	m := &mailShop{office: office, sender: &EmailSender{Carrier: carrier, Address: shopMail,
		Name: func() string { return "Pinwheel Dome Supply" }}}
	m.shop = newShop(t, func(o *Options) {
		m.sender.Pool = o.Pool
		o.Senders[conversation.Email] = m.sender
		o.Mail = MailSettings{Own: []string{shopMail}}
		if change != nil {
			change(o)
		}
	})
	m.watch = m.watcher(nil)
	return m
}

// mailBrain is the talk itself in place of the parrot.
func mailBrain(o *Options) { o.Brain, o.Shop = realBrain(), realShop() }

// watcher is one that takes mail in for the shop.
func (m *mailShop) watcher(lock func(context.Context) (<-chan struct{}, func(), error)) *email.Watcher {
	m.t.Helper()
	w, err := email.NewWatcher(email.WatcherConfig{Address: m.office.IMAP(), Security: email.Insecure, Backoff: 10 * time.Millisecond,
		Poll: 200 * time.Millisecond, Account: email.Account{User: shopMail, Password: mailPassword}, Store: m.TakeMail, Lock: lock,
		Log: slog.New(slog.NewTextHandler(m.t.Output(), &slog.HandlerOptions{Level: slog.LevelError}))})
	if err != nil {
		m.t.Fatal(err)
	}
	return w
}

// open starts the jobs and the watching.
func (m *mailShop) open() {
	m.t.Helper()
	m.start()
	ctx, cancel := context.WithCancel(m.t.Context())
	done := make(chan struct{})
	go func() { defer close(done); _ = m.watch.Run(ctx) }() // ends with ctx
	m.t.Cleanup(func() { cancel(); <-done })
}

// write has a person write, and waits until nothing is left to be done.
func (m *mailShop) write(l standin.Letter) {
	m.t.Helper()
	if l.From == (email.Mailbox{}) {
		l.From = dana
	}
	if _, err := m.office.Write(l); err != nil {
		m.t.Fatal(err)
	}
	m.settled()
}

// put lays a raw mail into the mailbox and waits likewise.
func (m *mailShop) put(from, raw string) {
	m.t.Helper()
	if err := m.office.Put(from, []byte(strings.ReplaceAll(raw, "\n", "\r\n"))); err != nil {
		m.t.Fatal(err)
	}
	m.settled()
}

func (m *mailShop) settled() {
	m.t.Helper()
	m.until("the mailbox is empty", func() bool { return m.office.Left("INBOX") == 0 })
	m.quiet()
}

// opened waits until every photo was opened.
func (m *mailShop) opened() {
	m.t.Helper()
	m.until("every photo is opened", func() bool {
		var open int
		m.one(`SELECT count(*) FROM photos WHERE state = 'referenced'`, &open)
		return open == 0
	})
	m.quiet()
}

// labOnly opens photos that come by mail.
func labOnly() *PhotoRoom {
	return &PhotoRoom{Lab: photo.NewLab(photo.Limits{}), Wait: 3 * time.Minute}
}

// answers are the mails that the shop sent to an address.
func (m *mailShop) answers(address string) []email.Message {
	m.t.Helper()
	var all []email.Message
	for _, sent := range m.office.To(address) {
		parsed, err := email.Parse(strings.NewReader(string(sent.Raw)), email.Limits{})
		if err != nil {
			m.t.Fatal(err)
		}
		all = append(all, parsed)
	}
	return all
}

// kinds counts what became of mails: "message 2, auto 1".
func (m *mailShop) kinds() string {
	m.t.Helper()
	var kinds string
	m.one(`SELECT coalesce(string_agg(kind || ' ' || n, ', ' ORDER BY kind), '') FROM (SELECT kind, count(*) AS n FROM mails_in GROUP BY kind) k`, &kinds)
	return kinds
}

// said are the texts of all that the shop wrote by mail, in order.
func (m *mailShop) said() []string {
	m.t.Helper()
	var texts []string
	rows, err := m.pool.Query(m.t.Context(), `SELECT text FROM messages WHERE direction = 'out' ORDER BY id`)
	if err != nil {
		m.t.Fatal(err)
	}
	defer rows.Close()
	for rows.Next() {
		var text string
		if err := rows.Scan(&text); err != nil {
			m.t.Fatal(err)
		}
		texts = append(texts, text)
	}
	return texts
}

// letter is a raw mail with the headers that are given, one a line.
func letter(headers, body string) string {
	return fmt.Sprintf("From: Dana Fields <dana@example.com>\nTo: %s\nDate: Mon, 2 Mar 2026 12:00:00 -0600\n%s\n\n%s\n", shopMail, headers, body)
}
