package deploy_test

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/demo"
	"example.com/intake-bot/internal/shop"
)

// A dump of a database with leads, put into an empty one, has every row of every table
// and gives the same lead records.
func TestDumpRestoresEveryLead(t *testing.T) {
	from, to := dbtest.URL(t), dbtest.EmptyURL(t)
	source := open(t, from)
	fill(t, source, 15)
	folder := t.TempDir()
	if out, err := script(t, "backup.sh", from, folder); err != nil {
		t.Fatalf("backup: %v\n%s", err, out)
	}
	dump := onlyDump(t, folder)
	out, err := script(t, "restore.sh", to, dump)
	if err != nil || !strings.Contains(out, "15 leads") {
		t.Fatalf("restore: %v\n%s", err, out)
	}
	target := open(t, to)
	if want, got := records(t, source), records(t, target); len(want) != 15 || !slices.Equal(want, got) {
		t.Errorf("%d records before, %d after, and they differ", len(want), len(got))
	}
	if want, got := rowCounts(t, source), rowCounts(t, target); len(want) < 15 || !slices.Equal(want, got) {
		t.Errorf("rows before %v\nafter %v", want, got)
	}
	if pending, err := db.Pending(t.Context(), target); pending || err != nil {
		t.Errorf("the restored database is not current: %t, %v", pending, err)
	}
	if _, err := db.AddStaff(t.Context(), target, db.Staff{Login: "sky", Name: "Sky", Role: db.RoleStaff, PasswordHash: "$argon2id$none"}); err != nil {
		t.Errorf("the restored database takes nothing new: %v", err)
	}

	// A database that holds something is left alone.
	before := rowCounts(t, source)
	if out, err := script(t, "restore.sh", from, dump); err == nil || !strings.Contains(out, "not empty") {
		t.Errorf("restored over a database in use: %v\n%s", err, out)
	}
	if after := rowCounts(t, source); !slices.Equal(before, after) {
		t.Errorf("it was changed:\n%v\n%v", before, after)
	}
}

// Half a dump is told from a whole one, and leaves nothing behind.
func TestHalfADumpIsRefused(t *testing.T) {
	from, to := dbtest.URL(t), dbtest.EmptyURL(t)
	fill(t, open(t, from), 3)
	folder := t.TempDir()
	if out, err := script(t, "backup.sh", from, folder); err != nil {
		t.Fatalf("backup: %v\n%s", err, out)
	}
	whole, err := os.ReadFile(onlyDump(t, folder))
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range []int{0, 100, len(whole) / 2, len(whole) * 9 / 10} {
		half := filepath.Join(t.TempDir(), "half.dump")
		if err := os.WriteFile(half, whole[:part], 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := script(t, "restore.sh", to, half); err == nil || !strings.Contains(out, "nothing was changed") {
			t.Errorf("%d of %d bytes: %v\n%s", part, len(whole), err, out)
		}
		if left := rowCounts(t, open(t, to)); len(left) != 0 {
			t.Errorf("%d of %d bytes left %v", part, len(whole), left)
		}
	}
}

// Old dumps go only when a new one is there.
func TestOldDumpsGoAfterANewOne(t *testing.T) {
	address, folder := dbtest.URL(t), t.TempDir()
	for name, days := range map[string]int{"intake-2026-01-01T032000Z.dump": 40, "intake-2026-01-30T032000Z.dump": 10, "other.dump": 90} {
		path := filepath.Join(folder, name)
		when := time.Now().AddDate(0, 0, -days)
		if err := os.WriteFile(path, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(path, when, when); err != nil {
			t.Fatal(err)
		}
	}
	if out, err := script(t, "backup.sh", address+"&dbname=nowhere", folder); err == nil {
		t.Errorf("a database that is not there was backed up:\n%s", out)
	}
	if left := names(t, folder); len(left) != 3 {
		t.Errorf("after a dump that failed there are %v", left)
	}
	if out, err := script(t, "backup.sh", address, folder); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	left := names(t, folder)
	if len(left) != 3 || slices.Contains(left, "intake-2026-01-01T032000Z.dump") {
		t.Errorf("there are %v", left)
	}
	for _, name := range left {
		if info, err := os.Stat(filepath.Join(folder, name)); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v, %v", name, info.Mode(), err)
		}
	}
}

// Postgres's programs get an address that they understand, and no password in it.
func TestAddressForPostgresPrograms(t *testing.T) {
	for address, want := range map[string]string{
		"postgres://intake:secret@db/intake":                        "postgres://intake@db/intake secret",
		"postgresql://intake:p%40s%2Fs%25@db:5433/intake":           "postgresql://intake@db:5433/intake p@s/s%",
		"postgres://intake@db/intake":                               "postgres://intake@db/intake ",
		"postgres:///intake?host=/run/postgresql&pool_max_conns=20": "postgres:///intake?host=/run/postgresql ",
		"postgres://u:p@a,b/x?pool_max_conns=9&sslmode=require":     "postgres://u@a,b/x?sslmode=require p",
		"postgres:///x?pool_max_conns=9":                            "postgres:///x ",
		"host=/tmp dbname=x":                                        "host=/tmp dbname=x ",
	} {
		cmd := exec.CommandContext(t.Context(), "sh", "-c", `. ./database.sh; find_database; printf '%s %s' "$database" "${PGPASSWORD:-}"`)
		cmd.Env = []string{"PATH=" + os.Getenv("PATH"), "DATABASE_URL=" + address}
		if out, err := cmd.CombinedOutput(); err != nil || string(out) != want {
			t.Errorf("%s: %q, %v, want %q", address, out, err, want)
		}
	}
}

// script runs one of the scripts with Postgres's own programs in PATH.
func script(t *testing.T, name, address, argument string) (output string, err error) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "./"+name, argument)
	path := os.Getenv("PATH")
	if dir := os.Getenv("PGBIN"); dir != "" {
		path = dir + ":" + path
	}
	cmd.Env = append(os.Environ(), "PATH="+path, "DATABASE_URL="+address)
	out, err := cmd.CombinedOutput()
	return string(out), err
}

func open(t *testing.T, address string) *pgxpool.Pool {
	t.Helper()
	pool, err := db.Open(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	return pool
}

// fill puts n invented leads into a database.
func fill(t *testing.T, pool *pgxpool.Pool, n int) {
	t.Helper()
	file, err := shop.Parse([]byte(deploy.ExampleShop), wording.CheckOverride)
	if err != nil {
		t.Fatal(err)
	}
	talking, err := file.Conversation()
	if err != nil {
		t.Fatal(err)
	}
	now := time.Now().UTC()
	who, err := db.AddStaff(t.Context(), pool, db.Staff{Login: fmt.Sprintf("robin%d", n), Name: "Robin", Role: db.RoleOwner, PasswordHash: "$argon2id$none"})
	if err != nil {
		t.Fatal(err)
	}
	filling := demo.Filling{Pool: pool, Shop: talking, Now: now, Staff: who}
	if _, err := filling.Fill(t.Context(), n); err != nil {
		t.Fatal(err)
	}
}

func records(t *testing.T, pool *pgxpool.Pool) (out []string) {
	t.Helper()
	if err := db.EachRecord(t.Context(), pool, func(r json.RawMessage) error { out = append(out, string(r)); return nil }); err != nil {
		t.Fatal(err)
	}
	return out
}

// rowCounts has a line for each table.
func rowCounts(t *testing.T, pool *pgxpool.Pool) (out []string) {
	t.Helper()
	rows, err := pool.Query(t.Context(), `SELECT tablename::text FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`)
	if err != nil {
		t.Fatal(err)
	}
	tables, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range tables {
		var n int
		if err := pool.QueryRow(t.Context(), "SELECT count(*) FROM "+pgx.Identifier{name}.Sanitize()).Scan(&n); err != nil {
			t.Fatal(err)
		}
		out = append(out, fmt.Sprintf("%s %d", name, n))
	}
	return out
}

func onlyDump(t *testing.T, folder string) string {
	t.Helper()
	found := names(t, folder)
	if len(found) != 1 {
		t.Fatalf("dumps: %v", found)
	}
	return filepath.Join(folder, found[0])
}

func names(t *testing.T, folder string) (out []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

// Rolling back: a program starts on a database that a newer one has brought further, and
// not on one that lacks something.
func TestOnlyAnOlderDatabaseIsRefused(t *testing.T) {
	pool := open(t, dbtest.URL(t))
	for _, c := range []struct {
		change  string
		pending bool
	}{
		{`INSERT INTO goose_db_version (version_id, is_applied) VALUES (99999, true)`, false},
		{`DELETE FROM goose_db_version WHERE version_id >= (SELECT max(version_id) FROM goose_db_version WHERE version_id < 99999)`, true},
	} {
		if _, err := pool.Exec(t.Context(), c.change); err != nil {
			t.Fatal(err)
		}
		if pending, err := db.Pending(t.Context(), pool); err != nil || pending != c.pending {
			t.Errorf("after %s: pending %t, %v", c.change, pending, err)
		}
	}
}
