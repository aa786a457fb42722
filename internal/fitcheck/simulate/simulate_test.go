package simulate

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	update = flag.Bool("update", false, "renew docs/simulation.md")
	misses = flag.String("misses", "", "write the cases that went wrong to this file, some of each kind")
	trials = flag.Int("trials", 400, "trials of each mistake, and as many right ones; the docs keep the default")
	seed   = flag.Uint64("seed", 1, "seed of the run; the docs keep the default")
)

const kept = "../../../docs/simulation.md"

func theCheck() Check {
	rules := fitcheck.DefaultRules()
	return func(job *fitcheck.Job) fitcheck.UnitResult { return fitcheck.Check(*job, rules).Units[0] }
}

// The goals are those of the project; the table in the docs is the one of this run.
func TestSimulation(t *testing.T) {
	notes := &missNotes{seen: map[string]int{}}
	table, err := Run(*seed, *trials, theCheck(), notes.take)
	if err != nil {
		t.Fatal(err)
	}
	notes.save(t)
	got := table.Markdown()
	if testing.Verbose() {
		t.Log("\n" + got)
	}
	if s := table.FalseAlarmShare(); s > 0.01 {
		t.Errorf("%.2f %% of right numbers were asked about, goal 1 %%", 100*s)
	}
	if s := table.UndetectedShare(); s > 0.005 {
		t.Errorf("%.2f %% of mistakes that show were not seen, goal 0.5 %%", 100*s)
	}
	if s := table.FirstRightShare(); s < 0.92 {
		t.Errorf("%.1f %% of first findings name the mistake, goal 92 %%", 100*s)
	}
	keep(t, got)
}

func keep(t *testing.T, got string) {
	t.Helper()
	if *seed != 1 || *trials != 400 {
		return
	}
	if *update {
		if err := os.WriteFile(filepath.FromSlash(kept), []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(filepath.FromSlash(kept))
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("docs/simulation.md is not of this fit check; renew it with -update")
	}
}

// missNotes gathers a few cases of each kind that went wrong.
type missNotes struct {
	seen map[string]int
	text strings.Builder
}

func (m *missNotes) take(c *Case) {
	code, _ := first(&c.Answer)
	kind := fmt.Sprintf("%s: first finding %q, verdict %s", c.Mistake, code, c.Answer.Verdict)
	if c.Mistake == "" {
		kind = fmt.Sprintf("right numbers: first finding %q, verdict %s", code, c.Answer.Verdict)
	}
	if m.seen[kind]++; m.seen[kind] <= 3 {
		fmt.Fprintf(&m.text, "%s\n    %s\n", kind, c.Line)
	}
}

func (m *missNotes) save(t *testing.T) {
	t.Helper()
	if *misses == "" {
		return
	}
	for kind, n := range m.seen {
		fmt.Fprintf(&m.text, "%6d  %s\n", n, kind)
	}
	if err := os.WriteFile(*misses, []byte(m.text.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func answer(s fitcheck.Severity) Check {
	return func(*fitcheck.Job) fitcheck.UnitResult {
		return fitcheck.UnitResult{Verdict: fitcheck.VerdictConfirm, Findings: []fitcheck.Finding{{Code: fitcheck.OutOfSquare, Severity: s}}}
	}
}

// A check that says nothing misses all that shows; one that always asks is always a false
// alarm. Both must look as bad as they are.
func TestTheCountsTellBadChecks(t *testing.T) {
	silent, err := Run(1, 20, answer(fitcheck.Note), nil)
	if err != nil {
		t.Fatal(err)
	}
	if silent.FalseAlarmShare() != 0 || silent.UndetectedShare() != 1 {
		t.Errorf("silence: alarms %v, undetected %v, want 0 and 1", silent.FalseAlarmShare(), silent.UndetectedShare())
	}
	nagging, err := Run(1, 20, answer(fitcheck.Ask), nil)
	if err != nil {
		t.Fatal(err)
	}
	if nagging.FalseAlarmShare() != 1 || nagging.UndetectedShare() != 0 || nagging.FirstRightShare() > 0.15 {
		t.Errorf("nagging: alarms %v, undetected %v, right %v", nagging.FalseAlarmShare(), nagging.UndetectedShare(), nagging.FirstRightShare())
	}
}

func TestSameSeedSameTable(t *testing.T) {
	var tables [2]string
	for i := range tables {
		table, err := Run(7, 20, theCheck(), nil)
		if err != nil {
			t.Fatal(err)
		}
		tables[i] = table.Markdown()
	}
	if tables[0] != tables[1] {
		t.Error("the same seed gave two tables")
	}
}

// Right numbers, read by a hand, are hardly ever past a line by the guard: where they
// were, "shown" would count noise.
func TestRightNumbersDoNotShow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	shown := 0
	const n = 20_000
	for range n {
		s := draw(r)
		if s.read(r); s.shows() {
			shown++
		}
	}
	if shown > n/200 {
		t.Errorf("%d of %d right skylights show something", shown, n)
	}
}

func TestShows(t *testing.T) {
	curb := func(outside, inside pair) skylight { return skylight{unit: true, outside: outside, inside: inside} }
	for _, row := range []struct {
		name string
		s    skylight
		want bool
	}{
		{"single wall", curb(pair{48, 48}, pair{45, 45}), false},
		{"half-inch drywall", curb(pair{48, 48}, pair{44, 44}), true},
		{"3/8 drywall is inside the guard with flashing", curb(pair{48, 48}, pair{44.5, 44.5}), false},
		{"board", curb(pair{48, 48}, pair{46.5, 46.5}), true},
		{"one side", curb(pair{48, 48}, pair{45, 33}), true},
		{"square", skylight{unit: true, outside: pair{48, 48}, diag: pair{67.882, 67.882}}, false},
		{"all four from the one-inch mark", skylight{unit: true, outside: pair{49, 49}, diag: pair{68.882, 68.882}}, false},
		{"sides alone from the one-inch mark", skylight{unit: true, outside: pair{49, 49}, diag: pair{67.882, 67.882}}, true},
		{"grip of half an inch", skylight{plastic: pair{25, 25}, opening: pair{24, 24}}, false},
		{"falls through", skylight{plastic: pair{48.5, 48.5}, opening: pair{48.5, 48.5}}, true},
		{"feet", skylight{unit: true, outside: pair{4, 4}}, true},
	} {
		if got := row.s.shows(); got != row.want {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
	}
}
