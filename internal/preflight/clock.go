package preflight

import (
	"fmt"
	"time"
)

// skew is how far a clock may be off: quiet hours and reminders go by the minute, and
// certificates by the hour, but the order of what several machines do goes by seconds.
const skew = 5 * time.Second

// compare tells this machine's clock from another's that was read between two moments;
// coarse is how roughly the other one was told.
func compare(check string, before, after, theirs time.Time, coarse time.Duration) Line {
	early, late := before.Add(-skew), after.Add(skew+coarse)
	switch {
	case theirs.Before(early):
		return unsynchronized(check, before.Sub(theirs), "ahead of")
	case theirs.After(late):
		return unsynchronized(check, theirs.Sub(after), "behind")
	}
	return ok(check, "this machine's clock agrees within %v", skew)
}

func unsynchronized(check string, by time.Duration, which string) Line {
	return wrong(check, fmt.Sprintf("this machine's clock is %v %s theirs", by.Round(time.Second), which),
		"let the clock be set by the network: sudo timedatectl set-ntp true (Debian's package systemd-timesyncd), on each machine")
}
