package intake

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

func TestMailIsAnsweredInItsThread(t *testing.T) {
	m := newMailShop(t, nil)
	m.sender.Foot = func() string { return "Pinwheel Dome Supply" }
	m.open()
	m.write(standin.Letter{Subject: "Cracked dome", Text: "It is 25 1/2 x 49 1/2."})
	var ref string
	m.one(`SELECT ref FROM conversations`, &ref)
	first := m.office.To(dana.Address)
	if len(first) != 1 {
		t.Fatalf("%d answers", len(first))
	}
	m.write(standin.Letter{Text: "Yes, outside.", Answers: &first[0]})
	got := m.answers(dana.Address)
	if len(got) != 2 || got[0].Text != "heard 1:It is 25 1/2 x 49 1/2." || got[1].Text != "heard 3:Yes, outside." {
		t.Fatalf("answers %+v", got)
	}
	if want := "Re: Cracked dome [" + ref + "]"; got[0].Subject != want || got[1].Subject != want {
		t.Errorf("subjects %q, %q, want %q", got[0].Subject, got[1].Subject, want)
	}
	if len(got[1].References) != 3 || got[1].References[1] != got[0].ID || got[1].InReplyTo != got[1].References[2] {
		t.Errorf("thread %q in reply to %q", got[1].References, got[1].InReplyTo)
	}
	if !got[0].Auto || got[0].AutoWhy != email.AutoSubmitted {
		t.Error("other programs are not told that it is automatic")
	}
	if left := m.office.Left("Taken in"); left != 2 {
		t.Errorf("%d mails taken in", left)
	}
	var raw int
	if m.one(`SELECT count(*) FROM mails_out WHERE raw IS NOT NULL`, &raw); raw != 0 {
		t.Errorf("%d raw mails are kept though they were sent", raw)
	}
}

func TestWhatIsNeverAnswered(t *testing.T) {
	for _, c := range []struct{ what, from, raw, kinds string }{
		{"automatic by its own word", "dana@example.com", letter("Message-ID: <1@example.com>\nAuto-Submitted: auto-replied\nSubject: Away", "Back on Monday"), "auto 1"},
		{"a null sender", "", letter("Message-ID: <1@example.com>\nSubject: Hi", "hello"), "auto 1"},
		{"a list", "dana@example.com", letter("Message-ID: <1@example.com>\nList-Id: <skylights.example>\nSubject: Hi", "hello"), "auto 1"},
		{"bulk", "dana@example.com", letter("Message-ID: <1@example.com>\nPrecedence: bulk\nSubject: Hi", "hello"), "auto 1"},
		{"our own, come back", shopMail, "From: " + shopMail + "\nTo: " + shopMail + "\nMessage-ID: <1@pinwheel.example>\nSubject: Re: Hi\n\nhello\n", "own 1"},
		{"no mail at all", "x@example.com", "\x00\x01\x02", "unreadable 1"},
		{"an address with a space", "x@example.com", "From: \"a b\"@example.com\nMessage-ID: <1@example.com>\nSubject: Hi\n\nhello\n", "unreadable 1"},
	} {
		t.Run(c.what, func(t *testing.T) {
			m := newMailShop(t, nil)
			m.open()
			m.put(c.from, c.raw)
			var talks int
			m.one(`SELECT count(*) FROM conversations`, &talks)
			if sent := len(m.said()); sent != 0 || talks != 0 || m.kinds() != c.kinds {
				t.Errorf("%d answers, %d talks, kept as %s; want %s", sent, talks, m.kinds(), c.kinds)
			}
		})
	}
}

func TestTheSameMailTwiceIsOne(t *testing.T) {
	m := newMailShop(t, nil)
	m.open()
	same := letter("Message-ID: <1@example.com>\nSubject: Hi", "hello")
	m.put("dana@example.com", same)
	m.put("dana@example.com", "Received: from elsewhere.example\n"+same)
	m.put("dana@example.com", letter("Message-ID: <1@example.com>\nSubject: Hi", "something else under the same id"))
	m.wantTalk("1 customer hello", "2 bot heard 1:hello", "3 customer something else under the same id", "4 bot heard 3:something else under the same id")
}

func TestBounceEndsFollowUps(t *testing.T) {
	m := newMailShop(t, mailBrain)
	m.open()
	m.write(standin.Letter{Subject: "Dome", Text: "My skylight dome is cracked"})
	sent := m.answers(dana.Address)
	if len(sent) != 1 {
		t.Fatalf("%d answers", len(sent))
	}
	m.put("", fmt.Sprintf(`From: MAILER-DAEMON@mx.example.com
To: %s
Subject: Undelivered Mail
Message-ID: <b1@mx.example.com>
Auto-Submitted: auto-replied
MIME-Version: 1.0
Content-Type: multipart/report; report-type=delivery-status; boundary=b

--b
Content-Type: text/plain

It could not be delivered.
--b
Content-Type: message/delivery-status

Reporting-MTA: dns; mx.example.com

Final-Recipient: rfc822; dana@example.com
Action: failed
Status: 5.1.1

--b
Content-Type: text/rfc822-headers

Message-ID: <%s>
--b--
`, shopMail, sent[0].ID))
	m.until("the lead is marked", func() bool { return slices.Contains(m.record().WhyStaff, conversation.WhyNoMail) })
	var asleep bool
	m.one(`SELECT wake_at IS NULL FROM conversations`, &asleep)
	if r := m.record(); !asleep || r.Status != "needs_person" || m.kinds() != "bounce 1, message 1" {
		t.Errorf("lead %s, no follow-up %v, mails %s", r.Status, asleep, m.kinds())
	}
	// Who writes again can be reached again.
	m.write(standin.Letter{Text: "Sorry, my mailbox was full. It's a house in Duluth MN", Answers: &m.office.To(dana.Address)[0]})
	if r := m.record(); slices.Contains(r.WhyStaff, conversation.WhyNoMail) || len(m.answers(dana.Address)) != 2 {
		t.Errorf("after another mail: %v", r.WhyStaff)
	}
}

func TestRobotsThatHideWhatTheyAreEndByThemselves(t *testing.T) {
	m := newMailShop(t, mailBrain)
	m.open()
	answers := 0
	for n := range 20 {
		m.put("desk@robot.example", fmt.Sprintf("From: Help desk <desk@robot.example>\nTo: %s\nMessage-ID: <%d@robot.example>\nSubject: Re: ticket %d\n\nThank you for writing! How did we do today?\n", shopMail, n, n))
		answers = len(m.office.To("desk@robot.example"))
	}
	if r := m.record(); answers > 7 || r.Status != "needs_person" {
		t.Errorf("%d answers to a robot; the lead is %s, %v", answers, r.Status, r.WhyStaff)
	}
}

func TestMailFaults(t *testing.T) {
	for _, c := range []struct {
		what  string
		fault func(o *standin.Office)
		taken int
		sends string
		alert string
	}{
		{"not now: the same mail again", func(o *standin.Office) { o.Fail(standin.Greylisted, standin.ServerFull) }, 1, "sent", ""},
		{"refused for good", func(o *standin.Office) { o.Fail(standin.Rejected) }, 0, "failed:554", db.AlertNotSent},
		{"no such person", func(o *standin.Office) { o.Refuse(dana.Address, 550) }, 0, "failed:550", db.AlertUnreachable},
		{"cut off before it was taken: nobody knows", func(o *standin.Office) { o.Fail(standin.CutBefore) }, 0, "unknown:unknown", db.AlertSendUnknown},
		{"cut off after it was taken: nobody knows", func(o *standin.Office) { o.Fail(standin.CutAfter) }, 1, "unknown:unknown", db.AlertSendUnknown},
	} {
		t.Run(c.what, func(t *testing.T) {
			m := newMailShop(t, nil)
			c.fault(m.office)
			m.open()
			m.write(standin.Letter{Subject: "Dome", Text: "hello"})
			var alerts string
			m.one(`SELECT coalesce(string_agg(reason, ' '), '') FROM alerts`, &alerts)
			if got := len(m.office.To(dana.Address)); got != c.taken || m.sends() != c.sends || alerts != c.alert {
				t.Errorf("%d taken, sends %s, alerts %q; want %d, %s, %q", got, m.sends(), alerts, c.taken, c.sends, c.alert)
			}
		})
	}
}

func TestStopByMail(t *testing.T) {
	for _, c := range []struct{ what, subject, text string }{
		{"in the text", "Re: dome", "STOP"},
		{"in the subject alone", "STOP", ""},
	} {
		t.Run(c.what, func(t *testing.T) {
			m := newMailShop(t, mailBrain)
			m.open()
			m.write(standin.Letter{Subject: "Dome", Text: "My skylight dome is cracked"})
			m.write(standin.Letter{Subject: c.subject, Text: c.text})
			m.write(standin.Letter{Subject: "Dome", Text: "it is a house"})
			said := m.said()
			if len(said) != 2 || !strings.Contains(said[1], "won't get any more mail") {
				t.Errorf("said %q", said)
			}
			out, err := db.OptedOut(t.Context(), m.pool, db.Address{Channel: conversation.Email, Address: dana.Address})
			if err != nil || !out {
				t.Errorf("opted out %v, %v", out, err)
			}
		})
	}
}

func TestUnprovenSenderIsMarked(t *testing.T) {
	const proof = "Authentication-Results: mx.pinwheel.example; dmarc=pass header.from=example.com\n"
	for _, c := range []struct {
		what, raw string
		marked    bool
	}{
		{"proven", letter(proof+"Message-ID: <1@example.com>\nSubject: Hi", "My dome is cracked"), false},
		{"unproven", letter("Message-ID: <1@example.com>\nSubject: Hi", "My dome is cracked"), true},
		{"proven by somebody else's word", letter(strings.Replace(proof, "mx.pinwheel", "mx.other", 1)+"Message-ID: <1@example.com>\nSubject: Hi", "My dome is cracked"), true},
	} {
		t.Run(c.what, func(t *testing.T) {
			m := newMailShop(t, func(o *Options) {
				mailBrain(o)
				o.Mail.AuthServer = "mx.pinwheel.example"
			})
			m.open()
			m.put("dana@example.com", c.raw)
			marked := slices.Contains(m.record().WhyStaff, "the mail's sender is not proven")
			if marked != c.marked || len(m.said()) != 1 {
				t.Errorf("marked %v, %d answers", marked, len(m.said()))
			}
		})
	}
}

func TestPiecesOfAMailAreReadByWhatTheyAnswer(t *testing.T) {
	m := newMailShop(t, mailBrain)
	m.open()
	m.put("dana@example.com", letter("Message-ID: <1@example.com>\nSubject: Hi", `> What is the opening inside that box, wood to wood, width x length?
22 1/2 x 46 1/2

> What does the raised box measure over the outside, width x length?
25 1/2 x 49 1/2`))
	var inside, outside float64
	m.one(`SELECT (units -> 0 -> 'curb_inside' ->> 'width_in')::float8, (units -> 0 -> 'curb_outside' ->> 'width_in')::float8 FROM leads`, &inside, &outside)
	if inside != 22.5 || outside != 25.5 {
		t.Errorf("inside %v, outside %v", inside, outside)
	}
}

func TestReminderByMailCanBeEnded(t *testing.T) {
	m := newMailShop(t, nil)
	key, err := db.LinkKey(t.Context(), m.pool, "mail")
	if err != nil {
		t.Fatal(err)
	}
	links := NewUnsubscribe(m.Service, key, "https://bot.example.com")
	m.sender.Unsubscribe = links.Link
	m.open()
	m.write(standin.Letter{Subject: "Dome", Text: "wait"})
	m.later(2 * time.Hour)
	if err := m.sweep(t.Context(), sweepAll); err != nil {
		t.Fatal(err)
	}
	m.until("the reminder is there", func() bool { return len(m.office.To(dana.Address)) == 2 })
	raw := string(m.office.To(dana.Address)[1].Raw)
	if !strings.Contains(raw, "List-Unsubscribe-Post: List-Unsubscribe=One-Click") || !strings.Contains(raw, "Auto-Submitted: auto-generated") {
		t.Fatalf("the reminder is\n%s", raw)
	}
	if strings.Contains(string(m.office.To(dana.Address)[0].Raw), "List-Unsubscribe") {
		t.Error("an answer bears List-Unsubscribe")
	}
	testUnsubscribe(t, m, links, raw)
}
