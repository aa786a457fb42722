package conversation

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// Pending is something unclear that was asked about and waits for its other half: a
// size of which it is not known what it measures, a number without its unit.
type Pending struct {
	Topic      fitcheck.Topic   `json:"topic,omitempty"`
	Unit       int              `json:"unit,omitempty"`
	Said       string           `json:"said"`
	Why        reading.Why      `json:"why"`
	Candidates []fitcheck.Topic `json:"candidates,omitempty"`
	Message    int              `json:"message"`
	// Guess is the plain reading as JSON, taken only where the customer says yes to it.
	Guess json.RawMessage `json:"guess,omitempty"`
}

// settle completes what was pending with the new words: they are read again together
// with the old ones ("25 x 49" and "centimeters"). Where that gives nothing either, the
// new words stand as they were read alone.
func (t *turn) settle(r reading.Reading, text string) reading.Reading {
	p := t.talk.Memory.Pending
	for n, held := range t.talk.Memory.Early {
		if f, ok := t.namedAgain(held, r); ok {
			t.talk.Memory.Early = slices.Delete(t.talk.Memory.Early, n, n+1)
			return t.again(f, held, r, text)
		}
	}
	if f, message, ok := t.unitNamed(p, r, text); ok {
		t.talk.Memory.Pending = nil
		t.settled(f, message, text)
		r.Unclear = slices.DeleteFunc(r.Unclear, func(u reading.Unclear) bool { return u.Topic == nil || *u.Topic == f.Topic })
		return r
	}
	if p == nil {
		p = t.halfSize()
	}
	if p == nil {
		return r
	}
	t.talk.Memory.Pending = nil
	if p.Why != "" && slices.Contains(r.Requests, reading.RequestUndo) && len(r.Facts) == 0 {
		t.takenBack = p
		return r
	}
	if f, ok := t.namedAgain(p, r); ok {
		return t.again(f, p, r, text)
	}
	if f, ok := t.guessedAgain(p, r, text); ok {
		return t.again(f, p, r, text)
	}
	if t.settledAlone(p, r) && !t.namedBesides(p, r, text) {
		if p.worthKeeping() && p.ofAnother(r.Facts) {
			t.talk.Memory.Early = append(t.talk.Memory.Early, p)
		}
		return t.townOfState(p, r)
	}
	if guess := t.acceptedGuess(p, r, text); guess != nil {
		t.settled(*guess, p.Message, text)
		return withoutConfirm(r)
	}
	if !p.halfSaid() || p.Why == reading.WhyChoice && t.yesOrNo(text) {
		return r
	}
	if f, ok := t.faceChosen(p, r, text); ok {
		return t.again(f, p, r, text)
	}
	for _, words := range t.bareParts(p, r, text) {
		fact, ok := t.completed(p, words)
		if u, less := t.lessOpen(p, words); !ok && less {
			if u.Topic != nil {
				t.completeEarly(p, *u.Topic, words, r.Facts)
			}
			r.Unclear = []reading.Unclear{u}
			return r
		}
		if !ok {
			continue
		}
		t.settled(fact, p.Message, words)
		t.completeEarly(p, fact.Topic, words, r.Facts)
		r.Unclear, r.SameAs = nil, nil // "the same" was of the other side, not of another unit
		r.Facts = slices.DeleteFunc(r.Facts, func(f reading.Fact) bool { return sameOf(f, fact) })
		return r
	}
	if p.Why == reading.WhyWhich {
		t.talk.Memory.Unplaced = p
	}
	return r // an answer to something else: what was pending is asked for anew
}

// completed is what was pending, read again together with the new words.
func (t *turn) completed(p *Pending, words string) (reading.Fact, bool) {
	for _, again := range []string{p.Said + " " + words, words + " " + p.Said, p.face() + words + " " + p.Said} {
		both := reading.Read(reading.Input{Text: again, Asked: p.asked(), Units: t.talk.UnitCount(), Language: t.talk.Language})
		fact, ok := p.find(both.Facts)
		if !ok || !p.adds(fact, words) {
			continue
		}
		if fact.Topic == fitcheck.TopicFrameInside && !slices.Contains(p.Candidates, fact.Topic) && slices.Contains(p.Candidates, fitcheck.TopicRetainerOpening) {
			fact.Topic = fitcheck.TopicRetainerOpening // "the opening of the frame", of the two that were named
		}
		fact.Said = p.Said
		if fact.Unit == 0 || p.Unit > 0 && plural.MatchString(words) {
			fact.Unit = p.Unit
		}
		return fact, true
	}
	return reading.Fact{}, false
}

// bareParts are the words that can complete what was pending: the whole message or, where
// it says more, those of its sentences that only name a part: "the plastic. call me at
// 218-555-0133 if that's easier".
func (t *turn) bareParts(p *Pending, r reading.Reading, text string) []string {
	if bare(r, text) || p.Why == reading.WhyWhich && reading.NamesPart(text) && onlyWant(r) {
		return []string{text}
	}
	if m := squareToo.FindStringSubmatch(text); m != nil && p.Why == "" {
		return m[1:]
	}
	if p.Why != reading.WhyWhich {
		return nil
	}
	return partsNamed(text)
}

// squareToo is an other side that is told in a clause beside more: "square. 2 layers, mill".
var squareToo = regexp.MustCompile(`(?i)(?:^|[.,;\n])\s*((?:(?:it'?s|its|it is|they'?re|yes|both|all|a|es|son|s[ií]|un) )*(?:squared?|cuadrad[oa]s?|(?:the )?same(?: both ways| thing)?|igual|(?:lo )?mismo))\s*(?:[.,;\n]|$)`)

// partsNamed are the sentences, and what goes before another measure in one, that do nothing but
// name a part: "outside of the box, both. inside 22 x 22 and 22 x 46".
func partsNamed(text string) []string {
	var parts []string
	for _, part := range sentences.FindAllString(text, -1) {
		if m := nextNamed.FindStringSubmatch(part); m != nil && reading.NamesPart(m[2]) {
			part = m[1]
		}
		if part = strings.TrimSpace(part); part != text && reading.NamesPart(part) {
			parts = append(parts, part)
		}
	}
	return parts
}

// nextNamed is a sentence that tells another measure after what it says of the one before.
var nextNamed = regexp.MustCompile(`^([^\d]*)[,;]([^\d,;]+)\d`)

// sameOf says whether two facts tell the same of one kind.
func sameOf(a, b reading.Fact) bool {
	return a.Topic == b.Topic && (a.Unit == b.Unit || a.Unit == 0 || b.Unit == 0)
}

// namedBesides says whether the words name what was pending, and tell a size of something else as
// well.
func (t *turn) namedBesides(p *Pending, r reading.Reading, text string) bool {
	if p.Why != reading.WhyWhich {
		return false
	}
	return slices.ContainsFunc(partsNamed(text), func(part string) bool {
		fact, ok := t.completed(p, part)
		return ok && !slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return sameOf(f, fact) })
	})
}

// sentences parts a message at the ends of its lines and sentences.
var sentences = regexp.MustCompile(`(?:[^\n.!?]|[.!?]\S)+[.!?]*`)

// halfSize is a size of which one side is known and the other was asked: "square" or
// "the same" then completes it.
func (t *turn) halfSize() *Pending {
	for _, a := range t.talk.Memory.Asking {
		e := t.talk.entry(a.Topic, a.Unit)
		if e == nil {
			continue
		}
		if s, ok := e.Value.(fitcheck.Size); ok && s.One > 0 {
			return &Pending{Topic: a.Topic, Unit: a.Unit, Said: e.Said, Message: e.Message}
		}
	}
	return nil
}

// sameWords say that the other side is as long as the one that was told.
var sameWords = regexp.MustCompile(`(?i)^\W*(it'?s |its |is |are |they'?re |es |son |the |that'?s |about |exactly |yes,? |s[ií],? )*(same|equal|ditto|both|igual|iguales|(lo )?mismo|las? mismas?|(los|las|ambos|de) (dos|lados)|tambi[eé]n)\b`)

// adds says whether the new words tell more of a size than was known: one side said again
// is no other side, whatever stands beside it.
func (p *Pending) adds(f reading.Fact, text string) bool {
	s, ok := f.Value.(fitcheck.Size)
	return p.Why != "" || !ok || s.One == 0 || sameWords.MatchString(text)
}

// halfSaid says whether words can be missing to what was said. A guess, a range or a
// catalog size is whole: only a yes or a new measure makes it a fact.
func (p *Pending) halfSaid() bool {
	switch p.Why {
	case reading.WhyRough, reading.WhyRange, reading.WhyNominal, reading.WhyNumber:
		return false
	}
	return true
}

// onlyWant says whether the words told no more than a wish: "just the plastic", to what was
// measured, is no wish either.
func onlyWant(r reading.Reading) bool {
	return !slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic != fitcheck.TopicWant })
}

// shortAnswer is how many words may name a measure or a unit by themselves.
const shortAnswer = 8

// bare says whether the new words say nothing by themselves, so that they can only
// complete what was pending.
func bare(r reading.Reading, text string) bool {
	if slices.Contains(r.Requests, reading.RequestQuestion) || slices.Contains(r.Requests, reading.RequestHowTo) {
		return false // "what's the difference between acrylic and polycarbonate?"
	}
	said := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic != fitcheck.TopicConfirm && f.Topic != fitcheck.TopicOutline })
	return !said && len(strings.Fields(text)) <= shortAnswer
}

// settled takes a completed fact; its words are those of the earlier message.
func (t *turn) settled(f reading.Fact, message int, text string) {
	for _, unit := range t.unitsOf(f, text) {
		t.takeFor(f, unit, message, text)
	}
}

// settledAlone says whether the new words hold the whole answer themselves.
func (t *turn) settledAlone(p *Pending, r reading.Reading) bool {
	_, ok := p.find(r.Facts)
	return ok
}

func (p *Pending) asked() []fitcheck.Topic {
	if p.Topic != "" {
		return []fitcheck.Topic{p.Topic}
	}
	return nil
}

func (p *Pending) find(facts []reading.Fact) (reading.Fact, bool) {
	for _, f := range facts {
		if f.Topic == p.Topic || p.Topic == "" && f.Topic.OfSize() {
			return f, true
		}
	}
	return reading.Fact{}, false
}

// acceptedGuess is the plain reading of what was doubtful, where the customer said yes
// to it: "is 25 x 49 what the tape showed?".
func (t *turn) acceptedGuess(p *Pending, r reading.Reading, text string) *reading.Fact {
	if p.Guess == nil || p.Topic == "" {
		return nil
	}
	yes := t.agreement(text)
	if p.Topic.OfLength() && yesAndMore(r, text) ||
		p.Topic == fitcheck.TopicStyle && !slices.ContainsFunc(r.Unclear, func(u reading.Unclear) bool {
			return u.Topic != nil && *u.Topic == p.Topic && u.Why == reading.WhyRough
		}) {
		for _, leading := range []*regexp.Regexp{leadingYes, firstClause} {
			if m := leading.FindStringSubmatch(text); m != nil && !yesTaken[strings.ToLower(m[2])] {
				yes = append(yes, t.agreement(m[1])...) // and more: "yes, the frame is corroded, whole unit"
			}
		}
	}
	for _, f := range yes {
		if f.Topic != fitcheck.TopicConfirm || f.Value != fitcheck.Choice(fitcheck.ConfirmYes) {
			continue
		}
		v, err := fitcheck.DecodeValue(p.Topic, p.Guess)
		if err != nil {
			return nil
		}
		return &reading.Fact{Topic: p.Topic, Unit: p.Unit, Value: v, Said: p.Said}
	}
	return nil
}

// leadingYes is a yes with more after it; "yes, but ..." is none.
var leadingYes = regexp.MustCompile(`(?i)^\W*((?:yes|yeah|yea|ya|yah|yep|yup|correct|right|exactly|sure|that'?s (?:right|correct|it)|s[ií]p?|as[ií] es|correcto|exacto|claro)(?:,? (?:sir|ma'?am|it is|that'?s it|that'?s right|i believe so|i think so|así es|señora?))?)(?:\s*[,.;!\n]+\s*|\s+)([\pL\d]+)`)

// firstClause is what stands before the first sign, with the word after it.
var firstClause = regexp.MustCompile(`^\W*([^,.;!?\n]+)[,.;!\n]+\s*(\pL+)`)

// yesTaken: what follows such a yes takes it back.
var yesTaken = map[string]bool{"but": true, "no": true, "not": true, "well": true, "except": true, "or": true, "although": true, "actually": true, "pero": true, "aunque": true, "o": true}

// agreement is the yes or no that the words say.
func (t *turn) agreement(text string) []reading.Fact {
	return reading.Read(reading.Input{Text: text, Asked: []fitcheck.Topic{fitcheck.TopicConfirm}, Language: t.talk.Language}).Facts
}

// yesOrNo says whether the words agree or not, and so tell nothing by themselves.
func (t *turn) yesOrNo(text string) bool {
	said := t.agreement(text)
	return len(said) == 1 && said[0].Topic == fitcheck.TopicConfirm
}

func withoutConfirm(r reading.Reading) reading.Reading {
	r.Facts = slices.DeleteFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicConfirm })
	return r
}

// townOfState puts a town that lay open together with the state that answers it: "up in Duluth",
// "Minnesota".
func (t *turn) townOfState(p *Pending, r reading.Reading) reading.Reading {
	if p.Topic != fitcheck.TopicPlace || p.Why != reading.WhyPlace {
		return r
	}
	for k, f := range r.Facts {
		where, ok := f.Value.(fitcheck.Place)
		if !ok || where.State == "" || where.City != "" || where.ZIP != "" {
			continue
		}
		both := reading.Read(reading.Input{Text: p.Said + ", " + where.State, Asked: []fitcheck.Topic{fitcheck.TopicPlace}, Language: t.talk.Language})
		for _, b := range both.Facts {
			if whole, ok := b.Value.(fitcheck.Place); ok && whole.City != "" && whole.State == where.State {
				r.Facts = slices.Clone(r.Facts)
				r.Facts[k].Value = whole
				return r
			}
		}
	}
	return r
}

// namedAgain completes a size of which it was not known what it measures, where the words say its
// numbers again without their unit: "648 mm by 1257 mm", "the 648 x 1257 is the plastic sheet".
func (t *turn) namedAgain(p *Pending, r reading.Reading) (reading.Fact, bool) {
	if p.Why != reading.WhyWhich {
		return reading.Fact{}, false
	}
	for _, u := range r.Unclear {
		if u.Topic == nil || !u.Topic.OfSize() || u.Why != reading.WhyUnits || !slices.Equal(numerals.FindAllString(u.Said, -1), numerals.FindAllString(p.Said, -1)) {
			continue
		}
		again := reading.Read(reading.Input{Text: p.Said, Asked: []fitcheck.Topic{*u.Topic}, Units: t.talk.UnitCount(), Language: t.talk.Language})
		for _, f := range again.Facts {
			if f.Topic == *u.Topic {
				f.Unit = max(f.Unit, p.Unit)
				return f, true
			}
		}
	}
	return reading.Fact{}, false
}

var numerals = regexp.MustCompile(`\d+`)

// again takes a fact that an earlier message brought, and what was unclear of it is so no more.
func (t *turn) again(f reading.Fact, p *Pending, r reading.Reading, text string) reading.Reading {
	t.settled(f, p.Message, text)
	r.Unclear = slices.DeleteFunc(r.Unclear, func(u reading.Unclear) bool { return u.Topic != nil && *u.Topic == f.Topic })
	return r
}

// guessedAgain takes the kind of skylight that was said with a doubt, where the answer to the
// second question says it once more: "metal frame on a box I think", "metal frame like I said".
func (t *turn) guessedAgain(p *Pending, r reading.Reading, text string) (reading.Fact, bool) {
	if p.Topic != fitcheck.TopicStyle || p.Why != reading.WhyRough || p.Guess == nil {
		return reading.Fact{}, false
	}
	guess, err := fitcheck.DecodeValue(p.Topic, p.Guess)
	if err != nil {
		return reading.Fact{}, false
	}
	for _, u := range r.Unclear {
		if u.Topic != nil && *u.Topic == p.Topic && (u.Guess == guess || u.Why == reading.WhyChoice && guess == fitcheck.Choice(fitcheck.StyleCurbMount) && metalFrames.MatchString(text)) {
			return reading.Fact{Topic: p.Topic, Unit: p.Unit, Value: guess, Said: p.Said}, true
		}
	}
	return reading.Fact{}, false
}
