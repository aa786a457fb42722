package staff

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// withProvider is a house with the owner's log-in, and one account of that address.
func withProvider(t *testing.T) (*house, *issuer) {
	t.Helper()
	i := newIssuer(t)
	i.claims["email"], i.claims["email_verified"] = "Dana@Pinwheel.example", true
	h := newHouse(t)
	h.page.provider = newProvider(&Provider{Issuer: i.URL, ClientID: clientID, Secret: clientSecret, Name: "the workshop's log-in"}, h.url)
	id := h.account("dana", "Dana", db.RoleStaff)
	h.exec(`UPDATE staff SET email = 'dana@pinwheel.example', one_time = true WHERE id = $1`, id)
	return h, i
}

// through goes to the provider, lets it let one in, and gives what the page answers then.
// change, where there is one, has its hand on the address on the way back.
func (b *browser) through(next string, change func(url.Values)) (*http.Response, string) {
	b.t.Helper()
	status, to := b.follow(http.MethodGet, b.url+"/staff/login/provider?next="+url.QueryEscape(next))
	if status != http.StatusSeeOther {
		b.t.Fatalf("to the provider: %d", status)
	}
	_, back := b.follow(http.MethodPost, to)
	u, err := url.Parse(back)
	if err != nil {
		b.t.Fatal(err)
	}
	q := u.Query()
	if change != nil {
		change(q)
	}
	u.RawQuery = q.Encode()
	resp, err := b.client.Get(u.String())
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	_, home := b.get("/staff/")
	return resp, home
}

func (b *browser) follow(method, address string) (status int, to string) {
	b.t.Helper()
	req, err := http.NewRequest(method, address, nil)
	if err != nil {
		b.t.Fatal(err)
	}
	resp, err := b.client.Do(req)
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	return resp.StatusCode, resp.Header.Get("Location")
}

// TestProviderLetsIn: who has an account is led to where they wanted to go, without a
// password of ours; the old session's token is of no use to whoever knew it.
func TestProviderLetsIn(t *testing.T) {
	h, i := withProvider(t)
	for _, c := range []struct {
		why    string
		claims map[string]any
		info   map[string]any
	}{
		{"a proven address", nil, nil},
		{"true in quotes", map[string]any{"email_verified": "true"}, nil},
		{"told only when asked", map[string]any{"email": "", "email_verified": nil}, map[string]any{"sub": "person-1", "email": "dana@pinwheel.example", "email_verified": true}},
		{"one audience of two", map[string]any{"aud": []string{"other", clientID}, "azp": clientID}, nil},
	} {
		i.claims, i.info = map[string]any{"email": "Dana@Pinwheel.example", "email_verified": true}, c.info
		for k, v := range c.claims {
			i.claims[k] = v
		}
		b := h.browser()
		resp, home := b.through("/staff/?list=mine", nil)
		if resp.StatusCode != http.StatusSeeOther || resp.Header.Get("Location") != "/staff/?list=mine" || !strings.Contains(home, "Dana") {
			t.Errorf("%s: %d to %q", c.why, resp.StatusCode, resp.Header.Get("Location"))
		}
	}
	var lines, tries int
	if err := h.pool.QueryRow(t.Context(), `SELECT (SELECT count(*) FROM staff_history WHERE deed = 'logged_in' AND detail ->> 'text' = 'through the workshop''s log-in'),
		(SELECT count(*) FROM staff_logins WHERE ok AND login = 'dana')`).Scan(&lines, &tries); err != nil || lines != 4 || tries != 4 {
		t.Errorf("%d lines of history, %d log-ins, %v", lines, tries, err)
	}
	resp, _ := h.browser().through("https://evil.example/", nil)
	if to := resp.Header.Get("Location"); to != "/staff/" {
		t.Errorf("sent on to %q", to)
	}
}

// TestProviderKeepsOut: whoever the provider does not vouch for, or in whose way back
// somebody had a hand, is nobody here.
func TestProviderKeepsOut(t *testing.T) {
	forger, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	h, i := withProvider(t)
	good := map[string]any{"email": "dana@pinwheel.example", "email_verified": true}
	for _, c := range []struct {
		why    string
		claims map[string]any
		info   map[string]any
		forger *ecdsa.PrivateKey
		change func(url.Values)
		status int
	}{
		{why: "no account has the address", claims: map[string]any{"email": "lee@pinwheel.example"}, status: http.StatusForbidden},
		{why: "not proven", claims: map[string]any{"email_verified": false}, status: http.StatusForbidden},
		{why: "not said whether proven", claims: map[string]any{"email_verified": nil}, status: http.StatusForbidden},
		{why: "another person's address when asked", claims: map[string]any{"email": ""}, info: map[string]any{"sub": "person-2", "email": "dana@pinwheel.example", "email_verified": true}, status: http.StatusBadGateway},
		{why: "signed by another key", forger: forger, status: http.StatusBadGateway},
		{why: "for another client", claims: map[string]any{"aud": "another-shop"}, status: http.StatusBadGateway},
		{why: "of another issuer", claims: map[string]any{"iss": "https://other.example"}, status: http.StatusBadGateway},
		{why: "run out", claims: map[string]any{"exp": time.Now().Add(-time.Minute).Unix()}, status: http.StatusBadGateway},
		{why: "of another log-in (nonce)", claims: map[string]any{"nonce": "another"}, status: http.StatusBadGateway},
		{why: "no nonce", claims: map[string]any{"nonce": nil}, status: http.StatusBadGateway},
		{why: "another state", change: func(q url.Values) { q.Set("state", "another") }, status: http.StatusUnprocessableEntity},
		{why: "no state", change: func(q url.Values) { q.Del("state") }, status: http.StatusUnprocessableEntity},
		{why: "another code", change: func(q url.Values) { q.Set("code", "another") }, status: http.StatusBadGateway},
		{why: "turned down", change: func(q url.Values) { q.Del("code"); q.Set("error", "access_denied") }, status: http.StatusUnprocessableEntity},
	} {
		i.claims, i.info, i.forger = map[string]any{}, c.info, c.forger
		for _, from := range []map[string]any{good, c.claims} {
			for k, v := range from {
				i.claims[k] = v
			}
		}
		resp, home := h.browser().through("/staff/", c.change)
		if resp.StatusCode != c.status || strings.Contains(home, "Dana") {
			t.Errorf("%s: %d, want %d; in: %v", c.why, resp.StatusCode, c.status, strings.Contains(home, "Dana"))
		}
	}
}

// TestProviderCodesAreOfOneBrowser: a code that another browser brought in is not taken
// (somebody would be logged in as another without knowing), nor one a second time.
func TestProviderCodesAreOfOneBrowser(t *testing.T) {
	h, _ := withProvider(t)
	ours, theirs := h.browser(), h.browser()
	_, to := theirs.follow(http.MethodGet, h.url+"/staff/login/provider")
	_, back := theirs.follow(http.MethodPost, to)
	if status, _ := ours.follow(http.MethodGet, back); status != http.StatusUnprocessableEntity {
		t.Errorf("a code that this browser never asked for: %d", status)
	}
	_, mine := ours.follow(http.MethodGet, h.url+"/staff/login/provider")
	if mine == "" {
		t.Fatal("not sent to the provider")
	}
	if status, _ := ours.follow(http.MethodGet, back); status != http.StatusUnprocessableEntity {
		t.Errorf("a code of another browser's log-in: %d", status)
	}
	if status, _ := theirs.follow(http.MethodGet, back); status != http.StatusSeeOther {
		t.Errorf("the browser that began it: %d", status)
	}
	if status, _ := theirs.follow(http.MethodGet, back); status != http.StatusUnprocessableEntity {
		t.Errorf("the same once more: %d", status)
	}
}

func TestProviderAccounts(t *testing.T) {
	h, _ := withProvider(t)
	refused := func(why string) {
		t.Helper()
		if resp, home := h.browser().through("/staff/", nil); resp.StatusCode != http.StatusForbidden || strings.Contains(home, "Dana") {
			t.Errorf("%s: %d", why, resp.StatusCode)
		}
	}
	lee := h.account("lee", "Lee", db.RoleOwner)
	h.exec(`UPDATE staff SET email = 'DANA@pinwheel.example' WHERE id = $1`, lee)
	refused("two accounts share the address")
	h.exec(`UPDATE staff SET left_at = now() WHERE id = $1`, lee)
	if resp, _ := h.browser().through("/staff/", nil); resp.StatusCode != http.StatusSeeOther {
		t.Errorf("the other one left: %d", resp.StatusCode)
	}
	h.exec(`UPDATE staff SET left_at = now()`)
	refused("the account has ended")
}

// TestProviderIsDown: passwords go on working, and it is asked again.
func TestProviderIsDown(t *testing.T) {
	h, i := withProvider(t)
	i.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { http.Error(w, "later", http.StatusServiceUnavailable) })
	if status, page := h.browser().get("/staff/login/provider"); status != http.StatusBadGateway || !strings.Contains(page, "use your password") {
		t.Errorf("%d", status)
	}
	if status, _ := h.browser().post("/staff/login", "login", "dana", "password", password); status != http.StatusSeeOther {
		t.Errorf("by password: %d", status)
	}
	h.page.provider = nil
	for _, path := range []string{"/staff/login/provider", "/staff/login/return?code=1&state=2"} {
		if status, _ := h.browser().get(path); status != http.StatusNotFound {
			t.Errorf("%s without a provider: %d", path, status)
		}
	}
}

// TestProviderInABrowser: the whole way in a real browser, under the page's own policy.
func TestProviderInABrowser(t *testing.T) {
	h, _ := withProvider(t)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	for _, script := range []bool{true, false} {
		s := h.screen(chromium(t), "provider", 1440, 900, script)
		s.open("/staff/lead/R7KQ4")
		s.do(chromedp.Click(".or + p a"), chromedp.WaitVisible("#yes"), chromedp.Click("#yes"), chromedp.WaitVisible(".title"))
		s.told("R7KQ4")
	}
}
