package staff

import (
	"fmt"
	"net/http"
	"strconv"
	"time"

	"example.com/intake-bot/internal/db"
)

// figuresPage says how it goes: plain charts, each with its numbers beside it.
type figuresPage struct {
	frame
	Weeks  int
	Rows   []db.WeekFigures
	Charts []chart
	Cents  string
	Texts  []textRow
	Stops  []db.Tally
	Caught []db.Tally
}

type textRow struct {
	Week            string
	Texts, Segments int
	Cost            string
}

func (s *Server) figures(v *visit) error {
	q := v.r.URL.Query()
	weeks, err := strconv.Atoi(q.Get("weeks"))
	if err != nil || weeks < 1 || weeks > 104 {
		weeks = 12
	}
	zone := v.clock().zone
	since := monday(v.now.In(zone)).AddDate(0, 0, -7*(weeks-1))
	p := figuresPage{frame: v.frame("How it goes"), Weeks: weeks, Cents: q.Get("cents")}
	if p.Rows, err = db.Figures(v.ctx, s.opts.Pool, since, zone.String()); err != nil {
		return err
	}
	if p.Stops, p.Caught, err = db.Stops(v.ctx, s.opts.Pool, since); err != nil {
		return err
	}
	for i := range p.Stops {
		p.Stops[i].What = plain(p.Stops[i].What)
	}
	for i := range p.Caught {
		p.Caught[i].What = plain(p.Caught[i].What)
	}
	texts, err := db.Texts(v.ctx, s.opts.Pool, since, zone.String())
	if err != nil {
		return err
	}
	cents, err := strconv.ParseFloat(p.Cents, 64)
	if err != nil || cents <= 0 || cents > 1000 {
		cents, p.Cents = 0, ""
	}
	for _, t := range texts {
		row := textRow{t.Week.Format("2 Jan"), t.Texts, t.Segments, ""}
		if cents > 0 {
			row.Cost = fmt.Sprintf("$%.2f", float64(t.Segments)*cents/100)
		}
		p.Texts = append(p.Texts, row)
	}
	p.Charts = charts(p.Rows, since, weeks)
	return v.show(http.StatusOK, "figures.html", p)
}

func monday(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d-(int(t.Weekday())+6)%7, 0, 0, 0, 0, t.Location())
}

// chart is one row of bars, a week each, drawn here: nothing is left to a script.
type chart struct {
	Title string
	Sum   int
	Width int
	Bars  []bar
}

type bar struct {
	X, Y, W, H int
	N          int
	Label      string
	Named      bool // there is room for its label
}

const (
	chartHeight = 90
	barWidth    = 28
)

// charts adds up all channels week by week.
func charts(rows []db.WeekFigures, since time.Time, weeks int) []chart {
	var out []chart
	for _, c := range []struct {
		title string
		of    func(db.WeekFigures) int
	}{
		{"Talks begun", func(f db.WeekFigures) int { return f.Begun }},
		{"Measured", func(f db.WeekFigures) int { return f.Measured }},
		{"Ready to order from", func(f db.WeekFigures) int { return f.Ready }},
		{"Taken by one of us", func(f db.WeekFigures) int { return f.Taken }},
		{"Price out", func(f db.WeekFigures) int { return f.Quoted }},
		{"Ordered", func(f db.WeekFigures) int { return f.Ordered }},
	} {
		sums := make([]int, weeks)
		ch := chart{Title: c.title, Width: weeks*(barWidth+6) + 10}
		for _, r := range rows {
			y, m, d := r.Week.Date()
			i := int(time.Date(y, m, d, 12, 0, 0, 0, since.Location()).Sub(since).Hours() / (7 * 24))
			if i >= 0 && i < weeks {
				sums[i] += c.of(r)
				ch.Sum += c.of(r)
			}
		}
		ch.draw(sums, since)
		out = append(out, ch)
	}
	return out
}

func (c *chart) draw(sums []int, since time.Time) {
	most := 1
	for _, n := range sums {
		most = max(most, n)
	}
	for i, n := range sums {
		h := n * (chartHeight - 20) / most
		c.Bars = append(c.Bars, bar{X: 5 + i*(barWidth+6), Y: chartHeight - h, W: barWidth, H: h, N: n,
			Label: since.AddDate(0, 0, 7*i).Format("2 Jan"), Named: i%2 == 0})
	}
}

// Share of talks that began after hours, in percent.
func (p figuresPage) Share() int {
	var all, after int
	for _, r := range p.Rows {
		all, after = all+r.Begun, after+r.AfterHours
	}
	if all == 0 {
		return 0
	}
	return (after*100 + all/2) / all
}
