package intake

import (
	"testing"
	"time"
)

func TestNextDaytime(t *testing.T) {
	for _, c := range []struct {
		what, number, place, at, want string
	}{
		{"noon in Duluth", "+12185550123", "", "2026-03-02T18:00:00Z", "2026-03-02T18:00:00Z"},
		{"eight in the evening in Duluth", "+12185550123", "", "2026-03-03T02:00:00Z", "2026-03-03T14:00:00Z"},
		{"a second before that", "+12185550123", "", "2026-03-03T01:59:59Z", "2026-03-03T01:59:59Z"},
		{"seven in the morning in Duluth", "+12185550123", "", "2026-03-02T13:07:00Z", "2026-03-02T14:00:00Z"},
		{"in summer", "+12185550123", "", "2026-07-02T12:00:00Z", "2026-07-02T13:00:00Z"},
		{"Duluth's number, a roof in Honolulu", "+12185550123", "Pacific/Honolulu", "2026-03-02T14:00:00Z", "2026-03-02T18:00:00Z"},
		{"a number of no known place: New York to Honolulu", "", "", "2026-03-02T10:00:00Z", "2026-03-02T18:00:00Z"},
		{"the night before the clocks change", "+12185550123", "", "2026-03-08T04:00:00Z", "2026-03-08T13:00:00Z"},
		{"the morning after they went forward", "+12185550123", "", "2026-03-08T12:59:59Z", "2026-03-08T13:00:00Z"},
		{"the night in which they go back", "+12185550123", "", "2026-11-01T01:00:00Z", "2026-11-01T14:00:00Z"},
		{"the evening of that day", "+12185550123", "", "2026-11-02T02:00:00Z", "2026-11-02T14:00:00Z"},
		{"a place of an unknown name", "+12185550123", "Moon/Base", "2026-03-02T18:00:00Z", "2026-03-02T18:00:00Z"},
	} {
		at, err := time.Parse(time.RFC3339, c.at)
		if err != nil {
			t.Fatal(err)
		}
		if got := nextDaytime(at, zonesOf(c.number, c.place)).Format(time.RFC3339); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

func TestNextDaytimeWhereDaysNeverMeet(t *testing.T) {
	at := time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)
	zones := []*time.Location{time.FixedZone("east", 12*3600), time.UTC}
	if got := nextDaytime(at, zones); !got.Equal(at.Add(24 * time.Hour)) {
		t.Errorf("%v, want the next day, to look again", got)
	}
}
