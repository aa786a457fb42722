package staff

import (
	"time"

	"example.com/intake-bot/internal/db"
)

// chart is one row of bars, a week each, drawn here: nothing is left to a script.
type chart struct {
	Title string
	Sum   int // over all weeks, or their mean
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

// weekSpan are the weeks that are shown.
type weekSpan struct {
	since time.Time // midnight on a Monday in the shop's zone
	weeks int
}

// at is the place of a week, told by the date of its Monday; ok is false outside.
func (s weekSpan) at(week time.Time) (i int, ok bool) {
	y, m, d := week.Date()
	i = int(time.Date(y, m, d, 12, 0, 0, 0, s.since.Location()).Sub(s.since).Hours() / (7 * 24))
	return i, i >= 0 && i < s.weeks
}

// chart draws a value for each week.
func (s weekSpan) chart(title string, sum int, values []int) chart {
	c := chart{Title: title, Sum: sum, Width: s.weeks*(barWidth+6) + 10}
	most := 1
	for _, n := range values {
		most = max(most, n)
	}
	for i, n := range values {
		h := n * (chartHeight - 20) / most
		c.Bars = append(c.Bars, bar{X: 5 + i*(barWidth+6), Y: chartHeight - h, W: barWidth, H: h, N: n,
			Label: s.since.AddDate(0, 0, 7*i).Format("2 Jan"), Named: i%2 == 0})
	}
	return c
}

// talks draws what came of the talks, all channels together.
func (s weekSpan) talks(rows []db.WeekFigures) []chart {
	byWeek := make([][]db.WeekFigures, s.weeks)
	for _, r := range rows {
		if i, ok := s.at(r.Week); ok {
			byWeek[i] = append(byWeek[i], r)
		}
	}
	var out []chart
	for _, c := range []struct {
		title string
		of    func([]db.WeekFigures) int
	}{
		{"Talks begun", sumOf(func(f db.WeekFigures) int { return f.Begun })},
		{"Measured", sumOf(func(f db.WeekFigures) int { return f.Measured })},
		{"Ready to order from", sumOf(func(f db.WeekFigures) int { return f.Ready })},
		{"Taken by one of us", sumOf(func(f db.WeekFigures) int { return f.Taken })},
		{"Price out", sumOf(func(f db.WeekFigures) int { return f.Quoted })},
		{"Ordered", sumOf(func(f db.WeekFigures) int { return f.Ordered })},
		{"Began after hours, in percent", afterHours},
		{"Messages to ready, in the middle", middleOf(func(f db.WeekFigures) float64 { return f.Messages })},
		{"Minutes to ready, in the middle", middleOf(func(f db.WeekFigures) float64 { return f.Minutes })},
	} {
		values := make([]int, s.weeks)
		for i, week := range byWeek {
			values[i] = c.of(week)
		}
		out = append(out, s.chart(c.title, c.of(rows), values))
	}
	return out
}

func sumOf(of func(db.WeekFigures) int) func([]db.WeekFigures) int {
	return func(rows []db.WeekFigures) (sum int) {
		for _, r := range rows {
			sum += of(r)
		}
		return sum
	}
}

// middleOf joins the middles of several channels or weeks, each as often as it had talks
// that became ready.
func middleOf(of func(db.WeekFigures) float64) func([]db.WeekFigures) int {
	return func(rows []db.WeekFigures) int {
		var sum float64
		ready := 0
		for _, r := range rows {
			sum, ready = sum+of(r)*float64(r.Ready), ready+r.Ready
		}
		if ready == 0 {
			return 0
		}
		return int(sum/float64(ready) + 0.5)
	}
}

// afterHours is the share of talks that began after hours, in percent.
func afterHours(rows []db.WeekFigures) int {
	var all, after int
	for _, r := range rows {
		all, after = all+r.Begun, after+r.AfterHours
	}
	if all == 0 {
		return 0
	}
	return (after*100 + all/2) / all
}

// texts draws the segments of the texts out.
func (s weekSpan) texts(rows []db.TextFigures) chart {
	values, sum := make([]int, s.weeks), 0
	for _, r := range rows {
		if i, ok := s.at(r.Week); ok {
			values[i] += r.Segments
			sum += r.Segments
		}
	}
	return s.chart("Segments of texts out", sum, values)
}

// tally is a line of a table with a bar beside its number.
type tally struct {
	What string
	N    int
	Bar  int // of a hundred
}

func tallied(rows []db.Tally, words func(string) string) []tally {
	most := 1
	for _, r := range rows {
		most = max(most, r.N)
	}
	out := make([]tally, len(rows))
	for i, r := range rows {
		out[i] = tally{words(r.What), r.N, max(r.N*100/most, 1)}
	}
	return out
}
