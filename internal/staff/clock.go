package staff

import (
	"fmt"
	"time"

	"example.com/intake-bot/internal/conversation"
)

// clock tells times as the shop reads them.
type clock struct {
	zone *time.Location
	now  time.Time
}

func (v *visit) clock() clock {
	zone := v.shop().Zone
	if zone == nil {
		zone = time.UTC
	}
	return clock{zone, v.now}
}

// at is a time on the shop's clock: the hour alone where it is today.
func (c clock) at(t time.Time) string { return stamp(t.In(c.zone), c.now.In(c.zone)) }

// there is a time on the customer's clock, empty where it shows the same as the shop's.
func (c clock) there(t time.Time, zone string) string {
	if zone == "" {
		return ""
	}
	theirs, err := time.LoadLocation(zone)
	if err != nil || t.In(theirs).Format("15:04") == t.In(c.zone).Format("15:04") {
		return ""
	}
	return t.In(theirs).Format("3:04 pm MST")
}

func stamp(t, now time.Time) string {
	switch {
	case t.Year() == now.Year() && t.YearDay() == now.YearDay():
		return "today " + t.Format("3:04 pm")
	case t.Year() == now.Year():
		return t.Format("Mon 2 Jan, 3:04 pm")
	}
	return t.Format("2 Jan 2006, 3:04 pm")
}

// howLong says a span the way one says it: "12 min", "3 h 20", "2 days".
func howLong(d time.Duration) string {
	switch {
	case d < time.Minute:
		return "just now"
	case d < time.Hour:
		return fmt.Sprintf("%d min", int(d.Minutes()))
	case d < 10*time.Hour && int(d.Minutes())%60 == 0:
		return fmt.Sprintf("%d h", int(d.Hours()))
	case d < 10*time.Hour:
		return fmt.Sprintf("%d h %02d", int(d.Hours()), int(d.Minutes())%60)
	case d < 48*time.Hour:
		return fmt.Sprintf("%d h", int(d.Hours()))
	}
	return fmt.Sprintf("%d days", int(d.Hours()/24))
}

// closedSince is the last time at which the shop closed, to five minutes, where that was
// within a fortnight; ok is false for a shop without hours or one that never closes.
func closedSince(hours conversation.Calendar, now time.Time) (closed time.Time, ok bool) {
	if hours == nil {
		return time.Time{}, false
	}
	const step = 5 * time.Minute
	at := now.Truncate(step)
	for end := at.Add(-14 * 24 * time.Hour); at.After(end) && hours.Open(at); {
		at = at.Add(-step) // back to before today's opening
	}
	for end := at.Add(-14 * 24 * time.Hour); at.After(end); at = at.Add(-step) {
		if hours.Open(at.Add(-step)) {
			return at, true
		}
	}
	return time.Time{}, false
}
