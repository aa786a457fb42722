package conversation

import (
	"encoding/json"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// clarify asks about the first thing that the messages left unclear, if it matters
// still and was not asked enough.
func (t *turn) clarify() (bool, error) {
	var first *reading.Unclear
	for n := range t.heard.unclear {
		u := &t.heard.unclear[n]
		a := t.askOf(*u)
		closed := !t.mayAsk(a) && !t.reopens(*u, a) && !t.whichBronze(a)
		if closed || t.alreadyClear(*u, a) || t.talk.Memory.Out[a.Unit] || t.idleMeasure(*u, a) {
			continue
		}
		if a.Topic.OfSize() && u.Why != whySide && t.early() {
			t.hold(*u, a)
		} else if first == nil {
			first = u
		} else if a.Topic.OfSize() && t.pendingOf(*u, a).worthKeeping() && a.Unit != t.askOf(*first).Unit {
			t.hold(*u, a) // that of another kind, in its turn
		}
	}
	if first == nil {
		return false, nil
	}
	return true, t.askClear(*first, t.askOf(*first))
}

// reopens says whether an unclear measure is cleared up, once, however often it was asked
// for before: what a number that was told is of is another question, and one told to the
// summary puts in question what stands in it.
func (t *turn) reopens(u reading.Unclear, a Ask) bool {
	m := &t.talk.Memory
	key := "reopened " + a.String()
	told := u.Why == reading.WhyUnits || u.Why == reading.WhyWhich || u.Why == whySide
	inSummary := t.talk.State == Confirming && t.talk.entry(a.Topic, a.Unit) != nil
	if !a.Topic.OfLength() || !told && !inSummary || m.Raised[key] > 0 {
		return false
	}
	m.Raised[key]++
	return true
}

// early says whether things are still open that decide what is to be measured at all.
func (t *turn) early() bool {
	return len(t.person())+len(t.building())+len(t.style())+len(t.condition()) > 0
}

// hold keeps a size that came before its time, to be asked about in its turn.
func (t *turn) hold(u reading.Unclear, a Ask) {
	t.call(a.Unit, u.Said)
	held := t.pendingOf(u, a)
	if !held.worthKeeping() {
		return
	}
	m := &t.talk.Memory
	m.Early = slices.DeleteFunc(m.Early, func(p *Pending) bool { return p.Unit == a.Unit })
	m.Early = append(m.Early, held)
}

// call notes what a unit is called until it is measured.
func (t *turn) call(unit int, said string) {
	m := &t.talk.Memory
	if m.Called == nil {
		m.Called = map[int]string{}
	}
	if m.Called[unit] == "" {
		m.Called[unit] = said
	}
}

// askHeld asks about a size that was held, where a measurement of its unit is next.
func (t *turn) askHeld(s step) (bool, error) {
	m := &t.talk.Memory
	n := slices.IndexFunc(m.Early, func(p *Pending) bool {
		return s.state == Measuring && s.asks[0].Unit == p.Unit &&
			(p.Topic == "" || p.Topic == s.asks[0].Topic) &&
			(len(p.Candidates) == 0 || slices.Contains(t.withNeeded(p.Candidates, p.Unit), s.asks[0].Topic))
	})
	if n < 0 {
		return false, nil
	}
	p := m.Early[n]
	m.Early = slices.Delete(m.Early, n, n+1)
	u := reading.Unclear{Unit: p.Unit, Said: p.Said, Why: p.Why, Candidates: p.Candidates}
	if p.Topic != "" {
		u.Topic = &p.Topic
	}
	err := t.askClear(u, s.asks[0])
	t.talk.Memory.Pending.Message = p.Message // that told the size
	return true, err
}

// askOf is the question that an unclear bit belongs to.
func (t *turn) askOf(u reading.Unclear) Ask {
	topic := t.neededSize(u.Candidates)
	if u.Topic != nil {
		topic = *u.Topic
	}
	if !topic.OfUnit() {
		return Ask{Topic: topic}
	}
	unit := u.Unit
	if unit == 0 {
		unit = t.focus()
	}
	return Ask{topic, unit}
}

// neededSize is the size that a measure of unknown meaning most likely answers: one of
// the candidates, by preference the one that is needed next.
func (t *turn) neededSize(candidates []fitcheck.Topic) fitcheck.Topic {
	for _, s := range t.measurement() {
		if topic := s.asks[0].Topic; len(candidates) == 0 || slices.Contains(candidates, topic) {
			return topic
		}
	}
	if len(candidates) > 0 {
		return candidates[0]
	}
	return fitcheck.TopicCurbOutside
}

// alreadyClear says whether the same messages, or earlier ones, settled the topic.
func (t *turn) alreadyClear(u reading.Unclear, a Ask) bool {
	if u.Why == whySide || u.Why == reading.WhyWhich {
		return false
	}
	return slices.ContainsFunc(t.heard.entries, func(e Entry) bool { return e.Topic == a.Topic && e.Unit == a.Unit })
}

func (t *turn) askClear(u reading.Unclear, a Ask) error {
	t.talk.Memory.Pending = t.pendingOf(u, a)
	nth := t.talk.Memory.Tries[a]
	s := step{stateOf(a.Topic), t.alike(u, a)}
	label := ""
	if len(s.asks) == 1 {
		label = t.unitLabel(a.Unit)
	}
	t.say.add(label + t.clearLine(u, a, nth))
	if u.Why != reading.WhyWhich && u.Why != reading.WhyUnits && u.Why != whySide {
		t.safety(s.state) // those are settled without a tape
	}
	t.talk.Memory.Asking = s.asks
	key := "which " + a.String()
	if u.Why == reading.WhyWhich && a.Topic == fitcheck.TopicPlasticSize && t.talk.Memory.Raised[key] == 0 {
		t.talk.Memory.Raised[key]++ // once no asking for the plastic itself, which may still be to be measured
		return t.move(s.state)
	}
	for _, asked := range s.asks {
		t.talk.Memory.Tries[asked]++
	}
	return t.move(s.state)
}

// alike are the units for which an unclear answer is to be cleared up: all that the
// question was about, unless the answer named one.
func (t *turn) alike(u reading.Unclear, a Ask) []Ask {
	var asks []Ask
	for _, asked := range t.talk.Memory.Asking {
		if asked.Topic == a.Topic && u.Unit == 0 && shared(a.Topic) && t.mayAsk(asked) {
			asks = append(asks, asked)
		}
	}
	if len(asks) == 0 {
		return []Ask{a}
	}
	return asks
}

func (t *turn) pendingOf(u reading.Unclear, a Ask) *Pending {
	p := &Pending{Unit: a.Unit, Said: u.Said, Why: u.Why, Candidates: u.Candidates, Message: t.lastMessage}
	if u.Topic != nil {
		p.Topic = *u.Topic
	}
	if u.Unit == 0 && slices.Contains(choiceTopics, p.Topic) {
		p.Unit = 0 // of all kinds that it is asked for
	}
	if u.Guess != nil && u.Why == reading.WhyRough {
		p.Topic = a.Topic // what is asked for, a yes to it is the answer
		if raw, err := json.Marshal(u.Guess); err == nil {
			p.Guess = raw
		}
	}
	return p
}

// longGuess is how many letters of theirs people are asked to say yes to.
const longGuess = 60

func (t *turn) clearLine(u reading.Unclear, a Ask, nth int) string {
	args := wording.Args{"said": u.Said, "label": t.label(a.Topic)}
	if u.Why == reading.WhyRough && u.Guess != nil && a.Topic.OfLength() && len(strings.Fields(u.Said)) > 3 {
		args["said"] = t.value(a.Topic, u.Guess) // "sticks up about 4 inches" is no number to say yes to
	}
	if u.Why == reading.WhyRough && u.Guess != nil && a.Topic == fitcheck.TopicStyle && len(u.Said) <= longGuess {
		return t.line("clear.guess", nth, args) // a yes is enough
	}
	why := u.Why
	if why != reading.WhyPlace && !a.Topic.OfLength() {
		why = reading.WhyChoice // nobody can look at a choice to the nearest 1/16
	}
	switch why {
	case whySide:
		if s, ok := t.talk.Value(a.Topic, a.Unit).(fitcheck.Size); ok {
			args["a"], args["b"] = t.length(s.Width), t.length(s.Length)
			if s.Width == s.Length {
				return t.line("clear.square", nth, args)
			}
		}
		return t.line("clear.side", nth, args)
	case reading.WhyChoice, "":
		if key := "clear.choice." + string(a.Topic); t.book.Has(key) {
			return t.line(key, nth, args)
		}
		args["question"] = t.line("ask."+string(a.Topic), nth, nil)
		return t.line("clear.choice", nth, args)
	case reading.WhyWhich:
		args["options"] = t.options(t.withNeeded(u.Candidates, a.Unit))
	case reading.WhyPlace:
		if u.Said == "" || len(strings.Fields(u.Said)) > 4 {
			return t.line("ask.place", nth, nil)
		}
	}
	return t.line("clear."+string(why), nth, args)
}

// withNeeded adds the sheet to the several things that a size may be, where it is to be ordered and not
// measured yet.
func (t *turn) withNeeded(candidates []fitcheck.Topic, unit int) []fitcheck.Topic {
	sheet := fitcheck.TopicPlasticSize
	if len(candidates) < 3 || unit < 1 || slices.Contains(candidates, sheet) || t.replaceOf(unit-1) != fitcheck.ReplaceDome || t.talk.Value(sheet, unit) != nil {
		return candidates
	}
	return append([]fitcheck.Topic{sheet}, candidates...)
}

// whichOf are what a size can be where nothing says which.
var whichOf = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside, fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening}

// options names what a size may have measured, to choose from.
func (t *turn) options(candidates []fitcheck.Topic) string {
	if len(candidates) < 2 {
		candidates = whichOf
	}
	names := make([]string, len(candidates))
	for i, topic := range candidates {
		names[i] = t.label(topic)
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " " + t.line("or", 0, nil) + " " + names[last]
}

// stateOf is the state in which a topic is asked.
func stateOf(topic fitcheck.Topic) State {
	switch topic {
	case fitcheck.TopicName, fitcheck.TopicPlace, fitcheck.TopicUse, fitcheck.TopicCount, fitcheck.TopicEmail, fitcheck.TopicPhone:
		return Introducing
	case fitcheck.TopicLayers, fitcheck.TopicColor, fitcheck.TopicMaterial, fitcheck.TopicFinish, fitcheck.TopicImpactRisk:
		return Choosing
	case fitcheck.TopicPhotos:
		return Picturing
	case fitcheck.TopicConfirm:
		return Confirming
	}
	if topic.OfLength() || topic == fitcheck.TopicRoofSlope {
		return Measuring
	}
	return Identifying
}
