// Package wording holds every sentence that a customer can get, per language, with
// the owner's own sentences in place of ours where the shop file has them.
package wording

import (
	"embed"
	"fmt"
	"regexp"
	"sort"
	"strings"
	"sync"

	"github.com/goccy/go-yaml"
)

//go:embed en.yaml es.yaml
var files embed.FS

// Languages that the talk is held in, the default first.
var Languages = []string{"en", "es"}

// Book is the sentences of one language: key to variants, the first for the first
// time that something is said.
type Book struct {
	language string
	lines    map[string][]string
}

// loadAll reads the embedded files once; they are checked by the tests, so an error
// here is a broken build.
var loadAll = sync.OnceValues(func() (map[string]*Book, error) {
	books := map[string]*Book{}
	for _, language := range Languages {
		b, err := load(language)
		if err != nil {
			return nil, err
		}
		books[language] = b
	}
	return books, nil
})

func load(language string) (*Book, error) {
	raw, err := files.ReadFile(language + ".yaml")
	if err != nil {
		return nil, fmt.Errorf("read wording %s: %w", language, err)
	}
	var entries map[string]any
	if err := yaml.Unmarshal(raw, &entries); err != nil {
		return nil, fmt.Errorf("parse wording %s: %w", language, err)
	}
	b := &Book{language: language, lines: make(map[string][]string, len(entries))}
	for key, v := range entries {
		switch v := v.(type) {
		case string:
			b.lines[key] = []string{v}
		case []any:
			for _, line := range v {
				b.lines[key] = append(b.lines[key], fmt.Sprint(line))
			}
		default:
			return nil, fmt.Errorf("wording %s: %s is neither a sentence nor a list of them", language, key)
		}
	}
	return b, nil
}

// For is the book of a language, English where the language has none, with the
// owner's sentences (key to language to sentence) in place of ours.
func For(language string, overrides map[string]map[string]string) (*Book, error) {
	books, err := loadAll()
	if err != nil {
		return nil, err
	}
	b, ok := books[language]
	if !ok {
		b = books[Languages[0]]
	}
	if len(overrides) == 0 {
		return b, nil
	}
	own := &Book{language: b.language, lines: make(map[string][]string, len(b.lines))}
	for key, lines := range b.lines {
		own.lines[key] = lines
		if line := overrides[key][b.language]; line != "" {
			own.lines[key] = append([]string{line}, lines[1:]...)
		}
	}
	return own, nil
}

// Language is the book's own.
func (b *Book) Language() string { return b.language }

// Has says whether there is a sentence of that key.
func (b *Book) Has(key string) bool { return len(b.lines[key]) > 0 }

// Variants is how many sentences a key has.
func (b *Book) Variants(key string) int { return len(b.lines[key]) }

// Keys lists all keys, sorted.
func (b *Book) Keys() []string {
	keys := make([]string, 0, len(b.lines))
	for k := range b.lines {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// Args fills the {places} of a sentence.
type Args map[string]string

// Say is the nth variant of a sentence (from 0, going round), filled in. A key that
// does not exist gives its own name, so that nothing is silently left out.
func (b *Book) Say(key string, nth int, args Args) string {
	lines := b.lines[key]
	if len(lines) == 0 {
		return key
	}
	return fill(lines[nth%len(lines)], args)
}

var placeholder = regexp.MustCompile(`\{[a-z_]+\}`)

func fill(line string, args Args) string {
	if !strings.Contains(line, "{") {
		return line
	}
	return placeholder.ReplaceAllStringFunc(line, func(p string) string {
		if v, ok := args[p[1:len(p)-1]]; ok {
			return v
		}
		return p
	})
}

// Placeholders lists the {places} that the sentences of a key use, sorted.
func (b *Book) Placeholders(key string) []string {
	seen := map[string]bool{}
	for _, line := range b.lines[key] {
		for _, p := range placeholder.FindAllString(line, -1) {
			seen[p[1:len(p)-1]] = true
		}
	}
	names := make([]string, 0, len(seen))
	for n := range seen {
		names = append(names, n)
	}
	sort.Strings(names)
	return names
}

// CheckOverride says what is wrong with an owner's sentence: an unknown key or
// language, or a {place} that ours does not have. It is nil for a good one.
func CheckOverride(key, language, line string) error {
	books, err := loadAll()
	if err != nil {
		return err
	}
	b, ok := books[language]
	if !ok {
		return fmt.Errorf("wording has no language %q; there are %s", language, strings.Join(Languages, ", "))
	}
	if !b.Has(key) {
		return fmt.Errorf("there is no sentence %q", key)
	}
	if strings.TrimSpace(line) == "" {
		return fmt.Errorf("sentence %s is empty", key)
	}
	known := b.Placeholders(key)
	for _, p := range placeholder.FindAllString(line, -1) {
		if name := p[1 : len(p)-1]; !contains(known, name) {
			return fmt.Errorf("sentence %s can't use %s; it may use %s", key, p, braces(known))
		}
	}
	return nil
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

func braces(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return "{" + strings.Join(names, "}, {") + "}"
}
