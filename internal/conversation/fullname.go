package conversation

import (
	"regexp"
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// A name that is part of the known one says nothing new: who gave "Dr. Ann Bell" signs as "Ann".

// cutName are words that take away from a name at the summary: "no, my name is just Ann Bell".
var cutName = regexp.MustCompile(`(?i)\b(no|not|just|only|without|drop|solo|s[oó]lo|nada m[aá]s|sin)\b`)

// fullName puts the known name in place of a part of it, unless the words put the name right.
func (t *turn) fullName(r reading.Reading, text string) reading.Reading {
	known, _ := t.talk.Value(fitcheck.TopicName, 0).(fitcheck.Text)
	putRight := partOfName.MatchString(text) || nameDenied.MatchString(text) || t.summed() && namesName.MatchString(text) && cutName.MatchString(text)
	if known == "" || putRight {
		return r
	}
	r.Facts = slices.Clone(r.Facts)
	for k := range r.Facts {
		if name, ok := r.Facts[k].Value.(fitcheck.Text); ok && r.Facts[k].Topic == fitcheck.TopicName && withinName(string(name), string(known)) {
			r.Facts[k].Value = known
		}
	}
	return r
}

// withinName says whether every word of a name is one of the whole, in its order, by an initial or
// without its accents too: "M. E. Castillo" of "María Elena Castillo".
func withinName(part, whole string) bool {
	words, told := nameWords(whole), nameWords(part)
	if len(told) > 1 && len(told) <= len(words) && titles[told[0]] && !slices.Contains(words, told[0]) {
		told = told[1:] // "Dr. Bell" of "Mary Ann Bell"
	}
	for _, p := range told {
		at := slices.IndexFunc(words, func(w string) bool {
			return p == w || p == plainLetters.Replace(w) || len(p) == 1 && strings.HasPrefix(plainLetters.Replace(w), p)
		})
		if at < 0 {
			return false
		}
		words = words[at+1:]
	}
	return true
}

// fullerName says whether an entry has more of the name that stood, and changes nothing of it.
func fullerName(before, now Entry) bool {
	part, _ := before.Value.(fitcheck.Text)
	whole, _ := now.Value.(fitcheck.Text)
	return now.Topic == fitcheck.TopicName && withinName(string(part), string(whole))
}

// toldFuller says whether the name of this turn is the known one with more of it.
func (t *turn) toldFuller() bool {
	var before *Entry
	for i := range t.talk.Ledger {
		e := &t.talk.Ledger[i]
		if e.Topic != fitcheck.TopicName || e.Undone {
			continue
		}
		if i >= t.from && before != nil {
			return fullerName(*before, *e)
		}
		before = e
	}
	return false
}

func nameWords(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" .,-", r) })
}

var plainLetters = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n")
