package rehearsal

import (
	"embed"
	"fmt"
	"strings"
	"sync"

	"example.com/intake-bot/internal/fitcheck"
)

//go:embed phrases/*.txt
var phraseFiles embed.FS

// phrase is one way to put something, with what it says beside.
type phrase struct {
	text  string
	means []meaning
}

// phrasebook is all that customers of one language can say, by what they mean.
type phrasebook map[string][]phrase

// phrasebooks are read once; a broken file is an error of the program.
var phrasebooks = sync.OnceValues(func() (map[string]phrasebook, error) {
	books := map[string]phrasebook{}
	for _, language := range []string{"en", "es"} {
		raw, err := phraseFiles.ReadFile("phrases/" + language + ".txt")
		if err != nil {
			return nil, fmt.Errorf("phrases: %w", err)
		}
		if books[language], err = parsePhrases(string(raw)); err != nil {
			return nil, fmt.Errorf("phrases/%s.txt: %w", language, err)
		}
	}
	return books, nil
})

func parsePhrases(text string) (phrasebook, error) {
	book, section := phrasebook{}, ""
	for i, line := range strings.Split(text, "\n") {
		switch {
		case line == "" || strings.HasPrefix(line, "# "):
		case strings.HasPrefix(line, "["):
			section = strings.Trim(line, "[]")
		case section == "":
			return nil, fmt.Errorf("line %d stands in no section", i+1)
		default:
			p, err := parsePhrase(line)
			if err != nil {
				return nil, fmt.Errorf("line %d: %w", i+1, err)
			}
			book[section] = append(book[section], p)
		}
	}
	return book, nil
}

// parsePhrase reads "we get hail | impact_risk=hail".
func parsePhrase(line string) (phrase, error) {
	text, beside, _ := strings.Cut(line, " | ")
	p := phrase{text: text}
	for _, word := range strings.Fields(beside) {
		topic, value, ok := strings.Cut(word, "=")
		m := meaning{topic: fitcheck.Topic(topic), beside: true}
		switch {
		case !ok:
			return p, fmt.Errorf("%q is no topic=value", word)
		case value == "*":
			m.any = true
		case m.topic == fitcheck.TopicProblem || m.topic == fitcheck.TopicImpactRisk:
			m.value = fitcheck.ChoiceList{value}
		case m.topic == fitcheck.TopicLayers:
			m.value = fitcheck.Whole(value[0] - '0')
		default:
			m.value = fitcheck.Choice(value)
		}
		p.means = append(p.means, m)
	}
	return p, nil
}

// fill puts words into the braces of a phrase: name, word, name, word…
func fill(text string, args ...string) string {
	for i := 0; i+1 < len(args); i += 2 {
		text = strings.ReplaceAll(text, "{"+args[i]+"}", args[i+1])
	}
	return text
}
