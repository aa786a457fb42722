package reading

// pastOnly is the next token that does not make less of a number: "are only 1", "son solo 2".
func (r *reader) pastOnly(i int) int {
	for r.wordAt(i, "only", "just", "really", "actually", "solo", "solamente", "nomas") {
		i++
	}
	return i
}

// severalKnown: the talk knows several of a kind that is not round, so that one whole number alone, told of
// them all, counts them also where a size was asked: "los chicos son 2".
func (r *reader) severalKnown(unit int) bool {
	return r.Counts[unit] > 1 && r.Names["round"] != unit && lookOf[r.Input.Rooms[unit]] != "round"
}
