package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// lateAnswer settles what a size is of where its words leave several measures open and only
// one of them was asked for and never told: "opening is 74 x 74 cm", when the talk has gone
// on to the choices. It is said back like any other.
func (t *turn) lateAnswer(u reading.Unclear) (reading.Fact, bool) {
	if u.Why != reading.WhyWhich || t.talk.UnitCount() > 1 || t.isAsked(fitcheck.TopicPlasticSize) && slices.Contains(u.Candidates, fitcheck.TopicPlasticSize) {
		return reading.Fact{}, false // "outside edge", to how big the plastic is, may well be the metal's
	}
	var open []fitcheck.Topic
	for _, topic := range u.Candidates {
		if a := (Ask{topic, 1}); t.talk.Memory.Tries[a] > 0 && t.talk.Value(topic, 1) == nil {
			open = append(open, topic)
		}
	}
	if len(open) != 1 {
		return reading.Fact{}, false
	}
	r := reading.Read(reading.Input{Text: u.Said, Asked: open, Units: 1, Language: t.talk.Language})
	if len(r.Facts) != 1 || len(r.Unclear) > 0 || r.Facts[0].Topic != open[0] {
		return reading.Fact{}, false
	}
	f := r.Facts[0]
	f.Said = u.Said
	return f, true
}

// metalFrame settles the kind of skylight where "metal frame" answers the question, which offers
// it beside fiberglass, glass and plastic that is bent over or screwed down.
func (t *turn) metalFrame(u reading.Unclear, text string) (reading.Fact, bool) {
	if u.Topic == nil || *u.Topic != fitcheck.TopicStyle || u.Why != reading.WhyChoice || t.talk.Memory.Tries[t.askOf(u)] < 1 || !metalFrames.MatchString(text) && !(metalFrames.MatchString(u.Said) && len(strings.Fields(text)) < 4) && t.talk.Memory.Tries[t.askOf(u)] < 2 || !metalFrames.MatchString(u.Said) && !metalFrames.MatchString(text) {
		return reading.Fact{}, false
	}
	return reading.Fact{Topic: *u.Topic, Unit: u.Unit, Value: fitcheck.Choice(fitcheck.StyleCurbMount), Said: u.Said}, true
}

var metalFrames = regexp.MustCompile(`(?i)^\W*(?:(?:they'?re )?(?:both|all|they|the two)(?: of them)?(?: are| have)? )?(the |a |an |el |un )?(metal|alumin(i)?um|aluminio|steel)( frames?)?|^\W*(the |el |un )?marcos? (de )?(metal|aluminio)`)

// innerColors settles a color that is told of the inner layer alone: that of the unit that the
// words name, else of all of which it is open, or of all that they speak of at once.
func (t *turn) innerColors(u reading.Unclear, text string) []reading.Fact {
	inner, ok := u.Guess.(fitcheck.Color)
	if !ok || inner.Outer != "" || inner.Inner == "" {
		return nil
	}
	var facts []reading.Fact
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		c, _ := t.talk.Value(fitcheck.TopicColor, unit).(fitcheck.Color)
		if c.Outer == "" || u.Unit > 0 && u.Unit != unit || u.Unit == 0 && t.talk.UnitCount() > 1 && !t.innerOpen(unit) && !plural.MatchString(text) {
			continue
		}
		facts = append(facts, reading.Fact{Topic: fitcheck.TopicColor, Unit: unit, Value: inner, Said: u.Said})
	}
	return facts
}

// lateName hears a bare name that comes when it is no more asked for, and nothing else is said.
func (t *turn) lateName(r reading.Reading, text string) reading.Reading {
	if t.talk.Value(fitcheck.TopicName, 0) != nil || t.isAsked(fitcheck.TopicName) || len(r.Facts)+len(r.Unclear)+len(r.Requests)+len(r.DontKnow)+len(r.Usual) > 0 || len(strings.Fields(text)) > 3 {
		return r
	}
	again := reading.Read(reading.Input{Text: text, Asked: []fitcheck.Topic{fitcheck.TopicName}, Language: t.talk.Language})
	if len(again.Facts) == 1 && again.Facts[0].Topic == fitcheck.TopicName && reading.GivenName(again.Facts[0].Said) {
		r.Facts = again.Facts
	}
	return r
}

// colorToo is a color that is said to hold for the other layer as well: "white too".
var colorToo = regexp.MustCompile(`(?i)^\W*(?:no\W+|and |y )?(?:the )?(?:inside|inner|inner layer|la de adentro|adentro)?\W*([a-z]+)\s+(?:too|also|as well|tambi[eé]n)\W*$`)

// tooColor has the words the other way around: "sí. la de adentro igual transparente".
var tooColor = regexp.MustCompile(`(?i)\b(?:inside|inner|inner layer|adentro|interior)\s+(?:igual|tambi[eé]n|also|the same|same)\W+(?:de |en |in )?([a-z]+)\W*$`)

// innerToo takes such a color for the inner layer that the summary shows as open.
func (t *turn) innerToo(r reading.Reading, text string) reading.Reading {
	m := colorToo.FindStringSubmatch(text)
	if m == nil {
		m = tooColor.FindStringSubmatch(text)
	}
	if m == nil || !t.summed() || slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic != fitcheck.TopicConfirm }) {
		return r
	}
	for _, f := range reading.Read(reading.Input{Text: m[1], Asked: []fitcheck.Topic{fitcheck.TopicColor}, Language: t.talk.Language}).Facts {
		c, ok := f.Value.(fitcheck.Color)
		if !ok || c.Outer == "" {
			continue
		}
		r.Facts = nil
		for unit := 1; unit <= t.talk.UnitCount(); unit++ {
			if t.innerOpen(unit) {
				r.Facts = append(r.Facts, reading.Fact{Topic: f.Topic, Unit: unit, Value: fitcheck.Color{Inner: c.Outer}, Said: f.Said})
			}
		}
	}
	return r
}

// outerOnly: the words change the color of the outer layer: "make the outer one white", "blanco por
// fuera".
var outerOnly = regexp.MustCompile(`(?i)\b(outer|outside|exterior|afuera|(por|de) fuera)\b`)

// keptInner keeps the inner layer's color where only the outer one's is changed by its name.
func keptInner(before, now fitcheck.Value, text, said string) fitcheck.Value {
	b, ok := before.(fitcheck.Color)
	c, isColor := now.(fitcheck.Color)
	if ok && isColor && c.Inner == "" && c.Outer != "" && outerOnly.MatchString(clauseOf(text, said)) {
		c.Middle, c.Inner = b.Middle, b.Inner
		return c
	}
	return now
}
