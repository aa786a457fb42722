package conversation

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"time"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// turn is one turn of talk at work.
type turn struct {
	talk  Talk
	shop  *Shop
	now   time.Time
	book  *wording.Book
	heard heard
	check fitcheck.Result
	say   speech
	out   Outcome
	from  int // length of the ledger before this turn

	acked       int            // the unit whose sizes were said back last in this turn
	small       *regexp.Regexp // which kind of small talk the messages are, nil for none
	justAsked   string         // the key of the question that was put last in this turn
	takenBack   *Pending       // something unclear that the customer took back
	lastMessage int            // N of the last message of this turn
}

// Respond takes the messages that a customer sent since the last turn, oldest first,
// and says what comes of them. The talk that went in is not changed. An error means
// that the shop or the wording is broken, never that the customer wrote something odd.
func Respond(talk Talk, in []Message, now time.Time, shop *Shop) (Outcome, error) {
	t, err := begin(talk, now, shop)
	if err != nil {
		return Outcome{}, err
	}
	if len(in) == 0 {
		return t.end()
	}
	t.lastMessage, t.talk.Memory.LastAt = in[len(in)-1].N, now
	if done, err := t.carrierWords(in); done || err != nil {
		return t.out, err
	}
	if t.elsewhere() {
		if err := t.unsilence(); err != nil {
			return Outcome{}, err
		}
	}
	if t.talk.State == Silenced {
		return t.end() // kept, and not answered until START
	}
	t.hear(in)
	if err := t.useLanguage(); err != nil {
		return Outcome{}, err
	}
	t.answerStanding(in)
	t.advise(joined(in))
	if t.wantsOut(in) {
		err := t.silence()
		return t.out, err
	}
	t.note(in)
	t.noteWays(in)
	t.countBarren()
	t.emergency(joined(in))
	t.heard.off = t.calledOff(joined(in))
	t.runCheck()
	if err := t.respond(); err != nil {
		return Outcome{}, err
	}
	return t.end()
}

func begin(talk Talk, now time.Time, shop *Shop) (*turn, error) {
	t := &turn{talk: talk.clone(), shop: shop, now: now, from: len(talk.Ledger)}
	if t.talk.State == "" {
		t.talk.State = Opening
	}
	if t.talk.OpenedAt.IsZero() {
		t.talk.OpenedAt = now
	}
	if t.talk.Lead.Status == "" {
		t.talk.Lead.Status = StatusOpen
	}
	t.out.PhotosOf = map[int]fitcheck.Topic{}
	return t, t.useLanguage()
}

func (t *turn) useLanguage() (err error) {
	t.book, err = wording.For(t.talk.Language, t.shop.Wording)
	return err
}

// clone copies all that a turn changes.
func (t Talk) clone() Talk {
	t.Ledger = slices.Clone(t.Ledger)
	m := &t.Memory
	m.Asking, m.Early = slices.Clone(m.Asking), slices.Clone(m.Early)
	m.Tries, m.LetGo, m.Raised, m.Usual = copied(m.Tries), copied(m.LetGo), copied(m.Raised), copied(m.Usual)
	m.Called, m.Rooms, m.Looks, m.Said = copied(m.Called), copied(m.Rooms), copied(m.Looks), copied(m.Said)
	m.Out, m.Bronze, m.Rough = copied(m.Out), copied(m.Bronze), copied(m.Rough)
	t.Lead.WhyStaff = slices.Clone(t.Lead.WhyStaff)
	return t
}

func copied[K comparable, V any](m map[K]V) map[K]V {
	if m == nil {
		return map[K]V{}
	}
	return maps.Clone(m)
}

// carrierWords handles STOP, START and HELP, which win over everything else.
func (t *turn) carrierWords(in []Message) (done bool, err error) {
	for _, m := range in {
		switch reading.Keyword(m.Text) {
		case reading.RequestStop:
			return true, t.silence()
		case reading.RequestStart:
			if t.talk.State == Silenced {
				return true, t.restart()
			}
		case reading.RequestHelp:
			if t.talk.State != Silenced && len(in) == 1 && t.talk.Memory.Introduced {
				return true, t.help()
			}
		}
	}
	return false, nil
}

func (t *turn) help() error {
	t.say.kind = Notice
	t.say.add(t.helpLine())
	return t.finish()
}

func (t *turn) helpLine() string {
	email := ""
	if t.shop.Email != "" {
		email = ", " + t.shop.Email
	}
	return t.line("answer.help", 0, wording.Args{"shop": t.shop.Name, "phone": t.shop.Phone, "email": email})
}

// note keeps what was heard beside the facts: what is let go, how urgent it is.
func (t *turn) note(in []Message) {
	m, h := &t.talk.Memory, &t.heard
	for _, a := range h.usual {
		if !slices.Contains(choiceTopics, a.Topic) {
			h.dontKnow = append(h.dontKnow, a) // there is no usual place, style or size
			continue
		}
		m.LetGo[a], m.Usual[a] = true, true
	}
	ends := tellsNoMore.MatchString(joined(in))
	for _, a := range h.dontKnow {
		if a.Topic == fitcheck.TopicCount && t.isAsked(fitcheck.TopicStyle) {
			continue // "can't tell" is of what is up there, not of how many
		}
		if m.Tries[a] >= t.patience(a) || ends && a.Topic.OfLength() {
			m.LetGo[a] = true
		}
	}
	t.keepRough()
	t.measuredBelow(joined(in))
	m.Lost++
	if t.small = smallTalk(joined(in)); !h.nothing() || t.small != nil {
		m.Lost = 0
	}
	t.heard.goesUp = goesUpThere.MatchString(joined(in))
	m.PersonAsked = m.PersonAsked || h.asks(reading.RequestPerson)
	m.Foreign = m.Foreign || h.asks(reading.RequestOtherLanguage)
	m.Abroad = m.Abroad || t.abroad(joined(in))
	m.Nudges = 0
	m.Relisted = m.Relisted || t.relisted()
	if len(h.entries) > 0 && t.talk.State == Confirming && h.confirm != fitcheck.ConfirmYes && !t.countsConfirmed() {
		m.Confirmed = false
	}
}

// patience is how often a question is put before "I don't know" settles it: choices may
// stay open at once; what the part needs, or who it is for, is asked in a second way.
func (t *turn) patience(a Ask) int {
	if problems, ok := t.talk.Value(fitcheck.TopicProblem, 0).(fitcheck.ChoiceList); ok && a.Topic == fitcheck.TopicPlasticSize && slices.Contains(problems, fitcheck.ProblemHoleOpen) {
		return 1 // it blew away
	}
	if a.Topic.OfLength() || a.Topic == fitcheck.TopicName || a.Topic == fitcheck.TopicPlace {
		return 2
	}
	return 1
}

func (t *turn) runCheck() {
	t.check = fitcheck.Check(t.talk.Job(site(t.talk.Place())), t.shop.Rules)
}

func (t *turn) move(to State) error {
	state, err := move(t.talk.State, to)
	if err != nil {
		return fmt.Errorf("talk %s: %w", t.talk.Ref, err)
	}
	t.talk.State = state
	return nil
}

// end finishes a turn that said all it has to say.
func (t *turn) end() (Outcome, error) {
	if err := t.finish(); err != nil {
		return Outcome{}, err
	}
	return t.out, nil
}

// finish fills in the outcome: the lead as it stands, what to say, when to look again.
func (t *turn) finish() error {
	before := t.talk.Lead.Status
	t.runCheck()
	t.updateLead()
	t.out.Talk = t.talk
	t.out.Facts = t.talk.Ledger[t.from:]
	if len(t.out.Say) == 0 {
		t.out.Say = t.say.utterances(t.talk.Channel)
	}
	t.out.Wake = t.wake()
	ended := t.talk.Lead.Status == StatusReady || t.talk.Lead.Status == StatusNeedsPerson
	t.out.Alert = t.out.Alert || ended && before != t.talk.Lead.Status
	return nil
}

// vary says a sentence in its next way: nobody gets the same words again while there are
// others.
func (t *turn) vary(key string, args wording.Args) string {
	n := t.talk.Memory.Said[key]
	t.talk.Memory.Said[key]++
	return t.line(key, n, args)
}

func (t *turn) line(key string, nth int, args wording.Args) string { return t.book.Say(key, nth, args) }
