package sms_test

import (
	"context"
	"errors"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
)

const account = "AC00000000000000000000000000000001"

func carrier(t *testing.T, change func(*standin.Config)) (*standin.Carrier, *sms.Client) {
	t.Helper()
	cfg := standin.Config{AccountID: account, AuthToken: token, Number: shop}
	if change != nil {
		change(&cfg)
	}
	c := standin.New(cfg)
	base, err := c.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: shop, BaseURL: base, Timeout: 5 * time.Second, Now: cfg.Now})
	if err != nil {
		t.Fatal(err)
	}
	return c, client
}

func TestSend(t *testing.T) {
	c, client := carrier(t, nil)
	id, err := client.Send(t.Context(), person, "ñ & = 1/2 + %20\nsecond line", []string{"https://bot.example.com/p/1?a=b"})
	if err != nil {
		t.Fatal(err)
	}
	got := c.To(person)
	if len(got) != 1 || got[0].ID != id || got[0].Body != "ñ & = 1/2 + %20\nsecond line" || got[0].From != shop ||
		len(got[0].MediaURLs) != 1 || got[0].MediaURLs[0] != "https://bot.example.com/p/1?a=b" {
		t.Errorf("carrier has %+v", got)
	}
	if err := client.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

func TestSendByMessagingService(t *testing.T) {
	c, _ := carrier(t, nil)
	client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, MessagingService: "MG1", BaseURL: c.BaseURL()})
	if err != nil {
		t.Fatal(err)
	}
	sent := time.Now()
	id, err := client.Send(t.Context(), person, "hello", nil)
	if err != nil {
		t.Fatal(err)
	}
	if got, found, err := client.Find(t.Context(), person, "hello", sent); got != id || !found || err != nil {
		t.Errorf("find: %s, %v, %v", got, found, err)
	}
}

// What each failure means for the next try, and whether the carrier has the message.
func TestSendFailures(t *testing.T) {
	for _, f := range []struct {
		name  string
		fault standin.Fault
		want  sms.Kind
		wait  time.Duration
		taken bool
	}{
		{"too many", standin.TooMany, sms.Temporary, time.Second, false},
		{"carrier's 500", standin.ServerError, sms.Temporary, 0, false},
		{"a proxy's 502", standin.BadGateway, sms.Unknown, 0, false},
		{"a proxy's 504 after it was taken", standin.LostAnswer, sms.Unknown, 0, true},
		{"cut before it was taken", standin.ResetBefore, sms.Unknown, 0, false},
		{"cut after it was taken", standin.ResetAfter, sms.Unknown, 0, true},
		{"too slow", standin.Slow(2 * time.Second), sms.Unknown, 0, true},
		{"unsubscribed", standin.Fault{Status: 400, Code: 21610}, sms.Unsubscribed, 0, false},
		{"no mobile", standin.Fault{Status: 400, Code: 21614}, sms.Landline, 0, false},
		{"no number", standin.Fault{Status: 400, Code: 21211}, sms.Invalid, 0, false},
		{"unheard-of code", standin.Fault{Status: 400, Code: 29999}, sms.Refused, 0, false},
	} {
		t.Run(f.name, func(t *testing.T) {
			t.Parallel()
			c, client := carrier(t, nil)
			c.Fail(f.fault)
			ctx, cancel := context.WithTimeout(t.Context(), time.Second)
			defer cancel()
			began := time.Now()
			_, err := client.Send(ctx, person, "the very text", nil)
			var e *sms.SendError
			if !errors.As(err, &e) || e.Kind != f.want || e.RetryAfter != f.wait {
				t.Fatalf("got %v, want %s after %v", err, f.want, f.wait)
			}
			if strings.Contains(err.Error(), person) || strings.Contains(err.Error(), "very") {
				t.Errorf("the error tells of the customer: %v", err)
			}
			if time.Since(began) > 1900*time.Millisecond {
				t.Error("the context was not honoured")
			}
			_, found, err := client.Find(t.Context(), person, "the very text", began)
			if err != nil || found != f.taken {
				t.Errorf("find: %v, %v; want %v", found, err, f.taken)
			}
			if _, err := client.Send(t.Context(), person, "again", nil); err != nil {
				t.Errorf("the next send: %v", err)
			}
		})
	}
}

func TestNobodyListensIsTemporary(t *testing.T) {
	dead := httptest.NewServer(http.NotFoundHandler())
	dead.Close()
	client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: shop, BaseURL: dead.URL})
	if err != nil {
		t.Fatal(err)
	}
	_, err = client.Send(t.Context(), person, "hi", nil)
	var e *sms.SendError
	if !errors.As(err, &e) || e.Kind != sms.Temporary {
		t.Errorf("got %v", err)
	}
	if _, _, err := client.Find(t.Context(), person, "hi", time.Now()); err == nil {
		t.Error("find knows what it can't know")
	}
}

// An answer that says yes but can't be read, or sends elsewhere, leaves it unknown.
func TestUnreadableAnswers(t *testing.T) {
	for _, f := range []struct {
		name   string
		answer http.HandlerFunc
		want   sms.Kind
	}{
		{"201 cut short", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(201); w.Write([]byte(`{"sid":"SM`)) }, sms.Unknown},
		{"201 without an id", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(201); w.Write([]byte(`{}`)) }, sms.Unknown},
		{"redirect", func(w http.ResponseWriter, r *http.Request) {
			http.Redirect(w, r, "https://evil.example/", http.StatusTemporaryRedirect)
		}, sms.Unknown},
		{"endless", func(w http.ResponseWriter, _ *http.Request) { w.Write(make([]byte, 5<<20)) }, sms.Unknown},
		{"401", func(w http.ResponseWriter, _ *http.Request) {
			w.WriteHeader(401)
			w.Write([]byte(`{"code":20003,"status":401}`))
		}, sms.Refused},
		{"403 of a proxy", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(403); w.Write([]byte(`no`)) }, sms.Refused},
		{"503 of a proxy in JSON", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(503); w.Write([]byte(`{}`)) }, sms.Unknown},
	} {
		server := httptest.NewServer(f.answer)
		client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: shop, BaseURL: server.URL})
		if err != nil {
			t.Fatal(err)
		}
		_, err = client.Send(t.Context(), person, "hi", nil)
		var e *sms.SendError
		if !errors.As(err, &e) || e.Kind != f.want {
			t.Errorf("%s: got %v, want %s", f.name, err, f.want)
		}
		server.Close()
	}
}

func TestFind(t *testing.T) {
	now := time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)
	c, client := carrier(t, func(cfg *standin.Config) { cfg.Now = func() time.Time { return now } })
	send := func(to, body string) string {
		t.Helper()
		id, err := client.Send(t.Context(), to, body, nil)
		if err != nil {
			t.Fatal(err)
		}
		return id
	}
	old := send(person, "same words")
	now = now.Add(time.Hour)
	start := now
	for i := range 130 { // more than one page
		send(person, strings.Repeat("x", i+1))
	}
	send("+12185550199", "to another")
	c.Take(person, "from the person")
	if old == "" {
		t.Fatal("no id")
	}
	for _, f := range []struct {
		name, body string
		since      time.Time
		want       bool
	}{
		{"on the second page", "x", start, true},
		{"half a second before it was taken", "xx", start.Add(500 * time.Millisecond), true},
		{"an older one with the same words", "same words", start, false},
		{"the older one, when asked for", "same words", start.Add(-2 * time.Hour), true},
		{"sent to another number", "to another", start, false},
		{"written by the person", "from the person", start, false},
		{"never sent", "never", start, false},
	} {
		_, found, err := client.Find(t.Context(), person, f.body, f.since)
		if err != nil || found != f.want {
			t.Errorf("%s: %v, %v", f.name, found, err)
		}
	}
	c.ListDown(true)
	if _, _, err := client.Find(t.Context(), person, "x", start); err == nil {
		t.Error("no error while the list is down")
	}
}

// A carrier whose clock is behind ours has what it took since all the same; one that is
// ahead has it anyway.
func TestFindByAnotherClock(t *testing.T) {
	for _, off := range []time.Duration{-40 * time.Minute, 40 * time.Minute} {
		ours := time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)
		theirs := ours.Add(off)
		c, _ := carrier(t, func(cfg *standin.Config) { cfg.Now = func() time.Time { return theirs } })
		client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: shop, BaseURL: c.BaseURL(), Now: func() time.Time { return ours }})
		if err != nil {
			t.Fatal(err)
		}
		id, err := client.Send(t.Context(), person, "hello", nil)
		if err != nil {
			t.Fatal(err)
		}
		ours, theirs = ours.Add(time.Minute), theirs.Add(time.Minute)
		if got, found, err := client.Find(t.Context(), person, "hello", ours.Add(-2*time.Minute)); got != id || !found || err != nil {
			t.Errorf("their clock off by %s: %q, %v, %v", off, got, found, err)
		}
	}
}

func TestNewClientRefuses(t *testing.T) {
	for _, f := range []sms.Config{
		{AuthToken: token, From: shop},
		{AccountID: account, From: shop},
		{AccountID: account, AuthToken: "to ken", From: shop},
		{AccountID: account, AuthToken: token},
		{AccountID: account, AuthToken: token, From: shop, MessagingService: "MG1"},
		{AccountID: account, AuthToken: token, From: shop, BaseURL: "localhost"},
	} {
		if _, err := sms.NewClient(f); err == nil {
			t.Errorf("%+v: no error", f)
		}
	}
}

func TestKindOf(t *testing.T) {
	for code, want := range map[int]sms.Kind{
		21610: sms.Unsubscribed, 21614: sms.Landline, 30006: sms.Landline, 21211: sms.Invalid, 30005: sms.Invalid,
		30003: sms.Unreachable, 30007: sms.Filtered, 20429: sms.Temporary, 20003: sms.Refused, 1: sms.Refused,
	} {
		if got := sms.KindOf(code); got != want || got.Permanent() != (want != sms.Temporary) {
			t.Errorf("%d: got %s", code, got)
		}
	}
}
