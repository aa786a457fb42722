package reading

import "example.com/intake-bot/internal/fitcheck"

var (
	changeIsQuestion = wordsOf(`or o what which how que cual better if si more extra cost cuesta mas why`)
	mayVerbs         = wordsOf(`can could may puede pueden podria podrian puedo podemos possible posible`)
	orderVerbs       = wordsOf(`get have make be do go switch change order take ser hacer hacerlo cambiar cambiarlo
		cambiarle pedir pedirlo poner ponerlo ponerle`)
	switchVerbs    = wordsOf(`switch change put move bump upgrade cambiarme cambiarnos ponerme ponernos`)
	sellIsQuestion = wordsOf(`or o what which how que cual cuales better if`)
	sellVerbs      = wordsOf(`carry sell have make offer stock do supply get replace fix repair`)
	wishAfterVerbs = wordsOf(`need want necesito ocupo quiero take buy necesitamos ocupamos queremos`)
	wishObjects    = wordsOf(`one some it them that a uno una dos tres about at`)
	otherWishes    = wordsOf(`price quote photo photos hand person answer complete whole new`)
)

// tradeWords are all that a question has which asks no more than what the shop is there for.
var tradeWords = wordsOf(`do does are is this that the you u ya yall guys all people folks place company store
	ones who sell sells make makes carry have handle offer supply deal in with still also can could i we get buy
	order one ones from replace plastic acrylic replacement new old any these those a for skylight skylights dome
	domes skylite curb mount mounted hi hello hey there so venden vende tienen tiene hacen hace manejan ustedes
	domos domo tragaluces tragaluz de plastico aqui`)

// ofTrade: "do you guys do skylights": to go on with the talk is the answer.
func (r *reader) ofTrade(h *hit) bool {
	_, to := r.sentence(h.first)
	noun := false
	for i := h.first; i <= to; i++ {
		t := &r.toks[i]
		if t.kind == markToken {
			continue
		}
		if t.kind != wordToken || !tradeWords.has(t.text) {
			return false
		}
		noun = noun || countNouns.has(t.text) || t.is("one", "ones")
	}
	return noun
}

// wishBehind: a question of trade tells what is wanted where a wish follows it: "do you carry
// bronze domes? I need three"; and what theirs is like where theirs is spoken of: "tienen
// domos redondos? el mío ya está opaco".
func (r *reader) wishBehind(t fitcheck.Topic, first, last int) bool {
	if r.changeAsked(t, first, last) {
		return true
	}
	if len(r.Asked) > 0 || !r.sellingAsked(first) || r.toldTwice(t, first) {
		return false
	}
	_, to := r.sentence(first)
	end := to
	if to+1 < len(r.toks) {
		end = r.sentenceLast(to + 1)
	}
	switch t {
	case fitcheck.TopicColor, fitcheck.TopicMaterial, fitcheck.TopicLayers:
		return r.wishAfter(last+1, end)
	case fitcheck.TopicOutline, fitcheck.TopicProfile, fitcheck.TopicStyle:
		return r.wishAfter(last+1, end) || r.theirsAfter(to+1, end)
	}
	return false
}

// changeAsked: a value of the list is asked to be another one, politely: "could I get it in white
// though?", "¿lo puede hacer en blanco?".
func (r *reader) changeAsked(t fitcheck.Topic, first, last int) bool {
	from, to := r.sentence(first)
	order := r.toOrder(from, last)
	if !r.asked(fitcheck.TopicConfirm) && !order || !chosen(t) || r.toldTwice(t, first) || r.anyOf(from, to+1, changeIsQuestion) {
		return false
	}
	for i := from; i < first && !order; i++ {
		if r.among(i, mayVerbs) &&
			r.anyOf(i+1, first, orderVerbs) {
			return true
		}
	}
	return order || r.wordAt(first-1, "in", "en") && r.wordsIn(from, first, "puede", "podria", "puedo") && last >= first
}

// toOrder: the question asks to change what was ordered: "can you switch me to triple?", "could you put
// us down for polycarbonate".
func (r *reader) toOrder(from, last int) bool {
	for i := from + 1; i <= last; i++ {
		if r.among(i, switchVerbs) && (r.wordAt(i-1, "you", "u") || r.wordAt(i, "cambiarme", "cambiarnos", "ponerme", "ponernos")) {
			return r.wordAt(i+1, "me", "us", "mine", "ours", "my", "our") || r.out.Language == "es"
		}
	}
	return false
}

// changeBehind: the sentence asks for another value, and that was understood.
func (r *reader) changeBehind(from, to int) bool {
	for n := range r.choices {
		for _, s := range r.choices[n].senses {
			if h := &r.choices[n]; h.first >= from && h.last <= to && r.known(s.topic) && r.changeAsked(s.topic, h.first, h.last) {
				return true
			}
		}
	}
	return false
}

// sellingAsked: the sentence asks whether something is sold.
func (r *reader) sellingAsked(i int) bool {
	from, to := r.sentence(i)
	if r.anyOf(from, to+1, sellIsQuestion) {
		return false
	}
	for k := from; k < i; k++ {
		if r.wordAt(k, "do", "can", "could", "would") && r.wordAt(k+1, "you", "u", "yall", "ya") &&
			r.anyOf(k+2, min(k+5, i), sellVerbs) ||
			r.wordAt(k, "yall", "u", "guys", "ya") && r.wordAt(k+1, "make", "carry", "sell", "stock", "do", "supply") &&
				(k == from || r.wordAt(k, "guys")) ||
			r.wordAt(k, "tienen", "venden", "hacen", "manejan", "tendran", "fabrican") {
			return true
		}
	}
	return false
}

// toldTwice: the message has another value of the topic.
func (r *reader) toldTwice(t fitcheck.Topic, first int) bool {
	for _, layer := range [][]hit{r.choices, r.styles} {
		for n := range layer {
			if layer[n].first != first && layer[n].has1(string(t)) && !layer[n].is(string(t), "?") && !layer[n].senseAsked(t) {
				return true
			}
		}
	}
	return false
}

// senseAsked: the phrase tells something of the topic only as an answer.
func (h *hit) senseAsked(t fitcheck.Topic) bool {
	for i := range h.senses {
		if h.senses[i].topic == t && !h.senses[i].asked {
			return false
		}
	}
	return true
}

// wishAfter: "I need three", "necesito dos para mi casa".
func (r *reader) wishAfter(from, to int) bool {
	for i := from; i < to; i++ {
		if r.among(i, wishAfterVerbs) {
			return r.wholeAt(i+1) > 0 || r.among(i+1, wishObjects) && !r.among(i+2, otherWishes)
		}
	}
	return false
}

// theirsAfter: "mine is yellowed", "el nuestro se rompió".
func (r *reader) theirsAfter(from, to int) bool {
	for i := from; i < min(from+3, to); i++ {
		if r.wordAt(i, "got", "have") && r.wordAt(i+1, "one", "two") && (i == from || r.wordAt(i-1, "i", "we", "ive")) {
			return true // "do you replace glass skylights? got one with a crack"
		}
		if r.wordAt(i, "mine", "ours", "mio", "mia", "nuestro", "nuestra", "nuestros", "mios") {
			return !r.wordAt(i+1, "is", "are", "es", "son") || !r.choiceAt(i+2) ||
				r.wordsIn(i+2, to+1, "cracked", "broken", "hazy", "yellowed", "yellow", "leaking", "roto", "opaco", "quebrado")
		}
	}
	return false
}
