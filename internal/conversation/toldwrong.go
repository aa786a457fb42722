package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A size that was told of the wrong thing is moved to the right one, or dropped: "oops, that was
// the outside of the metal", "the 28 was around the frame", "scratch the plastic size".

var (
	// wasOf: what follows, up to the end of its clause, is what was measured.
	wasOf = regexp.MustCompile(`(?i)\b(?:that'?s|that is|that was|those are|those were|these were|it was|they were|i gave you|i measured|i wrote|eso era|eso es|eso fue|esa era|esa es|es[ao]s eran|era|eran|fue|le di|les di|medí|medi)\s+([^,.;:!?\n]+)`)
	// numberWas: "the 28 was ..." speaks of a number that was told.
	numberWas = regexp.MustCompile(`(?i)\b(?:the|that|those|el|la|los|las|es[eao]s?)\s+[\d¼½¾⅛⅜⅝⅞][\d /.\-¼½¾⅛⅜⅝⅞"'x]*\s*(?:was|were|is actually|are actually|era|eran|fue)\b`)
	bareMetal = regexp.MustCompile(`(?i)\b(?:metal|aluminum)\s*$`) // is that of the frame
	// dropped: "forget the plastic size", "olvide la medida del domo", and of no "don't forget".
	dropped = regexp.MustCompile(`(?i)(\w+'?\w*\s+)?\b(?:scratch|forget|ignore|disregard|drop|delete|erase|remove|cancel|strike|cross out|throw out|take back|never ?mind|olvid[ea]|olvídese de|borre|borra|quite|quita|ignora|elimine|elimina|cancele)\s+(?:about |de )?(?:the |that |my |la |el |esa |ese |mi )?` +
		`(?:(?:size|measurements?|numbers?|dimensions?|medidas?|tamaño|números?) (?:of |for |on |from |del |de )?(?:the |la |el )?(?:\w+ )?` + partWord + `|(?:\w+ )?` + partWord + `(?:'s)? (?:size|measurements?|numbers?|dimensions?|figures?))\b`)
	notDropped = regexp.MustCompile(`(?i)^(?:don'?t|not|never|no|to|i|did|you)\s`)
)

const (
	partWord     = `(plastic|dome|sheet|acrylic|opening|box|curb|frame|pl[aá]stico|domo|caja|marco|abertura)`
	mostMeasured = 9 // words that name what was measured
)

// toldWrong takes a size from what it was told as where the words say so.
func (t *turn) toldWrong(r reading.Reading, text string) (reading.Reading, bool) {
	sized := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return f.Topic.OfSize() })
	if sized {
		if e := t.lastSize(); e != nil && numberWas.MatchString(text) {
			return t.takenFrom(e.Topic, r), true
		}
		return r, false
	}
	if m := dropped.FindStringSubmatch(text); m != nil && !notDropped.MatchString(m[1]) {
		if e := t.sizeOf(m[2] + m[3]); e != nil {
			t.dropSize(*e)
			t.takenBack = &Pending{Said: t.value(e.Topic, e.Value)}
			r.Requests = append(slices.Clone(r.Requests), reading.RequestUndo)
			return r, true
		}
	}
	return t.wasAnother(r, text)
}

// wasAnother moves the size that was told last, or the one that the words say it is not, to what
// they say was measured.
func (t *turn) wasAnother(r reading.Reading, text string) (reading.Reading, bool) {
	e := t.lastSize()
	if m := notPart.FindStringSubmatch(text); m != nil {
		e = t.sizeOf(m[1])
	}
	m := wasOf.FindStringSubmatch(text)
	if e == nil || m == nil || len(strings.Fields(m[1])) > mostMeasured {
		return r, false
	}
	measured := bareMetal.ReplaceAllString(m[1], "$0 frame")
	again := reading.Read(reading.Input{Text: e.Said + " " + measured, Asked: []fitcheck.Topic{fitcheck.TopicUse}, Units: 1, Language: t.talk.Language})
	for _, f := range again.Facts {
		if f.Topic.OfSize() && f.Topic != e.Topic && t.talk.Value(f.Topic, 1) == nil {
			f.Value, f.Said, f.Unit = e.Value, e.Said, 1
			t.dropSize(*e)
			r.Facts = append(slices.Clone(r.Facts), f)
			r.Requests = withoutUndo(r.Requests)
			return r, true
		}
	}
	for _, u := range again.Unclear {
		if u.Why == reading.WhyWhich && len(ofMetal(u.Candidates, measured)) > 1 && !slices.Contains(u.Candidates, e.Topic) {
			u.Unit, u.Candidates = 1, ofMetal(u.Candidates, measured)
			t.dropSize(*e)
			t.heard.unclear = append(t.heard.unclear, u) // "that was the metal frame": of which of its faces is asked
			r.Requests = withoutUndo(r.Requests)
			return r, true
		}
	}
	return r, false
}

// ofMetal are the measures of the metal frame alone, where the words name it.
func ofMetal(candidates []fitcheck.Topic, measured string) []fitcheck.Topic {
	if !strings.Contains(strings.ToLower(measured), "metal") && !strings.Contains(strings.ToLower(measured), "alum") {
		return candidates
	}
	return slices.DeleteFunc(slices.Clone(candidates), func(c fitcheck.Topic) bool {
		return c != fitcheck.TopicRetainerOutside && c != fitcheck.TopicRetainerOpening
	})
}

// withoutUndo: what the words mean to take back was taken.
func withoutUndo(requests []reading.Request) []reading.Request {
	return slices.DeleteFunc(slices.Clone(requests), func(q reading.Request) bool { return q == reading.RequestUndo })
}

// dropSize drops a size, so that it may be asked for once more.
func (t *turn) dropSize(e Entry) {
	t.talk.retract(e.Topic, e.Unit)
	if a := (Ask{e.Topic, e.Unit}); t.talk.Memory.Tries[a] > 0 {
		t.talk.Memory.Tries[a]--
	}
	t.talk.Memory.Relisted = true
}

// sizeOf is the size that stands of a part, where it has but one.
func (t *turn) sizeOf(part string) *Entry {
	topics := []fitcheck.Topic{partSize[strings.ToLower(part)]}
	switch strings.ToLower(part) {
	case "box", "curb", "caja":
		topics = append(topics, fitcheck.TopicCurbInside)
	case "frame", "marco":
		topics = []fitcheck.Topic{fitcheck.TopicRetainerOutside, fitcheck.TopicRetainerOpening}
	}
	var found *Entry
	for _, topic := range topics {
		if e := t.talk.entry(topic, 1); e != nil && e.By == FromCustomer {
			if found != nil {
				return nil
			}
			found = e
		}
	}
	return found
}
