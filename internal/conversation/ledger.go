package conversation

import (
	"reflect"
	"slices"
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

// Value is what stands now for a topic of a unit (0 for the whole lead), nil where
// nothing was said.
func (t *Talk) Value(topic fitcheck.Topic, unit int) fitcheck.Value {
	if e := t.entry(topic, unit); e != nil {
		return e.Value
	}
	return nil
}

// entry is the one that stands: the last that was not taken back.
func (t *Talk) entry(topic fitcheck.Topic, unit int) *Entry {
	for i := len(t.Ledger) - 1; i >= 0; i-- {
		if e := &t.Ledger[i]; e.Topic == topic && e.Unit == unit && !e.Undone {
			return e
		}
	}
	return nil
}

// text is a topic's value where it is a word or a name, "" otherwise.
func (t *Talk) text(topic fitcheck.Topic, unit int) string {
	switch v := t.Value(topic, unit).(type) {
	case fitcheck.Choice:
		return string(v)
	case fitcheck.Text:
		return string(v)
	}
	return ""
}

// words is a topic's value where it is a list, and whether anything was said of it.
func (t *Talk) words(topic fitcheck.Topic) ([]string, bool) {
	v, ok := t.Value(topic, 0).(fitcheck.ChoiceList)
	return v, ok
}

// Place is where the part goes, as far as it was said.
func (t *Talk) Place() fitcheck.Place {
	p, _ := t.Value(fitcheck.TopicPlace, 0).(fitcheck.Place)
	return p
}

// Units are the kinds of unit as they stand, in the order in which the talk named
// them: the number never changes.
func (t *Talk) Units() []fitcheck.Unit {
	units := make([]fitcheck.Unit, t.UnitCount())
	for _, e := range t.Ledger {
		if e.Unit == 0 || e.Undone {
			continue
		}
		// The ledger only takes values of the topic's own kind.
		_ = units[e.Unit-1].Set(e.Topic, e.Value)
	}
	return units
}

// Job is what the fit check looks at. Problem and photos are left out of its units:
// they belong to the lead.
func (t *Talk) Job(site fitcheck.Site) fitcheck.Job {
	job := fitcheck.Job{Use: t.text(fitcheck.TopicUse, 0), Place: t.Place(), Site: site, Units: t.Units()}
	photos, seen := t.Value(fitcheck.TopicPhotos, 0).(fitcheck.Whole)
	problem, said := t.words(fitcheck.TopicProblem)
	for i := range job.Units {
		if seen {
			n := int(photos)
			job.Units[i].Photos = &n
		}
		if said {
			job.Units[i].Problem = problem
		}
	}
	return job
}

// add puts a fact into the ledger. It says false where just that stands already, so
// that a repeated answer changes nothing.
func (t *Talk) add(e Entry) bool {
	if now := t.entry(e.Topic, e.Unit); now != nil && now.By == e.By && reflect.DeepEqual(now.Value, e.Value) {
		return false
	}
	t.Ledger = append(t.Ledger, e)
	return true
}

// undo takes back what the latest message with facts brought, and says what that was.
func (t *Talk) undo() []Entry {
	last := 0
	for _, e := range t.Ledger {
		if !e.Undone && e.By == FromCustomer {
			last = max(last, e.Message)
		}
	}
	if last == 0 {
		return nil
	}
	var taken []Entry
	for i := range t.Ledger {
		if e := &t.Ledger[i]; e.Message == last && !e.Undone && e.Topic != fitcheck.TopicPhotos {
			e.Undone = true
			taken = append(taken, *e)
		}
	}
	t.forgetUnits(taken)
	return taken
}

// forgetUnits drops what units were called of which nothing stands any more, and with the
// last of several kinds the number of all is that of the one that is left.
func (t *Talk) forgetUnits(taken []Entry) {
	stands := func(unit int) bool {
		return slices.ContainsFunc(t.Ledger, func(e Entry) bool { return e.Unit == unit && !e.Undone })
	}
	for unit := range t.Memory.Called {
		if unit > 1 && !stands(unit) {
			delete(t.Memory.Called, unit)
		}
	}
	if t.Memory.Total > 0 && t.UnitCount() < 2 && len(taken) > 0 {
		t.add(Entry{Topic: fitcheck.TopicCount, Unit: 1, Value: fitcheck.Whole(t.Memory.Total), Said: strconv.Itoa(t.Memory.Total),
			Message: taken[0].Message, By: FromCustomer})
		t.Memory.Total = 0
	}
}

// retract takes back all that the customer said of a topic of a unit, so that nothing older
// stands again in its place.
func (t *Talk) retract(topic fitcheck.Topic, unit int) {
	for i := range t.Ledger {
		if e := &t.Ledger[i]; e.Topic == topic && e.Unit == unit && e.By == FromCustomer {
			e.Undone = true
		}
	}
}
