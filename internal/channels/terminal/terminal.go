// Package terminal is a talk at a keyboard: somebody who sets the bot up, or a test,
// plays the customer without a phone. It shows what the bot says for people, or as a
// line of JSON for programs.
package terminal

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Message is what the person at the terminal sends.
type Message struct {
	Text   string   `json:"text"`
	Photos []string `json:"photos"` // names of files
}

// Answer is what comes back. Its JSON is that of docs/contract.md; Over says that the
// talk has come to its end, and is only shown to people.
type Answer struct {
	Say    []string `json:"say"`
	Asking []string `json:"asking"`
	State  string   `json:"state"`
	Over   bool     `json:"-"`
}

// Partner is whom the person talks to.
type Partner interface {
	// Answer takes one message; an error ends the talk.
	Answer(m Message) (Answer, error)
	// Lead is what staff would get of the talk as it stands, as one line of JSON.
	Lead() (json.RawMessage, error)
}

// MaxLine bounds a line of input.
const MaxLine = 1 << 20

var errTooLong = fmt.Errorf("the line has more than %d bytes", MaxLine)

// readLine reads up to the next newline. Of a line that is too long nothing is kept.
func readLine(in *bufio.Reader) (string, error) {
	var line []byte
	long := false
	for {
		part, err := in.ReadSlice('\n')
		if long = long || len(line)+len(part) > MaxLine; !long {
			line = append(line, part...)
		}
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
		case err != nil && (len(line) == 0 && !long || !errors.Is(err, io.EOF)):
			return "", err
		case long:
			return "", errTooLong
		default:
			return strings.TrimRight(string(line), "\r\n"), nil
		}
	}
}
