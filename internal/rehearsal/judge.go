package rehearsal

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// judge holds what a turn wrote into the ledger against what the customer meant, and
// notes what was not understood.
func (v *visit) judge(asked []conversation.Ask, in []conversation.Message, out conversation.Outcome) {
	for _, m := range v.means {
		if m.topic != "" && !m.beside || m.topic != "" && v.meant[m.ask()].topic == "" {
			v.meant[m.ask()] = m
		}
	}
	for _, e := range out.Facts {
		if why := v.wrongFact(e); why != "" && !v.flagged[ask(e)] {
			v.result.fault(Fault{Kind: WrongFact, Ask: ask(e).String(), Value: asJSON(e.Value), Words: e.Said, Why: why,
				Message: words(in), Asked: names(asked)})
			v.flag(ask(e))
		}
	}
	if v.talk.Lead.Status == conversation.StatusOpen {
		v.judgeMissed(asked, in)
	}
	v.judgeWords(in, out)
}

// flag remembers what is wrong already, so that it is told once: a unit that does not
// exist with all its topics.
func (v *visit) flag(a conversation.Ask) {
	v.flagged[a] = true
	if a.Unit <= len(v.truth.units) {
		return
	}
	for unit := len(v.truth.units) + 1; unit < 12; unit++ {
		for _, topic := range fitcheck.UnitTopics {
			v.flagged[conversation.Ask{Topic: topic, Unit: unit}] = true
		}
	}
}

func ask(e conversation.Entry) conversation.Ask {
	return conversation.Ask{Topic: e.Topic, Unit: e.Unit}
}

// wrongFact says why a fact is wrong, "" where it is what the customer meant.
func (v *visit) wrongFact(e conversation.Entry) string {
	switch e.Topic {
	case fitcheck.TopicPhotos:
		return ""
	}
	said, guessed := false, false
	for _, m := range append([]meaning{v.meant[ask(e)]}, v.means...) {
		if m.topic != e.Topic || m.ask() != ask(e) && !m.beside {
			continue
		}
		said = true
		if m.agrees(e.Value) {
			if !m.doubt {
				return ""
			}
			guessed = true
		}
	}
	truth := v.truth.of(e.Topic, e.Unit)
	switch {
	case e.Topic == fitcheck.TopicWant && !said && v.wantsNaturally(e):
		return ""
	case guessed:
		return "it was said to be a guess"
	case !e.Topic.OfLength() && truth != nil && sameValue(truth, e.Value, false) && !said:
		return "" // not said in so many words, and true
	case said:
		return "meant was " + asJSON(v.meant[ask(e)].value)
	}
	return "nobody said so"
}

// wantsNaturally says whether a wish that was not put in words follows from what they do.
func (v *visit) wantsNaturally(e conversation.Entry) bool {
	s := &v.truth.units[v.unitOf(ask(e))-1]
	return s.want == "" && (e.Value == fitcheck.Choice(fitcheck.WantDomeOnly)) == s.dome
}

func asJSON(v fitcheck.Value) string {
	b, err := json.Marshal(v)
	if err != nil {
		return "?"
	}
	return string(b)
}

// judgeMissed notes what a careful reader would have taken from the messages and the
// assistant did not.
func (v *visit) judgeMissed(asked []conversation.Ask, in []conversation.Message) {
	for _, m := range v.means {
		if m.topic == "" || m.beside || m.doubt || m.any || m.other != nil || m.topic == fitcheck.TopicConfirm || v.flagged[m.ask()] {
			continue
		}
		if got := v.talk.Value(m.topic, m.unit); got != nil && m.agrees(got) && m.whole(got) {
			continue
		}
		v.result.Missed = append(v.result.Missed, Missed{Words: words(in), Asked: names(asked), Meant: m.ask().String() + " = " + asJSON(m.value),
			Noted: asJSON(v.talk.Value(m.topic, m.unit))})
	}
}

func words(in []conversation.Message) string {
	var texts []string
	for _, m := range in {
		texts = append(texts, m.Text)
	}
	return strings.Join(texts, " || ")
}

func names(asks []conversation.Ask) []string {
	out := make([]string, len(asks))
	for i, a := range asks {
		out[i] = a.String()
	}
	return out
}

// judgeWords looks at what the assistant wrote: nothing twice, no dead end, no brace left.
func (v *visit) judgeWords(in []conversation.Message, out conversation.Outcome) {
	open := v.talk.Lead.Status == conversation.StatusOpen
	switch {
	case open && len(out.Say) == 0 && !v.stopped:
		v.result.fault(Fault{Kind: NoAnswer, Words: words(in)})
	case open && len(v.talk.Memory.Asking) == 0 && !v.stopped:
		v.result.fault(Fault{Kind: DeadEnd, Words: words(in)})
	}
	for _, u := range out.Say {
		if strings.ContainsAny(u.Text, "{}") {
			v.result.fault(Fault{Kind: Unfilled, Words: u.Text})
		}
		for _, s := range sentences(u.Text) {
			if v.heard[s]++; v.heard[s] > 1 {
				v.result.fault(Fault{Kind: SameWords, Words: s})
			}
		}
	}
	if !v.byTheWay && !out.Waits && len(out.Say) > 0 {
		v.judgeAsked()
	}
}

// judgeAsked counts what is asked. What a number is, its other side and whether it can be
// right are different questions, and so are two lists of which one was put right.
func (v *visit) judgeAsked() {
	for _, a := range v.talk.Memory.Asking {
		question := a.String()
		switch {
		case v.raised != "":
			question += " " + string(v.raised)
		case v.partOf(a):
			question += " other side"
		case a.Topic == fitcheck.TopicConfirm:
			question += " list " + strconv.Itoa(v.talk.Memory.Said["summary.head"])
		}
		if v.asked[question]++; v.asked[question] > 2 {
			v.result.fault(Fault{Kind: AskedThrice, Ask: question})
		}
	}
}

// sentences are those of a text that are long enough to be noticed when they come again.
func sentences(text string) []string {
	var out []string
	for _, part := range strings.FieldsFunc(strings.NewReplacer("? ", "?\n", ". ", ".\n").Replace(text), func(r rune) bool { return r == '\n' }) {
		if part = strings.TrimSpace(part); len(part) > 30 {
			out = append(out, part)
		}
	}
	return out
}

// judgeEnd holds a ready lead against what the customer said last: a correction that was
// not taken up is a wrong fact too.
func (v *visit) judgeEnd() {
	if v.talk.Lead.Status != conversation.StatusReady {
		return
	}
	for _, a := range slices.SortedFunc(keys(v.meant), func(a, b conversation.Ask) int { return strings.Compare(a.String(), b.String()) }) {
		m, got := v.meant[a], v.talk.Value(a.Topic, a.Unit)
		if got == nil || m.doubt || m.beside || m.any || v.flagged[a] || m.agrees(got) || a.Topic == fitcheck.TopicConfirm {
			continue
		}
		v.result.fault(Fault{Kind: WrongFact, Ask: a.String(), Value: asJSON(got), Why: "at the end it should be " + asJSON(m.value)})
	}
}
