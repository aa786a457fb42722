package reading

import "example.com/intake-bot/internal/fitcheck"

// shades are words that tell what a color of ours looks like.
var shades = map[string]*wordSet{
	fitcheck.ColorBronze: wordsOf("brown brownish dark tint tinted smoke smoked smoky amber cafe oscuro"),
	fitcheck.ColorWhite:  wordsOf("milky frosted opaque cloudy translucent lechoso hazy"),
	fitcheck.ColorClear:  wordsOf("transparent colored tint tinted"),
}

// withoutShades leaves out words that only describe the one color named beside them:
// "bronze, the brown tint"; not "bronze or brown".
func (r *reader) withoutShades(tints []tint) []tint {
	known := -1
	for k, t := range tints {
		if shades[t.value] == nil {
			continue
		}
		if known >= 0 && tints[known].value != t.value {
			return tints
		}
		known = k
	}
	if known < 0 {
		return tints
	}
	var kept []tint
	for k, t := range tints {
		if k != known && shades[t.value] == nil && t.layer == "" && r.describes(t, tints[known]) {
			continue
		}
		kept = append(kept, t)
	}
	return kept
}

// describes: every word of the tint is a shade of the color, and no "or" stands between.
func (r *reader) describes(t, color tint) bool {
	for i := t.first; i <= t.last; i++ {
		if r.toks[i].kind == wordToken && !shades[color.value].has(r.toks[i].text) {
			return false
		}
	}
	from, to := min(t.last, color.last)+1, max(t.first, color.first)
	for i := from; i < to; i++ {
		if r.wordAt(i, "or", "o", "over", "and", "y", "inside", "outside") || r.markAt(i, '/') {
			return false
		}
	}
	return true
}

// saidTwice: "see-through clear": the next word says the same color again.
func (r *reader) saidTwice(n int, value string) bool {
	if n+1 >= len(r.choices) {
		return false
	}
	next := &r.choices[n+1]
	v, ok := next.has("color")
	return ok && v == value && r.choices[n].has1("color") && next.first == r.choices[n].last+1
}

// ofEach: "#2 and #3 should be bronze": a color that is said of some of the kinds together.
func (r *reader) ofEach(t tint) []tint {
	units := r.unitsAt(t.first, t.last)
	if len(units) < 2 || len(units) >= r.Units {
		return []tint{t}
	}
	var each []tint
	for _, u := range units {
		t.unit = u
		each = append(each, t)
	}
	return each
}

// oneShade: "smoky brown bronze tint": shades side by side are one color, the known one.
func (r *reader) oneShade(free []tint) (string, bool) {
	value := ""
	for k, t := range free {
		if k > 0 && t.first != free[k-1].last+1 {
			return "", false
		}
		if t.value == fitcheck.ColorOther {
			continue
		}
		if value != "" && value != t.value {
			return "", false
		}
		value = t.value
	}
	return value, value != ""
}
