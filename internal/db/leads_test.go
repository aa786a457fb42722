package db_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// addLead makes a lead with a status, opened and waiting since so many hours.
func addLead(t *testing.T, pool *pgxpool.Pool, ref, status string, urgent bool, opened, waiting int) {
	t.Helper()
	const sql = `
		WITH c AS (INSERT INTO conversations (ref, channel, phone, opened_at)
			VALUES ($1, 'sms', '+12185550123', timestamptz '2026-03-02T12:00:00Z' - make_interval(hours => $4)) RETURNING id)
		INSERT INTO leads (conversation_id, status, why_staff, urgent, ready_at, waiting_since)
		SELECT id, $2, '{x}', $3, now(), CASE WHEN $2 IN ('ready', 'needs_person')
			THEN timestamptz '2026-03-02T12:00:00Z' - make_interval(hours => $5) END FROM c`
	if _, err := pool.Exec(t.Context(), sql, ref, status, urgent, opened, waiting); err != nil {
		t.Fatal(err)
	}
}

func TestListLeads(t *testing.T) {
	pool := dbtest.New(t)
	addLead(t, pool, "CCCC3", "open", false, 1, 0)
	addLead(t, pool, "CCCC4", "ready", false, 5, 2)
	addLead(t, pool, "CCCC6", "needs_person", false, 9, 3)
	addLead(t, pool, "CCCC7", "ready", true, 4, 1)
	addLead(t, pool, "CCCC9", "ordered", false, 50, 0)
	noon := time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		what   string
		filter db.LeadFilter
		want   string
	}{
		{"all: urgent, then longest waiting, then newest", db.LeadFilter{}, "CCCC7 CCCC6 CCCC4 CCCC3 CCCC9"},
		{"the first two", db.LeadFilter{Limit: 2}, "CCCC7 CCCC6"},
		{"those that are ready", db.LeadFilter{Status: []conversation.Status{"ready"}}, "CCCC7 CCCC4"},
		{"of the last six hours", db.LeadFilter{Since: noon.Add(-6 * time.Hour)}, "CCCC7 CCCC4 CCCC3"},
		{"none", db.LeadFilter{Status: []conversation.Status{"quoted"}}, ""},
	} {
		lines, err := db.ListLeads(t.Context(), pool, c.filter)
		if err != nil {
			t.Fatal(err)
		}
		var refs []string
		for _, l := range lines {
			refs = append(refs, l.Ref)
		}
		if got := strings.Join(refs, " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

func TestLeadRecordByRef(t *testing.T) {
	pool := dbtest.New(t)
	addLead(t, pool, "CCCC4", "ready", false, 5, 2)
	addLead(t, pool, "CCCC3", "open", false, 9, 0)
	for _, ref := range []string{"CCCC4", " cccc4 "} {
		record, err := db.LeadRecord(t.Context(), pool, ref)
		if err != nil || !strings.HasPrefix(string(record), `{"version":1,"ref":"CCCC4","status":"ready","qualified":false,"why_staff":["x"],`) {
			t.Errorf("record of %q: %s, %v, want it in the contract's order", ref, record, err)
		}
	}
	if _, err := db.LeadRecord(t.Context(), pool, "XXXXX"); !errors.Is(err, db.ErrNotFound) {
		t.Errorf("error %v for a ref that is none, want ErrNotFound", err)
	}
	var refs []string
	err := db.EachRecord(t.Context(), pool, func(record json.RawMessage) error {
		var r struct{ Ref string }
		refs = append(refs, r.Ref)
		if err := json.Unmarshal(record, &r); err != nil {
			return err
		}
		refs[len(refs)-1] = r.Ref
		return nil
	})
	if err != nil || !slices.Equal(refs, []string{"CCCC3", "CCCC4"}) {
		t.Errorf("each record: %v, %v, want the oldest first", refs, err)
	}
	stop := fmt.Errorf("enough")
	if err := db.EachRecord(t.Context(), pool, func(json.RawMessage) error { return stop }); !errors.Is(err, stop) {
		t.Errorf("error %v, want that of the caller", err)
	}
}

func TestRecordTimesAreWrittenAsGoWritesThem(t *testing.T) {
	pool := dbtest.New(t)
	for _, at := range []time.Time{
		time.Date(2026, 3, 2, 21, 15, 0, 0, time.UTC),
		time.Date(2026, 3, 2, 21, 15, 0, 500_000_000, time.UTC),
		time.Date(2026, 3, 2, 21, 15, 9, 1000, time.UTC),
		time.Date(1999, 12, 31, 23, 59, 59, 123_400_000, time.UTC),
		time.Date(2026, 3, 2, 21, 15, 0, 0, time.FixedZone("", -6*3600)),
	} {
		var got string
		if err := pool.QueryRow(t.Context(), `SELECT iso_utc($1)`, at).Scan(&got); err != nil {
			t.Fatal(err)
		}
		if want := at.UTC().Format(time.RFC3339Nano); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}
