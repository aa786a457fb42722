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

// neighbours is how many units back one is held against, so that ten thousand take no
// longer each than ten.
const neighbours = 12

// crossCheck holds the units of one building against each other: skylights of one roof
// tend to be alike, so one that differs by just a foot or an inch on one side is worth a
// look (common practice). One of the same size among the others is company enough.
func crossCheck(job *Job, rs []UnitResult) {
	for i := 1; i < len(job.Units); i++ {
		for _, t := range [...]Topic{TopicCurbOutside, TopicPlasticSize} {
			if f, ok := nearTwin(job.Units[max(0, i-neighbours):i], &job.Units[i], t); ok {
				rs[i].Findings = append(rs[i].Findings, f)
			}
		}
	}
}

// nearTwin is the finding about the latest unit that is nearly of this size, unless one is
// of just this size.
func nearTwin(before []Unit, unit *Unit, t Topic) (near Finding, found bool) {
	size := unit.SizeOf(t)
	for i := range before {
		other := before[i].SizeOf(t)
		if other.Width == size.Width && other.Length == size.Length && other.Diameter == size.Diameter {
			return Finding{}, false
		}
		if f, ok := nearTwins(other, size, t); ok && !(f.Code != SidesSwapped && t == TopicPlasticSize && borneOut(unit)) {
			near, found = f, true
		}
	}
	return near, found
}

// borneOut: the opening was measured as well and lies as far inside the sheet on both sides, so that the sheet was
// not misread by a foot or an inch: "kitchen 37 1/4 x 37 1/4, bath 25 1/4 x 37 1/4" with their openings.
func borneOut(u *Unit) bool {
	sheet, opening := u.PlasticSize, u.RetainerOpening
	if !sheet.Complete() || !opening.Complete() || sheet.Diameter > 0 || opening.Diameter > 0 {
		return false
	}
	dw, dl := sheet.Width-opening.Width, sheet.Length-opening.Length
	return dw == dl && dw >= Inch/2 && dw <= 4*Inch
}

func nearTwins(a, b *Size, t Topic) (Finding, bool) {
	dw, dl := b.Width-a.Width, b.Length-a.Length
	switch {
	case a.Diameter > 0 && b.Diameter > 0:
		dw, dl = b.Diameter-a.Diameter, 0
	case a.Width == 0 || a.Length == 0 || b.Width == 0 || b.Length == 0:
		return Finding{}, false
	}
	off := dw + dl
	f := Finding{Code: MisreadFoot, Severity: Note, Topic: t, Source: sourcePractice, Numbers: Numbers{"difference_in": off.Inches()}}
	switch {
	case a.Width == b.Length && a.Length == b.Width && dw != 0 && a.Width > 0:
		f.Code = SidesSwapped
		f.Numbers = Numbers{"width_in": b.Width.Inches(), "length_in": b.Length.Inches()}
		f.Text = "This one has width and length of another on the same roof the other way around, so our staff will check which way each lies."
	case dw != 0 && dl != 0:
		return Finding{}, false
	case off == 12*Inch || off == -12*Inch:
		f.Text = "This one differs from another on the same roof by just a foot in one direction, so our staff will check that the tape was read right."
	case off == Inch || off == -Inch:
		f.Code = TapeHookInch
		f.Text = "This one differs from another on the same roof by just an inch in one direction, so our staff will check that the tape was read right."
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
		add(CautionWildfire, job.Use != UseRV && wildfireStates[job.state()])
		for j := range rs[i].Findings {
			f := &rs[i].Findings[j]
			add(CautionLocalCodes, codeFlag(f.Code))
			add(CautionStructure, f.Code == ImplausibleSize && job.Use == UseManufacturedHome)
		}
	}
	add(CautionEnergy, energyToCheck(job, rs))
	return cs
}
