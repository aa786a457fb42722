package reading

import (
	"embed"
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"example.com/intake-bot/internal/fitcheck"
)

// What people say of each thing stands in text files, so that a new way of saying it
// is a new line there. A line is `sense: phrase`, a phrase is words with (this|that)
// for a choice, a ? after what may be missing, and <name> for a class of words that a
// line `<name> = …` lists. Small words between (see `!filler`) are skipped in reading.
//
//go:embed vocabulary/*.txt
var vocabularyFiles embed.FS

// layer keeps phrases that serve different purposes apart, so that the words of one
// can also be words of another.
type layer uint8

const (
	labelLayer  layer = iota // names of what a size is of
	choiceLayer              // values of topics
	talkLayer                // requests, yes and no, doubt
	introLayer               // words before a name, and names of kinds of unit
	styleLayer               // what the frame is like, told at length
	wantLayer                // what is wanted: its words name parts and styles too
	roofLayer                // what covers the roof: its words name frames and seals too
	layerCount
)

// word is what the vocabulary says of one word.
type word struct {
	text    string              // as it is spelt right
	own     int32               // its symbol, an edge of the phrase tree
	tight   int32               // its symbol as the start of a tight phrase, 0 where there is none
	symbols []int32             // itself and its classes, sorted
	starts  [layerCount][]int32 // by layer: the nodes that it leads to from the root
	filler  bool                // may stand between the words of a phrase
	common  bool                // an ordinary word, hardly a name
	given   bool                // a usual given name
	trade   bool                // part of a phrase about skylights
	thing   bool                // something that is no part of a skylight
	unit    unit                // a unit of length
	number  numberWord          // a number
	langEn  bool                // a small word of English
	langEs  bool                // a small word of Spanish
	other   uint8               // a small word of another language, see language.go
}

// sense is one meaning of a phrase: "part:curb", "style:curb_mount".
type sense struct {
	kind  string // what is before the colon
	value string
	topic fitcheck.Topic // kind is a topic
	joint bool           // one of several that the phrase has together
	asked bool           // counts only as an answer to that topic (written "~kind:value")
}

// vocabulary is all files in the form that reading needs.
type vocabulary struct {
	known   map[string]*word
	nodes   []node // of the phrase tree; the first ones are the layers' roots
	phrases [][]sense
	classes map[string]int32
	bearers map[int32][]*word   // which words have a symbol
	groups  map[string]int32    // classes without a name, by the words in them
	fillers map[int32]bool      // symbols of small words
	tight   map[int32]bool      // symbols that start tight phrases
	typos   map[string][]string // words of the trade by what a typing error leaves of them
	real    map[string]bool     // words of their own that look like a misspelt one
	symbols int32
}

// words is the vocabulary, made when it is first needed; it never changes.
var words = sync.OnceValue(func() *vocabulary {
	v, _ := loadVocabulary(vocabularyFiles) // what is wrong in the files, a test finds
	return v
})

func loadVocabulary(files fs.FS) (*vocabulary, error) {
	v := &vocabulary{known: map[string]*word{}, nodes: make([]node, layerCount), classes: map[string]int32{},
		bearers: map[int32][]*word{},
		groups:  map[string]int32{}, fillers: map[int32]bool{}, typos: map[string][]string{}, real: map[string]bool{}, tight: map[int32]bool{}}
	for i := range v.nodes {
		v.nodes[i].meaning = -1
	}
	names, err := fs.Glob(files, "vocabulary/*.txt")
	if err != nil {
		return v, fmt.Errorf("list vocabulary: %w", err)
	}
	var first error
	for _, phrases := range []bool{false, true} { // lists and classes first
		for _, name := range names {
			text, err := fs.ReadFile(files, name)
			if err == nil {
				err = v.file(name, string(text), phrases)
			}
			if err != nil && first == nil {
				first = fmt.Errorf("vocabulary %s: %w", name, err)
			}
		}
	}
	v.sortNodes()
	for text, u := range unitWords {
		v.word(text).unit = u
	}
	for text, n := range numberWords {
		v.word(text).number = n
	}
	return v, first
}

// layerOf tells a file's layer by its name.
func layerOf(name string) layer {
	switch {
	case strings.Contains(name, "/label"):
		return labelLayer
	case strings.Contains(name, "/talk"):
		return talkLayer
	case strings.Contains(name, "/intro"):
		return introLayer
	case strings.Contains(name, "/want"):
		return wantLayer
	case strings.Contains(name, "/style"):
		return styleLayer
	case strings.Contains(name, "/roofing"):
		return roofLayer
	}
	return choiceLayer
}

func (v *vocabulary) file(name, text string, phrases bool) error {
	var sense []sense
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' || phrases == (line[0] == '<' || line[0] == '!') {
			continue
		}
		if err := v.line(layerOf(name), line, &sense); err != nil {
			return fmt.Errorf("line %d: %w", n+1, err)
		}
	}
	return nil
}

// line reads a class, a word list, or "sense: phrase"; a line that starts with "|"
// has the sense of the line before.
func (v *vocabulary) line(in layer, line string, senses *[]sense) error {
	switch {
	case line[0] == '<':
		return v.class(line)
	case line[0] == '!':
		return v.list(line)
	case line[0] == '|':
		return v.phrase(in, line[1:], *senses)
	}
	left, right, ok := strings.Cut(line, ": ")
	if !ok {
		return fmt.Errorf("no sense in %q", line)
	}
	parsed, err := parseSenses(left)
	if err != nil {
		return err
	}
	*senses = parsed
	return v.phrase(in, right, parsed)
}

func parseSenses(text string) ([]sense, error) {
	var out []sense
	for _, part := range strings.Split(text, ",") {
		s := sense{}
		part = strings.TrimSpace(part)
		part, s.asked = strings.CutPrefix(part, "~")
		kind, value, ok := strings.Cut(part, ":")
		if !ok {
			return nil, fmt.Errorf("no value in sense %q", part)
		}
		s.kind, s.value = kind, value
		if topicNames[kind] {
			s.topic = fitcheck.Topic(kind)
			if err := validChoice(s.topic, value); err != nil {
				return nil, err
			}
		}
		s.joint = strings.Contains(text, ",")
		out = append(out, s)
	}
	return out, nil
}

// validChoice finds a value that the topic doesn't have; "?" is one that is unclear.
func validChoice(t fitcheck.Topic, value string) error {
	allowed := fitcheck.Choices(t)
	if allowed == nil || value == "?" || value == "none" {
		return nil
	}
	for _, a := range allowed {
		if a == value {
			return nil
		}
	}
	return fmt.Errorf("topic %s can't be %q", t, value)
}

var topicNames = func() map[string]bool {
	names := map[string]bool{}
	for _, t := range append(append([]fitcheck.Topic{}, fitcheck.LeadTopics...), fitcheck.UnitTopics...) {
		names[string(t)] = true
	}
	return names
}()

func (v *vocabulary) word(text string) *word {
	w := v.known[text]
	if w == nil {
		v.symbols++
		w = &word{text: text, own: v.symbols}
		v.give(w, w.own)
		v.known[text] = w
	}
	return w
}

// give lets a word stand for a symbol: its own, a class's or a group's.
func (v *vocabulary) give(w *word, symbol int32) {
	w.symbols = append(w.symbols, symbol)
	v.bearers[symbol] = append(v.bearers[symbol], w)
}

func (v *vocabulary) class(line string) error {
	name, list, ok := strings.Cut(line, "=")
	if !ok {
		return fmt.Errorf("class without words: %q", line)
	}
	symbol := v.classSymbol(strings.TrimSpace(name))
	for _, text := range strings.Fields(list) {
		w := v.word(text)
		v.give(w, symbol)
	}
	return nil
}

func (v *vocabulary) classSymbol(name string) int32 {
	s, ok := v.classes[name]
	if !ok {
		v.symbols++
		s = v.symbols
		v.classes[name] = s
	}
	return s
}

// list reads "!name = words".
func (v *vocabulary) list(line string) error {
	name, list, _ := strings.Cut(line, "=")
	if as, ok := strings.CutPrefix(strings.TrimSpace(name), "!same "); ok {
		for _, text := range strings.Fields(list) {
			v.known[text] = v.word(as)
		}
		return nil
	}
	if strings.TrimSpace(name) == "!typo" {
		for _, text := range strings.Fields(list) {
			v.word(text)
			v.addTypo(text)
		}
		return nil
	}
	if strings.TrimSpace(name) == "!real" {
		for _, text := range strings.Fields(list) {
			v.real[text] = true
		}
		return nil
	}
	set := map[string]func(*word){
		"!filler": func(w *word) { w.filler, v.fillers[w.own] = true, true },
		"!common": func(w *word) { w.common = true },
		"!given":  func(w *word) { w.given = true },
		"!thing":  func(w *word) { w.thing = true },
		"!en":     func(w *word) { w.langEn = true },
		"!es":     func(w *word) { w.langEs = true },
		"!fr":     func(w *word) { w.other |= french },
		"!de":     func(w *word) { w.other |= german },
		"!pt":     func(w *word) { w.other |= portuguese },
		"!it":     func(w *word) { w.other |= italian },
		"!vi":     func(w *word) { w.other |= vietnamese },
		"!tl":     func(w *word) { w.other |= tagalog },
		"!ht":     func(w *word) { w.other |= haitian },
		"!pl":     func(w *word) { w.other |= polish },
	}[strings.TrimSpace(name)]
	if set == nil {
		return fmt.Errorf("unknown list %q", name)
	}
	for _, text := range strings.Fields(list) {
		set(v.word(text))
	}
	return nil
}
