package drawing

import (
	"fmt"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// namedBlock is a block of short lines under a name.
func namedBlock(title, noun string, w float64, lines []string) block {
	b := block{heading: heading(title, w), noun: noun}
	for i, s := range lines {
		l := lookBody
		if i == 0 {
			l = lookStrong
		}
		r := textRow(s, l, w, 3)
		if i > 0 {
			r.rank = rankExtra
		}
		b.rows = append(b.rows, r)
	}
	return b
}

// orderBlock says what to order, or why nothing can be ordered yet.
func orderBlock(u *SheetUnit, w float64) block {
	lines := orderLines(u.Result.Order)
	if len(u.Result.Reasons) > 0 {
		lines = append(lines, "because: "+listWords(u.Result.Reasons))
	}
	if ts := u.Result.Missing; len(ts) > 0 {
		lines = append(lines, "still missing: "+topicsWords(ts))
	}
	if ts := u.Result.PhotosWanted; len(ts) > 0 {
		lines = append(lines, "photos wanted of: "+topicsWords(ts))
	}
	return namedBlock("Order", "lines", w, lines)
}

func topicsWords(ts []fitcheck.Topic) string {
	words := make([]string, len(ts))
	for i, t := range ts {
		words[i] = topicWords(t)
	}
	return strings.Join(words, ", ")
}

func orderLines(o *fitcheck.Order) (lines []string) {
	if o == nil {
		return []string{"Nothing to order yet."}
	}
	if o.FrameInside != nil {
		lines = append(lines, "Complete unit, inside of frame "+sizeWords(*o.FrameInside))
	}
	if o.PlasticSize != nil {
		lines = append(lines, "Plastic, edge to edge "+sizeWords(*o.PlasticSize))
	}
	if o.Estimated && o.Low != nil && o.High != nil {
		lines = append(lines, "From "+sizeWords(*o.Low)+" to "+sizeWords(*o.High), "Reckoned from other measures: not to be ordered from.")
	}
	if lines == nil {
		lines = append(lines, "Nothing to order yet.")
	}
	if o.Stock != nil {
		lines = append(lines, "On the shop's list: "+clean(*o.Stock, 40))
	}
	return lines
}

// shipBlock says how it travels.
func shipBlock(s *fitcheck.Ship, w float64) block {
	if s == nil {
		return block{}
	}
	lines := []string{"By " + plain(s.By)}
	if s.By == fitcheck.ShipStaff {
		lines[0] = "A person decides how it travels"
	}
	if s.Pieces > 1 {
		lines[0] += fmt.Sprintf(", %d pieces", s.Pieces)
	}
	if s.FreightClass != nil {
		lines[0] += ", class " + decimal(*s.FreightClass)
	}
	if s.WeightLb > 0 {
		lines = append(lines, fmt.Sprintf("each %s lb, billed as %d lb, carton %s × %s × %s in", decimal(s.WeightLb), s.BilledLb,
			decimal(s.CartonIn[0]), decimal(s.CartonIn[1]), decimal(s.CartonIn[2])))
	}
	for _, n := range s.Notes {
		lines = append(lines, clean(n, 300))
	}
	return namedBlock("Ship", "notes", w, lines)
}

// estimateBlock says about what it costs, line by line, or why that can't be told.
func estimateBlock(e *fitcheck.Estimate, w float64) block {
	if e == nil {
		return block{}
	}
	if e.Reason != "" {
		return namedBlock("Estimate", "lines", w, []string{"None: " + clean(e.Reason, 200)})
	}
	b := namedBlock("Estimate", "lines", w, []string{moneyRange(e.Currency, e.Low, e.High)})
	for _, l := range e.Lines[:min(len(e.Lines), mostRows)] {
		r := tableRow(cell{clean(l.What, 120), lookBody, w * 0.68, 2}, cell{moneyRange("", l.Low, l.High), lookBody, w * 0.32, 1})
		r.rank = rankNote
		b.rows = append(b.rows, r)
	}
	b.cut = max(0, len(e.Lines)-mostRows)
	return b
}
