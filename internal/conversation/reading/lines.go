package reading

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"example.com/intake-bot/internal/fitcheck"
)

// maxLine bounds one line of input.
const maxLine = 1 << 20

// line is one line of JSON input.
type line struct {
	Text  *string `json:"text"`
	Asked *string `json:"asked"`
}

// badLine is the answer to a line that is not valid.
type badLine struct {
	Error string `json:"error"`
	Line  int    `json:"line"`
}

// ReadLines reads a message a line, plain or as JSON where the line starts with "{",
// and writes the reading of each as a line of JSON. A line that is not valid gets an
// error instead; bad counts those. Blank lines are skipped. err is a failure to read or write.
func ReadLines(r io.Reader, w io.Writer) (bad int, err error) {
	in := bufio.NewReaderSize(r, 64<<10)
	out := bufio.NewWriter(w)
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	for n := 1; ; n++ {
		raw, tooLong, readErr := nextLine(in)
		if readErr != nil && !errors.Is(readErr, io.EOF) {
			return bad, fmt.Errorf("read line %d: %w", n, readErr)
		}
		if len(bytes.TrimSpace(raw)) > 0 || tooLong {
			answer, ok := answerLine(raw, tooLong, n)
			if !ok {
				bad++
			}
			if err := enc.Encode(answer); err != nil {
				return bad, fmt.Errorf("write answer to line %d: %w", n, err)
			}
			if in.Buffered() == 0 { // someone may be waiting for the answer
				if err := out.Flush(); err != nil {
					return bad, fmt.Errorf("write answer to line %d: %w", n, err)
				}
			}
		}
		if readErr != nil {
			if err := out.Flush(); err != nil {
				return bad, fmt.Errorf("write answers: %w", err)
			}
			return bad, nil
		}
	}
}

// nextLine reads up to the next line feed; of a line that is too long it reads all
// and keeps the start.
func nextLine(in *bufio.Reader) (raw []byte, tooLong bool, err error) {
	for {
		part, err := in.ReadSlice('\n')
		if len(raw)+len(part) > maxLine {
			tooLong = true
		} else {
			raw = append(raw, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return bytes.TrimRight(raw, "\r\n"), tooLong, err
		}
	}
}

func answerLine(raw []byte, tooLong bool, n int) (answer any, ok bool) {
	if tooLong {
		return badLine{Error: fmt.Sprintf("longer than %d bytes", maxLine), Line: n}, false
	}
	in, err := parseLine(raw)
	if err != nil {
		return badLine{Error: err.Error(), Line: n}, false
	}
	return Read(in), true
}

func parseLine(raw []byte) (Input, error) {
	if trimmed := bytes.TrimLeft(raw, " \t\ufeff"); len(trimmed) == 0 || trimmed[0] != '{' {
		return Input{Text: string(raw)}, nil
	}
	dec := json.NewDecoder(bytes.NewReader(raw))
	dec.DisallowUnknownFields()
	var l line
	if err := dec.Decode(&l); err != nil {
		return Input{}, fmt.Errorf("not valid JSON of the form {\"text\":…,\"asked\":…}: %w", err)
	}
	if dec.More() {
		return Input{}, errors.New("more than one JSON object on the line")
	}
	if l.Text == nil {
		return Input{}, errors.New("\"text\" is missing")
	}
	in := Input{Text: *l.Text}
	if l.Asked != nil && *l.Asked != "" {
		if !topicNames[*l.Asked] {
			return Input{}, fmt.Errorf("\"asked\" is no known topic: %q", *l.Asked)
		}
		in.Asked = []fitcheck.Topic{fitcheck.Topic(*l.Asked)}
	}
	return in, nil
}
