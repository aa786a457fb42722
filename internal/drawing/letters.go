package drawing

import (
	"fmt"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// letterWidths are the advances of a font's letters in ems; a letter that is not there
// has no picture.
type letterWidths map[rune]float64

// lastLetter bounds the search: the Go fonts hold nothing beyond the basic plane.
const lastLetter = 0xFFFF

// widths reads the two fonts once; the tables never change after.
var widths = sync.OnceValues(func() (w [2]letterWidths, err error) {
	for i, ttf := range [...][]byte{goregular.TTF, gobold.TTF} {
		if w[i], err = readWidths(ttf); err != nil {
			return w, fmt.Errorf("reading the fonts: %w", err)
		}
	}
	return w, nil
})

func readWidths(ttf []byte) (letterWidths, error) {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, err
	}
	var buf sfnt.Buffer
	em := fixed.I(int(f.UnitsPerEm()))
	w := make(letterWidths, 700)
	for r := rune(' '); r <= lastLetter; r++ {
		g, err := f.GlyphIndex(&buf, r)
		if err != nil || g == 0 {
			continue
		}
		a, err := f.GlyphAdvance(&buf, g, em, font.HintingNone)
		if err != nil {
			return nil, err
		}
		w[r] = float64(a) / float64(em)
	}
	return w, nil
}

// measure is the width of a line of text. Letters that the font lacks count as an em.
func measure(s string, l look) float64 {
	w := fontOf(l.bold)
	sum := 0.0
	for _, r := range s {
		if a, ok := w[r]; ok {
			sum += a
		} else {
			sum++
		}
	}
	return sum * l.size
}

// fontOf is empty where the fonts can't be read: rendering then reports it.
func fontOf(bold bool) letterWidths {
	w, _ := widths()
	if bold {
		return w[1]
	}
	return w[0]
}
