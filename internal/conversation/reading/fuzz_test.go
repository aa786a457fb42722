package reading

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// FuzzRead: every text has a reading that keeps the contract: quotes are the
// customer's words, values are of their topic's kind and above zero.
func FuzzRead(f *testing.F) {
	for _, examples := range corpus(f) {
		for i, e := range examples {
			if i%3 == 0 {
				f.Add(e.Text, e.Asked, uint8(e.Units))
			}
		}
	}
	f.Add("25 1/2 x", "curb_outside", uint8(1))
	f.Add(strings.Repeat("25 x 49 ", 600), "", uint8(0))
	f.Fuzz(func(t *testing.T, text, asked string, units uint8) {
		in := Input{Text: text, Units: int(units % 9)}
		if topicNames[asked] {
			in.Asked = []fitcheck.Topic{fitcheck.Topic(asked)}
		}
		checkReading(t, text, Read(in))
	})
}

func checkReading(t *testing.T, text string, got Reading) {
	t.Helper()
	if _, err := json.Marshal(got); err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	if got.Facts == nil || got.Unclear == nil || got.Requests == nil || got.Language == "" {
		t.Fatalf("%q: a list or the language is missing: %+v", text, got)
	}
	for _, f := range got.Facts {
		if f.Said == "" || !strings.Contains(text, f.Said) {
			t.Errorf("%q: %s quotes %q", text, f.Topic, f.Said)
		}
		checkValue(t, text, f)
	}
	for _, u := range got.Unclear {
		if u.Said == "" || !strings.Contains(text, u.Said) {
			t.Errorf("%q: a doubt quotes %q", text, u.Said)
		}
		if (u.Why == WhyWhich) != (u.Topic == nil) && u.Why == WhyWhich {
			t.Errorf("%q: %q has the topic %v", text, u.Why, *u.Topic)
		}
	}
}

func checkValue(t *testing.T, text string, f Fact) {
	t.Helper()
	if f.Topic.OfUnit() {
		var u fitcheck.Unit
		if err := u.Set(f.Topic, f.Value); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
	switch v := f.Value.(type) {
	case fitcheck.Size:
		for _, l := range append([]fitcheck.Length{v.Width, v.Length, v.Diameter, v.One}, v.Sides...) {
			if l < 0 || l > fitcheck.MaxLength {
				t.Errorf("%q: %s has the length %d", text, f.Topic, l)
			}
		}
		if v.Width+v.Length+v.Diameter+v.One == 0 && len(v.Sides) == 0 {
			t.Errorf("%q: %s is empty", text, f.Topic)
		}
	case fitcheck.Choice:
		known := false
		for _, c := range fitcheck.Choices(f.Topic) {
			known = known || c == string(v)
		}
		if !known {
			t.Errorf("%q: %s can't be %q", text, f.Topic, v)
		}
	case fitcheck.Text:
		if strings.TrimSpace(string(v)) == "" {
			t.Errorf("%q: %s is empty", text, f.Topic)
		}
	}
}
