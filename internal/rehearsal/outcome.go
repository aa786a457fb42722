package rehearsal

import (
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// mistakeOutcome is what became of a wrong measure.
type mistakeOutcome string

const (
	none     mistakeOutcome = ""
	unsaid   mistakeOutcome = "never said"
	putRight mistakeOutcome = "put right"
	passed   mistakeOutcome = "left to a person"
	stood    mistakeOutcome = "asked about, and not cleared up"
	uncaught mistakeOutcome = "not caught"
	alone    mistakeOutcome = "not caught, nothing to check it against"
	harmless mistakeOutcome = "not caught, and the part is right"
)

// mistakeOutcome says what became of this customer's mistake.
func (v *visit) mistakeOutcome() mistakeOutcome {
	if v.mistake.name == "" {
		return none
	}
	s := &v.truth.units[0]
	main, told := v.talk.Value(s.sizeOf, 1).(fitcheck.Size)
	_, checked := v.talk.Value(s.checkOf, 1).(fitcheck.Size)
	wrong, wrongTold := v.talk.Value(v.wrong, 1).(fitcheck.Size)
	tolerance := 3 * fitcheck.Inch / 8
	right := func(g fitcheck.Size, topic fitcheck.Topic) bool { return within(g, s.sizes[topic], s.round, tolerance) }
	switch {
	case !wrongTold || !told:
		return unsaid
	case right(main, s.sizeOf) && right(wrong, v.wrong):
		return putRight
	case v.talk.Lead.Status != conversation.StatusReady:
		return passed
	case len(v.talk.Memory.Raised) > 0:
		return stood
	case right(main, s.sizeOf):
		return harmless
	case !checked:
		return alone
	}
	return uncaught
}

func within(g fitcheck.Size, p pair, round bool, tolerance fitcheck.Length) bool {
	if round {
		return g.Diameter > 0 && (pair{g.Diameter, g.Diameter}).off(pair{p[0], p[0]}) <= tolerance
	}
	return (pair{g.Width, g.Length}).off(p) <= tolerance
}
