package db_test

import (
	"context"
	"errors"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// staffed is a database with a talk and a person of staff in it.
func staffed(t testing.TB) *pgxpool.Pool {
	t.Helper()
	pool := dbtest.New(t)
	if _, err := pool.Exec(t.Context(), seed); err != nil {
		t.Fatal(err)
	}
	if _, err := db.AddStaff(t.Context(), pool, db.Staff{Login: "dana", Name: "Dana", Role: db.RoleStaff, PasswordHash: "$argon2id$x",
		Phone: "+12185550190"}); err != nil {
		t.Fatal(err)
	}
	return pool
}

func TestAccounts(t *testing.T) {
	pool := staffed(t)
	ctx := t.Context()
	for _, c := range []struct {
		why string
		s   db.Staff
	}{
		{"the same login", db.Staff{Login: "dana", Name: "Other", Role: db.RoleStaff, PasswordHash: "$argon2id$x"}},
		{"the same phone", db.Staff{Login: "lee", Name: "Lee", Role: db.RoleStaff, PasswordHash: "$argon2id$x", Phone: "+12185550190"}},
	} {
		if _, err := db.AddStaff(ctx, pool, c.s); !errors.Is(err, db.ErrTaken) {
			t.Errorf("%s: %v", c.why, err)
		}
	}
	s, err := db.StaffByPhone(ctx, pool, "+12185550190")
	if err != nil || s.Login != "dana" {
		t.Fatalf("%+v, %v", s, err)
	}
	now := time.Now().Truncate(time.Microsecond)
	if err := db.SetLeft(ctx, pool, s.ID, &now, now); err != nil {
		t.Fatal(err)
	}
	if _, err := db.StaffByPhone(ctx, pool, "+12185550190"); !errors.Is(err, db.ErrNotFound) {
		t.Errorf("a person who left is still known by phone: %v", err)
	}
	if err := db.SetPassword(ctx, pool, 99, "$argon2id$y", false, now); !errors.Is(err, db.ErrNotFound) {
		t.Errorf("nobody got a password: %v", err)
	}
}

// TestFind: by what staff have at hand when the phone rings.
func TestFind(t *testing.T) {
	pool := staffed(t)
	ctx := t.Context()
	exec(t, pool, `UPDATE leads SET name = 'Ana O''Brien-Muñoz', phone = '+12185550123', email = 'Ana.M@example.com',
		city = 'Saint Paul', region = 'MN', zip = '55102',
		units = '[{"curb_outside":{"width_in":25.5,"length_in":49.5},"check":{"order":{"width_in":1}}},{"bulge_base":{"diameter_in":30}}]'`)
	for _, c := range []struct {
		ref           string
		words, pieces []string
		found         bool
	}{
		{ref: "r7kq4", found: true},
		{ref: "R7KQ6"},
		{words: []string{"ana"}, found: true},
		{words: []string{"muñ"}, found: true},
		{words: []string{"brien"}, found: true},
		{words: []string{"saint", "ana"}, found: true},
		{words: []string{"saint", "bob"}},
		{words: []string{"55102"}, found: true},
		{words: []string{"0123"}, found: true},
		{words: []string{"5550123"}, found: true},
		{words: []string{"2185550123"}, found: true},
		{words: []string{"0124"}},
		{pieces: []string{"ana.m@example.com"}, found: true},
		{pieces: []string{"25.5x49.5"}, found: true},
		{pieces: []string{"30"}, found: true},
		{pieces: []string{"25x49"}},
		{words: []string{`'`, `\`, `& !`}},
	} {
		lines, err := db.Find(ctx, pool, c.ref, c.words, c.pieces, 10)
		if err != nil || (len(lines) == 1) != c.found {
			t.Errorf("%q %q %q: %d found, %v", c.ref, c.words, c.pieces, len(lines), err)
		}
	}
}

func exec(t testing.TB, pool *pgxpool.Pool, sql string, args ...any) {
	t.Helper()
	if _, err := pool.Exec(context.Background(), sql, args...); err != nil {
		t.Fatal(err)
	}
}

func TestViewLead(t *testing.T) {
	pool := staffed(t)
	ctx := t.Context()
	exec(t, pool, `INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, at)
		VALUES (1, 'in', 'customer', 'sms', '+12185550123', 'SM9', 'not yet handled', now())`)
	if err := db.TakeInHand(ctx, pool, 1, 1, time.Now()); err != nil {
		t.Fatal(err)
	}
	if _, err := db.Note(ctx, pool, 1, 1, db.DeedNoted, db.HistoryDetail{Text: "call after 5"}, time.Now()); err != nil {
		t.Fatal(err)
	}
	v, err := db.ViewLead(ctx, pool, "r7kq4")
	if err != nil {
		t.Fatal(err)
	}
	if len(v.Messages) != 3 || v.Messages[2].N != 3 || v.Messages[1].Send != db.SendQueued {
		t.Errorf("messages %+v", v.Messages)
	}
	if v.Hands.Name != "Dana" || len(v.History) != 1 || v.History[0].Detail.Text != "call after 5" || len(v.Photos) != 1 || len(v.Reach) != 1 {
		t.Errorf("%+v", v)
	}
	if _, err := db.ViewLead(ctx, pool, "CCCCC"); !errors.Is(err, db.ErrNotFound) {
		t.Errorf("a lead that is none: %v", err)
	}
}

func TestFailuresToLogIn(t *testing.T) {
	pool := staffed(t)
	ctx, now := t.Context(), time.Now().Truncate(time.Microsecond)
	note := func(login, address string, ok bool, ago time.Duration) {
		t.Helper()
		if err := db.NoteLogin(ctx, pool, login, address, ok, now.Add(-ago)); err != nil {
			t.Fatal(err)
		}
	}
	note("dana", "192.0.2.1", false, 10*time.Minute)
	note("dana", "192.0.2.1", true, 9*time.Minute)
	note("dana", "192.0.2.1", false, 8*time.Minute)
	note("dana", "192.0.2.2", false, 7*time.Minute)
	note("lee", "192.0.2.2", false, 6*time.Minute)
	note("dana", "192.0.2.2", false, time.Hour)
	for _, c := range []struct {
		login, address       string
		pair, account, place int
		known                bool
	}{
		{"dana", "192.0.2.1", 1, 1, 2, true},
		{"dana", "192.0.2.2", 1, 1, 2, false},
		{"lee", "192.0.2.2", 1, 1, 2, false},
		{"lee", "192.0.2.3", 0, 1, 0, false},
	} {
		f, err := db.FailuresOf(ctx, pool, c.login, c.address, now.Add(-15*time.Minute), now)
		if err != nil || f.Pair != c.pair || f.Login != c.account || f.Address != c.place || f.Known != c.known {
			t.Errorf("%s from %s: %+v, %v", c.login, c.address, f, err)
		}
	}
}
