package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A summary is put right: "actually it's 30 1/4 not 30 1/2", "the second one is 30 x 30". What
// the words leave open the summary tells, since the customer has it before them, and it is
// shown once more with the new value.

// nearRight is how far a side that is put right lies from what stood at the most.
const nearRight = 2 * fitcheck.Inch

// notThat is what a correction says that it is not.
var notThat = regexp.MustCompile(`(?i)(?:\bnot|\binstead of|\brather than|\ben vez de|,? y? ?\bno)\s+(?:the |an? |el |la )?([\d¼½¾⅛⅜⅝⅞][\d /.\-¼½¾⅛⅜⅝⅞"'x]*)`)

// notSpoken is the same in words: "not 25 and a quarter", "no treinta y un cuarto".
var notSpoken = regexp.MustCompile(`(?i)(?:\bnot|\binstead of|\brather than|\ben vez de|,? y? ?\bno)\s+(?:the |el |la )?((?:\d+|[a-z]+(?:[ -][a-z]+)?) (?:and|y) (?:an? |un |one |three |five |seven |tres |cinco |siete )?(?:half|quarters?|eighths?|sixteenths?|medi[ao]|cuartos?|octavos?))\b`)

// putRight finds the size of the summary that a measure without a name puts right, where there
// is but one that it can be.
func (t *turn) putRight(u reading.Unclear, text string) (reading.Fact, bool) {
	now, ok := u.Guess.(fitcheck.Size)
	if !ok || u.Why != reading.WhyWhich || !t.summed() {
		return reading.Fact{}, false
	}
	var found []reading.Fact
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		if u.Unit > 0 && u.Unit != unit {
			continue
		}
		for _, topic := range fitcheck.SizeTopics {
			stands, ok := t.talk.Value(topic, unit).(fitcheck.Size)
			if !ok || len(u.Candidates) > 0 && !slices.Contains(u.Candidates, topic) {
				continue
			}
			named := len(u.Candidates) > 0 || oneSideNew(stands, now) && !namesAnother.MatchString(text)
			if v, ok := rightened(stands, now, t.denied(text), named); ok {
				found = append(found, reading.Fact{Topic: topic, Unit: unit, Value: v, Said: u.Said})
			}
		}
	}
	if len(found) != 1 {
		return reading.Fact{}, false
	}
	return found[0], true
}

// denied is the length that the words say it is not, 0 for none.
func (t *turn) denied(text string) fitcheck.Length {
	m := notSpoken.FindStringSubmatch(text)
	if m == nil {
		m = notThat.FindStringSubmatch(text)
	}
	if m == nil {
		return 0
	}
	r := reading.Read(reading.Input{Text: strings.TrimSpace(m[1]), Asked: []fitcheck.Topic{fitcheck.TopicCurbOutside}, Language: t.talk.Language})
	for _, f := range r.Facts {
		if s, ok := f.Value.(fitcheck.Size); ok {
			return s.One
		}
	}
	return 0
}

// rightened is a size with what puts it right, where that can be: both sides near those that
// stood or named, or the one side that was denied or lies near.
func rightened(stands, now fitcheck.Size, denied fitcheck.Length, named bool) (fitcheck.Value, bool) {
	if !stands.Complete() || stands.Diameter > 0 || len(stands.Sides) > 0 {
		return nil, false
	}
	if now.Complete() {
		return now, named || distance(now.Width, stands.Width) <= nearRight && distance(now.Length, stands.Length) <= nearRight
	}
	side, out := max(now.One, now.Width, now.Length), stands
	out.Resolution = now.Resolution
	width := now.Length == 0 && (denied == stands.Width || denied == 0 && distance(side, stands.Width) <= nearRight)
	length := now.Width == 0 && (denied == stands.Length || denied == 0 && distance(side, stands.Length) <= nearRight)
	switch {
	case width && length && stands.Width != stands.Length, !width && !length:
		return nil, false
	case width && length:
		out.Width, out.Length = side, side // a square stays one
	case width:
		out.Width = side
	default:
		out.Length = side
	}
	return out, true
}

// movedTo is a size that was told as another's: "it's the opening, sorry. The plastic is
// 25 x 49", "the 25 1/2 was the box, not the plastic".
var (
	movedTo  = regexp.MustCompile(`(?i)\b(?:it'?s|its|that'?s|thats|it was|that was|those were|they were|those are|i gave you|es|era|eran|fue) (the (?:opening|outside|inside|box|curb|frame|plastic|dome|wood)[a-z ]{0,20}|(?:la|el) (?:abertura|caja|marco|pl[aá]stico|domo)[a-z ]{0,20})`)
	notPart  = regexp.MustCompile(`(?i)\b(?:not|no|isn'?t|wasn'?t|no es|no era|no son) (?:the |el |la )(plastic|dome|sheet|acrylic|opening|box|curb|frame|pl[aá]stico|domo|caja|marco|abertura)\b`)
	partSize = map[string]fitcheck.Topic{"plastic": fitcheck.TopicPlasticSize, "dome": fitcheck.TopicPlasticSize, "sheet": fitcheck.TopicPlasticSize,
		"acrylic": fitcheck.TopicPlasticSize, "plástico": fitcheck.TopicPlasticSize, "plastico": fitcheck.TopicPlasticSize, "domo": fitcheck.TopicPlasticSize,
		"opening": fitcheck.TopicRetainerOpening, "abertura": fitcheck.TopicRetainerOpening, "box": fitcheck.TopicCurbOutside,
		"curb": fitcheck.TopicCurbOutside, "caja": fitcheck.TopicCurbOutside}
)

// moveSize takes a size from what it was told as, where the words say that it is another's.
func (t *turn) moveSize(r reading.Reading, text string) reading.Reading {
	if t.talk.UnitCount() != 1 {
		return r
	}
	for _, way := range []func(reading.Reading, string) (reading.Reading, bool){t.otherFace, t.toldWrong, t.partRight} {
		if moved, ok := way(r, text); ok {
			return moved
		}
	}
	if m := notPart.FindStringSubmatch(text); m != nil {
		if open, ok := t.onlyDenied(partSize[strings.ToLower(m[1])], r, text); ok {
			return open
		}
		return t.takenFrom(partSize[strings.ToLower(m[1])], r)
	}
	m := movedTo.FindStringSubmatch(text)
	e := t.lastSize()
	if m == nil || e == nil || !slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == e.Topic }) {
		return r
	}
	again := reading.Read(reading.Input{Text: e.Said + " " + m[1], Asked: topicsOf(t.talk.Memory.Asking), Units: 1, Language: t.talk.Language})
	for _, f := range again.Facts {
		if f.Topic.OfSize() && f.Topic != e.Topic && t.talk.Value(f.Topic, 1) == nil {
			f.Value, f.Said = e.Value, e.Said
			r.Facts = append(slices.Clone(r.Facts), f)
			return r
		}
	}
	return r
}

// onlyDenied drops a size that the words say again and deny, and leaves open what it is of where
// nothing but the question names another: "22 1/2 x 46 1/2 is not the plastic".
func (t *turn) onlyDenied(topic fitcheck.Topic, r reading.Reading, text string) (reading.Reading, bool) {
	e := t.talk.entry(topic, 1)
	if topic == "" || e == nil || e.By != FromCustomer {
		return r, false
	}
	stands, _ := e.Value.(fitcheck.Size)
	k := slices.IndexFunc(r.Facts, func(f reading.Fact) bool {
		now, ok := f.Value.(fitcheck.Size)
		return ok && f.Topic != topic && now.Width == stands.Width && now.Length == stands.Length && now.Diameter == stands.Diameter
	})
	if k < 0 {
		return r, false
	}
	named, alone := r.Facts[k].Topic, t.read(text, nil)
	if slices.ContainsFunc(alone.Facts, func(f reading.Fact) bool { return f.Topic == named }) ||
		slices.ContainsFunc(alone.Unclear, func(u reading.Unclear) bool { return slices.Contains(u.Candidates, named) }) {
		return r, false
	}
	size := reading.Unclear{Unit: 1, Said: r.Facts[k].Said, Why: reading.WhyWhich, Guess: e.Value}
	t.dropSize(*e)
	r.Facts = slices.Delete(slices.Clone(r.Facts), k, k+1)
	r.Unclear = append(slices.Clone(r.Unclear), size)
	return r, true
}

// takenFrom undoes a size whose side is now told of another topic, which has it whole where
// both its sides are that one.
func (t *turn) takenFrom(topic fitcheck.Topic, r reading.Reading) reading.Reading {
	e := t.talk.entry(topic, 1)
	if topic == "" || e == nil || e.By != FromCustomer {
		return r
	}
	stands, _ := e.Value.(fitcheck.Size)
	for k := range r.Facts {
		f := &r.Facts[k]
		now, ok := f.Value.(fitcheck.Size)
		if !ok || f.Topic == topic || now.One == 0 && (now.Width != stands.Width || now.Length != stands.Length) || now.One > 0 && now.One != stands.Width && now.One != stands.Length {
			continue
		}
		r.Facts = slices.Clone(r.Facts)
		r.Facts[k].Value = stands
		t.talk.retract(topic, 1)
		return r
	}
	return r
}

// lastSize is the size that the customer told last.
func (t *turn) lastSize() *Entry {
	for i := len(t.talk.Ledger) - 1; i >= 0; i-- {
		if e := &t.talk.Ledger[i]; e.Topic.OfSize() && !e.Undone && e.By == FromCustomer {
			return e
		}
	}
	return nil
}

// correctsEarlier finds the size that a correction is of, where it says what it is not: "sorry,
// 30 1/4 not 30 1/2", while the next size was asked.
func (t *turn) correctsEarlier(r reading.Reading, text string) reading.Reading {
	denied := t.denied(text)
	if denied == 0 {
		return r
	}
	for k, f := range r.Facts {
		now, ok := f.Value.(fitcheck.Size)
		if !ok || !t.isAsked(f.Topic) || t.talk.Value(f.Topic, max(f.Unit, 1)) != nil {
			continue
		}
		for unit := 1; unit <= t.talk.UnitCount(); unit++ {
			for _, topic := range fitcheck.SizeTopics {
				stands, ok := t.talk.Value(topic, unit).(fitcheck.Size)
				if !ok || topic == f.Topic || f.Unit > 0 && f.Unit != unit || stands.Width != denied && stands.Length != denied && stands.Diameter != denied {
					continue
				}
				v, ok := rightened(stands, now, denied, true)
				if stands.Diameter == denied && now.One > 0 {
					v, ok = fitcheck.Size{Diameter: now.One, Resolution: now.Resolution}, true
				}
				if ok {
					r.Facts = slices.Clone(r.Facts)
					r.Facts[k].Topic, r.Facts[k].Unit, r.Facts[k].Value = topic, unit, v
					return r
				}
			}
		}
	}
	return r
}

// namesAnother are words for a further skylight.
var namesAnother = regexp.MustCompile(`(?i)\b(also|another|other|second|add|plus|extra|more|tambi[eé]n|otr[oa]|m[aá]s|agreg\w+)\b`)

// oneSideNew: one side is just what stood and the other is not: "it's 25 1/2 x 41 1/2", of 25 1/2 x 25 1/2.
func oneSideNew(stands, now fitcheck.Size) bool {
	return now.Complete() && now.Width > 0 && stands.Width > 0 &&
		(now.Width == stands.Width || now.Width == stands.Length || now.Length == stands.Width || now.Length == stands.Length)
}
