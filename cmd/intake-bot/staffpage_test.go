package main

import (
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/staff"
)

// TestTheDemosPage: forty invented leads, in every state that there is, and a password
// that lets one in to choose another.
func TestTheDemosPage(t *testing.T) {
	file, err := (shopFlag{}).load()
	if err != nil {
		t.Fatal(err)
	}
	s, err := talking(file)
	if err != nil {
		t.Fatal(err)
	}
	pool := dbtest.New(t)
	once, err := inventLeads(t.Context(), pool, s)
	if err != nil {
		t.Fatal(err)
	}
	var leads, sending int
	var statuses []string
	if err := pool.QueryRow(t.Context(), `SELECT count(*), array_agg(DISTINCT status), (SELECT count(*) FROM sends WHERE state <> 'sent') FROM leads`).
		Scan(&leads, &statuses, &sending); err != nil {
		t.Fatal(err)
	}
	for _, status := range []conversation.Status{conversation.StatusOpen, conversation.StatusReady, conversation.StatusNeedsPerson, conversation.StatusPickedUp,
		conversation.StatusQuoted, conversation.StatusOrdered, conversation.StatusDeclined, conversation.StatusClosed} {
		if !slices.Contains(statuses, string(status)) {
			t.Errorf("none is %s: %v", status, statuses)
		}
	}
	if leads != invented || sending != 0 {
		t.Errorf("%d leads, %d messages wait to be sent to people who don't exist", leads, sending)
	}
	page, err := staff.New(staff.Options{Pool: pool, Shop: func() *conversation.Shop { return s },
		Send: func(context.Context, pgx.Tx, int64) error { return nil }})
	if err != nil {
		t.Fatal(err)
	}
	defer page.Close()
	server := httptest.NewServer(page)
	defer server.Close()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	post := func(path string, fields url.Values) string {
		t.Helper()
		resp, err := (&http.Client{Jar: jar}).PostForm(server.URL+path, fields)
		if err != nil {
			t.Fatal(err)
		}
		defer resp.Body.Close()
		body, err := io.ReadAll(resp.Body)
		if err != nil {
			t.Fatal(err)
		}
		return string(body)
	}
	if body := post("/staff/login", url.Values{"login": {demoLogin}, "password": {once}}); !strings.Contains(body, "Choose your own") {
		t.Errorf("the password %q led to\n%s", once, body)
	}
	const own = "three wooden ladders"
	if body := post("/staff/password", url.Values{"old": {once}, "new": {own}, "again": {own}}); !strings.Contains(body, "Who waits") || !strings.Contains(body, "Ana") {
		t.Errorf("after a new password:\n%s", body)
	}
}
