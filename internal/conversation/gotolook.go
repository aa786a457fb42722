package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// toLookWords: somebody of theirs goes to look, to measure, to ask or to fetch what it takes: "ill have to go out and
// look", "hang on let me get the ladder", "he has to go back up again", "voy a checar y le aviso".
var toLookWords = regexp.MustCompile(`(?i)\b(` +
	`(i'?ll|we'?ll|(s?he|they)'?ll|will|have (got )?to|has (got )?to|gotta|got to|need to|needs to|going to|gonna|go|going|let me|lemme|let us|let'?s|` +
	`should|must|want to|wants to|try to|i'?m|he'?s|she'?s|we'?re|off to|back to|about to|just)` + ` (` + wordsBetween + `)` +
	`((take|have) (an?|another) (\w+ )?look|look|check|see|measure|re-?measure|go (back |out |on )*(up|out|outside|over|home)|` +
	`(going|heading|climbing|running|headed) (back |out |on )*(up|out|outside|over|home)|climb|run (out|up|over|home|upstairs|outside)|find out|double ?check|` +
	`ask|checking|measuring|looking|(get|grab|find|fetch|borrow|dig out|getting|grabbing|finding|bring) ` + article + tools + `)\b|` +
	`on (my|his|her|our) way|(heading|headed) (back |right )?(up|out|outside)|coming (over|by|out|back) (\w+ )?(to|and) (measure|look|check|see)\b|` +
	`(voy|va|vamos|van|vas|d[eé]j[ae]me|deja|tengo que|tiene que|tenemos que|hay que|tendr[eé] que|necesito|quiero|ahorita|orita|luego|ya) ` +
	`(\w+ ){0,3}(checar\w*|checo|revisar\w*|reviso|ver(lo|la)?|veo|medir(lo|la)?|mido|mide|subir\w*|subo|sube|salir|preguntar\w*|pregunto|buscar|busco|` +
	`(por|traer|sacar) ` + article + tools + `)\b|(le|les|te) (aviso|avisamos)\b)`)

// wordsBetween are up to four words between what is about to be done and the doing.
const wordsBetween = `(?:\w+ ){0,4}`

// article and tools: "the ladder", "my glasses", "la cinta".
const (
	article = `(the |my |a |his |her |our |some |el |la |una? |mi |su )*(\w+ )?`
	tools   = `(ladder|step ?stool|tape|tape measure|measuring tape|ruler|yardstick|flashlight|glasses|binoculars|phone|drone|husband|wife|son|escalera|cinta|metro|` +
		`lentes|linterna)`
)

// othersLook: who is to go and look is the shop, or it is asked, or nobody can, or it is no skylight that is looked at.
var othersLook = regexp.MustCompile(`(?i)\?|\b(you|y'?all|u|someone|somebody|anyone|anybody|one of your|usted(es)?|alguien)( guys?)? ` + wordsBetween +
	`(come|look|check|see|measure|send|go|find|ask|venir|viene|ver|medir)\b|\b(do|does|should|must|can|could|would|may) (i|we|he|she|they|it)\b|` +
	`\b(can'?t|cannot|won'?t|not (able|going|gonna|get|go|climb)|don'?t (want|have|need|like)|never|nobody|no one|unable|no (puedo|puede|podemos|quiero|tengo|voy|va))\b|` +
	`\b(price|prices|pricing|cost|costs|quote|samples?|website|catalog|financing|look into|look at (other|another)|see (if|whether|how) (you|it|this)|` +
	`precios?|cu[aá]nto|cotizaci[oó]n)\b|\b(what|which|how|why|qu[eé] es|cu[aá]l|c[oó]mo)\b`)

// wouldLook beside "I don't know" only says why not: "no idea, I'd have to climb up there".
var wouldLook = regexp.MustCompile(`(?i)\b(i'?d|he'?d|she'?d|we'?d|would|tendr[ií]a\w*) `)

// goesUpThere: up there, or where one gets up by.
var goesUpThere = regexp.MustCompile(`(?i)\b(ladder|roof|(go|goes|going|get|gets|climb|climbs|climbing|head|heading|run) (back |right |on )*up|escalera|techo|azotea|sub(ir\w*|o|e))\b`)

// goesToLook says whether the words tell only that somebody of theirs is going to find out.
func goesToLook(text string) bool {
	return toLookWords.MatchString(text) && !othersLook.MatchString(text)
}

// onTheWay leaves the question open for who goes to look: "i dont know, ill have to go out and look" is no
// "not sure" to it.
func (t *turn) onTheWay(r reading.Reading, text string) reading.Reading {
	told := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool { return !unsure(f.Value) })
	if told || len(r.Facts)+len(r.DontKnow) == 0 || len(t.talk.Memory.Asking) == 0 || !goesToLook(text) || wouldLook.MatchString(text) {
		return r
	}
	r.Facts, r.DontKnow = nil, nil
	return r
}

// unsure is one word for all topics: a style, a frame's condition, a wish.
func unsure(v fitcheck.Value) bool { return v == fitcheck.Choice(fitcheck.StyleUnsure) }

// takeYourTime says to who goes to look that the talk waits, and once what matters up there.
func (t *turn) takeYourTime() {
	t.say.add(t.vary("ack.look", nil))
	if t.heard.goesUp && t.talk.Memory.Said["safe.roof"] == 0 {
		t.say.add(t.vary("safe.roof", nil))
	}
}
