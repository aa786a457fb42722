package reading

var sizeToRoom = wordsOf(`in over above for at en sobre para de del the my our la el mi`)

// roomsOfSizes: "one 14x14 in the bath and one 14x22 in the hall": what each kind is called by is the
// room that its size has right after it, where each size of the message has one of its own.
func (r *reader) roomsOfSizes(ms []measure) {
	if len(ms) < 2 || r.Units > 1 {
		return
	}
	var at []int
	seen := map[string]bool{}
	for k := range ms {
		i := r.roomAfterSize(&ms[k])
		if i == 0 || len(ms[k].units) != 1 || ms[k].units[0] != k+1 || seen[r.toks[i].text] {
			return
		}
		seen[r.toks[i].text] = true
		at = append(at, i)
	}
	for k, i := range at {
		if r.out.Rooms[k+1] == "" {
			r.callRoom(k+1, i)
		}
	}
}

// roomAfterSize is the room that a size is followed by, 0 for none.
func (r *reader) roomAfterSize(m *measure) int {
	i := m.last + 1
	for r.markAt(i, '(') || r.among(i, sizeToRoom) || r.noun(i) {
		i++
	}
	if m.shape != pair && !m.square || m.drop || !r.room(i) || sizeWords.has(r.toks[i].text) {
		return 0
	}
	return i
}
