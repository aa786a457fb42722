package conversation

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// The list that the customer is asked to say yes to.

// mostLists is how many lists are asked about at the most, each with what was put right in the one
// before; a person goes on from there, since nobody said yes.
const mostLists = 5

// relisted says whether something was heard that the list shows, so that it is another list.
func (t *turn) relisted() bool {
	if t.countsConfirmed() {
		return false
	}
	return t.heard.dropped || slices.ContainsFunc(t.heard.entries, func(e Entry) bool {
		return !t.isOne(e) && (e.Topic.OfLength() || slices.Contains(summaryTopics, e.Topic) || slices.Contains(listedToo, e.Topic))
	})
}

// justOne says whether all that was heard is that one is needed; the list of one says no number.
func (t *turn) justOne() bool {
	return !t.heard.dropped && !slices.ContainsFunc(t.heard.entries, func(e Entry) bool { return !t.isOne(e) })
}

func (t *turn) isOne(e Entry) bool {
	return e.Topic == fitcheck.TopicCount && e.Value == fitcheck.Value(fitcheck.Whole(1)) && t.talk.UnitCount() < 2
}

// listedToo are topics that the list shows beside the choices and sizes, or that change the part
// in it.
var listedToo = []fitcheck.Topic{fitcheck.TopicName, fitcheck.TopicPlace, fitcheck.TopicUse, fitcheck.TopicCount,
	fitcheck.TopicStyle, fitcheck.TopicFrameCondition, fitcheck.TopicWant}

// confirmation asks for a yes to the list, where there is something to order: to one list as often
// as to any question, to one that was put right anew.
func (t *turn) confirmation() []step {
	a, m := Ask{Topic: fitcheck.TopicConfirm}, &t.talk.Memory
	enough := m.Tries[a] >= maxTries
	if m.Relisted {
		enough = m.Said["summary.head"] >= mostLists
	}
	if m.LeftOut != "" || m.Confirmed || !t.measured() || enough {
		return nil
	}
	asks := []Ask{a}
	if t.talk.UnitCount() < 2 {
		asks = append(asks, t.openOf(Ask{fitcheck.TopicCount, 1})...) // the list can't say it
	}
	return asking(Confirming, asks)
}

// stillCounting asks for the number alone, once, where the list got its yes and the question how
// many beside it no answer: a list of one can't say it.
func (t *turn) stillCounting() []step {
	a, m := Ask{fitcheck.TopicCount, 1}, &t.talk.Memory
	if !m.Confirmed || m.Said["ask.count_last"] > 0 || t.talk.UnitCount() > 1 || m.LetGo[a] || m.Out[1] || t.talk.Value(a.Topic, 1) != nil || !t.isAsked(a.Topic) {
		return nil
	}
	return asking(Confirming, []Ask{a})
}

// countsConfirmed says whether only the number was asked, after the yes to the list: the number
// that comes then is no other list.
func (t *turn) countsConfirmed() bool {
	return t.talk.Memory.Confirmed && t.isAsked(fitcheck.TopicCount) && !t.isAsked(fitcheck.TopicConfirm) &&
		!slices.ContainsFunc(t.heard.entries, func(e Entry) bool { return e.Topic != fitcheck.TopicCount })
}

// settleConfirm takes a yes to the list, not to one that is put right with it.
func (t *turn) settleConfirm() {
	if t.isAsked(fitcheck.TopicConfirm) && t.heard.confirm == fitcheck.ConfirmYes && !t.corrects() {
		t.talk.Memory.Confirmed = true
	}
}

// corrects says whether something that stood was put right; a yes after a no is no such thing.
func (t *turn) corrects() bool {
	return slices.ContainsFunc(t.heard.changed, func(e Entry) bool { return e.Topic != fitcheck.TopicConfirm })
}

func (t *turn) refusesSummary() bool {
	return t.isAsked(fitcheck.TopicConfirm) && t.heard.confirm == fitcheck.ConfirmNo && len(t.heard.entries) <= 1 &&
		!slices.ContainsFunc(t.heard.entries, func(e Entry) bool { return e.Topic != fitcheck.TopicConfirm }) &&
		len(t.heard.unclear) == 0
}

// askChange asks what is wrong with the list; where it was asked about often enough, a
// person goes on.
func (t *turn) askChange() error {
	a, m := Ask{Topic: fitcheck.TopicConfirm}, &t.talk.Memory
	if m.Tries[a] >= maxTries || m.Said["ask.change"] >= maxTries {
		return t.toStaff()
	}
	m.Tries[a]++
	m.Asking = []Ask{a}
	t.say.add(t.vary("ask.change", nil))
	return t.move(Confirming)
}
