package staff

import (
	"fmt"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/alexedwards/scs/v2/memstore"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// The cookie of a session: not for scripts, not from other sites' posts, over https not in
// the open nor for other hosts, and gone with the browser.
func TestSessionCookie(t *testing.T) {
	for _, secure := range []bool{true, false} {
		m := newSessions(memstore.NewWithCleanupInterval(0), secure)
		c := m.Cookie
		if !c.HttpOnly || c.Secure != secure || c.SameSite != http.SameSiteLaxMode || c.Path != "/" || c.Domain != "" || c.Persist ||
			strings.HasPrefix(c.Name, "__Host-") != secure || !m.HashTokenInStore || m.Lifetime > absoluteLimit || m.IdleTimeout > idleLimit {
			t.Errorf("secure %v: %+v", secure, c)
		}
	}
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	resp, err := h.browser().client.PostForm(h.url+"/staff/login", url.Values{"login": {"dana"}, "password": {password}})
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	set := resp.Header.Values("Set-Cookie")
	if len(set) != 1 || !strings.Contains(set[0], "HttpOnly") || !strings.Contains(set[0], "SameSite=Lax") || strings.Contains(set[0], "Expires") {
		t.Errorf("set %q", set)
	}
}

// token is the session's cookie in a browser; empty for none.
func (b *browser) token() string {
	u, err := url.Parse(b.url)
	if err != nil {
		b.t.Fatal(err)
	}
	for _, c := range b.client.Jar.Cookies(u) {
		if c.Name == "shop_session" {
			return c.Value
		}
	}
	return ""
}

// thief is a browser that knows a session's cookie.
func (h *house) thief(token string) *browser {
	b := h.browser()
	u, err := url.Parse(h.url)
	if err != nil {
		h.t.Fatal(err)
	}
	b.client.Jar, _ = cookiejar.New(nil) // never fails without options
	b.client.Jar.SetCookies(u, []*http.Cookie{{Name: "shop_session", Value: token, Path: "/"}})
	return b
}

func TestSessionTheft(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	// A session that was slipped in before the log-in is none after it.
	b := h.thief("planted0planted0planted0planted0planted0000")
	if status, _ := b.post("/staff/login", "login", "dana", "password", password); status != http.StatusSeeOther {
		t.Fatalf("log in: %d", status)
	}
	mine := b.token()
	if mine == "" || strings.HasPrefix(mine, "planted") {
		t.Errorf("the session after the log-in is %q", mine)
	}
	if status, _ := h.thief("planted0planted0planted0planted0planted0000").get("/staff/"); status != http.StatusSeeOther {
		t.Errorf("the planted session is in: %d", status)
	}
	// A second log-in draws another.
	if status, _ := b.post("/staff/login", "login", "dana", "password", password); status != http.StatusSeeOther || b.token() == mine {
		t.Errorf("log in again: %d, the same session %v", status, b.token() == mine)
	}
	if status, _ := h.thief(mine).get("/staff/"); status != http.StatusSeeOther {
		t.Errorf("the session before the second log-in is in: %d", status)
	}
	// What was stolen is of no use after a log-out, nor after one from everywhere else.
	mine = b.token()
	b.post("/staff/logout")
	if status, _ := h.thief(mine).get("/staff/"); status != http.StatusSeeOther {
		t.Errorf("a session outlived its log-out: %d", status)
	}
	here, there := h.as("dana"), h.as("dana")
	if status, _ := here.post("/staff/logout/everywhere"); status != http.StatusSeeOther {
		t.Errorf("log out everywhere: %d", status)
	}
	for who, b := range map[string]*browser{"here": here, "there": there} {
		if status, _ := b.get("/staff/"); status != http.StatusSeeOther {
			t.Errorf("still in %s: %d", who, status)
		}
	}
}

// Nothing tells whether a name exists: the same page, and the same work, for both.
func TestNamesCantBeGuessed(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	_, known := h.browser().post("/staff/login", "login", "dana", "password", "wrong")
	_, unknown := h.browser().post("/staff/login", "login", "nina", "password", "wrong")
	if strings.ReplaceAll(unknown, "nina", "dana") != known {
		t.Errorf("a known name gets\n%s\nan unknown one\n%s", known, unknown)
	}
	if !strings.HasPrefix(nobodysHash, fmt.Sprintf("$argon2id$v=19$m=%d,t=%d,p=%d$", hashing.Memory, hashing.Iterations, hashing.Parallelism)) {
		t.Errorf("a name that is unknown is tried against %s", nobodysHash)
	}
}

// One network that tries many accounts is slowed down, however it names itself.
func TestGuessersAreCountedByNetwork(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	for i := range mostByClient {
		h.exec(`INSERT INTO staff_logins (login, address, ok, at) VALUES ($1, '2001:db8:1:2::/64', false, now())`, fmt.Sprint("guess", i))
	}
	from := func(forwarded string) int {
		req := httptest.NewRequest(http.MethodPost, "/staff/login", strings.NewReader(url.Values{"login": {"dana"}, "password": {password}}.Encode()))
		req.RemoteAddr = "127.0.0.1:999"
		req.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		req.Header.Set("X-Forwarded-For", forwarded)
		w := httptest.NewRecorder()
		h.page.ServeHTTP(w, req)
		return w.Code
	}
	for forwarded, want := range map[string]int{
		"2001:db8:1:2::77": http.StatusTooManyRequests, "2001:db8:1:2:ffff::1": http.StatusTooManyRequests,
		"192.0.2.9, 2001:db8:1:2::78": http.StatusTooManyRequests, // what the sender put before the proxy's word
		"2001:db8:1:3::77":            http.StatusSeeOther,
	} {
		if got := from(forwarded); got != want {
			t.Errorf("from %s: %d, want %d", forwarded, got, want)
		}
	}
}

func TestClientAddress(t *testing.T) {
	for _, c := range []struct{ peer, forwarded, want string }{
		{"198.51.100.7:1", "", "198.51.100.7"},
		{"198.51.100.7:1", "192.0.2.1", "198.51.100.7"}, // no proxy of ours: its word is not taken
		{"[::ffff:198.51.100.7]:1", "192.0.2.1", "198.51.100.7"},
		{"[2606:4700::1]:1", "192.0.2.1", "2606:4700::/64"},
		{"127.0.0.1:1", "192.0.2.1", "192.0.2.1"},
		{"10.0.0.2:1", "203.0.113.9, 192.0.2.1", "192.0.2.1"},
		{"10.0.0.2:1", "192.0.2.1, nonsense", "10.0.0.2"},
		{"127.0.0.1:1", "", "127.0.0.1"},
		{"nonsense", "192.0.2.1", "unknown"},
	} {
		r := httptest.NewRequest(http.MethodGet, "/staff/", nil)
		r.RemoteAddr = c.peer
		if c.forwarded != "" {
			r.Header.Set("X-Forwarded-For", c.forwarded)
		}
		r.Header.Set("X-Real-IP", "203.0.113.1")
		r.Header.Set("Forwarded", "for=203.0.113.2")
		if got := clientAddress(r); got != c.want {
			t.Errorf("%s forwarded for %q: %s, want %s", c.peer, c.forwarded, got, c.want)
		}
	}
}

// hostileSQL is what would be a statement if anything made one of it.
var hostileSQL = []string{`' OR '1'='1`, `'; DROP TABLE leads; --`, `\'; DELETE FROM staff; --`, `" OR ""="`, `$x`, `%`, `_`, `') OR 1=1 --`,
	`':* | !x`, `& | ! ( )`, "R7KQ4' --", "\x00", `1; SELECT pg_sleep(30)`}

func TestSQLIsNoSearch(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleOwner)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	b := h.as("dana")
	for _, words := range hostileSQL {
		q := url.QueryEscape(words)
		for _, path := range []string{"/staff/find?q=" + q, "/staff/person?of=" + q, "/staff/figures?weeks=" + q, "/staff/?list=" + q + "&after=" + q,
			"/staff/lead/" + url.PathEscape(words), "/staff/lead/R7KQ4/photo/" + url.PathEscape(words), "/staff/lead/R7KQ4/drawing/" + url.PathEscape(words)} {
			status, page := b.get(path)
			if status >= 500 || strings.HasPrefix(path, "/staff/find") && strings.Contains(page, "/staff/lead/R7KQ4") && !strings.Contains(words, "R7KQ4") {
				t.Errorf("%s: %d, finds what it does not name", path, status)
			}
		}
		for _, form := range [][]string{{"/staff/login", "login", words, "password", words}, {"/staff/lead/R7KQ4/note", "text", words},
			{"/staff/lead/R7KQ4/fact", "topic", words, "value", words}, {"/staff/lead/R7KQ4/merge", "other", words},
			{"/staff/person/erase", "of", words, "again", words}} {
			if status, _ := b.post(form[0], form[1:]...); status >= 500 {
				t.Errorf("%s with %q: %d", form[0], words, status)
			}
		}
	}
	if status, _ := b.get("/staff/lead/R7KQ4"); status != http.StatusOK {
		t.Errorf("the lead is gone: %d", status)
	}
}

func TestPathTricks(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	for _, b := range []*browser{h.browser(), h.as("dana")} {
		for _, path := range []string{"/staff/assets/..%2fpages%2fframe.html", "/staff/assets/%2e%2e/pages/frame.html", "/staff/assets/../server.go",
			"/staff/assets/..%5c..%5cserver.go", "/staff/assets/%00", "/staff/assets/.", "/staff/assets/%2fetc%2fpasswd", "/staff/lead/..%2f..%2fetc/sheet.pdf",
			"/staff/lead/R7KQ4/photo/..%2f1", "/staff//assets/page.css/..", "/STAFF/", "/staff/assets/page.css%00.png"} {
			req, err := http.NewRequest(http.MethodGet, h.url, nil)
			if err != nil {
				t.Fatal(err)
			}
			req.URL.Opaque = path // as it is, unmended
			resp, err := b.client.Do(req)
			if err != nil {
				t.Fatal(err)
			}
			resp.Body.Close()
			if resp.StatusCode == http.StatusOK || resp.StatusCode >= 500 {
				t.Errorf("%s: %d", path, resp.StatusCode)
			}
		}
	}
}

func TestTooLargeAFormIsRefused(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	b := h.as("dana")
	if status, _ := b.post("/staff/lead/R7KQ4/note", "text", strings.Repeat("W", 2*mostPosted)); status != http.StatusRequestEntityTooLarge {
		t.Errorf("a note of %d bytes: %d", 2*mostPosted, status)
	}
	if status, _ := h.browser().post("/staff/login", "login", "dana", "password", strings.Repeat("W", 2*mostPosted)); status < 400 || status >= 500 {
		t.Errorf("a password of %d bytes: %d", 2*mostPosted, status)
	}
	var notes int
	if err := h.pool.QueryRow(t.Context(), `SELECT count(*) FROM staff_history WHERE deed = 'noted'`).Scan(&notes); err != nil || notes != 0 {
		t.Errorf("%d notes, %v", notes, err)
	}
}
