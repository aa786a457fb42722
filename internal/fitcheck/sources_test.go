package fitcheck

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Every source that a finding can name stands in docs/sources.md, which says how it was
// seen; and what stands there under "What findings name" is still named by some finding.
func TestSourcesAreInTheDocs(t *testing.T) {
	text, err := os.ReadFile("../../docs/sources.md")
	if err != nil {
		t.Fatal(err)
	}
	named := sourcesInCode(t)
	if len(named) < 20 {
		t.Fatalf("only %d sources found in the code", len(named))
	}
	for s := range named {
		if !strings.Contains(string(text), "| `"+s+"` |") {
			t.Errorf("docs/sources.md lacks the row of %q", s)
		}
	}
	for _, line := range strings.Split(string(text), "\n") {
		if s, ok := strings.CutPrefix(line, "| `"); ok {
			if s, _, _ = strings.Cut(s, "` |"); !named[s] {
				t.Errorf("docs/sources.md has a row of %q, which no finding names", s)
			}
		}
	}
}

// sourcesInCode are the texts that the package's files give to a Source, or to a constant
// that is named like one.
func sourcesInCode(t *testing.T) map[string]bool {
	t.Helper()
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			for _, s := range sourcesOf(n) {
				named[s] = true
			}
			return true
		})
	}
	return named
}

func sourcesOf(n ast.Node) []string {
	switch n := n.(type) {
	case *ast.KeyValueExpr:
		if id, ok := n.Key.(*ast.Ident); ok && id.Name == "Source" {
			return literals(n.Value)
		}
	case *ast.AssignStmt:
		if sel, ok := n.Lhs[0].(*ast.SelectorExpr); ok && sel.Sel.Name == "Source" {
			return literals(n.Rhs...)
		}
	case *ast.ValueSpec:
		if strings.HasPrefix(n.Names[0].Name, "source") {
			return literals(n.Values...)
		}
	}
	return nil
}

func literals(es ...ast.Expr) (texts []string) {
	for _, e := range es {
		if lit, ok := e.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if s, err := strconv.Unquote(lit.Value); err == nil {
				texts = append(texts, s)
			}
		}
	}
	return texts
}
