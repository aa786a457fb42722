package reading

import "example.com/intake-bot/internal/fitcheck"

// The dome's shape told by what it is like: "like a soda can sliced the long way", "flat as a
// table", "es como media pelota". The vocabulary has what people say most; here any thing that
// has a shape tells it, where the vocabulary tells none.

var (
	thingArticles   = wordsOf(`a an the half one un una el la medio media`)
	otherNameHalves = wordsOf(`opener pole frame light skylight lid lids ring wheel kind fixture factory house shop
		hut saw`)
	notTheShape = wordsOf(`roof frame frames curb box crack cracks leaks leaking drips smells sounds marco cajon
		techo hole broke broken shattered cracked popped split flew crumbles yellow`)
)

var (
	ballThings = wordsOf(`ball balls beachball basketball bubble bowl igloo egg eggshell turtle tortoise
		mushroom grapefruit orange melon watermelon cantaloupe lens balloon globe helmet muffin bun umbrella jellyfish
		ladybug blister wok moon hill mound hump pelota bola balon burbuja globo huevo tortuga sandia naranja toronja
		tazon iglu paraguas casco cupula hongo`)
	barrelThings = wordsOf(`barrel tunnel wagon mailbox loaf quonset culvert pipe can tube drum cylinder arch hoop
		hangar keg sausage rainbow bridge gutter barril tunel tubo tambo buzon lata arco bolillo carreta`)
	pyramidThings = wordsOf(`pyramid pyramids tent teepee tipi steeple tepee spire arrowhead piramide carpa pico`)
	flatThings    = wordsOf(`board table tabletop pancake pane plywood door floor tray cracker tortilla plate sheet
		ruler pizza griddle desk card counter countertop tabla mesa puerta piso comal charola hoja panqueque`)
	// flatWords say flat by themselves; only beside them a flat thing tells the shape.
	flatWords = wordsOf(`flat level smooth flush plano plana planos planas chato chata liso lisa`)
	// likeWords lead to what something is like.
	likeWords = wordsOf(`like as resembles picture imagine reminds remind shaped como parece parecido parecida`)
)

// shapeLike adds the profile that a comparison tells, where it was asked or the message speaks
// of the skylight's shape, and no phrase tells one.
func (r *reader) shapeLike(all []saying) []saying {
	if len(r.Asked) > 0 && !r.asked(fitcheck.TopicProfile) || r.asksItself() {
		return all
	}
	for _, s := range all {
		if s.topic == fitcheck.TopicProfile && s.value != "?" && !s.doubted {
			return all
		}
	}
	value, first, last := "", 0, 0
	for i := range r.toks {
		if r.toks[i].kind != wordToken || !likeWords.has(r.toks[i].text) || r.negated(i) {
			continue
		}
		v, end := r.thingLike(i)
		if v == "" || v == fitcheck.ProfileFlat && !r.flatBefore(i) && !r.noBulgeNear(end) ||
			!r.asked(fitcheck.TopicProfile) && !r.ofTheSkylight(i) {
			continue
		}
		if value != "" && value != v {
			return all
		}
		value, first, last = v, i, end
	}
	if value == "" || r.wordsIn(first, last+1, "or", "o") || r.wordAt(last+1, "or", "o") {
		return all
	}
	out := all[:0]
	for _, s := range all {
		if s.topic == fitcheck.TopicProfile ||
			s.topic == fitcheck.TopicOutline && value == fitcheck.ProfileBarrel && r.wordAt(s.first, "half") {
			continue // "a half-round plastic, like a covered wagon top"
		}
		out = append(out, s)
	}
	return append(out, saying{topic: fitcheck.TopicProfile, value: value, first: first, last: last})
}

// thingLike is the shape of what is named after token i within a few small words, and its
// last token: "like the top of a covered wagon".
func (r *reader) thingLike(i int) (value string, last int) {
	article := false
	for k := i + 1; k < min(i+10, len(r.toks)) && r.toks[k].kind == wordToken; k++ {
		t := r.toks[k].text
		switch {
		case likeWords.has(t) && k > i+3:
			return "", 0
		case t == "house" || t == "casa" || t == "roof" || t == "window" || t == "new" ||
			t == "before" || t == "is" || t == "was" || t == "one" || t == "ones":
			return "", 0
		}
		article = article || r.among(k, thingArticles)
		if !article {
			continue
		}
		for _, c := range []struct {
			words *wordSet
			value string
		}{
			{ballThings, fitcheck.ProfileDome}, {barrelThings, fitcheck.ProfileBarrel},
			{pyramidThings, fitcheck.ProfilePyramid}, {flatThings, fitcheck.ProfileFlat},
		} {
			if c.words.has(t) && !r.namesOther(k+1) {
				return c.value, k
			}
		}
	}
	return "", 0
}

// namesOther: the thing is but the first half of another's name: "a can opener", "a tent pole".
func (r *reader) namesOther(i int) bool {
	return i < len(r.toks) && r.toks[i].kind == wordToken &&
		r.among(i, otherNameHalves) && !r.wordAt(i-1, "quonset")
}

// flatBefore: "flat" is said near before the comparison, and not of the roof: "flat as a table".
func (r *reader) flatBefore(i int) bool {
	from := r.sentenceFirst(i)
	for k := i - 1; k >= max(from, i-6); k-- {
		if r.among(k, flatWords) {
			return !r.negated(k) && !r.wordsIn(from, k, "roof", "techo", "deck")
		}
	}
	return false
}

// ofTheSkylight: what is compared, unasked, is the skylight or its plastic: the words before in
// the sentence name it, and nothing else of the roof.
func (r *reader) ofTheSkylight(i int) bool {
	from := r.sentenceFirst(i)
	named := false
	for k := from; k < i; k++ {
		t := r.toks[k].text
		if r.among(k, notTheShape) {
			return false
		}
		named = named ||
			r.toks[k].kind == wordToken &&
				(sheetWords.has(t) || wholeWords.has(t) || r.wordAt(k, "top", "shape", "shaped", "tapa", "forma"))
	}
	return named
}
