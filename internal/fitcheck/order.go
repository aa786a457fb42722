package fitcheck

// order works out what to order. Indirect numbers give a range that is marked as
// estimated, never a size.
func order(u *Unit, n need, sh *sheet, rules *Rules) *Order {
	o := &Order{}
	switch {
	case n.part == ReplaceUnit && sh.complete(outside):
		o.FrameInside = sh.size(outside, func(side int) Length { return frameInside(sh, side, rules) })
	case n.part == ReplaceDome && sh.complete(plastic):
		o.PlasticSize = sh.size(plastic, func(side int) Length { return sheetSize(u, sh, side) })
	case n.part == ReplaceUnit:
		unitRange(o, sh, rules)
	case n.part == ReplaceDome:
		domeRange(o, u, sh, rules)
	}
	if item := stockFor(n.part, u, sh, rules); item != nil {
		code, size := item.Code, item.Size
		o.Stock = &code
		if n.part == ReplaceUnit {
			o.FrameInside = &size
		} else {
			o.PlasticSize = &size
		}
	}
	return o
}

// size makes a size of the same outline as a spot's.
func (sh *sheet) size(s spot, side func(int) Length) *Size {
	if sh.round[s] {
		return &Size{Diameter: side(0)}
	}
	return &Size{Width: side(0), Length: side(1)}
}

// frameInside is the curb's largest reading, what it is out of square, and the cap gap,
// rounded up to the shop's step (common practice).
func frameInside(sh *sheet, side int, rules *Rules) Length {
	return roundUp(sh.exact[outside][side]+sh.skew(side)+rules.Gap.Target, rules.Making.Step)
}

// skew is how far a parallelogram of the read sides and diagonals leans over one side:
// (d1² − d2²) / 4L (geometry). Less than what counts as out of square is reading error.
func (sh *sheet) skew(side int) Length {
	a, b := sh.d[0], sh.d[1]
	other := sh.v[outside][1-side]
	if apart := sh.diag[0] - sh.diag[1]; b == 0 || other == 0 || max(apart, -apart) < squareNote {
		return 0
	}
	return FromInches(max(a*a-b*b, b*b-a*a) / (4 * other))
}

func roundUp(l, step Length) Length {
	if step <= 0 {
		return l
	}
	return (l + step - 1) / step * step
}

func roundDown(l, step Length) Length { return l - l%step }

// sheetSize is the old plastic's size, to the sixteenth below: it lay in the frame. A
// reading that would not drop into the frame is cut to the room there is.
func sheetSize(u *Unit, sh *sheet, side int) Length {
	p := sh.exact[plastic][side]
	if sh.both(plastic, retainerOut, side) && p >= sh.exact[retainerOut][side] {
		p = pocketSheet(sh.exact[retainerOut][side], u.Material)
	}
	return roundDown(p, Sixteenth)
}

// unitRange spans the unit of a curb that was not measured outside: from its inside and
// the usual walls, or from the old frame.
func unitRange(o *Order, sh *sheet, rules *Rules) {
	span := func(s spot, low, high Length) {
		o.Estimated = true
		o.Low = sh.size(s, func(i int) Length { return roundUp(sh.exact[s][i]+low, rules.Making.Step) })
		o.High = sh.size(s, func(i int) Length { return roundUp(sh.exact[s][i]+high, rules.Making.Step) })
	}
	switch {
	case sh.complete(frame):
		span(frame, -Inch/8, Inch/8)
	case sh.complete(inside):
		span(inside, singleWall+rules.Gap.SoundLow, oldWall+rules.Flashing+rules.Gap.SoundHigh)
	}
}

// domeRange spans the sheet of a dome that was not measured: what the opening must
// hold, and what the frame has room for.
func domeRange(o *Order, u *Unit, sh *sheet, rules *Rules) {
	switch {
	case sh.complete(retainerIn):
		o.Low = sh.size(retainerIn, func(i int) Length { return sh.exact[retainerIn][i] + 2*rules.Grip.SoundLow })
		o.High = sh.size(retainerIn, func(i int) Length {
			high := sh.exact[retainerIn][i] + 2*rules.Grip.SoundHigh
			if sh.both(retainerIn, retainerOut, i) {
				high = min(high, roundDown(pocketSheet(sh.exact[retainerOut][i], u.Material), Sixteenth))
			}
			return max(high, sh.exact[retainerIn][i]+2*rules.Grip.SoundLow)
		})
	case sh.complete(retainerOut):
		o.High = sh.size(retainerOut, func(i int) Length {
			return roundDown(pocketSheet(sh.exact[retainerOut][i], u.Material), Sixteenth)
		})
		o.Low = sh.size(retainerOut, func(i int) Length { return max(sh.exact[retainerOut][i]-2*Inch, Inch) })
	default:
		return
	}
	o.Estimated = true
}
