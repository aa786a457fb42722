package db

import (
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// While the program is upgraded, processes of the version before go on working on the
// schema of the new one. So a migration only adds what they need not know of. What does
// more says above its statement why it is harmless to them:
//
//	-- One version back: …
const excuse = "-- One version back:"

// adds are statements that the version before can't be hurt by. A unique index is none, nor
// is a constraint: it may refuse what that version writes.
var adds = regexp.MustCompile(`(?is)^(create table |create index |create view |create (or replace )?function |comment on |insert into |` +
	`alter table \w+\s+add column .*)`)

// mustFill is a new column that the version before would have to give a value.
var mustFill = regexp.MustCompile(`(?i)\bnot null\b`)

// notOnlyAdding are the statements of a migration that do more than add.
func notOnlyAdding(sql string) (out []string) {
	up, _, _ := strings.Cut(sql, "-- +goose Down")
	made := regexp.MustCompile(`(?i)create table (\w+)`).FindAllStringSubmatch(up, -1)
	for _, s := range statements(up) {
		words := regexp.MustCompile(`(?m)--.*$`).ReplaceAllString(s, "")
		words = strings.Join(strings.Fields(words), " ")
		// On a table that this very migration makes anything may be done.
		ours := slices.ContainsFunc(made, func(m []string) bool {
			return regexp.MustCompile(`(?i)^(create unique index \w+ on|create trigger .* on|alter table) ` + m[1] + `\b`).MatchString(words)
		})
		filled := !mustFill.MatchString(words) || strings.HasPrefix(strings.ToLower(words), "create ") || regexp.MustCompile(`(?i)\bdefault\b|\bgenerated always as\b`).MatchString(words)
		if words == "" || ours || adds.MatchString(words) && filled || strings.Contains(s, excuse) {
			continue
		}
		out = append(out, words)
	}
	return out
}

// statements are the parts of a script, each with the comments above it. A body in dollar
// quotes is one.
func statements(sql string) (out []string) {
	quoted, from := false, 0
	for i := 0; i < len(sql); i++ {
		switch {
		case strings.HasPrefix(sql[i:], "$$"):
			quoted = !quoted
			i++
		case strings.HasPrefix(sql[i:], "--") && !quoted:
			if end := strings.IndexByte(sql[i:], '\n'); end >= 0 {
				i += end
			}
		case sql[i] == ';' && !quoted:
			out = append(out, sql[from:i])
			from = i + 1
		}
	}
	return append(out, sql[from:])
}

func TestMigrationsAreCompatibleOneVersionBack(t *testing.T) {
	// The schema with which the program first went out is no upgrade of anything.
	const first = "00041"
	paths, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil || len(paths) < 10 {
		t.Fatalf("%d migrations, %v", len(paths), err)
	}
	for _, path := range paths {
		if name := strings.TrimPrefix(path, "migrations/"); name[:5] <= first {
			continue
		}
		sql, err := fs.ReadFile(migrations, path)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range notOnlyAdding(string(sql)) {
			t.Errorf("%s does more than add: say above it why the version before is not hurt (%s …):\n%s", path, excuse, s)
		}
	}
}

func TestWhatOnlyAdds(t *testing.T) {
	for sql, want := range map[string]int{
		"CREATE TABLE a (id bigint PRIMARY KEY, b text NOT NULL); CREATE UNIQUE INDEX a_b ON a (b);":                    0,
		"ALTER TABLE leads ADD COLUMN c text CHECK (c <> '');":                                                          0,
		"ALTER TABLE leads ADD COLUMN c boolean NOT NULL DEFAULT false;":                                                0,
		"ALTER TABLE leads ADD COLUMN c boolean NOT NULL;":                                                              1,
		"ALTER TABLE leads DROP COLUMN name;":                                                                           1,
		"ALTER TABLE leads RENAME COLUMN name TO title;":                                                                1,
		"CREATE UNIQUE INDEX leads_name ON leads (name);":                                                               1,
		"DROP VIEW lead_record; CREATE VIEW lead_record AS SELECT 1;":                                                   1,
		"-- One version back: it never wrote others.\nALTER TABLE leads ADD CONSTRAINT x CHECK (a > 0);":                0,
		"CREATE FUNCTION f() RETURNS int LANGUAGE plpgsql AS $$ BEGIN DROP TABLE x; RETURN 1; END $$;\nDROP TABLE y;":   1,
		"-- a comment; with a semicolon\nCREATE INDEX leads_zip ON leads (zip);\n-- +goose Down\nDROP INDEX leads_zip;": 0,
	} {
		if got := notOnlyAdding(sql); len(got) != want {
			t.Errorf("%s: %v, want %d", sql, fmt.Sprintf("%q", got), want)
		}
	}
}
