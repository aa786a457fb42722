package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	slopeLinks  = wordsOf(`in on over to by x en sobre a per de and n inch inches`)
	slopedOther = wordsOf(`panel panels acrylic plastic sheet sheets skylight skylights glass dome pane piece window
		hatch clear plexiglass lexan polycarbonate lip edge frame`)
)

const run = 12 * fitcheck.Inch

// slopes reads the roof's slope: 4/12, 4:12, "4 in 12", "four twelve", "1/4 inch per
// foot", "flat roof".
func (r *reader) slopes() {
	r.inchMark()
	for i := range r.toks {
		if r.toks[i].used {
			continue
		}
		if r.toks[i].kind == numToken || r.numberAt(i).kind != notNumber {
			if !r.ratioAt(i) && !r.perFootAt(i) {
				r.riseOverRun(i)
			}
		} else if r.wordAt(i, "a", "un") || r.footAt(i) && r.wordAt(i-1, "every", "each", "per", "cada") {
			r.riseOverRun(i)
		}
	}
	r.flatThere()
	if r.known(fitcheck.TopicRoofSlope) && r.wordsIn(0, len(r.toks), "no", "wait", "actually", "scratch", "sorry") {
		r.dropDoubt(fitcheck.TopicRoofSlope) // "2 in 12 maybe? no wait it's 3 in 12"
	}
	if len(r.refs) == 0 && (r.known(fitcheck.TopicRoofSlope) || r.doubtful(fitcheck.TopicRoofSlope)) {
		return
	}
	r.slopeInWords()
}

// ratioAt reads a rise over twelve that starts at token i.
func (r *reader) ratioAt(i int) bool {
	rise, next := r.wholeAt(i), i+1
	n := numeral{num: rise, den: 1}
	if t := &r.toks[i]; t.kind == numToken && t.dec > 0 && !t.bad {
		n.num = t.whole
		for range t.dec {
			n.den *= 10
		}
		rise = 0
	}
	if rise < 0 {
		return false
	}
	if _, _, _, ok := r.slashed(i); ok && !r.twelve(next+1) ||
		r.toks[i].kind == numToken && !r.markAt(next, '/') || r.numberAt(i).kind != notNumber {
		if m, end := r.numeralAt(i); end > next && !m.bad && m.num > 0 && r.overTwelve(end) {
			n, next = m, end
		}
	}
	if n.num > 24*n.den || r.wordAt(i-1, "between") && !r.asked(fitcheck.TopicRoofSlope) {
		return false
	}
	if r.wordAt(next, "inch", "inches", "in") && r.wordsIn(next, min(next+4, len(r.toks)), "ft", "feet", "foot") &&
		!r.wordsIn(next, min(next+4, len(r.toks)), "per", "a", "every", "each") {
		return false // "4 inch in 12 ft"
	}
	if !r.overTwelve(next) {
		return r.pitchAt(i, next, n)
	}
	strong := r.markAt(next, '/') || r.markAt(next, ':') || r.wordAt(next, "on", "in", "over")
	last := next
	for !r.twelve(last) {
		last++
	}
	if !(r.asked(fitcheck.TopicRoofSlope) || r.slopeNear(i) ||
		strong && r.wordsIn(max(0, i-2), i, "roof", "roofs", "techo") ||
		strong && (r.littleElse(i, last) || r.coveringNear(i))) {
		return false
	}
	if from := r.rangeFrom(i); from >= 0 {
		r.use(from, last)
		r.unclear(fitcheck.TopicRoofSlope, 0, WhyRange, nil, from, last)
		return true
	}
	r.sayslope(fitcheck.Slope{Rise: fitcheck.Inch * fitcheck.Length(n.num) / fitcheck.Length(n.den), Run: run}, i, last)
	return true
}

// pitchAt: "a 5 pitch" is five in twelve.
func (r *reader) pitchAt(i, next int, n numeral) bool {
	if !r.wordAt(next, "pitch", "pitched") || r.numberAfter(next+1) || n.num == 0 || r.wordAt(i-1, "/", "to") {
		return false
	}
	r.sayslope(fitcheck.Slope{Rise: fitcheck.Length(n.num * int64(fitcheck.Inch) / n.den), Run: run}, i, next)
	return true
}

func (r *reader) overTwelve(i int) bool {
	if (r.asked(fitcheck.TopicRoofSlope) || r.slopeNear(i)) && r.unitAt(i) == inch && r.toks[i].kind == wordToken &&
		!r.wordAt(i, "in") {
		i++ // "sube 5 pulgadas por cada 12"
	}
	if r.twelve(i) {
		return r.numberAt(i).kind != notNumber || r.asked(fitcheck.TopicRoofSlope)
	}
	if r.wordAt(i, "for", "in", "per", "out", "to", "over", "por") && r.wordAt(i+1, "every", "each", "of", "the", "cada") &&
		r.twelve(i+2) {
		return true
	}
	if i+1 >= len(r.toks) || !r.twelve(i+1) {
		return false
	}
	t := &r.toks[i]
	return t.mark('/') || t.mark(':') || t.mark('-') || t.among(slopeLinks)
}

func (r *reader) twelve(i int) bool { return r.wholeAt(i) == 12 && !r.used(i) }

func (r *reader) slopeNear(i int) bool {
	first, last := r.sentence(i)
	labels := within(r.labels, first, last)
	for n := range labels {
		if labels[n].has1("slope") {
			return true
		}
	}
	return false
}

func (r *reader) aloneBetween(first, last int) bool {
	for i := range r.toks {
		if (i < first || i > last) && r.toks[i].kind != markToken {
			return false
		}
	}
	return true
}

// littleElse: the sentence says nothing beside the ratio.
func (r *reader) littleElse(first, last int) bool {
	if r.unitAt(last+1) != noUnit || r.by(last+1) || r.by(first-1) {
		return false
	}
	from, to := r.sentence(first)
	for i := from; i <= to; i++ {
		t := &r.toks[i]
		if i >= first && i <= last || t.kind == markToken || r.roughAt(i) ||
			t.kind == wordToken && t.word != nil && t.word.filler ||
			r.wordAt(i, "i", "think", "maybe", "to") {
			continue
		}
		return false
	}
	return true
}

// sayslope records a slope, or that it was a guess.
func (r *reader) sayslope(s fitcheck.Slope, first, last int) {
	r.use(first, last)
	m := measure{first: first, last: last, parts: []quantity{{first: first, last: last}}}
	from, to := r.sentence(first)
	for i := from; i <= to; i++ {
		if h := r.labelFrom(i); h != nil {
			if how, ok := h.has("rough"); ok && how != "off" {
				r.takeRough(&m, h, how, i < first)
			}
			if h.senses[0].kind == "not" && i < first && r.only(h.last+1, first-1) {
				return
			}
		}
	}
	units := r.unitsAt(first, last)
	if len(units) == 0 {
		units = []int{0}
	}
	for _, unit := range units {
		if m.rough {
			r.unclear(fitcheck.TopicRoofSlope, unit, WhyRough, s, first, last)
		} else {
			r.fact(fitcheck.TopicRoofSlope, unit, s, first, last)
		}
	}
}

// perFootAt: "1/4 inch per foot", "drops 3 inches every foot".
func (r *reader) perFootAt(i int) bool {
	n, next := r.numeralAt(i)
	if next == i || n.bad {
		return false
	}
	for r.wordAt(next, "inch", "inches", "in", "of", "an", "slope", "drop", "fall") || r.markAt(next, '"') {
		next++
	}
	for r.wordAt(next, "pulgada", "pulgadas", "de", "caida", "desnivel", "pendiente") {
		next++
	}
	if r.wordAt(next, "for") && r.wordAt(next+1, "every", "each", "a") {
		next++
	}
	if !r.wordAt(next, "per", "every", "to", "a", "each", "por", "cada") {
		return false
	}
	next++
	for r.wordAt(next, "the", "every", "each", "a", "one", "cada", "un") {
		next++
	}
	if r.unitAt(next) != foot || r.toks[next].kind != wordToken {
		return false
	}
	if n.num > 24*n.den {
		return false
	}
	r.sayslope(fitcheck.Slope{Rise: fitcheck.Length(n.num * int64(fitcheck.Inch) / n.den), Run: run}, i, next)
	return true
}

// slopeInWords: "flat roof"; "steep" is no number.
func (r *reader) slopeInWords() {
	flat, vague := -1, -1
	for n := range r.labels {
		switch v, _ := r.labels[n].has("slope"); v {
		case "flat":
			if h := &r.labels[n]; r.wordAt(h.last, "flat") && r.among(h.last+1, slopedOther) {
				continue // "the roof has a flat acrylic panel"
			}
			flat = n
		case "vague":
			vague = n
		}
	}
	if flat >= 0 {
		h := &r.labels[flat]
		if !r.negated(h.first) && !r.questioned(h.first) {
			r.sayslope(fitcheck.Slope{Rise: 0, Run: run}, h.first, h.last)
		}
		return
	}
	if !r.asked(fitcheck.TopicRoofSlope) {
		return
	}
	for i := range r.toks {
		if r.toks[i].kind == numToken && r.wordAt(i+1, "deg", "degree", "degrees", "grados") {
			r.unclear(fitcheck.TopicRoofSlope, 0, WhyUnits, nil, i, i+1)
			return
		}
	}
	if vague >= 0 {
		r.unclear(fitcheck.TopicRoofSlope, 0, WhyRough, nil, r.labels[vague].first, r.labels[vague].last)
		return
	}
	for i := range r.toks {
		if r.wordAt(i, "level") &&
			(r.wordAt(i-1, "a", "the", "my", "foot", "spirit", "torpedo", "bubble", "with") || r.wordAt(i+1, "on", "app", "against")) {
			continue // "I held a level on the shingles": the tool
		}
		if r.wordAt(i, "flat", "plano", "plana", "level") && !r.negated(i) {
			r.sayslope(fitcheck.Slope{Rise: 0, Run: run}, i, i)
			return
		}
	}
}
