package reading

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// node is a place in the phrase tree.
type node struct {
	edges   []edge // sorted by symbol
	gap     int32  // the node after "..": any few words may stand between; 0 for none
	meaning int32  // the phrase that ends here, -1 for none
	tight   bool   // of a phrase written with "_": no small words between
}

type edge struct {
	symbol, to int32
}

// follow is the node that a symbol leads to, -1 where none.
func (v *vocabulary) follow(at, symbol int32) int32 {
	for _, e := range v.nodes[at].edges {
		if e.symbol == symbol {
			return e.to
		}
	}
	return -1
}

// sortNodes makes the nodes ready for searching.
func (v *vocabulary) sortNodes() {
	for i := range v.nodes {
		slices.SortFunc(v.nodes[i].edges, func(a, b edge) int { return int(a.symbol - b.symbol) })
	}
	for _, w := range v.known {
		slices.Sort(w.symbols)
		w.symbols = slices.Compact(w.symbols)
		for in := range layerCount {
			w.starts[in] = nil
			for _, s := range w.symbols {
				if next := v.follow(int32(in), s); next >= 0 {
					w.starts[in] = append(w.starts[in], next)
				}
			}
		}
	}
}

// phrase adds all that a phrase's pattern stands for to the tree of its layer.
func (v *vocabulary) phrase(in layer, pattern string, senses []sense) error {
	fields := strings.Fields(spaced.Replace(pattern))
	p := patternParser{v: v, fields: fields, trade: in != talkLayer && in != roofLayer}
	alternatives, err := p.sequence()
	if err == nil && p.at < len(fields) {
		err = fmt.Errorf("unmatched ) in %q", pattern)
	}
	if err != nil {
		return err
	}
	v.phrases = append(v.phrases, senses)
	id := int32(len(v.phrases) - 1)
	for _, symbols := range alternatives {
		if len(symbols) == 0 {
			return fmt.Errorf("phrase %q may be empty", pattern)
		}
		at := int32(in)
		for _, s := range symbols {
			at = v.along(at, s)
		}
		v.mean(at, id)
	}
	return nil
}

// along is the node that a symbol leads to from another, made where it is not there yet.
func (v *vocabulary) along(at, s int32) int32 {
	if s == gapSymbol {
		if v.nodes[at].gap == 0 {
			v.nodes[at].gap = int32(len(v.nodes))
			v.nodes = append(v.nodes, node{meaning: -1})
		}
		return v.nodes[at].gap
	}
	next := v.follow(at, s)
	if next < 0 {
		next = int32(len(v.nodes))
		v.nodes = append(v.nodes, node{meaning: -1, tight: v.nodes[at].tight || v.tight[s]})
		v.nodes[at].edges = append(v.nodes[at].edges, edge{s, next})
	}
	return next
}

// gapSymbol is "..", a few words of any kind.
const gapSymbol = -1

// mean says what the phrase that ends at a node means; the same phrase on several
// lines has the senses of all.
func (v *vocabulary) mean(at, id int32) {
	have := v.nodes[at].meaning
	switch {
	case have < 0:
		v.nodes[at].meaning = id
	case have != id:
		v.phrases = append(v.phrases, append(append([]sense{}, v.phrases[have]...), v.phrases[id]...))
		v.nodes[at].meaning = int32(len(v.phrases) - 1)
	}
}

var spaced = strings.NewReplacer(")?", " ) ? ", "(", " ( ", ")", " ) ", "|", " | ")

// patternParser reads a pattern: words, (a|b), ?, <class>.
type patternParser struct {
	v      *vocabulary
	fields []string
	at     int
	trade  bool // its words are those of the trade
}

// sequence reads alternatives up to a closing parenthesis or the end.
func (p *patternParser) sequence() ([][]int32, error) {
	var all [][]int32
	current := [][]int32{{}}
	for p.at < len(p.fields) && p.fields[p.at] != ")" {
		if p.fields[p.at] == "|" {
			all = append(all, current...)
			current = [][]int32{{}}
			p.at++
			continue
		}
		part, err := p.part()
		if err != nil {
			return nil, err
		}
		current = product(current, part)
	}
	return append(all, current...), nil
}

// part reads one word, class or group, perhaps with a ? after it.
func (p *patternParser) part() ([][]int32, error) {
	f := p.fields[p.at]
	p.at++
	optional := false
	var out [][]int32
	if f == "(" {
		inner, err := p.sequence()
		if err != nil {
			return nil, err
		}
		if p.at >= len(p.fields) {
			return nil, fmt.Errorf("( without ) in %v", p.fields)
		}
		p.at++
		out = p.v.joinWords(inner)
	} else {
		f, optional = strings.CutSuffix(f, "?")
		out = [][]int32{p.wordOrTight(f)}
	}
	if p.at < len(p.fields) && p.fields[p.at] == "?" {
		optional = true
		p.at++
	}
	if optional {
		if p.v.allFiller(out) { // skipped in reading anyway
			return [][]int32{{}}, nil
		}
		out = append(out, []int32{})
	}
	return out, nil
}

// joinWords puts single words that may stand in the same place into one class, so that
// the tree does not grow with each.
func (v *vocabulary) joinWords(alternatives [][]int32) [][]int32 {
	var single []int32
	var out [][]int32
	for _, a := range alternatives {
		if len(a) == 1 {
			single = append(single, a[0])
		} else {
			out = append(out, a)
		}
	}
	if len(single) < 2 {
		return alternatives
	}
	slices.Sort(single)
	single = slices.Compact(single)
	name := fmt.Sprint(single)
	symbol, known := v.groups[name]
	if !known {
		v.symbols++
		symbol = v.symbols
		v.groups[name] = symbol
		for _, s := range single {
			for _, w := range v.bearers[s] {
				if w.symbols[len(w.symbols)-1] != symbol { // else it has another of them too
					v.give(w, symbol)
				}
			}
		}
	}
	return append(out, []int32{symbol})
}

// allFiller says whether each alternative is one small word that reading skips.
func (v *vocabulary) allFiller(alternatives [][]int32) bool {
	for _, a := range alternatives {
		if len(a) != 1 || !v.fillers[a[0]] {
			return false
		}
	}
	return true
}

// wordOrTight: "one_second" is the two words with nothing between. Its first word has
// a symbol of its own for that, so that the rest of the tree is not concerned.
func (p *patternParser) wordOrTight(f string) []int32 {
	if f == ".." {
		return []int32{gapSymbol}
	}
	if !strings.Contains(f, "_") {
		return []int32{p.symbol(f)}
	}
	var out []int32
	for i, part := range strings.Split(f, "_") {
		w := p.v.word(part)
		if i > 0 {
			out = append(out, w.own)
			continue
		}
		if w.tight == 0 {
			p.v.symbols++
			w.tight = p.v.symbols
			p.v.give(w, w.tight)
			p.v.tight[w.tight] = true
		}
		out = append(out, w.tight)
	}
	return out
}

// symbol is what a word or a class is in the tree. A digit is the word for it, as it is in
// a message: "2 capas" is found as "two capas".
func (p *patternParser) symbol(f string) int32 {
	if n, err := strconv.Atoi(f); err == nil && n < len(unitNames) {
		f = unitNames[n]
	}
	if p.trade && !strings.HasPrefix(f, "<") {
		p.v.word(f).trade = true
	}
	if strings.HasPrefix(f, "<") {
		return p.v.classSymbol(f)
	}
	return p.v.word(f).own
}

func product(a, b [][]int32) [][]int32 {
	out := make([][]int32, 0, len(a)*len(b))
	for _, x := range a {
		for _, y := range b {
			out = append(out, append(append(make([]int32, 0, len(x)+len(y)), x...), y...))
		}
	}
	return out
}
