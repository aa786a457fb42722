package email

import (
	"strings"
	"testing"
)

// hostile texts made slow readers of earlier forms of this code.
func hostile() map[string]string {
	return map[string]string{
		"deep-divs":    strings.Repeat("<div>", 500) + strings.Repeat("<b>x</b>\n", 20000),
		"deep-quotes":  strings.Repeat("<blockquote>", 400) + strings.Repeat("<p>x</p>", 10000),
		"deep-lists":   strings.Repeat("<ul><li>", 200) + strings.Repeat("<p>x</p>", 10000),
		"open-bold":    strings.Repeat("<b><p>", 50000),
		"originals":    strings.Repeat("<div class=yahoo_quoted>", 300) + strings.Repeat("<p>x</p>", 20000),
		"links":        strings.Repeat("<http://", 60000),
		"pictures":     strings.Repeat("[image:", 60000),
		"closings":     strings.Repeat("Thanks,\n", 60000),
		"announcement": strings.Repeat("On 2026 x@y\n", 40000),
		"marks":        strings.Repeat("> ", 250000),
		"legal":        strings.Repeat("disclaimer\n\n", 40000),
	}
}

// What comes out is never much larger than what went in.
func TestHostileTextStaysSmall(t *testing.T) {
	for name, text := range hostile() {
		if out := htmlText(text); len(out) > 16*len(text) {
			t.Errorf("%s: %d bytes of %d", name, len(out), len(text))
		}
	}
}

func BenchmarkHostile(b *testing.B) {
	for name, text := range hostile() {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				if strings.HasPrefix(text, "<d") || strings.HasPrefix(text, "<b") || strings.HasPrefix(text, "<u") {
					strip(htmlText(text), "Dana Fields")
					continue
				}
				strip(text, "Dana Fields")
			}
		})
	}
}
