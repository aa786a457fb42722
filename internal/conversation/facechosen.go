package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// The face of a part, inner or outer, as an answer to what was measured.

var (
	insides  = []fitcheck.Topic{fitcheck.TopicCurbInside, fitcheck.TopicFrameInside, fitcheck.TopicRetainerOpening}
	outsides = []fitcheck.Topic{fitcheck.TopicCurbOutside, fitcheck.TopicRetainerOutside}

	// faceAlone is an answer that names a face and no part: "the outside", "es por fuera".
	faceAlone = regexp.MustCompile(`(?i)^\W*(?:(?:oh|sorry|yes|yeah|it'?s|it was|that'?s|that was|its|thats|the|of|from|on|at|i measured|es|era|la|lo|el|de|por|la de|perd[oó]n)\W+)*(inside|indoors|outside|inner|outer|interior|exterior|dentro|adentro|fuera|afuera)(?: (?:one|edges?|size|measurements?|please|of it))*\W*$`)
	innerFace = regexp.MustCompile(`(?i)^(?:in|a?dentro)`)
)

// faceChosen takes the one measure of that face, of those that were named to choose from: "outside
// of the box or inside of the box?" "outside".
func (t *turn) faceChosen(p *Pending, r reading.Reading, text string) (reading.Fact, bool) {
	m := faceAlone.FindStringSubmatch(text)
	if m == nil || p.Why != reading.WhyWhich || !bare(r, text) {
		return reading.Fact{}, false
	}
	face := outsides
	if innerFace.MatchString(m[1]) {
		face = insides
	}
	var of []fitcheck.Topic
	for _, c := range p.Candidates {
		if slices.Contains(face, c) {
			of = append(of, c)
		}
	}
	if len(of) != 1 {
		return reading.Fact{}, false
	}
	told := reading.Read(reading.Input{Text: p.Said, Asked: of, Units: t.talk.UnitCount(), Language: t.talk.Language})
	for _, f := range told.Facts {
		if f.Topic == of[0] {
			f.Unit = max(f.Unit, p.Unit)
			return f, true
		}
	}
	return reading.Fact{}, false
}

// face is the face that all candidates have beside the plastic's edge, so that the part alone is answer enough: "inside
// of the box, of the frame or …?" "the wood".
func (p *Pending) face() string {
	for face, of := range map[string][]fitcheck.Topic{"inside of ": insides, "outside of ": outsides} {
		if len(p.Candidates) > 0 && !slices.ContainsFunc(p.Candidates, func(c fitcheck.Topic) bool { return c != fitcheck.TopicPlasticSize && !slices.Contains(of, c) }) {
			return face
		}
	}
	return ""
}
