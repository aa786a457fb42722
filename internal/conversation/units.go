package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// sureOfUnits settles whether a number without a unit is in inches, where another size
// of the same skylight is known in inches and lies close by: "49 x 97" beside a plastic
// of 51 1/4 x 99 1/4 in needs no question.
func (t *turn) sureOfUnits(u reading.Unclear) (reading.Fact, bool) {
	guess, ok := u.Guess.(fitcheck.Size)
	if !ok || u.Why != reading.WhyUnits || u.Topic == nil || !guess.Complete() {
		return reading.Fact{}, false
	}
	a := t.askOf(u)
	if !slices.ContainsFunc(fitcheck.SizeTopics, func(topic fitcheck.Topic) bool {
		known, ok := t.talk.Value(topic, a.Unit).(fitcheck.Size)
		return ok && topic != a.Topic && inInches(known) && near(known, guess)
	}) {
		return t.sameUnit(u, a)
	}
	return reading.Fact{Topic: a.Topic, Unit: a.Unit, Value: guess, Said: u.Said}, true
}

// inInches says whether a size was surely measured in inches: it has tape fractions, or so many
// whole inches that their unit was asked for.
func inInches(s fitcheck.Size) bool {
	return slices.ContainsFunc([]fitcheck.Length{s.Width, s.Length, s.Diameter}, func(l fitcheck.Length) bool {
		return l%fitcheck.Inch != 0 && l%fitcheck.Sixteenth == 0 || l > mostPlain && l%fitcheck.Inch == 0
	})
}

// mostPlain is how long a side without a unit is taken to be in inches.
const mostPlain = 96 * fitcheck.Inch

func near(a, b fitcheck.Size) bool {
	return distance(a.Width, b.Width) <= reading.FarSizes && distance(a.Length, b.Length) <= reading.FarSizes &&
		distance(a.Diameter, b.Diameter) <= reading.FarSizes
}

// sameUnit settles a number without a unit as in the one that was named with another size of the
// same skylight, where the two then lie close by: "648 x 1257 mm", "603 by 1210".
func (t *turn) sameUnit(u reading.Unclear, a Ask) (reading.Fact, bool) {
	for _, topic := range fitcheck.SizeTopics {
		e := t.talk.entry(topic, a.Unit)
		if e == nil || topic == a.Topic {
			continue
		}
		known, _ := e.Value.(fitcheck.Size)
		for _, unit := range metricOf(known) {
			r := reading.Read(reading.Input{Text: u.Said + " " + unit, Asked: []fitcheck.Topic{a.Topic}, Units: t.talk.UnitCount(), Language: t.talk.Language})
			for _, f := range r.Facts {
				if now, ok := f.Value.(fitcheck.Size); ok && f.Topic == a.Topic && now.Complete() && near(known, now) {
					f.Unit, f.Said = a.Unit, u.Said
					return f, true
				}
			}
		}
	}
	return reading.Fact{}, false
}

// metricOf are the units that a size was told in where it surely was no inch: whole millimeters
// that no tape in inches shows.
func metricOf(s fitcheck.Size) []string {
	for _, l := range []fitcheck.Length{s.Width, s.Length, s.Diameter} {
		if l > 0 && (l%fitcheck.Sixteenth == 0 || l%fitcheck.Millimetre != 0) {
			return nil
		}
	}
	if !s.Complete() {
		return nil
	}
	return []string{"cm", "mm"}
}

// unitCarried reads a size without a unit in the one that was named with the size before, where it
// goes with that only so: "64 x 64 cm", "60 x 60".
func (t *turn) unitCarried(r reading.Reading) reading.Reading {
	for k, f := range r.Facts {
		size, ok := f.Value.(fitcheck.Size)
		unit := f.Unit
		if unit == 0 {
			unit = t.focus()
		}
		if !ok || !size.Complete() || namedUnit.MatchString(f.Said) || t.goesWith(f, unit) != misfits {
			continue
		}
		topic := f.Topic
		u := reading.Unclear{Topic: &topic, Unit: unit, Said: f.Said, Why: reading.WhyUnits}
		if metric, ok := t.sameUnit(u, Ask{topic, unit}); ok && t.goesWith(metric, unit) == fits {
			r.Facts = slices.Clone(r.Facts)
			r.Facts[k].Value = metric.Value
		}
	}
	return r
}

// namedUnit is any unit that is named with a length.
var namedUnit = regexp.MustCompile(`(?i)["'”’″′]|\b(in|inch\w*|feet|foot|ft|pulgadas?|pies?|\d*mm|\d*cm|millim\w+|centim\w+)\b`)
