package shop

import (
	"testing"
	"time"
)

func calendarOf(t *testing.T, zone, hours, holidays string) *Calendar {
	t.Helper()
	f, err := Parse([]byte(`name: A
phone: 802-555-0142
email: a@example.com
address: {street: 1 Mill Road, city: Barre, state: VT, zip: "05641"}
time_zone: ` + zone + "\nhours: " + hours + "\nholidays: " + holidays + "\n"))
	if err != nil {
		t.Fatal(err)
	}
	return f.Calendar()
}

const (
	office  = "{monday: 8-17, tuesday: 8-17, wednesday: 8-17, thursday: 8-17, friday: 8-17}"
	always  = "{monday: 0:00-24:00, tuesday: 0:00-24:00, wednesday: 0:00-24:00, thursday: 0:00-24:00, friday: 0:00-24:00, saturday: 0:00-24:00, sunday: 0:00-24:00}"
	nightly = "{sunday: 2:30-6:00}"
	small   = "{sunday: 1:30-6:00}"
	closing = "{sunday: 0:30-1:30}"
)

func TestNextOpening(t *testing.T) {
	for _, c := range []struct{ what, zone, hours, holidays, at, want string }{
		{"open: now", "America/Chicago", office, "[]", "2026-03-02T10:00:00-06:00", "2026-03-02T10:00:00-06:00"},
		{"at the minute of opening", "America/Chicago", office, "[]", "2026-03-02T08:00:00-06:00", "2026-03-02T08:00:00-06:00"},
		{"at the minute of closing", "America/Chicago", office, "[]", "2026-03-02T17:00:00-06:00", "2026-03-03T08:00:00-06:00"},
		{"before opening", "America/Chicago", office, "[]", "2026-03-02T07:59:59-06:00", "2026-03-02T08:00:00-06:00"},
		{"quarter past nine at night", "America/Chicago", office, "[]", "2026-03-02T21:15:00-06:00", "2026-03-03T08:00:00-06:00"},
		{"asked in another zone", "America/Chicago", office, "[]", "2026-03-03T04:15:00Z", "2026-03-03T08:00:00-06:00"},
		{"Friday night", "America/Chicago", office, "[]", "2026-03-06T20:00:00-06:00", "2026-03-09T08:00:00-05:00"},
		{"lunch", "America/Chicago", "{monday: '8-12, 13-17'}", "[]", "2026-03-02T12:30:00-06:00", "2026-03-02T13:00:00-06:00"},
		{"over Thanksgiving and the day after", "America/Chicago", office, "[Thanksgiving, Day after Thanksgiving]",
			"2026-11-25T18:00:00-06:00", "2026-11-30T08:00:00-06:00"},
		{"over dates of the shop's own", "America/Chicago", office, "[{name: Move, from: 2026-07-06, to: 2026-07-08}]",
			"2026-07-03T18:00:00-05:00", "2026-07-09T08:00:00-05:00"},
		// Clocks go forward on 8 March 2026 at 2:00 and back on 1 November 2026 at 2:00 (15 U.S.C. 260a).
		{"an opening that spring skips: as clocks go forward", "America/Chicago", nightly, "[]", "2026-03-07T12:00:00-06:00", "2026-03-08T03:00:00-05:00"},
		{"an opening that autumn shows twice: the first", "America/Chicago", small, "[]", "2026-10-31T12:00:00-05:00", "2026-11-01T01:30:00-05:00"},
		{"open around the clock, in the hour that is there twice", "America/Chicago", always, "[]", "2026-11-01T01:30:00-06:00", "2026-11-01T01:30:00-06:00"},
		{"a zone without summer time", "America/Phoenix", office, "[]", "2026-03-08T12:00:00-07:00", "2026-03-09T08:00:00-07:00"},
		{"east of the shop's midnight", "Pacific/Honolulu", office, "[]", "2026-03-09T06:00:00Z", "2026-03-09T08:00:00-10:00"},
		{"never: zero", "America/Chicago", office, "[{name: Long rest, from: 2026-01-01, to: 2029-12-31}]", "2026-03-02T10:00:00-06:00", "0001-01-01T00:00:00Z"},
	} {
		cal := calendarOf(t, c.zone, c.hours, c.holidays)
		at, want := moment(t, c.at), moment(t, c.want)
		if got := cal.NextOpening(at); !got.Equal(want) {
			t.Errorf("%s: %s, want %s", c.what, got, want)
		}
		if open := cal.Open(at); open != at.Equal(want) {
			t.Errorf("%s: open is %t", c.what, open)
		}
	}
}

func TestClosingInTheHourThatIsThereTwice(t *testing.T) {
	cal := calendarOf(t, "America/Chicago", closing, "[]")
	for at, want := range map[string]bool{
		"2026-11-01T01:00:00-05:00": true,
		"2026-11-01T01:29:00-06:00": true, // closes when the clocks show it for the last time
		"2026-11-01T01:30:00-06:00": false,
	} {
		if got := cal.Open(moment(t, at)); got != want {
			t.Errorf("open at %s is %t", at, got)
		}
	}
}

// The dates are those that the Office of Personnel Management publishes as federal
// holidays of 2026 and 2027; a holiday on a weekend is observed on the nearest weekday.
func TestHolidaysFallOnTheirPublishedDates(t *testing.T) {
	for _, c := range []struct {
		name  string
		dates []string
	}{
		{"New Year's Day", []string{"2026-01-01", "2027-01-01"}},
		{"Martin Luther King Day", []string{"2026-01-19", "2027-01-18"}},
		{"Presidents' Day", []string{"2026-02-16", "2027-02-15"}},
		{"Memorial Day", []string{"2026-05-25", "2027-05-31"}},
		{"Juneteenth", []string{"2026-06-19", "2027-06-18"}}, // 2027: a Saturday
		{"Fourth of July", []string{"2026-07-03", "2027-07-05"}},
		{"Labor Day", []string{"2026-09-07", "2027-09-06"}},
		{"Columbus Day", []string{"2026-10-12", "2027-10-11"}},
		{"Veterans Day", []string{"2026-11-11", "2027-11-11"}},
		{"Thanksgiving", []string{"2026-11-26", "2027-11-25"}},
		{"Day after Thanksgiving", []string{"2026-11-27", "2027-11-26"}},
		{"Christmas", []string{"2026-12-25", "2027-12-24"}}, // 2027: a Saturday
		// New Year's Day of 2028 is a Saturday: observed in the year before.
		{"New Year's Day", []string{"2027-12-31"}},
		{"New Year's Eve", []string{"2026-12-31"}},
		{"Christmas Eve", []string{"2026-12-24"}},
		// Common Western church calendars.
		{"Good Friday", []string{"2026-04-03", "2027-03-26"}},
	} {
		cal := calendarOf(t, "America/Chicago", office, "["+quote(c.name)+"]")
		for _, date := range c.dates {
			noon := moment(t, date+"T18:00:00Z")
			if cal.Open(noon) {
				t.Errorf("%s: open on %s", c.name, date)
			}
			if before := noon.AddDate(0, 0, -1); before.Weekday() >= time.Monday && before.Weekday() <= time.Friday && !cal.Open(before) {
				t.Errorf("%s: closed on the day before %s", c.name, date)
			}
		}
	}
}

func quote(s string) string { return `"` + s + `"` }

func moment(t *testing.T, text string) time.Time {
	t.Helper()
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		t.Fatal(err)
	}
	return at
}
