package fitcheck

import "math"

// nominalNote: a size of whole half feet that nothing bears out may be a name; the
// cross-check that is missing would tell (common practice).
func nominalNote(fs []Finding, sh *sheet, n need, d *diagnosis) []Finding {
	if d.found || sh.measured() != 1 || len(n.spots) != 1 {
		return fs
	}
	s := n.spots[0]
	w, l := sh.exact[s][0], sh.exact[s][1]
	if w == 0 || l == 0 || w%(Foot/2) != 0 || l%(Foot/2) != 0 {
		return fs
	}
	return append(fs, Finding{Code: NominalSize, Severity: Note, Topic: s.topic(), Source: sourcePractice,
		Numbers: Numbers{"width_in": w.Inches(), "length_in": l.Inches()},
		Text:    capital(partName(s.topic())) + " of " + w.Tape() + " x " + l.Tape() + " in may be the name of a size and not a measure."})
}

// roughLine: a number that was read so roughly that a part made to it might not fit at all
// is no measure yet, whatever else agrees with it (JCGM 106:2012, 8.3.2: a window narrower
// than its guard bands has nothing inside that is proven).
func roughLine(fs []Finding, sh *sheet, n need, rules *Rules) []Finding {
	if len(n.spots) != 1 || !sh.complete(n.spots[0]) || sh.twist[n.spots[0]] > squareAsk {
		return fs
	}
	s := n.spots[0]
	room := rules.Gap.Target
	if s == plastic {
		room = rules.Grip.SoundLow
	}
	if within(0, -room.Inches(), room.Inches(), sh.u[s][0]) == surelyInside {
		return fs
	}
	return append(fs, Finding{Code: NominalSize, Severity: Ask, Topic: s.topic(), Settle: []Topic{s.topic()},
		Source:  "JCGM 106:2012, 8.3.2 (guard bands); common practice",
		Numbers: Numbers{"uncertainty_in": math.Round(oneSided*sh.u[s][0]*1e4) / 1e4, "room_in": room.Inches()},
		Text:    "The size of " + partName(s.topic()) + " is only good to about " + tape(oneSided*sh.u[s][0]) + " in, so what does a tape show, to the sixteenth of an inch?"})
}

// fractionLine: "48.3" is no mark of a tape; 48 3/16 or 48 3/8 may be meant (common
// practice). Where another size bears the number out, what is ordered by it fits whichever
// is meant, so staff are told; where it stands alone, the customer is asked.
func fractionLine(fs []Finding, sh *sheet, n need, d *diagnosis) []Finding {
	if d.found || len(n.spots) != 1 {
		return fs
	}
	s := n.spots[0]
	for _, x := range sh.exact[s] {
		if !sh.inferred[s] || !offTape(x) {
			continue
		}
		f := Finding{Code: NominalSize, Severity: Ask, Topic: s.topic(), Source: sourcePractice, Settle: []Topic{s.topic()}}
		g := guess{spot: s}
		g.fractionFinding(sh, &f)
		if _, ok := n.checked(sh); ok {
			may, _ := fractionsOf(x)
			f.Severity, f.Settle = Note, nil
			f.Text = capital(partName(s.topic())) + " reads " + plainNumber(x.Inches()) + " in, which is no mark of a tape, so our staff will ask whether " + may + " is meant."
		}
		return append(fs, f)
	}
	return fs
}
