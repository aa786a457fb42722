package wording

import (
	"regexp"
	"slices"
	"strings"
	"testing"
)

// longest are the longest values that each place in a sentence is likely to get.
var longest = Args{
	"shop": "Pinwheel Dome & Skylight Supply", "assistant": "the shop's automatic assistant",
	"opens": "Wednesday at 8:30 AM AKST", "name": " Maximiliano", "place": "San Buenaventura, CA 93001",
	"said": "31 13/16 x 119 15/16", "label": "outside of the metal frame", "a": "31 13/16", "b": "35 13/16",
	"sizes": "31 13/16 x 119 15/16 in, outside of the metal frame", "what": "31 13/16 x 119 15/16 in",
	"found": "13 13/16", "expected": "13 13/16", "wall": "2 13/16",
	"outside": "31 13/16 x 119 15/16 in", "inside": "31 13/16 x 119 15/16 in", "plastic": "31 13/16 x 119 15/16 in",
	"frame": "31 13/16 x 119 15/16 in", "diagonals": "131 13/16 and 119 15/16 in",
	"low": "12345", "high": "15432", "phone": "(218) 555-0142", "email": ", help@pinwheel.example",
	"result": "the exact price", "next": "The shop opens Wednesday at 8:30 AM AKST; a person then looks at it and gets back to you with the exact price.",
	"ref": "R7KQ4", "question": "What does the raised box measure over the outside, flashing included, at the top? Width x length, like 25 1/2 x 49 1/2. The new frame caps over it.",
	"color": "polycarbonate white", "size": "31 13/16 x 119 15/16 in", "options": "outside of the box, inside of the box, plastic edge to edge or opening of the metal frame", "n": "12", "sold": "bronze anodized, bronze powder coat", "unit": "Skylight 12: ", "time": "8:30 AM AKST", "day": "Wednesday", "text": "The two sizes don't go together.",
	"summary": "Here is what I have: Maximiliano Featherstone, San Buenaventura, CA 93001, house. Plastic dome only, 2 layers, polycarbonate, white over clear; plastic edge to edge 31 13/16 x 119 15/16 in; opening of the metal frame 28 13/16 x 117 15/16 in.",
}

func book(t *testing.T, language string) *Book {
	t.Helper()
	b, err := For(language, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestSameKeys: every sentence exists in every language, with the same places to fill.
func TestSameKeys(t *testing.T) {
	en := book(t, "en")
	for _, language := range Languages[1:] {
		b := book(t, language)
		if got, want := b.Keys(), en.Keys(); !slices.Equal(got, want) {
			t.Fatalf("%s has other sentences: only there %v, only in English %v", language, minus(got, want), minus(want, got))
		}
		for _, key := range en.Keys() {
			if extra := minus(b.Placeholders(key), en.Placeholders(key)); len(extra) > 0 {
				t.Errorf("%s %s uses %v, which English does not fill", language, key, extra)
			}
			if strings.HasPrefix(key, "ask.") && b.Variants(key) < 2 {
				t.Errorf("%s %s has one wording only: asking again would repeat it", language, key)
			}
		}
	}
}

func minus(a, b []string) []string {
	var out []string
	for _, s := range a {
		if !slices.Contains(b, s) {
			out = append(out, s)
		}
	}
	return out
}

// TestSentencesFilled: with all values in place, nothing is left unfilled and each
// sentence fits two segments of 153 GSM characters (3GPP TS 23.038, TS 23.040); a
// summary may take one more.
func TestSentencesFilled(t *testing.T) {
	for _, language := range Languages {
		b := book(t, language)
		for _, key := range b.Keys() {
			limit := 306
			if key == "ask.confirm" || strings.HasPrefix(key, "nudge") {
				limit = 459
			}
			for nth := range b.Variants(key) {
				line := b.Say(key, nth, longest)
				if strings.ContainsAny(line, "{}") {
					t.Errorf("%s %s is left unfilled: %s", language, key, line)
				}
				if n := len([]rune(line)); n > limit {
					t.Errorf("%s %s has %d characters: %s", language, key, n, line)
				}
			}
		}
	}
}

// gsm is the basic table of 3GPP TS 23.038 section 6.2.1 without control characters,
// from memory.
const gsm = "@£$¥èéùìòÇØøÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà\n"

// TestEnglishAlphabet: English sentences need nothing beyond the GSM alphabet, so that a
// segment holds 160 characters and not 70.
func TestEnglishAlphabet(t *testing.T) {
	b := book(t, "en")
	for _, key := range b.Keys() {
		for nth := range b.Variants(key) {
			for _, r := range b.Say(key, nth, longest) {
				if !strings.ContainsRune(gsm, r) {
					t.Errorf("%s has %q", key, r)
				}
			}
		}
	}
}

var forbidden = regexp.MustCompile(`(?i)\b(climb|get up on|go up|meets? code|up to code|code[- ]compliant|guarantee\w*|hail ?proof|suba al techo|cumple)\b`)

// TestNeverSaid: nobody is told to climb, and nothing is said to meet a code.
func TestNeverSaid(t *testing.T) {
	for _, language := range Languages {
		b := book(t, language)
		for _, key := range b.Keys() {
			for nth := range b.Variants(key) {
				if m := forbidden.FindString(b.Say(key, nth, longest)); m != "" {
					t.Errorf("%s %s says %q", language, key, m)
				}
			}
		}
	}
}

// TestReadable: English sentences read at US grade 7 or below on the Flesch-Kincaid
// grade level (Kincaid et al. 1975, formula from memory: 0.39 words per sentence + 11.8
// syllables per word - 15.59), taken over all questions together and each long one.
func TestReadable(t *testing.T) {
	b := book(t, "en")
	var all strings.Builder
	for _, key := range b.Keys() {
		for nth := range b.Variants(key) {
			line := b.Say(key, nth, nil)
			if strings.Contains(line, " ") && strings.ContainsAny(line, ".?!") {
				all.WriteString(line + " ")
			}
			if g := grade(line); len(strings.Fields(line)) >= 25 && g > 9 {
				t.Errorf("%s reads at grade %.1f: %s", key, g, line)
			}
		}
	}
	if g := grade(all.String()); g > 7 {
		t.Errorf("all sentences together read at grade %.1f", g)
	}
}

var (
	sentenceEnd = regexp.MustCompile(`[.?!:;]+(\s|$)`)
	vowels      = regexp.MustCompile(`[aeiouy]+`)
)

func grade(text string) float64 {
	sentences := max(1, len(sentenceEnd.FindAllString(text, -1)))
	words, syllables := 0, 0
	for _, w := range strings.Fields(text) {
		w = strings.ToLower(strings.Trim(w, `.,;:?!"()`))
		if w == "" || strings.ContainsAny(w, "{}0123456789/") {
			continue
		}
		words++
		n := len(vowels.FindAllString(w, -1))
		if strings.HasSuffix(w, "e") && n > 1 {
			n--
		}
		syllables += max(1, n)
	}
	if words == 0 {
		return 0
	}
	return 0.39*float64(words)/float64(sentences) + 11.8*float64(syllables)/float64(words) - 15.59
}

// TestOverrides: an owner's sentence is checked like code.
func TestOverrides(t *testing.T) {
	for _, c := range []struct{ key, language, line, want string }{
		{"ask.name", "en", "Who is this?", ""},
		{"ask.nme", "en", "Who is this?", `there is no sentence "ask.nme"`},
		{"ask.name", "fr", "Qui?", `wording has no language "fr"; there are en, es`},
		{"intro", "en", "Hi from {shpo}", "sentence intro can't use {shpo}; it may use {assistant}, {shop}"},
		{"ask.name", "en", "  ", "sentence ask.name is empty"},
	} {
		got := ""
		if err := CheckOverride(c.key, c.language, c.line); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.key, got, c.want)
		}
	}
	b, err := For("en", map[string]map[string]string{"ask.name": {"en": "Who is this?"}})
	if err != nil {
		t.Fatal(err)
	}
	if got := b.Say("ask.name", 0, nil); got != "Who is this?" {
		t.Errorf("the owner's sentence is not used: %q", got)
	}
	if b.Say("ask.name", 1, nil) == "Who is this?" {
		t.Error("asking again repeats the owner's sentence")
	}
}
