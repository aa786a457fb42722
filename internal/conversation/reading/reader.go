package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	unitGoesOnWords = wordsOf(`wide long high tall w l h and or to on at in for y de por outside inside across
		square round diameter dia both each all cada ambos is es lip between including from over de edge`)
	shortForms = wordsOf(`st mt ft incl approx dia diam mr mrs ms dr no apt ste ave vs aprox`)
)

// reader is the reading of one message as it grows.
type reader struct {
	Input
	toks        []token
	labels      []hit
	choices     []hit
	talk        []hit
	wants       []hit
	intros      []hit
	styles      []hit
	labelAt     []int16  // by token: the label that covers it, -1 for none
	bounds      []bounds // by token
	refs        []unitRef
	layersFirst bool            // layers are named before their colors
	inInches    bool            // a length of the message is in inches
	frameSaid   bool            // the message tells what the frame is like
	trailing    bool            // units are named after what is said of them
	groups      []skylightGroup // that tell kinds apart by place or look, each with its number
	kindList    []int           // kinds that a sentence lists and says nothing of
	itemsEnd    int             // the last token of the sentence that lists several skylights, 0 for none
	where       []saidAt        // in the order found
	spelt       spelt           // words that the message has
	spelled     bool            // spelt is filled
	out         Reading
}

// saidAt is where the message says something of a topic.
type saidAt struct {
	topic fitcheck.Topic
	first int
}

// Read reads one message. It is total: every text has a reading.
func Read(in Input) Reading {
	r := &reader{Input: in}
	r.out = Reading{Facts: []Fact{}, Unclear: []Unclear{}, Requests: []Request{}}
	r.toks = withoutHums(lex(in.Text))
	r.mendTypos()
	r.joinRooms()
	r.out.Language = r.language()
	if k := Keyword(in.Text); k != "" {
		r.out.Requests = append(r.out.Requests, k)
		return r.out
	}
	if r.reaction() {
		return r.out
	}
	r.bound()
	r.findPhrases()
	r.frameNotName()
	r.greeted()
	r.contacts()
	r.places()
	r.spelledOut()
	r.clauseName()
	r.wholeName()
	r.units()
	r.numbersOfOtherThings()
	r.numberSent()
	r.slopes()
	r.counts()
	r.sizes()
	r.totalOfKinds()
	r.restOfCount()
	r.readChoices()
	r.livedIn()
	r.shapeTold()
	r.flatTold()
	r.restForAll()
	r.alikeKinds()
	r.countKinds()
	r.useInLine()
	r.roomOfHome()
	r.wishedDome()
	r.wantSaid()
	r.frameStates()
	r.toldOfOthers()
	r.frameBroken()
	r.paintGone()
	r.neverLooked()
	r.answers()
	r.alikeAfterAll()
	r.names()
	r.nameOfKin()
	r.stateForName()
	r.requests()
	r.roofing()
	r.out.Language = r.language() // again, without names and places
	r.otherLanguage()
	return r.out
}

func (r *reader) findPhrases() {
	v := words()
	r.labels = v.scan(r.toks, labelLayer, make([]hit, 0, 16))
	r.choices = v.scan(r.toks, choiceLayer, make([]hit, 0, 8))
	r.talk = v.scan(r.toks, talkLayer, make([]hit, 0, 8))
	r.intros = v.scan(r.toks, introLayer, nil)
	r.wants = v.scan(r.toks, wantLayer, nil)
	r.styles = v.scan(r.toks, styleLayer, nil)
	r.facesNoLayers()
	r.aroundOnly()
	r.partsByWork()
	r.labelAt = make([]int16, len(r.toks))
	r.placeLabels()
}

// placeLabels notes which label covers a token.
func (r *reader) placeLabels() {
	for i := range r.labelAt {
		r.labelAt[i] = -1
	}
	for n, h := range r.labels {
		for i := h.first; i <= h.last; i++ {
			r.labelAt[i] = int16(n)
		}
	}
}

// asked says whether the topic is one that the customer is answering.
func (r *reader) asked(t fitcheck.Topic) bool {
	for _, a := range r.Asked {
		if a == t {
			return true
		}
	}
	return false
}

// said quotes the customer's words from one token to another.
func (r *reader) said(first, last int) string {
	return r.Text[r.toks[first].from:r.toks[last].to]
}

// name marks the words of a name or a place.
func (r *reader) name(first, last int) {
	for i := first; i <= last; i++ {
		r.toks[i].used, r.toks[i].named = true, true
	}
}

func (r *reader) use(first, last int) {
	for i := first; i <= last; i++ {
		r.toks[i].used = true
	}
}

func (r *reader) fact(t fitcheck.Topic, unit int, v fitcheck.Value, first, last int) {
	if !t.OfUnit() {
		unit = 0
	}
	said := r.said(first, last)
	r.where = append(r.where, saidAt{t, first})
	for i := range r.out.Facts {
		if f := &r.out.Facts[i]; f.Topic == t && f.Unit == unit { // said again or corrected: the later word stands
			f.Value, f.Said = v, said
			return
		}
	}
	r.out.Facts = append(r.out.Facts, Fact{Topic: t, Unit: unit, Value: v, Said: said})
}

// forget takes back what was recorded of a topic.
func (r *reader) forget(t fitcheck.Topic) {
	r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool { return f.Topic == t })
}

func (r *reader) known(t fitcheck.Topic) bool {
	for i := range r.out.Facts {
		if r.out.Facts[i].Topic == t {
			return true
		}
	}
	return false
}

func (r *reader) doubtful(t fitcheck.Topic) bool {
	for i := range r.out.Unclear {
		if u := r.out.Unclear[i].Topic; u != nil && *u == t {
			return true
		}
	}
	return false
}

// unclear records a doubt; an empty topic is "not known of what".
func (r *reader) unclear(t fitcheck.Topic, unit int, why Why, guess fitcheck.Value, first, last int) {
	u := Unclear{Said: r.said(first, last), Why: why, Guess: guess}
	if t != "" {
		r.where = append(r.where, saidAt{t, first})
		u.Topic = &t
		if t.OfUnit() {
			u.Unit = unit
		}
	} else {
		u.Unit = unit
	}
	r.out.Unclear = append(r.out.Unclear, u)
}

func (r *reader) request(q Request) {
	for _, have := range r.out.Requests {
		if have == q {
			return
		}
	}
	r.out.Requests = append(r.out.Requests, q)
}

// has says whether the hit has a sense of the kind, and which value.
func (h *hit) has(kind string) (string, bool) {
	for i := range h.senses {
		if h.senses[i].kind == kind {
			return h.senses[i].value, true
		}
	}
	return "", false
}

func (h *hit) is(kind, value string) bool {
	for i := range h.senses {
		if h.senses[i].kind == kind && h.senses[i].value == value {
			return true
		}
	}
	return false
}

// unitGoesOn is goesOn for words alone: phrases are not known yet where sentences are found.
func (r *reader) unitGoesOn(i int) bool {
	return r.by(i) || r.among(i, unitGoesOnWords)
}

// labelFrom is the label that starts at token i.
func (r *reader) labelFrom(i int) *hit {
	if i < 0 || i >= len(r.toks) || r.labelAt[i] < 0 {
		return nil
	}
	if h := &r.labels[r.labelAt[i]]; h.first == i {
		return h
	}
	return nil
}

// hardBreak says whether a sentence or line ends between the tokens at from and to,
// both not counted.
func (r *reader) breakBetween(from, to int) bool {
	for i := from + 1; i < to; i++ {
		if r.sentenceEnd(i) {
			return true
		}
	}
	return false
}

// sentenceEnd says whether the token ends a sentence or a line; a dot that is glued
// into an abbreviation does not.
func (r *reader) sentenceEnd(i int) bool {
	return i >= 0 && i < len(r.toks) && r.toks[i].kind == markToken && r.endsSentence(i)
}

func (r *reader) endsSentence(i int) bool {
	t := &r.toks[i]
	if !t.ends() {
		return false
	}
	if i > 3 && r.wordAt(i-1, "got", "get", "have", "reach", "see", "tengo") && r.wordsIn(i-4, i-1, "all", "only", "unico") &&
		i+1 < len(r.toks) && r.toks[i+1].kind == numToken {
		return false // "the inside hole is all I got. 22 1/2 x 46 1/2"
	}
	if t.text[0] == '.' && i > 0 && t.glued && i+1 < len(r.toks) && !r.toks[i+1].mark('\n') {
		prev := &r.toks[i-1]
		if prev.kind == wordToken &&
			(prev.word != nil && prev.word.unit != noUnit && (r.toks[i+1].kind != wordToken || r.unitGoesOn(i+1)) || len(prev.text) == 1) {
			return false
		}
		if r.among(i-1, shortForms) {
			return false
		}
	}
	return true
}
