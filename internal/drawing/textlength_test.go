package drawing

import (
	"bytes"
	"math"
	"testing"

	"github.com/tdewolff/canvas"

	"example.com/intake-bot/internal/fitcheck"
)

// Letters are laid out by our own widths and set by the library: the two must agree.
func TestWidthsAreTheLibrarys(t *testing.T) {
	fonts, err := typeset()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{`25 1/2" × 49 1/2"`, "AVATAR Tools, fi ffl", "¿Tablaroca sobre la madera? Dígalo.", "≈ Ø □ … “a”"} {
		for _, bold := range []bool{false, true} {
			style := canvas.FontRegular
			if bold {
				style = canvas.FontBold
			}
			face := fonts.Face(10*pointsPerUnit, canvas.Black, style, canvas.FontNormal)
			if got, want := measure(s, look{size: 10, bold: bold}), face.TextWidth(s); math.Abs(got-want) > 0.05 {
				t.Errorf("%q, bold %v: %v wide, the library has %v", s, bold, got, want)
			}
		}
	}
}

// Every text of an SVG says how wide it is, so that another font can't spill it.
func TestTextsOfSVGHaveTheirWidth(t *testing.T) {
	unit := everything()
	for name, draw := range map[string]func() (Drawing, error){
		"how to":   func() (Drawing, error) { return HowTo(fitcheck.TopicFrameInside, "es") },
		"measured": func() (Drawing, error) { return Measured(unit, check(unit), "en") },
		"sheet":    func() (Drawing, error) { return Sheet(crowdedLead(t)) },
	} {
		d, err := draw()
		if err != nil {
			t.Fatal(err)
		}
		svg, err := d.SVG()
		if err != nil {
			t.Fatal(err)
		}
		parts, told := bytes.Count(svg, []byte("<tspan ")), bytes.Count(svg, []byte("textLength="))
		if parts == 0 || parts != told {
			t.Errorf("%s: %d texts, %d widths", name, parts, told)
		}
	}
}
