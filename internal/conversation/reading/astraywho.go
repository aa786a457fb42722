package reading

// What a message tells of other people and of what they have.

var (
	roomOwners    = wordsOf(`kids daughters sons brothers sisters moms dads dog dogs cat bed tv pool`)
	ownedRooms    = wordsOf(`room rooms bedroom bath bathroom playroom house kennel`)
	housedKin     = wordsOf(`cousin cousins brother brothers sister sisters friend friends buddy buddys moms dads parents`)
	neighborNouns = wordsOf(`neighbor neighbors neighbour neighbours vecino vecinos`)
	madeVerbs     = wordsOf(`screwed built made put installed bolted nailed glued caulked sealed tarred smeared gobbed
		puso hizo atornillo clavo pego`)
	gaveNumberVerbs = wordsOf(`gave got sent paso dio recommended referred recomendo`)
	beforeSpeech    = wordsOf(`and i also still really always just y yo would d me`)
	speechVerbs     = wordsOf(`says said thinks saw sees noticed found swears told tells dice dijo vio dicen`)
	householders    = wordsOf(`wife husband mom dad mother father daughter kids`)
	householdWishes = wordsOf(`wants want prefers prefer likes loves insists picked chose voted decided rather needs
		agreed quiere queremos prefiere escogio`)
)

// thingAt: the word names some other thing or person than a skylight and its parts.
func (r *reader) thingAt(i int) bool {
	if r.wordAt(i, "sky") && r.wordAt(i+1, "light", "lights", "lite", "lites") {
		return false // "a leaky sky light"
	}
	if r.among(i, roomOwners) && r.among(i+1+number(r.markAt(i+1, '\'')), ownedRooms) {
		return false // "the kids' room faces west so bronze please"
	}
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return false
	}
	w := r.toks[i].word
	return w != nil && w.thing && !r.inRef(i)
}

// othersClause: the clause is about what somebody else has.
func (r *reader) othersClause(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	for i := from; i <= to; i++ {
		if i < first && r.othersThing(i, first) || r.kinUnlikeUs(i, first, to) || r.neighborHas(i, to) {
			return true
		}
	}
	return false
}

// kinUnlikeUs: "my cousin's house got hail but ours never".
func (r *reader) kinUnlikeUs(i, first, to int) bool {
	if !r.among(i, housedKin) {
		return false
	}
	end := r.sentenceLast(first) + 1
	return r.wordsIn(to, end, "ours", "mine", "us", "we") && r.wordsIn(to, end, "but")
}

// neighborHas: "the neighbor has glass".
func (r *reader) neighborHas(i, to int) bool {
	return r.among(i, neighborNouns) && r.wordsIn(i+1, min(i+4, to+1), "has", "have", "had", "got", "tiene") &&
		!r.wordAt(i+1, "no", "mi")
}

// madeBy: "my dad just screwed a plastic bubble to the 2x4s": who made it.
func (r *reader) madeBy(i int) bool {
	if r.wordAt(i+1, "in") && r.wordAt(i+2, "law", "laws") {
		i += 2
	}
	return r.anyOf(i+1, i+3, madeVerbs)
}

// thingSubject: some other thing is named before the value in its clause, and nothing
// of a skylight is.
func (r *reader) thingSubject(first, last int) bool {
	from, to := r.clauseStart(first), r.clauseEnd(last)
	thing := -1
	for i := from; i < first; i++ {
		if r.thingAt(i) && !(r.wordAt(i, "sky") && r.wordAt(i-1, "see")) && !r.madeBy(i) && !r.speaks(i) {
			thing = i
		}
	}
	if thing < 0 || r.gaveNumber(from, first) {
		return false
	}
	for i := from; i <= to; i++ {
		switch inside := i >= first && i <= last; {
		case inside && last > first && r.wordAt(i, "it", "skylight", "dome"):
			return false // "the neighbor's kid put a ball through it"
		case inside && i > thing && r.labelIs(i, "part", "frame") && r.wordAt(i-1, "the", "our", "my", "el"):
			return false
		case !inside && r.skylightMeant(i, thing, first):
			return false
		}
	}
	return true
}

// gaveNumber: "my neighbor gave me your number our house just the one".
func (r *reader) gaveNumber(from, to int) bool {
	return r.wordsIn(from, to, "number", "numero", "recommended", "referred", "recomendo") &&
		r.anyOf(from, to, gaveNumberVerbs) && !r.wordsIn(from, to, "his", "her", "their", "has", "who")
}

// labelIs: a label of the kind and value begins at the token.
func (r *reader) labelIs(i int, kind, value string) bool {
	h := r.labelFrom(i)
	return h != nil && h.is(kind, value)
}

// skylightMeant: the token names a part of the skylight, or stands for it between a thing and the value.
func (r *reader) skylightMeant(i, thing, first int) bool {
	if h := r.labelFrom(i); h != nil && h.senses[0].kind == "part" {
		return true
	}
	return i > thing && i < first && r.wordAt(i, "it", "its", "one", "lo", "la")
}

// speaks: the person at the token says or sees what follows, or one of the house wants it:
// "my husband wants the double", "the wife and I picked bronze"; not "Clear. My wife wants a
// white one but she isn't paying".
func (r *reader) speaks(i int) bool {
	who := i
	for i++; r.among(i, beforeSpeech); i++ {
	}
	if r.among(i, speechVerbs) {
		return true
	}
	if !r.among(who, householders) || !r.among(i, householdWishes) || r.wordAt(i+1, "to", "against", "a") {
		return false
	}
	_, to := r.sentence(who)
	return !r.wordsIn(i, to+1, "but", "pero", "isnt", "though") && !r.choseOther(who)
}

// choseOther: the writer named a value before, in another clause and without a "but".
func (r *reader) choseOther(who int) bool {
	from, to := r.clauseStart(who), r.clauseEnd(who)
	if r.wordsIn(who-4, who, "wait", "actually", "sorry", "no") ||
		r.wordAt(from, "but", "pero", "and") || r.wordAt(from-1, "but", "pero", "and") {
		return false
	}
	for _, kind := range []string{"color", "material", "layers", "finish"} {
		before, value := r.valuesAround(kind, from, to)
		if value != "" && before != "" && value != before {
			return true
		}
	}
	return false
}

// valuesAround are the last values of a kind before a clause and in it, "" for none.
func (r *reader) valuesAround(kind string, from, to int) (before, within string) {
	for n := range r.choices {
		switch v, ok := r.choices[n].has(kind); {
		case !ok:
		case r.choices[n].first < from:
			before = v
		case r.choices[n].first <= to:
			within = v
		}
	}
	return before, within
}
