package intake

import (
	"encoding/json"
	"fmt"
	"reflect"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// realBrain is the talk as it is in the shop.
func realBrain() Brain {
	return Brain{Respond: conversation.Respond, Nudge: conversation.Nudge, Keyword: reading.Keyword,
		Record: func(t conversation.Talk) conversation.Record { return conversation.NewRecord(t, nil, nil) }}
}

func realShop() *conversation.Shop {
	return &conversation.Shop{Name: "Pinwheel Dome Supply", Assistant: "the shop's assistant", Phone: "(218) 555-0142",
		Email: "help@pinwheel.example", Zone: time.UTC, Rules: fitcheck.DefaultRules()}
}

// memory has the same talk with nothing but the pure code.
type memory struct {
	t        *testing.T
	talk     conversation.Talk
	messages []conversation.Message
	photos   []conversation.RecordPhoto
}

func (m *memory) hear(words string, photos int, at time.Time) {
	m.t.Helper()
	in := conversation.Message{N: len(m.messages) + 1, At: at, From: conversation.FromCustomer,
		Channel: conversation.SMS, Text: words, Photos: photos}
	m.messages = append(m.messages, in)
	o, err := conversation.Respond(m.talk, []conversation.Message{in}, at, realShop())
	if err != nil {
		m.t.Fatal(err)
	}
	for k := range photos {
		p := conversation.RecordPhoto{ID: fmt.Sprintf("%s-%d-%d", m.talk.Ref, in.N, k+1), FromMessage: in.N}
		if of := o.PhotosOf[in.N]; of != "" {
			p.Of = &of
		}
		m.photos = append(m.photos, p)
	}
	m.talk = o.Talk
	for _, u := range o.Say {
		m.messages = append(m.messages, conversation.Message{N: len(m.messages) + 1, At: at, From: conversation.FromBot,
			Channel: conversation.SMS, Text: u.Text})
	}
}

// TestViewIsTheRecord has the same talks twice, with the database and without, and
// compares the view's record with the one that the pure code builds, after each message.
func TestViewIsTheRecord(t *testing.T) {
	for _, c := range []struct {
		name   string
		script []string
	}{
		{"a dome, numbers agree", []string{"Hi, the dome on our skylight is cracked", "Dana Whitlock, 80302", "house, just one",
			"it's a metal frame on a wood box, screws around the sides", "frame is fine", "25 1/2 x 49 1/2", "23 1/2 by 47 1/2",
			"2 layers, clear, acrylic", "yes"}},
		{"two units, a photo, a correction", []string{"need 2 domes, one 24 x 48 and one 648 mm by 1257 mm, plastic edge to edge",
			"#photo here is one", "no, the second is 26 x 50", "undo that", "Duluth MN", "I want a person"}},
		{"spanish", []string{"Hola, se rompió el domo de mi tragaluz", "Me llamo Ana Muñoz, 55802", "casa, uno"}},
		{"stop, and what comes after", []string{"my dome leaks, curb outside is 25 1/2 x 49 1/2", "STOP", "are you there", "START"}},
		{"words that databases trip over", []string{`it's "cracked" \ O'Brien; DROP TABLE leads;-- €½ 🙂`, "{}", "null"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newShop(t, func(o *Options) {
				o.Brain, o.Shop = realBrain(), realShop()
			})
			s.start()
			m := &memory{t: t, talk: conversation.Talk{Channel: conversation.SMS, Phone: phone, State: conversation.Opening, OpenedAt: noon}}
			for i, words := range c.script {
				photos := 0
				in := Inbound{Channel: conversation.SMS, ID: fmt.Sprint(i), From: phone, Text: words}
				if len(words) > 6 && words[:6] == "#photo" {
					photos, in.Photos = 1, []db.PhotoSource{{Source: "https://carrier.example/1"}}
				}
				s.receive(in)
				s.quiet()
				s.one(`SELECT ref FROM conversations`, &m.talk.Ref)
				m.hear(words, photos, s.now())
				compareRecords(t, s, m)
				s.later(61*time.Second + 500*time.Millisecond)
			}
		})
	}
}

func TestANewTalkBeginsWithWhatIsStillTrue(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Brain, o.Shop = realBrain(), realShop() })
	s.start()
	s.text("Dana Whitlock, 80302, my dome is cracked, plastic is 25 1/2 x 49 1/2")
	s.quiet()
	if _, err := s.pool.Exec(t.Context(), `UPDATE leads SET status = 'ordered', waiting_since = NULL`); err != nil {
		t.Fatal(err)
	}
	s.later(60 * 24 * time.Hour)
	s.text("hi, I need another one")
	s.quiet()
	var facts, record string
	s.one(`SELECT string_agg(concat_ws(' ', f.topic, f.value, coalesce(f.message, 0), f.carried, f.carried_from = o.ref), '; ' ORDER BY f.seq)
		FROM conversations c JOIN facts f ON f.conversation_id = c.id, conversations o
		WHERE c.id = 2 AND o.id = 1 AND f.topic IN ('name', 'place', 'plastic_size')`, &facts)
	want := `name "Dana Whitlock" 0 t t; place {"zip": "80302", "city": "Boulder", "state": "CO"} 0 t t`
	if facts != want {
		t.Errorf("the new talk has %s, want %s", facts, want)
	}
	s.one(`SELECT r.record -> 'customer' ->> 'name' FROM lead_record r JOIN conversations c USING (ref) WHERE c.id = 2`, &record)
	if record != "Dana Whitlock" {
		t.Errorf("the new lead is for %q, want Dana Whitlock", record)
	}
}

func compareRecords(t *testing.T, s *shop, m *memory) {
	t.Helper()
	got, err := db.LeadRecord(t.Context(), s.pool, m.talk.Ref)
	if err != nil {
		t.Fatal(err)
	}
	want, err := json.Marshal(conversation.NewRecord(m.talk, m.messages, m.photos))
	if err != nil {
		t.Fatal(err)
	}
	var a, b any
	if err := json.Unmarshal(got, &a); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(want, &b); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a, b) {
		t.Errorf("after message %d the view has\n%s\nwant\n%s", len(m.messages), got, want)
	}
}
