package reading

import "example.com/intake-bot/internal/fitcheck"

// laidParts lists the parts between two tokens in the order named; none where a word among them changes what
// they tell.
func (r *reader) laidParts(from, to int) []laid {
	var parts []laid
	how, by := notLying, -1
	for i := from; i < to; i++ {
		t := &r.toks[i]
		if t.kind == wordToken &&
			(notKinds.has(t.text) || negWords.has(t.text) && !r.hidden(i) && !r.saysUnknown(i) ||
				t.text == "or" && !r.wordAt(i+1, "so") || t.text == "o") {
			return nil
		}
		if t.ends() {
			how = notLying
			continue
		}
		if r.belowThat(i) && len(parts) > 0 {
			how, by = liesOn, len(parts)-1
			continue
		}
		if l := r.lieAt(i); l != notLying {
			how, by = l, len(parts)-1
			continue
		}
		if k := firstBox(parts); k >= 0 && k < len(parts)-1 && r.atopAlone(i) {
			parts = append(parts, laid{part: boxPart, token: i, how: liesOn, under: len(parts) - 1})
			how = notLying
			continue
		}
		if r.wordAt(i, "shingled", "roofed") && r.wordAt(i+1, "over", "in") && len(parts) > 0 && parts[len(parts)-1].part == framePart {
			parts = append(parts, laid{part: roofPart, token: i + 1, how: liesUnder, under: len(parts) - 1})
			i++
			continue
		}
		part, end := r.laidAt(i)
		if part == noPart && how != notLying && r.wordAt(i, "that", "it", "this", "those", "eso", "ese") {
			if k := meantBy(parts, by); k >= 0 {
				parts = append(parts, laid{part: parts[k].part, token: i, how: how, under: by})
				how = notLying
			}
			continue
		}
		if part == noPart {
			continue
		}
		if part == darkPart {
			return nil
		}
		p := laid{part: part, token: end, how: how, under: by, round: r.wordsIn(max(0, i-2), i, "around")}
		if how != notLying && by < 0 {
			p.how = notLying
		}
		parts = append(parts, p)
		how = notLying
		i = end
	}
	return parts
}

// kindOf is the kind of frame that the parts make, "" where they don't tell.
func kindOf(parts []laid) (value string, first, last int) {
	box, frame, metal := false, false, false
	for _, p := range parts {
		metal = metal || p.part == metalBox
		box = box || p.part == boxPart
		frame = frame || p.part == framePart
	}
	for _, p := range parts {
		if p.how == notLying {
			continue
		}
		a, b := parts[p.under].part, p.part
		how := p.how
		if how == heldBy && a == sheetPart && b == framePart || how == holdsDown && a == framePart && b == sheetPart {
			if value == "" {
				value, first, last = fitcheck.StyleCurbMount, parts[p.under].token, p.token
			}
			continue
		}
		if how == coveredBy {
			a, b, how = b, a, liesOver
		}
		if a == roofPart && p.round {
			continue // "shingles around the frame" are around any kind
		}
		v := ""
		switch {
		case a == sheetPart && b == framePart && how == liesOver:
			v = fitcheck.StyleDomeOverFrame
		case a == framePart && b == roofPart && how == liesUnder && !box, a == roofPart && b == framePart && how == liesOver && !box:
			v = fitcheck.StyleSelfFlashing
		case a == framePart && b == boxPart && (how == liesOver || how == liesOn),
			a == boxPart && b == framePart && how == liesUnder,
			a == wholePart && b == boxPart && how != liesUnder && frame,
			a == sheetPart && b == boxPart && (how == liesOver || how == liesOn) && frame:
			v = fitcheck.StyleCurbMount
		case (a == framePart || a == wholePart) && b == metalBox && (how == liesOver || how == liesOn):
			v = fitcheck.StyleCurbMount
		case a == framePart && b == sheetPart && how == liesOver && box:
			v = fitcheck.StyleCurbMount
		default:
			continue
		}
		if value == "" || v == fitcheck.StyleDomeOverFrame {
			value, first, last = v, parts[p.under].token, p.token
		}
	}
	if metal && value != fitcheck.StyleCurbMount {
		return "", 0, 0 // "a metal box" alone may be the frame's own tall sides
	}
	return value, first, last
}

var (
	belowWords = wordsOf(`under underneath below beneath debajo abajo`)
	belowOf    = wordsOf(`de del the it that this those them la el los las eso a an my of`)
)

// belowThat: "… with an aluminum frame, and below is wood", "y abajo es de madera": what was told last lies on what
// follows.
func (r *reader) belowThat(i int) bool {
	return r.among(i, belowWords) && !r.among(i+1, belowOf) && !r.stopAt(i+1) &&
		(r.among(i-1, andWords) || r.markAt(i-1, ','))
}
