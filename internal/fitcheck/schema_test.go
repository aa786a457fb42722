package fitcheck

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"example.com/intake-bot/internal/contracttest"
)

// Every answer of the exam, and every question that is answered, is as the contract's
// schemas have it.
func TestExamIsAsTheSchemasHaveIt(t *testing.T) {
	files, err := filepath.Glob("testdata/exam/*.jsonl")
	if err != nil {
		t.Fatal(err)
	}
	answers, jobs := 0, 0
	for _, f := range files {
		for _, c := range readExam(t, f) {
			var out bytes.Buffer
			bad, err := CheckLines(strings.NewReader(c.line()+"\n"), &out, DefaultRules(), func(Place) Site { return Site{} })
			if err != nil {
				t.Fatal(err)
			}
			if out.Len() == 0 {
				continue // a blank line
			}
			contracttest.Check(t, "check", out.Bytes())
			answers++
			if bad == 0 {
				contracttest.Check(t, "job", []byte(c.line()))
				jobs++
			}
		}
	}
	if answers < 100 || jobs < 100 {
		t.Errorf("only %d answers to %d jobs were looked at", answers, jobs)
	}
}
