package drawing

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"example.com/intake-bot/internal/fitcheck"
)

const inch = fitcheck.Inch

func size(w, l float64) fitcheck.Size {
	return fitcheck.Size{Width: fitcheck.FromInches(w), Length: fitcheck.FromInches(l)}
}

func high(h float64) fitcheck.Height { return fitcheck.Height{Height: fitcheck.FromInches(h)} }

func risen(h float64) *fitcheck.Height { x := high(h); return &x }

// everything is a unit of which all was measured.
func everything() fitcheck.Unit {
	return fitcheck.Unit{CurbOutside: size(25.5, 49.5), CurbInside: size(22.5, 46.5), FrameInside: size(25.875, 49.875),
		CurbDiagonals: fitcheck.Diagonals{First: fitcheck.FromInches(55.6875), Second: fitcheck.FromInches(55.75)},
		PlasticSize:   size(25, 49), RetainerOpening: size(23, 47), RetainerOutside: size(26.0625, 50), BulgeBase: size(22.75, 46.75),
		CurbHeight: high(5.5), DomeRise: risen(7)}
}

func check(u fitcheck.Unit) fitcheck.UnitResult {
	return fitcheck.Check(fitcheck.Job{Use: fitcheck.UseHome, Units: []fitcheck.Unit{u}}, fitcheck.DefaultRules()).Units[0]
}

func measuredPage(t interface {
	Helper()
	Fatal(...any)
}, u fitcheck.Unit, r fitcheck.UnitResult, language string) *page {
	t.Helper()
	d, err := Measured(u, r, language)
	if err != nil {
		t.Fatal(err)
	}
	return &d.pages[0]
}

func TestInches(t *testing.T) {
	for _, row := range []struct {
		length fitcheck.Length
		short  string
		full   string
	}{
		{51 * inch / 2, `25 1/2"`, `25 1/2"`},
		{25*inch + 9*fitcheck.Sixteenth, `25 9/16"`, `25 9/16"`},
		{25*inch + 17*inch/32, `25 17/32"`, `25 17/32"`},
		{3 * fitcheck.Sixtyfourth, `3/64"`, `3/64"`},
		{0, `0"`, `0"`},
		{648 * fitcheck.Millimetre, `≈25 1/2"`, `≈25 1/2" (648 mm)`},
		{fitcheck.FromInches(48.3), `≈48 5/16"`, `≈48 5/16"`},
		{1270 * fitcheck.Millimetre, `50"`, `50"`},
	} {
		if short, full := inches(row.length), inchesExactly(row.length); short != row.short || full != row.full {
			t.Errorf("%v in: %s and %s, want %s and %s", row.length.Inches(), short, full, row.short, row.full)
		}
	}
}

// A dimension's words are the number, and its line is as long as the number on the scale
// of its panel.
func TestDimensionsAreTheNumbers(t *testing.T) {
	u := everything()
	p := measuredPage(t, u, check(u), "en")
	numbers := texts(p, "number")
	for _, topic := range fitcheck.SizeTopics {
		s := u.SizeOf(topic)
		for _, l := range [...]fitcheck.Length{s.Width, s.Length} {
			if !slices.ContainsFunc(numbers, func(n string) bool { return readTape(t, n[3:]) == l }) {
				t.Errorf("%s: no dimension says %v in", topic, l.Inches())
			}
		}
		outline := bounds(p, string(topic))[0]
		base := bounds(p, string(topicOfScale(topic)))[0]
		scale := base.W() / u.SizeOf(topicOfScale(topic)).Width.Inches()
		if !near(outline.W(), s.Width.Inches()*scale) || !near(outline.H(), s.Length.Inches()*scale) {
			t.Errorf("%s: drawn %v x %v, want %v x %v", topic, outline.W(), outline.H(), s.Width.Inches()*scale, s.Length.Inches()*scale)
		}
		if !hasLine(p, outline.X0, outline.X1) {
			t.Errorf("%s: no dimension line from face to face", topic)
		}
	}
	if h := bounds(p, "curb")[0].H() / bounds(p, "curb")[0].W(); !near(h, 5.5/25.5) {
		t.Errorf("the side view's curb is %v high for its width", h)
	}
}

func topicOfScale(t fitcheck.Topic) fitcheck.Topic {
	if slices.Contains(boxTopics, t) {
		return fitcheck.TopicCurbOutside
	}
	return fitcheck.TopicPlasticSize
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

func hasLine(p *page, x0, x1 float64) bool {
	return slices.ContainsFunc(paths(p, "dimension"), func(l *canvas.Path) bool {
		b := l.Bounds()
		return near(b.X0, x0) && near(b.X1, x1)
	})
}

func texts(p *page, part string) (s []string) {
	for i := range p.marks {
		if m := &p.marks[i]; m.part == part && m.text != "" {
			s = append(s, m.text)
		}
	}
	return s
}

// readTape reads what a dimension says, independently of how it was written.
func readTape(t *testing.T, s string) fitcheck.Length {
	t.Helper()
	s, ok := strings.CutSuffix(s, `"`)
	if !ok {
		t.Fatalf("%q has no inch mark", s)
	}
	total := 0.0
	for _, f := range strings.Fields(s) {
		a, b, isFraction := strings.Cut(f, "/")
		x, err := strconv.ParseFloat(a, 64)
		if err != nil {
			t.Fatalf("%q: %v", s, err)
		}
		if isFraction {
			y, err := strconv.ParseFloat(b, 64)
			if err != nil {
				t.Fatalf("%q: %v", s, err)
			}
			x /= y
		}
		total += x
	}
	return fitcheck.FromInches(total)
}

// What a finding asks about or stops at is marked by a sign and a word; nothing else is.
func TestDoubtfulIsMarked(t *testing.T) {
	unit := fitcheck.Unit{CurbOutside: size(48, 48), CurbInside: size(44, 44), CurbDiagonals: fitcheck.Diagonals{First: 68 * inch, Second: 67 * inch}, CurbHeight: high(3)}
	for _, row := range []struct {
		name     string
		findings []fitcheck.Finding
		want     []string // the letters that are marked
	}{
		{"nothing found", nil, nil},
		{"a note", []fitcheck.Finding{{Topic: fitcheck.TopicCurbInside, Severity: fitcheck.Note}}, nil},
		{"a question", []fitcheck.Finding{{Topic: fitcheck.TopicCurbInside, Severity: fitcheck.Ask}}, []string{"B"}},
		{"a stop", []fitcheck.Finding{{Topic: fitcheck.TopicCurbDiagonals, Severity: fitcheck.Stop}}, []string{"C"}},
		{"not of a size", []fitcheck.Finding{{Topic: fitcheck.TopicUse, Severity: fitcheck.Ask}}, nil},
		{"two", []fitcheck.Finding{{Topic: fitcheck.TopicCurbHeight, Severity: fitcheck.Ask}, {Topic: fitcheck.TopicCurbOutside, Severity: fitcheck.Ask}}, []string{"A", "D"}},
		{"what the check finds", check(fitcheck.Unit{CurbOutside: size(48, 48), CurbInside: size(44, 44)}).Findings, []string{"B"}},
	} {
		p := measuredPage(t, unit, fitcheck.UnitResult{Findings: row.findings}, "en")
		letters := map[string]bool{}
		for i := range p.marks {
			if m := &p.marks[i]; m.part == "check" && i > 0 && p.marks[i-1].part == "number" {
				letters[p.marks[i-1].text[:1]] = true
			}
		}
		if len(letters) != len(row.want) {
			t.Errorf("%s: %v marked, want %v", row.name, letters, row.want)
		}
		for _, l := range row.want {
			if !letters[l] {
				t.Errorf("%s: %s is not marked", row.name, l)
			}
		}
		if signs, words := len(paths(p, "sign")), len(texts(p, "check")); signs != words {
			t.Errorf("%s: %d signs and %d words", row.name, signs, words)
		}
	}
}

func TestOutlines(t *testing.T) {
	for _, row := range []struct {
		name  string
		unit  fitcheck.Unit
		topic fitcheck.Topic
		want  string
	}{
		{"two sides", fitcheck.Unit{PlasticSize: size(25, 49)}, fitcheck.TopicPlasticSize, `25" × 49"`},
		{"one named side", fitcheck.Unit{PlasticSize: fitcheck.Size{Length: 49 * inch}}, fitcheck.TopicPlasticSize, `? × 49"`},
		{"one lone side", fitcheck.Unit{PlasticSize: fitcheck.Size{One: 49 * inch}}, fitcheck.TopicPlasticSize, `49" (one side)`},
		{"a diameter", fitcheck.Unit{PlasticSize: fitcheck.Size{Diameter: 49 * inch}}, fitcheck.TopicPlasticSize, `Ø 49"`},
		{"a lone one of a round", fitcheck.Unit{Outline: fitcheck.OutlineRound, PlasticSize: fitcheck.Size{One: 49 * inch}}, fitcheck.TopicPlasticSize, `Ø 49"`},
		{"two readings of a round", fitcheck.Unit{Outline: fitcheck.OutlineRound, PlasticSize: size(48, 48.25)}, fitcheck.TopicPlasticSize, `Ø 48" and 48 1/4"`},
		{"square curb under a round", fitcheck.Unit{Outline: fitcheck.OutlineRound, PlasticSize: fitcheck.Size{Diameter: 48 * inch}, CurbOutside: size(50, 51)}, fitcheck.TopicCurbOutside, `50" × 51"`},
		{"four sides around", fitcheck.Unit{CurbOutside: fitcheck.Size{Sides: []fitcheck.Length{48 * inch, 72 * inch, 49 * inch, 73 * inch}}}, fitcheck.TopicCurbOutside, `48" and 49" × 72" and 73"`},
		{"four sides in pairs", fitcheck.Unit{CurbOutside: fitcheck.Size{Sides: []fitcheck.Length{72 * inch, 73 * inch, 48 * inch, 48 * inch}}}, fitcheck.TopicCurbOutside, `48" × 72" and 73"`},
		{"three sides", fitcheck.Unit{CurbOutside: fitcheck.Size{Sides: []fitcheck.Length{48 * inch, 72 * inch, 49 * inch}}}, fitcheck.TopicCurbOutside, `48" and 72" and 49" (one side)`},
		{"millimetres", fitcheck.Unit{PlasticSize: fitcheck.Size{Width: 648 * fitcheck.Millimetre, Length: 1270 * fitcheck.Millimetre}}, fitcheck.TopicPlasticSize, `≈25 1/2" (648 mm) × 50"`},
	} {
		if o := outlineOf(&row.unit, row.topic); o.words("en") != row.want {
			t.Errorf("%s: %s, want %s", row.name, o.words("en"), row.want)
		}
	}
}

func TestNothingMeasured(t *testing.T) {
	if _, err := Measured(fitcheck.Unit{Style: fitcheck.StyleCurbMount}, fitcheck.UnitResult{}, "en"); !errors.Is(err, ErrNoNumbers) {
		t.Errorf("error %v, want ErrNoNumbers", err)
	}
}

// Any numbers at all make a picture of bounded size on which everything can be read.
func TestAnyNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := anyUnit(t)
		r := fitcheck.UnitResult{}
		for _, topic := range fitcheck.UnitTopics {
			if topic.OfLength() && rapid.Bool().Draw(t, "doubt") {
				r.Findings = append(r.Findings, fitcheck.Finding{Topic: topic, Severity: fitcheck.Ask})
			}
		}
		for _, lang := range languages {
			d, err := Measured(u, r, lang)
			if errors.Is(err, ErrNoNumbers) {
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			p := &d.pages[0]
			if p.h > 2600 || math.IsNaN(p.h) {
				t.Fatalf("%v high", p.h)
			}
			for i := range p.marks {
				if m := &p.marks[i]; m.text != "" {
					x0, y0, x1, y1 := textBox(m)
					if !(x0 >= -1 && x1 <= p.w+1 && y0 >= -1 && y1 <= p.h+1) {
						t.Fatalf("%q runs from %.0f, %.0f to %.0f, %.0f on a page of %.0f x %.0f", m.text, x0, y0, x1, y1, p.w, p.h)
					}
				} else if b := m.path.Bounds(); math.IsNaN(b.W()+b.H()) || b.W() > 2*p.w {
					t.Fatalf("%s spans %v", m.part, b)
				}
			}
		}
	})
}

func anyUnit(t *rapid.T) fitcheck.Unit {
	length := rapid.Custom(func(t *rapid.T) fitcheck.Length {
		switch rapid.IntRange(0, 4).Draw(t, "kind") {
		case 0:
			return 0
		case 1:
			return fitcheck.Length(rapid.Int64Range(1, int64(fitcheck.MaxLength)).Draw(t, "any"))
		case 2:
			return fitcheck.Length(rapid.Int64Range(1, 64*200).Draw(t, "sixty-fourths")) * fitcheck.Sixtyfourth
		case 3:
			return fitcheck.Length(rapid.Int64Range(1, 3000).Draw(t, "mm")) * fitcheck.Millimetre
		}
		return fitcheck.MaxLength - 1
	})
	u := fitcheck.Unit{Outline: rapid.SampledFrom([]string{"", fitcheck.OutlineRound, fitcheck.OutlineRectangle}).Draw(t, "outline")}
	for _, topic := range fitcheck.SizeTopics {
		s := u.SizeOf(topic)
		switch rapid.IntRange(0, 4).Draw(t, "form") {
		case 0:
			s.Width, s.Length = length.Draw(t, "w"), length.Draw(t, "l")
		case 1:
			s.Diameter = length.Draw(t, "d")
		case 2:
			s.One = length.Draw(t, "one")
		case 3:
			s.Sides = rapid.SliceOfN(length, 0, 5).Draw(t, "sides")
		}
	}
	if u.CurbDiagonals.First = length.Draw(t, "first"); u.CurbDiagonals.First > 0 { // the second is never known alone
		u.CurbDiagonals.Second = length.Draw(t, "second")
	}
	u.CurbHeight.Height = length.Draw(t, "height")
	if rapid.Bool().Draw(t, "rises") {
		u.DomeRise = &fitcheck.Height{Height: length.Draw(t, "rise")}
	}
	return u
}
