package fitcheck

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// examCase is one question of the exam in testdata/exam, which was written from the
// contract and the table of check values alone, before the code was looked at.
type examCase struct {
	ID     string          `json:"id"`
	Why    string          `json:"why"`
	In     json.RawMessage `json:"in"`
	Raw    *string         `json:"raw"`  // the line itself, where it is not JSON
	Site   *Site           `json:"site"` // what the caller looks up for the place
	Expect examUnit        `json:"expect"`
}

// examUnit says what an answer must hold; what it leaves out is free.
type examUnit struct {
	Blank bool     `json:"blank"` // no answer at all
	Error []string `json:"error"` // what the error must name
	Count *int     `json:"count"` // of units
	Units []examUnit
	// Cautions belong to the whole job; all that follows to its first unit.
	Cautions []string `json:"cautions_has"`

	Replace    Replace                       `json:"replace"`
	Reasons    []string                      `json:"reasons"`
	ReasonsHas []string                      `json:"reasons_has"`
	ReasonsAny []string                      `json:"reasons_any"`
	Verdict    anyOf                         `json:"verdict"`
	Find       map[Code]Severity             `json:"find"` // "*": of any severity
	FindAny    []Code                        `json:"find_any"`
	Not        []Code                        `json:"not"`
	Quiet      bool                          `json:"quiet"` // nothing to ask, nothing that stops
	Loud       bool                          `json:"loud"`  // something to ask, or that stops
	Topic      map[Code]Topic                `json:"topic"`
	Numbers    map[Code]map[string]float64   `json:"numbers"`
	Missing    []Topic                       `json:"missing"`
	MissingHas []Topic                       `json:"missing_has"`
	MissingAny []Topic                       `json:"missing_any"`
	MissingNot []Topic                       `json:"missing_not"`
	PhotosHas  []Topic                       `json:"photos_has"`
	PhotosAny  []Topic                       `json:"photos_any"`
	Order      map[string]map[string]float64 `json:"order"`
	OrderNull  *bool                         `json:"order_null"`
	OrderGap   bool                          `json:"order_gap"` // over the curb by 1/4 to 1/2 in
	OrderMin   map[string]float64            `json:"order_min"`
	ShipBy     string                        `json:"ship_by"`
}

// examAnswer is what another program sees of an answer.
type examAnswer struct {
	Units    []examResult
	Cautions []string
	Error    *string
}

type examResult struct {
	Replace      Replace
	Reasons      []string
	Verdict      Verdict
	Findings     []Finding
	Missing      []Topic
	PhotosWanted []Topic `json:"photos_wanted"`
	Order        map[string]any
	Ship         *Ship
}

// anyOf is one text, or a list of which any will do.
type anyOf []string

func (a *anyOf) UnmarshalJSON(b []byte) error {
	if b[0] == '[' {
		return json.Unmarshal(b, (*[]string)(a))
	}
	*a = anyOf{""}
	return json.Unmarshal(b, &(*a)[0])
}

func TestExam(t *testing.T) {
	files, err := filepath.Glob("testdata/exam/*.jsonl")
	if err != nil || len(files) == 0 {
		t.Fatal("no exam", err)
	}
	for _, f := range files {
		for _, c := range readExam(t, f) {
			t.Run(c.ID, func(t *testing.T) { c.sit(t) })
		}
	}
}

func readExam(t *testing.T, file string) (cases []examCase) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(bytes.NewReader(text))
	for n := 1; lines.Scan(); n++ {
		var c examCase
		dec := json.NewDecoder(bytes.NewReader(lines.Bytes()))
		dec.DisallowUnknownFields() // a misspelt expectation would hold nothing
		if err := dec.Decode(&c); err != nil {
			t.Fatalf("%s:%d: %v", file, n, err)
		}
		cases = append(cases, c)
	}
	return cases
}

func (c *examCase) line() string {
	if c.Raw != nil {
		return *c.Raw
	}
	return string(c.In)
}

func (c *examCase) sit(t *testing.T) {
	var out bytes.Buffer
	site := func(Place) Site {
		if c.Site == nil {
			return Site{}
		}
		return *c.Site
	}
	bad, err := CheckLines(strings.NewReader(c.line()+"\n"), &out, DefaultRules(), site)
	if err != nil {
		t.Fatal(err)
	}
	wrong := c.grade(out.Bytes(), bad)
	if len(wrong) > 0 {
		t.Errorf("%s\n in  %s\n out %s wrong: %s", c.Why, c.line(), out.Bytes(), strings.Join(wrong, "; "))
	}
}

func (c *examCase) grade(out []byte, bad int) []string {
	e := &c.Expect
	var answer examAnswer
	switch err := json.Unmarshal(out, &answer); {
	case e.Blank && len(out) == 0:
		return nil
	case err != nil:
		return []string{err.Error()}
	}
	if e.Error != nil {
		if answer.Error == nil || bad != 1 {
			return []string{"no error"}
		}
		return lacking("the error", e.Error, func(w string) bool { return strings.Contains(*answer.Error, w) })
	}
	if answer.Error != nil {
		return []string{"an error"}
	}
	g := &grader{job: c.line()}
	if e.Count != nil {
		g.hold(*e.Count == len(answer.Units), "%d units", len(answer.Units))
	}
	g.wrong = append(g.wrong, lacking("cautions", e.Cautions, func(w string) bool { return slices.Contains(answer.Cautions, w) })...)
	g.units(e, answer.Units)
	return g.wrong
}

func lacking[T any](what string, wanted []T, has func(T) bool) (wrong []string) {
	for _, w := range wanted {
		if !has(w) {
			wrong = append(wrong, fmt.Sprintf("%s: without %v", what, w))
		}
	}
	return wrong
}

// grader collects what is wrong with one answer.
type grader struct {
	job   string
	wrong []string
}

func (g *grader) hold(ok bool, format string, args ...any) {
	if !ok {
		g.wrong = append(g.wrong, fmt.Sprintf(format, args...))
	}
}

func (g *grader) units(e *examUnit, us []examResult) {
	wanted := e.Units
	if wanted == nil && len(us) > 0 {
		wanted = []examUnit{*e}
	}
	for i := range us {
		g.always(&us[i])
		if i < len(wanted) {
			g.unit(&wanted[i], &us[i])
		}
	}
	g.hold(len(wanted) <= len(us), "%d units", len(us))
}

// always holds for any answer.
func (g *grader) always(r *examResult) {
	for _, f := range r.Findings {
		g.hold(r.Verdict != VerdictFits || f.Severity == Note, "fits, and yet %s is %s", f.Code, f.Severity)
		g.hold(f.Text != "" && f.Source != "" && f.Topic != "", "%s lacks words", f.Code)
	}
	g.hold(r.Reasons != nil && r.Missing != nil && r.PhotosWanted != nil && r.Order != nil, "null for a list")
}

func (g *grader) unit(e *examUnit, r *examResult) {
	g.hold(e.Replace == "" || e.Replace == r.Replace, "replace %s, not %s", r.Replace, e.Replace)
	g.hold(e.Reasons == nil || slices.Equal(e.Reasons, r.Reasons), "reasons %v, not %v", r.Reasons, e.Reasons)
	g.list("reasons", e.ReasonsHas, e.ReasonsAny, nil, r.Reasons)
	g.hold(e.Verdict == nil || slices.Contains(e.Verdict, string(r.Verdict)), "verdict %s, not %v", r.Verdict, e.Verdict)
	g.findings(e, r.Findings)
	g.hold(e.Missing == nil || slices.Equal(e.Missing, r.Missing), "missing %v, not %v", r.Missing, e.Missing)
	g.list("missing", texts(e.MissingHas), texts(e.MissingAny), texts(e.MissingNot), texts(r.Missing))
	g.list("photos", texts(e.PhotosHas), texts(e.PhotosAny), nil, texts(r.PhotosWanted))
	g.order(e, r.Order)
	g.hold(e.ShipBy == "" || r.Ship != nil && r.Ship.By == e.ShipBy, "shipped %+v", r.Ship)
}

func texts[T ~string](list []T) []string {
	s := make([]string, len(list))
	for i, x := range list {
		s[i] = string(x)
	}
	return s
}

func (g *grader) list(what string, all, some, none, got []string) {
	g.wrong = append(g.wrong, lacking(what, all, func(w string) bool { return slices.Contains(got, w) })...)
	g.wrong = append(g.wrong, lacking(what+", which holds what it must not", none, func(w string) bool { return !slices.Contains(got, w) })...)
	has := func(w string) bool { return slices.Contains(got, w) }
	g.hold(len(some) == 0 || slices.ContainsFunc(some, has), "%s: none of %v", what, some)
}

func (g *grader) findings(e *examUnit, fs []Finding) {
	codes := make([]Code, len(fs))
	open := false
	for i := range fs {
		codes[i] = fs[i].Code
		open = open || fs[i].Severity != Note
	}
	for code, severity := range e.Find {
		i := slices.IndexFunc(fs, func(f Finding) bool { return f.Code == code && (severity == "*" || severity == f.Severity) })
		g.hold(i >= 0, "no %s as %s", code, severity)
	}
	g.list("findings", nil, texts(e.FindAny), texts(e.Not), texts(codes))
	g.hold(!e.Quiet || !open, "not quiet")
	g.hold(!e.Loud || open, "nothing asked")
	for code, topic := range e.Topic {
		i := slices.Index(codes, code)
		g.hold(i >= 0 && fs[i].Topic == topic, "%s is not of %s", code, topic)
	}
	for code, ns := range e.Numbers {
		i := slices.Index(codes, code)
		for name, x := range ns {
			g.hold(i >= 0 && fs[i].Numbers[name] == x, "%s has another %s than %v", code, name, x)
		}
	}
}

func (g *grader) order(e *examUnit, got map[string]any) {
	for part, size := range e.Order {
		want := any(nil)
		if size != nil {
			m := map[string]any{}
			for k, x := range size {
				m[k] = x
			}
			want = m
		}
		g.hold(reflect.DeepEqual(got[part], want), "order of %s is %v", part, got[part])
	}
	if e.OrderNull != nil {
		none := got["frame_inside"] == nil && got["plastic_size"] == nil
		g.hold(none == *e.OrderNull, "order %v", got)
	}
	size, _ := got["frame_inside"].(map[string]any)
	for k, least := range e.OrderMin {
		x, _ := size[k].(float64)
		g.hold(x >= least, "order of %s is %v, under %v", k, x, least)
	}
	if e.OrderGap {
		g.orderGap(size)
	}
}

// orderGap: what is ordered is 1/4 to 1/2 in larger than the curb that was told.
func (g *grader) orderGap(size map[string]any) {
	var job struct {
		Units []struct {
			Curb map[string]float64 `json:"curb_outside"`
		}
	}
	_ = json.Unmarshal([]byte(g.job), &job)
	g.hold(len(size) > 0, "no order")
	for k, curb := range job.Units[0].Curb {
		x, _ := size[k].(float64)
		g.hold(x-curb >= 0.25 && x-curb <= 0.5, "gap of %s is %v", k, x-curb)
	}
}
