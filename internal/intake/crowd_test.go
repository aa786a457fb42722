package intake

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Many new addresses of one domain are held back as many new numbers of one prefix are,
// and an address elsewhere is answered meanwhile.
func TestManyNewAddressesOfOneDomain(t *testing.T) {
	const most = 3
	m := newMailShop(t, func(o *Options) { o.Limits = Limits{NewFromDomain: most} })
	m.open()
	for i := range 2 * most {
		m.write(standin.Letter{From: email.Mailbox{Address: fmt.Sprintf("a%d@farm.example", i)}, Subject: "Hi", Text: "hello"})
	}
	m.write(standin.Letter{From: email.Mailbox{Address: "a0@elsewhere.example"}, Subject: "Hi", Text: "hello"})
	var held int
	m.one(`SELECT count(*) FROM leads WHERE $$`+whyDomain+`$$ = ANY (why_staff) AND status = 'needs_person'`, &held)
	if got := len(m.said()); got != most+1 || held != most || len(m.office.To("a0@elsewhere.example")) != 1 {
		t.Errorf("%d answers, %d held back", got, held)
	}
}

// The day's mails are bounded as the day's texts are.
func TestBudgetOfMails(t *testing.T) {
	const most = 2
	m := newMailShop(t, func(o *Options) { o.Limits = Limits{MailsADay: most} })
	m.open()
	for i := range 2 * most {
		m.write(standin.Letter{From: email.Mailbox{Address: fmt.Sprintf("a%d@example.com", i)}, Subject: "Hi", Text: "hello"})
	}
	m.write(standin.Letter{From: email.Mailbox{Address: "a0@example.com"}, Subject: "Hi", Text: "STOP"})
	if got := m.sends(); got != "sent sent held:budget held:budget sent" {
		t.Errorf("sends %s", got)
	}
}

// One talk has its share of a day's segments and no more, whatever is left for others.
func TestShareOfOneTalk(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Limits = Limits{SegmentsOfOne: 4, SegmentsADay: 1000} })
	s.start()
	for range 6 {
		s.text("hello")
		s.quiet()
	}
	s.text("STOP")
	s.quiet()
	s.receive(Inbound{Channel: conversation.SMS, ID: "B", From: "+16125550100", Text: "hi"})
	s.quiet()
	if got := s.sends(); got != "sent sent sent sent held:budget held:budget sent sent" {
		t.Errorf("sends %s", got)
	}
}

// A program that sends nothing but HELP is not answered for ever.
func TestKeywordsAreNotAnsweredForEver(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Limits = Limits{TextsAnHour: 1000} })
	s.start()
	for range keywordsAnHour + 6 {
		s.text("HELP")
		s.quiet()
	}
	answered := len(s.carrier.texts())
	if answered < keywordsAnHour/2 || answered > keywordsAnHour {
		t.Errorf("%d answers", answered)
	}
	s.text("STOP")
	s.quiet()
	out, err := db.OptedOut(t.Context(), s.pool, db.Address{Channel: conversation.SMS, Address: phone})
	if err != nil || !out {
		t.Errorf("STOP does not count: %v, %v", out, err)
	}
}

// The day's photos are bounded in all, whoever sends them.
func TestPhotosOfADay(t *testing.T) {
	m := newMailShop(t, func(o *Options) {
		mailBrain(o)
		o.Photos, o.Limits = labOnly(), Limits{PhotosADay: 1}
	})
	m.open()
	for i := range 3 {
		m.write(standin.Letter{From: email.Mailbox{Address: fmt.Sprintf("a%d@example.com", i)}, Subject: "Dome", Text: "cracked dome",
			Files: []standin.File{{Name: "roof.jpg", Type: "image/jpeg", Data: pictureOf(uint64(i), 900, 700, 1, false)}}})
		m.opened()
	}
	var kept, gone int
	m.one(`SELECT count(*) FILTER (WHERE state = 'kept'), count(*) FILTER (WHERE state = 'gone') FROM photos`, &kept, &gone)
	if kept != 1 || gone != 2 {
		t.Errorf("%d kept, %d let go", kept, gone)
	}
}

// What comes in a crowd does not go out in one: people of staff hear once an hour that
// talks are held back, not once for each.
func TestCrowdsAreToldOnceAnHour(t *testing.T) {
	s, out, _ := staffedShop(t, func(o *Options) { o.Limits = Limits{NewFromPrefix: 1} })
	for i := range 5 {
		s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprint("C", i), From: fmt.Sprintf("+1612555010%d", i), Text: "hi"})
		s.quiet()
	}
	s.tellNow()
	s.tellNow()
	texts := slices.DeleteFunc(s.staffTexts(), func(text string) bool { return !strings.Contains(text, "held back") })
	mails := slices.DeleteFunc(out.subjects(), func(text string) bool { return !strings.Contains(text, "held back") })
	if len(texts) != 1 || len(mails) != 1 {
		t.Errorf("texts %q, mails %q", texts, mails)
	}
	for _, reason := range []string{db.AlertFlood, db.AlertBudget, db.AlertTrouble, db.AlertUnreachable, db.AlertNotSent, db.AlertSendUnknown} {
		if about, why := whatIsNew(db.OpenAlert{Ref: "R7KQ4", Reasons: []string{reason}}, noon); about == "" || why == "" {
			t.Errorf("nothing is said of %s: %q, %q", reason, about, why)
		}
	}
}
