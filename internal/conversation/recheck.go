package conversation

import (
	"fmt"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// recheck puts the first question that the numbers raise and that was not put yet. A
// finding is asked about once; where the numbers still contradict each other after that,
// once more, about another measure that would settle it, then it goes to staff.
func (t *turn) recheck() (bool, error) {
	for i, r := range t.check.Units {
		for _, f := range r.Findings {
			if f.Severity == fitcheck.Note || t.talk.Memory.Out[i+1] || !f.Topic.OfLength() || t.awaits(f, i) {
				continue
			}
			if topic, ok := t.raise(f, i+1, r.Verdict); ok {
				f.Topic = topic
				return true, t.askFinding(f, Ask{topic, i + 1})
			}
		}
	}
	return false, nil
}

// awaits says whether a second measure is still to come that settles by itself whether
// a round figure is a real one.
func (t *turn) awaits(f fitcheck.Finding, unit int) bool {
	return f.Code == fitcheck.NominalSize && slices.ContainsFunc(t.measurement(), func(s step) bool {
		return s.asks[0].Unit == unit+1 && s.asks[0].Topic != f.Topic
	})
}

// raise says which measure to ask about for a finding, if any still, and remembers that.
func (t *turn) raise(f fitcheck.Finding, unit int, verdict fitcheck.Verdict) (fitcheck.Topic, bool) {
	m, most := &t.talk.Memory, 1
	if contradicts(verdict) || len(t.heard.repeated) > 0 {
		most = maxTries // a number said again is no yes to "is it double lumber?"
	}
	key := fmt.Sprintf("%s@%d", f.Code, unit)
	if m.Raised[key] >= most || m.Raised[key] > 0 && len(t.heard.entries)+len(t.heard.repeated) == 0 {
		return "", false // asked, and nothing came of it
	}
	// What a number is and whether it can be right are two questions: the tries of the
	// first don't count here.
	for _, topic := range append([]fitcheck.Topic{f.Topic}, f.Settle...) {
		if asked := fmt.Sprintf("%s@%d", topic, unit); m.Raised[asked] == 0 && topic.OfLength() {
			m.Raised[key]++
			m.Raised[asked]++
			return topic, true
		}
	}
	return "", false
}

func (t *turn) askFinding(f fitcheck.Finding, a Ask) error {
	m := &t.talk.Memory
	s := step{Rechecking, []Ask{a}}
	t.say.add(t.unitLabel(a.Unit) + t.findingLine(f, a.Unit, m.Raised[fmt.Sprintf("%s@%d", f.Code, a.Unit)]-1))
	t.safety(s.state)
	m.Asking = s.asks
	m.Tries[a]++
	t.say.picture = pictureOf(f.Topic)
	return t.move(Rechecking)
}

func (t *turn) findingLine(f fitcheck.Finding, unit, nth int) string {
	args := wording.Args{"label": t.label(f.Topic), "text": f.Text, "said": t.shown(f.Topic, unit),
		"outside": t.shown(fitcheck.TopicCurbOutside, unit), "inside": t.shown(fitcheck.TopicCurbInside, unit),
		"plastic": t.shown(fitcheck.TopicPlasticSize, unit), "frame": t.shown(fitcheck.TopicFrameInside, unit),
		"diagonals": t.shown(fitcheck.TopicCurbDiagonals, unit)}
	for name, key := range map[string]string{"expected": "expected_in", "found": "found_in", "wall": "wall_in"} {
		if v, ok := f.Numbers[key]; ok {
			args[name] = t.length(sixteenths(fitcheck.FromInches(v)))
		}
	}
	key := "find." + string(f.Code)
	if f.Slip != "" {
		key = "find.slip." + string(f.Slip)
	}
	if !t.book.Has(key) || !filled(t.book.Placeholders(key), args) {
		key = "find.other"
		if strings.HasSuffix(f.Text, "?") {
			key = "find.question"
		}
	}
	return t.line(key, nth, args)
}

// filled says whether all that a sentence wants is there.
func filled(names []string, args wording.Args) bool {
	for _, n := range names {
		if args[n] == "" {
			return false
		}
	}
	return true
}

// sixteenths rounds a length to what a tape shows.
func sixteenths(l fitcheck.Length) fitcheck.Length {
	return (l + fitcheck.Sixteenth/2) / fitcheck.Sixteenth * fitcheck.Sixteenth
}
