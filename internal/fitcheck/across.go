package fitcheck

import "slices"

// useAgainstSize holds the size against the kind of building (common practice): vehicles
// have 14 x 14 in vents, houses hardly ever; a manufactured home's trusses stand 16 or
// 24 in apart, so a wide opening has cut one.
func useAgainstSize(fs []Finding, u *Unit, job *Job, sh *sheet) []Finding {
	s := sh.first(inside, outside, plastic, frame)
	if s < 0 || sh.round[s] {
		return fs
	}
	w, l := sh.v[s][0], sh.v[s][1]
	narrow := min(w, l)
	switch job.Use {
	case UseHome:
		vent := reach{13.9, 14.3}
		if vent.off(w) > 0 || vent.off(l) > 0 {
			return fs
		}
		f := Finding{Code: ImplausibleSize, Severity: Ask, Topic: s.topic(), Source: sourcePractice,
			Settle: []Topic{TopicUse}, Numbers: Numbers{"found_in": narrow},
			Text: "14 x 14 in is the usual size of a vent on a trailer or camper, so is this for a house?"}
		if u.Style == StyleCurbMount || sh.any(outside) && sh.any(inside) { // a curb says that it is one
			f.Severity, f.Settle = Note, nil
			f.Text = "14 x 14 in is the usual size of a vent on a trailer or camper, so our staff will check that this one is on a house."
		}
		return append(fs, f)
	case UseManufacturedHome:
		if narrow < 36 {
			return fs
		}
		return append(fs, Finding{Code: ImplausibleSize, Severity: Note, Topic: s.topic(), Source: sourcePractice,
			Numbers: Numbers{"found_in": narrow},
			Text:    "An opening " + tape(narrow) + " in wide is more than the trusses of a manufactured home usually leave, so our staff will ask how it was framed."})
	}
	return fs
}

// crossCheck holds the units of one building against each other: skylights of one roof
// tend to be alike, so one that differs by just a foot or an inch on one side is worth a
// look (common practice).
func crossCheck(job *Job, rs []UnitResult) {
	for i := 1; i < len(job.Units); i++ {
		a, b := &job.Units[i-1], &job.Units[i]
		for _, t := range [...]Topic{TopicCurbOutside, TopicPlasticSize} {
			if f, ok := nearTwins(a.SizeOf(t), b.SizeOf(t), t); ok {
				rs[i].Findings = append(rs[i].Findings, f)
			}
		}
	}
}

func nearTwins(a, b *Size, t Topic) (Finding, bool) {
	if a.Width == 0 || a.Length == 0 || b.Width == 0 || b.Length == 0 {
		return Finding{}, false
	}
	dw, dl := b.Width-a.Width, b.Length-a.Length
	off := dw + dl
	f := Finding{Code: MisreadFoot, Severity: Note, Topic: t, Source: sourcePractice, Numbers: Numbers{"difference_in": off.Inches()}}
	switch {
	case a.Width == b.Length && a.Length == b.Width && dw != 0:
		f.Code = SidesSwapped
		f.Numbers = Numbers{"width_in": b.Width.Inches(), "length_in": b.Length.Inches()}
		f.Text = "This one has width and length of the one before the other way around, so our staff will check which way each lies."
	case dw != 0 && dl != 0:
		return Finding{}, false
	case off == 12*Inch || off == -12*Inch:
		f.Text = "This one differs from the one before by just a foot on one side, so our staff will check that the tape was read right."
	case off == Inch || off == -Inch:
		f.Code = TapeHookInch
		f.Text = "This one differs from the one before by just an inch on one side, so our staff will check that the tape was read right."
	default:
		return Finding{}, false
	}
	return f, true
}

// cautions are what whoever talks to the customer should say once.
func cautions(job *Job, rs []UnitResult) []string {
	cs := []string{}
	add := func(c string, when bool) {
		if when && !slices.Contains(cs, c) {
			cs = append(cs, c)
		}
	}
	add(CautionRoofFall, len(rs) > 0)
	for i := range rs {
		add(CautionOpenHole, slices.Contains(job.Units[i].Problem, ProblemHoleOpen))
		add(CautionStructure, job.Units[i].Style == StyleNoneYet)
		add(CautionVehicle, job.Use == UseRV)
		for j := range rs[i].Findings {
			f := &rs[i].Findings[j]
			add(CautionLocalCodes, codeFlag(f.Code))
			add(CautionStructure, f.Code == ImplausibleSize && job.Use == UseManufacturedHome)
		}
	}
	return cs
}
