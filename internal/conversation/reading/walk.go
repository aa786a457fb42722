package reading

import "slices"

// hit is a phrase found in a message.
type hit struct {
	first, last int // tokens
	senses      []sense
	named       bool // it says what a size is of
}

// scan finds a layer's phrases from left to right, the longest at each place.
func (v *vocabulary) scan(toks []token, in layer, out []hit) []hit {
	for i := 0; i < len(toks); {
		if toks[i].word == nil || toks[i].word.starts[in] == nil {
			i++
			continue
		}
		w := v.longest(toks, i, in)
		if w.last > i {
			if later := v.longerLater(toks, i, w.last, in); later > i {
				w = v.longest(toks[:later], i, in)
			}
		}
		if w.phrase < 0 {
			i++
			continue
		}
		out = append(out, hit{first: i, last: w.last, senses: w.senses()})
		i = w.last + 1
	}
	return out
}

// longerLater gives the token at which a longer phrase starts within the one from first
// to last, which gives way to it: "metal frame" to "frame caps the wood box", "a double"
// to "double layer". 0 where there is none.
func (v *vocabulary) longerLater(toks []token, first, last int, in layer) int {
	for i := first + 1; i <= last; i++ {
		if toks[i].word == nil || toks[i].word.starts[in] == nil {
			continue
		}
		w := v.longest(toks, i, in)
		if w.phrase >= 0 && w.last > last && (toks[first].word.filler && i == first+1 || w.last-i > last-first) {
			return i
		}
	}
	return 0
}

const (
	maxSkips  = 3  // small words skipped in a row within a phrase
	maxPhrase = 14 // words of a phrase
	maxGap    = 4  // words that ".." stands for
)

// longest walks the tree from the token on along every way that fits.
func (v *vocabulary) longest(toks []token, first int, in layer) walk {
	w := walk{v: v, toks: toks, last: -1, phrase: -1}
	for _, node := range toks[first].word.starts[in] {
		w.step(first+1, node, 1, 0)
	}
	return w
}

type walk struct {
	v      *vocabulary
	toks   []token
	last   int     // of the longest phrase
	phrase int32   // it, -1 where there is none
	also   []int32 // others as long
}

// senses are those of all phrases that are as long as the longest.
func (w *walk) senses() []sense {
	senses := w.v.phrases[w.phrase]
	if len(w.also) == 0 {
		return senses
	}
	senses = slices.Clone(senses)
	for _, p := range w.also {
		senses = append(senses, w.v.phrases[p]...)
	}
	return senses
}

func (w *walk) step(i int, at int32, depth, skipped int) {
	n := &w.v.nodes[at]
	if m := n.meaning; m >= 0 && skipped == 0 {
		switch {
		case i-1 > w.last:
			w.last, w.phrase, w.also = i-1, m, nil
		case i-1 == w.last && m != w.phrase && !slices.Contains(w.also, m):
			w.also = append(w.also, m)
		}
	}
	if i >= len(w.toks) || depth > maxPhrase {
		return
	}
	if n.gap > 0 {
		w.over(i, n.gap, depth)
	}
	t := &w.toks[i]
	if depth > 0 && (t.mark('-') || t.mark(':') || t.mark('/')) && t.glued && skipped < maxSkips {
		w.step(i+1, at, depth, skipped+1)
		return
	}
	if (t.mark('+') || t.mark('&')) && !t.glued && depth > 0 { // "dome + frame"
		if and := w.v.known["and"]; and != nil {
			w.follow(i, n.edges, and.symbols, depth)
		}
		return
	}
	if t.word == nil {
		return
	}
	w.follow(i, n.edges, t.word.symbols, depth)
	if depth > 0 && t.word.filler && !n.tight && skipped < maxSkips {
		w.step(i+1, at, depth, skipped+1)
	}
}

// over goes on after a gap of none to a few words. A gap does not reach over the end
// of a sentence, a comma, a "not" or a "but".
func (w *walk) over(i int, at int32, depth int) {
	for n := 0; n <= maxGap && i < len(w.toks); n++ {
		w.step(i, at, depth+1, 0)
		t := &w.toks[i]
		if t.ends() || t.mark('(') || t.mark(',') ||
			t.kind == wordToken && (negWords.has(t.text) || t.text == "but" || t.text == "pero") {
			return
		}
		i++
	}
}

// follow goes along every edge that the word's symbols name. Both lists are sorted.
func (w *walk) follow(i int, edges []edge, symbols []int32, depth int) {
	if len(edges) > 16 {
		for _, s := range symbols {
			if k, ok := slices.BinarySearchFunc(edges, s, func(e edge, s int32) int { return int(e.symbol - s) }); ok {
				w.step(i+1, edges[k].to, depth+1, 0)
			}
		}
		return
	}
	k := 0
	for _, e := range edges {
		for k < len(symbols) && symbols[k] < e.symbol {
			k++
		}
		if k == len(symbols) {
			return
		}
		if symbols[k] == e.symbol {
			w.step(i+1, e.to, depth+1, 0)
		}
	}
}

// pairAt: a size of two sides starts at token i.
func (r *reader) pairAt(i int) bool {
	_, next := r.numeralAt(i)
	if next == i {
		return false
	}
	for r.unitAt(next) != noUnit {
		next++
	}
	return r.by(next) && r.numberAfter(next+1)
}
