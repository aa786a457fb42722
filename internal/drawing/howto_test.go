package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"example.com/intake-bot/internal/fitcheck"
)

var languages = []string{"en", "es"}

func TestHas(t *testing.T) {
	for _, topic := range slices.Concat(fitcheck.UnitTopics, fitcheck.LeadTopics, []fitcheck.Topic{"", "no such"}) {
		if Has(topic) != topic.OfLength() {
			t.Errorf("%s: Has is %v, measured with a tape %v", topic, Has(topic), topic.OfLength())
		}
		if _, err := HowTo(topic, "en"); (err == nil) != topic.OfLength() {
			t.Errorf("%s: %v", topic, err)
		}
	}
}

// Where the tape of each topic must end: on which part, at which level above the curb's
// top, and whether the tape lies on the outside of the part (else inside of it).
func TestTapeEndsAtTheFaces(t *testing.T) {
	for _, row := range []struct {
		topic   fitcheck.Topic
		section string
		level   float64
		plan    string
		outside bool
	}{
		{fitcheck.TopicCurbOutside, "flashing", -40, "flashing", true},
		{fitcheck.TopicCurbInside, "curb", -14, "curb", false},
		{fitcheck.TopicPlasticSize, "plastic", 8, "plastic", true},
		{fitcheck.TopicRetainerOpening, "retainer", 14, "retainer", false},
		{fitcheck.TopicRetainerOutside, "retainer", 14, "retainer", true},
		{fitcheck.TopicFrameInside, "frame", lifted - 16, "frame", false},
		{fitcheck.TopicBulgeBase, "", 0, "bulge", true},
	} {
		p := pageOf(t, row.topic)
		tapes := bounds(p, "tape")
		if len(tapes) != 3 {
			t.Fatalf("%s: %d tapes, want one in the section and two in the plan", row.topic, len(tapes))
		}
		if row.section != "" {
			top := sectionTop(t, p)
			for _, x := range [...]float64{tapes[0].X0, tapes[0].X1} {
				outward := 1.0
				if x < p.w/2 {
					outward = -1
				}
				touches(t, row.topic, p, row.section, x, top-row.level, outward, 0, row.outside)
			}
		}
		mid := (tapes[2].Y0 + tapes[2].Y1) / 2
		touches(t, row.topic, p, row.plan+"!", tapes[1].X0, mid, -1, 0, row.outside)
		touches(t, row.topic, p, row.plan+"!", tapes[1].X1, mid, 1, 0, row.outside)
		touches(t, row.topic, p, row.plan+"!", p.w/2, tapes[2].Y0, 0, -1, row.outside)
		touches(t, row.topic, p, row.plan+"!", p.w/2, tapes[2].Y1, 0, 1, row.outside)
		if tapes[0].X0 != tapes[1].X0 || tapes[0].X1 != tapes[1].X1 {
			t.Errorf("%s: the views show different faces", row.topic)
		}
	}
}

// touches checks that a face of the part is at x, y: its material lies behind it, and on
// the tape's side there is none.
func touches(t *testing.T, topic fitcheck.Topic, p *page, part string, x, y, dx, dy float64, outside bool) {
	t.Helper()
	const hair = 0.4
	within, beyond := inside(p, part, x-dx*hair, y-dy*hair), inside(p, part, x+dx*hair, y+dy*hair)
	if within != outside || beyond == outside {
		t.Errorf("%s: no face of %s at %.1f, %.1f: material within %v, beyond %v", topic, part, x, y, within, beyond)
	}
}

// inside says whether a point lies in a part: in any of its pieces of the section, or in
// the ring of the plan where the name ends in "!".
func inside(p *page, part string, x, y float64) bool {
	for i := range p.marks {
		m := &p.marks[i]
		name, plan := strings.CutSuffix(part, "!")
		if plan && m.part != name || !plan && m.part != name && !strings.HasPrefix(m.part, name+".l") && !strings.HasPrefix(m.part, name+".r") {
			continue
		}
		if m.path.Contains(x, y, canvas.NonZero) {
			return true
		}
	}
	return false
}

func pageOf(t *testing.T, topic fitcheck.Topic) *page {
	t.Helper()
	d, err := HowTo(topic, "en")
	if err != nil {
		t.Fatal(err)
	}
	return &d.pages[0]
}

func bounds(p *page, part string) (rs []canvas.Rect) {
	for i := range p.marks {
		if m := &p.marks[i]; m.part == part && m.path != nil {
			rs = append(rs, m.path.Bounds())
		}
	}
	return rs
}

// sectionTop is the height of the curb's top on the page.
func sectionTop(t *testing.T, p *page) float64 {
	t.Helper()
	rs := bounds(p, "curb.left")
	if len(rs) == 0 {
		t.Fatal("no curb")
	}
	return rs[0].Y0
}

func TestHeightsAreTakenFromFaceToFace(t *testing.T) {
	p := pageOf(t, fitcheck.TopicCurbHeight)
	tape := bounds(p, "tape")[0]
	if roof := bounds(p, "roof.left")[0].Y0; tape.Y1 != roof {
		t.Errorf("the tape stands at %v, the roof is at %v", tape.Y1, roof)
	}
	if top := sectionTop(t, p); tape.Y0 != top {
		t.Errorf("the tape ends at %v, the curb at %v", tape.Y0, top)
	}
	p = pageOf(t, fitcheck.TopicDomeRise)
	tape = bounds(p, "tape")[0]
	dome := bounds(p, "plastic")[0]
	if stick := bounds(p, "stick")[0]; tape.Y0 != stick.Y1 || dome.Y0 != stick.Y1 {
		t.Errorf("the tape ends at %v, the stick is at %v, the dome at %v", tape.Y0, stick.Y1, dome.Y0)
	}
	touches(t, fitcheck.TopicDomeRise, p, "plastic", (tape.X0+tape.X1)/2, tape.Y1, 0, -1, true)
}

func TestDiagonalsRunFromCornerToCorner(t *testing.T) {
	p := pageOf(t, fitcheck.TopicCurbDiagonals)
	box := bounds(p, "flashing")[0]
	want := [][2]canvas.Point{{{X: box.X0, Y: box.Y1}, {X: box.X1, Y: box.Y0}}, {{X: box.X0, Y: box.Y0}, {X: box.X1, Y: box.Y1}}}
	for i, tape := range paths(p, "tape")[:2] {
		ends := [2]canvas.Point{tape.Coords()[0], tape.Coords()[3]} // the two points of its band
		if !ends[0].Equals(want[i][0]) || !ends[1].Equals(want[i][1]) {
			t.Errorf("diagonal %d runs from %v to %v, want %v", i, ends[0], ends[1], want[i])
		}
	}
}

func paths(p *page, part string) (ps []*canvas.Path) {
	for i := range p.marks {
		if m := &p.marks[i]; m.part == part && m.path != nil {
			ps = append(ps, m.path)
		}
	}
	return ps
}

// Everything that is written stays on the picture, in both languages.
func TestTextsFit(t *testing.T) {
	for topic := range captions {
		for _, lang := range languages {
			d, err := HowTo(topic, lang)
			if err != nil {
				t.Fatal(err)
			}
			onThePage(t, string(topic)+" "+lang, &d.pages[0])
		}
	}
}

func onThePage(t *testing.T, name string, p *page) {
	t.Helper()
	for i := range p.marks {
		m := &p.marks[i]
		if m.text == "" {
			continue
		}
		x0, y0, x1, y1 := textBox(m)
		if x0 < 2 || x1 > p.w-2 || y0 < 0 || y1 > p.h {
			t.Errorf("%s: %q runs from %.0f, %.0f to %.0f, %.0f on a page of %.0f x %.0f", name, m.text, x0, y0, x1, y1, p.w, p.h)
		}
		if strings.ContainsRune(m.text, noPicture) || strings.Contains(m.text, "…") {
			t.Errorf("%s: %q is not whole", name, m.text)
		}
	}
}

// No word of a lesson stands on another or on the number of a tape's end, and no line from
// a word to its part ends under such a number.
func TestNothingStandsOnAWord(t *testing.T) {
	for topic := range captions {
		for _, lang := range languages {
			d, err := HowTo(topic, lang)
			if err != nil {
				t.Fatal(err)
			}
			apart(t, string(topic)+" "+lang, &d.pages[0])
		}
	}
}

func apart(t *testing.T, name string, p *page) {
	t.Helper()
	type box struct {
		words string
		canvas.Rect
	}
	var words, patches, solid []box
	for i := range p.marks {
		m := &p.marks[i]
		switch {
		case m.text != "" && m.part != "badge":
			x0, y0, x1, y1 := textBox(m)
			words = append(words, box{m.text, canvas.Rect{X0: x0, Y0: y0, X1: x1, Y1: y1}})
		case m.part == "halo":
			patches = append(patches, box{"the paper under a word", m.path.Bounds()})
		case m.part == "badge" && m.path != nil, m.part == "wrong" && m.path != nil, m.part == "stick" && i > 0:
			solid = append(solid, box{m.part, m.path.Bounds()})
		}
	}
	for i, w := range words {
		for _, other := range slices.Concat(words[i+1:], solid) {
			if w.Overlaps(other.Rect) {
				t.Errorf("%s: %q stands on %q", name, w.words, other.words)
			}
		}
	}
	for _, patch := range patches {
		for _, b := range solid {
			if patch.Overlaps(b.Rect) {
				t.Errorf("%s: %s covers %q", name, patch.words, b.words)
			}
		}
	}
	for _, end := range bounds(p, "leader.end") {
		for _, b := range solid {
			if end.Overlaps(b.Rect) {
				t.Errorf("%s: a word's line ends under %q", name, b.words)
			}
		}
	}
}

func textBox(m *mark) (x0, y0, x1, y1 float64) {
	w, h := measure(m.text, m.look), m.look.size
	start := 0.0
	switch m.look.align {
	case canvas.Center:
		start = -w / 2
	case canvas.Right:
		start = -w
	}
	if m.look.turned {
		return m.x - 0.8*h, m.y - start - w, m.x + 0.25*h, m.y - start
	}
	return m.x + start, m.y - 0.8*h, m.x + start + w, m.y + 0.25*h
}

func TestEveryFormOfEveryLesson(t *testing.T) {
	for topic := range captions {
		for _, lang := range languages {
			d, err := HowTo(topic, lang)
			if err != nil {
				t.Fatal(err)
			}
			threeForms(t, string(topic)+" "+lang, d)
		}
	}
	if es, _ := HowTo(fitcheck.TopicCurbHeight, "es-MX"); es.Title() != "Altura de la caja" {
		t.Errorf("es-MX: %q", es.Title())
	}
	if other, _ := HowTo(fitcheck.TopicCurbHeight, "fr"); other.Title() != "Height of the box" {
		t.Errorf("fr: %q", other.Title())
	}
}

// threeForms renders a drawing in its three forms, twice, and returns the SVG.
func threeForms(t *testing.T, name string, d Drawing) []byte {
	t.Helper()
	pngForm := func() ([]byte, error) { return d.PNG(360) }
	for form, render := range map[string]func() ([]byte, error){"%PDF-": d.PDF, "\x89PNG": pngForm, "<svg ": d.SVG} {
		a, err := render()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if b, _ := render(); !bytes.Equal(a, b) {
			t.Errorf("%s: %q differs from one time to the next", name, form)
		}
		if !bytes.HasPrefix(a, []byte(form)) {
			t.Errorf("%s: begins with %q, want %q", name, a[:8], form)
		}
	}
	s, _ := d.SVG()
	wellFormed(t, name, s)
	return s
}

func wellFormed(t *testing.T, name string, s []byte) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(s))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%s: svg: %v", name, err)
		}
		if e, ok := tok.(xml.StartElement); ok && !slices.Contains([]string{"svg", "title", "path", "text", "tspan", "image"}, e.Name.Local) {
			t.Errorf("%s: svg has <%s>", name, e.Name.Local)
		}
	}
}
