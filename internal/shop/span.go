package shop

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// Span is a length of time, written like 8s, 30 seconds, 5m, 24h or 2 days.
type Span time.Duration

var spanForm = regexp.MustCompile(`^(\d{1,6}(?:\.\d{1,3})?) ?([a-z]+)$`)

var spanUnits = map[string]time.Duration{
	"ms": time.Millisecond,
	"s":  time.Second, "second": time.Second, "seconds": time.Second,
	"m": time.Minute, "minute": time.Minute, "minutes": time.Minute,
	"h": time.Hour, "hour": time.Hour, "hours": time.Hour,
	"d": 24 * time.Hour, "day": 24 * time.Hour, "days": 24 * time.Hour,
}

func (s *Span) set(text string) error {
	parts := spanForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if parts == nil || spanUnits[parts[2]] == 0 {
		return fmt.Errorf("%q is not a length of time: write a number and its unit, like 8s, 5m, 24h or 2 days", text)
	}
	n, err := strconv.ParseFloat(parts[1], 64)
	if err != nil {
		return fmt.Errorf("%q is not a length of time: %w", text, err)
	}
	*s = Span(n * float64(spanUnits[parts[2]]))
	return nil
}

// UnmarshalText reads a length of time, also as Go writes it ("1h30m").
func (s *Span) UnmarshalText(text []byte) error {
	if d, err := time.ParseDuration(string(text)); err == nil && d >= 0 {
		*s = Span(d)
		return nil
	}
	return s.set(string(text))
}

// Duration is the length of time.
func (s Span) Duration() time.Duration { return time.Duration(s) }

// String is the length of time as a shop file has it.
func (s Span) String() string {
	for _, unit := range []struct {
		of   time.Duration
		word string
	}{{24 * time.Hour, " days"}, {time.Hour, "h"}, {time.Minute, "m"}, {time.Second, "s"}} {
		if d := time.Duration(s); d >= unit.of && d%unit.of == 0 {
			return strconv.FormatInt(int64(d/unit.of), 10) + unit.word
		}
	}
	return strconv.FormatInt(time.Duration(s).Milliseconds(), 10) + "ms"
}
