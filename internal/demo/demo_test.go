package demo

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"time"
)

func TestCustomersAreWellFormed(t *testing.T) {
	list, err := Customers()
	if err != nil {
		t.Fatal(err)
	}
	if len(list) != 5 {
		t.Fatalf("%d customers, want 5", len(list))
	}
	seen := map[string]bool{}
	for _, c := range list {
		// NPA-555-0100 to 0199 are kept for fiction (numbering references).
		if c.Mail != "" {
			if !strings.HasSuffix(c.Mail, "@example.com") {
				t.Errorf("%s is not an address for fiction", c.Mail)
			}
		} else if len(c.Number) != 12 || !strings.HasPrefix(c.Number[5:], "55501") || seen[c.Number] {
			t.Errorf("%s is not a number for fiction of its own", c.Number)
		}
		seen[c.Address()] = true
		// Each must be able to tell what any part needs.
		for _, topic := range []string{"name", "place", "use", "style", "confirm"} {
			if len(c.Answers[topic]) == 0 {
				t.Errorf("%s has no answer to %s", c.Number, topic)
			}
		}
	}
}

func TestCustomersBeginByTheShopsClock(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	c := Customer{Day: 1, Clock: "21:15"}
	got := c.At(time.Date(2026, 3, 7, 0, 0, 0, 0, zone)) // clocks go forward on the 8th
	if want := "2026-03-08T21:15:00-05:00"; got.Format(time.RFC3339) != want {
		t.Errorf("begins at %s, want %s", got.Format(time.RFC3339), want)
	}
}

func TestPersonaAnswersWhatIsAsked(t *testing.T) {
	c := &Customer{
		Answers: map[string][]string{"name": {"Ann"}, "place": {"Barre VT"}, "curb_inside": {"21 x 45", "22 x 46"},
			"count": {"one"}, "count@2": {"three"}, "photos": {"no photo"}},
		Photos: []string{"style"}, Otherwise: "no idea",
	}
	p := newPersona(c)
	for _, step := range []struct {
		asking []string
		want   text
	}{
		{[]string{"name", "place"}, text{"Ann, Barre VT", 0}},
		{[]string{"curb_inside"}, text{"21 x 45", 0}},
		{[]string{"curb_inside"}, text{"22 x 46", 0}},
		{[]string{"curb_inside"}, text{"22 x 46", 0}},
		{[]string{"finish"}, text{"no idea", 0}},
		{[]string{"count@1"}, text{"one", 0}},
		{[]string{"count@2"}, text{"three", 0}},
		{[]string{"style"}, text{"", 1}},
		{[]string{"style"}, text{"no idea", 0}},
	} {
		if got := p.answer(step.asking); got != step.want {
			t.Errorf("asked %v: %+v, want %+v", step.asking, got, step.want)
		}
	}
}

func TestDifferences(t *testing.T) {
	record := json.RawMessage(`{"status":"ready","units":[{"count":1,"curb":{"width_in":25.5}}],"why_staff":[],
		"facts":[{"topic":"a","n":1},{"topic":"b","n":2}],"place":null}`)
	type object = map[string]any
	for _, c := range []struct {
		want any
		diff []string
	}{
		{object{"status": "ready"}, nil},
		{object{"status": "open"}, []string{`status is "ready", not "open"`}},
		{object{"units": []any{object{"curb": object{"width_in": 25.5}}}}, nil},
		{object{"units": []any{object{"count": 2}}}, []string{"units[0].count is 1, not 2"}},
		{object{"facts": []any{object{"topic": "b"}}}, nil},
		{object{"facts": []any{object{"topic": "c"}}}, []string{`facts has no {"topic":"c"} among its 2`}},
		{object{"why_staff": []any{}}, nil},
		{object{"why_staff": []any{"name"}}, []string{`why_staff is [], not ["name"]`}},
		{object{"place": object{"zip": "1"}}, []string{"place is null, not an object"}},
		{object{"none": 1}, []string{"none is null, not 1"}},
	} {
		got, err := Differences(c.want, record)
		if err != nil || !reflect.DeepEqual(got, c.diff) {
			t.Errorf("%v: %q (%v), want %q", c.want, got, err, c.diff)
		}
	}
}

func TestClockCanBeSetAndGoesOn(t *testing.T) {
	var c Clock
	at := time.Date(2026, 3, 3, 21, 15, 0, 0, time.UTC)
	c.Set(at)
	if got := c.Now(); got.Before(at) || got.After(at.Add(time.Minute)) {
		t.Errorf("shows %s after it was set to %s", got, at)
	}
	c.Set(time.Time{})
	if got := time.Since(c.Now()); got < 0 || got > time.Minute {
		t.Errorf("is off by %s from the real time", got)
	}
}
