package fitcheck

// codeFlags are what the model codes say of plastic skylights. They are told to staff,
// never ruled on.
func codeFlags(fs []Finding, u *Unit, job *Job, sh *sheet) []Finding {
	fs = riseFlag(fs, u, sh)
	fs = curbFlag(fs, u, job)
	fs = areaFlag(fs, sh)
	fs = slopeFlag(fs, u)
	return coveringFlag(fs, u)
}

// riseFlag: IBC 2021 §2610.3: a dome rises at least 10 % of its maximum width, read here
// as its longer side, and at least 3 in.
func riseFlag(fs []Finding, u *Unit, sh *sheet) []Finding {
	if u.DomeRise == nil || u.Profile != "" && u.Profile != ProfileDome {
		return fs
	}
	s := sh.first(plastic, bulge, retainerIn, outside, frame, inside)
	least := 3 * Inch
	if s >= 0 {
		least = max(least, (max(sh.exact[s][0], sh.exact[s][1])+9)/10)
	}
	if u.DomeRise.Height >= least {
		return fs
	}
	rise := "The dome's rise of " + u.DomeRise.Height.Tape() + " in"
	if u.DomeRise.Height < Sixteenth {
		rise = "A dome with no rise"
	}
	return append(fs, Finding{Code: RiseBelowCode, Severity: Note, Topic: TopicDomeRise,
		Source:  "IBC 2021 §2610.3 (rise at least 10 % of the maximum width and 3 in)",
		Numbers: Numbers{"found_in": u.DomeRise.Height.Inches(), "low_in": least.Inches()},
		Text: rise + " is below the " + roundUp(least, Sixteenth).Tape() +
			" that the model building code asks of a dome this wide, so our staff will look at it."})
}

// curbFlag: IRC 2021 R308.6.8 and IBC 2021 §2610.2: 4 in above the roof; at 3:12 and
// steeper houses may have less.
func curbFlag(fs []Finding, u *Unit, job *Job) []Finding {
	const least = 4 * Inch
	h := u.CurbHeight.Height
	steep := u.RoofSlope != nil && 12*u.RoofSlope.Rise >= 3*u.RoofSlope.Run
	if h == 0 || h >= least || steep && job.Use != UseCommercial {
		return fs
	}
	return append(fs, Finding{Code: CurbBelowCode, Severity: Note, Topic: TopicCurbHeight,
		Source:  "IRC 2021 R308.6.8; IBC 2021 §2610.2 (curb at least 4 in above the roof)",
		Numbers: Numbers{"found_in": h.Inches(), "low_in": least.Inches()},
		Text:    "The curb stands " + h.Tape() + " in above the roof, and the model codes ask for 4 on a roof of low slope, so our staff will look at it."})
}

// areaFlag: IBC 2021 §2610.4: at most 100 square feet within the curb.
func areaFlag(fs []Finding, sh *sheet) []Finding {
	s := sh.first(inside, outside, frame, plastic)
	if s < 0 {
		return fs
	}
	area := sh.v[s][0] * sh.v[s][1]
	if sh.round[s] {
		area = sh.v[s][0] * sh.v[s][0] * 0.7853981633974483
	}
	if area /= 144; area <= 100 {
		return fs
	}
	return append(fs, Finding{Code: AreaOverCode, Severity: Note, Topic: s.topic(),
		Source:  "IBC 2021 §2610.4 (each at most 100 sq ft within the curb)",
		Numbers: Numbers{"found_sqft": tenth(area), "high_sqft": 100},
		Text:    "A plastic skylight of more than 100 square feet is over what the model building code allows without further measures, so our staff will look at it."})
}

// slopeFlag: IBC 2021 §2610.3: flat plastic lies at 4:12 or steeper.
func slopeFlag(fs []Finding, u *Unit) []Finding {
	if u.Profile != ProfileFlat || u.RoofSlope == nil || 12*u.RoofSlope.Rise >= 4*u.RoofSlope.Run {
		return fs
	}
	return append(fs, Finding{Code: SlopeBelowCode, Severity: Note, Topic: TopicRoofSlope,
		Source:  "IBC 2021 §2610.3 (flat plastic at 4:12 or steeper)",
		Numbers: Numbers{"found_in_12": 12 * float64(u.RoofSlope.Rise) / float64(u.RoofSlope.Run), "low_in_12": 4},
		Text:    "Flat plastic is meant for roofs of 4 in 12 or steeper, so our staff will look at what suits this roof."})
}

func codeFlag(c Code) bool {
	return c == RiseBelowCode || c == CurbBelowCode || c == AreaOverCode || c == SlopeBelowCode
}
