package reading

// Decimals in words: "twenty five point seven five", "49 point 625", "veinticinco punto
// setenta y cinco".

// point: the word that stands for a decimal point.
func (r *reader) point(i int) bool {
	return r.wordAt(i, "point", "punto", "dot", "pt", "coma")
}

// decimalsFrom reads the decimals in words or digits after the point at token i: one number
// ("seventy five", "625") or digit by digit ("seven five", "oh six"). ok is false where none
// follow.
func (r *reader) decimalsFrom(i int) (num, den int64, next int, ok bool) {
	num, den, next = 0, 1, i
	for next < len(r.toks) && den < 1000 {
		d := r.spokenDigit(next)
		if d < 0 || r.partAt(next+1) > 0 && next > i {
			break
		}
		num, den, next = num*10+int64(d), den*10, next+1
	}
	if next > i {
		return num, den, next, true
	}
	if t := i; t < len(r.toks) && r.toks[t].kind == numToken && r.toks[t].dec == 0 && len(r.toks[t].text) < 5 {
		for range r.toks[t].text {
			den *= 10
		}
		return r.toks[t].whole, den, t + 1, true
	}
	v, next := r.cardinal(i)
	if next == i || v >= 1000 {
		return 0, 1, i, false
	}
	for den = 10; den <= v; den *= 10 {
	}
	return v, den, next, true
}

// spokenDecimal is the number whose whole part is v and whose point is at token i.
func (r *reader) spokenDecimal(v int64, i int) (numeral, int, bool) {
	if !r.point(i) {
		return numeral{}, i, false
	}
	d, den, next, ok := r.decimalsFrom(i + 1)
	if !ok {
		return numeral{}, i, false
	}
	return numeral{num: v*den + d, den: den, fine: den, words: true}, next, true
}
