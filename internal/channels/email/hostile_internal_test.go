package email

import (
	"strings"
	"testing"
)

// hostile texts made slow readers of earlier forms of this code; of what they repeat within their
// depth there is so much in percent.
func hostile(size int) map[string]string {
	many := func(s string, n int) string { return strings.Repeat(s, n*size/100) }
	return map[string]string{
		"deep-divs":    strings.Repeat("<div>", 500) + many("<b>x</b>\n", 20000),
		"deep-quotes":  strings.Repeat("<blockquote>", 400) + many("<p>x</p>", 10000),
		"deep-lists":   strings.Repeat("<ul><li>", 200) + many("<p>x</p>", 10000),
		"open-bold":    many("<b><p>", 50000),
		"originals":    strings.Repeat("<div class=yahoo_quoted>", 300) + many("<p>x</p>", 20000),
		"links":        many("<http://", 60000),
		"pictures":     many("[image:", 60000),
		"closings":     many("Thanks,\n", 60000),
		"announcement": many("On 2026 x@y\n", 40000),
		"marks":        many("> ", 250000),
		"legal":        many("disclaimer\n\n", 40000),
	}
}

// What comes out is never much larger than what went in.
func TestHostileTextStaysSmall(t *testing.T) {
	for name, text := range hostile(10) {
		if out := htmlText(text); len(out) > 16*len(text) {
			t.Errorf("%s: %d bytes of %d", name, len(out), len(text))
		}
	}
}

func BenchmarkHostile(b *testing.B) {
	for name, text := range hostile(100) {
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
