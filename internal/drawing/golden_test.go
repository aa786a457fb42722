package drawing

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.com/intake-bot/internal/drawing/drawingtest"
	"example.com/intake-bot/internal/fitcheck"
)

var update = flag.Bool("update", false, "write the goldens and the pictures of the docs anew")

func golden(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v (go test -update writes it)", err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s has changed: look at it, then go test -update", path)
	}
}

func drywall() fitcheck.Unit {
	return fitcheck.Unit{CurbOutside: size(48, 48), CurbInside: size(44, 44)}
}

func TestGoldenPictures(t *testing.T) {
	unit := drywall()
	for name, draw := range map[string]func() (Drawing, error){
		"curb_height.en.svg": func() (Drawing, error) { return HowTo(fitcheck.TopicCurbHeight, "en") },
		"drywall.es.svg":     func() (Drawing, error) { return Measured(unit, check(unit), "es") },
	} {
		d, err := draw()
		if err != nil {
			t.Fatal(err)
		}
		svg, err := d.SVG()
		if err != nil {
			t.Fatal(err)
		}
		golden(t, filepath.Join("testdata", name), bytes.ReplaceAll(svg, []byte("><"), []byte(">\n<")))
	}
}

// The sheet's golden is what it says, line by line, and where.
func TestGoldenSheet(t *testing.T) {
	var b strings.Builder
	for i, p := range sheetOf(t, sampleLead(t)).pages {
		for j := range p.marks {
			if m := &p.marks[j]; m.text != "" {
				fmt.Fprintf(&b, "%d %5.1f %5.1f %s\n", i+1, m.x, m.y, m.text)
			}
		}
	}
	golden(t, filepath.Join("testdata", "sheet.txt"), []byte(b.String()))
}

// The pictures of the docs are those that the program makes.
func TestPicturesOfTheDocs(t *testing.T) {
	folder := filepath.Join("..", "..", "docs", "pictures")
	unit := drywall()
	total := 0
	for _, row := range []struct {
		name  string
		width int
		draw  func() (Drawing, error)
	}{
		{"how-to-curb-outside.png", 480, func() (Drawing, error) { return HowTo(fitcheck.TopicCurbOutside, "en") }},
		{"how-to-plastic-size-es.png", 480, func() (Drawing, error) { return HowTo(fitcheck.TopicPlasticSize, "es") }},
		{"measured-drywall.png", 480, func() (Drawing, error) { return Measured(unit, check(unit), "en") }},
		{"lead-sheet.png", 560, func() (Drawing, error) { d := sampleLead(t); d.Photos = nil; return Sheet(d) }},
	} {
		d, err := row.draw()
		if err != nil {
			t.Fatal(err)
		}
		b, err := d.PNG(row.width)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(folder, row.name)
		if *update {
			if err := os.MkdirAll(folder, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, b, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(path)
		if err != nil {
			t.Fatalf("%v (go test -update writes it)", err)
		}
		total += len(kept)
		if !drawingtest.Alike(t, kept, b) {
			t.Errorf("%s has changed: look at it, then go test -update", path)
		}
	}
	if total > 150_000 {
		t.Errorf("the pictures of the docs take %d bytes", total)
	}
}

// One drawing may be rendered by several at once.
func TestSideBySide(t *testing.T) {
	d := sheetOf(t, sampleLead(t))
	want, err := d.SVG()
	if err != nil {
		t.Fatal(err)
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			if got, err := d.SVG(); err != nil || !bytes.Equal(got, want) {
				t.Errorf("another svg: %v", err)
			}
			if _, err := d.PDF(); err != nil {
				t.Error(err)
			}
			if _, err := d.PNG(200); err != nil {
				t.Error(err)
			}
		})
	}
	wg.Wait()
}

func TestWidths(t *testing.T) {
	d, err := HowTo(fitcheck.TopicCurbInside, "en")
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range []int{1, 2, 3, 17, 360, 1080} {
		b, err := d.PNG(w)
		if err != nil {
			t.Fatalf("%d: %v", w, err)
		}
		if got := drawingtest.Pixels(t, b).Bounds().Dx(); got != w {
			t.Errorf("%d pixels wide, want %d", got, w)
		}
	}
	for _, w := range []int{0, -1, MaxWidth + 1} {
		if _, err := d.PNG(w); err == nil {
			t.Errorf("%d pixels", w)
		}
	}
	for _, render := range []func() ([]byte, error){Drawing{}.SVG, Drawing{}.PDF, func() ([]byte, error) { return Drawing{}.PNG(360) }} {
		if _, err := render(); err == nil {
			t.Error("nothing was drawn, and no error")
		}
	}
}
