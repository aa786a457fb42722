package terminal

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Lines talks with a program: a message a line in, plain text or a JSON object, and
// exactly one line of JSON out for each before it reads the next. At the end of the input
// it writes the lead. A bad line is answered with its error and number; bad counts them.
func Lines(r io.Reader, w io.Writer, partner Partner) (bad int, err error) {
	in := bufio.NewReader(r)
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	for n := 1; ; n++ {
		line, err := readLine(in)
		if errors.Is(err, io.EOF) {
			break
		}
		m, err := parse(line, err)
		var answer any
		if wrong := (*lineError)(nil); errors.As(err, &wrong) {
			bad++
			wrong.Line = n
			answer = wrong
		} else if err != nil {
			return bad, fmt.Errorf("read line %d: %w", n, err)
		} else if answer, err = partner.Answer(m); err != nil {
			return bad, fmt.Errorf("answer line %d: %w", n, err)
		}
		if err := out.Encode(answer); err != nil {
			return bad, fmt.Errorf("write the answer to line %d: %w", n, err)
		}
	}
	lead, err := partner.Lead()
	if err != nil {
		return bad, err
	}
	return bad, out.Encode(map[string]json.RawMessage{"lead": lead})
}

type lineError struct {
	Text string `json:"error"`
	Line int    `json:"line"`
}

func (e *lineError) Error() string { return e.Text }

// parse takes a line as a message: a JSON object where it begins like one, else the text
// itself.
func parse(line string, err error) (Message, error) {
	switch {
	case errors.Is(err, errTooLong):
		return Message{}, &lineError{Text: err.Error()}
	case err != nil:
		return Message{}, err
	case !strings.HasPrefix(strings.TrimSpace(line), "{"):
		return Message{Text: line}, nil
	}
	var m Message
	dec := json.NewDecoder(strings.NewReader(line))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&m); err != nil {
		return Message{}, &lineError{Text: "not a message: " + strings.TrimPrefix(err.Error(), "json: ")}
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		return Message{}, &lineError{Text: "not a message: something stands after the object"}
	}
	return m, nil
}
