package reading

import (
	"strings"
	"unicode"
)

var besideYou = wordsOf(`tell thank see do did would could will call for about to can hear how love give send let
	with are hey`)

// Marks of other languages' small words, see vocabulary/words.txt.
const (
	french uint8 = 1 << iota
	german
	portuguese
	italian
	vietnamese
	tagalog
	haitian
	polish
)

var otherTags = [...]string{"fr", "de", "pt", "it", "vi", "tl", "ht", "pl"}

// language is the message's language as a BCP 47 tag: the one whose small words it
// has most of, that of its letters, or the talk's where the message tells nothing.
func (r *reader) language() string {
	if tag := scriptOf(r.Text); tag != "" {
		return tag
	}
	known := "en"
	if r.Language != "" {
		known = r.Language
	}
	en, es, best, tag := r.smallWords()
	switch {
	case best >= 3 && best > en && best > es || best == 2 && en == 0 && es == 0:
		return tag
	case en == 0 && es == 0 || en == 0 && es == 1 && len(r.toks) == 1 && len(r.toks[0].text) < 3 && r.toks[0].text != "si":
		return known
	case es > en || es == en && known == "es":
		return "es"
	}
	return "en"
}

func (r *reader) smallWords() (en, es, best int, tag string) {
	var others [len(otherTags)]int
	for i := range r.toks {
		w := r.toks[i].word
		if w == nil || r.toks[i].kind != wordToken || r.toks[i].named {
			continue
		}
		if w.langEn {
			en++
		}
		if w.langEs && !r.youAt(i) {
			es++
		}
		for k := range others {
			if w.other&(1<<k) != 0 {
				others[k]++
			}
		}
	}
	for k, n := range others {
		if n > best {
			best, tag = n, otherTags[k]
		}
	}
	return en, es, best, tag
}

// youAt: a "ya" that is "you": "couldn't tell ya".
func (r *reader) youAt(i int) bool {
	return r.wordAt(i, "ya") && r.among(i-1, besideYou)
}

// scripts are letters that tell a language, as far as letters can.
var scripts = []struct {
	table *unicode.RangeTable
	tag   string
}{
	{unicode.Hangul, "ko"}, {unicode.Hiragana, "ja"}, {unicode.Katakana, "ja"}, {unicode.Han, "zh"},
	{unicode.Arabic, "ar"}, {unicode.Hebrew, "he"}, {unicode.Cyrillic, "ru"}, {unicode.Greek, "el"},
	{unicode.Thai, "th"}, {unicode.Devanagari, "hi"}, {unicode.Bengali, "bn"}, {unicode.Khmer, "km"},
	{unicode.Lao, "lo"}, {unicode.Myanmar, "my"}, {unicode.Ethiopic, "am"}, {unicode.Gurmukhi, "pa"},
	{unicode.Tamil, "ta"}, {unicode.Georgian, "ka"}, {unicode.Armenian, "hy"},
}

// ownLetters tell languages apart that share a script.
var ownLetters = []struct{ script, letters, tag string }{
	{"ru", "іїєґІЇЄҐ", "uk"}, {"ru", "ўЎ", "be"}, {"ru", "ѓќѕЃЌЅ", "mk"}, {"ru", "ђћЂЋ", "sr"},
	{"ar", "ٹڈےڑں", "ur"}, {"ar", "پچژگ", "fa"},
}

// scriptOf is the language of a message mostly in letters that are not Latin.
func scriptOf(text string) string {
	var counts [32]int
	latin, other := 0, 0
	for _, c := range text {
		if c < 0x370 {
			if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0xc0 {
				latin++
			}
			continue
		}
		for k := range scripts {
			if unicode.Is(scripts[k].table, c) {
				counts[k]++
				other++
				break
			}
		}
	}
	if other == 0 || other < latin/2 {
		return ""
	}
	best := 0
	for k, n := range counts {
		if n > counts[best] {
			best = k
		}
	}
	if scripts[best].tag == "zh" && (counts[1] > 0 || counts[2] > 0) {
		return "ja"
	}
	if scripts[best].tag == "zh" && counts[0] > 0 {
		return "ko"
	}
	for _, own := range ownLetters {
		if own.script == scripts[best].tag && strings.ContainsAny(text, own.letters) {
			return own.tag
		}
	}
	return scripts[best].tag
}

// otherLanguage asks for another language's help where the message was not understood.
func (r *reader) otherLanguage() {
	if r.out.Language == "en" || r.out.Language == "es" {
		return
	}
	if len(r.out.Facts) == 0 && len(r.out.Unclear) == 0 {
		r.out.Requests = r.out.Requests[:0]
		r.request(RequestOtherLanguage)
	}
}
