package shop

import (
	"time"

	"github.com/rickar/cal/v2"
)

// Calendar knows when the shop is open: the week, the holidays, the time zone. It is
// safe for concurrent use.
type Calendar struct {
	zone   *time.Location
	week   Week
	yearly cal.Calendar
	closed []Holiday
}

// Calendar is the file's.
func (f *File) Calendar() *Calendar {
	c := &Calendar{zone: f.Zone.Location, week: f.Hours}
	for _, h := range f.Holidays {
		if h.yearly != nil {
			c.yearly.AddHoliday(h.yearly)
			continue
		}
		c.closed = append(c.closed, h)
	}
	return c
}

// Open says whether the shop is open at a time.
func (c *Calendar) Open(t time.Time) bool {
	for _, o := range c.openings(t.In(c.zone)) {
		if !t.Before(o.from) && t.Before(o.to) {
			return true
		}
	}
	return false
}

// horizon bounds the search for an opening; a shop that is closed for longer has a sign
// on its door, not an opening.
const horizon = 800

// NextOpening is the first time at or after t at which the shop opens; t itself while it
// is open. It is the zero time where the shop does not open within two years.
func (c *Calendar) NextOpening(t time.Time) time.Time {
	local := t.In(c.zone)
	y, m, d := local.Date()
	for ahead := range horizon {
		// Noon is on the right day whatever the clocks do that night.
		for _, o := range c.openings(time.Date(y, m, d+ahead, 12, 0, 0, 0, c.zone)) {
			if !t.Before(o.from) && t.Before(o.to) {
				return t
			}
			if o.from.After(t) {
				return o.from
			}
		}
	}
	return time.Time{}
}

type interval struct{ from, to time.Time }

// openings are the spans of the day of a local time.
func (c *Calendar) openings(local time.Time) []interval {
	day := c.week.day(local.Weekday())
	if len(day) == 0 || c.holiday(local) {
		return nil
	}
	out := make([]interval, len(day))
	for i, o := range day {
		out[i] = interval{wallClock(local, o.From, false), wallClock(local, o.To, true)}
	}
	return out
}

func (c *Calendar) holiday(local time.Time) bool {
	// A holiday on a weekend is kept on the nearest weekday, as 5 U.S.C. 6103(b) has it; the
	// day itself is one as well.
	if actual, observed, _ := c.yearly.IsHoliday(local); actual || observed {
		return true
	}
	n := dateOf(local).number()
	for _, h := range c.closed {
		if h.From.number() <= n && n <= h.To.number() {
			return true
		}
	}
	return false
}

// wallClock is when the clocks show a time of a day, in minutes after midnight. A time
// that the clocks skip in spring is the moment at which they are put forward; of the two
// times that they show it in autumn, it is the first, or the last where late is true.
func wallClock(day time.Time, minutes int, late bool) time.Time {
	y, m, d := day.Date()
	t := time.Date(y, m, d, minutes/60, minutes%60, 0, 0, day.Location())
	start, end := t.ZoneBounds()
	if shown := t.Hour()*60 + t.Minute(); shown != minutes%(24*60) {
		// Go answers with one of the two sides of a skipped hour.
		if shown > minutes {
			return start
		}
		return end
	}
	shift := func(to time.Time) time.Time {
		_, here := t.Zone()
		_, there := to.Zone()
		return t.Add(time.Duration(here-there) * time.Second)
	}
	if other := shift(start.Add(-time.Second)); !late && !start.IsZero() && other.Before(start) && other.Before(t) {
		return other
	}
	if other := shift(end); late && !end.IsZero() && !other.Before(end) && other.After(t) {
		return other
	}
	return t
}
