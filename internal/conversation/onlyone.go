package conversation

import (
	"reflect"
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// A second skylight that was never there: "there's only one", "no second one", "please drop the other".

const (
	ofSkylight = `(?: (?:skylights?|domes?|units?|bubbles?|tragaluz|tragaluces|domos?|claraboyas?|burbujas?))?`
	theSecond  = `(?:second|2nd|other|another|extra|segund[oa]|otr[oa])(?: ones?)?` + ofSkylight
	clauseTail = `(?: (?:on|in|over|at|up|here|there|total|altogether|to|then|please|now|that|and|en|sobre|arriba|por|y|aqui|para)\b.*)?$`
)

var (
	// noSecond denies the second one.
	noSecond = regexp.MustCompile(`^(?:(?:(?:there (?:is|was|are|never was)|theres|(?:i|we) (?:have|got)|(?:i|we)ve got|its|it is) )?(?:no|not an?|not any|never an?) |(?:there (?:isnt|is not|wasnt|arent|are not)|(?:i|we) (?:dont|do not) have) (?:an? |any )?|no (?:hay|existe|tengo|tenemos|es) (?:una? |ningun[oa]? )?)` + theSecond + clauseTail +
		`|^(?:the |el |la )?(?:(?:skylight|dome|unit|tragaluz|domo|claraboya|unidad)(?: number| numero)? ?#?(?:1|2|one|two|uno|dos)|` + theSecond + `) (?:doesnt|does not|didnt|dont|never|no) (?:even |really )?(?:exist|existed|existe)\b.*$`)

	// onlyTheOne says that there is one alone, inAll also where kinds have names.
	onlyTheOne = regexp.MustCompile(`^(?:(?:there (?:is|was)|theres|its|it is|(?:i|we)(?:ve got)?|it was|hay|tengo|es|son|necesito) )?(?:(?:have|got|need|want) )?(?:really |actually |literally )?(?:only|just|solo|solamente|nomas|nada mas|unicamente) (?:(?:have|got|need|want|had|hay|tengo|es|necesito|quiero|ever had) )?(?:the |el |la )?(?:one|1|a single|single|uno|una?|un solo)` + ofSkylight + clauseTail +
		`|^(?:hay|es|tengo|necesito) una? (?:sol[oa]` + ofSkylight + `|` + `(?:tragaluz|domo|claraboya)? ?(?:nada mas|nomas|solamente))` + clauseTail)

	dropsSecond = regexp.MustCompile(`^(?:drop|remove|forget|scratch|skip|delete|ignore|cancel|erase|quite|quita|quiten|elimine|borre|olvide) (?:about )?(?:the |that |el |la |ese |esa )?` + theSecond + clauseTail)

	secondOne = regexp.MustCompile(`\b(?:second|2nd|segund[oa])\b`)

	// sameSkylight stands beside such words: "it's the same one".
	sameSkylight = regexp.MustCompile(`^(?:its|it is|thats|they are|theyre|both are|es|son|ambos son) (?:all |both )?(?:the |el |la )?(?:same|mism[oa])(?: one)?` + ofSkylight + clauseTail)

	clauses    = regexp.MustCompile(`[^.,;:!?\n]+[.,;:!?\n]*`)
	leadsIn    = regexp.MustCompile(`^(?:(?:and|but|so|nope|yes|yep|yeah|ok|okay|please|sorry|actually|wait|just|again|like i said|y|pero|si|perdon|por favor|mire|ya le dije que) )+`)
	plainWords = strings.NewReplacer("'", "", "’", "", "á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u")
)

// onlyOne folds a second skylight into the first where the words say that there is but one, and
// nothing that was measured of them differs. It gives the other words: those that deny one name none.
func (t *turn) onlyOne(text string, in []Message) string {
	if t.talk.UnitCount() > 2 || t.talk.Memory.Quiet || t.totalTold() > 1 {
		return text
	}
	said, left := "", strings.Builder{}
	for _, c := range clauses.FindAllString(text, -1) {
		switch words := plainClause(c); {
		case t.deniesSecond(words):
			said = strings.TrimSpace(c)
		case said != "" && sameSkylight.MatchString(words):
		default:
			left.WriteString(c)
		}
	}
	if said == "" || t.talk.UnitCount() == 2 && !t.foldSecond() {
		return text
	}
	t.heard.onlyOne = true
	t.take(reading.Fact{Topic: fitcheck.TopicCount, Unit: 1, Value: fitcheck.Whole(1), Said: strings.TrimRight(said, ".,;:!? ")}, source(in, said), text)
	return strings.TrimSpace(left.String())
}

// plainClause is a clause without its marks and accents.
func plainClause(c string) string {
	return plainWords.Replace(strings.ToLower(strings.Trim(c, " .,;:!?\n")))
}

// deniesSecond: one that is called by a name is given up by it, or where nothing else can be meant;
// "just one", asked how many, is of a kind.
func (t *turn) deniesSecond(clause string) bool {
	m, led := &t.talk.Memory, leadsIn.ReplaceAllString(clause, "")
	if t.talk.UnitCount() < 2 {
		return noSecond.MatchString(led) && secondOne.MatchString(led) && !t.isAsked(fitcheck.TopicLayers) // else it would make one
	}
	for _, words := range []string{clause, led, strings.TrimPrefix(led, "no ")} {
		only := onlyTheOne.MatchString(words)
		if noSecond.MatchString(words) || only && inAll.MatchString(words) {
			return true
		}
		if m.Rooms[2]+m.Looks[2] == "" && !t.isAsked(fitcheck.TopicCount) && (only || dropsSecond.MatchString(words)) {
			return true
		}
	}
	return false
}

// foldSecond gives the first skylight what was said of the second and not of it, and drops the
// second. It says false where the two can't be one.
func (t *turn) foldSecond() bool {
	for _, topic := range fitcheck.UnitTopics {
		first, second := t.talk.Value(topic, 1), t.talk.Value(topic, 2)
		if n, ok := first.(fitcheck.Whole); topic == fitcheck.TopicCount && ok && n > 1 || topic.OfLength() && first != nil && second != nil && !reflect.DeepEqual(first, second) {
			return false
		}
	}
	for _, e := range slices.Clone(t.talk.Ledger) {
		if e.Unit == 2 && !e.Undone && t.talk.entry(e.Topic, 1) == nil {
			e.Unit = 1
			t.talk.add(e)
		}
	}
	t.dropLast(2)
	m := &t.talk.Memory
	m.Total = 0
	for _, p := range append(slices.Clone(m.Early), m.Pending) {
		if p != nil && p.Unit == 2 {
			p.Unit = 1
		}
	}
	for k := range m.Asking {
		if m.Asking[k].Unit == 2 {
			m.Asking[k].Unit = 1
		}
	}
	return true
}

// ackOnlyOne says that one skylight is left.
func (t *turn) ackOnlyOne() {
	if t.heard.onlyOne {
		t.say.add(t.line("ack.only_one", 0, wording.Args{}))
	}
}
