package conversation

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

// person is one simulated person of testdata/persons; README.md there says how they talk.
type person struct {
	ID         string              `json:"id"`
	Channel    Channel             `json:"channel"`
	At         time.Time           `json:"at"`
	Opening    []string            `json:"opening"`
	Answers    map[string][]string `json:"answers"`
	Default    string              `json:"default"`
	Unprompted []struct {
		AfterTopic string `json:"after_topic"`
		Text       string `json:"text"`
	} `json:"unprompted"`
	Expect struct {
		Status     Status                     `json:"status"`
		Replace    fitcheck.Replace           `json:"replace"`
		Urgent     *bool                      `json:"urgent"`
		AfterHours *bool                      `json:"after_hours"`
		Facts      map[string]json.RawMessage `json:"facts"`
		May        map[string]json.RawMessage `json:"may"`
		Most       int                        `json:"max_messages"`
		Why        *bool                      `json:"why_staff_nonempty"`
	} `json:"expect"`
}

// visit is one person's talk.
type visit struct {
	t        *testing.T
	p        person
	shop     *Shop
	talk     Talk
	now      time.Time
	sent     int
	n        int
	asked    map[string]int
	said     []string
	faults   []string
	given    map[string]int
	prompted map[int]bool
}

// TestPersons plays every person and holds what comes of it against what is true of
// them: no wrong fact, the right end, nobody asked the same thing three times.
func TestPersons(t *testing.T) {
	files, err := filepath.Glob("testdata/persons/*.json")
	if err != nil || len(files) < 60 {
		t.Fatalf("%d persons, %v", len(files), err)
	}
	var counts []int
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var p person
		if err := json.Unmarshal(raw, &p); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		t.Run(p.ID, func(t *testing.T) {
			v := &visit{t: t, p: p, shop: testShop(t), now: p.At, asked: map[string]int{}, given: map[string]int{}, prompted: map[int]bool{}}
			v.play()
			v.judge()
			if len(v.faults) > 0 {
				t.Errorf("%s\n%s", strings.Join(v.faults, "\n"), strings.Join(v.said, "\n"))
			}
			if v.talk.Lead.Status == StatusReady && v.talk.UnitCount() == 1 {
				counts = append(counts, v.sent)
			}
		})
	}
	slices.Sort(counts)
	if len(counts) > 0 {
		if m := counts[len(counts)/2]; m > 9 {
			t.Errorf("a lead of one unit takes %d messages in the middle, of %v", m, counts)
		}
	}
}

func (v *visit) play() {
	v.talk = Talk{Ref: "R7KQ4", Channel: v.p.Channel}
	if v.p.Channel == Email {
		v.talk.Email = "person@example.com"
	} else {
		v.talk.Phone = "+12185550123"
	}
	for _, text := range v.p.Opening {
		v.send(text)
	}
	for len(v.talk.Memory.Asking) > 0 && v.sent < 40 {
		text, ok := v.answer()
		if !ok {
			return
		}
		v.send(text)
	}
}

func (v *visit) send(text string) {
	m := Message{At: v.now, From: FromCustomer, Channel: v.p.Channel, Text: text}
	if rest, ok := strings.CutPrefix(text, "[photo]"); ok {
		m.Text, m.Photos = strings.TrimSpace(rest), 1
	}
	v.n++
	v.sent++
	m.N = v.n
	v.said = append(v.said, "C: "+text)
	out, err := Respond(v.talk, []Message{m}, v.now, v.shop)
	if err != nil {
		v.t.Fatal(err)
	}
	v.talk = out.Talk
	for _, u := range out.Say {
		v.n++
		v.said = append(v.said, "B: "+u.Text)
	}
	v.said = append(v.said, fmt.Sprintf("   (%s; asking %s)", v.talk.State, strings.Join(v.talk.Asking(), ", ")))
	for _, a := range v.talk.Memory.Asking {
		if !out.Waits {
			question := a.String()
			if a.Topic == fitcheck.TopicConfirm {
				question += fmt.Sprintf(" list %d", v.talk.Memory.Said["summary.head"]) // one that was put right is another
			}
			v.asked[question]++
		}
	}
	v.now = v.now.Add(time.Minute)
}

// answer is what the person says to what is asked now.
func (v *visit) answer() (string, bool) {
	asking := v.talk.Memory.Asking
	for i, u := range v.p.Unprompted {
		if !v.prompted[i] && v.given[u.AfterTopic] > 0 {
			v.prompted[i] = true
			return u.Text, true
		}
	}
	var parts []string
	for _, a := range asking {
		if text := v.answerTo(a); text != "" && !slices.Contains(parts, text) {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, "\n"), len(parts) > 0
}

func (v *visit) answerTo(a Ask) string {
	for _, key := range []string{a.String(), string(a.Topic)} {
		if texts := v.p.Answers[key]; len(texts) > 0 {
			text := texts[min(v.given[key], len(texts)-1)]
			v.given[key]++
			if key != string(a.Topic) {
				v.given[string(a.Topic)]++
			}
			return text
		}
	}
	return v.p.Default
}

func (v *visit) fault(format string, args ...any) {
	v.faults = append(v.faults, fmt.Sprintf(format, args...))
}

func (v *visit) judge() {
	e, l := v.p.Expect, v.talk.Lead
	if e.Status != "" && l.Status != e.Status {
		v.fault("status %s, want %s; %v", l.Status, e.Status, l.WhyStaff)
	}
	for i, u := range l.Units {
		if e.Replace != "" && u.Check.Replace != e.Replace {
			v.fault("unit %d: replace %s %v, want %s", i+1, u.Check.Replace, u.Check.Reasons, e.Replace)
		}
	}
	if e.Urgent != nil && l.Urgent != *e.Urgent {
		v.fault("urgent %v", l.Urgent)
	}
	if e.AfterHours != nil && l.AfterHours != *e.AfterHours {
		v.fault("after hours %v", l.AfterHours)
	}
	if e.Why != nil && *e.Why != (len(l.WhyStaff) > 0) {
		v.fault("why staff: %v", l.WhyStaff)
	}
	if e.Most > 0 && v.sent > e.Most {
		v.fault("took %d messages, at most %d", v.sent, e.Most)
	}
	for ask, n := range v.asked {
		if n > maxTries {
			v.fault("asked %s %d times", ask, n)
		}
	}
	v.judgeFacts()
}

func (v *visit) judgeFacts() {
	for key, want := range v.p.Expect.Facts {
		a := askNamed(key)
		if got := v.talk.Value(a.Topic, a.Unit); !agrees(want, got) {
			v.fault("%s is %s, want %s", key, asJSON(got), want)
		}
	}
	for _, e := range v.talk.Ledger {
		if e.Undone || v.talk.entry(e.Topic, e.Unit).Message != e.Message || slices.Contains([]fitcheck.Topic{fitcheck.TopicPhotos,
			fitcheck.TopicEmail, fitcheck.TopicPhone, fitcheck.TopicOutline, fitcheck.TopicConfirm}, e.Topic) {
			continue
		}
		if !v.mayBe(e) {
			v.fault("wrong fact %s = %s (%q)", Ask{e.Topic, e.Unit}, asJSON(e.Value), e.Said)
		}
	}
}

func (v *visit) mayBe(e Entry) bool {
	for _, list := range []map[string]json.RawMessage{v.p.Expect.Facts, v.p.Expect.May} {
		for _, key := range []string{Ask{e.Topic, e.Unit}.String(), string(e.Topic)} {
			if want, ok := list[key]; ok {
				if agrees(want, v.talk.Value(e.Topic, e.Unit)) {
					return true
				}
			}
		}
	}
	return false
}

func askNamed(key string) Ask {
	var a Ask
	_ = a.UnmarshalText([]byte(key))
	if a.Unit == 0 && a.Topic.OfUnit() {
		a.Unit = 1
	}
	return a
}

func asJSON(v fitcheck.Value) string {
	b, _ := json.Marshal(v)
	return string(b)
}

// agrees compares only the keys that are given; words without regard to case, lists
// without regard to order.
func agrees(want json.RawMessage, got fitcheck.Value) bool {
	var w, g any
	if json.Unmarshal(want, &w) != nil || json.Unmarshal([]byte(asJSON(got)), &g) != nil {
		return false
	}
	return covers(w, g)
}

func covers(want, got any) bool {
	switch w := want.(type) {
	case map[string]any:
		g, ok := got.(map[string]any)
		for k, v := range w {
			ok = ok && covers(v, g[k])
		}
		return ok
	case []any:
		g, ok := got.([]any)
		for _, v := range w {
			ok = ok && slices.ContainsFunc(g, func(x any) bool { return covers(v, x) })
		}
		return ok && len(g) == len(w)
	case string:
		g, ok := got.(string)
		return ok && strings.EqualFold(w, g)
	case float64:
		g, ok := got.(float64)
		return ok && g-w < 1e-6 && w-g < 1e-6
	}
	return want == got
}
