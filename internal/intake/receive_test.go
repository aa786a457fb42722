package intake

import (
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

func TestReceiveTheSameMessageAgain(t *testing.T) {
	s := newShop(t, nil)
	in := Inbound{Channel: conversation.SMS, ID: "SM1", From: phone, Text: "hello"}
	var fresh atomic.Int64
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			if !s.receive(in) {
				fresh.Add(1)
			}
		})
	}
	wg.Wait()
	if fresh.Load() != 1 {
		t.Errorf("%d of 8 posts of one message were taken for new, want 1", fresh.Load())
	}
	s.start()
	s.quiet()
	if !s.receive(in) {
		t.Error("the post after the answer was taken for new")
	}
	s.wantTalk("1 customer hello", "2 bot heard 1:hello")
	s.wantSent("heard 1:hello")
}

func TestReceiveManyFromOneNewNumber(t *testing.T) {
	s := newShop(t, nil)
	var wg sync.WaitGroup
	for i := range 8 {
		wg.Go(func() {
			s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprintf("SM%d", i), From: phone, Text: "hello"})
		})
	}
	wg.Wait()
	var talks, messages, leads int
	s.one(`SELECT (SELECT count(*) FROM conversations), (SELECT count(*) FROM messages), (SELECT count(*) FROM leads)`, &talks, &messages, &leads)
	if talks != 1 || messages != 8 || leads != 1 {
		t.Errorf("%d talks, %d messages, %d leads, want 1, 8, 1", talks, messages, leads)
	}
}

func TestReceiveByTheTimeOfWriting(t *testing.T) {
	s := newShop(t, nil)
	for i, m := range []struct {
		text string
		at   time.Duration
	}{{"third", 2}, {"first", 0}, {"second", 1}} {
		s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprint(i), From: phone, Text: m.text, At: noon.Add(m.at * time.Second)})
	}
	s.wantTalk("1 customer first", "2 customer second", "3 customer third") // as it will be
	s.start()
	s.quiet()
	s.wantTalk("1 customer first", "2 customer second", "3 customer third", "4 bot heard 1:first + 2:second + 3:third")
}

func TestReceiveInTheOrderOfArrivalWhereNoTimeIsKnown(t *testing.T) {
	s := newShop(t, nil)
	for _, words := range []string{"one", "two", "three"} {
		s.text(words)
	}
	s.start()
	s.quiet()
	s.wantTalk("1 customer one", "2 customer two", "3 customer three", "4 bot heard 1:one + 2:two + 3:three")
}

func TestReceiveRefusesWhatCannotBeKept(t *testing.T) {
	s := newShop(t, nil)
	for _, in := range []Inbound{
		{ID: "SM1", From: phone}, {Channel: conversation.SMS, From: phone}, {Channel: conversation.SMS, ID: "SM1"},
	} {
		if _, err := s.Receive(t.Context(), in); err == nil {
			t.Errorf("%+v was taken", in)
		}
	}
}

func TestReceiveTextThatPostgresDoesNotTake(t *testing.T) {
	s := newShop(t, nil)
	s.text("nul \x00 and \xff broken")
	s.wantTalk("1 customer nul  and \uFFFD broken")
}

func TestReceivePhotos(t *testing.T) {
	s := newShop(t, nil)
	s.receive(Inbound{Channel: conversation.SMS, ID: "MM1", From: phone, Photos: []db.PhotoSource{
		{Source: "https://carrier.example/a", ContentType: "image/jpeg"}, {Source: "https://carrier.example/b"}}})
	s.start()
	s.quiet()
	var rows string
	s.one(`SELECT string_agg(concat_ws(' ', m.n, m.photos, p.k, p.source, p.content_type, p.of, p.state), '; ' ORDER BY p.k)
		FROM photos p JOIN messages m ON m.id = p.message_id`, &rows)
	want := "1 2 1 https://carrier.example/a image/jpeg style referenced; 1 2 2 https://carrier.example/b  style referenced"
	if rows != want {
		t.Errorf("photos %q, want %q", rows, want)
	}
}

func TestReceiveAfterALeadWasFinished(t *testing.T) {
	for _, c := range []struct {
		name   string
		status string
		after  time.Duration
		talks  int
	}{
		{"ordered, weeks later: a new talk", "ordered", 20 * 24 * time.Hour, 2},
		{"ordered, an hour later: the same", "ordered", time.Hour, 1},
		{"with a person, weeks later: the same", "picked_up", 20 * 24 * time.Hour, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := newShop(t, nil)
			s.text("hello")
			if _, err := s.pool.Exec(t.Context(), `UPDATE leads SET status = $1, updated_at = $2`, c.status, s.now()); err != nil {
				t.Fatal(err)
			}
			s.later(c.after)
			s.text("me again")
			s.text("and more")
			var talks, last int
			s.one(`SELECT count(*), max((SELECT count(*) FROM messages m WHERE m.conversation_id = c.id)) FROM conversations c`, &talks, &last)
			if talks != c.talks {
				t.Errorf("%d talks, want %d", talks, c.talks)
			}
			if !s.receive(Inbound{Channel: conversation.SMS, ID: "SM1", From: phone, Text: "hello"}) {
				t.Error("the first message, posted again, was taken for new")
			}
		})
	}
}
