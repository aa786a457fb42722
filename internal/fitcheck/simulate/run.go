package simulate

import (
	"math/rand/v2"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Check is the fit check under trial: it answers for a job of one unit.
type Check func(*fitcheck.Job) fitcheck.UnitResult

// Case is one trial that did not go as it should.
type Case struct {
	Mistake string // empty where the numbers were right
	Line    string // input to the check command
	Answer  fitcheck.UnitResult
}

// Row is how a mistake came out. Fields are counts of trials.
type Row struct {
	Name  string
	Codes []fitcheck.Code
	Tried int
	Shown int // the numbers show that something is wrong
	Seen  int // of those shown: something was asked, or the order stopped
	Right int // of those seen: the first finding names the mistake
	// First counts the first findings of those shown; the empty code is silence.
	First map[fitcheck.Code]int
	// Unshown and UnshownSeen are trials whose numbers don't show it, and what of them
	// was seen all the same.
	Unshown, UnshownSeen int
}

// Table is a whole run.
type Table struct {
	Seed        uint64
	Sound       int // right numbers tried
	FalseAlarms int // of those: something was asked, or the order stopped
	AlarmCodes  map[fitcheck.Code]int
	Rows        []Row
}

// Run tries n right skylights for each mistake, and n with it. Where it did not go well,
// miss is called; it may be nil.
func Run(seed uint64, n int, check Check, miss func(*Case)) (*Table, error) {
	t := &Table{Seed: seed, AlarmCodes: map[fitcheck.Code]int{}}
	for i, m := range Mistakes() {
		r := rand.New(rand.NewPCG(seed, uint64(i)))
		if err := t.sound(r, n, check, miss); err != nil {
			return nil, err
		}
		row := Row{Name: m.Name, Codes: m.Codes, First: map[fitcheck.Code]int{}}
		if err := row.run(r, n, &m, check, miss); err != nil {
			return nil, err
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

func (t *Table) sound(r *rand.Rand, n int, check Check, miss func(*Case)) error {
	for range n {
		s := draw(r)
		s.read(r)
		answer := check(s.job())
		t.Sound++
		f, alarm := first(&answer)
		if !alarm {
			continue
		}
		t.FalseAlarms++
		t.AlarmCodes[f]++
		if err := report(miss, "", s, answer); err != nil {
			return err
		}
	}
	return nil
}

func (row *Row) run(r *rand.Rand, n int, m *Mistake, check Check, miss func(*Case)) error {
	for row.Tried < n {
		s := draw(r)
		if m.spoil != nil && !m.spoil(r, s) {
			continue
		}
		s.read(r)
		if m.after != nil && !m.after(r, s) {
			continue
		}
		row.Tried++
		answer := check(s.job())
		if row.count(s, &answer) {
			continue
		}
		if err := report(miss, m.Name, s, answer); err != nil {
			return err
		}
	}
	return nil
}

// count books one trial and says whether it went well.
func (row *Row) count(s *skylight, answer *fitcheck.UnitResult) bool {
	code, seen := first(answer)
	if !s.shows() {
		row.Unshown++
		if seen {
			row.UnshownSeen++
		}
		return true
	}
	row.Shown++
	row.First[code]++
	if !seen {
		return false
	}
	row.Seen++
	if !slices.Contains(row.Codes, code) {
		return false
	}
	row.Right++
	return true
}

// first is the first finding that asks or stops; where there is none but the verdict says
// that the numbers are wrong, its code is the verdict.
func first(answer *fitcheck.UnitResult) (fitcheck.Code, bool) {
	for i := range answer.Findings {
		if s := answer.Findings[i].Severity; s == fitcheck.Ask || s == fitcheck.Stop {
			return answer.Findings[i].Code, true
		}
	}
	switch answer.Verdict {
	case fitcheck.VerdictRemeasure, fitcheck.VerdictNoFit:
		return fitcheck.Code(answer.Verdict), true
	}
	return "", false
}

func report(miss func(*Case), mistake string, s *skylight, answer fitcheck.UnitResult) error {
	if miss == nil {
		return nil
	}
	line, err := s.Line()
	if err != nil {
		return err
	}
	miss(&Case{mistake, line, answer})
	return nil
}
