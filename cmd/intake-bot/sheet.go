package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/fitcheck"
)

// sheet is a lead record as far as a terminal shows it.
type sheet struct {
	Ref        string
	Status     string
	Qualified  bool
	WhyStaff   []string `json:"why_staff"`
	Urgent     bool
	AfterHours bool `json:"after_hours"`
	Customer   struct{ Name, Phone, Email string }
	Place      struct{ City, State, ZIP string }
	Use        string
	Problem    []string
	Units      []map[string]json.RawMessage
	Photos     []struct{ Of string }
}

// writeSheet shows a lead record to people.
func writeSheet(w io.Writer, record json.RawMessage) error {
	var s sheet
	if err := json.Unmarshal(record, &s); err != nil {
		return fmt.Errorf("lead record: %w", err)
	}
	var b strings.Builder
	s.head(&b)
	for i, unit := range s.Units {
		if err := writeUnit(&b, i+1, unit); err != nil {
			return fmt.Errorf("lead %s, unit %d: %w", s.Ref, i+1, err)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (s *sheet) head(b *strings.Builder) {
	marks := []string{s.Status}
	if !s.Qualified {
		marks = append(marks, "not qualified")
	}
	if s.Urgent {
		marks = append(marks, "urgent")
	}
	if s.AfterHours {
		marks = append(marks, "after hours")
	}
	fmt.Fprintf(b, "Lead %s: %s\n", s.Ref, strings.Join(marks, ", "))
	row(b, "why staff", strings.Join(s.WhyStaff, ", "))
	row(b, "customer", some(s.Customer.Name, s.Customer.Phone, s.Customer.Email))
	row(b, "place", strings.TrimSpace(some(s.Place.City, s.Place.State)+" "+s.Place.ZIP))
	row(b, "use", s.Use)
	row(b, "problem", strings.Join(s.Problem, ", "))
	if len(s.Photos) > 0 {
		row(b, "photos", fmt.Sprint(len(s.Photos)))
	}
}

// some joins what is known with commas.
func some(parts ...string) string {
	var known []string
	for _, p := range parts {
		if p != "" {
			known = append(known, p)
		}
	}
	return strings.Join(known, ", ")
}

// row writes a line where there is something to write.
func row(b *strings.Builder, label, text string) {
	if text != "" {
		fmt.Fprintln(b, terminal.Wrap(fmt.Sprintf("  %-18s ", strings.ReplaceAll(label, "_", " ")), text))
	}
}

func writeUnit(b *strings.Builder, n int, unit map[string]json.RawMessage) error {
	fmt.Fprintf(b, "  Unit %d\n", n)
	for _, topic := range fitcheck.UnitTopics {
		if raw, ok := unit[string(topic)]; ok {
			row(b, string(topic), valueText(raw))
		}
	}
	var check struct {
		Replace, Verdict string
		Reasons, Missing []string
		Findings         []struct{ Severity, Code, Text string }
		Order            map[string]json.RawMessage
		Ship             *struct {
			By     string
			Weight float64 `json:"weight_lb"`
			Billed float64 `json:"billed_lb"`
		}
		Estimate *struct {
			Low, High int64
			Currency  string
			Reason    string
		}
	}
	if err := json.Unmarshal(unit["check"], &check); err != nil {
		return err
	}
	row(b, "replace", check.Replace+" ("+strings.Join(check.Reasons, ", ")+")")
	row(b, "measurements", check.Verdict)
	for _, part := range []string{"plastic_size", "frame_inside", "stock"} {
		if raw := check.Order[part]; len(raw) > 0 && string(raw) != "null" {
			row(b, "order "+part, valueText(raw))
		}
	}
	if check.Ship != nil {
		row(b, "ships by", fmt.Sprintf("%s, %g lb, billed as %g lb", check.Ship.By, check.Ship.Weight, check.Ship.Billed))
	}
	if e := check.Estimate; e != nil && e.Reason == "" {
		row(b, "estimate", fmt.Sprintf("%d to %d %s", e.Low, e.High, e.Currency))
	} else if e != nil {
		row(b, "no estimate", e.Reason)
	}
	row(b, "missing", strings.Join(check.Missing, ", "))
	for _, f := range check.Findings {
		row(b, f.Severity, f.Code+": "+f.Text)
	}
	return nil
}

// valueText is a topic's value for people: lengths in tape fractions.
func valueText(raw json.RawMessage) string {
	var v any
	if json.Unmarshal(raw, &v) != nil {
		return string(raw)
	}
	switch v := v.(type) {
	case []any:
		return joined(v, ", ")
	case map[string]any:
		return objectText(v)
	}
	return fmt.Sprint(v)
}

func joined(list []any, between string) string {
	words := make([]string, len(list))
	for i, one := range list {
		words[i] = fmt.Sprint(one)
		if in, ok := one.(float64); ok {
			words[i] = fitcheck.FromInches(in).Tape()
		}
	}
	if len(words) == 0 {
		return "none"
	}
	return strings.Join(words, between)
}

func objectText(v map[string]any) string {
	for _, form := range []struct {
		keys          []string
		between, unit string
	}{
		{[]string{"width_in", "length_in"}, " x ", " in"},
		{[]string{"first_in", "second_in"}, " and ", " in"},
		{[]string{"rise_in", "run_in"}, " in ", ""},
		{[]string{"diameter_in"}, "", " in round"},
		{[]string{"height_in"}, "", " in"},
		{[]string{"one_in"}, "", " in, one side"},
		{[]string{"outer", "middle", "inner"}, " over ", ""},
	} {
		var parts []any
		for _, key := range form.keys {
			if part, ok := v[key]; ok {
				parts = append(parts, part)
			}
		}
		if len(parts) > 0 {
			return joined(parts, form.between) + form.unit
		}
	}
	if sides, ok := v["sides_in"].([]any); ok {
		return joined(sides, " / ") + " in, side by side"
	}
	return fmt.Sprint(v)
}
