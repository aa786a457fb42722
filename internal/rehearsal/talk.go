package rehearsal

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// Assistant is who the customers talk to: conversation.Respond and conversation.Nudge, or
// something that stands in for them.
type Assistant struct {
	Respond func(talk conversation.Talk, in []conversation.Message, now time.Time, shop *conversation.Shop) (conversation.Outcome, error)
	Nudge   func(talk conversation.Talk, now time.Time, shop *conversation.Shop) (conversation.Outcome, error)
	// Answer finds the owner's answer to a question in a message; "" for none.
	Answer func(text string) string
}

// mostMessages is when a customer gives up: nobody writes more than this.
const mostMessages = 40

// visit is one customer's talk while it goes on.
type visit struct {
	*customer
	assistant Assistant
	shop      *conversation.Shop
	talk      conversation.Talk
	wake      time.Time
	now       time.Time
	n         int // messages so far, both ways
	sent      int // by the customer
	turns     int
	meant     map[conversation.Ask]meaning // what stands, by their own account
	means     []meaning                    // of the turn just sent
	raised    fitcheck.Code                // the finding that the last turn asked about
	flagged   map[conversation.Ask]bool    // found wrong already
	asked     map[string]int               // questions
	heard     map[string]int               // sentences of the assistant's
	byTheWay  bool                         // the last turn did not answer what was asked
	stopped   bool
	raisedAll map[fitcheck.Code]bool // what was asked about or stands
	result    Talk
}

// Begun is the first day of every rehearsal, so that the date changes nothing.
var Begun = time.Date(2026, 3, 2, 13, 0, 0, 0, time.UTC)

func (c *customer) visit(a Assistant, shop *conversation.Shop) *visit {
	v := &visit{customer: c, raisedAll: map[fitcheck.Code]bool{}, assistant: a, shop: shop, meant: map[conversation.Ask]meaning{},
		flagged: map[conversation.Ask]bool{}, asked: map[string]int{}, heard: map[string]int{},
		now: Begun.Add(time.Duration(c.IntN(14*24*60)) * time.Minute)}
	v.talk = conversation.Talk{Ref: fmt.Sprintf("R%04d", c.number%10000), Channel: c.channel, State: conversation.Opening}
	if c.channel == conversation.Email {
		v.talk.Email = fmt.Sprintf("customer%d@example.com", c.number)
	} else {
		v.talk.Phone = phoneOf(c.number)
	}
	v.result = Talk{Number: c.number, Kind: c.kind.name, Manner: string(c.manner), Leaving: string(c.off), Language: c.habit.language,
		Channel: string(c.channel), Mistake: c.mistake.name, ShouldBeReady: c.shouldBeReady()}
	return v
}

// play lets the customer talk to the end.
func (v *visit) play() (Talk, error) {
	if err := v.converse(); err != nil {
		return v.result, fmt.Errorf("customer %d, turn %d: %w", v.number, v.turns+1, err)
	}
	v.close()
	return v.result, nil
}

func (v *visit) converse() error {
	leaveAfter := v.between(1, 6)
	lines := v.customer.opening()
	for {
		if err := v.send(lines); err != nil {
			return err
		}
		over := len(v.talk.Asking()) == 0 || v.sent >= mostMessages
		if v.turns >= leaveAfter && !over {
			done, next, err := v.turnOff()
			if done || err != nil {
				return err
			}
			if lines = next; next != nil {
				continue
			}
		}
		if over {
			return v.afterwards()
		}
		v.openAsk()
		lines = v.next()
	}
}

// next is what the customer says now: something by the way, a correction, or the answer.
func (v *visit) next() []line {
	if len(v.asides) > 0 && v.turns > 1 && v.chance(0.35) {
		if lines := v.aside(); lines != nil {
			return lines
		}
	}
	if v.manner == correcting && v.chance(0.3) {
		if l := v.correction(); l.text != "" {
			return []line{l}
		}
	}
	if v.manner == sideways && v.chance(0.3) {
		return []line{v.elsewhere()}
	}
	return v.reply()
}

// reply answers what is asked, as it is asked.
func (v *visit) reply() []line {
	asking := v.talk.Memory.Asking
	switch p := v.talk.Memory.Pending; {
	case v.raised != "":
		return []line{v.recheck(v.raised, asking[0])}
	case p != nil:
		return []line{v.clarify(p, asking[0])}
	case asking[0].Topic.OfSize() && v.manner == bySide && v.partOf(asking[0]):
		return []line{v.oneSide(asking[0].Topic, v.unitOf(asking[0]), "side.second")}
	}
	lines := v.answers(asking)
	if len(lines) == 0 {
		return []line{v.says("choice.unknown")}
	}
	return lines
}

// partOf says whether the talk knows one side of what it asks.
func (v *visit) partOf(a conversation.Ask) bool {
	s, ok := v.talk.Value(a.Topic, max(a.Unit, 1)).(fitcheck.Size)
	return ok && !s.Complete()
}

// send takes a turn: the customer's messages in, what the assistant says out.
func (v *visit) send(lines []line) error {
	texts := v.texts(lines)
	v.means = nil
	for _, t := range texts {
		v.means = append(v.means, t.means...)
	}
	in := v.messages(texts)
	before, asked := v.talk.Memory.Raised, v.talk.Memory.Asking
	out, err := v.assistant.Respond(v.talk, in, v.now, v.shop)
	if err != nil {
		return err
	}
	v.turns++
	v.took(out)
	v.raised = raised(before, v.talk.Memory.Raised)
	if v.raised != "" {
		v.raisedAll[v.raised] = true
	}
	v.judge(asked, in, out)
	v.byTheWay = false
	v.now = v.now.Add(time.Duration(v.between(20, 600)) * time.Second)
	return nil
}

func (v *visit) messages(texts []line) []conversation.Message {
	var in []conversation.Message
	for _, l := range texts {
		m := conversation.Message{At: v.now, From: conversation.FromCustomer, Channel: v.channel}
		m.Photos = strings.Count(l.text, photo)
		m.Text = strings.ReplaceAll(l.text, photo, "")
		if v.assistant.Answer != nil {
			m.Answer = v.assistant.Answer(m.Text)
		}
		v.n++
		v.sent++
		m.N = v.n
		v.result.said("C: ", m.Text+strings.Repeat(" [photo]", m.Photos))
		in = append(in, m)
	}
	return in
}

// took keeps what a turn led to.
func (v *visit) took(out conversation.Outcome) {
	v.talk, v.wake = out.Talk, out.Wake
	if v.stopped && len(out.Say) > 0 {
		v.result.fault(Fault{Kind: AfterStop, Words: out.Say[0].Text})
	}
	for _, u := range out.Say {
		v.n++
		v.result.said("B: ", u.Text)
	}
	v.result.noted(&v.talk, out.Facts)
}

// openAsk remembers what is asked, for when that is where it ends.
func (v *visit) openAsk() {
	v.result.OpenAsk = string(v.talk.State) + ": " + strings.Join(v.talk.Asking(), ", ")
	if v.raised != "" {
		v.result.OpenAsk += " (" + string(v.raised) + ")"
	} else if p := v.talk.Memory.Pending; p != nil {
		v.result.OpenAsk += " (" + string(p.Why) + ")"
	}
}

// close fills in how the talk ended.
func (v *visit) close() {
	l := v.talk.Lead
	r := &v.result
	r.Status, r.Why, r.State = string(l.Status), l.WhyStaff, string(v.talk.State)
	r.Messages, r.Became = v.sent, string(v.mistakeOutcome())
	for _, u := range l.Units {
		for _, f := range u.Check.Findings {
			if f.Severity != fitcheck.Note {
				v.raisedAll[f.Code] = true
			}
		}
	}
	r.Caught = slices.Sorted(maps.Keys(v.raisedAll))
	r.LastAsked = v.talk.Asking()
	for i := range r.Missed {
		r.Missed[i].Customer = v.number
	}
	v.judgeEnd()
}
