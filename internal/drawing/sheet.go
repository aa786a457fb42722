package drawing

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tdewolff/canvas"
)

// Measures of a sheet, in millimetres.
const (
	margin    = 12.0
	sheetTop  = 15.0 // where the second page begins
	sheetFoot = 13.0
	maxPages  = 2
	pageGap   = 6.0
)

var (
	lookBody   = look{size: 3.25, color: ink}
	lookStrong = look{size: 3.25, bold: true, color: ink}
	lookSmall  = look{size: 2.65, color: faint}
	lookHead   = look{size: 3.9, bold: true, color: ink}
	lookRef    = look{size: 7.5, bold: true, color: ink}
)

// Sheet is a lead on paper for staff: who wrote and where, what to keep in mind on the
// phone, and for each unit its numbers with the customer's words, a drawing to scale,
// findings with their sources, the order, how it ships and about what it costs, then
// photos. It is in English, has two pages at most, and says what it had no room for.
func Sheet(d SheetData) (Drawing, error) {
	w, h, err := d.Paper.size()
	if err != nil {
		return Drawing{}, err
	}
	f := &flow{w: w, h: h, first: headHigh, beyond: max(0, len(d.Units)-mostUnits)}
	blocks := sheetBlocks(&d, w-2*margin)
	spots, n, err := f.fit(blocks)
	if err != nil {
		return Drawing{}, err
	}
	pages := make([]page, n)
	for i := range pages {
		pages[i] = page{w: w, h: h}
		pages[i].draw("paper", rect(0, 0, w, h), pen{fill: white})
	}
	d.head(&pages[0])
	for _, s := range spots {
		s.ink(&pages[s.page], s.x, s.y)
	}
	foot(pages, &d)
	return Drawing{pages: pages, title: "Lead " + clean(d.Ref, 20), unit: 1, gap: pageGap}, nil
}

func (p Paper) size() (w, h float64, err error) {
	switch p {
	case Letter, "":
		return 215.9, 279.4, nil
	case A4:
		return 210, 297, nil
	}
	return 0, 0, errors.New("lead sheet: the paper is letter or a4")
}

const headHigh = 27.0

// head is the sheet's own header: what lead it is, and how it stands.
func (d *SheetData) head(p *page) {
	const every = 4.0 // the tape strip, as on all our pictures
	p.draw("strip", rect(0, 0, p.w, 4), pen{fill: yellow})
	for i := 0; float64(i)*every < p.w; i++ {
		long := 1.7
		if i%4 == 0 {
			long = 3
		}
		p.draw("tick", line(float64(i)*every, 0, float64(i)*every, long), pen{line: ink, width: 0.3})
	}
	p.write("title", margin, 15, fit("Lead "+clean(d.Ref, 20), 90, lookRef), lookRef)
	x := p.w - margin
	if d.Urgent {
		x = p.stamp(x, 9, "URGENT", true)
	}
	if !d.Qualified {
		x = p.stamp(x, 9, "NOT QUALIFIED", false)
	}
	p.stamp(x, 9, strings.ToUpper(fit(plain(d.Status), 40, lookStrong)), false)
	p.write("shop", margin, 21.5, fit(d.line(), p.w-2*margin, lookSmall), lookSmall)
	p.draw("rule", line(margin, 24.5, p.w-margin, 24.5), pen{line: ink, width: 0.5})
}

// line says whose lead it is and when it came.
func (d *SheetData) line() string {
	const form = "2 Jan 2006 15:04 MST"
	parts := []string{}
	if d.Shop != "" {
		parts = append(parts, clean(d.Shop, 60))
	}
	if !d.Opened.IsZero() {
		parts = append(parts, "opened "+d.Opened.Format(form))
	}
	if !d.Ready.IsZero() {
		parts = append(parts, "ready "+d.Ready.Format(form))
	}
	if !d.Printed.IsZero() {
		parts = append(parts, "printed "+d.Printed.Format(form))
	}
	return strings.Join(parts, "  ·  ")
}

// stamp is a word in a frame that ends at x; it returns where the next one may end.
func (p *page) stamp(x, y float64, word string, loud bool) float64 {
	if word == "" {
		return x
	}
	l := lookStrong
	back := pen{fill: white, line: ink, width: 0.4}
	if loud {
		back.fill, back.width = yellow, 0.8
	}
	w := measure(word, l) + 4
	p.draw("stamp", rounded(x-w, y, x, y+6.4, 1), back)
	l.align = canvas.Center
	p.write("stamp", x-w/2, y+4.5, word, l)
	return x - w - 3
}

// foot numbers the pages, and explains the box that stands for what can't be printed.
func foot(pages []page, d *SheetData) {
	boxed := false
	for i := range pages {
		for j := range pages[i].marks {
			boxed = boxed || strings.ContainsRune(pages[i].marks[j].text, noPicture)
		}
	}
	for i := range pages {
		p := &pages[i]
		y := p.h - 8
		p.write("foot", margin, y, fmt.Sprintf("Lead %s, page %d of %d", clean(d.Ref, 20), i+1, len(pages)), lookSmall)
		right := lookSmall
		right.align = canvas.Right
		p.write("foot", p.w-margin, y, fit(clean(d.Page, 90), 110, right), right)
		if boxed {
			p.write("foot", margin, y+3.6, string(noPicture)+" stands for a letter or sign that this print has no picture of; the lead's page has it.", lookSmall)
		}
	}
}
