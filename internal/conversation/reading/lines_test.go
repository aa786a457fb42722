package reading

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"
)

func TestReadLines(t *testing.T) {
	for _, c := range []struct {
		name, in string
		want     []string
		bad      int
	}{
		{"plain", "25 1/2 x 49 1/2 outside the curb\n",
			[]string{`{"facts":[{"topic":"curb_outside","value":{"width_in":25.5,"length_in":49.5},"said":"25 1/2 x 49 1/2"}],"unclear":[],"requests":[],"language":"en"}`}, 0},
		{"json", `{"text":"2x4","asked":"curb_outside"}` + "\n",
			[]string{`{"facts":[],"unclear":[{"topic":"curb_outside","said":"2x4","why":"nominal"}],"requests":[],"language":"en"}`}, 0},
		{"asked may be missing", `{"text":"stop"}`, []string{`{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 0},
		{"which has candidates", "the dome is 26 x 50",
			[]string{`{"facts":[],"unclear":[{"topic":null,"said":"26 x 50","why":"which","candidates":["plastic_size","bulge_base"]}],"requests":[],"language":"en"}`}, 0},
		{"signs are not escaped", `<b> & "25 x 49"`,
			[]string{`{"facts":[],"unclear":[{"topic":null,"said":"25 x 49\"","why":"which"}],"requests":[],"language":"en"}`}, 0},
		{"carriage returns and blank lines", "stop\r\n\r\n \nstop\r\n",
			[]string{`{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`, `{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 0},
		{"no last line feed", "stop", []string{`{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 0},
		{"empty", "", nil, 0},
		{"broken JSON does not stop the rest", "{\"text\":\nstop\n",
			[]string{`"line":1`, `{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 1},
		{"unknown topic", "\n" + `{"text":"x","asked":"roof_color"}`, []string{`"line":2`}, 1},
		{"unknown field", `{"text":"x","ask":"name"}`, []string{`"line":1`}, 1},
		{"no text", `{"asked":"name"}`, []string{`"line":1`}, 1},
		{"wrong type", `{"text":5}`, []string{`"line":1`}, 1},
		{"two objects", `{"text":"a"}{"text":"b"}`, []string{`"line":1`}, 1},
		{"null asked", `{"text":"stop","asked":null}`, []string{`{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 0},
		{"too long", "{" + strings.Repeat("x", maxLine) + "\nstop\n",
			[]string{`"line":1`, `{"facts":[],"unclear":[],"requests":["stop"],"language":"en"}`}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			bad, err := ReadLines(strings.NewReader(c.in), &out)
			if err != nil || bad != c.bad {
				t.Fatalf("bad %d, error %v; want %d bad", bad, err, c.bad)
			}
			lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
			if out.Len() == 0 {
				lines = nil
			}
			if len(lines) != len(c.want) {
				t.Fatalf("got %d lines, want %d:\n%s", len(lines), len(c.want), out.String())
			}
			for i, want := range c.want {
				if !json.Valid([]byte(lines[i])) {
					t.Errorf("line %d is no JSON: %s", i, lines[i])
				}
				if strings.HasPrefix(want, "{") && lines[i] != want || !strings.Contains(lines[i], want) {
					t.Errorf("line %d\n got %s\nwant %s", i, lines[i], want)
				}
			}
		})
	}
}

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

func TestReadLinesReportsAFailure(t *testing.T) {
	if _, err := ReadLines(strings.NewReader("stop\n"), brokenPipe{}); err == nil {
		t.Error("a failure to write is not reported")
	}
}
