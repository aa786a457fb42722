package intake

import (
	"context"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
)

const (
	account = "AC00000000000000000000000000000001"
	token   = "0123456789abcdef0123456789abcdef"
	number  = "+12185550142"
)

// wired is a shop behind real HTTP on both sides: posts in, REST calls out.
func wired(t *testing.T) (*shop, *standin.Carrier, *httptest.Server) {
	t.Helper()
	return wiredWith(t, func(*Options) {})
}

func wiredWith(t *testing.T, change func(*Options)) (*shop, *standin.Carrier, *httptest.Server) {
	t.Helper()
	c := standin.New(standin.Config{AccountID: account, AuthToken: token, Number: number,
		Callbacks: standin.Callbacks{}, MediaAuth: true})
	base, err := c.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	var s *shop
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		webhook, err := sms.NewWebhook("http://"+r.Host, token)
		if err != nil {
			t.Error(err)
		}
		s.SMSHandler(webhook).ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	c.SetInboundURL(server.URL + "/sms/inbound")
	client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: number, BaseURL: base,
		StatusCallback: server.URL + "/sms/status"})
	if err != nil {
		t.Fatal(err)
	}
	s = newShop(t, func(o *Options) {
		o.Senders = map[conversation.Channel]Sender{conversation.SMS: SMSSender{Client: client}}
		change(o)
	})
	return s, c, server
}

func TestTextsOverHTTP(t *testing.T) {
	s, c, _ := wired(t)
	s.start()
	d := c.Take(phone, "hello")
	for range 2 { // the carrier posts it twice
		if status, err := c.Deliver(t.Context(), d); err != nil || status != http.StatusOK {
			t.Fatalf("status %d, %v", status, err)
		}
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	if _, err := c.WaitTo(ctx, phone, 1); err != nil {
		t.Fatal(err)
	}
	s.quiet()
	s.wantTalk("1 customer hello", "2 bot heard 1:hello")
	if got := c.To(phone); len(got) != 1 || got[0].Body != "heard 1:hello" {
		t.Errorf("the carrier has %+v", got)
	}
}

func TestSendsOverHTTP(t *testing.T) {
	for _, c := range []struct {
		what  string
		fault func(*standin.Carrier)
		sends string
		texts int
	}{
		{"taken, and the connection cut before the answer", func(c *standin.Carrier) { c.Fail(standin.ResetAfter) }, "sent", 1},
		{"cut before it was taken", func(c *standin.Carrier) { c.Fail(standin.ResetBefore) }, "sent", 1},
		{"taken, and a proxy lost the answer", func(c *standin.Carrier) { c.Fail(standin.LostAnswer) }, "sent", 1},
		{"too many requests", func(c *standin.Carrier) { c.Fail(standin.TooMany) }, "sent", 1},
		{"the carrier's own fault", func(c *standin.Carrier) { c.Fail(standin.ServerError) }, "sent", 1},
		{"the customer told the carrier to stop", func(c *standin.Carrier) { c.Refuse(phone, 21610) }, "failed:21610", 0},
		{"a landline", func(c *standin.Carrier) { c.Refuse(phone, 21614) }, "failed:21614", 0},
	} {
		t.Run(c.what, func(t *testing.T) {
			s, carrier, _ := wired(t)
			c.fault(carrier)
			s.start()
			if status, err := carrier.Text(t.Context(), phone, "hello"); err != nil {
				t.Fatalf("status %s, %v", status, err)
			}
			s.quiet()
			if got := s.sends(); got != c.sends || len(carrier.To(phone)) != c.texts {
				t.Errorf("sends %q, the carrier has %d texts; want %q, %d", got, len(carrier.To(phone)), c.sends, c.texts)
			}
		})
	}
}

func TestPostsThatAreNotTheCarriers(t *testing.T) {
	s, _, server := wired(t)
	form := url.Values{"MessageSid": {"SM1"}, "From": {phone}, "To": {number}, "Body": {"hello"}, "MessageStatus": {"sent"}}
	for _, path := range []string{"/sms/inbound", "/sms/status"} {
		for _, signature := range []string{"", "bm90IGl0"} {
			r, err := http.NewRequestWithContext(t.Context(), http.MethodPost, server.URL+path, strings.NewReader(form.Encode()))
			if err != nil {
				t.Fatal(err)
			}
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			if signature != "" {
				r.Header.Set("X-Twilio-Signature", signature)
			}
			answer, err := http.DefaultClient.Do(r)
			if err != nil {
				t.Fatal(err)
			}
			answer.Body.Close()
			if answer.StatusCode != http.StatusForbidden {
				t.Errorf("%s with signature %q: %d, want 403", path, signature, answer.StatusCode)
			}
		}
	}
	var rows int
	s.one(`SELECT (SELECT count(*) FROM messages) + (SELECT count(*) FROM send_statuses) + (SELECT count(*) FROM conversations)`, &rows)
	if rows != 0 {
		t.Errorf("%d rows were stored of posts without a signature", rows)
	}
}

func TestPostsWhileTheDatabaseIsAway(t *testing.T) {
	s, c, _ := wired(t)
	d := c.Take(phone, "hello")
	s.pool.Close()
	if status, err := c.Deliver(t.Context(), d); err == nil && status == http.StatusOK {
		t.Error("a message that could not be kept was acknowledged")
	}
}
