package reading

import "example.com/intake-bot/internal/fitcheck"

// Colors that were said without the layer that each is for.

var wishesBetween = wordsOf(`but want wants wanted going prefers quiere actually sorry no instead now pero quiero
	perdon mejor`)

// unlayered places the colors that were said without a layer; it reports true where
// they can't be.
func (r *reader) unlayered(c *fitcheck.Color, tints []tint) bool {
	var free []tint
	for _, t := range tints {
		if t.layer == "" {
			free = append(free, t)
		}
	}
	switch len(free) {
	case 0:
		return false
	case 1:
		switch {
		case c.Outer == "" || len(tints) == 1:
			c.Outer = free[0].value
		case c.Inner == "" && free[0].value != c.Outer:
			c.Inner = free[0].value
		}
		return false
	}
	if len(free) == 2 &&
		(r.over(free[0].last+1, free[1].first) || r.markAt(free[0].last+1, '/') && free[0].last+2 == free[1].first) {
		c.Outer, c.Inner = free[0].value, free[1].value
		return false
	}
	if len(free) == 3 && r.over(free[0].last+1, free[1].first) && r.over(free[1].last+1, free[2].first) {
		c.Outer, c.Middle, c.Inner = free[0].value, free[1].value, free[2].value
		return false
	}
	if len(free) == 2 && free[0].value == free[1].value && (r.markAt(free[0].last+1, '/') || r.wordAt(free[0].last+1, "and", "y")) {
		c.Outer, c.Inner = free[0].value, free[0].value
		return false
	}
	if len(free) == 3 && r.inTurn(free) {
		c.Outer, c.Middle, c.Inner = free[0].value, free[1].value, free[2].value
		return false
	}
	if len(free) == 3 && r.wordsIn(free[0].last+1, free[1].first, "then", "luego") &&
		r.wordsIn(free[1].last+1, free[2].first, "then", "luego") {
		c.Outer, c.Middle, c.Inner = free[0].value, free[1].value, free[2].value
		return false // "white on top then clear then clear"
	}
	if len(free) == 2 && len(tints) == 2 && r.outerFirst(free) {
		c.Outer, c.Inner = free[0].value, free[1].value
		return false
	}
	same := true
	for _, t := range free[1:] {
		same = same && t.value == free[0].value
	}
	if same && c.Outer != "" && c.Outer != free[0].value && len(free) == 2 && c.Inner == "" {
		c.Middle, c.Inner = free[0].value, free[0].value
		return false // "white on top then clear then clear"
	}
	if same {
		c.Outer = free[0].value
		return false
	}
	if v, ok := r.oneShade(free); ok {
		c.Outer = v
		return false
	}
	a, b := free[0], free[len(free)-1]
	if r.wordAt(a.first-1, "from", "de") && r.wordAt(b.first-1, "to", "a") ||
		r.exchanged(a.first, a.last, b.first) || r.wishedInstead(a.last+1, b.first) {
		c.Outer = b.value // "from bronze to clear"
		return false
	}
	if r.anyOf(a.last+1, b.first, wishesBetween) {
		c.Outer = b.value
		return false
	}
	return true
}

// inTurn: "triple. clear, clear, white": as many colors side by side as there are layers, from
// the outside in.
func (r *reader) inTurn(free []tint) bool {
	for k := 1; k < len(free); k++ {
		for i := free[k-1].last + 1; i < free[k].first; i++ {
			if !r.markAt(i, ',') && !r.markAt(i, '/') && !r.wordAt(i, "and", "then", "y") {
				return false
			}
		}
	}
	for _, f := range r.out.Facts {
		if n, ok := f.Value.(fitcheck.Whole); ok && f.Topic == fitcheck.TopicLayers {
			return int(n) == len(free)
		}
	}
	return false
}

// layersOr: the number is one of two of layers: "one layer or two?", "¿una o dos capas?".
func (r *reader) layersOr(i int) bool {
	if !r.layerNumber(i) {
		return false
	}
	if r.wordAt(i-1, "or", "o") &&
		(r.wordAt(i-2, "layer", "layers", "capa", "capas") || r.layerNumber(i-2) && r.wordAt(i+1, "layer", "layers", "capa", "capas")) {
		return true
	}
	return r.wordAt(i+1, "or", "o") && r.layerNumber(i+2) && r.wordAt(i+3, "layer", "layers", "capa", "capas")
}

// layerNumber: one, two or three, whatever it was taken for.
func (r *reader) layerNumber(i int) bool {
	if i < 0 || i >= len(r.toks) {
		return false
	}
	switch r.toks[i].text {
	case "1", "2", "3", "one", "two", "three", "una", "uno", "dos", "tres":
		return true
	}
	return false
}

// outerFirst: "two layers, clear and white", of one kind of skylight: as many colors as layers, told in the order
// that the question names.
func (r *reader) outerFirst(free []tint) bool {
	between := free[0].last + 1
	if r.markAt(between, ',') {
		between++
	}
	if r.among(between, andWords) {
		between++
	}
	if r.Units > 1 || between == free[0].last+1 || between != free[1].first {
		return false
	}
	for _, f := range r.out.Facts {
		if f.Topic == fitcheck.TopicLayers && f.Unit == 0 {
			return f.Value == fitcheck.Whole(2)
		}
	}
	return false
}
