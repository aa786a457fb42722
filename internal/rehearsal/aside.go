package rehearsal

import (
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// aside is something that the customer asks by the way, alone or before the answer.
func (v *visit) aside() []line {
	what := v.asides[0]
	v.asides = v.asides[1:]
	if what == "howto" && !v.talk.Memory.Asking[0].Topic.OfLength() {
		return nil
	}
	l := v.says(what)
	if v.chance(0.4) && (what == "price" || what == "question" || what == "question.owner") {
		if v.chance(0.5) {
			return append(v.reply(), l)
		}
		return append([]line{l}, v.reply()...)
	}
	v.byTheWay = true
	return []line{l}
}

// correction puts right something that was told before, or the summary.
func (v *visit) correction() line {
	asked := v.talk.Memory.Asking[0]
	for _, topic := range []fitcheck.Topic{v.truth.units[0].sizeOf, v.truth.units[0].checkOf} {
		if _, told := v.meant[conversation.Ask{Topic: topic, Unit: 1}]; !told || v.unitless != "" || v.erring() || v.talk.UnitCount() > 1 {
			continue
		}
		p := v.said[0][topic]
		p[1] += fitcheck.Inch / 2
		if p[0] == p[1]-fitcheck.Inch/2 {
			p[0] = p[1]
		}
		v.said[0][topic], v.truth.units[0].sizes[topic] = p, p
		l := v.resayAs("oops.size", topic, 1, p)
		if asked.Topic == fitcheck.TopicConfirm || asked.Topic != topic {
			text, named := v.sayPair(p, v.truth.units[0].round, "")
			l.text = fill(v.phrase("correct.size").text, "size", text, "label", v.phrase("label."+string(topic)).text)
			l.means[0].named = named
		}
		v.manner = plain // once is enough
		return l
	}
	return line{}
}

// elsewhere answers another question than the one that was asked.
func (v *visit) elsewhere() line {
	for _, topic := range []fitcheck.Topic{fitcheck.TopicPlace, fitcheck.TopicUse, fitcheck.TopicProblem, fitcheck.TopicStyle, fitcheck.TopicName,
		fitcheck.TopicLayers, fitcheck.TopicColor} {
		a := conversation.Ask{Topic: topic}
		if topic.OfUnit() {
			a.Unit = 1
		}
		if _, told := v.meant[a]; told || v.talk.Memory.Asking[0] == a || topic == fitcheck.TopicName {
			continue
		}
		return v.answer(topic, []int{1}, 1)
	}
	return v.says("question")
}

// turnOff is the moment at which some go another way. next is what they say then, done that
// they are gone.
func (v *visit) turnOff() (done bool, next []line, err error) {
	off := v.off
	if off != cant {
		v.off = stays
	}
	switch off {
	case leaves:
		return true, nil, v.silence(nil)
	case returns:
		back := false
		err := v.silence(&back)
		if !back || len(v.talk.Memory.Asking) == 0 {
			return true, nil, err
		}
		lines := v.reply()
		lines[0].text = fill(v.phrase("back").text, "answer", lines[0].text)
		return false, lines, err
	case optsOut:
		return true, nil, v.optOut()
	case restarts:
		if err := v.optOut(); err != nil {
			return true, nil, err
		}
		v.stopped, v.manner = false, plain
		v.habit.typos = 0
		return false, []line{v.says("start")}, nil
	case person:
		return false, []line{v.says("person")}, nil
	}
	return false, nil, nil
}

// silence lets the time pass; back is set once the customer takes the talk up again.
func (v *visit) silence(back *bool) error {
	for n := 0; n < 6 && !v.wake.IsZero(); n++ {
		v.now = v.wake
		out, err := v.assistant.Nudge(v.talk, v.now, v.shop)
		if err != nil {
			return err
		}
		v.took(out)
		if back != nil {
			*back = true
			return nil
		}
	}
	return nil
}

func (v *visit) optOut() error {
	habit, manner := *v.habit, v.manner
	v.habit.bare, v.habit.typos, v.habit.dictated, v.manner = false, 0, false, plain
	err := v.send([]line{v.says("stop")})
	*v.habit, v.manner, v.stopped = habit, manner, true
	if err != nil {
		return err
	}
	if v.chance(0.5) {
		return v.send([]line{v.says("thanks")})
	}
	return nil
}

// afterwards is a word after the end, which must not begin the talk anew.
func (v *visit) afterwards() error {
	if !v.chance(0.25) || v.stopped {
		return nil
	}
	return v.send([]line{v.says("thanks")})
}
