package fitcheck

// gripLines: how far the plastic lies under the retaining frame, per edge.
func gripLines(fs []Finding, sh *sheet, rules *Rules) []Finding {
	lip := sh.differences(plastic, retainerIn)
	if lip.n == 0 {
		return fs
	}
	low, high := lip.low(), lip.high()
	g := &rules.Grip
	f := Finding{Topic: TopicPlasticSize, Source: sourcePractice, Settle: []Topic{TopicPlasticSize, TopicRetainerOpening}}
	if low < 2*g.SoundLow {
		f.Code, f.Severity = EdgeGripShort, Note
		f.Numbers = Numbers{"grip_in": low.Inches() / 2, "low_in": g.Short.Inches()}
		f.Text = "The plastic reaches only " + (low / 2).Tape() + " in under the retaining frame, a little less than the usual " + g.SoundLow.Tape() + "."
		if (low / 2).Tape() == g.SoundLow.Tape() { // a mark of the tape has two sides
			f.Text = "The plastic reaches a hair less under the retaining frame than the usual " + g.SoundLow.Tape() + " in."
		}
		switch {
		case low <= 0:
			f.Severity = Stop
			f.Text = "The plastic reads no larger than the opening that must hold it and would fall through, so was its flat lip left out of the measure?"
		case low < 2*g.Short:
			f.Severity = Ask
			f.Text = "The plastic reaches only " + atLeastAMark(low/2) + " in under the retaining frame on each side, so was it measured edge to edge, flat lip included?"
		}
		fs = append(fs, f)
	}
	if high <= 2*g.SoundHigh {
		return fs
	}
	f.Code, f.Severity = EdgeGripLong, Note
	f.Numbers = Numbers{"grip_in": high.Inches() / 2, "high_in": g.Long.Inches()}
	f.Text = "The plastic reaches " + (high / 2).Tape() + " in under the retaining frame, a little more than usual."
	if high > 2*g.Long {
		f.Severity = Ask
		f.Text = "The plastic reaches " + (high / 2).Tape() + " in under the retaining frame on each side, more than frames have room for, so was it the plastic's own edge that was measured?"
	}
	return append(fs, f)
}

// rimLeast is what a retaining frame stands out over the plastic that it holds, both sides
// together, at the least: metal on either side of the edge (common practice, no source).
const rimLeast = Inch / 4

// rimLine: plastic that reads like the outside of its retaining frame is that outside,
// also where the difference alone is within what two readings err by.
func rimLine(fs []Finding, sh *sheet, d *diagnosis) []Finding {
	rim := sh.differences(retainerOut, plastic)
	if mean := rim.mean(); rim.n == 0 || mean >= rimLeast || mean <= -rimLeast {
		return fs
	}
	if d.found && d.best.kind >= asRetainer && d.best.code != TapeHookInch {
		return fs
	}
	g := guess{code: RetainerMeasuredForPlastic, spot: plastic, side: bothSides, kind: asRetainer}
	f := g.finding(sh)
	f.Settle = []Topic{TopicPlasticSize, TopicRetainerOutside}
	return append(fs, f)
}

// thermalLine: what cold takes from the grip and heat from the room around the sheet.
func thermalLine(fs []Finding, u *Unit, sh *sheet, rules *Rules) []Finding {
	for side := range 2 {
		p := sh.exact[plastic][side]
		cold, hot := movement(p, u.Material, coldKelvin)/2, movement(p, u.Material, hotKelvin)/2
		if sh.both(plastic, retainerIn, side) {
			grip := (p - sh.exact[retainerIn][side]) / 2
			if grip >= rules.Grip.Short && grip < rules.Grip.SoundLow+cold+thermalTolerance {
				return append(fs, thermalFinding(grip, cold,
					"In deep cold the plastic shrinks by about "+atLeastAMark(cold)+" in at each edge, which leaves it a grip of "+(grip-cold).Tape()+"."))
			}
		}
		if sh.both(plastic, retainerOut, side) {
			room := (sh.exact[retainerOut][side] - p) / 2
			if room > 0 && room < hot+thermalTolerance {
				return append(fs, thermalFinding(room, hot,
					"In summer heat the plastic grows by about "+atLeastAMark(hot)+" in at each edge, and the frame leaves it hardly "+atLeastAMark(room)+"."))
			}
		}
	}
	return fs
}

// atLeastAMark writes what is little but never nothing: a movement, or room to spare.
func atLeastAMark(l Length) string { return max(l, Sixteenth).Tape() }

func thermalFinding(has, takes Length, text string) Finding {
	return Finding{Code: ExpansionClearance, Severity: Note, Topic: TopicPlasticSize, Text: text,
		Source:  "linear expansion: acrylic 75, polycarbonate 67.5, aluminium 23.4 millionths a kelvin (property tables); -30 to 150 °F is common practice",
		Numbers: Numbers{"has_in": has.Inches(), "takes_in": takes.Inches()}}
}
