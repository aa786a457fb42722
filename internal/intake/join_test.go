package intake

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// twoWays is a shop that is texted and mailed to. The texts go to the carrier in memory.
func twoWays(t *testing.T) *mailShop {
	t.Helper()
	m := newMailShop(t, mailBrain)
	m.open()
	return m
}

// textAll sends texts, each after the answer to the one before.
func (m *mailShop) textAll(words ...string) {
	m.t.Helper()
	for _, w := range words {
		m.text(w)
		m.quiet()
	}
}

// ref is that of the talk that began on a channel.
func (m *mailShop) ref(c conversation.Channel) string {
	m.t.Helper()
	var ref string
	m.one(`SELECT ref FROM conversations WHERE channel = '`+string(c)+`'`, &ref)
	return ref
}

// lead is the record of a talk.
func (m *mailShop) lead(ref string) (r conversation.Record) {
	m.t.Helper()
	var raw []byte
	m.one(`SELECT record FROM lead_record WHERE ref = '`+ref+`'`, &raw)
	type plain struct {
		Status   conversation.Status
		WhyStaff []string `json:"why_staff"`
		Customer conversation.RecordCustomer
		Photos   []conversation.RecordPhoto
		Messages []conversation.RecordMessage
		Facts    []struct {
			Topic   string
			Message int
			Said    string
		}
	}
	var p plain
	if err := json.Unmarshal(raw, &p); err != nil {
		m.t.Fatal(err)
	}
	r.Status, r.WhyStaff, r.Customer, r.Photos, r.Messages = p.Status, p.WhyStaff, p.Customer, p.Photos, p.Messages
	for _, f := range p.Facts {
		r.Facts = append(r.Facts, conversation.RecordFact{Said: f.Said, Message: f.Message})
	}
	return r
}

const private = "25 1/2"

// A text begins, a mail from an address that nobody knows names its ref. Nothing of the
// texts is shown there until the mail says what only their writer would.
func TestRefAloneGivesNothingAway(t *testing.T) {
	m := twoWays(t)
	m.textAll("My dome is cracked. Dana Fields, Duluth MN 55802", "the plastic is 25 1/2 x 49 1/2 edge to edge")
	ref := m.ref(conversation.SMS)
	work := standin.Letter{Subject: "photos for " + ref, Text: "Here they are.", From: dana}
	work.From.Name, work.From.Address = "", "d@work.example"
	m.write(work)
	mailed := m.ref(conversation.Email)
	got := m.answers("d@work.example")
	if len(got) != 1 || !strings.Contains(got[0].Text, "name and the ZIP code") || strings.Contains(got[0].Text, "Dana") ||
		strings.Contains(got[0].Text, private) || !slices.Contains(m.lead(mailed).WhyStaff, "says it is about "+ref) {
		t.Fatalf("the ref alone: %+v, %v", got, m.lead(mailed).WhyStaff)
	}
	m.write(standin.Letter{From: work.From, Text: "Rob Stone, 55802", Answers: &m.office.To("d@work.example")[0]})
	if got := m.answers("d@work.example"); len(got) != 2 || strings.Contains(got[1].Text, "belongs") || strings.Contains(got[1].Text, private) {
		t.Fatalf("another name: %q", got[len(got)-1].Text)
	}
	m.write(standin.Letter{From: work.From, Text: "Sorry, my name is Dana Fields, 55802", Answers: &m.office.To("d@work.example")[1]})
	got = m.answers("d@work.example")
	if len(got) != 3 || !strings.Contains(got[2].Text, "belongs with your request "+ref) {
		t.Fatalf("the right name: %q", got[len(got)-1].Text)
	}
	joined := m.lead(ref)
	if joined.Customer.Email == nil || *joined.Customer.Email != "d@work.example" || len(joined.Messages) != 10 {
		t.Errorf("the lead has %v, %d messages", joined.Customer.Email, len(joined.Messages))
	}
	for i, msg := range joined.Messages {
		if msg.N != i+1 {
			t.Errorf("message %d has number %d", i+1, msg.N)
		}
	}
	for _, f := range joined.Facts {
		if msg := joined.Messages[f.Message-1]; msg.From != conversation.FromCustomer || !strings.Contains(msg.Text, strings.Split(f.Said, " / ")[0]) {
			t.Errorf("fact %q is not in message %d: %q", f.Said, f.Message, msg.Text)
		}
	}
	if left := m.lead(mailed); left.Status != conversation.StatusClosed || !slices.Contains(left.WhyStaff, "joined with "+ref) {
		t.Errorf("what is left: %s, %v", left.Status, left.WhyStaff)
	}
	// From now on the address belongs there.
	m.write(standin.Letter{From: work.From, Text: "It's a house", Answers: &m.office.To("d@work.example")[2]})
	if now := m.lead(ref); len(now.Messages) < 12 || now.Messages[10].Text != "It's a house" {
		t.Errorf("the next mail is not in the talk: %d messages", len(now.Messages))
	}
}

func TestKnownAddressJoinsByItself(t *testing.T) {
	for _, c := range []struct {
		what   string
		name   string
		first  string
		joined bool
	}{
		{"by the name on the envelope", "Dana Fields", "here is my mail", true},
		{"by the ref in the subject", "", "here is my mail", true},
		{"by the name in the mail", "", "This is Dana Fields", true},
		{"another name", "", "My name is Rob Stone", false},
		{"no name so far", "", "here is my mail", false},
	} {
		t.Run(c.what, func(t *testing.T) {
			m := twoWays(t)
			m.textAll("My dome is cracked. Dana Fields, Duluth MN 55802", "the plastic is 25 1/2 x 49 1/2 edge to edge", "my email is dana@example.com")
			ref := m.ref(conversation.SMS)
			l := standin.Letter{Subject: "Skylight", Text: c.first, From: dana}
			l.From.Name = c.name
			if strings.Contains(c.what, "ref") {
				l.Subject = "Re: your skylight [" + ref + "]"
			}
			m.write(l)
			var talks int
			m.one(fmt.Sprintf(`SELECT count(*) FROM addresses a JOIN conversations c ON c.id = a.conversation_id WHERE a.channel = 'email' AND c.ref = '%s'`, ref), &talks)
			said := m.answers(dana.Address)
			if (talks == 1) != c.joined || len(said) != 1 {
				t.Fatalf("joined %v, want %v; %d answers", talks == 1, c.joined, len(said))
			}
			if !c.joined && (strings.Contains(said[0].Text, private) || strings.Contains(said[0].Text, "Dana")) {
				t.Errorf("a stranger is told %q", said[0].Text)
			}
		})
	}
}

func TestUnprovenMailJoinsNothing(t *testing.T) {
	m := newMailShop(t, func(o *Options) {
		mailBrain(o)
		o.Mail.AuthServer = "mx.pinwheel.example"
	})
	m.open()
	m.textAll("My dome is cracked. Dana Fields, Duluth MN 55802", "my email is dana@example.com")
	m.write(standin.Letter{Subject: "Skylight " + m.ref(conversation.SMS), Text: "Dana here", From: dana})
	if r := m.lead(m.ref(conversation.Email)); !slices.Contains(r.WhyStaff, "the mail's sender is not proven") {
		t.Errorf("why %v", r.WhyStaff)
	}
}

func TestRefsInMessages(t *testing.T) {
	for text, want := range map[string]string{
		"photos for R7KQ4": "R7KQ4", "Re: Cracked dome [R7KQ4]": "R7KQ4", "my ref is r7kq4": "R7KQ4", "r7kq4": "R7KQ4", "reference: CRTWH please": "CRTWH",
		"[nymph]": "NYMPH", "solicitud r7kq4": "R7KQ4", "Request #R7KQ4.": "R7KQ4",
		"it is 46X49": "", "49X37 outside": "", "97346": "", "it is a nymph": "", "XYWXF": "XYWXF", "photos for XYWXF": "XYWXF", "347TH street": "", "R7KQ45": "", "a r7kq4 b c": "", "": "", "ref 46x49": "",
	} {
		if got := refIn(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Whatever ref is drawn is found again in the subject of an answer and by itself.
func TestEveryRefIsFound(t *testing.T) {
	random := rand.NewChaCha8([32]byte{1})
	for range 20000 {
		ref, err := db.NewRef(random)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range []string{"Re: your skylight [" + ref + "]\nhere is my mail", "photos for " + ref, strings.ToLower(ref)} {
			if got := refIn(text); got != ref {
				t.Fatalf("%q: %q, want %q", text, got, ref)
			}
		}
	}
}
