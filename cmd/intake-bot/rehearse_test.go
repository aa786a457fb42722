package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/rehearsal"
)

func rehearsed(t *testing.T, c rehearseCommand) (out, progress string, err error) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	err = c.Run(t.Context(), streams{out: &stdout, err: &stderr})
	return stdout.String(), stderr.String(), err
}

func TestRehearse(t *testing.T) {
	c := rehearseCommand{Customers: 40, Seed: 4, JSON: true}
	first, progress, err := rehearsed(t, c)
	again, _, _ := rehearsed(t, c)
	if first != again {
		t.Error("the same seed gave different reports")
	}
	var r rehearsal.Report
	if bad := json.Unmarshal([]byte(first), &r); bad != nil || r.Customers != 40 || r.Seed != 4 {
		t.Fatalf("%v, %d customers, seed %d", bad, r.Customers, r.Seed)
	}
	if failed := errors.Is(err, errSilent); failed != (len(r.Wrong) > 0) {
		t.Errorf("%d talks with a wrong fact, but %v", len(r.Wrong), err)
	}
	if !strings.Contains(progress, "40 of 40") {
		t.Errorf("progress: %q", progress)
	}
}

func TestRehearseShowsTalks(t *testing.T) {
	out, _, _ := rehearsed(t, rehearseCommand{Customers: 5, Seed: 4, Talks: 2})
	if n := strings.Count(out, "--- customer "); n < 2 || !strings.Contains(out, "5 customers, seed 4") {
		t.Errorf("%d talks shown in\n%s", n, out)
	}
	out, _, _ = rehearsed(t, rehearseCommand{Customers: 5, Seed: 4, Customer: 5})
	if !strings.HasPrefix(out, "--- customer 5:") || strings.Contains(out, "customers, seed") {
		t.Errorf("one talk asked for, got\n%s", out)
	}
}

func TestRehearseRefuses(t *testing.T) {
	for _, c := range []rehearseCommand{{Customers: 0}, {Customers: 5, Customer: 6}, {Customers: 5, Customer: -1}} {
		if _, _, err := rehearsed(t, c); err == nil || errors.Is(err, errSilent) {
			t.Errorf("%d customers, customer %d: %v", c.Customers, c.Customer, err)
		}
	}
}

// A report with a wrong fact ends the command with status 1.
func TestRehearseFails(t *testing.T) {
	if err := verdict(&rehearsal.Report{Wrong: []rehearsal.Talk{{Number: 1}}}); !errors.Is(err, errSilent) {
		t.Errorf("a wrong fact ends with %v", err)
	}
	if err := verdict(&rehearsal.Report{}); err != nil {
		t.Error(err)
	}
}

// Over the database the same customers get as far as in memory, but for those whom only
// time brings back.
func TestRehearseOverADatabase(t *testing.T) {
	address := dbtest.URL(t)
	c := rehearseCommand{Customers: 60, Seed: 4, JSON: true}
	inMemory, _, _ := rehearsed(t, c)
	c.Database = address
	overDatabase, _, err := rehearsed(t, c)
	if err != nil && !errors.Is(err, errSilent) {
		t.Fatal(err)
	}
	var memory, database rehearsal.Report
	if err := errors.Join(json.Unmarshal([]byte(inMemory), &memory), json.Unmarshal([]byte(overDatabase), &database)); err != nil {
		t.Fatal(err)
	}
	if database.Customers != 60 || database.Ready < memory.Ready*9/10 || database.Ready > memory.Ready*11/10 {
		t.Errorf("%d of %d leads are ready over the database, %d of %d in memory", database.Ready, database.Customers, memory.Ready, memory.Customers)
	}
	if _, _, err := rehearsed(t, c); err == nil || !strings.Contains(err.Error(), "empty") {
		t.Errorf("a database with talks in it is taken: %v", err)
	}
}
