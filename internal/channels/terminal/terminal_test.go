package terminal

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
)

// echo answers with what it got.
type echo struct{ got []Message }

func (e *echo) Answer(m Message) (Answer, error) {
	if m.Text == "break" {
		return Answer{}, errors.New("broken")
	}
	e.got = append(e.got, m)
	return Answer{Say: []string{fmt.Sprintf("%s & %d", m.Text, len(m.Photos))}, Asking: []string{}, State: "opening", Over: m.Text == "bye"}, nil
}

func (e *echo) Lead() (json.RawMessage, error) { return json.RawMessage(`{"version":1}`), nil }

func TestLines(t *testing.T) {
	for _, c := range []struct {
		in   string
		want []string
		bad  int
	}{
		{"", []string{`{"lead":{"version":1}}`}, 0},
		{"hi\n", []string{`{"say":["hi & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 0},
		{"no newline", []string{`{"say":["no newline & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 0},
		{"<b>\r\n", []string{`{"say":["<b> & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 0},
		{`{"text":"see","photos":["a.jpg","b.jpg"]}` + "\n", []string{`{"say":["see & 2"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 0},
		{"\nx\n", []string{`{"say":[" & 0"],"asking":[],"state":"opening"}`, `{"say":["x & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 0},
		{"{\"text\":1}\nx\n", []string{`{"error":"not a message: cannot unmarshal number into Go struct field Message.text of type string","line":1}`,
			`{"say":["x & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 1},
		{"{\"text\":\"a\",\"colour\":1}\n", []string{`{"error":"not a message: unknown field \"colour\"","line":1}`, `{"lead":{"version":1}}`}, 1},
		{"{\"text\":\"a\"} b\n", []string{`{"error":"not a message: something stands after the object","line":1}`, `{"lead":{"version":1}}`}, 1},
		{"{\n", []string{`{"error":"not a message: unexpected EOF","line":1}`, `{"lead":{"version":1}}`}, 1},
		{strings.Repeat("x", MaxLine+1) + "\ny\n", []string{`{"error":"the line has more than 1048576 bytes","line":1}`,
			`{"say":["y & 0"],"asking":[],"state":"opening"}`, `{"lead":{"version":1}}`}, 1},
	} {
		var out bytes.Buffer
		bad, err := Lines(strings.NewReader(c.in), &out, &echo{})
		if err != nil {
			t.Errorf("%.40q: %v", c.in, err)
		}
		if got := strings.TrimSpace(out.String()); got != strings.Join(c.want, "\n") || bad != c.bad {
			t.Errorf("%.40q: %d bad\n%s\nwant %d bad\n%s", c.in, bad, got, c.bad, strings.Join(c.want, "\n"))
		}
	}
}

// A program that waits for each answer before it sends the next message must get it.
func TestLinesAnswersBeforeItReadsOn(t *testing.T) {
	in, feed := io.Pipe()
	read, out := io.Pipe()
	done := make(chan error, 1)
	go func() {
		_, err := Lines(in, out, &echo{})
		done <- err
	}()
	answers := json.NewDecoder(read)
	for i := range 3 {
		fmt.Fprintf(feed, "message %d\n", i)
		var a Answer
		if err := answers.Decode(&a); err != nil || a.Say[0] != fmt.Sprintf("message %d & 0", i) {
			t.Fatalf("answer %d: %v, %v", i, a, err)
		}
	}
	feed.Close()
	go io.Copy(io.Discard, read)
	if err := <-done; err != nil {
		t.Error(err)
	}
}

func TestLinesEndsWithThePartnersError(t *testing.T) {
	if _, err := Lines(strings.NewReader("a\nbreak\n"), io.Discard, &echo{}); err == nil || err.Error() != "answer line 2: broken" {
		t.Errorf("got %v", err)
	}
}

func TestKeyboard(t *testing.T) {
	var out bytes.Buffer
	partner := &echo{}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("roof.jpg", []byte("a picture"), 0o600); err != nil {
		t.Fatal(err)
	}
	in := "hello there\n\n/photo roof.jpg\n/photo curb.jpg\nbye\nmore\n"
	if err := Keyboard(strings.NewReader(in), &out, "Welcome.", false, partner); err != nil {
		t.Fatal(err)
	}
	want := `Welcome.
you:  hello there
shop: hello there & 0

you:  /photo roof.jpg
shop: & 1

(there is no file curb.jpg; it was not sent)
you:  bye
shop: bye & 0

(The talk is over. Ctrl-D shows the lead that staff would get; you can also go on.)
you:  more
shop: more & 0

`
	if out.String() != want {
		t.Errorf("shown:\n%s\nwant:\n%s", out.String(), want)
	}
	if len(partner.got) != 4 || len(partner.got[1].Photos) != 1 {
		t.Errorf("sent %v", partner.got)
	}
}

func TestWrapKeepsTextsUnderTheirLabel(t *testing.T) {
	got := Wrap("shop: ", strings.Repeat("word ", 20)+"\nnext")
	for _, line := range strings.Split(got, "\n") {
		if len(line) > width {
			t.Errorf("%q is longer than %d", line, width)
		}
	}
	if !strings.HasSuffix(got, "\n      next") || !strings.HasPrefix(got, "shop: word") {
		t.Errorf("got %q", got)
	}
}
