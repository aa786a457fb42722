package drawing

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strconv"
)

var errPDFForm = errors.New("drawing pdf: not in the form that the library writes")

// undated takes the clock's time out of a PDF, so that the same drawing gives the same
// bytes: the library writes it unasked into the document's information and into every
// font that it embeds. Objects then have other lengths, so the table of their positions
// is written anew.
func undated(b []byte) ([]byte, error) {
	at, table, trailer, err := positions(b)
	if err != nil {
		return nil, err
	}
	order := make([]int, len(at)) // object numbers less one, as they stand in the file
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return at[i] - at[j] })
	out := bytes.NewBuffer(append(make([]byte, 0, len(b)), b[:at[order[0]]]...))
	moved := make([]int, len(at))
	for k, i := range order {
		end := table
		if k+1 < len(order) {
			end = at[order[k+1]]
		}
		object, err := timeless(b[at[i]:end])
		if err != nil {
			return nil, err
		}
		moved[i] = out.Len()
		out.Write(object)
	}
	start := out.Len()
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, p := range moved {
		fmt.Fprintf(out, "%010d 00000 n \n", p)
	}
	fmt.Fprintf(out, "%s\nstartxref\n%d\n%%%%EOF\n", trailer, start)
	return out.Bytes(), nil
}

// positions are where the objects of a PDF stand, in the order of their numbers from 1,
// where the table of positions itself stands, and what follows it.
func positions(b []byte) (at []int, table int, trailer []byte, err error) {
	tail := bytes.LastIndex(b, []byte("\nstartxref\n"))
	if tail < 0 {
		return nil, 0, nil, errPDFForm
	}
	digits, _, _ := bytes.Cut(b[tail+len("\nstartxref\n"):], []byte("\n"))
	table, err = strconv.Atoi(string(digits))
	if err != nil || table <= 0 || table > tail {
		return nil, 0, nil, errPDFForm
	}
	rows := bytes.Split(b[table:tail], []byte("\n"))
	const before = 3 // its name, its length, and the free entry
	for i, row := range rows {
		if bytes.Equal(row, []byte("trailer")) && i > before {
			return at, table, bytes.Join(rows[i:], []byte("\n")), nil
		}
		if i < before {
			continue
		}
		pos, err := strconv.Atoi(string(row[:min(len(row), 10)]))
		if err != nil || pos <= 0 || pos >= table {
			return nil, 0, nil, errPDFForm
		}
		at = append(at, pos)
	}
	return nil, 0, nil, errPDFForm
}

// timeless is an object without the time of its making.
func timeless(object []byte) ([]byte, error) {
	if bytes.HasPrefix(object, []byte("2 0 obj\n")) { // the document's information
		from := bytes.Index(object, []byte("/CreationDate("))
		if from < 0 {
			return nil, errPDFForm
		}
		to := from + bytes.IndexByte(object[from:], ')') + 1
		return slices.Concat(object[:from], object[to:]), nil
	}
	return timelessFont(object)
}
