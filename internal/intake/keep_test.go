package intake

import (
	"fmt"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
)

const aDay = 24 * time.Hour

// What the owner wants gone goes by itself when its time has come, and nothing sooner.
func TestKeepingEndsByItself(t *testing.T) {
	m := newMailShop(t, func(o *Options) {
		mailBrain(o)
		o.Photos = labOnly()
	})
	m.open()
	m.write(standin.Letter{From: email.Mailbox{Address: "old@example.com"}, Subject: "Dome", Text: "My dome is cracked",
		Files: []standin.File{{Name: "roof.jpg", Type: "image/jpeg", Data: picture(t, 1, 900, 700, 1, false)}}})
	m.put("away@example.com", "From: away@example.com\nTo: "+shopMail+"\nMessage-ID: <1@example.com>\nAuto-Submitted: auto-replied\nSubject: away\n\nNot here\n")
	m.opened()
	m.write(standin.Letter{From: email.Mailbox{Address: "new@example.com"}, Subject: "Dome", Text: "My dome is hazy"})
	// One talk is 100 days old, the other of today. What the database writes by its own clock
	// is moved along.
	const then = `timestamptz '2026-03-02T18:00:00Z' - CASE WHEN %s THEN interval '100 days' ELSE interval '0' END`
	for _, sql := range []string{
		`UPDATE conversations SET opened_at = ` + fmt.Sprintf(then, `email = 'old@example.com'`),
		`UPDATE leads SET updated_at = ` + fmt.Sprintf(then, `email = 'old@example.com'`),
		`UPDATE messages SET received_at = ` + fmt.Sprintf(then, `conversation_id = 1`),
		`UPDATE messages SET at = received_at`,
		`UPDATE photos SET opened_at = ` + fmt.Sprintf(then, `true`),
		`UPDATE mails_in SET received_at = ` + fmt.Sprintf(then, `sender <> 'new@example.com'`),
	} {
		if _, err := m.pool.Exec(t.Context(), sql); err != nil {
			t.Fatalf("%s: %v", sql, err)
		}
	}
	type left struct{ talks, photos, files, raw, mails int }
	now := func() (l left) {
		m.one(`SELECT (SELECT count(*) FROM conversations), (SELECT count(*) FROM photos), (SELECT count(*) FROM photo_files),
			(SELECT count(raw) FROM mails_in), (SELECT count(*) FROM mails_in)`, &l.talks, &l.photos, &l.files, &l.raw, &l.mails)
		return l
	}
	for _, c := range []struct {
		what string
		keep Keeping
		want left
	}{
		{"all for good", Keeping{}, left{2, 1, 1, 3, 3}},
		{"longer than anything is old", Keeping{101 * aDay, 101 * aDay, 101 * aDay}, left{2, 1, 1, 3, 3}},
		{"raw mail", Keeping{Mail: 99 * aDay}, left{2, 1, 1, 1, 2}},
		{"photos", Keeping{Photos: 99 * aDay}, left{2, 1, 0, 1, 2}},
		{"talks", Keeping{Talks: 99 * aDay}, left{1, 0, 0, 1, 1}},
	} {
		m.SetKeeping(c.keep)
		if err := m.workKeep(t.Context(), nil); err != nil {
			t.Fatal(err)
		}
		if got := now(); got != c.want {
			t.Errorf("%s: left %+v, want %+v", c.what, got, c.want)
		}
	}
	var email, line string
	m.one(`SELECT email, (SELECT detail ->> 'text' FROM staff_history WHERE deed = 'erased') FROM conversations`, &email, &line)
	if email != "new@example.com" || line != "one talk, by age" {
		t.Errorf("left %s; the history says %q", email, line)
	}
}

// The timer runs by itself, once at the start and then each hour.
func TestKeepingIsATimer(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Keeping = Keeping{Talks: 20 * aDay} })
	s.receive(Inbound{Channel: "sms", ID: "A", From: phone, Text: "hello", At: noon.Add(-40 * aDay)})
	for _, sql := range []string{`UPDATE conversations SET opened_at = $1`, `UPDATE leads SET updated_at = $1`,
		`UPDATE messages SET received_at = $1, n = 1, handled_at = $1`, `DELETE FROM river_job WHERE created_at < $1::timestamptz + interval '10 years'`} {
		if _, err := s.pool.Exec(t.Context(), sql, noon.Add(-40*aDay)); err != nil {
			t.Fatalf("%s: %v", sql, err)
		}
	}
	s.start()
	s.until("the old talk is gone", func() bool {
		var n int
		s.one(`SELECT count(*) FROM conversations`, &n)
		return n == 0
	})
}
