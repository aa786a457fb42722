package reading

import "example.com/intake-bot/internal/fitcheck"

var greetTitles = wordsOf(`there dear again miss ms mr mrs senora senor senorita`)

// greeted takes the name of whoever is greeted or thanked for no customer's: asked for a name, "hi Sam",
// "good morning Sarah", "thank you, Sam", "Thanks Emily. My name's not important". "Hi, Sam", "thx, Sam" and a thanks with
// the name on a line of its own may be the writer's.
func (r *reader) greeted() {
	if !r.asked(fitcheck.TopicName) {
		return
	}
	for n := range r.talk {
		h := &r.talk[n]
		thanks, hello := h.is("small", "thanks"), h.is("small", "hello")
		if !thanks && !hello || h.first > 0 && r.toks[h.first-1].kind == wordToken {
			continue
		}
		if thanks && h.first > 0 {
			continue // "it's for the shop, thanks Sam" signs
		}
		i := h.last + 1
		for r.among(i, greetTitles) {
			i++
		}
		if r.markAt(i, ',') && h.first < h.last {
			i++
		}
		if r.givenAlone(i) {
			r.name(i, i)
		}
	}
}

// givenAlone: a given name with no word after it.
func (r *reader) givenAlone(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == wordToken && r.givenAt(i) &&
		(i+1 >= len(r.toks) || r.toks[i+1].kind == markToken && !r.markAt(i+1, '-'))
}
