package conversation

import (
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/fitcheck"
)

var mailNoon = time.Date(2026, 3, 2, 18, 0, 0, 0, time.UTC)

func mailShop() *Shop {
	return &Shop{Name: "Pinwheel Dome Supply", Assistant: "the shop's assistant", Phone: "(218) 555-0142", Zone: time.UTC,
		Rules: fitcheck.DefaultRules()}
}

// take lets a talk take messages, numbered from next on.
func take(t *testing.T, talk Talk, in ...Message) (Outcome, string) {
	t.Helper()
	for i := range in {
		in[i].From, in[i].At = FromCustomer, mailNoon
		if in[i].N == 0 {
			in[i].N = i + 1
		}
		talk.Channel = in[i].Channel
	}
	out, err := Respond(talk, in, mailNoon, mailShop())
	if err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, u := range out.Say {
		said = append(said, u.Text)
	}
	return out, strings.Join(said, "\n")
}

func TestPiecesOfAMailAnswerWhatStandsAboveThem(t *testing.T) {
	talk := Talk{Ref: "R7KQ4", Channel: Email, Email: "dana@example.com", Language: "en"}
	out, _ := take(t, talk, Message{Channel: Email, Text: "22 1/2 x 46 1/2\n\n25 1/2 x 49 1/2", Blocks: []Block{
		{Asked: []fitcheck.Topic{fitcheck.TopicCurbInside}, Text: "22 1/2 x 46 1/2"},
		{Asked: []fitcheck.Topic{fitcheck.TopicCurbOutside}, Text: "25 1/2 x 49 1/2"},
	}})
	u := out.Talk.Units()[0]
	if u.CurbInside.Width != fitcheck.FromInches(22.5) || u.CurbOutside.Width != fitcheck.FromInches(25.5) {
		t.Errorf("inside %v, outside %v", u.CurbInside, u.CurbOutside)
	}
}

func TestOptOutIsPerWay(t *testing.T) {
	talk := Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123", Email: "dana@example.com"}
	out, said := take(t, talk, Message{Channel: Email, Text: "STOP"})
	if !strings.Contains(said, "mail") || out.Talk.State != Silenced || out.Talk.Memory.StoppedOn != Email {
		t.Fatalf("after STOP by mail: %s, %q", out.Talk.State, said)
	}
	if again, said := take(t, out.Talk, Message{Channel: Email, Text: "it is 25 1/2 x 49 1/2 outside", N: 3}); said != "" || again.Talk.State != Silenced {
		t.Errorf("a mail after STOP by mail is answered: %q", said)
	}
	if on, said := take(t, out.Talk, Message{Channel: SMS, Text: "it is a house", N: 3}); said == "" || on.Talk.State == Silenced {
		t.Errorf("a text after STOP by mail is not answered")
	}
	if back, said := take(t, out.Talk, Message{Channel: Email, Text: "START", N: 3}); !strings.Contains(said, "mail to this address is on again") || back.Talk.Memory.Stopped {
		t.Errorf("START by mail: %q", said)
	}
}

func TestCirclesEnd(t *testing.T) {
	for channel, most := range map[Channel]int{Email: mostBarrenMails, SMS: mostBarren} {
		talk, answers := Talk{Ref: "R7KQ4", Channel: channel, Phone: "+12185550123", Email: "desk@example.com"}, 0
		for n := range 3 * most {
			out, said := take(t, talk, Message{Channel: channel, N: 2*n + 1, Text: "Thank you for your message. How did we do today?"})
			if said != "" {
				answers++
			}
			talk = out.Talk
		}
		if answers > most || talk.Lead.Status != StatusNeedsPerson || talk.State != WithStaff {
			t.Errorf("%s: %d answers, lead %s, talk %s", channel, answers, talk.Lead.Status, talk.State)
		}
		// Something new is heard again.
		out, _ := take(t, talk, Message{Channel: channel, N: 999, Text: "the box is 25 1/2 x 49 1/2 outside"})
		if out.Talk.Memory.Barren != 0 || !out.Alert {
			t.Errorf("%s: a new fact is not heard: %+v", channel, out.Talk.Memory)
		}
	}
}

func TestSamePerson(t *testing.T) {
	claimed := Talk{Ref: "R7KQ4", Phone: "+12185550123", Ledger: []Entry{
		{Topic: fitcheck.TopicName, Value: fitcheck.Text("Dana Fields")}, {Topic: fitcheck.TopicEmail, Value: fitcheck.Text("dana@example.com")},
		{Topic: fitcheck.TopicPlace, Value: fitcheck.Place{City: "Duluth", State: "MN", ZIP: "55802"}}}}
	name := Entry{Topic: fitcheck.TopicName, Value: fitcheck.Text("dana  fields")}
	for _, c := range []struct {
		what  string
		given bool
		email string
		says  []Entry
		want  bool
	}{
		{"the ref alone", false, "x@example.com", nil, false},
		{"ref and name", false, "x@example.com", []Entry{name}, false},
		{"ref and ZIP", false, "x@example.com", []Entry{{Topic: fitcheck.TopicPlace, Value: fitcheck.Place{ZIP: "55802"}}}, false},
		{"ref, name and ZIP", false, "x@example.com", []Entry{name, {Topic: fitcheck.TopicPlace, Value: fitcheck.Place{ZIP: "55802"}}}, true},
		{"ref, name and town", false, "x@example.com", []Entry{name, {Topic: fitcheck.TopicPlace, Value: fitcheck.Place{City: "duluth", State: "MN"}}}, true},
		{"ref, name and another town", false, "x@example.com", []Entry{name, {Topic: fitcheck.TopicPlace, Value: fitcheck.Place{City: "Duluth", State: "GA"}}}, false},
		{"ref and the number", false, "x@example.com", []Entry{{Topic: fitcheck.TopicPhone, Value: fitcheck.Text("+12185550123")}}, true},
		{"ref, from the address that was given", false, "dana@example.com", nil, true},
		{"from the address that was given", true, "dana@example.com", nil, false},
		{"from there, by that name", true, "dana@example.com", []Entry{name}, true},
		{"from there, by another name", true, "dana@example.com", []Entry{{Topic: fitcheck.TopicName, Value: fitcheck.Text("Rob Stone")}}, false},
	} {
		talk := Talk{Email: c.email, Ledger: c.says, Memory: Memory{Claims: "R7KQ4", Given: c.given}}
		if got := SamePerson(talk, claimed); got != c.want {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}

func TestJoinTakesOverWhatWasSaid(t *testing.T) {
	first, _ := take(t, Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123", OpenedAt: mailNoon},
		Message{Channel: SMS, Text: "Dana Fields, Duluth MN 55802. the plastic is 25 1/2 x 49 1/2"})
	mailed, said := take(t, Talk{Ref: "C6TWP", Channel: Email, Email: "dana@work.example"},
		Message{Channel: Email, Photos: 2, Text: "Dana Fields, 55802. It is cracked.", Claims: "R7KQ4"})
	if !strings.Contains(said, "the name and the ZIP code") || strings.Contains(said, "25 1/2") || !SamePerson(mailed.Talk, first.Talk) {
		t.Fatalf("the claim is answered: %q", said)
	}
	out, err := Join(first.Talk, mailed.Talk, func(n int) int { return n + 10 }, mailNoon, mailShop())
	if err != nil {
		t.Fatal(err)
	}
	added := out.Talk.Ledger[len(first.Talk.Ledger):]
	topics := map[fitcheck.Topic]int{}
	for _, e := range added {
		topics[e.Topic] = e.Message
	}
	if topics[fitcheck.TopicProblem] != 11 || out.Talk.Value(fitcheck.TopicPhotos, 0) != fitcheck.Whole(2) || topics[fitcheck.TopicName] != 0 {
		t.Errorf("added %v", topics)
	}
	if len(out.Say) == 0 || !strings.Contains(out.Say[0].Text, "R7KQ4") || out.Talk.Value(fitcheck.TopicPlasticSize, 1) == nil {
		t.Errorf("says %v", out.Say)
	}
}

func TestWordsOfPhotos(t *testing.T) {
	talk := Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123"}
	for look, want := range map[PhotoLook]string{PhotoTooDark: "too dark", PhotoBlurred: "blurred", PhotoTooSmall: "too small",
		PhotoSame: "same photo", PhotoVideo: "videos", PhotoDocument: "documents", PhotoAnimated: "moving", PhotoTooLarge: "too large",
		PhotoBroken: "whole", PhotoOther: "kind of file"} {
		photos := 0
		if look.Kept() {
			photos = 1
		}
		out, said := take(t, talk, Message{Channel: SMS, Photos: photos, Looks: []PhotoLook{look}})
		if !strings.Contains(said, want) || strings.Contains(said, "sorry") {
			t.Errorf("%s: %q", look, said)
		}
		again, said := take(t, out.Talk, Message{Channel: SMS, N: 9, Photos: photos, Looks: []PhotoLook{look}})
		if strings.Contains(said, want) {
			t.Errorf("%s is said twice: %q", look, said)
		}
		if photos == 0 && again.Talk.Value(fitcheck.TopicPhotos, 0) != nil {
			t.Errorf("%s counts as a photo", look)
		}
	}
}

func TestWaysThatLeadNowhere(t *testing.T) {
	talk := Talk{Ref: "R7KQ4", Channel: SMS, Phone: "+12185550123", State: Measuring, Lead: Lead{Status: StatusOpen},
		Memory: Memory{NoTexts: true, Asking: []Ask{{Topic: fitcheck.TopicUse}}, LastAt: mailNoon}}
	out, err := Nudge(talk, mailNoon.Add(30*time.Hour), mailShop())
	if err != nil {
		t.Fatal(err)
	}
	if len(out.Say) > 0 || !out.Wake.IsZero() || out.Talk.Lead.Qualified {
		t.Errorf("a number that takes no texts is reminded: %+v", out)
	}
	heard, _ := take(t, talk, Message{Channel: SMS, Text: "it's a house"})
	if heard.Talk.Memory.NoTexts {
		t.Error("somebody who texts is taken for one who can't")
	}
}
