package drawing

import (
	"errors"
	"slices"
	"strconv"
	"strings"
)

// row is something of a height that can be drawn anywhere. Where there is no room rows
// are left out, those of the highest rank first; rank 0 is what a sheet is for.
type row struct {
	h     float64
	ink   func(p *page, x, y float64)
	rank  int
	items int // how many things it shows, where they are several
}

// block is a heading with rows under it. What is left out is counted and told.
type block struct {
	heading *row
	rows    []row
	cut     int    // things left out
	noun    string // what they are: "findings"
	unit    int    // of which unit, from 1; 0 for the whole lead
	float   *float // beside this block and those that follow it
}

// float is a picture at the right of text, with rows under it.
type float struct {
	w, h float64 // of the picture alone; no height without one
	ink  func(p *page, x, y, scale float64)
	rows []row
}

// smallest is by how much a picture may be made smaller before it goes to the next page.
const smallest = 0.6

func (f *float) text() (h float64) {
	for _, r := range f.rows {
		h += r.h
	}
	return h
}

// placed is a row's place on a page.
type placed struct {
	page int
	x, y float64
	ink  func(p *page, x, y float64)
}

// flow sets blocks below each other over the pages of a sheet.
type flow struct {
	w, h, first float64
	beyond      int // units that are not even tried
	page        int
	y           float64
	clear       float64 // below the picture at the right
	clearPage   int
	placed      []placed
}

var errNoRoom = errors.New("lead sheet: no room")

// fit places all blocks on the sheet. Where there is no room it leaves out rows by their
// rank, then whole units from the last on, and at the very last rows that matter.
func (f *flow) fit(blocks []block) ([]placed, int, error) {
	units := 0
	for i := range blocks {
		units = max(units, blocks[i].unit)
	}
	for dropped := 0; dropped < max(units, 1); dropped++ {
		if f.thin(upTo(blocks, units-dropped), dropped, 1) {
			return f.placed, f.page + 1, nil
		}
	}
	if f.thin(upTo(blocks, min(units, 1)), max(units-1, 0), 0) {
		return f.placed, f.page + 1, nil
	}
	return nil, 0, errNoRoom
}

// upTo is a copy of the blocks, without the units behind the last one.
func upTo(blocks []block, last int) []block {
	kept := make([]block, 0, len(blocks))
	for _, b := range blocks {
		if b.unit <= last {
			b.rows = slices.Clone(b.rows)
			kept = append(kept, b)
		}
	}
	return kept
}

// thin leaves out rows of a rank or higher, one by one, until all fits.
func (f *flow) thin(blocks []block, dropped, rank int) bool {
	for !f.set(blocks, dropped) {
		i, j := spare(blocks, rank)
		if i < 0 {
			return false
		}
		b := &blocks[i]
		b.cut += max(1, b.rows[j].items)
		b.rows = slices.Delete(b.rows, j, j+1)
	}
	return true
}

// spare finds the row to leave out: the highest rank, there the block with the most
// rows, there the last one. It is -1 where none has the rank.
func spare(blocks []block, rank int) (at, row int) {
	at, row = -1, -1
	for i := range blocks {
		b := &blocks[i]
		for j := len(b.rows) - 1; j >= 0; j-- {
			r := b.rows[j].rank
			if r > rank || r == rank && (at < 0 || len(b.rows) > len(blocks[at].rows)) {
				at, row, rank = i, j, r
			}
		}
	}
	return at, row
}

// set places all rows, and reports false where they need more pages than a sheet has.
func (f *flow) set(blocks []block, dropped int) bool {
	f.page, f.y, f.clear, f.clearPage, f.placed = 0, f.first, 0, -1, nil
	unit := 0
	for i := range blocks {
		b := &blocks[i]
		if b.unit != unit {
			f.pass()
			if b.unit == 0 && !f.missing(dropped) {
				return false
			}
			unit = b.unit
		}
		if !f.block(b) {
			return false
		}
	}
	f.pass()
	return unit == 0 || f.missing(dropped)
}

// missing tells of units that are left out.
func (f *flow) missing(dropped int) bool {
	dropped += f.beyond
	return dropped == 0 || f.put(textRow(more(dropped, "units"), lookStrong, 150, 1))
}

// more says that so many things are not on the sheet.
func more(n int, noun string) string {
	if n == 1 {
		noun = strings.TrimSuffix(noun, "s")
	}
	return "… " + strconv.Itoa(n) + " more " + noun + " on the page"
}

// pass moves below the picture at the right.
func (f *flow) pass() {
	if f.clearPage == f.page {
		f.y = max(f.y, f.clear)
	}
}

func (f *flow) block(b *block) bool {
	need := 0.0 // a heading stays with its first row
	if b.heading != nil {
		need += b.heading.h
	}
	if len(b.rows) > 0 {
		need += b.rows[0].h
	}
	if b.float != nil {
		need = max(need, b.heading.h+smallest*b.float.h+b.float.text()+floatGap)
	}
	if f.y+need > f.bottom() && !f.turn() {
		return false
	}
	if b.heading != nil && !f.put(*b.heading) {
		return false
	}
	if b.float != nil {
		f.hang(b.float)
	}
	for _, r := range b.rows {
		if !f.put(r) {
			return false
		}
	}
	return b.cut == 0 || f.put(textRow(more(b.cut, b.noun), lookSmall, 150, 1))
}

const floatGap = 2.0 // under a picture

// hang puts a picture and the rows under it at the right; the picture is made smaller
// where the page ends.
func (f *flow) hang(pic *float) {
	x, y, scale := f.w-margin-pic.w, f.y, 1.0
	if pic.h > 0 {
		scale = min(1, (f.bottom()-y-pic.text()-floatGap)/pic.h)
		f.placed = append(f.placed, placed{f.page, x + pic.w*(1-scale), y, func(p *page, x, y float64) { pic.ink(p, x, y, scale) }})
		y += pic.h*scale + floatGap
	}
	for _, r := range pic.rows {
		f.placed = append(f.placed, placed{f.page, x, y, r.ink})
		y += r.h
	}
	f.clear, f.clearPage = y, f.page
}

func (f *flow) put(r row) bool {
	if f.y+r.h > f.bottom() && !f.turn() {
		return false
	}
	f.placed = append(f.placed, placed{f.page, margin, f.y, r.ink})
	f.y += r.h
	return true
}

func (f *flow) bottom() float64 { return f.h - sheetFoot }

func (f *flow) turn() bool {
	if f.page+1 >= maxPages {
		return false
	}
	f.page++
	f.y = sheetTop
	return f.y < f.bottom()
}
