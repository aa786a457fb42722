package conversation

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// acknowledge says back what was understood, before anything else is asked.
func (t *turn) acknowledge() {
	h := &t.heard
	if h.asks(reading.RequestUndo) && len(h.entries) == 0 {
		t.takeBack()
		return
	}
	said, first := len(t.say.parts), t.talk.State == Opening
	t.ackPerson()
	t.ackPhotos()
	t.ackLeftOut()
	t.ackOnlyOne()
	t.ackSizes()
	switch {
	case len(t.say.parts) > said, first: // a greeting needs no "got it"
	case t.countsConfirmed() && len(h.entries) > 0: // thanks for it all follow
	case len(h.entries) > 0 && h.confirm == "", h.agreed, h.total, h.whom && h.confirm == "", h.nothing() && t.small == errandWords:
		t.say.add(t.vary("ack.plain", nil))
	case len(h.usual) > 0:
		t.say.add(t.line("answer.usual", 0, nil))
	case t.tellsBelow(): // what helps from indoors follows
	case t.lettingGo():
		t.say.add(t.vary("ack.let_go", nil))
	case len(h.dontKnow) > 0: // asked once more, in other words
	case h.comes:
		t.say.add(t.line("ack.photo_comes", 0, nil))
	case h.nothing() && h.unseen:
		t.say.add(t.vary("photo.none_yet", nil))
	case h.nothing() && t.small == nil && h.remark:
		t.say.add(t.line("ack.remark", 0, nil)) // "it's plywood, thinner than a 2x"
	case h.nothing() && t.small == nil:
		t.say.add(t.vary("ack.unknown", nil))
	}
}

// lettingGo says whether what the person can't or won't say is left open now.
func (t *turn) lettingGo() bool {
	return slices.ContainsFunc(t.heard.dontKnow, func(a Ask) bool { return t.talk.Memory.LetGo[a] })
}

// takeBack undoes what the last message brought.
func (t *turn) takeBack() {
	if p := t.takenBack; p != nil {
		t.say.add(t.line("ack.undone", 0, wording.Args{"what": p.Said}))
		return
	}
	taken := t.talk.undo()
	if len(taken) == 0 {
		t.say.add(t.line("ack.nothing_undone", 0, nil))
		return
	}
	var what []string
	for _, e := range taken {
		what = append(what, t.value(e.Topic, e.Value))
		a := Ask{e.Topic, e.Unit}
		if t.talk.Memory.Tries[a] > 0 {
			t.talk.Memory.Tries[a]-- // it may be asked again
		}
	}
	t.say.add(t.line("ack.undone", 0, wording.Args{"what": strings.Join(what, ", ")}))
	t.talk.Memory.Relisted = true
	t.runCheck()
}

func (t *turn) ackPerson() {
	name, place := t.heardText(fitcheck.TopicName), t.heardText(fitcheck.TopicPlace)
	if t.toldFuller() {
		name = "" // they were thanked by it
	}
	args := wording.Args{"name": firstName(name), "place": place}
	switch {
	case name != "" && place != "":
		t.say.add(t.line("ack.name_place", 0, args))
	case name != "":
		t.say.add(t.line("ack.name", 0, args))
	case place != "":
		t.say.add(t.line("ack.place", 0, args))
	}
}

// firstName is how somebody is spoken to: by the first name, or with the title and the last
// name where they gave a title.
func firstName(name string) string {
	words := strings.Fields(name)
	if len(words) == 0 {
		return ""
	}
	if len(words) > 1 && titles[strings.ToLower(strings.TrimSuffix(words[0], "."))] {
		return words[0] + " " + words[len(words)-1]
	}
	return words[0]
}

var titles = map[string]bool{"mr": true, "mrs": true, "ms": true, "miss": true, "dr": true, "prof": true, "rev": true, "pastor": true, "father": true,
	"sister": true, "sr": true, "sra": true, "srta": true, "don": true, "doña": true, "señor": true, "señora": true, "ing": true, "lic": true}

func (t *turn) heardText(topic fitcheck.Topic) string {
	for _, e := range t.heard.entries {
		if e.Topic == topic {
			return t.value(topic, e.Value)
		}
	}
	return ""
}

func (t *turn) ackPhotos() {
	switch {
	case t.ackLooks():
	case t.heard.photos == 1:
		t.say.add(t.line("ack.photo", 0, nil))
	case t.heard.photos > 1:
		t.say.add(t.line("ack.photos", 0, nil))
	}
}

// ackSizes says every measure back with what it was understood to measure.
func (t *turn) ackSizes() {
	t.ackSaid("ack.size", t.heard.entries)
	t.ackSaid("ack.size_again", t.heard.repeated)
}

func (t *turn) ackSaid(key string, entries []Entry) {
	var sizes []string
	unit := 0
	for _, e := range entries {
		if !e.Topic.OfLength() && e.Topic != fitcheck.TopicRoofSlope {
			continue
		}
		size := t.value(e.Topic, e.Value) + ", " + t.label(e.Topic)
		if e.Unit != unit {
			size = t.plainLabel(e.Unit) + size
		}
		sizes, unit = append(sizes, size), e.Unit
	}
	if len(sizes) > 0 {
		t.acked = unit
		t.say.add(t.line(key, 0, wording.Args{"sizes": strings.Join(sizes, "; ")}))
	}
}

// ackNew says back the measures that were not known before.
func (t *turn) ackNew() {
	t.ackSaid("ack.size", slices.DeleteFunc(slices.Clone(t.heard.entries), func(e Entry) bool {
		return slices.ContainsFunc(t.heard.changed, func(c Entry) bool { return c.Topic == e.Topic && c.Unit == e.Unit })
	}))
}

// ackUnclear quotes what nobody asks about any more, as it goes on to staff.
func (t *turn) ackUnclear() {
	for _, u := range t.heard.unclear {
		if u.Said != "" && !t.alreadyClear(u, t.askOf(u)) {
			t.say.add(t.line("ack.as_said", 0, wording.Args{"said": u.Said}))
			return
		}
	}
}

// ackChanged says back what a later word changed.
func (t *turn) ackChanged() {
	var what []string
	for _, e := range t.heard.changed {
		what = append(what, t.plainLabel(e.Unit)+t.value(e.Topic, e.Value))
	}
	if len(what) > 0 {
		t.say.add(t.line("ack.changed", 0, wording.Args{"what": strings.Join(what, ", ")}))
	}
}
