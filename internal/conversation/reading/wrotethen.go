package reading

var (
	numberIsNow   = wordsOf(`it its that thats is should be really only actually just in fact truly es son solo realmente verdad`)
	numberOpeners = wordsOf(`it its that thats es son`)
)

// wroteThen: "I wrote 8 inches for the curb height. It is 3 1/2": the first number is what an earlier message
// held, the next takes its place, and is of the same.
func (r *reader) wroteThen(ms []measure) {
	for k := 1; k < len(ms); k++ {
		was, now := &ms[k-1], &ms[k]
		if was.shape != now.shape || was.shape != lone && was.shape != pair || now.topic != "" || now.part != "" || now.face != "" ||
			now.parts[0].side != noSide || !r.wroteOnly(was) || !r.takesItsPlace(now, was) {
			continue
		}
		now.topic, now.part, now.face, now.where = was.topic, was.part, was.face, was.where
		now.parts[0].side = was.parts[0].side
		was.drop = true
	}
}

// wroteOnly: the sentence says what the writer wrote before, and no other number.
func (r *reader) wroteOnly(m *measure) bool {
	from, to := r.sentence(m.first)
	if r.numberIn(from, m.first) || r.numberIn(m.last+1, to+1) {
		return false
	}
	i := m.first - 1
	for r.among(i, wroteYou) {
		i--
	}
	return r.among(i, wroteEarlierVerbs) && r.anyOf(max(from, i-3), i+1, writerVerbs)
}

// takesItsPlace: the next sentence opens with the number: "It is only 3 1/2".
func (r *reader) takesItsPlace(now, was *measure) bool {
	from := r.sentenceFirst(now.first)
	if from != r.sentenceLast(was.last)+1 || !r.among(from, numberOpeners) {
		return false
	}
	for i := from; i < now.first; i++ {
		if !r.among(i, numberIsNow) {
			return false
		}
	}
	return true
}
