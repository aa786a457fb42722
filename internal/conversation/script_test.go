package conversation

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

var update = flag.Bool("update", false, "write the talks in testdata anew")

// weekdays is a shop that is open from 8 to 17 on weekdays.
type weekdays struct{ zone *time.Location }

func (w weekdays) Open(t time.Time) bool {
	t = t.In(w.zone)
	return t.Weekday() != time.Saturday && t.Weekday() != time.Sunday && t.Hour() >= 8 && t.Hour() < 17
}

func (w weekdays) NextOpening(t time.Time) time.Time {
	for t = t.In(w.zone); !w.Open(t); {
		t = time.Date(t.Year(), t.Month(), t.Day(), t.Hour()+1, 0, 0, 0, w.zone)
	}
	return t
}

func testShop(t testing.TB) *Shop {
	t.Helper()
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	return &Shop{Name: "Pinwheel Dome Supply", Assistant: "the shop's assistant", Phone: "(218) 555-0142",
		Email: "help@pinwheel.example", Zone: zone, Hours: weekdays{zone}, Rules: fitcheck.DefaultRules()}
}

// TestTalks plays the talks in testdata/talks. In each file the lines that begin with
// "C: " are what the customer writes ("[2 photos]" at their end are photos), "at" sets the
// clock, "sells" what the shop sells, "wait" lets time pass; all else is what came of it, and -update writes it anew
// for a person to read.
func TestTalks(t *testing.T) {
	files, err := filepath.Glob("testdata/talks/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("no talks", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			raw, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			got := play(t, string(raw))
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if got != string(raw) {
				t.Errorf("%s went otherwise; got\n%s", file, got)
			}
		})
	}
}

type player struct {
	t        *testing.T
	shop     *Shop
	talk     Talk
	now      time.Time
	messages []Message
	wake     time.Time
	out      strings.Builder
}

func play(t *testing.T, script string) string {
	p := &player{t: t, shop: testShop(t), now: time.Date(2026, 3, 2, 16, 0, 0, 0, time.UTC),
		talk: Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+13035550123"}}
	lines := bufio.NewScanner(strings.NewReader(script))
	for lines.Scan() {
		p.line(lines.Text())
	}
	p.end()
	return p.out.String()
}

func (p *player) line(line string) {
	switch {
	case strings.HasPrefix(line, "#"):
		fmt.Fprintln(&p.out, line)
	case strings.HasPrefix(line, "at "):
		at, err := time.Parse(time.RFC3339, strings.TrimPrefix(line, "at "))
		if err != nil {
			p.t.Fatal(err)
		}
		p.now = at
		fmt.Fprintln(&p.out, line)
	case strings.HasPrefix(line, "sells "):
		rules := *p.shop.Rules
		p.shop.Rules = &rules
		if err := json.Unmarshal([]byte(strings.TrimPrefix(line, "sells ")), &rules.Sells); err != nil {
			p.t.Fatal(err)
		}
		fmt.Fprintln(&p.out, line)
	case strings.HasPrefix(line, "channel "):
		p.talk.Channel = Channel(strings.TrimPrefix(line, "channel "))
		fmt.Fprintln(&p.out, line)
	case line == "wait":
		fmt.Fprintln(&p.out, line)
		p.wait()
	case strings.HasPrefix(line, "C: "):
		fmt.Fprintln(&p.out, line)
		p.customer(strings.TrimPrefix(line, "C: "))
	}
}

// customer sends one line; several thoughts in a row are parted by " || ".
func (p *player) customer(line string) {
	var in []Message
	for _, text := range strings.Split(line, " || ") {
		photos := 0
		if i := strings.LastIndex(text, " photos]"); i >= 0 {
			start := strings.LastIndex(text, "[")
			fmt.Sscan(text[start+1:i], &photos)
			text = strings.TrimSpace(text[:start])
		}
		m := Message{N: len(p.messages) + 1, At: p.now, From: FromCustomer, Channel: p.talk.Channel, Text: text, Photos: photos}
		p.messages = append(p.messages, m)
		in = append(in, m)
	}
	out, err := Respond(p.talk, in, p.now, p.shop)
	if err != nil {
		p.t.Fatal(err)
	}
	p.took(out)
	p.now = p.now.Add(time.Minute)
}

// wait lets the time pass until the talk wants to be looked at again.
func (p *player) wait() {
	if p.wake.IsZero() {
		fmt.Fprintln(&p.out, "   nothing to wait for")
		return
	}
	p.now = p.wake
	fmt.Fprintf(&p.out, "   it is %s\n", p.now.UTC().Format(time.RFC3339))
	out, err := Nudge(p.talk, p.now, p.shop)
	if err != nil {
		p.t.Fatal(err)
	}
	p.took(out)
}

func (p *player) took(out Outcome) {
	p.talk, p.wake = out.Talk, out.Wake
	for _, u := range out.Say {
		p.messages = append(p.messages, Message{N: len(p.messages) + 1, At: p.now, From: FromBot, Channel: p.talk.Channel, Text: u.Text})
		fmt.Fprintf(&p.out, "B: %s\n", strings.ReplaceAll(u.Text, "\n", "\n   "))
	}
	fmt.Fprintf(&p.out, "   (%s; asking %s)\n", p.talk.State, strings.Join(p.talk.Asking(), ", "))
}

func (p *player) end() {
	l := p.talk.Lead
	fmt.Fprintf(&p.out, "= %s", l.Status)
	if l.Qualified {
		fmt.Fprint(&p.out, ", qualified")
	}
	if l.Urgent {
		fmt.Fprint(&p.out, ", urgent")
	}
	if l.AfterHours {
		fmt.Fprint(&p.out, ", after hours")
	}
	if len(l.WhyStaff) > 0 {
		fmt.Fprintf(&p.out, ": %s", strings.Join(l.WhyStaff, "; "))
	}
	fmt.Fprintln(&p.out)
	for _, e := range p.talk.Ledger {
		v, err := json.Marshal(e.Value)
		if err != nil {
			p.t.Fatal(err)
		}
		mark := ""
		if e.Undone {
			mark = " (taken back)"
		}
		fmt.Fprintf(&p.out, "  %s = %s  [%d: %s]%s\n", Ask{e.Topic, e.Unit}, v, e.Message, strings.ReplaceAll(e.Said, "\n", " / "), mark)
	}
	for i, u := range l.Units {
		fmt.Fprintf(&p.out, "  unit %d: replace %s %v, %s", i+1, u.Check.Replace, u.Check.Reasons, u.Check.Verdict)
		for _, f := range u.Check.Findings {
			fmt.Fprintf(&p.out, ", %s", f.Code)
		}
		fmt.Fprintln(&p.out)
	}
}
