package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	titlesOfNames = wordsOf(`dr mr mrs ms rev capt lt sgt col prof fr st sra`)
	namedThings   = wordsOf(`job project company business building site file street road brand model product dogs
		subdivision`)
	firmWordsOfNames = wordsOf(`roofing techos mantenimiento escuela iglesia oficina construccion construcciones
		glass homes compania empresa services servicios remodeling constructora contratistas`)
)

// withTitle takes the title before a name, and the stop of a "Jr." after it, to the name.
func (r *reader) withTitle(first, last int) (int, int) {
	t := first - 1
	if r.markAt(t, '.') && r.toks[t].glued {
		t--
	}
	if t >= 0 && r.toks[t].kind == wordToken && !r.toks[t].used && len(r.toks[t].text) > 1 && r.titleOrInitial(t) &&
		(t == first-1 || r.among(t, titlesOfNames)) {
		first = t
		for k := t - 1; k > 0 && (r.markAt(k, '&') || r.wordAt(k, "and", "y")); k = first - 1 { // "Mr. & Mrs. Van Horn"
			if r.markAt(k-1, '.') {
				k--
			}
			if k < 1 || !r.titleOrInitial(k-1) || len(r.toks[k-1].text) < 2 {
				break
			}
			first = k - 1
		}
	}
	if r.wordAt(last, "jr", "sr") && r.markAt(last+1, '.') && r.toks[last+1].glued {
		last++
	}
	return first, last
}

// spelledName: "E-A-R-L" alone: the letters are the name.
func (r *reader) spelledName(i int) bool {
	if i >= len(r.toks) || !r.spelledFrom(i) {
		return false
	}
	var name strings.Builder
	last := i
	for j := i; j < len(r.toks); j += 2 {
		if r.toks[j].kind != wordToken || len(r.toks[j].text) != 1 {
			return false
		}
		name.WriteString(r.toks[j].text)
		last = j
		if !r.markAt(j+1, '-') {
			break
		}
	}
	if last+1 < len(r.toks) && !r.sentenceEnd(last+1) {
		return false
	}
	r.name(i, last)
	r.fact(fitcheck.TopicName, 0, fitcheck.Text(properCase(name.String())), i, last)
	return true
}

// ofThing: the name is a job's, a building's or a shop's: "the job name is Hillcrest".
func (r *reader) ofThing(h *hit) bool {
	if r.wordsIn(max(0, h.first-5), h.first, "need", "want", "needs", "necesita", "quiere") &&
		r.wordsIn(max(0, h.first-6), h.first, "why", "que") {
		return true // "why do you need my name. Austin": where, if anything
	}
	for i := h.first; i <= h.last; i++ {
		if r.wordAt(i, "name") && r.among(i-1, namedThings) {
			return true
		}
	}
	return r.wordAt(h.last+1, "of") &&
		r.wordsIn(h.last+2, min(h.last+5, len(r.toks)), "job", "project", "company", "business", "building", "church", "school")
}

// spelledOut sets aside the letters that spell a word of the message: "Marlene Stubbs, that's
// s t u b b s".
func (r *reader) spelledOut() {
	for i := 0; i < len(r.toks); i++ {
		word, last := r.lettersFrom(i)
		if len(word) < 3 {
			continue
		}
		for k := range r.toks {
			if r.toks[k].text == word {
				for r.wordAt(i-1, "thats", "spelled", "spelt", "its", "is", "that") {
					i--
				}
				r.use(i, last)
				break
			}
		}
		i = last
	}
}

// lettersFrom is the word that single letters spell from a token on.
func (r *reader) lettersFrom(i int) (word string, last int) {
	for last = i; i < len(r.toks); i++ {
		t := &r.toks[i]
		if t.mark('-') && word != "" {
			continue
		}
		if t.kind != wordToken || len(t.text) != 1 {
			break
		}
		word, last = word+t.text, i
	}
	return word, last
}

// withoutFirm: "Ramiro de Construcciones Peña", "Lena Orr cell 775 …": what stands after the
// person's name.
func (r *reader) withoutFirm(first, last int) (int, int) {
	for i := first + 1; i <= last; i++ {
		if r.wordAt(i, "cell", "mobile", "phone", "tel", "cel", "text", "desk", "celular", "telefono") && i+1 < len(r.toks) &&
			(r.toks[i+1].kind == phoneToken || i == last && r.numberedAt(i+1)) {
			return first, i - 1
		}
		if r.wordAt(i, "de") && r.anyOf(i+1, last+1, firmWordsOfNames) {
			return first, i - 1
		}
	}
	return first, last
}
