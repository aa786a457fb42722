package fitcheck

// stockFor is the shop's item whose fit is nearest to the aim, nil where none is
// surely inside the sound window with the measurement error counted in.
func stockFor(part Replace, u *Unit, sh *sheet, rules *Rules) *StockItem {
	var best *StockItem
	var bestOff Length
	for i := range rules.Stock {
		item := &rules.Stock[i]
		if item.Part != part || !suits(item, u) {
			continue
		}
		if off, ok := stockFit(item, sh, rules); ok && (best == nil || off < bestOff) {
			best, bestOff = item, off
		}
	}
	return best
}

// suits says whether the item agrees with every choice that was made.
func suits(item *StockItem, u *Unit) bool {
	agree := func(item, said string) bool { return item == "" || said == "" || item == said }
	return agree(item.Profile, u.Profile) && agree(item.Material, u.Material) && agree(item.Finish, u.Finish) &&
		agree(item.Color.Outer, u.Color.Outer) && agree(item.Color.Inner, u.Color.Inner) &&
		(item.Layers == 0 || u.Layers == 0 || item.Layers == u.Layers)
}

// stockFit says whether an item surely fits, and how far it is from the aim.
func stockFit(item *StockItem, sh *sheet, rules *Rules) (off Length, ok bool) {
	have := [2]Length{item.Size.Width, item.Size.Length}
	round := item.Size.Diameter > 0
	if round {
		have = [2]Length{item.Size.Diameter, 0}
	}
	s := outside
	if item.Part == ReplaceDome {
		s = plastic
	}
	if !sh.complete(s) || sh.round[s] != round {
		return 0, false
	}
	for side, h := range have {
		if round && side == 1 {
			break
		}
		d, fits := stockSide(item.Part, h, s, side, sh, rules)
		if !fits {
			return 0, false
		}
		off += d
	}
	return off, true
}

// stockSide judges one side: a unit by its gap, of which the window up to loose is
// narrowed by the reading error; a dome by lying within the reading error of the old
// plastic.
func stockSide(part Replace, have Length, s spot, side int, sh *sheet, rules *Rules) (off Length, ok bool) {
	u := sh.u[s][side]
	if part == ReplaceUnit {
		gap := have - sh.exact[s][side] - sh.skew(side)
		off = max(gap-rules.Gap.Target, rules.Gap.Target-gap)
		if have == frameInside(sh, side, rules) { // what would be made to size
			return off, true
		}
		return off, within(gap.Inches(), rules.Gap.SoundLow.Inches(), rules.Gap.Loose.Inches(), u) == surelyInside
	}
	d := have - sh.exact[s][side]
	if sh.both(plastic, retainerIn, side) {
		grip := (have - sh.exact[retainerIn][side]).Inches() / 2
		if within(grip, rules.Grip.Short.Inches(), rules.Grip.Long.Inches(), sh.u[retainerIn][side]/2) != surelyInside {
			return 0, false
		}
	}
	return max(d, -d), within(d.Inches(), 0, 0, u) != surelyOutside
}
