package intake

import (
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"

	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// testUnsubscribe follows the link of a mail as people and programs do.
func testUnsubscribe(t *testing.T, m *mailShop, links *Unsubscribe, raw string) {
	t.Helper()
	unfolded := strings.ReplaceAll(strings.ReplaceAll(raw, "\r\n ", ""), "\r\n\t", "")
	found := regexp.MustCompile(`List-Unsubscribe: ?<https://bot\.example\.com([^>]+)>`).FindStringSubmatch(unfolded)
	if found == nil {
		t.Fatalf("no link in\n%s", unfolded)
	}
	path := found[1]
	ask := func(method, path string) int {
		w := httptest.NewRecorder()
		links.Handler().ServeHTTP(w, httptest.NewRequest(method, path, strings.NewReader("List-Unsubscribe=One-Click")))
		return w.Code
	}
	out := func() bool {
		out, err := db.OptedOut(t.Context(), m.pool, db.Address{Channel: conversation.Email, Address: dana.Address})
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	if code := ask(http.MethodGet, path); code != http.StatusOK || out() {
		t.Errorf("looking at the link: %d, opted out %v", code, out())
	}
	for _, guess := range []string{path[:len(path)-1], path + "A", strings.Replace(path, "unsubscribe/", "unsubscribe/9", 1), "/mail/unsubscribe/1/"} {
		if code := ask(http.MethodPost, guess); code != http.StatusNotFound || out() {
			t.Errorf("%s: %d, opted out %v", guess, code, out())
		}
	}
	for range 2 { // twice does no harm
		if code := ask(http.MethodPost, path); code != http.StatusOK || !out() {
			t.Errorf("following the link: %d, opted out %v", code, out())
		}
	}
	before := len(m.office.To(dana.Address))
	m.write(standin.Letter{Subject: "Dome", Text: "hello again"})
	if got := len(m.office.To(dana.Address)); got != before {
		t.Errorf("%d mails after the opt-out", got-before)
	}
}
