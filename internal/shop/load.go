package shop

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"reflect"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/parser"
)

// mostBytes bounds a shop file; the largest sensible one is far below.
const mostBytes = 4 << 20

// WordingCheck says what is wrong with an owner's sentence; the error is told with the
// sentence's line.
type WordingCheck func(key, language, text string) error

// Load reads a shop file. Where it has mistakes, the error is a *Mistakes with all of
// them.
func Load(path string, wording ...WordingCheck) (*File, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("read the shop file: %w", err)
	}
	f, err := Parse(b, wording...)
	var m *Mistakes
	if errors.As(err, &m) {
		m.Path = path
	}
	return f, err
}

// Parse reads the text of a shop file, as Load does.
func Parse(text []byte, wording ...WordingCheck) (*File, error) {
	if len(text) > mostBytes {
		return nil, &Mistakes{List: []Mistake{{1, 1, "", fmt.Sprintf("the file has over %d bytes: is it a shop file?", mostBytes)}}}
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff")) // some editors put it before
	tree, err := parser.ParseBytes(text, 0)
	if err != nil {
		return nil, &Mistakes{List: []Mistake{syntaxMistake(err)}}
	}
	f := defaults()
	b := &binder{at: map[string]position{}}
	f.at = b.at
	switch {
	case len(tree.Docs) > 1:
		b.wrong(positionOf(tree.Docs[1].Body), "", "a second document begins here: keep one in the file")
	case len(tree.Docs) == 0 || tree.Docs[0].Body == nil:
		b.wrong(position{1, 1}, "", "the file is empty: deploy/shop.example.yaml shows every setting")
	default:
		b.structure("", tree.Docs[0].Body, reflect.ValueOf(f).Elem())
		f.check(b)
		for _, check := range wording {
			f.checkWording(b, check)
		}
	}
	if len(b.mistakes) > 0 {
		m := &Mistakes{List: b.mistakes}
		m.sort()
		return nil, m
	}
	return f, nil
}

func syntaxMistake(err error) Mistake {
	var at yaml.Error
	if errors.As(err, &at) {
		p := positionOfToken(at.GetToken())
		return Mistake{p.line, p.column, "", "not YAML: " + at.GetMessage()}
	}
	return Mistake{1, 1, "", "not YAML: " + err.Error()}
}
