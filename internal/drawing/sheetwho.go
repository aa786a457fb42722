package drawing

import (
	"strings"
	"time"
	_ "time/tzdata" // a customer's zone must be found wherever the program runs
)

// sheetBlocks are all blocks of a sheet of a width, in order.
func sheetBlocks(d *SheetData, w float64) []block {
	bs := []block{whoBlock(d, w)}
	if len(d.WhyStaff) > 0 {
		bs = append(bs, listBlock("Why a person", d.WhyStaff, "reasons", w, func(s string) string { return clean(s, 300) }))
	}
	if len(d.Cautions) > 0 {
		bs = append(bs, listBlock("On the phone", d.Cautions, "cautions", w, cautionWords))
	}
	for i := range d.Units[:min(len(d.Units), mostUnits)] {
		bs = append(bs, unitBlocks(&d.Units[i], i+1, len(d.Units), w)...)
	}
	if len(d.Photos) > 0 {
		bs = append(bs, photoBlock(d.Photos, w))
	}
	return bs
}

// whoBlock is who wrote, from where, and what for: two columns of names and words.
func whoBlock(d *SheetData, w float64) block {
	type pair struct{ name, words string }
	left := []pair{{"name", clean(d.Name, 90)}, {"phone", clean(d.Phone, 24)}, {"email", clean(d.Email, 90)}, {"wrote by", strings.TrimPrefix(plain(d.Channel)+", in "+languageWords(d.Language), ", ")}}
	right := []pair{{"place", placeWords(d.Place)}, {"their time", zoneWords(d.TimeZone, d.Printed)}, {"building", plain(d.Use)}, {"problem", problemWords(d.Problem)}}
	b := block{noun: "lines"}
	const name = 21.0
	for i := range left {
		b.rows = append(b.rows, tableRow(
			cell{left[i].name, lookSmall, name, 1}, cell{or(left[i].words, "not known"), lookStrong, w/2 - name, 2},
			cell{right[i].name, lookSmall, name, 1}, cell{or(right[i].words, "not known"), lookStrong, w/2 - name, 2}))
	}
	return b
}

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

func languageWords(tag string) string {
	switch lang, _, _ := strings.Cut(strings.ToLower(tag), "-"); lang {
	case "en":
		return "English"
	case "es":
		return "Spanish"
	}
	return or(clean(tag, 12), "a language not known")
}

func problemWords(problem []string) string {
	if len(problem) == 0 {
		return ""
	}
	return listWords(problem)
}

// zoneWords is the customer's zone and, where the sheet says when it was made, what
// their clock said then.
func zoneWords(zone string, at time.Time) string {
	name := clean(zone, 40)
	where, err := time.LoadLocation(zone)
	if err != nil || zone == "" || at.IsZero() {
		return name
	}
	return name + " (" + at.In(where).Format("Mon 3:04 pm") + " when printed)"
}

func heading(s string, w float64) *row {
	return &row{h: 7, ink: func(p *page, x, y float64) {
		p.draw("rule", line(x, y+1.2, x+w, y+1.2), pen{line: hair, width: 0.3})
		p.write("heading", x, y+5.4, s, lookHead)
	}}
}

// listBlock lists sentences; so many always have room.
func listBlock(title string, items []string, noun string, w float64, words func(string) string) block {
	const always = 5
	b := block{heading: heading(title, w), noun: noun}
	for i, s := range items {
		if i == mostRows {
			b.cut = len(items) - i
			break
		}
		r := bullet(words(s), w, 3)
		if i >= always {
			r.rank = rankExtra
		}
		b.rows = append(b.rows, r)
	}
	return b
}

func bullet(s string, w float64, most int) row {
	r := textRow(s, lookBody, w-4, most)
	return row{h: r.h + 0.5, ink: func(p *page, x, y float64) {
		p.draw("bullet", circle(x+1.2, y+2.1, 0.6), pen{fill: ink})
		r.ink(p, x+4, y)
	}}
}
