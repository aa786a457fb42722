package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A known name is put right: the whole of it or a part, the other part stays.

const (
	lastNameWords  = `(?:last name|surname|family name|apellido)`
	firstNameWords = `(?:first name|nombre de pila|primer nombre)`
	staysWords     = `(?:same|stays|remains|unchanged|right|fine|good|ok|okay|correct|igual|mismo|bien|correcto|no cambia|sigue|queda)`
)

var (
	// partOfName says which part of a name words put right: "my last name is spelled Bel".
	partOfName = regexp.MustCompile(`(?i)\b(` + lastNameWords + `)\b|\b(` + firstNameWords + `|first is)\b`)
	// partKept says which part stays: "the last name is the same", "el apellido no cambia".
	partKept = regexp.MustCompile(`(?i)(?:\b(?:and|y|the|my|el|mi)\s+)*(?:\b(?:same|mismo)\s+(?:(` + lastNameWords + `)|(` + firstNameWords + `))|` +
		`\b(?:(` + lastNameWords + `)|(` + firstNameWords + `))(?:\s+(?:is|es|esta|está|se|the|el|all|it|still))*\s+` + staysWords + `(?:\s+(?:the same|igual|bien))?)\b`)
	// nameDenied is a name that the words say it is not: "no me llamo Ana", "my name isn't Ann".
	nameDenied = regexp.MustCompile(`(?i)\b(?:no (?:me llamo|soy)|(?:my )?name(?: is|'?s)? ?(?:not|n't)|name isn'?t|i(?: am|'?m) not|nombre no es)\s+(\pL+)(?:\s+\pL+)?`)
	// nameNot ends a name put right with what stood: "it's Ann Bell not Bel".
	nameNot    = regexp.MustCompile(`(?i)[,\s]+(?:not|no|y no)\s+(\pL+)\W*$`)
	namesName  = regexp.MustCompile(`(?i)\b(?:names?|nombre|apellido|surname|llamo)\b`)
	othersName = regexp.MustCompile(`(?i)\b(?:your|whose|what|street|company|firm|wife|husband|son|daughter|boss|tenant|roofer|contractor|qué|cuál|calle|empresa|espos[ao]|hij[ao]|jefe|inquilin[ao]|techador|contratista)\b`)
	// nameStarts is what can stand right before a name that is put right.
	nameStarts = regexp.MustCompile(`(?i)[,;:.!?\n]+|\b(?:sino|but|pero|it'?s|it is|is|es|soy|me llamo|i'?m|first name|apellido|last name|spelled|should be)\s`)
)

// nameMended keeps the part of a known name that was not put right, and hears a name that the
// words around it hide: "all good except the first name, it's Anne with an e".
func (t *turn) nameMended(r reading.Reading, text string) reading.Reading {
	known, _ := t.talk.Value(fitcheck.TopicName, 0).(fitcheck.Text)
	words := strings.Fields(string(known))
	if len(words) == 0 {
		return r
	}
	r.Facts = slices.Clone(r.Facts)
	k := slices.IndexFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicName })
	if k < 0 {
		f, ok := t.hiddenName(text, words)
		if !ok {
			return r
		}
		k, r.Facts = len(r.Facts), append(r.Facts, f)
	}
	part, _ := r.Facts[k].Value.(fitcheck.Text)
	if len(strings.Fields(string(part))) != 1 || len(words) < 2 {
		return r
	}
	switch mendedPart(text, string(part), words) {
	case firstPart:
		r.Facts[k].Value = part + fitcheck.Text(" "+strings.Join(words[1:], " "))
	case lastPart:
		r.Facts[k].Value = fitcheck.Text(strings.Join(words[:len(words)-1], " ")+" ") + part
	}
	return r
}

// hiddenName is the name in a sentence about the name at the summary, without what it denies or
// lets stand.
func (t *turn) hiddenName(text string, known []string) (reading.Fact, bool) {
	denied := nameDenied.FindStringSubmatch(text)
	ofName := namesName.MatchString(text) || denied != nil && slices.ContainsFunc(known, func(k string) bool { return strings.EqualFold(k, denied[1]) })
	if m := nameNot.FindStringSubmatch(text); m != nil && slices.ContainsFunc(known, func(k string) bool { return strings.EqualFold(k, m[1]) }) {
		ofName, text = true, nameNot.ReplaceAllString(text, "")
	}
	if !t.summed() || !ofName || othersName.MatchString(text) {
		return reading.Fact{}, false // "I'm not very handy" denies no name
	}
	left := nameDenied.ReplaceAllString(partKept.ReplaceAllString(text, ","), ",")
	for _, words := range nameStarts.Split(left, -1) {
		if words = strings.TrimSpace(words); words == "" || namesName.MatchString(words) {
			continue
		}
		for _, f := range reading.Read(reading.Input{Text: words, Asked: []fitcheck.Topic{fitcheck.TopicName}, Language: t.talk.Language}).Facts {
			name, _ := f.Value.(fitcheck.Text)
			if f.Topic == fitcheck.TopicName && (reading.GivenName(string(name)) || mendedPart(text, string(name), known) != wholeName) {
				return f, true
			}
		}
	}
	return reading.Fact{}, false
}

// part of a name that is put right.
type part uint8

const (
	wholeName part = iota
	firstPart
	lastPart
)

// mendedPart says which part of a known name one word puts right: the one that is named, the one
// that it looks like, or the first name that was denied alone.
func mendedPart(text, now string, known []string) part {
	if m := partKept.FindStringSubmatch(text); m != nil {
		if m[1]+m[3] != "" {
			return firstPart
		}
		return lastPart
	}
	if all := partOfName.FindAllStringSubmatch(text, 2); len(all) == 1 {
		if all[0][1] != "" {
			return lastPart
		}
		return firstPart
	}
	switch m := nameDenied.FindStringSubmatch(text); {
	case alike(now, known[0]), m != nil && strings.EqualFold(m[1], known[0]):
		return firstPart
	case alike(now, known[len(known)-1]):
		return lastPart
	}
	return wholeName
}

// alike says whether two names differ in one place: Ana and Anna, Stephen and Steven.
func alike(a, b string) bool {
	x, y := []rune(strings.ToLower(a)), []rune(strings.ToLower(b))
	if len(x) > len(y) {
		x, y = y, x
	}
	same := 0
	for same < len(x) && x[same] == y[same] {
		same++
	}
	for k := 1; same < len(x) && x[len(x)-k] == y[len(y)-k] && k <= len(x)-same; k++ {
		same++
	}
	return len(x) > 1 && same >= len(x)-1 && len(y)-len(x) < 3
}
