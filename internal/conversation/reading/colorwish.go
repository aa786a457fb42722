package reading

// Ways of wishing for a color in which no word of plastic stands, and of taking one back.

var (
	choseVerbs   = wordsOf(`said says picked chose dijo dice escogio`)
	tintChoosers = wordsOf(`i we she he they owner customer client homeowner wife husband board architect
		boss esposa esposo dueno cliente`)
	somethingIn  = wordsOf(`something anything it them these those one`)
	praiseWords  = wordsOf(`good nice great better best work please perfect`)
	stayVerbs    = wordsOf(`stay stays stayed staying remain remains remained`)
	tookBackTint = wordsOf(`mean meant digo sorry scratch perdon`)
)

// choseColor: "she said clear", "something in white would be good", "mejor que sea color bronce".
func (r *reader) choseColor(h *hit) bool {
	i := h.first - 1
	switch {
	case r.among(i, choseVerbs) && h.last == r.clauseEnd(h.last):
		return r.among(i-1, tintChoosers)
	case r.wordAt(i, "in") && r.among(i-1, somethingIn):
		return r.anyOf(h.last+1, r.clauseEnd(h.last)+1, praiseWords)
	case r.wordAt(i, "sea", "sean", "fuera", "fueran") && r.wordAt(i-1, "que"):
		return r.wordAt(i-2, "mejor", "quiero", "queremos", "prefiero", "quisiera")
	}
	return false
}

// staysClear: "acrylic stays clear longer": how a sheet ages; not "the inner stays clear".
func (r *reader) staysClear(n int) bool {
	i := r.choices[n].first - 1
	return r.among(i, stayVerbs) && n > 0 && r.choices[n-1].last == i-1 && r.choices[n-1].has1("material")
}

// takenBackTints leaves out the colors that the writer takes back for others: "clear over bronze, I
// mean bronze on top and clear on the bottom"; and the talk before "so bronze it has to be".
func (r *reader) takenBackTints(tints []tint) []tint {
	n := len(tints)
	if n > 1 && tints[n-1].value != "?" && tints[n-1].layer == "" && r.soItIs(&tints[n-1]) {
		return tints[n-1:]
	}
	for k := n - 2; k > 0; k-- {
		one, other := tints[k].layer, tints[k+1].layer
		if one != "" && other != "" && one != other && r.anyOf(tints[k-1].last+1, tints[k].first, tookBackTint) {
			return tints[k:]
		}
	}
	return tints
}

// soItIs: "so bronze it has to be".
func (r *reader) soItIs(t *tint) bool {
	return r.wordAt(t.first-1, "so", "entonces") && r.wordAt(t.last+1, "it") && r.wordAt(t.last+2, "is", "has")
}
