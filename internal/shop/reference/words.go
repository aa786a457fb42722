package main

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"

	"github.com/invopop/jsonschema"
)

// words are what the code says of its types and fields, in the names of the file.
type words struct{ comments map[string]string }

// thisPackage is where the generator runs; the settings are in the folder above.
const thisPackage = "example.com/intake-bot/internal/shop/reference"

func readWords() (words, error) {
	var r jsonschema.Reflector
	if err := r.AddGoComments(thisPackage, "..", jsonschema.WithFullComment()); err != nil {
		return words{}, fmt.Errorf("read the comments: %w", err)
	}
	return words{r.CommentMap}, nil
}

// of is the comment on a type, or on one of its fields; a field without one shares that
// of the field before it.
func (w words) of(t reflect.Type, field string) string {
	if field == "" {
		return w.plain(t, unnamed(w.comments[name(t)], t.Name()))
	}
	last := ""
	for i := range t.NumField() {
		f := t.Field(i)
		if comment := w.comments[name(t)+"."+f.Name]; comment != "" {
			last = comment
		}
		if f.Name == field {
			break
		}
	}
	return w.plain(t, unnamed(strings.ReplaceAll(last, " Required.", ""), field))
}

// unnamed is a comment without its "Name is" at the beginning.
func unnamed(comment, name string) string {
	for _, verb := range []string{" is ", " are "} {
		if rest, ok := strings.CutPrefix(comment, name+verb); ok {
			return rest
		}
	}
	return comment
}

func name(t reflect.Type) string { return t.PkgPath() + "." + t.Name() }

var goName = regexp.MustCompile(`\b[A-Z][A-Za-z]+\b`)

// plain writes the names of fields as they stand in the file.
func (w words) plain(t reflect.Type, comment string) string {
	names := map[string]string{}
	for i := range t.NumField() {
		if tag := t.Field(i).Tag.Get("yaml"); tag != "" {
			names[t.Field(i).Name] = "`" + tag + "`"
		}
	}
	text := strings.Join(strings.Fields(comment), " ")
	return goName.ReplaceAllStringFunc(text, func(word string) string {
		if tag, ok := names[word]; ok {
			return tag
		}
		return word
	})
}
