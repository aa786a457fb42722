package standin_test

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
)

const (
	account = "AC00000000000000000000000000000001"
	token   = "0123456789abcdef0123456789abcdef"
	shop    = "+12185550142"
	person  = "+12185550123"
)

// bot is the least that a bot is: it proves and notes what comes, and says hello.
type bot struct {
	t        *testing.T
	client   *sms.Client
	webhook  *sms.Webhook
	mu       sync.Mutex
	inbound  []sms.Inbound
	statuses []sms.StatusUpdate
}

func (b *bot) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.URL.Path == "/sms/status" {
		up, err := b.webhook.Status(r)
		b.mu.Lock()
		b.statuses = append(b.statuses, up)
		b.mu.Unlock()
		w.WriteHeader(sms.StatusFor(err))
		return
	}
	in, err := b.webhook.Inbound(w, r)
	if err == nil {
		b.mu.Lock()
		b.inbound = append(b.inbound, in)
		b.mu.Unlock()
		if _, err := b.client.Send(r.Context(), in.From, "you said "+in.Text, nil); err != nil {
			b.t.Error(err)
		}
	}
	w.WriteHeader(sms.StatusFor(err))
}

func (b *bot) seen() ([]sms.Inbound, []sms.StatusUpdate) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.inbound), slices.Clone(b.statuses)
}

// start runs a carrier and a bot; the posts are signed for an outside address and
// go to the inner one, as behind a proxy.
func start(t *testing.T, change func(*standin.Config)) (*standin.Carrier, *bot) {
	t.Helper()
	const outside = "https://bot.example.com"
	b := &bot{t: t, webhook: &sms.Webhook{AuthTokens: []string{token}, PublicURL: outside}}
	inner := httptest.NewServer(b)
	cfg := standin.Config{AccountID: account, AuthToken: token, Number: shop, InboundURL: outside + "/sms/inbound", DeliverTo: inner.URL}
	if change != nil {
		change(&cfg)
	}
	c := standin.New(cfg)
	base, err := c.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close(); inner.Close() })
	b.client, err = sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: shop, BaseURL: base,
		StatusCallback: outside + "/sms/status"})
	if err != nil {
		t.Fatal(err)
	}
	return c, b
}

func soon(t *testing.T) context.Context {
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second)
	t.Cleanup(cancel)
	return ctx
}

func TestThereAndBack(t *testing.T) {
	var told []string
	c, b := start(t, func(cfg *standin.Config) {
		cfg.OnMessage = func(m standin.Message) { told = append(told, fmt.Sprint(m.Inbound, " ", m.Body)) }
	})
	ctx := soon(t)
	id, err := c.Text(ctx, person, "hi ½", standin.File{Type: "image/png", Data: []byte("a picture")})
	if err != nil {
		t.Fatal(err)
	}
	got, err := c.WaitTo(ctx, person, 1)
	if err != nil || got[0].Body != "you said hi ½" {
		t.Fatalf("%+v, %v", got, err)
	}
	if err := c.WaitStatus(ctx, got[0].ID, "delivered"); err != nil {
		t.Fatal(err)
	}
	in, _ := b.seen()
	if len(in) != 1 || in[0].ID != id || len(in[0].Media) != 1 {
		t.Fatalf("bot has %+v", in)
	}
	if body := get(t, in[0].Media[0].URL); body != "a picture" {
		t.Errorf("media: %q", body)
	}
	if want := []string{"true hi ½", "false you said hi ½"}; !slices.Equal(told, want) {
		t.Errorf("told %q, want %q", told, want)
	}
}

func get(t *testing.T, address string) string {
	t.Helper()
	res, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	body, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(body)
}

func TestRepeatedAndReordered(t *testing.T) {
	c, b := start(t, nil)
	ctx := soon(t)
	first, second := c.Take(person, "one"), c.Take(person, "two")
	for _, d := range []standin.Delivery{second, first, second} {
		if status, err := c.Deliver(ctx, d); status != 200 || err != nil {
			t.Fatal(status, err)
		}
	}
	in, _ := b.seen()
	var ids []string
	for _, m := range in {
		ids = append(ids, m.ID)
	}
	if want := []string{second.Message.ID, first.Message.ID, second.Message.ID}; !slices.Equal(ids, want) {
		t.Errorf("got %v, want %v", ids, want)
	}
}

func TestStatusReports(t *testing.T) {
	for _, f := range []struct {
		name string
		plan standin.Callbacks
		lost int
		want string
	}{
		{"plain", standin.Callbacks{}, 0, "queued sent delivered"},
		{"another order", standin.Callbacks{Order: []string{"delivered", "sent"}}, 0, "delivered sent"},
		{"repeated", standin.Callbacks{Order: []string{"sent"}, Repeat: 2}, 0, "sent sent sent"},
		{"lost", standin.Callbacks{}, 30003, "queued sent undelivered:30003"},
		{"off", standin.Callbacks{Off: true}, 0, ""},
	} {
		t.Run(f.name, func(t *testing.T) {
			c, b := start(t, nil)
			c.SetCallbacks(f.plan)
			c.Lose(person, f.lost)
			if _, err := b.client.Send(soon(t), person, "hello", nil); err != nil {
				t.Fatal(err)
			}
			c.Settle()
			_, statuses := b.seen()
			var words []string
			for _, s := range statuses {
				w := s.Status
				if s.ErrorCode != 0 {
					w += fmt.Sprint(":", s.ErrorCode)
				}
				words = append(words, w)
			}
			if got := strings.Join(words, " "); got != f.want {
				t.Errorf("got %q, want %q", got, f.want)
			}
		})
	}
}

func TestRefusals(t *testing.T) {
	c, b := start(t, nil)
	ctx := soon(t)
	c.Refuse(person, 21610)
	if _, err := b.client.Send(ctx, person, "hello", nil); err == nil || !strings.Contains(err.Error(), "unsubscribed") {
		t.Errorf("got %v", err)
	}
	c.Refuse(person, 0)
	if _, err := b.client.Send(ctx, person, "hello", nil); err != nil {
		t.Error(err)
	}
	for _, f := range []struct{ to, body, want string }{
		{"12185550123", "hello", "21211"}, {person, "", "21602"}, {person, strings.Repeat("a", 1601), "21617"}, {"", "a", "21604"},
	} {
		if _, err := b.client.Send(ctx, f.to, f.body, nil); err == nil || !strings.Contains(err.Error(), f.want) {
			t.Errorf("%v: got %v", f, err)
		}
	}
	stranger, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: "wrong", From: shop, BaseURL: c.BaseURL()})
	if err != nil {
		t.Fatal(err)
	}
	if err := stranger.Check(ctx); err == nil || !strings.Contains(err.Error(), "20003") {
		t.Errorf("wrong token: %v", err)
	}
}

// Somebody at a terminal: curl -d, curl -F, and reading the talk.
func TestPerson(t *testing.T) {
	c, _ := start(t, nil)
	res, err := http.Post(c.BaseURL()+"/person/218-555-0123", "application/x-www-form-urlencoded", strings.NewReader("26 x 50 & a bit"))
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	answer, err := io.ReadAll(res.Body)
	if err != nil || string(answer) != "you said 26 x 50 & a bit\n" {
		t.Errorf("got %q, %v", answer, err)
	}
	form := "--b\r\nContent-Disposition: form-data; name=\"text\"\r\n\r\nlook\r\n" +
		"--b\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.jpg\"\r\nContent-Type: image/jpeg\r\n\r\nJPEG\r\n--b--\r\n"
	second, err := http.Post(c.BaseURL()+"/person/2185550123", "multipart/form-data; boundary=b", strings.NewReader(form))
	if err != nil {
		t.Fatal(err)
	}
	second.Body.Close()
	talk := c.Talk(person)
	if len(talk) != 4 || talk[2].Body != "look" || len(talk[2].MediaURLs) != 1 {
		t.Fatalf("talk %+v", talk)
	}
	want := "customer  26 x 50 & a bit\nshop      you said 26 x 50 & a bit\ncustomer  look\nshop      you said look\n"
	if got := get(t, c.BaseURL()+"/person/2185550123"); got != want {
		t.Errorf("got %q", got)
	}
	bad, err := http.Post(c.BaseURL()+"/person/12", "text/plain", strings.NewReader("x"))
	if err != nil {
		t.Fatal(err)
	}
	bad.Body.Close()
	if bad.StatusCode != http.StatusBadRequest {
		t.Errorf("number of two digits: %d", bad.StatusCode)
	}
}
