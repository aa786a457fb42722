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

// next is the most useful question that is still open.
func (t *turn) next() step {
	for _, group := range []func() step{t.introduction, t.identification, t.decidingPhoto, t.measurement,
		t.choices, t.photo, t.confirmation} {
		if s := group(); len(s.asks) > 0 {
			return s
		}
	}
	return step{}
}

// open says whether something is worth asking: not known, not let go, not asked enough.
func (t *turn) open(a Ask) bool {
	return t.talk.Value(a.Topic, a.Unit) == nil && t.mayAsk(a)
}

func (t *turn) mayAsk(a Ask) bool {
	return !t.talk.Memory.LetGo[a] && t.talk.Memory.Tries[a] < maxTries
}

func (t *turn) openOf(asks ...Ask) []Ask {
	return slices.DeleteFunc(asks, func(a Ask) bool { return !t.open(a) })
}

func (t *turn) introduction() step {
	name, place := Ask{Topic: fitcheck.TopicName}, Ask{Topic: fitcheck.TopicPlace}
	asks := t.openOf(name, place)
	if p := t.talk.Place(); p.State == "" && p.City != "" && t.mayAsk(place) && !slices.Contains(asks, place) {
		asks = append(asks, place) // a town without its state
	}
	if len(asks) > 0 {
		return step{Introducing, asks}
	}
	if t.allBeyondUs() {
		return step{} // a person sees to it anyway
	}
	asks = t.openOf(Ask{Topic: fitcheck.TopicUse})
	if len(asks) > 0 && t.talk.UnitCount() < 2 {
		asks = append(asks, t.openOf(Ask{fitcheck.TopicCount, 1})...)
	}
	return step{Introducing, asks}
}

func (t *turn) identification() step {
	if asks := t.openOf(t.eachUnit(fitcheck.TopicStyle)...); len(asks) > 0 {
		return step{Identifying, asks}
	}
	asks := t.openOf(Ask{Topic: fitcheck.TopicProblem})
	for i, u := range t.units() {
		if keepsFrame(u) {
			asks = append(asks, t.openOf(Ask{fitcheck.TopicFrameCondition, i + 1})...)
		}
	}
	if len(asks) == 1 && asks[0].Topic == fitcheck.TopicProblem && t.allBeyondUs() {
		asks = nil // a person sees to it anyway
	}
	return step{Identifying, asks}
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
func (t *turn) decidingPhoto() step {
	for i, r := range t.check.Units {
		if slices.Contains(r.Reasons, fitcheck.ReasonPhotoDecides) {
			if s := t.photoOf(i, r); len(s.asks) > 0 {
				return s
			}
		}
	}
	return step{}
}

func (t *turn) photo() step {
	for i, r := range t.check.Units {
		if s := t.photoOf(i, r); len(s.asks) > 0 {
			return s
		}
	}
	return step{}
}

func (t *turn) photoOf(unit int, r fitcheck.UnitResult) step {
	asks := t.openOf(Ask{Topic: fitcheck.TopicPhotos})
	if len(r.PhotosWanted) == 0 || len(asks) == 0 || t.beyondUs(unit) {
		return step{}
	}
	t.talk.Memory.PhotoOf = r.PhotosWanted[0]
	return step{Picturing, asks}
}

// measurement asks one measurement of one unit at a time.
func (t *turn) measurement() step {
	for i, r := range t.check.Units {
		for _, topic := range r.Missing {
			a := Ask{topic, i + 1}
			if topic.OfLength() && t.mayAsk(a) && !t.complete(a) {
				return step{Measuring, []Ask{a}}
			}
		}
	}
	return step{}
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
// want the same for all of them, and say so where they don't.
func (t *turn) choices() step {
	var asks []Ask
	for _, topic := range choiceTopics {
		for i, r := range t.check.Units {
			a := Ask{topic, i + 1}
			if slices.Contains(r.Missing, topic) && t.open(a) {
				asks = append(asks, a)
			}
		}
	}
	return step{Choosing, asks}
}

// confirmation asks for a yes to the summary, where there is something to order.
func (t *turn) confirmation() step {
	a := Ask{Topic: fitcheck.TopicConfirm}
	if t.talk.Memory.Confirmed || t.talk.Memory.Tries[a] >= maxTries || !t.measured() {
		return step{}
	}
	return step{Confirming, []Ask{a}}
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
