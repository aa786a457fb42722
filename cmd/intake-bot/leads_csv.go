package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// csvColumns are those of leads export --csv: a row for each kind of unit of a lead, and
// one for a lead that has none.
var csvColumns = []string{"ref", "status", "qualified", "urgent", "after_hours", "channel", "language", "opened_at", "ready_at",
	"name", "phone", "email", "city", "state", "zip", "use", "problem", "why_staff", "unit", "count", "style", "replace", "verdict",
	"order", "stock", "missing", "estimate_low", "estimate_high", "currency"}

// csvLead is a lead record as far as a table shows it.
type csvLead struct {
	Ref, Status, Channel, Language string
	Qualified, Urgent              bool
	AfterHours                     bool    `json:"after_hours"`
	OpenedAt                       string  `json:"opened_at"`
	ReadyAt                        *string `json:"ready_at"`
	Customer                       struct{ Name, Phone, Email string }
	Place                          struct{ City, State, ZIP string }
	Use                            string
	Problem                        []string
	WhyStaff                       []string `json:"why_staff"`
	Units                          []struct {
		Count int
		Style string
		Check struct {
			Replace, Verdict string
			Missing          []string
			Order            map[string]json.RawMessage
			Estimate         *struct {
				Low, High        int64
				Currency, Reason string
			}
		}
	}
}

// csvTable writes leads as a table.
type csvTable struct{ w *csv.Writer }

func newCSVTable(w io.Writer) (*csvTable, error) {
	t := &csvTable{csv.NewWriter(w)}
	return t, t.w.Write(csvColumns)
}

func (t *csvTable) add(record json.RawMessage) error {
	var l csvLead
	if err := json.Unmarshal(record, &l); err != nil {
		return fmt.Errorf("lead record: %w", err)
	}
	ready := ""
	if l.ReadyAt != nil {
		ready = *l.ReadyAt
	}
	lead := []string{l.Ref, l.Status, strconv.FormatBool(l.Qualified), strconv.FormatBool(l.Urgent), strconv.FormatBool(l.AfterHours), l.Channel,
		l.Language, l.OpenedAt, ready, l.Customer.Name, phoneForTable(l.Customer.Phone), l.Customer.Email, l.Place.City, l.Place.State, l.Place.ZIP,
		l.Use, strings.Join(l.Problem, "; "), strings.Join(l.WhyStaff, "; ")}
	if len(l.Units) == 0 {
		return t.row(append(lead, make([]string, len(csvColumns)-len(lead))...))
	}
	for i, u := range l.Units {
		row := append(append([]string{}, lead...), strconv.Itoa(i+1), countCell(u.Count), u.Style, u.Check.Replace, u.Check.Verdict,
			orderCell(u.Check.Order), stockCell(u.Check.Order), strings.Join(u.Check.Missing, "; "))
		if e := u.Check.Estimate; e != nil && e.Reason == "" {
			row = append(row, strconv.FormatInt(e.Low, 10), strconv.FormatInt(e.High, 10), e.Currency)
		}
		if err := t.row(append(row, make([]string, len(csvColumns)-len(row))...)); err != nil {
			return err
		}
	}
	return nil
}

func (t *csvTable) row(cells []string) error {
	for i, c := range cells {
		cells[i] = harmless(c)
	}
	return t.w.Write(cells)
}

func (t *csvTable) end() error {
	t.w.Flush()
	return t.w.Error()
}

// harmless keeps a spreadsheet from taking a customer's words for a formula: what begins
// like one gets an apostrophe before it (from memory: the OWASP page on CSV injection).
func harmless(cell string) string {
	trimmed := strings.TrimLeft(cell, " \u00a0\ufeff")
	if trimmed != "" && strings.ContainsRune("=+-@\t\r\n|%＝＋－＠", []rune(trimmed)[0]) {
		return "'" + cell
	}
	return cell
}

// phoneForTable writes a US number so that no spreadsheet takes it for a sum.
func phoneForTable(e164 string) string {
	if d, ok := strings.CutPrefix(e164, "+1"); ok && len(d) == 10 {
		return "(" + d[:3] + ") " + d[3:6] + "-" + d[6:]
	}
	return e164
}

func orderCell(order map[string]json.RawMessage) string {
	for _, part := range []string{"frame_inside", "plastic_size"} {
		if raw := order[part]; len(raw) > 0 && string(raw) != "null" {
			return valueText(raw)
		}
	}
	return ""
}

func stockCell(order map[string]json.RawMessage) string {
	var code string
	_ = json.Unmarshal(order["stock"], &code) // null is none
	return code
}

// exportCSV writes all leads as a table.
func exportCSV(w io.Writer, each func(func(json.RawMessage) error) error) error {
	t, err := newCSVTable(w)
	if err != nil {
		return err
	}
	if err := each(t.add); err != nil {
		return err
	}
	return t.end()
}

// countCell is empty where nobody said how many there are.
func countCell(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
