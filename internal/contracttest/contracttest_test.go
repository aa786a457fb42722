package contracttest_test

import (
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/contracttest"
	"example.com/intake-bot/internal/fitcheck"
)

// enum finds the allowed values at a path of a schema.
func enum(t *testing.T, name string, path ...string) []string {
	t.Helper()
	raw, err := os.ReadFile("../../docs/schemas/" + name + ".schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var at any
	if err := json.Unmarshal(raw, &at); err != nil {
		t.Fatal(err)
	}
	for _, key := range append(path, "enum") {
		m, ok := at.(map[string]any)
		if !ok {
			t.Fatalf("%s: nothing at %v", name, path)
		}
		at = m[key]
	}
	var out []string
	list, _ := at.([]any)
	for _, v := range list {
		out = append(out, v.(string))
	}
	return out
}

func topics(list []fitcheck.Topic) []string {
	var out []string
	for _, t := range list {
		out = append(out, string(t))
	}
	return out
}

// constants are the texts of a file's constants whose names begin alike.
func constants(t *testing.T, path, form string) []string {
	t.Helper()
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, m := range regexp.MustCompile(form).FindAllStringSubmatch(string(raw), -1) {
		out = append(out, m[1])
	}
	return out
}

// The lists in the schemas are those of the program, no more and no less.
func TestListsAreThePrograms(t *testing.T) {
	values := []string{"$defs", "unit_values", "properties"}
	of := func(topic fitcheck.Topic, rest ...string) []string {
		return enum(t, "common", append(append(slices.Clone(values), string(topic)), rest...)...)
	}
	for what, c := range map[string][2][]string{
		"topics":     {enum(t, "common", "$defs", "topic"), append(topics(fitcheck.LeadTopics), topics(fitcheck.UnitTopics)...)},
		"uses":       {enum(t, "common", "$defs", "use"), fitcheck.Choices(fitcheck.TopicUse)},
		"problems":   {enum(t, "common", "$defs", "problem"), fitcheck.Choices(fitcheck.TopicProblem)},
		"styles":     {of(fitcheck.TopicStyle), fitcheck.Choices(fitcheck.TopicStyle)},
		"outlines":   {of(fitcheck.TopicOutline), fitcheck.Choices(fitcheck.TopicOutline)},
		"profiles":   {of(fitcheck.TopicProfile), fitcheck.Choices(fitcheck.TopicProfile)},
		"conditions": {of(fitcheck.TopicFrameCondition), fitcheck.Choices(fitcheck.TopicFrameCondition)},
		"wants":      {of(fitcheck.TopicWant), fitcheck.Choices(fitcheck.TopicWant)},
		"materials":  {of(fitcheck.TopicMaterial), fitcheck.Choices(fitcheck.TopicMaterial)},
		"finishes":   {of(fitcheck.TopicFinish), fitcheck.Choices(fitcheck.TopicFinish)},
		"coverings":  {of(fitcheck.TopicRoofCovering), fitcheck.Choices(fitcheck.TopicRoofCovering)},
		"risks":      {of(fitcheck.TopicImpactRisk, "items"), fitcheck.Choices(fitcheck.TopicImpactRisk)},
		"codes":      {enum(t, "common", "$defs", "finding", "properties", "code"), constants(t, "../fitcheck/code.go", `(?m)^\t\w+ +Code = "(\w+)"`)},
		"reasons":    {enum(t, "common", "$defs", "check_unit", "properties", "reasons", "items"), constants(t, "../fitcheck/code.go", `(?m)^\tReason\w+ += "(\w+)"`)},
		"cautions":   {enum(t, "common", "$defs", "cautions", "items"), constants(t, "../fitcheck/code.go", `(?m)^\tCaution\w+ += "(\w+)"`)},
		"statuses":   {enum(t, "lead", "properties", "status"), constants(t, "../conversation/lead.go", `(?m)^\tStatus\w+ +Status = "(\w+)"`)},
	} {
		schema, program := slices.Sorted(slices.Values(c[0])), slices.Sorted(slices.Values(c[1]))
		if len(program) < 2 || !slices.Equal(schema, program) {
			t.Errorf("%s: the schema has %v, the program %v", what, schema, program)
		}
	}
}

// What the contract's page shows as examples is as the schemas have it.
func TestExamplesOfThePage(t *testing.T) {
	page, err := os.ReadFile("../../docs/contract.md")
	if err != nil {
		t.Fatal(err)
	}
	examples := regexp.MustCompile("(?s)```json\n(.*?)```").FindAllStringSubmatch(string(page), -1)
	if len(examples) != 3 {
		t.Fatalf("%d examples", len(examples))
	}
	// The first is a line of read whole; in the two others dots stand for what is left out.
	contracttest.Check(t, "read", []byte(strings.ReplaceAll(examples[0][1], "\n", " ")))
}

func TestSchemasRefuse(t *testing.T) {
	for _, c := range []struct{ name, raw string }{
		{"read", `{"facts":[],"unclear":[],"requests":[]}`},
		{"read", `{"facts":[{"topic":"layers","value":4,"said":"4"}],"unclear":[],"requests":[],"language":"en"}`},
		{"read", `{"facts":[{"topic":"curb_outside","value":{"width":4},"said":"4"}],"unclear":[],"requests":[],"language":"en"}`},
		{"read", `{"facts":[],"unclear":[{"topic":null,"said":"4","why":"because"}],"requests":[],"language":"en"}`},
		{"read", `{"facts":[],"unclear":[],"requests":[],"language":"en","more":1}`},
		{"read", `{"error":"bad","line":0}`},
		{"check", `{"units":[{}],"cautions":[]}`},
		{"check", `{"units":[],"cautions":["mind the gap"]}`},
		{"job", `{"units":[{"layers":"two"}]}`},
		{"job", `{"units":[{"nothing":2}]}`},
		{"lead", `{"version":2}`},
	} {
		if contracttest.Valid(c.name, []byte(c.raw)) == nil {
			t.Errorf("%s takes %s", c.name, c.raw)
		}
	}
}
