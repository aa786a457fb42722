package shop

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"

	"example.com/intake-bot/internal/fitcheck"
)

// plain binds a text, a number, or a yes or no. A field's tag may bound it: `of` names
// the topic whose allowed values it takes, `least` and `most` bound a number.
func (b *binder) plain(path string, node ast.Node, into reflect.Value, tag reflect.StructTag) {
	text, ok := textOf(node)
	if !ok {
		b.wrongAt(path, "one value is wanted here, not %s", kindOf(node))
		return
	}
	switch into.Kind() {
	case reflect.Bool:
		if node.Type() != ast.BoolType {
			b.wrongAt(path, "%q is neither true nor false: write one of them", text)
			return
		}
		into.SetBool(strings.EqualFold(text, "true"))
	case reflect.Int:
		b.whole(path, text, into, tag)
	case reflect.Float64:
		b.decimal(path, text, into, tag)
	default:
		b.text(path, node, text, into, tag)
	}
}

func (b *binder) whole(path, text string, into reflect.Value, tag reflect.StructTag) {
	n, err := strconv.Atoi(text)
	if err != nil {
		b.wrongAt(path, "%q is not a whole number: write one like %s", text, orElse(tag.Get("least"), "3"))
		return
	}
	if b.bounded(path, float64(n), tag) {
		into.SetInt(int64(n))
	}
}

func (b *binder) decimal(path, text string, into reflect.Value, tag reflect.StructTag) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || v != v {
		b.wrongAt(path, "%q is not a number: write one like 1.5", text)
		return
	}
	if b.bounded(path, v, tag) {
		into.SetFloat(v)
	}
}

func (b *binder) bounded(path string, v float64, tag reflect.StructTag) bool {
	if least, err := strconv.ParseFloat(tag.Get("least"), 64); err == nil && v < least {
		b.wrongAt(path, "%v is too little: write %v or more", v, least)
		return false
	}
	if most, err := strconv.ParseFloat(tag.Get("most"), 64); err == nil && v > most {
		b.wrongAt(path, "%v is too much: write %v or less", v, most)
		return false
	}
	return true
}

func (b *binder) text(path string, node ast.Node, text string, into reflect.Value, tag reflect.StructTag) {
	text = strings.TrimSpace(text)
	switch topic := tag.Get("of"); {
	case node.Type() == ast.BoolType:
		b.wrongAt(path, "a text is wanted here: put %q in quotes if it is meant as one", text)
	case text == "":
		b.wrongAt(path, "is empty: write it, or leave the setting out")
	case strings.ContainsFunc(text, unseen):
		b.wrongAt(path, "%q holds a character that does not show", text)
	case topic != "" && !slices.Contains(allowed(topic), text):
		b.wrongAt(path, "%q is not one of %s", text, strings.Join(allowed(topic), ", "))
	default:
		into.SetString(text)
	}
}

// unseen says whether a character steers a screen or hides, and has no place in a text that
// customers are sent.
func unseen(r rune) bool {
	switch {
	case r == '\n' || r == '\t':
		return false
	case r == '\u200b', r == '\ufeff', r >= '\u202a' && r <= '\u202e', r >= '\u2066' && r <= '\u2069':
		return true
	}
	return unicode.IsControl(r)
}

// allowed are the values that a setting of a topic can take.
func allowed(topic string) []string {
	switch topic {
	case "color":
		return []string{fitcheck.ColorClear, fitcheck.ColorWhite, fitcheck.ColorBronze, fitcheck.ColorOther}
	case "layers":
		return []string{"1", "2", "3"}
	case "part":
		return []string{string(fitcheck.ReplaceDome), string(fitcheck.ReplaceUnit)}
	}
	return fitcheck.Choices(fitcheck.Topic(topic))
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}
