package reading

// afterNote is where a clause goes on after words that only ask to take note of it: "please note that I
// meant bronze", "kindly be advised …", "tome nota que …".
func (r *reader) afterNote(from int) int {
	i := from
	for r.wordAt(i, "please", "pls", "kindly", "just", "do", "be", "also", "and", "but", "fyi", "favor", "de", "por", "y", "pero", "ojo") {
		i++
	}
	if !r.wordAt(i, "note", "noted", "notice", "aware", "advised", "remember", "nota", "tome", "tomen", "anotar", "anote", "anoten") {
		return from
	}
	for r.wordAt(i, "note", "noted", "notice", "aware", "advised", "remember", "nota", "tome", "tomen", "anotar", "anote", "anoten", "that", "down", "de", "que") || r.markAt(i, ':') {
		i++
	}
	return i
}
