package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// schemas is the folder of CycloneDX's own schemas, which come with the library.
func schemas(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/CycloneDX/cyclonedx-go").Output()
	if err != nil {
		t.Fatal(err)
	}
	return filepath.Join(strings.TrimSpace(string(out)), "schema")
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	for address, file := range map[string]string{"bom-1.6.schema.json": "bom-1.6.schema.json", "spdx.schema.json": "spdx.schema.json", "jsf-0.82.schema.json": "jsf-0.82.schemax.json"} {
		f, err := os.Open(filepath.Join(schemas(t), file))
		if err != nil {
			t.Fatal(err)
		}
		doc, err := jsonschema.UnmarshalJSON(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.AddResource("http://cyclonedx.org/schema/"+address, doc); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile("http://cyclonedx.org/schema/bom-1.6.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The bill of this test's own program is as CycloneDX has it, names what went in, and is
// the same every time.
func TestBill(t *testing.T) {
	path, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	one, err := billOf(path)
	if err != nil {
		t.Fatal(err)
	}
	two, err := billOf(path)
	if err != nil || !bytes.Equal(one, two) {
		t.Errorf("another bill each time: %v", err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(one))
	if err != nil {
		t.Fatal(err)
	}
	if err := compiled(t).Validate(doc); err != nil {
		t.Errorf("%v\n%s", err, one)
	}
	for _, want := range []string{`"pkg:golang/github.com/CycloneDX/cyclonedx-go@v`, `"name": "go.sum"`, `"value": "h1:`, `"name": "std"`, `"alg": "SHA-256"`} {
		if !strings.Contains(string(one), want) {
			t.Errorf("no %s in\n%s", want, one)
		}
	}
	if _, err := billOf("/dev/null"); err == nil {
		t.Error("a bill of nothing")
	}
}
