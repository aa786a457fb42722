package fitcheck

// otherPart tones down what speaks of a part that is not ordered. A broken dome tells
// nothing of a whole new unit, so staff see it and nobody is asked; a curb that can't be as
// measured is still asked about, but the dome that goes back into its own frame fits.
func otherPart(fs []Finding, part Replace, n need, sh *sheet) {
	if !n.complete(sh) {
		return
	}
	for i := range fs {
		f := &fs[i]
		switch {
		case len(f.Settle) == 0 || codeFlag(f.Code):
		case part == ReplaceUnit && allOf(f.Settle, ofDome):
			f.Severity = Note
		case part == ReplaceDome && f.Severity == Stop && allOf(f.Settle, ofCurb):
			f.Severity, f.clash = Ask, true
		}
	}
}

func allOf(ts []Topic, is func(Topic) bool) bool {
	for _, t := range ts {
		if !is(t) {
			return false
		}
	}
	return true
}

// ofDome and ofCurb divide the sizes between the plastic with the frame that holds it, and
// what those stand on.
func ofDome(t Topic) bool {
	switch t {
	case TopicPlasticSize, TopicRetainerOpening, TopicRetainerOutside, TopicBulgeBase, TopicDomeRise:
		return true
	}
	return false
}

func ofCurb(t Topic) bool {
	switch t {
	case TopicCurbOutside, TopicCurbInside, TopicCurbDiagonals, TopicFrameInside:
		return true
	}
	return false
}
