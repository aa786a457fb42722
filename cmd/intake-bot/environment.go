package main

import (
	"fmt"
	"os"
	"strings"
)

// environment gives settings by name. Secrets never come as flags: any user of the
// machine can see those.
type environment struct {
	lookup func(name string) (string, bool)
	read   func(path string) ([]byte, error)
}

func osEnvironment() environment { return environment{os.LookupEnv, os.ReadFile} }

// secret is the value of a variable, or what is in the file that NAME_FILE names.
func (e environment) secret(name string) (string, error) {
	value, ok := e.lookup(name)
	path, fromFile := e.lookup(name + "_FILE")
	switch {
	case ok && value != "" && fromFile && path != "":
		return "", fmt.Errorf("%s and %s_FILE are both set: keep one", name, name)
	case !fromFile || path == "":
		return strings.TrimSpace(value), nil
	}
	b, err := e.read(path)
	if err != nil {
		return "", fmt.Errorf("%s_FILE: %w", name, err)
	}
	return strings.TrimSpace(string(b)), nil
}
