package email

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/emersion/go-message"
)

var update = flag.Bool("update", false, "ask the npm package again, by npm and node, and write testdata/replyparser.json")

const (
	replyTable   = "testdata/replyparser.json"
	replyPackage = "email-reply-parser@2.3.7"
)

// replyCase is what the npm package takes for new in one mail of testdata/mails, and,
// where this package reads it otherwise, why. Of is a hash of the text that it was given:
// the table is old where the mail says something else by now.
type replyCase struct {
	Mail   string `json:"mail"`
	Of     string `json:"of"`
	Theirs string `json:"theirs"`
	Why    string `json:"why,omitempty"`
}

// TestAgainstReplyParser: both read alike, or the difference is explained.
func TestAgainstReplyParser(t *testing.T) {
	names, texts := mailTexts(t)
	table := readReplyTable(t)
	if *update {
		table = updateReplyTable(t, table, names, texts)
	}
	if len(table) != len(names) {
		t.Fatalf("the table has %d mails, want %d", len(table), len(names))
	}
	alike := 0
	for i, c := range table {
		if c.Of != hashOf(texts[i]) {
			t.Errorf("%s: the table is of another text; run with -update", c.Mail)
		}
		ours := flat(newText(texts[i]))
		same := flat(c.Theirs) == ours
		if same {
			alike++
		}
		if c.Mail != names[i] || same != (c.Why == "") {
			t.Errorf("%s: alike %v, but why is %q\nours:   %q\ntheirs: %q", names[i], same, c.Why, ours, flat(c.Theirs))
		}
	}
	t.Logf("%d of %d alike", alike, len(table))
}

// mailTexts are the texts of the mails that people wrote, whole, with their names.
func mailTexts(t *testing.T) (names, texts []string) {
	t.Helper()
	files, err := filepath.Glob("testdata/mails/*.eml")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if m, err := Parse(bytes.NewReader(raw), Limits{}); err != nil || m.Auto {
			continue
		}
		e, err := message.Read(bytes.NewReader(raw))
		if e == nil {
			t.Fatal(err)
		}
		w := &walker{limits: Limits{}.orDefault()}
		w.walk(e, 1, place{})
		if text := strings.TrimSpace(unmark(w.text())); text != "" {
			names = append(names, strings.TrimSuffix(filepath.Base(file), ".eml"))
			texts = append(texts, text+"\n")
		}
	}
	return names, texts
}

func newText(text string) string {
	var all []string
	for _, b := range strip(text, "Dana Fields").blocks {
		all = append(all, b.Text)
	}
	return strings.Join(all, "\n")
}

func hashOf(text string) string {
	h := sha256.Sum256([]byte(text))
	return hex.EncodeToString(h[:8])
}

func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

func readReplyTable(t *testing.T) []replyCase {
	t.Helper()
	b, err := os.ReadFile(replyTable)
	if err != nil && !*update {
		t.Fatal(err)
	}
	var table []replyCase
	if len(b) > 0 {
		if err := json.Unmarshal(b, &table); err != nil {
			t.Fatal(err)
		}
	}
	return table
}

// updateReplyTable keeps the reasons that were written by hand.
func updateReplyTable(t *testing.T, old []replyCase, names, texts []string) []replyCase {
	t.Helper()
	theirs := askReplyParser(t, texts)
	table := make([]replyCase, len(names))
	for i, name := range names {
		table[i] = replyCase{Mail: name, Of: hashOf(texts[i]), Theirs: theirs[i]}
		if j := slices.IndexFunc(old, func(c replyCase) bool { return c.Mail == name }); j >= 0 {
			table[i].Why = old[j].Why
		}
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(table); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(replyTable, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return table
}

func askReplyParser(t *testing.T, texts []string) []string {
	t.Helper()
	dir := t.TempDir()
	install := exec.Command("npm", "install", "--ignore-scripts", "--no-audit", "--no-fund", "--omit=optional", "--prefix", dir, replyPackage)
	if out, err := install.CombinedOutput(); err != nil {
		t.Fatalf("install %s: %v\n%s", replyPackage, err, out)
	}
	script, err := filepath.Abs("testdata/replyparser.mjs")
	if err != nil {
		t.Fatal(err)
	}
	var in bytes.Buffer
	enc := json.NewEncoder(&in)
	for _, text := range texts {
		if err := enc.Encode(text); err != nil {
			t.Fatal(err)
		}
	}
	node := exec.Command("node", script, dir)
	node.Stdin, node.Stderr = &in, os.Stderr
	out, err := node.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs []string
	for line := range strings.SplitSeq(strings.TrimSpace(string(out)), "\n") {
		var s string
		if err := json.Unmarshal([]byte(line), &s); err != nil {
			t.Fatal(err)
		}
		theirs = append(theirs, s)
	}
	if len(theirs) != len(texts) {
		t.Fatalf("%d answers for %d texts", len(theirs), len(texts))
	}
	return theirs
}
