package reading

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"example.com/intake-bot/internal/contracttest"
)

// Every line that the corpora are answered with is as the contract's schema has it.
func TestCorpusIsAsTheSchemaHasIt(t *testing.T) {
	lines := 0
	for _, examples := range corpus(t) {
		for _, e := range examples {
			raw, err := json.Marshal(map[string]string{"text": e.Text})
			if err != nil {
				t.Fatal(err)
			}
			var out bytes.Buffer
			if _, err := ReadLines(strings.NewReader(string(raw)+"\n"), &out); err != nil {
				t.Fatal(err)
			}
			contracttest.Check(t, "read", out.Bytes())
			lines++
		}
	}
	if lines < 500 {
		t.Errorf("only %d lines were looked at", lines)
	}
	var out bytes.Buffer
	if bad, err := ReadLines(strings.NewReader("{\"text\":7}\n"), &out); err != nil || bad != 1 {
		t.Fatal(bad, err)
	}
	contracttest.Check(t, "read", out.Bytes())
}
