package fitcheck

// passSound is what the bulge should have to spare in the opening (common practice).
const passSound = Inch / 4

// passLines: the bulge must come up through the opening of the retaining frame.
func passLines(fs []Finding, sh *sheet) []Finding {
	room := sh.differences(retainerIn, bulge)
	spare := room.low()
	if room.n == 0 || spare >= passSound {
		return fs
	}
	f := Finding{Code: WontPassOpening, Severity: Note, Topic: TopicBulgeBase, Source: "geometry; the 1/4 in to spare is common practice",
		Settle: []Topic{TopicBulgeBase, TopicRetainerOpening}, Numbers: Numbers{"spare_in": spare.Inches()},
		Text: "The bulge has only " + atLeastAMark(spare) + " in to spare in the retaining frame's opening, where 1/4 is usual."}
	switch {
	case spare <= 0:
		f.Severity = Stop
		f.Text = "The foot of the bulge reads as large as the retaining frame's opening or larger, so as measured it would not pass through."
	case within(spare.Inches(), 0, 1000, room.u) != surelyInside:
		f.Severity = Ask
		f.Text = "The bulge has only " + atLeastAMark(spare) + " in to spare in the retaining frame's opening, too little to be sure that it passes, so could you measure both again?"
	}
	return append(fs, f)
}

// curbHole is how much smaller than the curb's inside a dome's bulge is at the least
// believed to be (common practice).
const curbHole = 6 * Inch

// bulgeLines: the bulge rises from the plastic inside its lip and stands over the curb's
// opening (geometry).
func bulgeLines(fs []Finding, sh *sheet) []Finding {
	f := Finding{Code: ImplausibleSize, Topic: TopicBulgeBase, Source: "geometry; the 6 in are common practice"}
	f.Numbers = Numbers{"found_in": max(sh.v[bulge][0], sh.v[bulge][1])}
	switch {
	case sh.complete(bulge) && sh.largest(bulge, outside) > 0:
		f.Severity, f.Settle = Stop, []Topic{TopicBulgeBase}
		f.Text = "The foot of the bulge reads larger than the whole curb, so could you measure the bulge again?"
	case sh.complete(bulge) && sh.largest(inside, bulge) > curbHole:
		f.Severity, f.Settle = Stop, []Topic{TopicBulgeBase}
		f.Text = "The foot of the bulge reads more than 6 in smaller than the curb's inside, so could you measure the bulge again?"
	case sh.any(bulge) && sh.anyOver(bulge, plastic):
		f.Severity, f.Settle, f.clash = Ask, []Topic{TopicPlasticSize, TopicBulgeBase}, true
		f.Text = "The foot of the bulge reads as large as the sheet that it rises from, so was the plastic measured edge to edge, flat lip included?"
	default:
		return fs
	}
	return append(fs, f)
}

// largest is by how much a goes beyond b where it does most, whichever way the sides were
// named; 0 where the two can't be held against each other.
func (sh *sheet) largest(a, b spot) Length {
	if !sh.bothComplete(a, b) {
		return 0
	}
	x, y := sh.exact[a], sh.exact[b]
	return max(min(x[0], x[1])-min(y[0], y[1]), max(x[0], x[1])-max(y[0], y[1]))
}

// anyOver says whether a reaches b on a side that both were read on.
func (sh *sheet) anyOver(a, b spot) bool {
	d := sh.differences(a, b)
	return d.n > 0 && d.high() >= 0
}
