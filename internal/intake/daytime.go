package intake

import (
	"time"
	_ "time/tzdata" // a container may have none

	"github.com/nyaruka/phonenumbers"
)

// Unasked texts go out from 8 in the morning to 8 in the evening, wherever the customer
// may be. Federal rules allow 8 to 9 at the called party's location (47 CFR
// 64.1200(c)(1)); some states end at 8 (from memory: Fla. Stat. 501.616(6)).
const (
	dayBegins = 8
	dayEnds   = 20
)

// anyZone spans the states, for numbers of which nothing is known.
var anyZone = []string{"America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles",
	"America/Anchorage", "Pacific/Honolulu"}

// zonesOf are the time zones where the owner of a number may be: those of the number,
// and that of the place that he named.
func zonesOf(number, place string) []*time.Location {
	var names []string
	if n, err := phonenumbers.Parse(number, "US"); err == nil {
		if zones, err := phonenumbers.GetTimezonesForNumber(n); err == nil {
			names = zones
		}
	}
	zones := load(names)
	if len(zones) == 0 {
		zones = load(anyZone)
	}
	return append(zones, load([]string{place})...)
}

// load gives the zones of those names that are known.
func load(names []string) []*time.Location {
	var zones []*time.Location
	for _, name := range names {
		if name == "" || name == phonenumbers.UNKNOWN_TIMEZONE {
			continue
		}
		if zone, err := time.LoadLocation(name); err == nil {
			zones = append(zones, zone)
		}
	}
	return zones
}

// nextDaytime is the first time at or after t at which it is day in all zones, to the
// quarter of an hour. Where their days never meet, it is t the next day, to look again.
func nextDaytime(t time.Time, zones []*time.Location) time.Time {
	const step = 15 * time.Minute // zones differ by whole quarters
	for at, i := t, 0; i < int(24*time.Hour/step)+1; i++ {
		if isDay(at, zones) {
			return at
		}
		at = t.Truncate(step).Add(time.Duration(i+1) * step)
	}
	return t.Add(24 * time.Hour)
}

func isDay(t time.Time, zones []*time.Location) bool {
	for _, zone := range zones {
		if hour := t.In(zone).Hour(); hour < dayBegins || hour >= dayEnds {
			return false
		}
	}
	return true
}
