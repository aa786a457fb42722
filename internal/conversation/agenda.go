package conversation

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// maxTries is how often one thing is asked at the most; then the talk goes on without it
// and leaves it to staff.
const maxTries = 2

// step is what to do next: ask some things, in a state; without asks the talk is done.
type step struct {
	state State
	asks  []Ask
}

// next is the most useful question that is still open; a mail takes all questions that
// don't hang on each other's answers at once.
func (t *turn) next() []step {
	for _, phase := range [][]func() []step{
		{t.person, t.building, t.style, t.condition},
		{t.decidingPhoto}, {t.measurement}, {t.counting}, {t.choices}, {t.confirmation}, {t.stillCounting},
	} {
		var steps []step
		for _, group := range phase {
			steps = append(steps, group()...)
		}
		if len(steps) > 0 && t.talk.Channel != Email {
			return steps[:1]
		}
		if len(steps) > 0 {
			return steps
		}
	}
	return nil
}

// asking is a step with these asks, none where there are none.
func asking(state State, asks []Ask) []step {
	if len(asks) == 0 {
		return nil
	}
	return []step{{state, asks}}
}

// open says whether something is worth asking: not known, not let go, not asked enough.
func (t *turn) open(a Ask) bool {
	return t.talk.Value(a.Topic, a.Unit) == nil && t.mayAsk(a)
}

func (t *turn) mayAsk(a Ask) bool {
	return !t.talk.Memory.Out[a.Unit] && !t.talk.Memory.LetGo[a] && t.talk.Memory.Tries[a] < maxTries
}

// fresh says whether something is open and was never asked for.
func (t *turn) fresh(a Ask) bool { return t.open(a) && t.talk.Memory.Tries[a] == 0 }

func (t *turn) openOf(asks ...Ask) []Ask {
	return slices.DeleteFunc(asks, func(a Ask) bool { return !t.open(a) })
}

func (t *turn) person() []step {
	name, place := Ask{Topic: fitcheck.TopicName}, Ask{Topic: fitcheck.TopicPlace}
	asks := t.openOf(name, place)
	if p := t.talk.Place(); p.State == "" && p.City != "" && t.mayAsk(place) && !slices.Contains(asks, place) {
		asks = append(asks, place) // a town without its state
	}
	return asking(Introducing, asks)
}

func (t *turn) building() []step {
	if t.allBeyondUs() {
		return nil // a person sees to it anyway
	}
	asks := t.openOf(Ask{Topic: fitcheck.TopicUse})
	if len(asks) == 0 {
		return nil
	}
	if t.talk.UnitCount() < 2 {
		asks = append(asks, t.openOf(Ask{fitcheck.TopicCount, 1})...)
	}
	return asking(Introducing, append(asks, t.openOf(Ask{Topic: fitcheck.TopicProblem})...))
}

func (t *turn) style() []step {
	asks := t.openOf(t.eachUnit(fitcheck.TopicStyle)...)
	if len(asks) > 0 {
		asks = append(asks, t.howMany()...)
	}
	return asking(Identifying, asks)
}

// howMany goes along with another question where the building was told unasked, so that the
// number was not asked beside it.
func (t *turn) howMany() []Ask {
	a := Ask{fitcheck.TopicCount, 1}
	if t.talk.UnitCount() > 1 || !t.fresh(a) || t.open(Ask{Topic: fitcheck.TopicUse}) {
		return nil
	}
	return []Ask{a}
}

func (t *turn) condition() []step {
	if t.allBeyondUs() || t.photoFirst() {
		return nil
	}
	var asks []Ask
	for i, u := range t.units() {
		switch {
		case keepsFrame(u) && u.Want == "" && u.CurbOutside.Complete() && !u.PlasticSize.Complete():
			asks = append(asks, t.openOf(Ask{fitcheck.TopicWant, i + 1})...) // measured as for a unit
		case keepsFrame(u) && t.talk.UnitCount() < 2:
			asks = append(asks, t.openOf(Ask{fitcheck.TopicFrameCondition, i + 1}, Ask{fitcheck.TopicWant, i + 1})...)
		case keepsFrame(u):
			// With several units "both" would say too much: of which, or of dome and frame.
			asks = append(asks, t.openOf(Ask{fitcheck.TopicFrameCondition, i + 1})...)
		}
	}
	problem := Ask{Topic: fitcheck.TopicProblem}
	if len(asks) > 0 && !t.open(problem) {
		asks = append(asks, t.howMany()...)
	}
	if len(asks) > 0 || t.talk.Memory.Tries[problem] == 0 {
		asks = append(t.openOf(problem), asks...) // not worth a second message of its own
	}
	return asking(Identifying, asks)
}

// photoFirst says whether a photo is asked for before the frame is: who can't tell what is up
// there can't tell either whether a metal frame is sound.
func (t *turn) photoFirst() bool {
	unsure := slices.ContainsFunc(t.units(), func(u fitcheck.Unit) bool { return u.Style == fitcheck.StyleUnsure })
	return unsure && t.talk.Channel != Email && len(t.decidingPhoto()) > 0
}

// keepsFrame says whether the frame's condition can change what is to be replaced.
func keepsFrame(u fitcheck.Unit) bool {
	switch u.Style {
	case fitcheck.StyleCurbMount, fitcheck.StyleUnsure, "":
		return u.Want != fitcheck.WantCompleteUnit && u.FrameCondition == ""
	}
	return false
}

// units are the kinds of unit of the talk; where none was spoken of yet, there is one.
func (t *turn) units() []fitcheck.Unit {
	if units := t.talk.Units(); len(units) > 0 {
		return units
	}
	return make([]fitcheck.Unit, 1)
}

func (t *turn) eachUnit(topic fitcheck.Topic) []Ask {
	asks := make([]Ask, len(t.units()))
	for i := range asks {
		asks[i] = Ask{topic, i + 1}
	}
	return asks
}

// decidingPhoto asks for a photo before any measure where it decides which part is to
// be measured for.
func (t *turn) decidingPhoto() []step {
	return t.photoWhere(func(r fitcheck.UnitResult) bool {
		return slices.Contains(r.Reasons, fitcheck.ReasonPhotoDecides)
	})
}

func (t *turn) photo() []step {
	if t.talk.Memory.Tries[Ask{Topic: fitcheck.TopicPhotos}] > 0 {
		return nil
	}
	return t.photoWhere(func(fitcheck.UnitResult) bool { return true })
}

// photoWhere asks for a photo if a unit that fits wants one.
func (t *turn) photoWhere(fits func(fitcheck.UnitResult) bool) []step {
	a := Ask{Topic: fitcheck.TopicPhotos}
	for i, r := range t.check.Units {
		if len(r.PhotosWanted) > 0 && fits(r) && t.open(a) && !t.beyondUs(i) {
			t.talk.Memory.PhotoOf = r.PhotosWanted[0]
			return asking(Picturing, []Ask{a})
		}
	}
	return nil
}

// measurement asks for the measurements that are missing. In a mail the one that will bear
// out another goes with it the first time, so that nobody gets the tape out twice; in a text
// each is asked by itself, since who answers two with one number rarely says which.
func (t *turn) measurement() []step {
	var steps []step
	for i, r := range t.check.Units {
		for _, topic := range r.Missing {
			a, check := Ask{topic, i + 1}, Ask{r.CheckedBy, i + 1}
			if !topic.OfLength() || !t.mayAsk(a) || t.complete(a) {
				continue
			}
			asks := []Ask{a}
			if t.talk.Channel == Email && check.Topic != "" && t.fresh(a) && t.fresh(check) {
				asks = append(asks, check)
			}
			steps = append(steps, step{Measuring, asks})
		}
	}
	return steps
}

// complete says whether a size has both its sides.
func (t *turn) complete(a Ask) bool {
	switch v := t.talk.Value(a.Topic, a.Unit).(type) {
	case nil:
		return false
	case fitcheck.Size:
		return v.Complete()
	case fitcheck.Diagonals:
		return v.Second > 0
	}
	return true
}

// choiceTopics are the choices that the shop asks for, in order.
var choiceTopics = []fitcheck.Topic{fitcheck.TopicLayers, fitcheck.TopicColor, fitcheck.TopicMaterial, fitcheck.TopicFinish}

// choices asks all that is still to be chosen at once, for all units together: people
// want the same for all of them, and say so where they don't. A photo that would help
// goes with the list; it is no reason to ask a second time.
func (t *turn) choices() []step {
	var asks []Ask
	for _, topic := range choiceTopics {
		if t.noChoice(topic) {
			continue
		}
		for i, r := range t.check.Units {
			a := Ask{topic, i + 1}
			if slices.Contains(r.Missing, topic) && t.open(a) && !t.beyondUs(i) {
				asks = append(asks, a)
			}
		}
	}
	photo := t.photo()
	if len(asks) == 0 || len(photo) == 0 {
		return append(asking(Choosing, asks), photo...)
	}
	return asking(Choosing, append(asks, photo[0].asks...))
}

// measured says whether any unit has a size to confirm.
func (t *turn) measured() bool {
	for _, u := range t.talk.Units() {
		for _, topic := range fitcheck.SizeTopics {
			if u.SizeOf(topic).Complete() {
				return true
			}
		}
	}
	return false
}

// beyondUs says whether a unit goes to a person whatever it measures.
func (t *turn) beyondUs(unit int) bool {
	if unit >= len(t.check.Units) {
		return false
	}
	r := t.check.Units[unit]
	return r.Replace == fitcheck.ReplaceStaff && !slices.Contains(r.Reasons, fitcheck.ReasonPhotoDecides)
}

func (t *turn) allBeyondUs() bool {
	for i := range t.check.Units {
		if !t.beyondUs(i) {
			return false
		}
	}
	return len(t.check.Units) > 0
}
