package main

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func TestGeneratedFilesAreCurrent(t *testing.T) {
	for path, make := range outputs {
		want, err := make()
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(path)
		if err != nil || string(got) != want {
			t.Errorf("%s is not current: go generate ./internal/shop/... makes it anew (%v)", path, err)
		}
	}
}

// compiled is the schema as another library understands it.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := schemaText()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("shop.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("shop.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func asJSON(t *testing.T, text string) any {
	t.Helper()
	b, err := yaml.YAMLToJSON([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func exampleText(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile("../../../deploy/shop.example.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestTheExampleIsValid(t *testing.T) {
	if err := compiled(t).Validate(asJSON(t, exampleText(t))); err != nil {
		t.Errorf("%#v", err)
	}
}

// What the program refuses, an editor marks too, where a schema can know it.
func TestWrongFilesAreNotValid(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct{ from, to string }{
		{"name: Pinwheel Dome Supply\n", ""},
		{"name: Pinwheel", "nome: Pinwheel"},
		{"ships_to: all", "ships_to: everywhere"},
		{"ships_to: all", "ships_to: [Minnesota]"},
		{"materials: [acrylic, polycarbonate]", "materials: [wood]"},
		{"layers: [1, 2, 3]", "layers: [1, 4]"},
		{"aim_for: 3/8", "aim_for: three eighths"},
		{"monday: 8:00-17:00", "monday: always"},
		{"zip: \"55802\"", "zip: \"558\""},
		{"base: $46", "base: cheap"},
		{"layers: {1: 100%, 2: 165%, 3: 230%}", "layers: {4: 100%}"},
		{"show_estimate: true", "show_estimate: maybe"},
		{"quiet: 4s", "quiet: four"},
		{"texts_an_hour: 200", "texts_an_hour: -1"},
		{"date: 2026-07-06", "date: July 6"},
		{"size: 26 x 26,", "size: 26,"},
		{"part: dome, size: 38", "part: door, size: 38"},
		{"code: D3838-1C, part", "part"},
	} {
		text := exampleText(t)
		if !strings.Contains(text, c.from) {
			t.Fatalf("the example has no %q", c.from)
		}
		if s.Validate(asJSON(t, strings.Replace(text, c.from, c.to, 1))) == nil {
			t.Errorf("valid with %q in place of %q", c.to, c.from)
		}
	}
}

// Every setting has words on the page.
func TestThePageExplainsEverySetting(t *testing.T) {
	page, err := pageText()
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for line := range strings.Lines(page) {
		if !strings.HasPrefix(line, "| `") {
			continue
		}
		rows++
		if cells := strings.Split(line, " | "); len(cells) < 4 || len(strings.Fields(cells[1])) < 2 || cells[2] == "" {
			t.Errorf("not explained: %s", line)
		}
	}
	if rows < 100 {
		t.Errorf("only %d settings", rows)
	}
	var schema map[string]any
	text, err := schemaText()
	if err != nil || json.Unmarshal([]byte(text), &schema) != nil {
		t.Fatal(err)
	}
	for name := range schema["properties"].(map[string]any) {
		if !strings.Contains(page, "| `"+name+"` |") {
			t.Errorf("%s is not on the page", name)
		}
	}
}
