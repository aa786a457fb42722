package staff

import (
	"fmt"
	"net/http"
	"strconv"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// figuresPage says how it goes: plain charts, each with its numbers beside it.
type figuresPage struct {
	frame
	Weeks  int
	Rows   []db.WeekFigures
	Charts []chart
	Cents  string
	Texts  []textRow
	Asked  []tally // what was asked when people fell silent
	Stops  []tally // why leads came to staff early or ended
	Caught []tally
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
	stops, err := db.Stops(v.ctx, s.opts.Pool, since)
	if err != nil {
		return err
	}
	p.Stops, p.Caught = tallied(stops.Why, plain), tallied(stops.Caught, plain)
	p.Asked = tallied(stops.Asked, func(t string) string { return topicName(fitcheck.Topic(t)) })
	texts, err := db.Texts(v.ctx, s.opts.Pool, since, zone.String())
	if err != nil {
		return err
	}
	cents, err := strconv.ParseFloat(p.Cents, 64)
	if err != nil || cents <= 0 || cents > 1000 {
		cents = s.opts.SegmentCents
	}
	if p.Cents = ""; cents > 0 {
		p.Cents = strconv.FormatFloat(cents, 'f', -1, 64)
	}
	for _, t := range texts {
		row := textRow{t.Week.Format("2 Jan"), t.Texts, t.Segments, ""}
		if cents > 0 {
			row.Cost = fmt.Sprintf("$%.2f", float64(t.Segments)*cents/100)
		}
		p.Texts = append(p.Texts, row)
	}
	shown := weekSpan{since, weeks}
	p.Charts = append(shown.talks(p.Rows), shown.texts(texts))
	return v.show(http.StatusOK, "figures.html", p)
}

func monday(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d-(int(t.Weekday())+6)%7, 0, 0, 0, 0, t.Location())
}
