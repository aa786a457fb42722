package fitcheck

// verdict speaks of measurements only. What can't fit comes first, then what is not
// known at all, then numbers that contradict each other, then what is only open.
func verdict(n need, sh *sheet, fs []Finding) Verdict {
	var stops, clash, open, slip bool
	for i := range fs {
		f := &fs[i]
		if f.Severity == Note {
			continue
		}
		open = true
		stops = stops || f.Severity == Stop && f.Code != DiagonalsImpossible
		clash = clash || f.clash || contradiction(f.Code)
		slip = slip || f.otherUnit()
	}
	_, checked := n.checked(sh)
	switch {
	case stops && !slip:
		return VerdictNoFit
	case !n.complete(sh):
		return VerdictIncomplete
	case clash:
		return VerdictRemeasure
	case open || !checked:
		return VerdictConfirm
	}
	return VerdictFits
}

// contradiction says whether the code tells of numbers that can't all be right. Not
// among them are those where the number to be ordered from is probably right (drywall
// on the inside, an unusual wall) or where one word settles it.
func contradiction(c Code) bool {
	switch c {
	case CurbWallMismatch, DiagonalsImpossible, FrameMeasuredForCurb, RetainerMeasuredForPlastic,
		TapeHookInch, MisreadFoot:
		return true
	}
	return false
}

// otherUnit says whether the finding doubts the unit that the number is in. A fraction
// written with a point is off by less than what is ordered by it allows.
func (f *Finding) otherUnit() bool {
	return unitSlip(f.Code) && f.Slip != SlipFraction
}

// unitSlip says whether the code tells of a number in another unit than was thought:
// what the number says of the part is then no news.
func unitSlip(c Code) bool {
	return c == FeetForInches || c == MetricForInches || c == NominalSize
}
