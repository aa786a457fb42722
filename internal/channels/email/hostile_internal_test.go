package email

import (
	"strings"
	"testing"
)

// hostile texts made slow readers of earlier forms of this code; size is in percent.
func hostile(size int) map[string]string {
	return map[string]string{
		"deep-divs":    strings.Repeat("<div>", 500*size/100) + strings.Repeat("<b>x</b>\n", 20000*size/100),
		"deep-quotes":  strings.Repeat("<blockquote>", 400*size/100) + strings.Repeat("<p>x</p>", 10000*size/100),
		"deep-lists":   strings.Repeat("<ul><li>", 200*size/100) + strings.Repeat("<p>x</p>", 10000*size/100),
		"open-bold":    strings.Repeat("<b><p>", 50000*size/100),
		"originals":    strings.Repeat("<div class=yahoo_quoted>", 300*size/100) + strings.Repeat("<p>x</p>", 20000*size/100),
		"links":        strings.Repeat("<http://", 60000*size/100),
		"pictures":     strings.Repeat("[image:", 60000*size/100),
		"closings":     strings.Repeat("Thanks,\n", 60000*size/100),
		"announcement": strings.Repeat("On 2026 x@y\n", 40000*size/100),
		"marks":        strings.Repeat("> ", 250000*size/100),
		"legal":        strings.Repeat("disclaimer\n\n", 40000*size/100),
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
