package shop

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// TableMistake is one thing that is wrong in a table.
type TableMistake struct {
	Line   int    // from 1, the heading's line among them
	Column string // its heading; empty where the whole line is meant
	Text   string // what is wrong and what would be right
}

// String is the mistake as "line 4, size: …".
func (m TableMistake) String() string {
	if m.Column == "" {
		return fmt.Sprintf("line %d: %s", m.Line, m.Text)
	}
	return fmt.Sprintf("line %d, %s: %s", m.Line, m.Column, m.Text)
}

// TableMistakes are all mistakes of one table, in the order of its lines.
type TableMistakes []TableMistake

func (m TableMistakes) Error() string {
	lines := make([]string, len(m))
	for i, one := range m {
		lines[i] = one.String()
	}
	return strings.Join(lines, "\n")
}

// table is what a spreadsheet program writes as CSV, read with tolerance for how they do.
type table struct {
	rows     []row
	comma    bool // numbers may have a decimal comma
	mistakes TableMistakes
}

type row struct {
	t     *table
	line  int
	cells map[string]string // by heading
}

func (t *table) wrong(line int, column, format string, args ...any) {
	t.mistakes = append(t.mistakes, TableMistake{line, column, fmt.Sprintf(format, args...)})
}

const mostTable = 4 << 20

// readTable reads a table with the headings that are known, of which some are required. A
// heading may be written in capitals and with spaces; others stands for names of a heading
// that people use as well.
func readTable(raw []byte, known, required []string, others map[string]string) *table {
	t := &table{}
	if len(raw) > mostTable {
		t.wrong(1, "", "the file has over %d bytes: is it a table?", mostTable)
		return t
	}
	text := decoded(raw)
	r := csv.NewReader(strings.NewReader(text))
	first := 0
	if head, rest, ok := strings.Cut(text, "\n"); ok && strings.HasPrefix(head, "sep=") { // a word of Excel's to itself
		r = csv.NewReader(strings.NewReader(rest))
		first, text = 1, rest
	}
	r.Comma = separator(text)
	r.FieldsPerRecord, r.LazyQuotes = -1, true // 26" is an inch mark, not a quote
	t.comma = r.Comma == ';'
	columns := t.headings(r, first, known, required, others)
	if columns == nil {
		return t
	}
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			return t
		}
		if err != nil {
			var at *csv.ParseError
			if errors.As(err, &at) {
				t.wrong(at.Line+first, "", "the line can't be read as a table: is a quote missing?")
			}
			return t
		}
		line, _ := r.FieldPos(0)
		t.add(line+first, record, columns)
	}
}

// headings reads the first line; nil where it is of no use.
func (t *table) headings(r *csv.Reader, first int, known, required []string, others map[string]string) []string {
	record, err := r.Read()
	if err != nil {
		t.wrong(1, "", "the file is empty: its first line has the headings %s", strings.Join(known, ", "))
		return nil
	}
	columns := make([]string, len(record))
	for i, cell := range record {
		name := headingName(cell)
		if other, ok := others[name]; ok {
			name = other
		}
		switch {
		case name == "":
		case !slices.Contains(known, name):
			t.wrong(1+first, strings.TrimSpace(cell), "there is no such column; there are: %s", strings.Join(known, ", "))
		case slices.Contains(columns[:i], name):
			t.wrong(1+first, name, "is there twice: keep one")
		default:
			columns[i] = name
		}
	}
	for _, name := range required {
		if !slices.Contains(columns, name) {
			t.wrong(1+first, name, "the column is missing; the first line has the headings %s", strings.Join(known, ", "))
		}
	}
	if len(t.mistakes) > 0 {
		return nil
	}
	return columns
}

var notLetters = regexp.MustCompile(`[^a-z]+`)

func headingName(cell string) string {
	return strings.Trim(notLetters.ReplaceAllString(strings.ToLower(tidy(cell)), "_"), "_")
}

func (t *table) add(line int, record, columns []string) {
	one := row{t, line, map[string]string{}}
	for i, cell := range record {
		lines := strings.Contains(strings.TrimRight(cell, " \r\n"), "\n")
		cell = tidy(cell)
		switch {
		case cell == "":
		case lines:
			t.wrong(line, "", "a cell goes on over several lines: is a quote missing?")
			return
		case i >= len(columns) || columns[i] == "":
			t.wrong(line, "", "%q stands in a column without a heading: has the line one cell too many, such as a comma within a number?", cell)
			return
		default:
			one.cells[columns[i]] = cell
		}
	}
	if len(one.cells) > 0 { // spreadsheet programs add empty lines
		t.rows = append(t.rows, one)
	}
}

// decoded is the text of a file whatever a spreadsheet program wrote it as: with a byte
// order mark, as UTF-16, or in the older code page of Windows.
func decoded(raw []byte) string {
	if bytes.HasPrefix(raw, []byte{0xFF, 0xFE}) || bytes.HasPrefix(raw, []byte{0xFE, 0xFF}) {
		if b, err := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM).NewDecoder().Bytes(raw); err == nil {
			return string(b)
		}
	}
	raw = bytes.TrimPrefix(raw, []byte("\xEF\xBB\xBF"))
	if utf8.Valid(raw) {
		return string(raw)
	}
	b, err := charmap.Windows1252.NewDecoder().Bytes(raw)
	if err != nil {
		return strings.ToValidUTF8(string(raw), "?")
	}
	return string(b)
}

// separator is what stands between the cells of the first line.
func separator(text string) rune {
	head, _, _ := strings.Cut(text, "\n")
	best, most := ',', 0
	for _, r := range ",;\t" {
		if n := strings.Count(head, string(r)); n > most {
			best, most = r, n
		}
	}
	return best
}

var tidier = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "”", `"`, "“", `"`, "″", `"`, "⁄", "/")

// tidy takes a cell as it was meant: hard spaces are spaces, one letter may be a fraction.
func tidy(cell string) string {
	return strings.Join(strings.Fields(tidier.Replace(cell)), " ")
}

var (
	// Spreadsheet programs take 3/8 and 1-2 for days.
	dateForm    = regexp.MustCompile(`(?i)^(?:\d{1,2}-[a-z]{3}(?:-\d{2,4})?|[a-z]{3}-\d{2,4}|\d{1,2}/\d{1,2}/\d{2,4})$`)
	commaNumber = regexp.MustCompile(`^(\$?) ?(\d{1,3}(?:\.\d{3})+|\d+),(\d+)( ?(?:%|in|"|\$|€)?)$`)
)

// value takes a cell into a setting, and says what would be right where it can't.
func (r row) value(column string, into scalar) bool {
	cell := r.cells[column]
	if dateForm.MatchString(cell) {
		r.t.wrong(r.line, column, "%q is a date, which the spreadsheet made of it: give the column the format Text, and write it again", cell)
		return false
	}
	if m := commaNumber.FindStringSubmatch(cell); m != nil && r.t.comma {
		cell = m[1] + strings.ReplaceAll(m[2], ".", "") + "." + m[3] + m[4]
	}
	if err := into.set(cell); err != nil {
		r.t.wrong(r.line, column, "%s", err)
		return false
	}
	return true
}

// choice takes a cell that must be one of a topic's values; spaces and capitals don't
// matter.
func (r row) choice(column, topic string) string {
	cell := strings.ReplaceAll(strings.ToLower(r.cells[column]), " ", "_")
	if topic == "layers" {
		cell = strings.TrimSuffix(strings.TrimSuffix(cell, ".0"), ",0") // as a spreadsheet may write it
	}
	if cell != "" && !slices.Contains(allowed(topic), cell) {
		r.t.wrong(r.line, column, "%q is not one of %s", r.cells[column], strings.Join(allowed(topic), ", "))
		return ""
	}
	return cell
}

// wanted says of columns that must not be empty whether they are there.
func (r row) wanted(columns map[string]string) {
	for _, column := range sortedKeys(columns) {
		if r.cells[column] == "" {
			r.t.wrong(r.line, column, "is empty: %s", columns[column])
		}
	}
}

// told is nil, or the mistakes in the order of the lines.
func (t *table) told() error {
	if len(t.mistakes) == 0 {
		return nil
	}
	slices.SortStableFunc(t.mistakes, func(a, b TableMistake) int { return a.Line - b.Line })
	return t.mistakes
}
