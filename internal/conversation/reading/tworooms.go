package reading

import "strings"

// roomsOfTwo are words that name a room together with "room".
var roomsOfTwo = wordsOf(`living dining family laundry utility storage powder conference master guest bonus
	shower bath bed sun mud break locker class rest front back meeting rec game craft sewing weight exam server
	pool play music media green exercise changing lunch staff computer boiler furnace mechanical prayer choir great
	tv sitting spare upstairs downstairs tack feed milk pump wash show store sales waiting dressing powder robing
	crying fellowship plant mail nurse supply copy card trophy tasting sleeping`)

// roomsDe are what a "cuarto", a "sala" and the like are for.
var roomsDe = wordsOf(`lavado bano estar juntas servicio huespedes maquinas television tele visitas juegos
	costura musica conferencias espera clases casilleros ninos lavanderia trabajo maestros reuniones ejercicio
	descanso oracion`)

// joinRooms makes one word of "living room" and "cuarto de lavado", where kinds are known that it may
// name or what it measures follows: "living room 25 x 25, den 25 x 49".
func (r *reader) joinRooms() {
	out := r.toks[:0]
	for i := 0; i < len(r.toks); i++ {
		t := r.toks[i]
		if n := r.roomOfWords(i); n > 1 && (r.Units > 1 || r.measuredRoom(i+n)) {
			t.text, t.to, t.word = r.wordsOfRoom(i), r.toks[i+n-1].to, nil
			i += n - 1
		}
		out = append(out, t)
	}
	r.toks = out
}

// roomOfWords is how many words from a token on name a room together, 0 for none.
func (r *reader) roomOfWords(i int) int {
	switch {
	case i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken:
		return 0
	case roomsOfTwo.has(r.toks[i].text) && r.wordAt(i+1, "room"), r.wordAt(i, "bano", "recamara", "cuarto") &&
		r.wordAt(i+1, "principal"):
		return 2
	case r.wordAt(i, "cuarto", "sala", "salon", "bano", "recamara", "habitacion") && r.wordAt(i+1, "de") && i+2 < len(r.toks) &&
		r.among(i+2, roomsDe):
		return 3
	}
	return 0
}

// wordsOfRoom is the room that several words name.
func (r *reader) wordsOfRoom(i int) string {
	var words []string
	for k := range r.roomOfWords(i) {
		words = append(words, r.toks[i+k].text)
	}
	return strings.Join(words, " ")
}

// measuredRoom: a number or a colon stands right after a room.
func (r *reader) measuredRoom(i int) bool {
	if r.wordAt(i, "is", "measures", "one", "skylight", "mide", "es", "de") {
		i++
	}
	return i < len(r.toks) && r.toks[i].kind == numToken || r.markAt(i, ':')
}

// roomJoined: the token is such a word.
func (t *token) roomJoined() bool {
	return t.kind == wordToken && strings.Contains(t.text, " ")
}
