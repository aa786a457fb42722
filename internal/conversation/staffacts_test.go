package conversation

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

const inch = fitcheck.Inch

// curbTalk is a talk about one unit whose curb was measured outside and inside.
func curbTalk(state State) Talk {
	said := func(topic fitcheck.Topic, unit int, v fitcheck.Value) Entry {
		return Entry{Topic: topic, Unit: unit, Value: v, Said: "so", Message: 1, By: FromCustomer}
	}
	return Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123", Language: "en", State: state,
		OpenedAt: staffNoon, Lead: Lead{Status: StatusOpen}, Memory: Memory{Introduced: true},
		Ledger: []Entry{
			said(fitcheck.TopicName, 0, fitcheck.Text("Ana")),
			said(fitcheck.TopicPlace, 0, fitcheck.Place{City: "Duluth", State: "MN", ZIP: "55802"}),
			said(fitcheck.TopicUse, 0, fitcheck.Choice("home")),
			said(fitcheck.TopicStyle, 1, fitcheck.Choice("curb_mount")),
			said(fitcheck.TopicWant, 1, fitcheck.Choice("complete_unit")),
			said(fitcheck.TopicCurbOutside, 1, fitcheck.Size{Width: 25*inch + inch/2, Length: 49*inch + inch/2}),
			said(fitcheck.TopicCurbInside, 1, fitcheck.Size{Width: 22*inch + inch/2, Length: 46*inch + inch/2}),
		}}
}

var staffNoon = time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)

func TestStaffFactIsCheckedAtOnce(t *testing.T) {
	shop := testShop(t)
	talk := curbTalk(WithStaff)
	if v := Look(talk, shop).Units[0].Verdict; v != fitcheck.VerdictFits {
		t.Fatalf("before: %s", v)
	}
	e := Entry{Topic: fitcheck.TopicCurbInside, Unit: 1, Value: fitcheck.Size{Width: 25 * inch, Length: 49 * inch}}
	out, err := StaffFact(talk, e, staffNoon, shop)
	if err != nil {
		t.Fatal(err)
	}
	if len(out.Say) > 0 || len(out.Facts) != 1 || out.Facts[0].By != FromStaff || out.Facts[0].Message != 0 {
		t.Errorf("said %v, added %+v", out.Say, out.Facts)
	}
	if v := out.Talk.Lead.Units[0].Check.Verdict; v == fitcheck.VerdictFits {
		t.Errorf("the verdict stayed %s", v)
	}
	back, err := StaffUndo(out.Talk, len(out.Talk.Ledger), staffNoon, shop)
	if err != nil {
		t.Fatal(err)
	}
	if v := back.Talk.Lead.Units[0].Check.Verdict; v != fitcheck.VerdictFits {
		t.Errorf("taken back: %s", v)
	}
	if len(talk.Ledger) != 7 {
		t.Error("the talk that went in was changed")
	}
}

func TestStaffFactsThatAreNone(t *testing.T) {
	for _, c := range []struct {
		why string
		e   Entry
	}{
		{"no value", Entry{Topic: fitcheck.TopicName}},
		{"a unit that is two further", Entry{Topic: fitcheck.TopicLayers, Unit: 3, Value: fitcheck.Whole(2)}},
		{"no unit", Entry{Topic: fitcheck.TopicLayers, Value: fitcheck.Whole(2)}},
		{"a value of another kind", Entry{Topic: fitcheck.TopicLayers, Unit: 1, Value: fitcheck.Text("two")}},
		{"a lead's topic with a unit", Entry{Topic: fitcheck.TopicName, Unit: 1, Value: fitcheck.Text("Ana")}},
		{"no topic", Entry{Topic: "mood", Value: fitcheck.Text("Ana")}},
	} {
		if _, err := StaffFact(curbTalk(WithStaff), c.e, staffNoon, testShop(t)); err == nil {
			t.Errorf("%s was taken", c.why)
		}
	}
	if _, err := StaffUndo(curbTalk(WithStaff), 1, staffNoon, testShop(t)); !errors.Is(err, ErrNotNow) {
		t.Errorf("a customer's fact was taken back: %v", err)
	}
}

// TestSilentWhileStaffTalk: what the customer then writes is heard and not answered,
// until the assistant is let go on.
func TestSilentWhileStaffTalk(t *testing.T) {
	shop := testShop(t)
	for _, state := range []State{Introducing, Measuring, Confirming, Lapsed, WithStaff, HandedOver} {
		out, err := StaffWrote(curbTalk(state), staffNoon, shop)
		if err != nil {
			t.Fatalf("%s: %v", state, err)
		}
		in := []Message{{N: 3, At: staffNoon, From: FromCustomer, Channel: SMS, Text: "two layers please"}}
		heard, err := Respond(out.Talk, in, staffNoon, shop)
		if err != nil || len(heard.Say) > 0 || !heard.Alert {
			t.Errorf("%s: said %v, alert %v, %v", state, heard.Say, heard.Alert, err)
		}
		free, err := Release(heard.Talk, staffNoon, shop)
		if err != nil || len(free.Say) == 0 || free.Say[0].Kind != Reminder {
			t.Errorf("%s: let go on, it said %v, %v", state, free.Say, err)
		}
	}
}

func TestStatusesThatStaffSet(t *testing.T) {
	shop := testShop(t)
	for _, status := range []Status{StatusPickedUp, StatusQuoted, StatusOrdered, StatusDeclined} {
		out, err := StaffMark(curbTalk(WithStaff), status, staffNoon, shop)
		if err != nil || out.Talk.Lead.Status != status {
			t.Errorf("%s became %s, %v", status, out.Talk.Lead.Status, err)
		}
		back, err := StaffReturn(out.Talk, staffNoon, shop)
		if err != nil || back.Talk.Lead.Status != StatusNeedsPerson {
			t.Errorf("given back from %s: %s, %v", status, back.Talk.Lead.Status, err)
		}
	}
	for _, status := range []Status{StatusOpen, StatusReady, StatusNeedsPerson, StatusClosed} {
		if _, err := StaffMark(curbTalk(WithStaff), status, staffNoon, shop); !errors.Is(err, ErrNotNow) {
			t.Errorf("%s was set by hand: %v", status, err)
		}
	}
}

func TestShutStaysShut(t *testing.T) {
	shop := testShop(t)
	out, err := StaffShut(curbTalk(Measuring), staffNoon, shop)
	if err != nil || out.Talk.Lead.Status != StatusClosed {
		t.Fatalf("%s, %v", out.Talk.Lead.Status, err)
	}
	in := []Message{{N: 3, At: staffNoon, From: FromCustomer, Channel: SMS, Text: "best prices on pills"}}
	after, err := Respond(out.Talk, in, staffNoon, shop)
	if err != nil || after.Talk.Lead.Status != StatusClosed || len(after.Say) > 0 || after.Alert {
		t.Errorf("%s, said %v, alert %v, %v", after.Talk.Lead.Status, after.Say, after.Alert, err)
	}
}

func TestAskFor(t *testing.T) {
	shop := testShop(t)
	for _, c := range []struct {
		ask   Ask
		of    fitcheck.Topic
		state State
		says  string
	}{
		{Ask{fitcheck.TopicCurbDiagonals, 1}, "", Measuring, "orner"},
		{Ask{fitcheck.TopicCurbHeight, 1}, "", Measuring, "box"},
		{Ask{Topic: fitcheck.TopicPhotos}, fitcheck.TopicStyle, Picturing, "photo"},
		{Ask{fitcheck.TopicLayers, 1}, "", Choosing, "layers"},
		{Ask{Topic: fitcheck.TopicUse}, "", Introducing, "house"},
	} {
		for _, from := range []State{WithStaff, HandedOver, Lapsed, Measuring} {
			out, err := AskFor(curbTalk(from), c.ask, c.of, staffNoon, shop)
			if err != nil {
				t.Errorf("%s from %s: %v", c.ask, from, err)
				continue
			}
			said := strings.ToLower(texts(out.Say))
			if out.Talk.State != c.state || !strings.Contains(said, c.says) || len(out.Talk.Memory.Asking) != 1 {
				t.Errorf("%s from %s: in %s, asking %v, said %q", c.ask, from, out.Talk.State, out.Talk.Memory.Asking, said)
			}
			if out.Wake.IsZero() {
				t.Errorf("%s from %s: nobody will be reminded", c.ask, from)
			}
		}
	}
	if _, err := AskFor(curbTalk(Silenced), Ask{fitcheck.TopicLayers, 1}, "", staffNoon, shop); !errors.Is(err, ErrNotNow) {
		t.Errorf("asked somebody who opted out: %v", err)
	}
}

func texts(say []Utterance) string {
	var b strings.Builder
	for _, u := range say {
		b.WriteString(u.Text + "\n")
	}
	return b.String()
}
