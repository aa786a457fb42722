package reading

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// probe is an answer that any size question could have; what it is taken for tells what
// the question asks.
const probe = " 25 1/2 x 49 1/2"

// questions are words that a question about a topic has, English and Spanish; of those
// that match, the first is the likeliest. Sizes are read by the vocabulary instead.
var questions = []struct {
	topic fitcheck.Topic
	words *regexp.Regexp
}{
	{fitcheck.TopicPlasticSize, regexp.MustCompile(`(?i)\b(plastic|pl[aá]stico)\b.*\b(edge to edge|lip to lip|borde a borde)\b`)},
	{fitcheck.TopicLayers, regexp.MustCompile(`(?i)\b(layers?|single|double|triple|capas?)\b`)},
	{fitcheck.TopicFrameCondition, regexp.MustCompile(`(?i)\b(bent|corroded|sound|condition|shape is|doblado|oxidado)\b`)},
	{fitcheck.TopicFinish, regexp.MustCompile(`(?i)\b(finish|mill|anodized|powder coat|acabado)\b`)},
	{fitcheck.TopicColor, regexp.MustCompile(`(?i)\b(colou?rs?|clear, white|bronze or|colore?s?)\b`)},
	{fitcheck.TopicMaterial, regexp.MustCompile(`(?i)\b(acrylic|polycarbonate|material|acr[ií]lico|policarbonato)\b`)},
	{fitcheck.TopicCount, regexp.MustCompile(`(?i)\b(how many (of|do|are|domes|skylights|units)|cu[aá]nt[oa]s (de|domos|tragaluces|unidades|son|necesita))\b`)},
	{fitcheck.TopicUse, regexp.MustCompile(`(?i)\b(building|house|home|business|shed|edificio|casa)\b`)},
	{fitcheck.TopicProblem, regexp.MustCompile(`(?i)\b(wrong with|cracked|leak\w*|hazy|problema?)\b`)},
	{fitcheck.TopicWant, regexp.MustCompile(`(?i)\b(complete unit|just the (plastic )?dome|unidad completa)\b`)},
	{fitcheck.TopicImpactRisk, regexp.MustCompile(`(?i)\b(hail|branches|golf|granizo)\b`)},
	{fitcheck.TopicName, regexp.MustCompile(`(?i)\b(name|who am i|nombre)\b`)},
	{fitcheck.TopicPlace, regexp.MustCompile(`(?i)\b(zip|ship to|town|c[oó]digo postal|ciudad)\b`)},
	{fitcheck.TopicPhotos, regexp.MustCompile(`(?i)\b(photos?|pictures?|fotos?)\b`)},
	{fitcheck.TopicStyle, regexp.MustCompile(`(?i)\b(up there|what kind|held by|qu[eé] tipo)\b`)},
}

// ofSize are words that a question about a size has.
var ofSize = regexp.MustCompile(`(?i)\b(how (big|wide|long|large|high|tall)|measure\w*|dimensions?|sizes?|inside|outside|opening|` +
	`mide\w*|medidas?|adentro|afuera|interior|exterior|abertura)\b`)

// Asks says what a question asks, the likeliest topic first: of a mail's quoted text, so
// that the answer under it is read as one. It never fails; nil where it can't be told.
func Asks(question string) []fitcheck.Topic {
	var out []fitcheck.Topic
	if ofSize.MatchString(question) {
		for _, f := range Read(Input{Text: question + probe}).Facts {
			if f.Topic.OfSize() {
				out = append(out, f.Topic)
				break
			}
		}
	}
	for _, q := range questions {
		if q.words.MatchString(question) && !slices.Contains(out, q.topic) {
			out = append(out, q.topic)
		}
	}
	return out
}

// otherQuestion: "doble, transparente. ¿El acrílico se pone amarillo?": a sentence of its own
// with its sign, that says nothing else that is understood.
func (r *reader) otherQuestion() bool {
	for i := range r.toks {
		if !r.markAt(i, '?') {
			continue
		}
		first, words := r.sentenceFirst(i), 0
		if r.spanishTail(first, i) {
			return true
		}
		said := first == 0
		for k := first; k < i; k++ {
			words += number(r.toks[k].kind == wordToken)
			said = said || r.toks[k].used || r.toks[k].kind == numToken || r.labelKind(k, "shape")
		}
		for _, w := range r.where {
			said = said || w.first >= first && w.first < i
		}
		talk := within(r.talk, first, i-1)
		for n := range talk {
			said = said ||
				talk[n].has1("req") && !(talk[n].is("req", "again") && talk[n].first == talk[n].last && r.out.Language == "es") ||
				talk[n].is("say", "dontknow") || talk[n].is("say", "yes") && talk[n].last > talk[n].first
		}
		if !said && words > 2 {
			return true
		}
	}
	return false
}

// spanishTail: "sí, correcto, ¿y ahora qué sigue?", "mide 24 por 48, ¿así está bien o le sigo
// midiendo?": a question opened in the midst of the sentence, of which nothing is understood.
func (r *reader) spanishTail(first, end int) bool {
	if len(r.out.Requests) > 0 || r.wordsIn(first, end, "llama", "llamas") {
		return false
	}
	for i := end - 1; i > first; i-- {
		if r.toks[i].used || r.toks[i].kind == numToken || r.toks[i].kind == markToken && !r.markAt(i, ',') {
			return false
		}
		if r.toks[i].kind == wordToken && r.opensSpanish(i) {
			return end-i > 2
		}
	}
	return false
}

// bareQuestion: a question mark after words that nothing else explains.
func (r *reader) bareQuestion() {
	if slices.Contains(r.out.Requests, RequestPrice) || slices.Contains(r.out.Requests, RequestHowTo) {
		return
	}
	if r.wordAt(0, "is", "are", "do", "does") && r.wordAt(1, "yours", "your", "they", "these", "those", "you", "u", "ur", "them") &&
		!(slices.Contains(r.out.Requests, RequestPerson) && !r.wordsIn(1, len(r.toks), "in", "near", "around")) {
		r.request(RequestQuestion)
		return
	}
	if r.wordAt(0, "is", "are", "will", "does") &&
		r.wordsIn(1, len(r.toks), "too", "enough", "ok", "okay", "fit", "possible", "normal") && !r.wordAt(1, "it") {
		r.request(RequestQuestion) // "is 49 1/2 too big for you"
		return
	}
	if n := len(r.toks) - 1; r.markAt(n, '?') {
		if i := r.clauseStart(n); (r.wordAt(i, "is", "are", "was") && r.wordAt(i+1, "that", "it", "those", "they") && i+2 < n) &&
			i > 0 {
			r.request(RequestQuestion) // "the old one was acrylic, is that still what you recommend?"
			return
		}
	}
	if r.opensAsking(0) && !slices.Contains(r.out.Requests, RequestPrice) {
		r.request(RequestQuestion) // "would two layers stop the drumming"
		return
	}
	if n := len(r.toks) - 1; n > 0 && r.changeBehind(r.sentenceFirst(n), n) {
		return
	}
	if n := len(r.toks) - 1; r.askedSize() != "none" && r.markAt(n, '?') &&
		(r.wordAt(n-1, "how", "como") && r.clauseStart(n-1) == n-1 || r.wordAt(n-1, "then") && r.wordAt(n-2, "how")) {
		r.request(RequestHowTo) // "no ladder here, how?"
		r.out.Requests = slices.DeleteFunc(r.out.Requests, func(q Request) bool { return q == RequestQuestion })
		return
	}
	if r.handsWanted() || r.otherQuestion() {
		r.request(RequestQuestion)
		return
	}
	if len(r.out.Requests) > 0 || len(r.out.Facts) > 0 || len(r.out.Unclear) > 0 {
		return
	}
	words := 0
	for i := range r.toks {
		if r.toks[i].kind == wordToken {
			words++
		}
		if r.markAt(i, '?') && r.answeredAfter(i+1) {
			continue
		}
		if r.markAt(i, '?') &&
			(words > 1 ||
				words == 1 && i == len(r.toks)-1 && len(r.toks[0].text) > 3 && !r.wordAt(0, "what", "again", "pardon", "hello") ||
				r.wordAt(i-1, "who", "why", "when", "where", "quien", "cuando", "donde", "really", "seriously")) {
			r.request(RequestQuestion)
			return
		}
	}
}

// answeredAfter: "curb height? no idea": the words before the sign say the question again.
func (r *reader) answeredAfter(i int) bool {
	hits := within(r.talk, i, i)
	return len(r.Asked) > 0 && len(hits) > 0 && (hits[0].is("say", "dontknow") || hits[0].is("say", "usual"))
}
