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

// environmentFile has the settings of a file of lines NAME=value, as systemd and
// containers read it: comments begin with #, and quotes around a value are not part of it.
func environmentFile(path string) (environment, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return environment{}, fmt.Errorf("environment file: %w", err)
	}
	vars := map[string]string{}
	for i, line := range strings.Split(string(b), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") || strings.HasPrefix(line, ";") {
			continue
		}
		name, value, ok := strings.Cut(line, "=")
		if !ok || strings.TrimSpace(name) != name {
			return environment{}, fmt.Errorf("environment file: line %d is not NAME=value", i+1) // not quoted: it may be a secret
		}
		for _, quote := range []string{`"`, `'`} {
			if len(value) > 1 && strings.HasPrefix(value, quote) && strings.HasSuffix(value, quote) {
				value = value[1 : len(value)-1]
			}
		}
		vars[name] = value
	}
	return environment{func(name string) (string, bool) { v, ok := vars[name]; return v, ok }, os.ReadFile}, nil
}
