package main

import (
	"fmt"
	"reflect"
	"strings"

	"example.com/intake-bot/internal/shop"
)

const opening = `# The shop file

Every setting of a shop's file, made from the program's own code: do not edit this page. The
[example](../deploy/shop.example.yaml) shows each of them in its place; ` + "`intake-bot shop check FILE`" + `
tells every mistake with its line, its column and what would be right. Editors that read JSON Schema
complete and check the file with [deploy/shop.schema.json](../deploy/shop.schema.json)
(` + "`intake-bot shop schema`" + ` prints it).

Settings are required only where it says so. A setting that is left out has its default; one without a
default is then simply not there.

`

// pageText is the reference page.
func pageText() (string, error) {
	w, err := readWords()
	if err != nil {
		return "", err
	}
	p := page{words: w}
	p.WriteString(opening + formsTable())
	p.section("", reflect.TypeFor[shop.File](), reflect.ValueOf(shop.Defaults()).Elem())
	return strings.TrimRight(p.String(), "\n") + "\n", nil
}

// formsTable says how each kind of value is written.
func formsTable() string {
	var b strings.Builder
	b.WriteString("## How values are written\n\n| value | like |\n| --- | --- |\n")
	for _, t := range []reflect.Type{reflect.TypeFor[shop.Inches](), reflect.TypeFor[shop.Outline](), reflect.TypeFor[shop.Money](), reflect.TypeFor[shop.Percent](),
		reflect.TypeFor[shop.Span](), reflect.TypeFor[shop.Day](), reflect.TypeFor[shop.Date](), reflect.TypeFor[shop.Phone](), reflect.TypeFor[shop.State](), reflect.TypeFor[shop.ZIP](), reflect.TypeFor[shop.Zone]()} {
		form := shop.Forms()[t]
		fmt.Fprintf(&b, "| %s | `%s` |\n", form.Words, strings.Join(form.Examples, "`, `"))
	}
	fmt.Fprintf(&b, "\nHolidays that can be named: %s.\n\n", strings.Join(shop.HolidayNames(), ", "))
	return b.String()
}

type page struct {
	strings.Builder
	words words
}

// below is a setting with settings of its own, which get a section after.
type below struct {
	path     string
	t        reflect.Type
	defaults reflect.Value
}

// section is one table: the settings of one type, then the sections below it.
func (p *page) section(path string, t reflect.Type, defaults reflect.Value) {
	if path == "" {
		p.WriteString("## The whole file\n\n")
	} else {
		fmt.Fprintf(p, "## %s\n\n", path)
	}
	if about := p.words.of(t, ""); about != "" && path != "" {
		fmt.Fprintf(p, "%s\n\n", sentence(about))
	}
	p.WriteString("| setting | what it is | value | default |\n| --- | --- | --- | --- |\n")
	var more []below
	for i := range t.NumField() {
		f := t.Field(i)
		tag := f.Tag.Get("yaml")
		if tag == "" {
			continue
		}
		value := reflect.Value{}
		if defaults.IsValid() {
			value = defaults.Field(i)
		}
		what := sentence(p.words.of(t, f.Name))
		if f.Tag.Get("required") != "" {
			what += " **Required.**"
		}
		inner, many := settingsIn(f.Type)
		in := join(path, tag)
		if inner != nil {
			mark := in
			if many {
				mark += "[]"
				value = reflect.Value{}
			}
			for value.IsValid() && value.Kind() == reflect.Pointer {
				value = value.Elem()
			}
			more = append(more, below{mark, inner, value})
			fmt.Fprintf(p, "| `%s` | %s | %s | |\n", tag, what, kind(f, mark))
			continue
		}
		fmt.Fprintf(p, "| `%s` | %s | %s | %s |\n", tag, what, kind(f, ""), defaultWords(value))
	}
	p.WriteString("\n")
	for _, m := range more {
		p.section(m.path, m.t, m.defaults)
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// settingsIn is the type of the settings that a setting has of its own, and whether it is
// a list of such; nil where it has none.
func settingsIn(t reflect.Type) (inner reflect.Type, many bool) {
	for {
		if _, scalar := shop.Forms()[t]; scalar {
			return nil, many
		}
		switch t.Kind() {
		case reflect.Pointer:
			t = t.Elem()
		case reflect.Slice:
			t, many = t.Elem(), true
		case reflect.Struct:
			return t, many
		default:
			return nil, many
		}
	}
}

// sentence begins with a capital letter and ends with a point.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	text = strings.ToUpper(text[:1]) + text[1:]
	return strings.ReplaceAll(strings.TrimSuffix(text, ".")+".", "|", "\\|")
}

// kind says in a few words what a setting takes.
func kind(f reflect.StructField, settings string) string {
	t, list := f.Type, ""
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice && shop.Forms()[t].Words == "" {
		if t.Kind() == reflect.Slice {
			list = "list of: "
		}
		t = t.Elem()
	}
	switch form, known := shop.Forms()[t]; {
	case known:
		return list + form.Words
	case settings != "" && t == reflect.TypeFor[shop.Holiday]():
		return "list of: a holiday's name, or [dates](#" + anchor(settings) + ")"
	case settings != "":
		return list + "[settings](#" + anchor(settings) + ")"
	case f.Tag.Get("of") != "":
		return list + "`" + strings.Join(shop.Allowed(f.Tag.Get("of")), "`, `") + "`"
	case t.Kind() == reflect.Map:
		return "names with values" + keysOf(f)
	case t.Kind() == reflect.Bool:
		return "`true` or `false`"
	case t.Kind() == reflect.Int, t.Kind() == reflect.Float64:
		return list + number(t, f)
	}
	return list + "text"
}

func keysOf(f reflect.StructField) string {
	if keys := f.Tag.Get("keys"); keys != "" {
		return ": `" + strings.Join(shop.Allowed(keys), "`, `") + "`"
	}
	return ""
}

func number(t reflect.Type, f reflect.StructField) string {
	words := map[bool]string{true: "whole number", false: "number"}[t.Kind() == reflect.Int]
	if least := f.Tag.Get("least"); least != "" {
		words += " from " + least
	}
	if most := f.Tag.Get("most"); most != "" {
		words += " to " + most
	}
	return words
}

// anchor is a heading's address within the page.
func anchor(heading string) string {
	return strings.NewReplacer(".", "", "[", "", "]", "").Replace(strings.ToLower(heading))
}

// defaultWords is a default as it would stand in a file.
func defaultWords(v reflect.Value) string {
	if !v.IsValid() || v.IsZero() {
		return ""
	}
	if words, ok := v.Interface().(fmt.Stringer); ok {
		return "`" + words.String() + "`"
	}
	switch v.Kind() {
	case reflect.Slice:
		var list []string
		for i := range v.Len() {
			list = append(list, strings.Trim(defaultWords(v.Index(i)), "`"))
		}
		return "`[" + strings.Join(list, ", ") + "]`"
	case reflect.Map:
		var list []string
		for _, key := range shop.Allowed("material") {
			if one := v.MapIndex(reflect.ValueOf(key)); one.IsValid() {
				list = append(list, fmt.Sprintf("%s: %v", key, one.Interface()))
			}
		}
		return "`{" + strings.Join(list, ", ") + "}`"
	}
	return fmt.Sprintf("`%v`", v.Interface())
}
