package deploy_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"example.com/intake-bot/internal/fitcheck"
)

// The glossary's names are those that customers read, that staff read, and that stand in
// the data.
func TestGlossaryNamesThingsAsTheProgramDoes(t *testing.T) {
	var wording map[string]any
	if err := yaml.Unmarshal([]byte(text(t, "../internal/conversation/wording/en.yaml")), &wording); err != nil {
		t.Fatal(err)
	}
	staffWords := text(t, "../internal/staff/words.go")
	rows := regexp.MustCompile("(?m)^\\| ([^|]+) \\| ([^|]+) \\| `([a-z_]+)` \\|").FindAllStringSubmatch(text(t, "../docs/glossary.md"), -1)
	if len(rows) < 15 {
		t.Fatalf("only %d rows name something in the data", len(rows))
	}
	for _, row := range rows {
		customer, staff, data := row[1], row[2], row[3]
		key := "label." + data
		if data == string(fitcheck.ReplaceDome) || data == string(fitcheck.ReplaceUnit) {
			key = "part." + data
		} else if !fitcheck.Topic(data).OfUnit() {
			t.Errorf("%s is no topic", data)
		}
		if wording[key] != customer {
			t.Errorf("%s: customers read %q, the glossary says %q", data, wording[key], customer)
		}
		if !strings.Contains(staffWords, `"`+staff+`"`) {
			t.Errorf("%s: staff never read %q", data, staff)
		}
	}
}

// Customers read plain words, not the trade's.
func TestCustomersReadPlainWords(t *testing.T) {
	var wording map[string]any
	if err := yaml.Unmarshal([]byte(text(t, "../internal/conversation/wording/en.yaml")), &wording); err != nil {
		t.Fatal(err)
	}
	trade := regexp.MustCompile(`(?i)\b(curbs?|retainers?|glazing)\b`)
	for key, said := range wording {
		var sentences []string
		switch said := said.(type) {
		case string:
			sentences = []string{said}
		case []any:
			for _, s := range said {
				if s, ok := s.(string); ok {
					sentences = append(sentences, s)
				}
			}
		}
		for _, s := range sentences {
			if word := trade.FindString(s); word != "" {
				t.Errorf("%s: customers read %q in %q", key, word, s)
			}
		}
	}
}
