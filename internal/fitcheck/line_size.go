package fitcheck

// limits is the order that the shop's limits are held against: what was meant, where other
// sizes tell what that is; a lone number is taken as it stands.
func (j *judged) limits(o *Order) *Order {
	if j.work == j.sh || j.sh.measured() < 2 {
		return o
	}
	return order(j.u, j.n, j.work, j.rules)
}

// sizeLines: what the shop can't make is refused.
func sizeLines(fs []Finding, o *Order, n need, rules *Rules) []Finding {
	size, low, high := o.PlasticSize, rules.Making.DomeMin, rules.Making.DomeMax
	topic := TopicPlasticSize
	if n.part == ReplaceUnit {
		size, low, high, topic = o.FrameInside, rules.Making.UnitMin, rules.Making.UnitMax, TopicCurbOutside
	}
	if size == nil {
		return fs
	}
	w, l := size.Width, size.Length
	if size.Diameter > 0 {
		w, l = size.Diameter, size.Diameter
	}
	f := Finding{Severity: Stop, Topic: topic, Source: "the shop's list of what it makes", Settle: []Topic{topic}}
	if small := min(w, l); small < low {
		f.Code = TooSmallToMake
		f.Numbers = Numbers{"size_in": small.Inches(), "low_in": low.Inches()}
		f.Text = "A part of " + small.Tape() + " in is smaller than the " + low.Tape() + " that we can make."
		fs = append(fs, f)
	}
	if large := max(w, l); large > high {
		f.Code = TooLargeToMake
		f.Numbers = Numbers{"size_in": large.Inches(), "high_in": high.Inches()}
		f.Text = "A part of " + large.Tape() + " in is larger than the " + high.Tape() + " that we can make."
		fs = append(fs, f)
	}
	return fs
}

// oddLines: sizes that hardly any skylight has and that no known slip explains.
func oddLines(fs []Finding, u *Unit, sh *sheet, n need) []Finding {
	fs = oddSize(fs, sh, n)
	if h := u.CurbHeight.Height; h > 0 && (h < 2*Inch || h > 14*Inch) {
		f := oddFinding(TopicCurbHeight, h)
		f.Text = "A curb " + h.Tape() + " in high is out of the ordinary, so was it measured from the roof's surface up to the top of the curb?"
		fs = append(fs, f)
	}
	return riseLine(fs, u, sh)
}

// oddSize speaks of one size at most, of that which is ordered from first.
func oddSize(fs []Finding, sh *sheet, n need) []Finding {
	for s := spot(-1); s < spots; s++ {
		at := s
		if s < 0 {
			if len(n.spots) == 0 {
				continue
			}
			at = n.spots[0]
		}
		if x := sh.oddAt(at); x > 0 {
			return append(fs, oddFinding(at.topic(), x))
		}
		if w, l := sh.v[at][0], sh.v[at][1]; w > 0 && l > 0 && max(w, l) > slimmest*min(w, l) {
			f := oddFinding(at.topic(), FromInches(max(w, l)))
			f.Numbers = Numbers{"width_in": w, "length_in": l}
			f.Text = capital(partName(at.topic())) + " of " + tape(w) + " x " + tape(l) + " in would be unusually slim, so are both numbers right?"
			return append(fs, f)
		}
	}
	return fs
}

// slimmest is how many times its width a skylight is long at most (common practice).
const slimmest = 7

// oddAt is a side that hardly any skylight has, 0 for none.
func (sh *sheet) oddAt(s spot) Length {
	for _, x := range sh.exact[s] {
		if x > 0 && (x < oddLow*Inch || x > oddHigh*Inch) {
			return x
		}
	}
	return 0
}

func oddFinding(t Topic, x Length) Finding {
	return Finding{Code: ImplausibleSize, Severity: Ask, Topic: t, Source: sourcePractice, Settle: []Topic{t},
		Numbers: Numbers{"found_in": x.Inches()},
		Text:    "It would be unusual for " + partName(t) + " to be " + x.Tape() + " in, so is that right, and is it in inches?"}
}

// riseLine: a blown dome is at most half a ball (geometry).
func riseLine(fs []Finding, u *Unit, sh *sheet) []Finding {
	if u.DomeRise == nil || u.Profile != "" && u.Profile != ProfileDome {
		return fs
	}
	s := sh.first(bulge, plastic, retainerIn, outside)
	if s < 0 || u.DomeRise.Height.Inches() <= lower(sh.v[s][0], sh.v[s][1])/2 {
		return fs
	}
	f := oddFinding(TopicDomeRise, u.DomeRise.Height)
	f.Text = "A rise of " + u.DomeRise.Height.Tape() + " in would be more than half the dome's width, so was it measured from the flat lip up to the top?"
	f.Source = "geometry: a blown dome rises at most half its width"
	return append(fs, f)
}
