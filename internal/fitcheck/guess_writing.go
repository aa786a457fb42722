package fitcheck

// writingGuesses are numbers whose point stands for something else: "4.6" for 4 ft 6 in,
// "48.3" for 48 3/8 or 48 3/16 (common practice).
func writingGuesses(sh *sheet, s spot, try func(guess)) {
	if sh.feetAndInches(s) {
		cost := 10.0
		if sh.measured() == 1 {
			cost = 8
		}
		try(guess{code: FeetForInches, spot: s, side: bothSides, kind: asPrefix, cost: cost})
	}
	if !sh.inferred[s] || !offTape(sh.exact[s][0]) && !offTape(sh.exact[s][1]) {
		return
	}
	for _, parts := range [...]float64{16, 8, 4} {
		g := guess{code: NominalSize, spot: s, side: bothSides, scale: parts, kind: asPrefix, cost: 3}
		if g.rewrites(sh) {
			try(g)
		}
	}
}

// offTape says whether a length has one decimal that no tape is marked with.
func offTape(x Length) bool {
	return x > 0 && x%(Inch/10) == 0 && x%Sixteenth != 0 && x%Millimetre != 0
}

// largestFeet is how many feet a skylight measures at most, for reading a number as feet.
const largestFeet = 12

// feetAndInches says whether every side that was read can be feet and inches with a point
// between them: 4.6, 4.11, and none with more than eleven inches.
func (sh *sheet) feetAndInches(s spot) bool {
	any := false
	for _, x := range sh.exact[s] {
		if x == 0 {
			continue
		}
		if _, ok := inchesAfterFeet(x); !ok {
			return false
		}
		any = any || x%Inch != 0
	}
	return any
}

// inchesAfterFeet reads "4.6" as 4 ft 6 in and "4.11" as 4 ft 11 in.
func inchesAfterFeet(x Length) (Length, bool) {
	feet, rest := x/Inch, x%Inch
	inches := rest / (Inch / 10)
	if rest%(Inch/10) != 0 {
		inches = rest / (Inch / 100)
	}
	two := rest%(Inch/100) == 0 && (inches == 10 || inches == 11)
	ok := feet >= 1 && feet <= largestFeet && (rest%(Inch/10) == 0 || two)
	return feet*Foot + inches*Inch, ok
}

// fraction reads "48.3" as 48 3/8, where parts is 8; false where a tape has no such mark.
func fraction(x Length, parts float64) (Length, bool) {
	digit := x % Inch / (Inch / 10)
	if !offTape(x) || digit >= Length(parts) {
		return x, !offTape(x)
	}
	return x - x%Inch + digit*Inch/Length(parts), true
}

func (g *guess) rewrites(sh *sheet) bool {
	for _, x := range sh.exact[g.spot] {
		if _, ok := fraction(x, g.scale); !ok {
			return false
		}
	}
	return true
}

// rewrite takes the point for what the guess says that it stands for.
func (g *guess) rewrite(sh *sheet) {
	for side, x := range sh.exact[g.spot] {
		if x == 0 {
			continue
		}
		meant, _ := fraction(x, max(g.scale, 1))
		if g.code == FeetForInches {
			meant, _ = inchesAfterFeet(x)
		}
		sh.v[g.spot][side] = meant.Inches()
		sh.u[g.spot][side] = fineReading
	}
}

// fineReading is the standard uncertainty of a hand good to 1/8 in and a mark of 1/16 in.
const fineReading = 0.065

// feetToo adds the other reading of feet with a point: "4.6" is 55 3/16 in, or 54.
func (g *guess) feetToo(sh *sheet) string {
	if g.code != FeetForInches || g.kind == asPrefix || g.spot >= spots || !sh.feetAndInches(g.spot) {
		return ""
	}
	var meant [2]float64
	n := 0
	for side, x := range sh.exact[g.spot] {
		if x > 0 && (g.side == bothSides || int(g.side) == side) {
			in, _ := inchesAfterFeet(x)
			meant[n], n = in.Inches(), n+1
		}
	}
	return ", or in feet and inches, which would be " + join(meant, tape)
}

// fractionFinding asks what the digit after the point stands for.
func (g *guess) fractionFinding(sh *sheet, f *Finding) {
	x := sh.exact[g.spot][0]
	if !offTape(x) {
		x = sh.exact[g.spot][1]
	}
	may, n := fractionsOf(x)
	f.Slip = SlipFraction
	f.Text, f.Numbers = "A tape has no mark at "+plainNumber(x.Inches())+", so is it decimal inches, or does it stand for "+may+" in?", n
}

// fractionsOf are the marks that a number with a point may stand for, in words, and the
// likeliest of them: "48.3" for 48 3/8 or 48 3/16. Nobody says 4/8, so "48.4" is only near
// a mark.
func fractionsOf(x Length) (string, Numbers) {
	eighth, ok := fraction(x, 8)
	sixteenth, _ := fraction(x, 16)
	words := eighth.Tape() + " or " + sixteenth.Tape()
	if digit := x % Inch / (Inch / 10); digit%2 == 0 || !ok {
		eighth = (x + Sixteenth/2) / Sixteenth * Sixteenth
		words = eighth.Tape()
	}
	return words, Numbers{"found_in": x.Inches(), "fraction_in": eighth.Inches()}
}
