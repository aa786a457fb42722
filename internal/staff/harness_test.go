package staff

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/fitcheck"
)

// noon is noon in Duluth, on a Monday.
var noon = time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)

const password = "three wooden ladders"

// weekdays is a shop that is open from 8 to 17 on weekdays.
type weekdays struct{ zone *time.Location }

func (w weekdays) Open(t time.Time) bool {
	t = t.In(w.zone)
	return t.Weekday() != time.Saturday && t.Weekday() != time.Sunday && t.Hour() >= 8 && t.Hour() < 17
}

func (w weekdays) NextOpening(t time.Time) time.Time {
	for t = t.In(w.zone); !w.Open(t); {
		t = time.Date(t.Year(), t.Month(), t.Day(), t.Hour()+1, 0, 0, 0, w.zone)
	}
	return t
}

// house is a running page with its database.
type house struct {
	t     testing.TB
	pool  *pgxpool.Pool
	page  *Server
	url   string
	sends atomic.Int64 // how often somebody was asked to send
	shop  *conversation.Shop
}

func newHouse(t testing.TB) *house {
	t.Helper()
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	h := &house{t: t, pool: dbtest.New(t), shop: &conversation.Shop{Name: "Pinwheel Dome Supply", Assistant: "the shop's assistant",
		Phone: "(218) 555-0142", Email: "help@pinwheel.example", Zone: zone, Hours: weekdays{zone}, Rules: fitcheck.DefaultRules()}}
	h.page, err = New(Options{Pool: h.pool, Shop: func() *conversation.Shop { return h.shop },
		Send:     func(context.Context, pgx.Tx, int64) error { h.sends.Add(1); return nil },
		ShopFile: func() string { return "name: Pinwheel Dome Supply\n" },
		Clock:    func() time.Time { return noon },
		Log:      slog.New(slog.NewTextHandler(t.Output(), &slog.HandlerOptions{Level: slog.LevelWarn}))})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(h.page.Close)
	server := httptest.NewServer(h.page)
	t.Cleanup(server.Close)
	h.url = server.URL
	return h
}

// hash is made once: it is meant to be slow.
var hash = func() string {
	h, err := HashPassword(password)
	if err != nil {
		panic(err)
	}
	return h
}()

func (h *house) account(login, name string, role db.Role) int64 {
	h.t.Helper()
	id, err := db.AddStaff(context.Background(), h.pool, db.Staff{Login: login, Name: name, Role: role, PasswordHash: hash})
	if err != nil {
		h.t.Fatal(err)
	}
	return id
}

func (h *house) exec(sql string, args ...any) {
	h.t.Helper()
	if _, err := h.pool.Exec(context.Background(), sql, args...); err != nil {
		h.t.Fatalf("%v in %s", err, sql)
	}
}

// lead is a talk with its ledger, as a turn would have saved it.
func (h *house) lead(ref, phone string, state conversation.State, change func(*conversation.Talk)) int64 {
	h.t.Helper()
	ctx := context.Background()
	var id int64
	err := h.pool.QueryRow(ctx, `WITH c AS (INSERT INTO conversations (ref, channel, phone, state, last_n, opened_at) VALUES ($1, 'sms', $2, 'opening', 0, $3) RETURNING id),
		l AS (INSERT INTO leads (conversation_id, phone, updated_at) SELECT id, $2, $3 FROM c),
		a AS (INSERT INTO addresses SELECT 'sms', $2, id FROM c)
		INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, photos, at) SELECT id, 'in', 'customer', 'sms', $2, 'SM' || $1, 'Ana here, curb is 25 1/2 x 49 1/2, inside 22 1/2 x 46 1/2', 0, $3 FROM c RETURNING conversation_id`,
		ref, phone, noon.Add(-2*time.Hour)).Scan(&id)
	if err != nil {
		h.t.Fatal(err)
	}
	err = pgx.BeginFunc(ctx, h.pool, func(tx pgx.Tx) error {
		held, err := db.HoldTalk(ctx, tx, id)
		if err != nil {
			return err
		}
		held.Waiting[0].Message.N = 1
		talk := held.Talk
		talk.State, talk.Language, talk.Memory.Introduced = state, "en", true
		talk.Ledger = append(talk.Ledger, ledger()...)
		if change != nil {
			change(&talk)
		}
		out, err := conversation.StaffReturn(talk, noon.Add(-2*time.Hour), h.shop)
		if err != nil {
			return err
		}
		out.Say = []conversation.Utterance{{Text: "Thanks Ana. A person here will look at it.", Kind: conversation.Reply}}
		_, err = db.SaveTurn(ctx, tx, db.Turn{Held: held, Handled: held.Waiting, Outcome: out, To: held.Newest,
			Record: conversation.NewRecord(out.Talk, nil, nil), Now: noon.Add(-2 * time.Hour)})
		return err
	})
	if err != nil {
		h.t.Fatal(err)
	}
	return id
}

func ledger() []conversation.Entry {
	const inch = fitcheck.Inch
	said := func(topic fitcheck.Topic, unit int, v fitcheck.Value, words string) conversation.Entry {
		return conversation.Entry{Topic: topic, Unit: unit, Value: v, Said: words, Message: 1, By: conversation.FromCustomer}
	}
	return []conversation.Entry{
		said(fitcheck.TopicName, 0, fitcheck.Text("Ana"), "Ana here"),
		said(fitcheck.TopicPlace, 0, fitcheck.Place{City: "Duluth", State: "MN", ZIP: "55802"}, "Duluth"),
		said(fitcheck.TopicUse, 0, fitcheck.Choice("home"), "house"),
		said(fitcheck.TopicProblem, 0, fitcheck.ChoiceList{"cracked"}, "cracked"),
		said(fitcheck.TopicCount, 1, fitcheck.Whole(1), "one"),
		said(fitcheck.TopicStyle, 1, fitcheck.Choice("curb_mount"), "metal frame on a box"),
		said(fitcheck.TopicWant, 1, fitcheck.Choice("complete_unit"), "the whole thing"),
		said(fitcheck.TopicCurbOutside, 1, fitcheck.Size{Width: 25*inch + inch/2, Length: 49*inch + inch/2}, "25 1/2 x 49 1/2"),
		said(fitcheck.TopicCurbInside, 1, fitcheck.Size{Width: 22*inch + inch/2, Length: 46*inch + inch/2}, "22 1/2 x 46 1/2"),
	}
}

// browser is a person at the page: a client with cookies that follows no redirect.
type browser struct {
	*house
	client *http.Client
}

func (h *house) browser() *browser {
	jar, err := cookiejar.New(nil)
	if err != nil {
		h.t.Fatal(err)
	}
	return &browser{h, &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
}

// as is a browser in which somebody has logged in.
func (h *house) as(login string) *browser {
	h.t.Helper()
	b := h.browser()
	if status, _ := b.post("/staff/login", "login", login, "password", password); status != http.StatusSeeOther {
		h.t.Fatalf("log in as %s: %d", login, status)
	}
	return b
}

func (b *browser) get(path string) (status int, body string) {
	b.t.Helper()
	return b.ask(http.MethodGet, path, nil)
}

func (b *browser) post(path string, fields ...string) (status int, body string) {
	b.t.Helper()
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	return b.ask(http.MethodPost, path, form)
}

func (b *browser) ask(method, path string, form url.Values) (int, string) {
	b.t.Helper()
	req, err := http.NewRequest(method, b.url+path, strings.NewReader(form.Encode()))
	if err != nil {
		b.t.Fatal(err)
	}
	req.Header.Set("Sec-Fetch-Site", "same-origin")
	if form != nil {
		req.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	resp, err := b.client.Do(req)
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	return resp.StatusCode, string(body)
}

// does posts a form and gives what the next page tells.
func (b *browser) does(path string, fields ...string) string {
	b.t.Helper()
	status, body := b.post(path, fields...)
	if status != http.StatusSeeOther {
		return fmt.Sprintf("%d %s", status, body)
	}
	_, page := b.get("/staff/")
	_, told, found := strings.Cut(page, `<p class="told`)
	if !found {
		return ""
	}
	told, _, _ = strings.Cut(told, "</p>")
	return told
}

func (h *house) status(ref string) (status, holder string) {
	h.t.Helper()
	err := h.pool.QueryRow(context.Background(), `SELECT l.status, coalesce(s.login, '') FROM leads l JOIN conversations c ON c.id = l.conversation_id
		LEFT JOIN lead_hands h USING (conversation_id) LEFT JOIN staff s ON s.id = h.staff_id WHERE c.ref = $1`, ref).Scan(&status, &holder)
	if err != nil {
		h.t.Fatal(err)
	}
	return status, holder
}
