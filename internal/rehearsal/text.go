package rehearsal

import (
	"fmt"
	"io"
	"strings"
)

// WriteTo writes the report to be read.
func (r *Report) WriteTo(w io.Writer) (int64, error) {
	n, err := io.WriteString(w, r.String())
	return int64(n), err
}

func (r *Report) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d customers, seed %d\n\n", r.Customers, r.Seed)
	fmt.Fprintf(&b, "Ready leads: %d; of the %d who could have one, %d (%s).\n", r.Ready, r.CouldBeReady, r.ReadyOfThose, share(r.ReadyOfThose, r.CouldBeReady))
	fmt.Fprintf(&b, "Messages they wrote: %d in the middle, nine in ten wrote %d or fewer.\n", r.Messages.Median, r.Messages.P90)
	list(&b, "How it ended", r.Ends)
	r.writeGroups(&b)
	list(&b, "Stuck, of those who could have been ready: the last question", r.Stuck)
	list(&b, "Left or opted out: the last question", r.Left)
	list(&b, "Caught, in talks", r.Caught)
	r.writeMistakes(&b)
	list(&b, "Faults, in talks", r.Faults)
	r.writeMissed(&b)
	r.writeWrong(&b)
	return b.String()
}

func share(part, all int) string {
	if all == 0 {
		return "none"
	}
	return fmt.Sprintf("%.1f %%", 100*float64(part)/float64(all))
}

func list(b *strings.Builder, title string, counts []Count) {
	if len(counts) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s:\n", title)
	for _, c := range counts {
		fmt.Fprintf(b, "%6d  %s\n", c.N, c.What)
	}
}

func (r *Report) writeGroups(b *strings.Builder) {
	fmt.Fprintf(b, "\n%-10s %-20s %9s %9s %7s %7s %7s\n", "by", "", "customers", "could be", "ready", "median", "90 %")
	for _, g := range r.Groups {
		fmt.Fprintf(b, "%-10s %-20s %9d %9d %7s %7d %7d\n", g.By, g.Name, g.Customers, g.CouldBeReady,
			share(g.Ready, g.CouldBeReady), g.Messages.Median, g.Messages.P90)
	}
}

func (r *Report) writeMistakes(b *strings.Builder) {
	if len(r.Mistakes) == 0 {
		return
	}
	b.WriteString("\nWrong measurements, and what became of them:\n")
	for _, m := range r.Mistakes {
		var words []string
		for _, c := range m.Outcomes {
			words = append(words, fmt.Sprintf("%d %s", c.N, c.What))
		}
		fmt.Fprintf(b, "%6d  %s: %s\n", m.Made, m.Mistake, strings.Join(words, "; "))
	}
}

// mostMissed bounds how much of what was not understood is shown.
const mostMissed = 40

func (r *Report) writeMissed(b *strings.Builder) {
	if len(r.Missed) == 0 {
		return
	}
	fmt.Fprintf(b, "\nPlain enough, and not understood at once: %d times. Some of them:\n", len(r.Missed))
	for _, m := range r.Missed[:min(mostMissed, len(r.Missed))] {
		fmt.Fprintf(b, "%6d  asked %s: %q meant %s\n", m.Customer, strings.Join(m.Asked, ", "), m.Words, m.Meant)
	}
}

func (r *Report) writeWrong(b *strings.Builder) {
	if len(r.Wrong) == 0 {
		b.WriteString("\nNo wrong fact.\n")
		return
	}
	fmt.Fprintf(b, "\nWRONG FACTS in %d talks:\n", len(r.Wrong))
	for i := range r.Wrong {
		fmt.Fprintf(b, "\n%s", r.Wrong[i].String())
	}
}
