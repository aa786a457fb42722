package shop

import (
	"math"
	"strings"
	"unicode"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// Answers finds the owner's answer to a question. It is safe for concurrent use.
type Answers struct {
	wordings []wording
	ways     map[int][]string   // to ask for each answer
	weight   map[string]float64 // of each word: rare ones tell more
	unknown  float64            // of a word that is in no question
}

type wording struct {
	words  []string
	entry  int // which answer
	answer string
}

// How well a question must fit: the share of its words, weighted, that it has in common
// with one of the owner's, and by how much more than with any other answer's. Tried on
// the example's questions and on sentences of talk; see the test.
const (
	fitsFrom   = 0.5
	fitsByMore = 0.12
)

// Questions are the file's, ready to be searched.
func (f *File) Questions() *Answers {
	a := &Answers{ways: map[int][]string{}, weight: map[string]float64{}}
	for i, one := range f.Answers {
		for _, q := range append([]string{one.Question}, one.Also...) {
			a.add(q, i, one.Answer["en"])
		}
		for _, q := range one.AlsoInSpanish {
			a.add(q, i, orElse(one.Answer["es"], one.Answer["en"]))
		}
	}
	a.weigh(len(f.Answers))
	return a
}

func (a *Answers) add(question string, entry int, answer string) {
	a.ways[entry] = append(a.ways[entry], unaccented(question))
	if words := wordsOf(question); len(words) > 0 {
		a.wordings = append(a.wordings, wording{words, entry, answer})
	}
}

// weigh gives each word the logarithm of how few answers it speaks of.
func (a *Answers) weigh(entries int) {
	in := map[string]map[int]bool{}
	for _, w := range a.wordings {
		for _, word := range w.words {
			if in[word] == nil {
				in[word] = map[int]bool{}
			}
			in[word][w.entry] = true
		}
	}
	for word, of := range in {
		a.weight[word] = math.Log(1 + float64(entries)/float64(len(of)))
	}
	a.unknown = math.Log(1 + float64(entries))
}

// Find is the owner's answer to a question in a message, in the language of the question;
// empty where none fits well.
func (a *Answers) Find(message string) string {
	best, answer := 0.0, ""
	for _, sentence := range QuestionsIn(message) {
		fit, found := a.fit(sentence)
		if fit > best {
			best, answer = fit, found
		}
	}
	return answer
}

// mostQuestions bounds what is looked up of one message.
const mostQuestions = 10

// QuestionsIn are the sentences of a message that ask something, in small letters and
// without accents. One word before more ("inside? let me see") only says again what the
// person was asked.
func QuestionsIn(message string) []string {
	var out []string
	sentences := strings.FieldsFunc(strings.ReplaceAll(message, "?", "?\n"), func(r rune) bool { return strings.ContainsRune(".!\n¿", r) })
	for i, sentence := range sentences {
		echo := i == 0 && len(sentences) > 1 && len(strings.Fields(sentence)) == 1
		if asks(sentence) && !echo && len(out) < mostQuestions {
			out = append(out, strings.TrimSpace(unaccented(askingClause(sentence))))
		}
	}
	return out
}

// Ask is one way to ask for one of the owner's answers, without accents.
type Ask struct {
	Entry                      int // which answer
	Language, Question, Answer string
}

// Asks are all ways to ask for the owner's answers.
func (f *File) Asks() []Ask {
	var out []Ask
	for i, one := range f.Answers {
		for _, q := range append([]string{one.Question}, one.Also...) {
			out = append(out, Ask{i, "en", unaccented(q), one.Answer["en"]})
		}
		for _, q := range one.AlsoInSpanish {
			out = append(out, Ask{i, "es", unaccented(q), orElse(one.Answer["es"], one.Answer["en"])})
		}
	}
	return out
}

// asking are words with which a question begins, English and Spanish.
const asking = " what whats who when where why how which is are do does did can could will would should what's who's how's " +
	"que cual cuando cuanto cuantos donde quien como por para puedo puede tiene hay ustedes y "

// asks says whether a sentence is a question: an answer of the customer's own ("two
// layers") must not be taken for one.
func asks(sentence string) bool {
	if strings.Contains(sentence, "?") {
		return true
	}
	fields := strings.Fields(unaccented(sentence))
	return len(fields) > 1 && strings.Contains(asking, " "+fields[0]+" ")
}

// askingClause is the part of a sentence that asks: "I want two layers, what do you
// recommend for hail?" asks about hail.
func askingClause(sentence string) string {
	for i := strings.LastIndex(sentence, ","); i >= 0; i = strings.LastIndex(sentence[:i], ",") {
		if rest := sentence[i+1:]; len(strings.Fields(rest)) > 2 && len(telling(wordsOf(rest))) > 0 && asks(strings.TrimRight(rest, "? ")) {
			return rest
		}
	}
	return sentence
}

// fit is how well the best wording fits, 0 where it is not clearly the best.
func (a *Answers) fit(question string) (fit float64, answer string) {
	words := wordsOf(question)
	total := a.sum(words)
	if total == 0 {
		return 0, ""
	}
	byEntry := map[int]float64{}
	best, entry := 0.0, -1
	for _, w := range a.wordings {
		if !AskForTheSame(question, a.ways[w.entry]) {
			continue
		}
		f := 2 * a.sum(common(words, w.words)) / (total + a.sum(w.words))
		byEntry[w.entry] = max(byEntry[w.entry], f)
		if f > best {
			best, entry, answer = f, w.entry, w.answer
		}
	}
	for other, f := range byEntry {
		if other != entry && best-f < fitsByMore {
			return 0, ""
		}
	}
	if best < fitsFrom {
		return 0, ""
	}
	return best, answer
}

func (a *Answers) sum(words []string) float64 {
	total := 0.0
	for _, w := range words {
		if weight, ok := a.weight[w]; ok {
			total += weight
		} else {
			total += a.unknown
		}
	}
	return total
}

func common(a, b []string) []string {
	var out []string
	for _, w := range a {
		for _, v := range b {
			if w == v {
				out = append(out, w)
				break
			}
		}
	}
	return out
}

// empty are words that say nothing of what is asked, English and Spanish.
const empty = " a an and any are at be between can could do does for from get have how i if in is it its me much my of on or recommend so some than that " +
	"the there they this to us we what whats when where which who will with would you your please hi hello " +
	"al como con cual cuando cuanto cuesta de entre del el en es esta la las le lo los me mi para por puedo que recomiend recomienda recomiendan se si su tengo tiene tienen un una y "

// wordsOf are the telling words of a question, each once, without accents and endings. A
// question of empty words only keeps them: "where are you" is one too.
func wordsOf(text string) []string {
	fields := strings.FieldsFunc(unaccented(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	var all []string
	seen := map[string]bool{}
	for _, word := range fields {
		if word = stem(word); seen[word] {
			continue
		}
		seen[word] = true
		all = append(all, word)
	}
	if words := telling(all); len(words) > 0 {
		return words
	}
	return all
}

func telling(words []string) []string {
	var out []string
	for _, word := range words {
		if !strings.Contains(empty, " "+word+" ") {
			out = append(out, word)
		}
	}
	return out
}

func unaccented(text string) string {
	fold := transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC)
	plain, _, err := transform.String(fold, strings.ToLower(text))
	if err != nil {
		return strings.ToLower(text)
	}
	return plain
}

// stem takes common endings off, so that "installs", "installed" and "installing" are one.
func stem(word string) string {
	for _, ending := range []string{"ing", "ed", "es", "s", "er", "ers"} {
		if short, ok := strings.CutSuffix(word, ending); ok && len(short) >= 4 {
			return short
		}
	}
	return word
}
