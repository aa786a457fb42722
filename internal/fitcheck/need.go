package fitcheck

// need says which measurements the part wants.
type need struct {
	part  Replace // ReplaceDome, ReplaceUnit, or ReplaceStaff where none is meant yet
	spots []spot
}

// needOf: a dome needs the plastic's size, a unit the curb's outside. Where a person
// decides, it is what was measured that is judged.
func needOf(u *Unit, d *decision, sh *sheet) need {
	dome, unit := need{ReplaceDome, []spot{plastic}}, need{ReplaceUnit, []spot{outside}}
	switch {
	case d.replace == ReplaceDome:
		return dome
	case d.replace == ReplaceUnit:
		return unit
	case d.reasons[0] == ReasonNotCurbMounted:
		return dome
	case sh.complete(plastic) && (u.Want != WantCompleteUnit || !sh.complete(outside)):
		return dome
	case sh.complete(outside):
		return unit
	case d.reasons[0] == ReasonNewOpening || u.Style == StyleGlass || u.Style == StyleTubular:
		return need{part: ReplaceStaff}
	case u.Want == WantDomeOnly:
		return dome
	case u.Want == WantCompleteUnit:
		return unit
	}
	return need{ReplaceStaff, []spot{plastic, outside}}
}

func (n need) complete(sh *sheet) bool {
	for _, s := range n.spots {
		if !sh.complete(s) {
			return false
		}
	}
	return len(n.spots) > 0
}

// checked says whether something bears out the measurement that the part needs; else
// which measurement would.
func (n need) checked(sh *sheet) (by spot, ok bool) {
	if n.part == ReplaceDome {
		return retainerIn, sh.bothComplete(plastic, retainerIn) || sh.bothComplete(plastic, retainerOut)
	}
	return inside, sh.bothComplete(outside, inside) || sh.bothComplete(outside, frame) ||
		sh.d[0] > 0 && !sh.round[outside]
}

func (sh *sheet) bothComplete(a, b spot) bool {
	return sh.complete(a) && sh.complete(b) && sh.round[a] == sh.round[b]
}

// missing lists what the part still needs in the order of UnitTopics: measurements,
// the wanted cross-check, and choices.
func missing(u *Unit, n need, sh *sheet) []Topic {
	m := make([]Topic, 0, 8)
	for _, t := range UnitTopics {
		if lacks(u, n, sh, t) {
			m = append(m, t)
		}
	}
	return m
}

func lacks(u *Unit, n need, sh *sheet, t Topic) bool {
	switch t {
	case TopicStyle:
		return u.Style == ""
	case TopicFrameCondition:
		return u.FrameCondition == "" && n.part != ReplaceUnit && n.part != "" && framed(u.Style)
	case TopicPlasticSize, TopicCurbOutside:
		for _, s := range n.spots {
			if s.topic() == t && !sh.complete(s) {
				return true
			}
		}
		return false
	case TopicRetainerOpening, TopicCurbInside:
		by, ok := n.checked(sh)
		return !ok && takenOf(u, by) && n.complete(sh) && by.topic() == t
	}
	return n.part != ReplaceStaff && lacksChoice(u, n.part, t)
}

// checkedBy is the measurement that would bear out the only one that the part needs, while
// neither is known.
func checkedBy(u *Unit, n need, sh *sheet) Topic {
	by, _ := n.checked(sh)
	if len(n.spots) != 1 || sh.complete(n.spots[0]) || sh.complete(by) || !takenOf(u, by) {
		return ""
	}
	return by.topic()
}

// takenOf says whether a unit of the style has what the check would be measured on.
func takenOf(u *Unit, by spot) bool {
	bare := u.Style == StyleBareDome || u.Style == StyleSelfFlashing // no frame holds it
	return !bare || by != retainerIn
}

// framed says whether the style has, or may have, a frame of its own whose condition
// matters.
func framed(style string) bool {
	return style == StyleCurbMount || style == StyleUnsure || style == ""
}

func lacksChoice(u *Unit, part Replace, t Topic) bool {
	switch t {
	case TopicLayers:
		return u.Layers == 0
	case TopicMaterial:
		return u.Material == ""
	case TopicColor:
		c := u.Color
		return c.Outer == "" || u.Layers >= 2 && c.Inner == "" || u.Layers == 3 && c.Middle == ""
	case TopicFinish:
		return u.Finish == "" && part == ReplaceUnit
	}
	return false
}
