package staff

import (
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// line is a lead as a list shows it, in words.
type line struct {
	db.QueueLine
	Who     string
	Where   string
	What    string // part and size
	Verdict string // what the check says
	Says    string // why it needs a person
	Open    string // what is missing
	Waited  string
	Since   string
	Tape    tape
	Stroke  string // how the line of its edge is drawn: by status, never by color alone
}

// listUnit is what a list needs of a lead's unit.
type listUnit struct {
	Count int    `json:"count"`
	Style string `json:"style"`
	Check struct {
		Replace fitcheck.Replace `json:"replace"`
		Verdict fitcheck.Verdict `json:"verdict"`
		Missing []fitcheck.Topic `json:"missing"`
		Order   *struct {
			Frame   *listSize `json:"frame_inside"`
			Plastic *listSize `json:"plastic_size"`
		} `json:"order"`
	} `json:"check"`
}

type listSize struct {
	Width    float64 `json:"width_in"`
	Length   float64 `json:"length_in"`
	Diameter float64 `json:"diameter_in"`
}

func (s *listSize) words() string {
	return sizeWords(fitcheck.Size{Width: fitcheck.FromInches(s.Width), Length: fitcheck.FromInches(s.Length),
		Diameter: fitcheck.FromInches(s.Diameter)})
}

func newLine(q db.QueueLine, v *visit) line {
	c := v.clock()
	l := line{QueueLine: q, Who: firstOf(q.Name, phoneWords(q.Phone), q.Email, "somebody"), Where: placeWords(q.City, q.Region, q.ZIP),
		Says: list(q.WhyStaff), Stroke: string(q.Status), Since: c.at(q.OpenedAt)}
	since := q.UpdatedAt
	if q.WaitingSince != nil {
		since = *q.WaitingSince
	}
	l.Waited, l.Tape = howLong(v.now.Sub(since)), newTape(v.now.Sub(since))
	l.units()
	return l
}

func (l *line) units() {
	var units []listUnit
	if err := json.Unmarshal(l.Units, &units); err != nil {
		return // an old form of record: the list goes without
	}
	var what, open, verdicts []string
	for i, u := range units {
		what = append(what, u.words())
		for _, t := range u.Check.Missing {
			name := strings.ToLower(topicName(t))
			if len(units) > 1 {
				name = fmt.Sprintf("%s (%d)", name, i+1)
			}
			open = append(open, name)
		}
		if v := verdictWords[u.Check.Verdict]; v != "" {
			if len(units) > 1 {
				v = fmt.Sprintf("%s (%d)", v, i+1)
			}
			verdicts = append(verdicts, v)
		}
	}
	l.What, l.Verdict = strings.Join(what, "; "), strings.Join(verdicts, ", ")
	const most = 4
	if len(open) > most {
		open = append(open[:most], fmt.Sprintf("%d more", len(open)-most))
	}
	l.Open = strings.Join(open, ", ")
}

// words say what a unit of a list is: "2 x complete unit 25 7/8 x 49 7/8".
func (u *listUnit) words() string {
	text := partWords[u.Check.Replace]
	if text == "" {
		text = "skylight"
	}
	if u.Check.Replace == fitcheck.ReplaceStaff && u.Style != "" {
		text = plain(u.Style) + ", " + text
	}
	if u.Count > 1 {
		text = fmt.Sprintf("%d x %s", u.Count, text)
	}
	if o := u.Check.Order; o != nil {
		if size := o.Frame; size != nil {
			text += " " + size.words()
		} else if size := o.Plastic; size != nil {
			text += " " + size.words()
		}
	}
	return text
}

func firstOf(words ...string) string {
	for _, w := range words {
		if strings.TrimSpace(w) != "" {
			return w
		}
	}
	return ""
}

// phoneWords writes a US number as one reads it.
func phoneWords(e164 string) string {
	if d, ok := strings.CutPrefix(e164, "+1"); ok && len(d) == 10 {
		return "(" + d[:3] + ") " + d[3:6] + "-" + d[6:]
	}
	return e164
}

// tape is a wait drawn as a length of tape: an inch for each hour, eight at the most.
type tape struct {
	Blade int    // its length in the drawing's units
	Ticks string // a path with the marks
	Over  bool   // longer than is drawn
}

const (
	tapeHour = 20 // units of the drawing for an hour
	tapeMost = 8  // hours that are drawn
)

func newTape(waited time.Duration) tape {
	hours := min(max(waited.Hours(), 0.1), tapeMost)
	t := tape{Blade: int(hours * tapeHour), Over: waited.Hours() > tapeMost}
	var b strings.Builder
	for x := tapeHour / 4; x <= t.Blade; x += tapeHour / 4 {
		depth := 4
		switch {
		case x%tapeHour == 0:
			depth = 11
		case x%(tapeHour/2) == 0:
			depth = 7
		}
		fmt.Fprintf(&b, "M%d 1v%d", x, depth)
	}
	t.Ticks = b.String()
	return t
}
