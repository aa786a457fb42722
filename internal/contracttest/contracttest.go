// Package contracttest holds real output of the program against the JSON Schemas of the
// outside contract, docs/schemas. Only tests use it.
package contracttest

import (
	"bytes"
	"fmt"
	"path/filepath"
	"runtime"
	"sync"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

var (
	mu   sync.Mutex
	made = map[string]*jsonschema.Schema{}
)

// Schema compiles one of docs/schemas by its name: common, read, check, job, lead.
func Schema(name string) (*jsonschema.Schema, error) {
	mu.Lock()
	defer mu.Unlock()
	if s, ok := made[name]; ok {
		return s, nil
	}
	_, here, _, _ := runtime.Caller(0)
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	s, err := c.Compile(filepath.Join(filepath.Dir(here), "..", "..", "docs", "schemas", name+".schema.json"))
	if err != nil {
		return nil, fmt.Errorf("schema %s: %w", name, err)
	}
	made[name] = s
	return s, nil
}

// Valid says what in one JSON value is not as a schema has it.
func Valid(name string, raw []byte) error {
	s, err := Schema(name)
	if err != nil {
		return err
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	if err != nil {
		return fmt.Errorf("not JSON: %w", err)
	}
	return s.Validate(value)
}

// Check fails a test where a value, or one of several lines, is not as a schema has it.
func Check(t testing.TB, name string, raw []byte) {
	t.Helper()
	for _, line := range bytes.Split(bytes.TrimSpace(raw), []byte("\n")) {
		if len(line) == 0 {
			continue
		}
		if err := Valid(name, line); err != nil {
			t.Errorf("not as docs/schemas/%s.schema.json has it: %v\n%s", name, err, line)
		}
	}
}
