package drawing

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/intake-bot/internal/fitcheck"
)

func sheetOf(t testing.TB, d SheetData) Drawing {
	t.Helper()
	s, err := Sheet(d)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// words are all words of a sheet, a space between lines.
func words(d Drawing) string {
	var b strings.Builder
	for i := range d.pages {
		for j := range d.pages[i].marks {
			if s := d.pages[i].marks[j].text; s != "" {
				b.WriteString(s + " ")
			}
		}
	}
	return b.String()
}

func TestSheetShowsTheLead(t *testing.T) {
	lead := sampleLead(t)
	d := sheetOf(t, lead)
	all := words(d)
	for _, want := range []string{"Lead R7KQ4", "READY", "URGENT", "Dana Whitlock", "+12185550161", "dana@example.com", "Ames, IA 50010", "sms, in English",
		"America/Chicago (Tue 8:02 am when printed)", "home", "cracked, leaking", "2 alike", "curb mount", "replace the complete unit",
		`25 1/2" × 49 1/2"`, `25" × 49"`, "“went up again, 25 1/2 x 49 1/2”", "message 7", "“the box is 25 x 49”", "check this one",
		`Complete unit, inside of frame 25 7/8" × 49 7/8"`, "drywall included", "IRC 2021 Table R702.3.5", "By parcel, 2 pieces", "Estimate", "Ask nobody to go up",
		"bronze over clear", `2" in 12"`, "style, message 6", "https://leads.example.com/staff/lead/R7KQ4", "2 Mar 2026 21:15 CST"} {
		if !strings.Contains(all, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	for _, f := range lead.Units[0].Facts {
		if !strings.Contains(all, "message "+strconv.Itoa(f.Message)) {
			t.Errorf("message %d is not named", f.Message)
		}
	}
	if strings.Contains(all, "NOT QUALIFIED") || strings.Contains(all, " more ") {
		t.Error("says what is not so")
	}
	photos := 0
	for i := range d.pages {
		onThePage(t, "sheet", &d.pages[i])
		for j := range d.pages[i].marks {
			if d.pages[i].marks[j].img != nil {
				photos++
			}
		}
	}
	if photos != len(lead.Photos) {
		t.Errorf("%d photos, want %d", photos, len(lead.Photos))
	}
	threeForms(t, "sheet", d)
}

// What has no room is counted: what is shown and what is told of make up all.
func TestSheetTellsWhatItLeavesOut(t *testing.T) {
	lead := crowdedLead(t)
	d := sheetOf(t, lead)
	if d.Pages() != maxPages {
		t.Errorf("%d pages", d.Pages())
	}
	all := words(d)
	left := func(noun string) (n int) {
		for _, m := range regexp.MustCompile(`… (\d+) more `+noun).FindAllStringSubmatch(all, -1) {
			k, err := strconv.Atoi(m[1])
			if err != nil {
				t.Fatal(err)
			}
			n += k
		}
		return n
	}
	units := strings.Count(all, " of "+strconv.Itoa(len(lead.Units))+",")
	if units < 1 || units+left("unit") != len(lead.Units) {
		t.Errorf("%d units shown, %d told of, of %d", units, left("unit"), len(lead.Units))
	}
	if n := strings.Count(all, "can't be shown here") + strings.Count(all, "style, message") + strings.Count(all, "message 8 "); n+left("photo") != len(lead.Photos) {
		t.Errorf("%d photos shown, %d told of, of %d", n, left("photo"), len(lead.Photos))
	}
	u := &lead.Units[0]
	known := 0
	for _, topic := range fitcheck.UnitTopics {
		if u.Unit.Get(topic) != nil {
			known += max(1, len(saidOf(u.Facts, topic)))
		}
	}
	if n := strings.Count(all, "“") + left("fact"); n != known*units {
		t.Errorf("%d facts shown or told of, want %d", n, known*units)
	}
	findings := len(u.Result.Findings) * units
	if n := strings.Count(all, "source: ") + left("finding"); n != findings {
		t.Errorf("%d findings shown or told of, want %d", n, findings)
	}
	for _, measure := range []string{"curb outside", "curb inside", "curb diagonals", "curb height"} {
		if n := strings.Count(all, measure+" "); n < units {
			t.Errorf("%s stands %d times for %d units", measure, n, units)
		}
	}
	if !strings.Contains(all, "□ □ <b>Ampersand & Sons</b>") && !strings.Contains(all, "□□□□ □") || !strings.Contains(all, "□ stands for") {
		t.Error("a name in another script is not seen to be there")
	}
	svg := threeForms(t, "crowded", d)
	if strings.Contains(string(svg), "<b>") {
		t.Error("a customer's words are markup")
	}
}

func TestSheetOfLittle(t *testing.T) {
	for name, d := range map[string]SheetData{
		"nothing":     {},
		"one unit":    {Units: []SheetUnit{{}}},
		"a bad photo": {Photos: []SheetPhoto{{Data: []byte("\x89PNG\r\n\x1a\nnot really")}}},
		"no place":    {Place: fitcheck.Place{ZIP: "55802"}, TimeZone: "Mars/Olympus", Ref: "R2"},
	} {
		s := sheetOf(t, d)
		if s.Pages() != 1 {
			t.Errorf("%s: %d pages", name, s.Pages())
		}
		if all := words(s); !strings.Contains(all, "not known") {
			t.Errorf("%s: does not say what is not known", name)
		}
	}
	if _, err := Sheet(SheetData{Paper: "legal"}); err == nil {
		t.Error("paper that there is none of")
	}
}

func TestPaper(t *testing.T) {
	for paper, want := range map[Paper][2]float64{"": {215.9, 279.4}, Letter: {215.9, 279.4}, A4: {210, 297}} {
		d := sampleLead(t)
		d.Paper = paper
		p := sheetOf(t, d).pages[0]
		if p.w != want[0] || p.h != want[1] {
			t.Errorf("%q is %v x %v mm", paper, p.w, p.h)
		}
	}
}

func TestOrderWords(t *testing.T) {
	code := "B-2436"
	a, b := size(24, 36), size(25, 37)
	for _, row := range []struct {
		order *fitcheck.Order
		want  string
	}{
		{nil, "Nothing to order yet."},
		{&fitcheck.Order{}, "Nothing to order yet."},
		{&fitcheck.Order{PlasticSize: &a, Stock: &code}, `Plastic, edge to edge 24" × 36"|On the shop's list: B-2436`},
		{&fitcheck.Order{Estimated: true, Low: &a, High: &b}, `From 24" × 36" to 25" × 37"|Reckoned from other measures: not to be ordered from.`},
	} {
		if got := strings.Join(orderLines(row.order), "|"); got != row.want {
			t.Errorf("%+v: %s, want %s", row.order, got, row.want)
		}
	}
}

func TestMoney(t *testing.T) {
	for _, row := range []struct {
		low, high int64
		want      string
	}{{412, 530, "USD 412 to 530"}, {1204, 1204, "USD 1,204"}, {999, 1234567, "USD 999 to 1,234,567"}, {-1500, -1500, "USD -1,500"}, {0, 0, "USD 0"}} {
		if got := moneyRange("USD", row.low, row.high); got != row.want {
			t.Errorf("%d, %d: %s, want %s", row.low, row.high, got, row.want)
		}
	}
}

func TestEveryCautionHasItsSentence(t *testing.T) {
	for _, c := range []string{fitcheck.CautionRoofFall, fitcheck.CautionOpenHole, fitcheck.CautionStructure, fitcheck.CautionVehicle, fitcheck.CautionLocalCodes,
		fitcheck.CautionEnergy, fitcheck.CautionWildfire} {
		if s := cautionWords(c); s == plain(c) || !strings.HasSuffix(s, ".") {
			t.Errorf("%s: %q", c, s)
		}
	}
}

// Any lead makes a sheet of one or two pages with everything on the paper.
func TestAnySheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 400, 1200)
		d := SheetData{Paper: rapid.SampledFrom([]Paper{Letter, A4}).Draw(t, "paper"), Shop: text.Draw(t, "shop"), Ref: text.Draw(t, "ref"),
			Status: text.Draw(t, "status"), Name: text.Draw(t, "name"), Phone: text.Draw(t, "phone"), Email: text.Draw(t, "email"),
			TimeZone: text.Draw(t, "zone"), Use: text.Draw(t, "use"), Page: text.Draw(t, "page"), Channel: text.Draw(t, "channel"),
			Place:    fitcheck.Place{City: text.Draw(t, "city"), State: text.Draw(t, "state"), ZIP: text.Draw(t, "zip")},
			WhyStaff: rapid.SliceOfN(text, 0, 70).Draw(t, "why"), Problem: rapid.SliceOfN(text, 0, 9).Draw(t, "problem"), Cautions: rapid.SliceOfN(text, 0, 9).Draw(t, "cautions")}
		for range rapid.IntRange(0, 5).Draw(t, "units") {
			u := anyUnit(t)
			u.Style = text.Draw(t, "style")
			r := check(u)
			for _, topic := range rapid.SliceOfN(rapid.SampledFrom(fitcheck.UnitTopics), 0, 20).Draw(t, "findings") {
				r.Findings = append(r.Findings, fitcheck.Finding{Code: "x", Topic: topic, Text: text.Draw(t, "text"), Source: text.Draw(t, "source"),
					Severity: rapid.SampledFrom([]fitcheck.Severity{fitcheck.Ask, fitcheck.Note, fitcheck.Stop}).Draw(t, "severity")})
			}
			unit := SheetUnit{Unit: u, Result: r}
			for _, topic := range rapid.SliceOfN(rapid.SampledFrom(fitcheck.UnitTopics), 0, 30).Draw(t, "facts") {
				unit.Facts = append(unit.Facts, SheetFact{topic, fitcheck.Text(text.Draw(t, "value")), text.Draw(t, "said"), 7})
			}
			d.Units = append(d.Units, unit)
		}
		s, err := Sheet(d)
		if err != nil || s.Pages() < 1 || s.Pages() > maxPages {
			t.Fatalf("%d pages: %v", s.Pages(), err)
		}
		for i := range s.pages {
			p := &s.pages[i]
			for j := range p.marks {
				if m := &p.marks[j]; m.text != "" {
					if x0, y0, x1, y1 := textBox(m); !(x0 >= 0 && x1 <= p.w && y0 >= 0 && y1 <= p.h) {
						t.Fatalf("%q runs from %.0f, %.0f to %.0f, %.0f", m.text, x0, y0, x1, y1)
					}
				}
			}
		}
	})
}

// A stranger's words never become markup, and never keep a form from being made.
func FuzzSheet(f *testing.F) {
	for _, s := range []string{"Dana", "</text><script>alert(1)</script>", "]]>&lt;", "محمد", "\xff\x00", `" onload="x`} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, name, said string) {
		d := sheetOf(t, SheetData{Name: name, Ref: name, Units: []SheetUnit{{Unit: fitcheck.Unit{Layers: 2}, Facts: []SheetFact{{fitcheck.TopicLayers, fitcheck.Whole(2), said, 1}}}}})
		svg, err := d.SVG()
		if err != nil {
			t.Fatal(err)
		}
		wellFormed(t, "sheet", svg)
		if _, err := d.PDF(); err != nil {
			t.Fatal(err)
		}
	})
}

func TestThumbnailsAreBounded(t *testing.T) {
	img, err := thumbnail(jpegOf(t, 3000, 40))
	if err != nil || img.Bounds().Dx() != photoPixels || img.Bounds().Dy() < 1 {
		t.Errorf("%v, %v", img.Bounds(), err)
	}
	bomb := slices.Clone(jpegOf(t, 16, 16))
	at := strings.Index(string(bomb), "\xff\xc0") // the frame's header: height and width
	copy(bomb[at+5:], "\xff\xff\xff\xff")
	if _, err := thumbnail(bomb); err == nil {
		t.Error("a photo of 4 billion pixels was opened")
	}
}
