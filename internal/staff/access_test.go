package staff

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"example.com/intake-bot/internal/db"
)

// TestWhoMayWhat goes through every route as nobody, as staff and as the owner.
func TestWhoMayWhat(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.account("kim", "Kim", db.RoleOwner)
	h.lead("R7KQ4", "+12185550123", "with_staff", nil)
	for _, who := range []struct {
		name string
		rank int
	}{{"", 0}, {"dana", 1}, {"kim", 2}} {
		b := h.browser()
		if who.name != "" {
			b = h.as(who.name)
		}
		for _, r := range h.page.table() {
			method, path, _ := strings.Cut(r.pattern, " ")
			if path == "/staff/news" && who.rank > 0 || strings.HasPrefix(path, "/staff/logout") {
				continue // a stream without end; the end of the session
			}
			path = strings.NewReplacer("{$}", "", "{ref}", "R7KQ4", "{unit}", "1", "{id}", "999", "{name}", "none.css").Replace(path)
			var form url.Values
			if method == http.MethodPost {
				form = url.Values{}
			}
			status, _ := b.ask(method, path, form)
			need := map[db.Role]int{anybody: 0, db.RoleStaff: 1, db.RoleOwner: 2}[r.role]
			if refused := status == http.StatusForbidden || status == http.StatusUnauthorized; who.rank >= need && refused {
				t.Errorf("%q was refused %s: %d", who.name, r.pattern, status)
			}
			if who.rank >= need {
				if status >= 500 {
					t.Errorf("%s as %q: %d", r.pattern, who.name, status)
				}
				continue
			}
			want := http.StatusForbidden
			if who.rank == 0 {
				want = map[string]int{http.MethodGet: http.StatusSeeOther, http.MethodPost: http.StatusUnauthorized}[method]
			}
			if status != want {
				t.Errorf("%s as %q: %d, want %d", r.pattern, who.name, status, want)
			}
		}
	}
}

func TestEveryAnswerIsGuarded(t *testing.T) {
	h := newHouse(t)
	for _, path := range []string{"/staff/login", "/staff/", "/staff/nothing", "/staff/assets/none.css"} {
		resp, err := h.browser().client.Get(h.url + path)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		csp := resp.Header.Get("Content-Security-Policy")
		for _, must := range []string{"default-src 'none'", "script-src 'self'", "frame-ancestors 'none'", "form-action 'self'"} {
			if !strings.Contains(csp, must) || strings.Contains(csp, "unsafe") {
				t.Errorf("%s: policy %q", path, csp)
			}
		}
		if resp.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: types may be guessed", path)
		}
	}
	for name := range pages {
		b, err := pageFiles.ReadFile("pages/" + name)
		if err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"<script>", "<style", " style=", " onclick", " onload", "javascript:", "http://", "https://"} {
			if strings.Contains(string(b), bad) {
				t.Errorf("%s holds %s", name, bad)
			}
		}
	}
}

func TestPostsFromElsewhereAreRefused(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", "with_staff", nil)
	b := h.as("dana")
	for _, from := range []map[string]string{{"Sec-Fetch-Site": "cross-site"}, {"Sec-Fetch-Site": "same-site"}, {"Origin": "https://evil.example"}} {
		req, _ := http.NewRequest(http.MethodPost, h.url+"/staff/lead/R7KQ4/take", nil)
		for k, v := range from {
			req.Header.Set(k, v)
		}
		resp, err := b.client.Do(req)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		if _, holder := h.status("R7KQ4"); resp.StatusCode != http.StatusForbidden || holder != "" {
			t.Errorf("%v: %d, taken by %q", from, resp.StatusCode, holder)
		}
	}
}

func TestSessions(t *testing.T) {
	h := newHouse(t)
	id := h.account("dana", "Dana", db.RoleStaff)
	one, two := h.as("dana"), h.as("dana")
	if status, _ := one.get("/staff/"); status != http.StatusOK {
		t.Fatalf("logged in, got %d", status)
	}
	const better = "a much better one 7"
	if status, body := one.post("/staff/password", "old", password, "new", better, "again", better); status != http.StatusSeeOther {
		t.Fatalf("%d %s", status, body)
	}
	if status, _ := one.get("/staff/"); status != http.StatusOK {
		t.Errorf("the session that changed the password ended: %d", status)
	}
	if status, _ := two.get("/staff/"); status != http.StatusSeeOther {
		t.Errorf("another session outlived the old password: %d", status)
	}
	h.exec(`UPDATE staff SET left_at = now() WHERE id = $1`, id)
	if status, _ := one.get("/staff/"); status != http.StatusSeeOther {
		t.Errorf("somebody who left is still in: %d", status)
	}
	var plain int
	if err := h.pool.QueryRow(t.Context(), `SELECT count(*) FROM sessions WHERE token = ANY ($1)`, cookies(t, h, one, two)).Scan(&plain); err != nil || plain > 0 {
		t.Errorf("%d tokens are kept as they are, %v", plain, err)
	}
}

func cookies(t *testing.T, h *house, all ...*browser) []string {
	t.Helper()
	u, err := url.Parse(h.url)
	if err != nil {
		t.Fatal(err)
	}
	var tokens []string
	for _, b := range all {
		for _, c := range b.client.Jar.Cookies(u) {
			tokens = append(tokens, c.Value)
		}
	}
	if len(tokens) == 0 {
		t.Fatal("no cookie")
	}
	return tokens
}

func TestOneTimePasswordMustBeChanged(t *testing.T) {
	h := newHouse(t)
	id := h.account("dana", "Dana", db.RoleStaff)
	h.exec(`UPDATE staff SET one_time = true WHERE id = $1`, id)
	b := h.as("dana")
	for _, path := range []string{"/staff/", "/staff/find"} {
		if status, _ := b.get(path); status != http.StatusSeeOther {
			t.Errorf("%s with a one-time password: %d", path, status)
		}
	}
	if status, _ := b.get("/staff/password"); status != http.StatusOK {
		t.Errorf("can't change it: %d", status)
	}
}

func TestLogInIsThrottled(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	b := h.browser()
	for i := range mostByPair {
		if status, _ := b.post("/staff/login", "login", "dana", "password", "wrong"); status != http.StatusUnprocessableEntity {
			t.Fatalf("try %d: %d", i+1, status)
		}
	}
	if status, body := b.post("/staff/login", "login", "dana", "password", password); status != http.StatusTooManyRequests || !strings.Contains(body, "Too many tries") {
		t.Errorf("the right password after too many wrong ones: %d", status)
	}
	if status, _ := b.post("/staff/login", "login", "nobody", "password", password); status != http.StatusUnprocessableEntity {
		t.Errorf("another account from there: %d", status)
	}
}

func TestLocal(t *testing.T) {
	for in, want := range map[string]string{
		"/staff/lead/R7KQ4": "/staff/lead/R7KQ4", "/staff/?list=mine": "/staff/?list=mine",
		"": "/staff/", "https://evil.example/staff/": "/staff/", "//evil.example/staff/": "/staff/", "/staffed": "/staff/",
		"/staff/\\evil": "/staff/", "/sms/inbound": "/staff/", "javascript:alert(1)": "/staff/",
	} {
		if got := local(in); got != want {
			t.Errorf("local(%q) = %q, want %q", in, got, want)
		}
	}
}
