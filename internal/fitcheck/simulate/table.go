package simulate

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// FalseAlarmShare is the share of right numbers that were asked about.
func (t *Table) FalseAlarmShare() float64 { return share(t.FalseAlarms, t.Sound) }

// UndetectedShare is the share of mistakes that the numbers show and the check did not see.
func (t *Table) UndetectedShare() float64 {
	shown, seen := 0, 0
	for i := range t.Rows {
		shown, seen = shown+t.Rows[i].Shown, seen+t.Rows[i].Seen
	}
	return share(shown-seen, shown)
}

// FirstRightShare is the share of the seen mistakes that the first finding names.
func (t *Table) FirstRightShare() float64 {
	seen, right := 0, 0
	for i := range t.Rows {
		seen, right = seen+t.Rows[i].Seen, right+t.Rows[i].Right
	}
	return share(right, seen)
}

func share(part, all int) float64 {
	if all == 0 {
		return 0
	}
	return float64(part) / float64(all)
}

// Markdown is the table as the docs keep it.
func (t *Table) Markdown() string {
	var b strings.Builder
	fmt.Fprintf(&b, preface, t.Seed, percent(t.FalseAlarms, t.Sound), t.Sound, 100*t.UndetectedShare(), 100*t.FirstRightShare())
	b.WriteString("| What was done | Tried | Shown | Seen | First finding right | Seen of the rest | First findings of those shown |\n| --- | ---: | ---: | ---: | ---: | ---: | --- |\n")
	for i := range t.Rows {
		r := &t.Rows[i]
		fmt.Fprintf(&b, "| %s | %d | %d | %s | %s | %s | %s |\n", r.Name, r.Tried, r.Shown, percent(r.Seen, r.Shown), percent(r.Right, r.Seen),
			percent(r.UnshownSeen, r.Unshown), counts(r.First, r.Codes))
	}
	fmt.Fprintf(&b, "\nFindings on right numbers: %s.\n", counts(t.AlarmCodes, nil))
	return b.String()
}

const preface = `# The simulation

Made by the test of ` + "`internal/fitcheck/simulate`" + `; after a change of the fit check renew it with
` + "`go test ./internal/fitcheck/simulate -update`" + `.

Skylights are made up (seed %d): curbs and domes, oblong, square and round, read to the
sixteenth of an inch, by some to the eighth or the millimetre, and by a hand that is good to an eighth. Half of them are right; into
each of the others one mistake is worked.

- Right numbers that were asked about: %s of %d (goal: at most 1 %%).
- Mistakes that the numbers show and that were not seen: %.2f %% (goal: at most 0.5 %%).
- First finding names the mistake: %.1f %% of those seen (goal: at least 92 %%).

*Shown* counts the trials whose numbers are past some line of the contract by more than
three standard deviations of a difference of two readings; the rest can't be told from
right numbers by anyone. A code in bold names the mistake; where several are bold, the same
numbers can come about in several ways.

`

func percent(part, all int) string {
	if all == 0 {
		return "–"
	}
	return fmt.Sprintf("%.1f %%", 100*share(part, all))
}

// counts lists codes by how often they came, those that are right in bold.
func counts(m map[fitcheck.Code]int, right []fitcheck.Code) string {
	if len(m) == 0 {
		return "none"
	}
	keys := slices.SortedFunc(maps.Keys(m), func(a, b fitcheck.Code) int {
		return cmp.Or(m[b]-m[a], strings.Compare(string(a), string(b)))
	})
	words := make([]string, len(keys))
	for i, k := range keys {
		name := "`" + string(k) + "`"
		switch {
		case k == "":
			name = "silence"
		case slices.Contains(right, k):
			name = "**" + name + "**"
		}
		words[i] = fmt.Sprintf("%s %d", name, m[k])
	}
	return strings.Join(words, ", ")
}
