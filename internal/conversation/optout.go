package conversation

import (
	"regexp"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// Opting out is per address: who stops texts may still write mail, and is answered there.

// strangerWords: somebody who wrote here by mistake has no use for an answer, nor for a
// reminder.
var strangerWords = regexp.MustCompile(`(?i)^\W*((hey|hi|oh|oops|ah|my bad)\W+)?((sorry|perd[oó]n|disculpe)\W+)?(i (think|guess) )?((i )?(have|got) the )?(wrong number|n[uú]mero equivocado)(\W+(sorry|i (think|guess)|my bad|perd[oó]n|disculpe))*\W*$`)

// wantsOut says whether the customer opts out in words of their own, which hold as well as
// the carriers' (47 CFR 64.1200(a)(10): any reasonable means).
func (t *turn) wantsOut(in []Message) bool {
	return t.heard.asks(reading.RequestStop) || len(t.talk.Units()) == 0 && t.talk.Place() == (fitcheck.Place{}) && strangerWords.MatchString(joined(in))
}

// silence ends the talk on the customer's word, with one last confirmation.
func (t *turn) silence() error {
	if t.talk.State != Silenced {
		text := t.byChannel("farewell", wording.Args{"shop": t.shop.Name})
		t.out.Say = []Utterance{{Text: text, Kind: Farewell}}
		t.talk.Memory.StoppedOn = t.talk.Channel
	}
	t.talk.Memory.Stopped = true
	t.talk.Memory.Asking = nil
	if err := t.move(Silenced); err != nil {
		return err
	}
	return t.finish()
}

// restart takes up a talk again where the person opted out of it.
func (t *turn) restart() error {
	if err := t.unsilence(); err != nil {
		return err
	}
	t.say.add(t.byChannel("restart", nil))
	t.runCheck()
	if err := t.proceed(); err != nil {
		return err
	}
	return t.finish()
}

// elsewhere says whether a talk that is silent is written to on another way than the one
// that was opted out of; it then goes on there.
func (t *turn) elsewhere() bool {
	m := t.talk.Memory
	return t.talk.State == Silenced && !m.Shut && m.StoppedOn != "" && m.StoppedOn != t.talk.Channel
}

func (t *turn) unsilence() error {
	t.talk.Memory.Stopped, t.talk.Memory.StoppedOn = false, ""
	t.talk.Lead.Status = StatusOpen
	state, err := happen(t.talk.State, eventRelease)
	if err != nil {
		return err
	}
	t.talk.State = state
	return nil
}

// byChannel is a sentence in the words of the channel, where it has words of its own.
func (t *turn) byChannel(key string, args wording.Args) string {
	if own := "mail." + key; t.talk.Channel == Email && t.book.Has(own) {
		key = own
	}
	return t.line(key, 0, args)
}
