package conversation

import (
	"strings"
	"time"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/place"
)

// closed says whether the shop is closed now.
func (t *turn) closed() bool { return t.shop.Hours != nil && !t.shop.Hours.Open(t.now) }

// nextLine says what happens next and when.
func (t *turn) nextLine(result string) string {
	args := wording.Args{"result": t.line("result."+result, 0, nil)}
	if !t.closed() {
		return t.line("next.open", 0, args)
	}
	args["opens"] = t.opens()
	return t.line("next.closed", 0, args)
}

// opens says when the shop opens next, on the customer's clock where their place is
// known, on the shop's otherwise, naming the zone.
func (t *turn) opens() string {
	zone := t.customerZone()
	at := t.shop.Hours.NextOpening(t.now).In(zone)
	now := t.now.In(zone)
	args := wording.Args{"time": t.clock(at)}
	switch days := daysBetween(now, at); {
	case days == 0:
		return t.line("opens.today", 0, args)
	case days == 1:
		return t.line("opens.tomorrow", 0, args)
	}
	args["day"] = t.line("days", int(at.Weekday()), nil)
	return t.line("opens.day", 0, args)
}

func daysBetween(a, b time.Time) int {
	midnight := func(t time.Time) time.Time {
		return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
	}
	return int(midnight(b).Sub(midnight(a)).Hours() / 24)
}

// clock writes a time of day with its zone: "8 AM CST", "7:30 AM EDT".
func (t *turn) clock(at time.Time) string {
	layout := "3:04 PM MST"
	if at.Minute() == 0 {
		layout = "3 PM MST"
	}
	s := at.Format(layout)
	if t.book.Language() == "es" {
		s = strings.NewReplacer("AM", "a.m.", "PM", "p.m.").Replace(s)
	}
	return s
}

// customerZone is the customer's time zone where it is certain, else the shop's.
func (t *turn) customerZone() *time.Location {
	if zones := placeZones(t.talk); len(zones) == 1 {
		if zone, err := time.LoadLocation(zones[0]); err == nil {
			return zone
		}
	}
	return t.shop.zone()
}

func (s *Shop) zone() *time.Location {
	if s.Zone == nil {
		return time.UTC
	}
	return s.Zone
}

// placeZones are the time zones in which the customer may be.
func placeZones(t Talk) []string {
	p := t.Place()
	return place.Zones(p.City, p.State, p.ZIP)
}
