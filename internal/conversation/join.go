package conversation

import (
	"reflect"
	"strings"
	"time"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// A person may write on two ways about one skylight: texts from the roof, photos by mail.
// What joins such talks must never show one person's facts to another, so that the ref
// of a talk, which can be guessed or seen over a shoulder, is half of what it takes.

// SamePerson says whether a talk is of the same person as the one that it claims. One who
// names the ref must also name its number or address, or both its name and its place: a
// name alone is on every letterbox, and half a town shares a ZIP code. One whose number
// or address was given there must go by the same name: anybody can give another's number.
func SamePerson(claiming, claimed Talk) bool {
	if claiming.Memory.Given {
		return sameName(claiming, claimed)
	}
	return sameReach(claiming, claimed) || sameName(claiming, claimed) && samePlace(claiming, claimed)
}

// sameReach: one names the number or address of the other. An address on an envelope that
// nobody stands behind counts for nothing.
func sameReach(a, b Talk) bool {
	if a.Memory.Unproven {
		a.Email = ""
	}
	for _, x := range a.ways() {
		for _, y := range b.ways() {
			if strings.EqualFold(x, y) {
				return true
			}
		}
	}
	return false
}

// ways are the numbers and addresses of a talk, those that wrote and those that were given.
func (t *Talk) ways() []string {
	var all []string
	for _, way := range []string{t.Phone, t.Email, t.text(fitcheck.TopicPhone, 0), t.text(fitcheck.TopicEmail, 0)} {
		if way != "" {
			all = append(all, way)
		}
	}
	return all
}

func sameName(a, b Talk) bool {
	x, y := a.text(fitcheck.TopicName, 0), b.text(fitcheck.TopicName, 0)
	return x != "" && strings.EqualFold(strings.Join(strings.Fields(x), " "), strings.Join(strings.Fields(y), " "))
}

func samePlace(a, b Talk) bool {
	x, y := a.Place(), b.Place()
	if x.ZIP != "" && y.ZIP != "" {
		return x.ZIP == y.ZIP
	}
	return x.City != "" && x.State != "" && x.State == y.State && strings.EqualFold(x.City, y.City)
}

// NameOf is the name that a talk's customer gave, empty where not known.
func NameOf(t Talk) string { return t.text(fitcheck.TopicName, 0) }

// Join lets a talk go on with what was said in another that turned out to be of the same
// person. number gives the other's messages their numbers in this talk.
func Join(into, from Talk, number func(n int) int, now time.Time, shop *Shop) (Outcome, error) {
	t, err := begin(into, now, shop)
	if err != nil {
		return Outcome{}, err
	}
	t.talk.Channel = from.Channel
	t.adopt(from, number)
	m := &t.talk.Memory
	m.LastAt, m.Nudges, m.Barren, m.Introduced = now, 0, 0, true
	m.Unproven = m.Unproven || from.Memory.Unproven
	if m.Total == 0 {
		m.Total = from.Memory.Total
	}
	if t.elsewhere() {
		if err := t.unsilence(); err != nil {
			return Outcome{}, err
		}
	}
	t.runCheck()
	if m.Quiet || t.talk.State == Silenced {
		t.out.Alert = true
		return t.end()
	}
	t.say.add(t.line("join.done", 0, wording.Args{"ref": t.talk.Ref}))
	if t.talk.State == HandedOver || t.talk.State == WithStaff {
		t.out.Alert = true
		t.say.add(t.vary("end.passed", wording.Args{"ref": t.talk.Ref}))
		return t.end()
	}
	if err := t.proceed(); err != nil {
		return Outcome{}, err
	}
	return t.end()
}

// adopt adds the other talk's facts to the ledger, as said in its messages.
func (t *turn) adopt(from Talk, number func(n int) int) {
	shift := 0
	if t.contradicts(from) {
		shift = t.talk.UnitCount()
	}
	before, _ := t.talk.Value(fitcheck.TopicPhotos, 0).(fitcheck.Whole)
	for _, e := range from.Ledger {
		if e.Undone || e.Topic == fitcheck.TopicConfirm {
			continue
		}
		e.Message = number(e.Message)
		if e.Unit > 0 {
			e.Unit += shift
		}
		if photos, ok := e.Value.(fitcheck.Whole); ok && e.Topic == fitcheck.TopicPhotos {
			e.Value = before + photos
		}
		t.talk.add(e)
	}
}

// contradicts says whether the other talk's units are other ones than this talk's.
func (t *turn) contradicts(from Talk) bool {
	for _, e := range from.Ledger {
		if e.Unit == 0 || e.Undone {
			continue
		}
		if now := t.talk.entry(e.Topic, e.Unit); now != nil && !reflect.DeepEqual(now.Value, e.Value) {
			return true
		}
	}
	return false
}
