package shop

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// The YAML library's own decoder ends at the first mistake. An owner wants all of them,
// so the parsed tree is bound to the settings here; the library keeps what is hard: YAML.

// scalar is a setting that is written as one word or number.
type scalar interface {
	// set takes the setting from its text; the error says what would be right.
	set(text string) error
}

// compound is a setting with more than one way to be written.
type compound interface {
	bind(b *binder, path string, node ast.Node)
}

type position struct{ line, column int }

type binder struct {
	mistakes []Mistake
	at       map[string]position // where each setting that is in the file stands
}

func (b *binder) wrong(at position, path, format string, args ...any) {
	b.mistakes = append(b.mistakes, Mistake{Line: at.line, Column: at.column, Setting: path, Text: fmt.Sprintf(format, args...)})
}

// wrongAt reports a mistake of a setting by its path, or by the nearest setting around it.
func (b *binder) wrongAt(path, format string, args ...any) {
	b.wrong(b.place(path), path, format, args...)
}

func (b *binder) place(path string) position {
	for around := path; around != ""; {
		if at, ok := b.at[around]; ok {
			return at
		}
		around = around[:max(strings.LastIndexAny(around, ".["), 0)]
	}
	return position{1, 1}
}

func (b *binder) has(path string) bool {
	_, ok := b.at[path]
	return ok
}

func positionOf(node ast.Node) position {
	tk := node.GetToken()
	switch n := node.(type) {
	case *ast.MappingNode:
		if !n.IsFlowStyle && len(n.Values) > 0 {
			tk = n.Values[0].Key.GetToken()
		}
	case *ast.MappingValueNode:
		tk = n.Key.GetToken()
	case *ast.LiteralNode:
		tk = n.Start
	}
	return positionOfToken(tk)
}

func positionOfToken(tk *token.Token) position {
	if tk == nil || tk.Position == nil {
		return position{1, 1}
	}
	return position{tk.Position.Line, tk.Position.Column}
}

// value binds one node. A null leaves the default.
func (b *binder) value(path string, node ast.Node, into reflect.Value, tag reflect.StructTag) {
	if node == nil || node.Type() == ast.NullType {
		return
	}
	b.at[path] = positionOf(node)
	switch node.Type() {
	case ast.AnchorType, ast.AliasType, ast.TagType, ast.MergeKeyType:
		b.wrongAt(path, "anchors, aliases and tags are not used in a shop file: write the value itself")
		return
	}
	switch into := into.Addr().Interface().(type) {
	case compound:
		into.bind(b, path, node)
		return
	case scalar:
		b.scalar(path, node, into)
		return
	}
	switch into.Kind() {
	case reflect.Struct:
		b.structure(path, node, into)
	case reflect.Pointer:
		into.Set(reflect.New(into.Type().Elem()))
		b.value(path, node, into.Elem(), tag)
	case reflect.Slice:
		b.list(path, node, into, tag)
	case reflect.Map:
		b.dictionary(path, node, into, tag)
	default:
		b.plain(path, node, into, tag)
	}
}

func (b *binder) scalar(path string, node ast.Node, into scalar) {
	text, ok := textOf(node)
	if !ok {
		b.wrongAt(path, "one value is wanted here, not %s", kindOf(node))
		return
	}
	if err := into.set(text); err != nil {
		b.wrongAt(path, "%s", err)
	}
}

// textOf is a scalar as it is written, without its quotes.
func textOf(node ast.Node) (string, bool) {
	switch n := node.(type) {
	case *ast.StringNode:
		return n.Value, true
	case *ast.LiteralNode:
		return n.Value.Value, true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return n.GetToken().Value, true
	}
	return "", false
}

func kindOf(node ast.Node) string {
	switch node.(type) {
	case *ast.MappingNode, *ast.MappingValueNode:
		return "settings of its own"
	case *ast.SequenceNode:
		return "a list"
	}
	return "a single value"
}

func entries(node ast.Node) ([]*ast.MappingValueNode, bool) {
	switch n := node.(type) {
	case *ast.MappingNode:
		return n.Values, true
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{n}, true
	}
	return nil, false
}

// structure binds settings of their own to the fields with their names.
func (b *binder) structure(path string, node ast.Node, into reflect.Value) {
	list, ok := entries(node)
	if !ok {
		b.wrongAt(path, "settings are wanted here (%s), not %s", strings.Join(names(into.Type()), ", "), kindOf(node))
		return
	}
	for _, entry := range list {
		name, _ := textOf(entry.Key)
		field, ok := fieldNamed(into.Type(), name)
		if !ok {
			b.wrong(positionOf(entry.Key), join(path, name), "there is no such setting; here are: %s", strings.Join(names(into.Type()), ", "))
			continue
		}
		b.value(join(path, name), entry.Value, into.FieldByIndex(field.Index), field.Tag)
	}
	for i := range into.NumField() {
		field := into.Type().Field(i)
		name, why := field.Tag.Get("yaml"), field.Tag.Get("required")
		if why != "" && !b.has(join(path, name)) {
			b.wrong(b.place(path), join(path, name), "is missing: %s", why)
		}
	}
}

func fieldNamed(t reflect.Type, name string) (reflect.StructField, bool) {
	for i := range t.NumField() {
		if f := t.Field(i); name != "" && f.Tag.Get("yaml") == name {
			return f, true
		}
	}
	return reflect.StructField{}, false
}

// names are the settings that a struct has.
func names(t reflect.Type) []string {
	var out []string
	for i := range t.NumField() {
		if name := t.Field(i).Tag.Get("yaml"); name != "" {
			out = append(out, name)
		}
	}
	return out
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (b *binder) list(path string, node ast.Node, into reflect.Value, tag reflect.StructTag) {
	seq, ok := node.(*ast.SequenceNode)
	if !ok {
		b.wrongAt(path, "a list is wanted here, like [one, two], not %s", kindOf(node))
		return
	}
	if len(seq.Values) == 0 && tag.Get("some") != "" {
		b.wrongAt(path, "is empty: write at least one, or leave the setting out")
		return
	}
	out := reflect.MakeSlice(into.Type(), len(seq.Values), len(seq.Values))
	for i, item := range seq.Values {
		b.value(path+"["+strconv.Itoa(i+1)+"]", item, out.Index(i), tag)
	}
	into.Set(out)
}

// dictionary binds names to values: names of a topic's allowed values where the tag `keys`
// names one, else such as the owner chooses.
func (b *binder) dictionary(path string, node ast.Node, into reflect.Value, tag reflect.StructTag) {
	list, ok := entries(node)
	if !ok {
		b.wrongAt(path, "names with values are wanted here, like name: value, not %s", kindOf(node))
		return
	}
	out := reflect.MakeMapWithSize(into.Type(), len(list))
	for _, entry := range list {
		name, _ := textOf(entry.Key)
		if topic := tag.Get("keys"); topic != "" && !slices.Contains(allowed(topic), name) {
			b.wrong(positionOf(entry.Key), join(path, name), "is not one of %s", strings.Join(allowed(topic), ", "))
			continue
		}
		value := reflect.New(into.Type().Elem()).Elem()
		b.value(join(path, name), entry.Value, value, "")
		out.SetMapIndex(reflect.ValueOf(name), value)
	}
	into.Set(out)
}
