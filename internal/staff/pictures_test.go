package staff

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/drawing"
	"example.com/intake-bot/internal/drawing/drawingtest"
	"example.com/intake-bot/internal/shop"
)

var updatePictures = flag.Bool("pictures", false, "draw the README's pictures anew")

// The README's pictures, of a talk and of the lead that came of it, are what the program
// makes of the customer's lines in docs/pictures/talk.txt with the example's shop.
func TestPicturesOfTheReadme(t *testing.T) {
	folder := filepath.Join("..", "..", "docs", "pictures")
	talk, said, now := playTalk(t, filepath.Join(folder, "talk.txt"))
	if talk.Lead.Status != conversation.StatusReady || len(talk.Units()) != 1 {
		t.Fatalf("the talk did not end with a lead that is ready: %+v", talk.Lead)
	}
	phone, err := drawing.Talk(drawing.TalkData{Title: "A talk by text, at a quarter past nine in the evening", Lines: said}, 2)
	if err != nil {
		t.Fatal(err)
	}
	data := sheetOf(&talk, exampleShop(t), now)
	data.TimeZone = word(conversation.NewRecord(talk, nil, nil).Place.TimeZone)
	sheet, err := drawing.Sheet(data)
	if err != nil {
		t.Fatal(err)
	}
	for name, picture := range map[string]struct {
		drawing.Drawing
		width int
	}{"talk.png": {phone, 796}, "lead.png": {sheet, 796}} {
		b, err := picture.PNG(picture.width)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(folder, name)
		if *updatePictures {
			if err := os.WriteFile(path, b, 0o644); err != nil { //nolint:gosec // a picture for all
				t.Fatal(err)
			}
		}
		kept, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !drawingtest.Alike(t, kept, b) {
			t.Errorf("%s is not current; look at it after go test ./internal/staff -run PicturesOfTheReadme -pictures", path)
		}
	}
}

func exampleShop(t *testing.T) *conversation.Shop {
	t.Helper()
	f, err := shop.Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.Conversation()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// playTalk has a customer say the lines of a file, a minute each.
func playTalk(t *testing.T, path string) (conversation.Talk, []drawing.TalkLine, time.Time) {
	t.Helper()
	script, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s := exampleShop(t)
	now := time.Date(2026, time.March, 2, 21, 15, 0, 0, s.Zone)
	talk := conversation.Talk{Ref: "K7RDM", Channel: conversation.SMS, Phone: "+16085550123", State: conversation.Opening,
		OpenedAt: now, Lead: conversation.Lead{Status: conversation.StatusOpen}}
	var said []drawing.TalkLine
	for line := range strings.Lines(string(script)) {
		in := conversation.Message{N: len(said) + 1, At: now, From: conversation.FromCustomer, Channel: talk.Channel, Text: strings.TrimSpace(line)}
		said = append(said, drawing.TalkLine{Mine: true, Text: in.Text})
		out, err := conversation.Respond(talk, []conversation.Message{in}, now, s)
		if err != nil {
			t.Fatal(err)
		}
		talk, now = out.Talk, now.Add(time.Minute)
		for _, u := range out.Say {
			said = append(said, drawing.TalkLine{Text: u.Text})
		}
	}
	return talk, said, now
}
