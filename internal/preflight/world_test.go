package preflight_test

import (
	"context"
	"errors"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	office "example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/preflight"
)

const (
	account  = "AC00000000000000000000000000000001"
	token    = "0123456789abcdef"
	number   = "+12185550142"
	mailbox  = "hello@pinwheel.example"
	password = "not a real one"
	public   = "https://bot.example.com"
)

// world is all that a configuration talks to but its database, in good order.
type world struct {
	preflight.Settings
	carrier *standin.Carrier
	office  *office.Office
	bot     *front
}

// front is what stands behind the public address.
type front struct {
	mu      sync.Mutex
	answers map[string]func(http.ResponseWriter)
}

func (f *front) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	f.mu.Lock()
	answer := f.answers[r.Method+" "+r.URL.Path]
	f.mu.Unlock()
	if answer == nil {
		http.NotFound(w, r)
		return
	}
	answer(w)
}

func status(code int, body string) func(http.ResponseWriter) {
	return func(w http.ResponseWriter) {
		w.Header().Set("Location", "https://elsewhere.example/")
		w.WriteHeader(code)
		_, _ = w.Write([]byte(body)) // whoever asks reads it or not
	}
}

func (f *front) set(path string, answer func(http.ResponseWriter)) {
	f.mu.Lock()
	defer f.mu.Unlock()
	f.answers[path] = answer
}

func newWorld(t *testing.T) *world {
	t.Helper()
	w := &world{carrier: standin.New(standin.Config{AccountID: account, AuthToken: token, Number: number, InboundURL: public + "/sms/inbound"})}
	base, err := w.carrier.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { w.carrier.Close() })
	if w.office, err = office.New(office.Config{Address: mailbox, Password: password}); err != nil {
		t.Fatal(err)
	}
	if err := w.office.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { w.office.Close() })
	w.bot = &front{answers: map[string]func(http.ResponseWriter){
		"GET /healthz": status(http.StatusOK, "ok\n"), "POST /sms/inbound": status(http.StatusForbidden, "")}}
	server := httptest.NewTLSServer(w.bot)
	t.Cleanup(server.Close)
	login := email.Account{User: mailbox, Password: password}
	w.Settings = preflight.Settings{ShopFile: "shop.yaml", PublicURL: public, Patience: time.Minute,
		ReadShop: func(string) (string, []string, error) { return "Larkspur Domes", nil, nil },
		Carrier:  &sms.Config{AccountID: account, AuthToken: token, From: number, BaseURL: base},
		Mail: &preflight.Mail{Box: email.WatcherConfig{Address: w.office.IMAP(), Security: email.Insecure, Account: login},
			Post: email.SenderConfig{Address: w.office.SMTP(), Security: email.Insecure, Account: login}},
		Transport: through(server), Lookup: func(context.Context, string) ([]string, error) { return []string{"203.0.113.5"}, nil }}
	return w
}

// through leads every name to one server, whose certificate is for example.com and the
// names below it.
func through(server *httptest.Server) *http.Transport {
	transport := server.Client().Transport.(*http.Transport).Clone() //nolint:forcetypeassert // httptest's is one
	transport.DialContext = func(ctx context.Context, network, _ string) (net.Conn, error) {
		return (&net.Dialer{}).DialContext(ctx, network, server.Listener.Addr().String())
	}
	transport.TLSClientConfig.ServerName = "example.com"
	return transport
}

// lines runs the checks and gives the named one.
func (w *world) line(t *testing.T, check string) preflight.Line {
	t.Helper()
	lines := preflight.Run(t.Context(), w.Settings)
	for _, l := range lines {
		if l.Check == check {
			return l
		}
	}
	t.Fatalf("no line %q in %+v", check, lines)
	return preflight.Line{}
}

func TestAllIsWell(t *testing.T) {
	w := newWorld(t)
	w.DatabaseURL = dbtest.URL(t)
	lines := preflight.Run(t.Context(), w.Settings)
	want := []string{"shop file", "database", "migrations", "clock and database", "carrier account", "clock and carrier", "carrier number",
		"carrier webhook", "carrier registration", "public address", "bot behind it", "unsigned posts", "metrics inside", "mailbox", "mailbox news", "mail out"}
	for i, l := range lines {
		if i >= len(want) || l.Check != want[i] {
			t.Fatalf("line %d is %+v, want %v", i, l, want)
		}
		// The carrier tells the registration of a service or a toll-free number only.
		if l.Check == "carrier registration" && l.Result == preflight.Unknown {
			continue
		}
		if l.Result != preflight.OK || l.Do != "" {
			t.Errorf("%+v", l)
		}
	}
	if len(lines) != len(want) || !preflight.Passed(lines) {
		t.Errorf("%d lines, want %d; passed %t", len(lines), len(want), preflight.Passed(lines))
	}
}

func TestNothingIsSentOrTakenIn(t *testing.T) {
	w := newWorld(t)
	if err := w.office.Put("dana@example.com", []byte("From: dana@example.com\r\nSubject: a dome\r\n\r\nIt cracked.\r\n")); err != nil {
		t.Fatal(err)
	}
	preflight.Run(t.Context(), w.Settings)
	if left := w.office.Left("INBOX"); left != 1 {
		t.Errorf("%d mails are left in the mailbox, want 1", left)
	}
	if sent := w.carrier.Messages(); len(sent) != 0 {
		t.Errorf("texts were sent: %+v", sent)
	}
}

func TestShopFile(t *testing.T) {
	for _, c := range []struct {
		example []string
		err     error
		want    preflight.Result
		do      string
	}{
		{nil, nil, preflight.OK, ""},
		{[]string{"name", "phone"}, nil, preflight.Unknown, "name, phone. Put your own in shop.yaml"},
		{nil, errors.New("shop.yaml:2:8: phone: is not one"), preflight.Wrong, "mend the lines"},
	} {
		s := preflight.Settings{ShopFile: "shop.yaml", ReadShop: func(string) (string, []string, error) { return "A", c.example, c.err }}
		got := preflight.Run(t.Context(), s)[0]
		if got.Result != c.want || !strings.Contains(got.Do, c.do) {
			t.Errorf("%+v, want %s and %q", got, c.want, c.do)
		}
	}
}
