package conversation

import (
	"bufio"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/contracttest"
)

// The lead of every talk, after each of its lines, is as the contract's schema has it.
func TestLeadsAreAsTheSchemaHasThem(t *testing.T) {
	files, err := filepath.Glob("testdata/talks/*.txt")
	if err != nil || len(files) < 10 {
		t.Fatal("talks", files, err)
	}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		p := &player{t: t, shop: testShop(t), now: time.Date(2026, 3, 2, 16, 0, 0, 0, time.UTC),
			talk: Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+13035550123"}}
		for lines := bufio.NewScanner(strings.NewReader(string(raw))); lines.Scan(); {
			p.line(lines.Text())
			if len(p.messages) == 0 {
				continue
			}
			b, err := json.Marshal(NewRecord(p.talk, p.messages, []RecordPhoto{{ID: "one", FromMessage: 1}}))
			if err != nil {
				t.Fatal(err)
			}
			if contracttest.Check(t, "lead", b); t.Failed() {
				t.Fatalf("%s after %q", file, lines.Text())
			}
		}
	}
}
