package fitcheck

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

func TestCheckLines(t *testing.T) {
	in := "\xef\xbb\xbf" + `{"units":[{"curb_outside":{"width_in":25.5,"length_in":49.5}}]}` + "\r\n" +
		"\n   \n" + `{"units":[{"layers":9}]}` + "\n" + "nonsense\n" + `{"units":[]}`
	var out bytes.Buffer
	bad, err := CheckLines(strings.NewReader(in), &out, DefaultRules(), nil)
	if err != nil || bad != 2 {
		t.Fatalf("%d bad, %v", bad, err)
	}
	lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	if len(lines) != 4 {
		t.Fatalf("%d lines: %s", len(lines), out.String())
	}
	for i, want := range []string{`{"units":[{"replace":`, `{"error":"units[0].layers: must be`, `{"error":"not valid JSON`, `{"units":[],"cautions":[]}`} {
		if !strings.HasPrefix(lines[i], want) {
			t.Errorf("line %d: %s, want %s", i+1, lines[i], want)
		}
	}
	if !strings.HasSuffix(lines[1], `,"line":4}`) || !strings.HasSuffix(lines[2], `,"line":5}`) {
		t.Errorf("line numbers: %s %s", lines[1], lines[2])
	}
}

// The answer's fields, each of them there even where nothing is known.
func TestAnswerShape(t *testing.T) {
	var out bytes.Buffer
	if _, err := CheckLines(strings.NewReader(`{"units":[{}]}`), &out, DefaultRules(), nil); err != nil {
		t.Fatal(err)
	}
	var answer struct {
		Units    []map[string]json.RawMessage `json:"units"`
		Cautions []string                     `json:"cautions"`
	}
	if err := json.Unmarshal(out.Bytes(), &answer); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"replace", "reasons", "verdict", "findings", "missing", "photos_wanted", "order", "ship", "estimate"} {
		if v := string(answer.Units[0][name]); v == "" || v == "null" {
			t.Errorf("%s: %q", name, v)
		}
	}
	if got := string(answer.Units[0]["order"]); got != `{"frame_inside":null,"plastic_size":null,"stock":null}` {
		t.Errorf("order: %s", got)
	}
}

// The caller's look-up of the place reaches the check.
func TestCheckLinesLooksThePlaceUp(t *testing.T) {
	var asked Place
	site := func(p Place) Site { asked = p; return Site{County: "Broward"} }
	var out bytes.Buffer
	in := `{"place":{"city":"Hollywood","state":"FL"},"units":[{"curb_outside":{"width_in":25.5,"length_in":49.5}}]}`
	if _, err := CheckLines(strings.NewReader(in), &out, DefaultRules(), site); err != nil {
		t.Fatal(err)
	}
	if asked.City != "Hollywood" || !strings.Contains(out.String(), string(HurricaneRegion)) {
		t.Errorf("asked for %+v, answered %s", asked, out.String())
	}
}

func TestLongLine(t *testing.T) {
	in := bufio.NewReaderSize(strings.NewReader(strings.Repeat("x", 100)+"\nshort\n"+strings.Repeat("y", 100)), 16)
	for _, want := range []struct {
		line string
		err  error
	}{{"", errLongLine}, {"short", nil}, {"", errLongLine}, {"", io.EOF}} {
		line, err := readLine(in, 50)
		if string(line) != want.line || !errors.Is(err, want.err) {
			t.Errorf("%q, %v; want %q, %v", line, err, want.line, want.err)
		}
	}
}

func TestReadAndWriteErrors(t *testing.T) {
	broken := errors.New("broken")
	if _, err := CheckLines(iotest.ErrReader(broken), io.Discard, DefaultRules(), nil); !errors.Is(err, broken) {
		t.Errorf("reading: %v", err)
	}
	if _, err := CheckLines(strings.NewReader(`{"units":[]}`), brokenWriter{broken}, DefaultRules(), nil); !errors.Is(err, broken) {
		t.Errorf("writing: %v", err)
	}
}

type brokenWriter struct{ err error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.err }
