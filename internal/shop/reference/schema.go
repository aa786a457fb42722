package main

import (
	"encoding/json"
	"fmt"
	"reflect"

	"github.com/invopop/jsonschema"

	"example.com/intake-bot/internal/shop"
)

// schemaText is the JSON Schema of shop files.
func schemaText() (string, error) {
	w, err := readWords()
	if err != nil {
		return "", err
	}
	r := jsonschema.Reflector{FieldNameTag: "yaml", DoNotReference: true, Anonymous: true, RequiredFromJSONSchemaTags: true,
		LookupComment: func(t reflect.Type, field string) string {
			if t.Kind() != reflect.Struct {
				return ""
			}
			return w.of(t, field)
		}, Mapper: mapped}
	s := r.Reflect(&shop.File{})
	s.Title = "Shop file of intake-bot"
	finish(reflect.TypeFor[shop.File](), s)
	b, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return "", fmt.Errorf("write the schema: %w", err)
	}
	return string(b) + "\n", nil
}

// mapped is the schema of a type that is written as one word or number; nil for others.
func mapped(t reflect.Type) *jsonschema.Schema {
	if t == reflect.TypeFor[shop.Holiday]() {
		return holiday()
	}
	form, ok := shop.Forms()[t]
	if !ok {
		return nil
	}
	word := &jsonschema.Schema{Type: "string", Pattern: form.Pattern}
	switch {
	case t == reflect.TypeFor[shop.States]():
		one := mapped(reflect.TypeFor[shop.State]())
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{word, {Type: "array", Items: one, MinItems: count(1)}}}
	case form.Number:
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{word, {Type: "number"}}}
	}
	return word
}

func count(n uint64) *uint64 { return &n }

// holiday is a name, or a name with dates.
func holiday() *jsonschema.Schema {
	dated := (&jsonschema.Reflector{FieldNameTag: "yaml", DoNotReference: true, Anonymous: true, RequiredFromJSONSchemaTags: true,
		Mapper: func(t reflect.Type) *jsonschema.Schema {
			if t == reflect.TypeFor[shop.Holiday]() {
				return nil
			}
			return mapped(t)
		}}).ReflectFromType(reflect.TypeFor[shop.Holiday]())
	dated.Version = ""
	finish(reflect.TypeFor[shop.Holiday](), dated)
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string", Examples: anys(shop.HolidayNames())}, dated}}
}

func anys(list []string) []any {
	out := make([]any, len(list))
	for i, v := range list {
		out[i] = v
	}
	return out
}

// finish adds what the tags of the settings say and the library does not read: what is
// required, allowed values and bounds.
func finish(t reflect.Type, s *jsonschema.Schema) {
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("yaml")
		if tag == "" {
			continue
		}
		property, ok := s.Properties.Get(tag)
		if !ok {
			continue
		}
		if f.Tag.Get("required") != "" {
			s.Required = append(s.Required, tag)
		}
		bounds(f, property)
		inner, at := f.Type, property
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice && at.Items != nil {
			if inner.Kind() == reflect.Slice {
				at = at.Items
			}
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Struct && at.Properties != nil {
			finish(inner, at)
		}
	}
}

func bounds(f reflect.StructField, s *jsonschema.Schema) {
	if keys := f.Tag.Get("keys"); keys != "" {
		s.PropertyNames = &jsonschema.Schema{Enum: anys(shop.Allowed(keys))}
	}
	if s.Items != nil {
		s = s.Items
	}
	if topic := f.Tag.Get("of"); topic != "" {
		s.Enum = anys(shop.Allowed(topic))
	}
	s.Minimum, s.Maximum = json.Number(f.Tag.Get("least")), json.Number(f.Tag.Get("most"))
}
