package fitcheck

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// MaxLine bounds a line of input: ten thousand full units fit well.
const MaxLine = 64 << 20

var errLongLine = fmt.Errorf("the line is longer than %d MiB", MaxLine>>20)

// CheckLines reads jobs, one JSON object a line, and writes one line of JSON for
// each: the result, or {"error":…,"line":N} where the line is bad. Blank lines are
// skipped. It counts the bad lines; the error is one of reading or writing. Site
// looks a place up and may be nil.
func CheckLines(r io.Reader, w io.Writer, rules *Rules, site func(Place) Site) (bad int, err error) {
	in := bufio.NewReaderSize(r, 64<<10)
	out := bufio.NewWriter(w)
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	for n := 1; ; n++ {
		line, readErr := readLine(in, MaxLine)
		if readErr != nil && readErr != io.EOF && !errors.Is(readErr, errLongLine) {
			return bad, errors.Join(fmt.Errorf("read line %d: %w", n, readErr), out.Flush())
		}
		if n == 1 {
			line = bytes.TrimPrefix(line, []byte("\xef\xbb\xbf"))
		}
		if len(bytes.TrimSpace(line)) > 0 || errors.Is(readErr, errLongLine) {
			answer, ok := checkLine(line, readErr, n, rules, site)
			if !ok {
				bad++
			}
			if err := enc.Encode(answer); err != nil {
				return bad, fmt.Errorf("write answer to line %d: %w", n, err)
			}
		}
		if readErr == io.EOF {
			break
		}
		if in.Buffered() == 0 { // the next read may wait for a person
			if err := out.Flush(); err != nil {
				return bad, fmt.Errorf("write answer to line %d: %w", n, err)
			}
		}
	}
	if err := out.Flush(); err != nil {
		return bad, fmt.Errorf("write answers: %w", err)
	}
	return bad, nil
}

// badLine is the answer to a line that is not a job.
type badLine struct {
	Error string `json:"error"`
	Line  int    `json:"line"`
}

func checkLine(line []byte, readErr error, n int, rules *Rules, site func(Place) Site) (answer any, ok bool) {
	if errors.Is(readErr, errLongLine) {
		return badLine{readErr.Error(), n}, false
	}
	job, err := DecodeJob(line)
	if err != nil {
		return badLine{err.Error(), n}, false
	}
	if site != nil {
		job.Site = site(job.Place)
	}
	return Check(job, rules), true
}

// readLine reads to the next newline, which it leaves out. Of a line that is longer
// than limit nothing is kept.
func readLine(in *bufio.Reader, limit int) ([]byte, error) {
	var line []byte
	long := false
	for {
		part, err := in.ReadSlice('\n')
		if !long && len(line)+len(part) > limit {
			line, long = nil, true
		}
		if !long {
			line = append(line, part...)
		}
		switch {
		case err == bufio.ErrBufferFull:
			continue
		case long && (err == nil || err == io.EOF):
			return nil, errLongLine
		}
		return bytes.TrimRight(line, "\r\n"), err
	}
}
