package rehearsal

import (
	"regexp"
	"strings"

	"example.com/intake-bot/internal/conversation"
)

var longWord = regexp.MustCompile(`\b[a-z]{5,}\b`)

// numberWord are words that nobody lets stand with a slip in them.
var numberWord = func() map[string]bool {
	words := map[string]bool{"eighth": true, "eighths": true, "quarter": true, "quarters": true}
	for _, w := range append(append([]string{}, ones...), tens...) {
		words[w] = true
	}
	return words
}()

// write is a thought as it comes out of the customer's hands or mouth.
func (c *customer) write(text string) string {
	h := c.habit
	text, picture := strings.CutSuffix(text, photo)
	if h.bare {
		text = strings.NewReplacer(". ", " ", ", ", " ", "?", "", "!", "").Replace(text)
		text = strings.TrimRight(text, ".,")
	}
	if h.dictated {
		text = c.homophones(text)
	}
	if h.typos > 0 {
		text = c.slips(text)
	}
	switch {
	case h.lower:
		text = strings.ToLower(text)
	case h.upper:
		text = strings.ToUpper(text)
	}
	if picture {
		text += photo
	}
	return text
}

// homophones are what voice dictation makes of some words.
func (c *customer) homophones(text string) string {
	words := strings.Fields(text)
	for i, w := range words {
		heard := map[string][]string{"two": {"too", "to"}, "four": {"for"}, "eight": {"ate"}, "curb": {"curve", "kerb"}, "by": {"buy"}}[w]
		if len(heard) > 0 && c.chance(0.15) {
			words[i] = pick(c.dice, heard...)
		}
	}
	return strings.Join(words, " ")
}

// slips are slips of the thumb in some of the long words; names of people and places stay.
func (c *customer) slips(text string) string {
	kept := strings.ToLower(c.truth.name + " " + c.truth.town.City + " " + c.truth.town.stateName())
	return longWord.ReplaceAllStringFunc(text, func(w string) string {
		if strings.Contains(kept, w) || numberWord[w] || !c.chance(c.habit.typos) {
			return w
		}
		return c.slip(w)
	})
}

func (c *customer) slip(w string) string {
	i := c.between(1, len(w)-3)
	switch c.IntN(3) {
	case 0: // two letters change places
		return w[:i] + w[i+1:i+2] + w[i:i+1] + w[i+2:]
	case 1: // one is left out
		return w[:i] + w[i+1:]
	}
	return w[:i] + w[i:i+1] + w[i:] // one comes twice
}

// texts are the messages that some thoughts come in: one, or several in a row.
func (c *customer) texts(lines []line) []line {
	for i := range lines {
		lines[i].text = c.write(lines[i].text)
	}
	if c.manner == chatty {
		lines = c.around(lines)
	}
	if c.manner == bursts && c.chance(0.7) {
		return c.halves(lines)
	}
	separator := ". "
	switch {
	case c.channel == conversation.Email, c.chance(0.15), c.habit.bare && len(lines) > 4:
		separator = "\n"
	case c.habit.bare:
		separator = pick(c.dice, " ", " ", ", ")
	case c.chance(0.4):
		separator = ", "
	}
	var all line
	for _, l := range lines {
		sep := separator
		if strings.HasSuffix(all.text, ",") || strings.HasSuffix(all.text, "?") || strings.HasSuffix(all.text, "!") || strings.HasSuffix(all.text, ".") {
			sep = " "
		}
		if separator == "\n" {
			sep = separator
		}
		all = all.with(sep, l)
	}
	return []line{all}
}

// around puts chat before and after.
func (c *customer) around(lines []line) []line {
	if c.chance(0.35) {
		lines = append([]line{c.chat("chat.before")}, lines...)
	}
	if c.chance(0.35) {
		lines = append(lines, c.chat("chat.after"))
	}
	return lines
}

func (c *customer) chat(section string) line {
	l := c.says(section)
	l.text = c.write(l.text)
	return l
}

// halves sends each thought as a text of its own, a size perhaps in two.
func (c *customer) halves(lines []line) []line {
	var out []line
	for _, l := range lines {
		first, second, ok := strings.Cut(l.text, " by ")
		if ok && c.chance(0.4) && !strings.Contains(l.text, photo) {
			out = append(out, line{text: first}, line{"by " + second, l.means})
			continue
		}
		out = append(out, l)
	}
	return out
}
