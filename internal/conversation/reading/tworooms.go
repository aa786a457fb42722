package reading

import "strings"

// roomsOfTwo are words that name a room together with "room".
var roomsOfTwo = wordSet(`living dining family laundry utility storage powder conference master guest bonus shower bath bed sun mud break locker class rest front back
	meeting rec game craft sewing weight waiting exam server pool play music media green exercise changing lunch staff computer boiler furnace mechanical
	prayer choir band great tv sitting spare upstairs downstairs tack feed milk pump wash show store`)

// joinRooms makes one word of "living room", where kinds are known that it may name or what it
// measures follows: "living room 25 x 25, den 25 x 49".
func (r *reader) joinRooms() {
	out := r.toks[:0]
	for i := 0; i < len(r.toks); i++ {
		t := r.toks[i]
		if t.kind == wordToken && roomsOfTwo[t.text] && r.wordAt(i+1, "room") && (r.Units > 1 || r.measuredRoom(i+2)) {
			t.text, t.to, t.word = t.text+" room", r.toks[i+1].to, nil
			i++
		}
		out = append(out, t)
	}
	r.toks = out
}

// measuredRoom: a number or a colon stands right after a room.
func (r *reader) measuredRoom(i int) bool {
	if r.wordAt(i, "is", "measures", "one", "skylight") {
		i++
	}
	return i < len(r.toks) && r.toks[i].kind == numToken || r.markAt(i, ':')
}

// roomOfTwo: the token is such a word.
func (t *token) roomOfTwo() bool {
	return t.kind == wordToken && strings.HasSuffix(t.text, " room")
}
