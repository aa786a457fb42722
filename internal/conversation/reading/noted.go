package reading

var (
	noteLeads     = wordsOf(`please pls kindly just do be also and but fyi favor de por y pero ojo`)
	noteVerbs     = wordsOf(`note noted notice aware advised remember nota tome tomen anotar anote anoten`)
	noteVerbsThat = wordsOf(`note noted notice aware advised remember nota tome tomen anotar anote anoten that down
		de que`)
)

// afterNote is where a clause goes on after words that only ask to take note of it: "please note that I
// meant bronze", "kindly be advised …", "tome nota que …".
func (r *reader) afterNote(from int) int {
	i := from
	for r.among(i, noteLeads) {
		i++
	}
	if !r.among(i, noteVerbs) {
		return from
	}
	for r.among(i, noteVerbsThat) || r.markAt(i, ':') {
		i++
	}
	return i
}
