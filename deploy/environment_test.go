package deploy_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// What the environment example explains is what the program reads, both ways.
func TestEnvironmentExampleNamesWhatIsRead(t *testing.T) {
	read := variablesRead(t)
	if len(read) < 20 {
		t.Fatalf("only %d variables were found in the code: %v", len(read), read)
	}
	explained := variablesExplained(t)
	for _, name := range read {
		if !slices.Contains(explained, name) {
			t.Errorf("%s is read by the program, but environment.example does not explain it", name)
		}
	}
	for _, name := range explained {
		if !slices.Contains(read, name) {
			t.Errorf("%s is in environment.example, but the program does not read it", name)
		}
	}
}

// Each variable has words of explanation above it, and values that parse as both systemd
// and compose take them.
func TestEnvironmentExampleIsPlain(t *testing.T) {
	assignment := regexp.MustCompile(`^(# )?[A-Z][A-Z0-9_]*=(.*)$`)
	words := 0
	for i, line := range strings.Split(text(t, "environment.example"), "\n") {
		m := assignment.FindStringSubmatch(line)
		switch {
		case m != nil && words == 0:
			t.Errorf("line %d: nothing above explains %q", i+1, line)
		case m != nil && (m[2] == "" || strings.ContainsAny(m[2], "\"'`$\\#") || strings.TrimSpace(m[2]) != m[2]):
			t.Errorf("line %d: the value in %q needs quoting, or is empty", i+1, line)
		case m == nil && strings.HasPrefix(line, "# "):
			words += len(strings.Fields(line)) - 1
		case m == nil && line == "":
			words = 0
		case m == nil && line != "#":
			t.Errorf("line %d is neither a comment nor NAME=value: %q", i+1, line)
		}
	}
}

func variablesExplained(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, m := range regexp.MustCompile(`(?m)^(?:# )?([A-Z][A-Z0-9_]*)=`).FindAllStringSubmatch(text(t, "environment.example"), -1) {
		out = append(out, m[1])
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// variablesRead finds the names in calls such as get("NAME") in the program's settings;
// those of a server are put together from a beginning and an end.
func variablesRead(t *testing.T) []string {
	t.Helper()
	var names, beginnings, ends []string
	for _, file := range parseProgram(t) {
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) == 0 {
				return true
			}
			called := calledName(call)
			switch arg := call.Args[0].(type) {
			case *ast.BasicLit:
				if name := literal(arg); called == "server" {
					beginnings = append(beginnings, name)
				} else if slices.Contains([]string{"get", "secret", "yes"}, called) {
					names = append(names, name)
				}
			case *ast.BinaryExpr:
				if end, ok := arg.Y.(*ast.BasicLit); ok && called == "get" {
					ends = append(ends, literal(end))
				}
			}
			return true
		})
	}
	for _, b := range beginnings {
		for _, e := range ends {
			names = append(names, b+e)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

func parseProgram(t *testing.T) []*ast.File {
	t.Helper()
	const folder = "../cmd/intake-bot"
	paths, err := fs.Glob(os.DirFS(folder), "*.go")
	if err != nil {
		t.Fatal(err)
	}
	var files []*ast.File
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), folder+"/"+path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	return files
}

func calledName(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

func literal(l *ast.BasicLit) string {
	name, err := strconv.Unquote(l.Value)
	if err != nil || !regexp.MustCompile(`^[A-Z_][A-Z0-9_]*$`).MatchString(name) {
		return ""
	}
	return name
}

// text is a file of this folder.
func text(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}
