package intake

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/photo"
)

// childMail says that the child takes mail, not texts.
const childMail = "INTAKE_CRASH_MAIL"

// mailCrashLease is long enough for a busy machine: a mail that takes longer to hand over
// counts as one of which nobody knows.
const mailCrashLease = 6 * time.Second

// mailChild takes the customer's mails in as a watcher hands them over, again where it
// does not know that they were stored, and works until nothing is left to be done.
func mailChild(url, point string) error {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	pool, err := db.Open(ctx, url)
	if err != nil {
		return err
	}
	defer pool.Close()
	sender := EmailSender{Pool: pool, Carrier: tableMail{pool}, Address: shopMail, Name: func() string { return "Pinwheel" }}
	s, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(), Photos: &PhotoRoom{Lab: photo.NewLab(photo.Limits{})},
		Senders: map[conversation.Channel]Sender{conversation.Email: sender},
		Clock:   func() time.Time { return noon }, Lease: mailCrashLease, Step: dieAt(point)})
	if err != nil {
		return err
	}
	if err := s.Start(ctx); err != nil {
		return err
	}
	for i, words := range script {
		if err := s.TakeMail(ctx, email.Incoming{Raw: crashMail(i, words), Received: noon}); err != nil {
			return err
		}
		if err := settle(ctx, pool); err != nil {
			return err
		}
	}
	if err := opened(ctx, pool); err != nil {
		return err
	}
	return s.Stop(ctx)
}

// opened waits until every photo was opened.
func opened(ctx context.Context, pool *pgxpool.Pool) error {
	for {
		var waiting int
		err := pool.QueryRow(ctx, `SELECT count(*) FROM photos WHERE state = 'referenced'`).Scan(&waiting)
		if err != nil || waiting == 0 {
			return err
		}
		time.Sleep(2 * time.Millisecond)
	}
}

// crashMail is the nth mail; a photo comes with the first.
func crashMail(n int, words string) []byte {
	head := fmt.Sprintf("From: dana@example.com\nTo: %s\nMessage-ID: <%d@example.com>\nSubject: Dome\nMime-Version: 1.0\n", shopMail, n)
	if n > 0 {
		return []byte(strings.ReplaceAll(head+"\n"+words+"\n", "\n", "\r\n"))
	}
	picture := base64.StdEncoding.EncodeToString(pictureOf(1, 700, 500, 1, false))
	var lines []string
	for len(picture) > 76 {
		lines, picture = append(lines, picture[:76]), picture[76:]
	}
	body := "Content-Type: multipart/mixed; boundary=b\n\n--b\nContent-Type: text/plain\n\n" + words +
		"\n--b\nContent-Type: image/jpeg\nContent-Disposition: attachment; filename=a.jpg\nContent-Transfer-Encoding: base64\n\n" +
		strings.Join(append(lines, picture), "\n") + "\n--b--\n"
	return []byte(strings.ReplaceAll(head+body, "\n", "\r\n"))
}

// tableMail is a mail server that keeps what it took in the carrier's table.
type tableMail struct{ pool *pgxpool.Pool }

func (m tableMail) Send(ctx context.Context, _, to string, raw []byte) error {
	parsed, err := email.Parse(bytes.NewReader(raw), email.Limits{})
	if err != nil {
		return err
	}
	_, err = m.pool.Exec(ctx, `INSERT INTO carrier (address, text) VALUES ($1, $2)`, to, parsed.Text)
	return err
}

// A mail that was taken in is answered once, whenever the process dies. The one mail of
// which nobody can know whether it went is not sent again, and staff are told.
func TestKilledAtEachPointOfAMail(t *testing.T) {
	url, pool := crashDatabase(t)
	const mail = childMail + "=1"
	if run(t, url, "", mail) {
		t.Fatal("the undisturbed run died")
	}
	want := left(t, pool)
	if !strings.Contains(want, "sent sent sent") || !strings.Contains(want, `"width": 700`) || strings.Count(want, " | ") != 3 {
		t.Fatalf("the undisturbed run left\n%s", want)
	}
	for _, point := range Points {
		t.Run(string(point), func(t *testing.T) {
			t.Parallel() // they mostly wait
			url, pool := crashDatabase(t)
			if !run(t, url, fmt.Sprintf("%s 1", point), mail) {
				t.Fatal("the process did not come to that point")
			}
			if run(t, url, "", mail) {
				t.Fatal("the second process died")
			}
			got := left(t, pool)
			if point == AfterSendCall {
				var alerts int
				if err := pool.QueryRow(t.Context(), `SELECT count(*) FROM alerts WHERE reason = 'send_unknown'`).Scan(&alerts); err != nil || alerts != 1 {
					t.Errorf("%d alerts, %v", alerts, err)
				}
				got = strings.Replace(got, "unknown sent", "sent sent", 1)
			}
			if got != want {
				t.Errorf("it left\n%s\nwant\n%s", got, want)
			}
		})
	}
}
