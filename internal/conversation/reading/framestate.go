package reading

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// What a clause says of the frame where no phrase of the lists has told it: the clause is taken by its
// parts, the thing that it speaks of and a word for a state after it, whatever stands between: "the
// frame it sits in got twisted when the tree hit".

// frameNouns name the frame by themselves; stateOf says what a word tells of one.
var (
	stateOf = statesOf(map[string]string{
		fitcheck.ConditionGood:        `good survived escaped fine ok okay solid sound straight great perfect excellent intact undamaged sturdy strong usable reusable salvageable unharmed unscathed excelent exelent excellant excellent pristine flawless bueno buena buenos bien sano sanos entero enteros derecho derechos firme firmes fuerte fuertes perfecto intacto solido`,
		fitcheck.ConditionBent:        `bent kinked twisted dented warped bowed crushed mangled crumpled buckled crooked deformed bows doblado doblados abollado abollados torcido torcidos chueco chuecos abollo doblo torcio pandeado pandeo`,
		fitcheck.ConditionCorroded:    `corroded rusted rusty rust corrosion rotted rotten rotting rusting crusty crusted pitted pitting oxidado oxidados corroido corroidos oxido podrido podridos herrumbre rusts`,
		fitcheck.ConditionCaulkedOver: `caulked caulk caulking tar tarred silicone siliconed goop gooped gunked goo sealant mastic silicon silicona sellador chapopote brea resistol`,
		fitcheck.ConditionWeathered:   `faded weathered chalky chalking dulled discolored peeling sunbaked descolorido descoloridos despintado despintados desgastado desgastados`,
	})
	otherThings = wordsOf(`plastic dome domes bubble bubbles skylight skylights curb curbs box boxes wood wooden roof glass lens cover lid lip shingles flashing drywall ceiling screws screw acrylic sheet house
		trim domo domos plastico tragaluz tragaluces madera techo caja cajon tapa burbuja vidrio tornillos lamina i we yo`)
)

func statesOf(lists map[string]string) map[string]string {
	m := map[string]string{}
	for state, list := range lists {
		for _, w := range strings.Fields(list) {
			m[w] = state
		}
	}
	return m
}

// frameStates records what a clause about the frame says of it; where that was asked, the clause need
// not name it.
func (r *reader) frameStates() {
	t := fitcheck.TopicFrameCondition
	if r.known(t) || r.doubtful(t) && !r.openChoice(t) || len(r.refs) > 0 || r.Units > 1 || r.out.Language != "en" && r.out.Language != "es" {
		return
	}
	for i := range r.toks {
		if r.toks[i].kind != wordToken || !frameNouns.has(r.toks[i].text) && !r.metalPart(i) && !r.retainingRing(i) || !r.theirFrame(i) || r.ownedByOther(i) || r.ofOtherThing(t, &hit{first: i, last: i}) || r.hearsay(i) {
			continue
		}
		if first := r.frameUnknown(i); first >= 0 {
			r.conditionIs(fitcheck.ConditionUnsure, first, i)
			return
		}
		if r.doubtBetween(r.clauseStart(i), i) {
			continue
		}
		if state, last := r.conditionAfter(i); state != "" {
			r.conditionIs(state, i, last)
			return
		}
		if first, last := r.frameHolds(i); last >= 0 {
			r.conditionIs(fitcheck.ConditionGood, first, last)
			return
		}
		if state, first := r.conditionBefore(i); state != "" {
			r.conditionIs(state, first, i)
			return
		}
	}
	if !r.asked(t) || !r.doubtful(t) || r.firstTalk("dontknow") != nil {
		return
	}
	for i := 0; i < len(r.toks); i = r.sentenceLast(i) + 1 {
		if state, last := r.conditionAfter(i - 1); state != "" && state != fitcheck.ConditionGood && !r.markAt(r.sentenceLast(i), '?') {
			r.conditionIs(state, i, last)
			return
		}
	}
}

// openChoice: words of the topic were found and none of its values chosen.
func (r *reader) openChoice(t fitcheck.Topic) bool {
	return slices.ContainsFunc(r.out.Unclear, func(u Unclear) bool { return u.Topic != nil && *u.Topic == t && u.Why == WhyChoice })
}

// conditionIs records the frame's state in place of a doubt about it.
func (r *reader) conditionIs(state string, first, last int) {
	t := fitcheck.TopicFrameCondition
	r.out.Unclear = slices.DeleteFunc(r.out.Unclear, func(u Unclear) bool { return u.Topic != nil && *u.Topic == t })
	r.fact(t, 0, fitcheck.Choice(state), first, last)
}

// wordText is the word at a token, "" where there is none.
func (r *reader) wordText(i int) string {
	if i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return ""
	}
	return r.toks[i].text
}

// metalPart: "the metal part is pretty rusty", "el metal está doblado".
func (r *reader) metalPart(i int) bool {
	return r.wordAt(i, "metal", "metals", "aluminum", "aluminums", "aluminium", "aluminiums", "aluminio") && (r.wordAt(i+1, "part", "parts", "rim", "edge") || r.wordAt(i-1, "the", "my", "our", "el")) && r.wordAt(i+1, "part", "parts", "piece", "is", "was", "has", "got", "gone", "went", "s", "ha", "looks", "around", "edge", "rim", "itself", "esta", "se")
}

// theirFrame: the noun is the frame that is up there: not a window's, not one that is wished for.
func (r *reader) theirFrame(i int) bool {
	for k := i - 1; k >= 0 && k > i-4; k-- {
		if r.wordAt(k, "window", "windows", "door", "picture", "new", "no", "without", "wood", "wooden", "bed", "time", "sin", "nuevo", "another", "different", "replacement", "want", "need", "a", "un", "next", "and", "y", "plus", "con", "with") {
			return r.wordAt(k, "a") && r.wordAt(k-1, "got", "have", "has") || r.wordAt(k, "with") && r.wordAt(k+1, "my", "the", "our", "that") || r.wordAt(k, "and", "y") && r.wordAt(k+1, "the", "my", "our", "el", "its")
		}
		if r.toks[k].kind != wordToken {
			break
		}
	}
	return !r.wordAt(i+1, "shop", "color", "colors", "colour", "finish", "size", "sizes", "nuevo", "nuevos", "house") && !r.markAt(r.sentenceLast(i), '?') && !r.wordsIn(r.clauseStart(i), i, "finish", "mill", "bronze", "anodized", "coat", "color", "acabado") && !r.wishedFrame(i, i)
}

// conditionAfter is the state that the words after the noun tell, up to where the clause turns to something
// else; "" where they tell none, or more than one, or doubt it.
func (r *reader) conditionAfter(i int) (string, int) {
	state, last, denied := "", i, false
	for k := i + 1; k < len(r.toks) && k < i+14; k++ {
		t := &r.toks[k]
		if t.kind == markToken && !t.mark(',') || t.kind == numToken && state == "" {
			break
		}
		w := t.text
		if t.kind != wordToken {
			if state != "" || r.wordAt(k+1, "it", "its", "they") && k > i+1 || r.wordAt(k+1, "ya", "se", "esta", "estan", "the", "el", "la", "my") {
				break // "the frame's bent, the dome is fine", "frame stays, it has gotten foggy"
			}
			continue
		}
		if otherThings.has(w) && !r.wordAt(k-1, "on", "to", "around", "over", "of", "in", "de", "del", "al", "en") || r.wordAt(k, "so", "because", "but", "pero", "porque", "since", "while", "when", "cuando") && state != "" {
			break
		}
		if stateDoubts.has(w) || t.is("was", "were", "era") && r.wordsIn(k, min(k+6, len(r.toks)), "until", "before", "new", "installed", "made", "originally") {
			return "", 0
		}
		if stateDenials.has(w) {
			denied = true
			continue
		}
		s := stateOf[w]
		if s == "" || s == fitcheck.ConditionGood && (!r.saidToBe(i, k) || r.wordAt(k-1, "down", "tight", "on")) || r.wordAt(k+1, "at") || r.wordAt(k+1, "up", "down") && s == fitcheck.ConditionGood {
			continue
		}
		if denied && s == fitcheck.ConditionGood {
			return "", 0
		}
		if denied {
			continue // "the frame has no rust"
		}
		switch {
		case state == "" || state == s:
			state, last = s, k
		case s == fitcheck.ConditionGood && state == fitcheck.ConditionWeathered: // "faded but solid"
		case state == fitcheck.ConditionGood && s == fitcheck.ConditionWeathered: // "fine, just faded"
			state, last = s, k
		default:
			return "", 0
		}
	}
	return state, last
}

// conditionBefore is the state that the words right before the noun tell: "with my twisted frame", "a branch
// bent the frame", "somebody caulked over the frame".
func (r *reader) conditionBefore(i int) (string, int) {
	k := i - 1
	for r.wordAt(k, "the", "my", "our", "its", "that", "this", "over", "up", "in", "all", "around", "right", "clean", "metal", "old", "el", "mi", "todo") && k > i-5 {
		k--
	}
	state := stateOf[r.wordText(k)]
	if state == "" || state == fitcheck.ConditionGood || r.deniesBetween(r.clauseStart(i), i) || k == i-1 && !r.wordsIn(i-3, i-1, "the", "my", "our", "with", "this", "that", "its", "a", "el", "mi") {
		return "", 0
	}
	if k < i-1 && r.wordAt(k, "rust", "corrosion", "tar", "caulk", "caulking", "silicone", "sealant", "goo", "mastic", "silicon", "brea", "oxido", "rusts") && !r.wordsIn(k+1, i, "over") && !(r.wordsIn(k+1, i, "around") && stateOf[r.wordText(k)] == fitcheck.ConditionCaulkedOver) {
		return "", 0
	}
	return state, k
}

// frameUnknown is where words begin that say that nobody has seen the frame: "she doesn't know how the
// frame is", "no hemos revisado el marco"; -1 where there are none.
func (r *reader) frameUnknown(i int) int {
	if !r.wordAt(i-1, "the", "my", "our", "that", "el", "ese", "her", "his", "their") && !r.wordAt(i-2, "the", "my", "our", "that", "el", "her", "his", "their") {
		return -1
	}
	for k := max(r.sentenceFirst(i), i-7); k < i; k++ {
		if r.wordAt(k, "know", "knows", "seen", "checked", "check", "look", "looked", "inspected", "idea", "clue", "sabe", "sabemos", "visto", "revisado", "checado", "sabria") && r.wordsIn(max(r.sentenceFirst(i), k-5), k, "not", "dont", "doesnt", "havent", "hasnt", "never", "no", "nobody", "cant", "couldnt", "didnt", "nunca", "nadie") && !(r.wordsIn(k, i, "what") && !r.wordsIn(k, i, "shape", "condition", "state")) && !r.wordsIn(k, i, "if", "which", "who", "size", "kind", "far", "any", "but", "and", "as") && !r.wordsIn(i+1, min(i+4, len(r.toks)), "size", "kind", "measures") && (!r.wordsIn(i+1, min(i+4, len(r.toks)), "is", "was") || r.wordsIn(k, i, "shape", "condition", "state")) {
			return k
		}
	}
	return -1
}

// frameHarmed: "the frame is cracked at a corner", "forgot to say the frame is missing": what is broken or
// gone is no plastic.
func (r *reader) frameHarmed(h *hit) bool {
	for k := h.first - 1; k >= r.clauseStart(h.first) && k > h.first-6; k-- {
		switch w := r.wordText(k); {
		case frameNouns.has(w):
			return r.theirFrame(k) && !r.wordsIn(max(0, k-3), k, "not", "no", "in", "inside", "around", "within", "from", "en", "del") && !r.wordsIn(k+1, h.first, "and", "or", "y", "with", "in", "holding")
		case w == "", otherThings.has(w):
			return false
		}
	}
	return false
}

// saidToBe: a verb joins the noun and the word: "the frame up there still looks good".
func (r *reader) saidToBe(i, k int) bool {
	return r.wordsIn(i+1, k, "is", "are", "was", "were", "parts", "looks", "looked", "look", "seems", "stays", "stayed", "remains", "feels", "held", "holding", "came", "survived", "appears", "checked", "around", "esta", "estan", "sigue", "siguen", "quedo", "quedaron", "ve", "ven", "anda", "salio", "parece") ||
		k == i+1 && !r.wordAt(k+1, "size", "sizes", "for", "to", "with") || r.wordAt(k-1, "in", "en") && r.wordAt(k+1, "shape", "condition", "order", "estado", "condiciones")
}

// doubtBetween: a word of doubt stands between two tokens.
func (r *reader) doubtBetween(from, to int) bool {
	for k := from; k < to; k++ {
		if stateDoubts.has(r.wordText(k)) && !(r.wordAt(k, "know") && r.wordAt(k-1, "you", "ya", "u")) { // "just so you know"
			return true
		}
	}
	return false
}

// deniesBetween: a word that denies stands between two tokens.
func (r *reader) deniesBetween(from, to int) bool {
	for k := from; k < to; k++ {
		if stateDenials.has(r.wordText(k)) {
			return true
		}
	}
	return false
}
