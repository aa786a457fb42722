package reading

import "example.com/intake-bot/internal/fitcheck"

// A bare dome told by its parts: the plastic, what it is fastened with, and that there is no
// frame: "he set a piece of plastic on the opening and screwed it down, he never bothered with a
// frame".

var (
	notOfTheSheet = wordsOf(`high building where new replace need want quiero necesito kitchen bathroom bedroom`)
	withoutWords  = wordsOf(`no not never without any isnt didnt aint none zero doesnt hasnt sin ningun nunca tampoco
		skipped minus`)
)

var (
	fastenWords = wordsOf(`screw screws screwed screwing nail nails nailed bolt bolts bolted tacked stapled
		fastened attached drilled lagged caulked glued siliconed atornillado atornillada atornillo atornillaron
		tornillos clavado clavada clavo clavaron clavos pijas fijado fijada pegado pegada`)
	// frameNames are what holds the plastic where anything does.
	frameNames = wordsOf(`frame frames framework framing metal aluminum rim trim ring edging retainer marco aro aluminio`)
)

// nakedSheet tells the bare dome where nothing else tells the kind.
func (r *reader) nakedSheet(all []saying) []saying {
	if len(r.Asked) > 0 && !r.asked(fitcheck.TopicStyle) || r.asksItself() {
		return all
	}
	for _, s := range all {
		if s.topic == fitcheck.TopicStyle && s.value != "?" {
			return all
		}
	}
	sheet, screwed, none := -1, -1, -1
	for i := range r.toks {
		t := r.toks[i].text
		if r.toks[i].kind != wordToken {
			continue
		}
		switch {
		case notKinds.has(t) && t != "opening" || boxWords.has(t) && !r.negated(i) ||
			shingWords.has(t) && !r.wordAt(i+1, "nails", "screws"):
			if r.among(i, notOfTheSheet) && sheet >= 0 && screwed >= 0 && none >= 0 && r.sentenceFirst(i) > r.sentenceFirst(none) {
				continue // a wish of its own after the description
			}
			return all
		case sheetWords.has(t):
			if sheet < 0 {
				sheet = i
			}
		case fastenWords.has(t):
			if r.negated(i) {
				return all
			}
			screwed = i
		case frameNames.has(t):
			if !r.withoutFrame(i) {
				return all
			}
			none = i
		}
	}
	if sheet < 0 || screwed < sheet || none < 0 {
		return all
	}
	out := all[:0]
	for _, s := range all {
		if s.topic != fitcheck.TopicStyle {
			out = append(out, s)
		}
	}
	return append(out,
		saying{topic: fitcheck.TopicStyle, value: fitcheck.StyleBareDome, first: min(sheet, none), last: max(screwed, none)})
}

// withoutFrame: the frame that is named at the token is said not to be there.
func (r *reader) withoutFrame(i int) bool {
	for k := i - 1; k >= max(r.clauseStart(i), i-7); k-- {
		if r.among(k, withoutWords) {
			return !r.wordsIn(i+1, min(i+6, len(r.toks)), "visible", "showing", "shows", "damage", "left", "see", "seen")
		}
	}
	return false
}
