package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A frame that is wanted in bronze, while it is open which of the two bronze finishes.

var bronzeSaid = regexp.MustCompile(`(?i)\bbron[zc]e`)

// wantsBronze notes that a frame is wanted in bronze. Another finish that stood is so no more,
// whatever is said to the question which bronze it is.
func (t *turn) wantsBronze(u reading.Unclear) {
	if u.Topic == nil || *u.Topic != fitcheck.TopicFinish || u.Why != reading.WhyChoice || !bronzeSaid.MatchString(u.Said) {
		return
	}
	a, m := t.askOf(u), &t.talk.Memory
	switch t.talk.text(a.Topic, a.Unit) {
	case fitcheck.FinishBronzeAnodized, fitcheck.FinishBronzePowderCoat:
		return // one of the two, told before
	case "":
	default:
		t.talk.retract(a.Topic, a.Unit)
		m.Relisted = m.Relisted || t.summed()
	}
	m.Bronze[a.Unit] = true
}

// chosenAtLast takes a choice that is told with a doubt, where it may not be asked for again: it is a
// wish and no measure, and the list shows it.
func (t *turn) chosenAtLast(u reading.Unclear) (reading.Fact, bool) {
	if u.Topic == nil || u.Why != reading.WhyRough || u.Guess == nil || !slices.Contains(choiceTopics, *u.Topic) || t.mayAsk(t.askOf(u)) {
		return reading.Fact{}, false
	}
	return reading.Fact{Topic: *u.Topic, Unit: u.Unit, Value: u.Guess, Said: u.Said}, true
}

var paintedSaid = regexp.MustCompile(`(?i)\b(?:painted|pintad[oa])\b`)

// paintedBronze: of the two bronze finishes the painted one is the powder coat, where bronze was named
// or which of them was asked. It is so for all kinds that were asked about where none is named.
func (t *turn) paintedBronze(u reading.Unclear) []reading.Fact {
	m := &t.talk.Memory
	if u.Topic == nil || *u.Topic != fitcheck.TopicFinish || !t.isAsked(*u.Topic) || !paintedSaid.MatchString(u.Said) || !m.Bronze[t.askOf(u).Unit] && m.Tries[t.askOf(u)] < 2 {
		return nil
	}
	var facts []reading.Fact
	for _, a := range m.Asking {
		if a.Topic == fitcheck.TopicFinish && (u.Unit == 0 || u.Unit == a.Unit) {
			facts = append(facts, reading.Fact{Topic: a.Topic, Unit: a.Unit, Value: fitcheck.Choice(fitcheck.FinishBronzePowderCoat), Said: u.Said})
		}
	}
	return facts
}

// namesBronze: a finish is named by what tells the two bronzes apart.
var namesBronze = regexp.MustCompile(`(?i)\b(?:ann?odi[sz]ed|powder ?-?coat(?:ed|ing)?|anodizad[oa]|(?:al|en) polvo)\b`)

// bronzeNamed takes "anodized", told to the list, as the finish: the list says that it is open, and the word alone is no
// answer to "is that right?".
func (t *turn) bronzeNamed(r reading.Reading, text string) reading.Reading {
	finish := fitcheck.TopicFinish
	told := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == finish }) ||
		slices.ContainsFunc(r.Unclear, func(u reading.Unclear) bool { return u.Topic != nil && *u.Topic == finish })
	asks := slices.Contains(r.Requests, reading.RequestQuestion)
	if told || asks || !t.summed() || !t.finishOffered() || !namesBronze.MatchString(text) {
		return r
	}
	for _, f := range t.read(text, []fitcheck.Topic{finish}).Facts {
		bronze := f.Value == fitcheck.Choice(fitcheck.FinishBronzeAnodized) ||
			f.Value == fitcheck.Choice(fitcheck.FinishBronzePowderCoat)
		if f.Topic == finish && bronze {
			r.Facts = append(slices.Clone(r.Facts), f)
		}
	}
	return r
}

// finishOffered says whether the customer was asked for a finish, or wants a frame in bronze.
func (t *turn) finishOffered() bool {
	m := &t.talk.Memory
	return slices.ContainsFunc(t.eachUnit(fitcheck.TopicFinish), func(a Ask) bool { return m.Tries[a] > 0 || m.Bronze[a.Unit] })
}

// whichBronze says whether "bronze" has to be asked about once more, however often a finish was asked for: which of the
// two is another question.
func (t *turn) whichBronze(a Ask) bool {
	m := &t.talk.Memory
	key := "which bronze " + a.String()
	if a.Topic != fitcheck.TopicFinish || !t.isAsked(a.Topic) || !m.Bronze[a.Unit] || t.talk.UnitCount() > 1 || m.Raised[key] > 0 {
		return false
	}
	m.Raised[key]++
	return true
}
