package reading

import (
	"bufio"
	"bytes"
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

var showAll = flag.Bool("show", false, "list every difference from the corpus")

// example is one line of testdata/corpus; its README says how to compare.
type example struct {
	ID     string     `json:"id"`
	Text   string     `json:"text"`
	Asked  string     `json:"asked"`
	Units  int        `json:"units"`
	Expect expected   `json:"expect"`
	Either []expected `json:"either"`
}

type expected struct {
	Facts []struct {
		Topic string          `json:"topic"`
		Unit  int             `json:"unit"`
		Value json.RawMessage `json:"value"`
	} `json:"facts"`
	Unclear []struct {
		Topic *string `json:"topic"`
		Why   string  `json:"why"`
	} `json:"unclear"`
	Requests []string `json:"requests"`
	Language string   `json:"language"`
}

// form is a reading as sorted lines, so that two can be compared as sets.
type form struct {
	facts, unclear, requests []string
}

func (f form) equal(g form) bool {
	return slices.Equal(f.facts, g.facts) && slices.Equal(f.unclear, g.unclear) && slices.Equal(f.requests, g.requests)
}

func (f form) String() string {
	return strings.Join(slices.Concat(f.facts, f.unclear, f.requests), " ")
}

func (e expected) form(t testing.TB) form {
	var f form
	for _, x := range e.Facts {
		f.facts = append(f.facts, factLine(t, x.Topic, x.Unit, x.Value))
	}
	for _, u := range e.Unclear {
		topic := "null"
		if u.Topic != nil {
			topic = *u.Topic
		}
		f.unclear = append(f.unclear, "?"+topic+":"+u.Why)
	}
	for _, q := range e.Requests {
		f.requests = append(f.requests, "!"+q)
	}
	return f.sorted()
}

func formOf(t testing.TB, r Reading) form {
	raw, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var e expected
	if err := json.Unmarshal(raw, &e); err != nil {
		t.Fatal(err)
	}
	return e.form(t)
}

func (f form) sorted() form {
	slices.Sort(f.facts)
	slices.Sort(f.unclear)
	slices.Sort(f.requests)
	f.facts, f.unclear, f.requests = slices.Compact(f.facts), slices.Compact(f.unclear), slices.Compact(f.requests)
	return f
}

// factLine writes a fact so that equal ones have equal lines: lengths to a millionth,
// lists sorted, names and towns in small letters.
func factLine(t testing.TB, topic string, unit int, raw json.RawMessage) string {
	var v any
	dec := json.NewDecoder(bytes.NewReader(raw))
	if err := dec.Decode(&v); err != nil {
		t.Fatalf("value of %s: %v", topic, err)
	}
	name := topic
	if unit > 0 && fitcheck.Topic(topic).OfUnit() {
		name = fmt.Sprintf("%s#%d", topic, unit)
	}
	return name + "=" + plain(v, topic == "problem" || topic == "impact_risk")
}

func plain(v any, sorted bool) string {
	switch v := v.(type) {
	case float64:
		return fmt.Sprint(math.Round(v*1e6) / 1e6)
	case string:
		return strings.ToLower(strings.NewReplacer("’", "'", "–", "-").Replace(v))
	case []any:
		var parts []string
		for _, x := range v {
			parts = append(parts, plain(x, false))
		}
		if sorted {
			slices.Sort(parts)
		}
		return "[" + strings.Join(parts, " ") + "]"
	case map[string]any:
		var parts []string
		for k, x := range v {
			parts = append(parts, k+":"+plain(x, false))
		}
		slices.Sort(parts)
		return "{" + strings.Join(parts, " ") + "}"
	}
	return fmt.Sprint(v)
}

func corpus(t testing.TB) map[string][]example { return examplesIn(t, "testdata/corpus*/*.jsonl") }

func examplesIn(t testing.TB, pattern string) map[string][]example {
	names, err := filepath.Glob(pattern)
	if err != nil || len(names) == 0 {
		t.Fatalf("no corpus: %v", err)
	}
	all := map[string][]example{}
	for _, name := range names {
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		sc := bufio.NewScanner(bytes.NewReader(raw))
		sc.Buffer(nil, 1<<20)
		for sc.Scan() {
			if len(bytes.TrimSpace(sc.Bytes())) == 0 {
				continue
			}
			var e example
			if err := json.Unmarshal(sc.Bytes(), &e); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			all[filepath.Base(name)] = append(all[filepath.Base(name)], e)
		}
	}
	return all
}

func (e example) input() Input {
	in := Input{Text: e.Text, Units: e.Units}
	if e.Asked != "" {
		in.Asked = []fitcheck.Topic{fitcheck.Topic(e.Asked)}
	}
	return in
}

// wrongFacts are facts that none of the accepted readings has.
func (e example) wrongFacts(t testing.TB, got form) []string {
	var wrong []string
	for _, f := range got.facts {
		ok := slices.Contains(e.Expect.form(t).facts, f)
		for _, o := range e.Either {
			ok = ok || slices.Contains(o.form(t).facts, f)
		}
		if !ok {
			wrong = append(wrong, f)
		}
	}
	return wrong
}

func (e example) accepted(t testing.TB, got form, language string) bool {
	for _, o := range append([]expected{e.Expect}, e.Either...) {
		if o.form(t).equal(got) && (o.Language == "" || o.Language == language) {
			return true
		}
	}
	return false
}

// TestCorpus reads the corpus as a careful person would: at least 98 in a hundred
// messages, and no wrong fact.
func TestCorpus(t *testing.T) { readAsPerson(t, corpus(t), 98) }

// TestThemes reads messages on one theme each, put in as many ways as their writers found, many more than
// the same number of everyday messages has: nine in ten, and no wrong fact.
func TestThemes(t *testing.T) { readAsPerson(t, examplesIn(t, "testdata/themes/*.jsonl"), 90) }

// readAsPerson wants so many in a hundred of the examples read and no wrong fact among them.
func readAsPerson(t *testing.T, files map[string][]example, percent int) {
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Compare(a, b) })
	right, total, wrong := 0, 0, 0
	for _, name := range names {
		good := 0
		for _, e := range files[name] {
			got := Read(e.input())
			f := formOf(t, got)
			bad := e.wrongFacts(t, f)
			if len(bad) > 0 {
				wrong++
				t.Errorf("%s %q [%s]: wrong fact %v, want %v", e.ID, e.Text, e.Asked, bad, e.Expect.form(t))
			}
			if e.accepted(t, f, got.Language) {
				good++
			} else if len(bad) == 0 && *showAll {
				t.Logf("%s %q [%s]: got %v (%s), want %v (%s)", e.ID, e.Text, e.Asked, f, got.Language, e.Expect.form(t), e.Expect.Language)
			}
		}
		right, total = right+good, total+len(files[name])
		t.Logf("%-36s %4d of %4d", name, good, len(files[name]))
	}
	t.Logf("%d of %d messages read (%.1f %%), %d with a wrong fact", right, total, 100*float64(right)/float64(total), wrong)
	if right*100 < total*percent {
		t.Errorf("read %d of %d messages as a careful person would, want %d in a hundred", right, total, percent)
	}
}
