package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A color is told of as many layers as a kind has.

// layersNamed are all layers of a kind by their number: "all 3 layers are clear".
var layersNamed = regexp.MustCompile(`(?i)\b(?:(?:all|the|las)\s+(3|three|tres)|both|ambas|(?:all|the|las)\s+(?:2|two|dos))\s+(?:layers|capas)\b`)

// byLayers leaves a color that the summary is put right with to the kinds of so many layers, where
// it names their number and not all have it.
func (t *turn) byLayers(r reading.Reading, text string) reading.Reading {
	m := layersNamed.FindStringSubmatch(text)
	at := slices.IndexFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicColor && f.Unit == 0 })
	told := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicLayers && f.Unit == 0 })
	if m == nil || at < 0 || told || !t.summed() {
		return r
	}
	layers := fitcheck.Whole(2)
	if m[1] != "" {
		layers = 3
	}
	var facts []reading.Fact
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		if t.talk.Value(fitcheck.TopicLayers, unit) == layers {
			f := r.Facts[at]
			f.Unit = unit
			facts = append(facts, f)
		}
	}
	if len(facts) > 0 {
		r.Facts = slices.Replace(slices.Clone(r.Facts), at, at+1, facts...)
	}
	return r
}

// twoWord tells that there are two layers, where a color over another is told.
var twoWord = regexp.MustCompile(`(?i)\b(?:two|2|dos)(?: layers?| capas?)?\W|\b(?:double|doble)\b`)

// overOne: a color over another, where the list has a single layer, is of two layers if the words
// say so, and is asked about if not: "let's do two, clear over white".
func (t *turn) overOne(r reading.Reading, text string) reading.Reading {
	if !t.summed() || slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicLayers }) {
		return r
	}
	topic := fitcheck.TopicLayers
	for _, f := range r.Facts {
		c, _ := f.Value.(fitcheck.Color)
		if c.Outer == "" || c.Inner == "" || c.Inner == c.Outer {
			continue
		}
		for unit := 1; unit <= t.talk.UnitCount(); unit++ {
			if f.Unit > 0 && f.Unit != unit || t.talk.Value(topic, unit) != fitcheck.Whole(1) {
				continue
			}
			if twoWord.MatchString(clauseBefore(text, f.Said)) {
				r.Facts = append(slices.Clone(r.Facts), reading.Fact{Topic: topic, Unit: unit, Value: fitcheck.Whole(2), Said: f.Said})
			} else {
				r.Unclear = append(slices.Clone(r.Unclear), reading.Unclear{Topic: &topic, Unit: unit, Said: f.Said, Why: reading.WhyChoice})
			}
		}
	}
	return r
}

// clauseBefore is what stands before words that are quoted, back to where the sentence begins,
// without what counts skylights: "let's do two, clear over white".
func clauseBefore(text, said string) string {
	before, _, _ := strings.Cut(text, said)
	if n := strings.LastIndexAny(before, ".!?\n"); n >= 0 {
		before = before[n+1:]
	}
	if countedThings.MatchString(before) {
		return ""
	}
	return before + " "
}

var countedThings = regexp.MustCompile(`(?i)\b(skylights?|domes?|units?|of them|tragaluces|domos?|\d+/\d+)\b`)

// fitColors takes the layers from a color that a kind does not have: "clear in both" of one layer.
func (t *turn) fitColors() {
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		e := t.talk.entry(fitcheck.TopicColor, unit)
		layers, _ := t.talk.Value(fitcheck.TopicLayers, unit).(fitcheck.Whole)
		if e == nil || layers == 0 || layers > 2 {
			continue
		}
		c, _ := e.Value.(fitcheck.Color)
		now := c
		if c.Middle == c.Outer {
			now.Middle = ""
		}
		if layers == 1 && c.Inner == c.Outer {
			now.Inner = ""
		}
		if now != c {
			fitted := *e
			fitted.Value, fitted.Message = now, t.lastMessage
			t.talk.add(fitted)
		}
	}
}
