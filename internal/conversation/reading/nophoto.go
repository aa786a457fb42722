package reading

import "example.com/intake-bot/internal/fitcheck"

// noPhotos: a number of photos counts only as "none": photos are counted as they come.
// A plain no, a "can't" or a camera that fails says that none will come.
func (r *reader) noPhotos() {
	for i := range r.toks {
		if r.wholeAt(i) == 0 && !r.used(i) {
			r.fact(fitcheck.TopicPhotos, 0, fitcheck.Whole(0), i, i)
			return
		}
	}
	if r.photoRefused() {
		r.out.DontKnow = append(r.out.DontKnow, fitcheck.TopicPhotos)
	}
}

func (r *reader) photoRefused() bool {
	if r.wordsIn(0, len(r.toks), "sent", "attached", "sending", "later", "tomorrow", "luego", "manana", "problem", "here") {
		return false
	}
	camera := r.wordsIn(0, len(r.toks), "camera", "phone", "camara", "celular", "telefono", "flip")
	for i := range r.toks {
		if camera && r.wordAt(i, "broken", "broke", "busted", "dead", "cracked", "bad", "old", "descompuesta", "descompuesto", "rota", "roto", "flip", "basic") {
			return true
		}
		if r.toks[i].kind != wordToken || !(negWords[r.toks[i].text] || r.wordAt(i, "nope", "nah", "unable", "rather")) {
			continue
		}
		if r.wordAt(i, "cant", "cannot", "unable", "couldnt", "wont", "nope", "nah") || r.wordAt(i+1, "puedo", "podemos", "tengo", "way", "can") {
			return true
		}
		if len(r.toks) <= 3 && r.wordAt(i, "no") || r.wordsIn(i, min(i+7, len(r.toks)), "photo", "photos", "pic", "pics", "picture", "pictures", "camera", "foto", "fotos", "camara", "one", "any", "smartphone", "image") {
			return !r.wordAt(i+1, "problem", "problema", "worries", "sure")
		}
	}
	return false
}
