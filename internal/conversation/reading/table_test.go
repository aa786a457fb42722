package reading

import (
	"bufio"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

var update = flag.Bool("update", false, "write the readings of testdata/readings.txt anew; look at the difference")

const tableFile = "testdata/readings.txt"

// TestTable reads the messages of testdata/readings.txt. A line is
//
//	message [asked topic, or several with commas] => facts, ?doubts, !requests @language
//
// with the asked topic and the language left out where nothing was asked and where it
// is English.
func TestTable(t *testing.T) {
	raw, err := os.ReadFile(tableFile)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	rows := 0
	sc := bufio.NewScanner(strings.NewReader(string(raw)))
	for sc.Scan() {
		line := sc.Text()
		if line == "" || line[0] == '#' {
			fmt.Fprintln(&out, line)
			continue
		}
		rows++
		left, want, ok := strings.Cut(line, " => ")
		if !ok {
			left, want = strings.TrimSuffix(line, " =>"), ""
		}
		got := tableRow(t, left)
		if got != want && !*update {
			t.Errorf("%s\n got %s\nwant %s", left, got, want)
		}
		fmt.Fprintln(&out, strings.TrimRight(left+" => "+got, " "))
	}
	if rows < 250 {
		t.Errorf("only %d rows", rows)
	}
	if *update {
		if err := os.WriteFile(tableFile, []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func tableRow(t *testing.T, left string) string {
	in := Input{Text: strings.ReplaceAll(left, `\n`, "\n")}
	if i := strings.LastIndex(left, " ["); i >= 0 && strings.HasSuffix(left, "]") {
		in.Text = strings.ReplaceAll(left[:i], `\n`, "\n")
		for _, asked := range strings.Split(left[i+2:len(left)-1], ",") {
			if !topicNames[asked] {
				t.Errorf("%s: no topic %q", left, asked)
			}
			in.Asked = append(in.Asked, fitcheck.Topic(asked))
		}
	}
	r := Read(in)
	checkReading(t, in.Text, r)
	got := formOf(t, r).String()
	if r.Language != "en" {
		got = strings.TrimSpace(got + " @" + r.Language)
	}
	return got
}
