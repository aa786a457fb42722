package shop

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// Week is when the shop is open on each day, in its own time zone. A day that is not in
// the file is closed.
type Week struct {
	// Monday, and each other day: "8:00-17:00", "8 am - 5 pm", two spans with a comma
	// between ("8:00-12:00, 13:00-17:00"), or "closed".
	Monday    Day `yaml:"monday"`
	Tuesday   Day `yaml:"tuesday"`
	Wednesday Day `yaml:"wednesday"`
	Thursday  Day `yaml:"thursday"`
	Friday    Day `yaml:"friday"`
	Saturday  Day `yaml:"saturday"`
	Sunday    Day `yaml:"sunday"`
}

func (w *Week) day(d time.Weekday) Day {
	return [...]Day{w.Sunday, w.Monday, w.Tuesday, w.Wednesday, w.Thursday, w.Friday, w.Saturday}[d]
}

// Day has the spans of one day in which the shop is open, in order.
type Day []Opening

// Opening is one span of a day, in minutes after midnight by the clock on the wall; To is
// at most 1440.
type Opening struct{ From, To int }

var (
	spanSplit = regexp.MustCompile(`\s*(?:-|–|—|\bto\b)\s*`)
	clockForm = regexp.MustCompile(`^(\d{1,2})(?::(\d{2}))?\s*(am|pm|a\.m\.|p\.m\.)?$`)
)

func (d *Day) set(text string) error {
	text = strings.ToLower(strings.TrimSpace(text))
	if text == "closed" {
		*d = nil
		return nil
	}
	var out Day
	for _, part := range strings.Split(text, ",") {
		part = strings.TrimSpace(part)
		o, ok := readOpening(part)
		if !ok {
			return fmt.Errorf("%q is not opening hours: write 8:00-17:00, or 8:00-12:00, 13:00-17:00, or closed", text)
		}
		if o.From >= o.To {
			return fmt.Errorf("%q closes before it opens: write the earlier time first, by the 24-hour clock or with am and pm", part)
		}
		if n := len(out); n > 0 && out[n-1].To > o.From {
			return fmt.Errorf("%q overlaps the span before it: write the spans of a day in order", part)
		}
		out = append(out, o)
	}
	*d = out
	return nil
}

func readOpening(text string) (Opening, bool) {
	ends := spanSplit.Split(text, -1)
	if len(ends) != 2 {
		return Opening{}, false
	}
	from, ok := readClock(ends[0])
	to, ok2 := readClock(ends[1])
	return Opening{from, to}, ok && ok2
}

// readClock reads a time of day as minutes after midnight.
func readClock(text string) (int, bool) {
	m := clockForm.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	hour, _ := strconv.Atoi(m[1])
	minute, _ := strconv.Atoi(orElse(m[2], "0"))
	switch {
	case m[3] != "" && (hour < 1 || hour > 12):
		return 0, false
	case strings.HasPrefix(m[3], "p") && hour < 12:
		hour += 12
	case strings.HasPrefix(m[3], "a") && hour == 12:
		hour = 0
	}
	at := hour*60 + minute
	return at, minute < 60 && at <= 24*60
}
