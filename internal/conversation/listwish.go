package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// What is wanted otherwise than the list has it, put as a question or beside what the list says.

// changeWish is a change to the summary that is put as a question.
var changeWish = regexp.MustCompile(`(?im)^(\W*(?:(?:yes|yeah|yep|ok|but|and|also|actually|looks good|s[ií]|pero|y)\W+)*)(?:can|could|would|may|puede[ns]?|podr[ií]an?) (?:you |u |we |i |it |usted(?:es)? |me )?(?:please |por favor )?((?:make|change|switch|swap|put|do|cambi\w+|pon\w+|hac\w+) [^?\n]*)\?*`)

// couldBe asks whether a thing can be so: "could the kitchen one be white instead?", "¿puede ser
// blanco el del baño?"; couldHave whether one can have it: "can I get bronze for the kitchen?". What
// that would cost or be better for is another question.
var (
	couldBe   = regexp.MustCompile(`(?im)^(` + beforeWish + `)(?:can|could|may|might) ((?:it|they|this|that|those|the|both|all)\b[^?\n]*?) be (?:done )?(?:in )?([^?\n]+)\?*`)
	couldHave = regexp.MustCompile(`(?im)^(` + beforeWish + `)(?:can|could|may|might) (?:i|we) (?:please )?(?:have|get|go with) ([^?\n]+)\?*`)
	podriaSer = regexp.MustCompile(`(?im)^(` + beforeWish + `)¿?(?:puede[ns]?|podr[ií]an?) ser ([^?\n]+)\?*`)
	weighs    = regexp.MustCompile(`(?i)\b(?:more|less|extra|same|included|charge|fits?|shipped|ship|deliver|delivered|install|installed|dropped|left|cheaper|better|worse|stronger|cost|costs|price|quote|expensive|problem|m[aá]s|menos|barat[oa]|mejor|car[oa]|cuesta|precio|problema)\b`)
)

// listed are the words of what a list can hold: "could it be left at the church?" asks for nothing of
// that.
var listed = regexp.MustCompile(`(?i)\b(?:clear|white|bronze|tint\w*|acrylic|poly\w*|single|double|triple|layers?|one|two|three|four|five|six|\d+|mill|anodi\w+|aluminum|painted|round|square|dome|pyramid|flat|complete|whole|blanc[oa]s?|clar[oa]s?|transparentes?|bronce|acr[ií]lico|policarbonato|capas?|dos|tres|cuatro|uno|una)\b`)

// beforeWish may stand before a wish.
const beforeWish = `\W*(?:(?:no|yes|yeah|yep|ok|but|and|also|actually|sorry|looks good|s[ií]|pero|y|perd[oó]n)\W+)*`

// listSays and saysList are what the list is said to have, beside what was told: "it says acrylic, I
// said polycarbonate", "I asked for two layers and the list shows one".
const (
	listHas = `(?:(?:it|that|the list|your list|the summary|you|u|you guys)\s+(?:still )?(?:says?|shows?|ha[sd]|have|put|wrote|listed|got)|(?:(?:la lista|el resumen) )?(?:dicen?|pusieron|puso))\s+`
	iSaid   = `(?:(?:i|we)\s+(?:said|want(?:ed)?|asked for|told you|meant|need(?:ed)?|ordered|picked|chose)|(?:yo )?(?:dije|quer[ií]a|quiero|ped[ií]))\s+`
)

var (
	listSays = regexp.MustCompile(`(?i)\b` + listHas + `([^.;\n]{1,40}?)[,.;]?\s*(?:but |and |pero |y )?` + iSaid + `([^.;,\n]*)`)
	saysList = regexp.MustCompile(`(?i)\b` + iSaid + `([^.;,\n]{1,40}?)[,.;]?\s+(?:but |and |not |pero |y )*` + listHas + `([^.;,\n]{1,30})`)

	bareNumber   = regexp.MustCompile(`(?i)^\W*(?:one|two|three|four|five|six|\d|una|uno|dos|tres|cuatro|cinco|seis)\W*$`)
	numberOf     = regexp.MustCompile(`(?i)\b(?:one|two|three|four|five|six|\d|una|uno|dos|tres|cuatro|cinco|seis)\b`)
	plainMeasure = regexp.MustCompile(`^[\d¼½¾⅛⅜⅝⅞][\d /.\-¼½¾⅛⅜⅝⅞"]*$`)

	// What the list says it of: "the round is …", "… for the round".
	saidOfPart = regexp.MustCompile(`(?i)^(?:the|el|la|los|las) [\p{L} ]+? (?:is|are|es|son)\b`)
	forPart    = regexp.MustCompile(`(?i) (?:for|on|in|para|en) (?:the|el|la|los|las) [\p{L} ]+$`)
)

// askedIn asks whether something is in the list: "did you get that it's a pyramid?".
var askedIn = regexp.MustCompile(`(?i)\bdid (?:you|u|y'?all|you guys) (?:also )?(?:get|see|note|catch|write|put|have|know|notice)(?: down)? (?:that )?((?:it|they|this|that)[^?\n]*)\?*|(?:anot[oó]|anotaron|vieron|vio) que ([^?\n]*)\?*`)

// summed says whether the customer has the summary before them: it is asked, or was agreed to.
func (t *turn) summed() bool {
	return t.isAsked(fitcheck.TopicConfirm) || t.talk.State == HandedOver && !t.talk.Memory.Quiet
}

// changeAsked makes a wish of a change that is asked for: "can you make it white outside?".
func changeAsked(text string) string {
	text = changeWish.ReplaceAllString(text, "$1$2")
	if !weighs.MatchString(text) && listed.MatchString(text) {
		text = couldBe.ReplaceAllString(text, "$1$2 should be $3")
		text = couldHave.ReplaceAllString(text, "${1}I want $2")
		text = podriaSer.ReplaceAllString(text, "${1}que sea $2")
	}
	text = askedIn.ReplaceAllString(text, "$1$2")
	if m := listSays.FindStringSubmatchIndex(text); m != nil {
		return text[:m[0]] + notTheList(text[m[4]:m[5]], text[m[2]:m[3]]) + text[m[1]:]
	}
	if m := saysList.FindStringSubmatchIndex(text); m != nil {
		return text[:m[0]] + notTheList(text[m[2]:m[3]], text[m[4]:m[5]]) + text[m[1]:]
	}
	return text
}

// notTheList is what was told in place of what the list says, with what it takes from that: "it has
// one layer, I said two", "it says 25 1/4, I said 25 1/2", "it says clear for the round, I said white".
func notTheList(told, list string) string {
	switch {
	case bareNumber.MatchString(told) && numberOf.MatchString(list):
		at := numberOf.FindStringIndex(list)
		return list[:at[0]] + strings.Trim(told, " .,") + list[at[1]:]
	case plainMeasure.MatchString(told) && plainMeasure.MatchString(list):
		return told + " not " + list
	}
	if m := saidOfPart.FindString(list); m != "" && !saidOfPart.MatchString(told) {
		return m + " " + told
	}
	if !forPart.MatchString(told) {
		return told + forPart.FindString(list)
	}
	return told
}

// wishOfChange reads a change to the summary that is put as a question or beside what the list
// says, where it is one: a question ("can you do it by Friday?") stays one, and is no yes.
func (t *turn) wishOfChange(text string, asked []fitcheck.Topic) (reading.Reading, bool) {
	wish := changeAsked(text)
	if wish == text || !t.summed() {
		return reading.Reading{}, false
	}
	r := t.read(wish, asked)
	r.Facts = slices.DeleteFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicConfirm })
	return r, len(r.Facts) > 0 || listSays.MatchString(text) || saysList.MatchString(text)
}
