package torture_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	office "example.com/intake-bot/internal/channels/email/standin"
	carrier "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/torture"
)

// The carrier is slow, fails, answers with errors and with other programs' pages, cuts the
// connection before and after it took a message, and for a while can't even say what it
// took; it posts everything several times and in the wrong order.
func TestCarrierFails(t *testing.T) {
	atLength(t)
	r, want := theCrowd(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Carrier.FailBy(faulty(5, 0.3))
	h.Carrier.SetCallbacks(carrier.Callbacks{Order: []string{"delivered", "sent", "queued"}, Repeat: 2})
	h.Open()
	turns := 0
	for _, c := range r.customers {
		turns += len(c.Turns)
	}
	s := &torture.Stages{T: t, Turns: turns, Stages: []func(){
		func() { h.Carrier.ListDown(true) },
		func() { h.Carrier.ListDown(false) },
	}}
	p := &torture.Play{House: h, Customers: r.customers, Seed: r.seed, Gate: s.Gate, Repeat: 0.5}
	if err := p.Run(t.Context()); err != nil {
		t.Fatal(err)
	}
	compare(t, h, r.customers, want)
}

// What the carrier posts hours late: a text that it held, again what was answered long ago,
// in any order, and a STOP.
func TestWebhooksHoursLate(t *testing.T) {
	atLength(t)
	leftOut(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	h.Open()
	const person = "+12185550160"
	texts := func() (out []string) {
		for _, m := range h.Carrier.To(person) {
			out = append(out, m.Body)
		}
		return out
	}
	settled := func() {
		t.Helper()
		torture.Until(t, "all is answered", func() bool {
			return h.Count(t.Context(), `SELECT (SELECT count(*) FROM messages WHERE direction = 'in' AND handled_at IS NULL) +
				(SELECT count(*) FROM sends WHERE finished_at IS NULL)`) == 0
		})
	}
	post := func(d carrier.Delivery) {
		t.Helper()
		if status, err := h.Carrier.Deliver(t.Context(), d); status != 200 || err != nil {
			t.Fatalf("%d, %v", status, err)
		}
		settled()
	}
	held := h.Carrier.Take(person, "it's a house")
	stop := h.Carrier.Take(person, "STOP")
	var posted []carrier.Delivery
	for _, words := range []string{"my dome is cracked", "Dana, Duluth MN 55802"} {
		d := h.Carrier.Take(person, words)
		post(d)
		posted = append(posted, d)
	}
	// Seven hours go by.
	const later = `UPDATE messages SET at = at - interval '7 hours', received_at = received_at - interval '7 hours', handled_at = handled_at - interval '7 hours'`
	if _, err := h.Pool.Exec(t.Context(), later); err != nil {
		t.Fatal(err)
	}
	before := texts()
	slices.Reverse(posted)
	for _, d := range posted {
		post(d)
	}
	if again := texts(); !slices.Equal(before, again) {
		t.Errorf("repeated hours later, they were answered again: %q, before %q", again, before)
	}
	post(held)
	if now := texts(); len(now) != len(before)+1 {
		t.Errorf("a text that came hours late was answered with %d texts", len(now)-len(before))
	}
	post(stop)
	if last := texts(); !strings.Contains(last[len(last)-1], "START") {
		t.Errorf("a late STOP is answered %q", last[len(last)-1])
	}
	before = texts()
	post(h.Carrier.Take(person, "hello?"))
	if now := texts(); len(now) != len(before) {
		t.Errorf("after a late STOP it said %q", now[len(now)-1])
	}
}

// The mail server is slow, asks to come back later, refuses, and cuts the connection before
// and after it took a mail; the mailbox is away for a while.
func TestMailServerFails(t *testing.T) {
	atLength(t)
	r := script(t, 31, 24)
	r.customers = slices.DeleteFunc(r.customers, func(c torture.Customer) bool { return c.Channel != conversation.Email })
	r.customers = r.customers[:min(3, len(r.customers))]
	want := r.calm(t)
	url := dbtest.URL(t)
	h := torture.NewHouse(t, url, url)
	b := h.Open()
	h.Office.Fail(office.Greylisted, office.Fault{Delay: 500 * time.Millisecond}, office.ServerFull, office.CutAfter)
	r.disturbed(t, h, want,
		func() {
			if err := h.Office.StopMailbox(); err != nil {
				t.Error(err)
			}
			if status, said := b.Ready("/readyz"); status != 200 {
				t.Errorf("without the mailbox no text can be kept: %d %s", status, said)
			}
			time.Sleep(500 * time.Millisecond) // the others write meanwhile
			if err := h.Office.StartMailbox(); err != nil {
				t.Error(err)
			}
		},
		func() { h.Office.Fail(office.CutBefore, office.Greylisted) })
	if n := h.Count(t.Context(), `SELECT count(*) FROM sends WHERE state = 'unknown'`); n != 2 {
		t.Errorf("of two mails that nobody can know about, %d are so", n)
	}
}
