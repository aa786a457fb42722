package intake

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// dayShop is open from 8 to 17 in Duluth, every day.
type dayShop struct{ zone *time.Location }

func (d dayShop) Open(t time.Time) bool { h := t.In(d.zone).Hour(); return h >= 8 && h < 17 }
func (d dayShop) NextOpening(t time.Time) time.Time {
	for !d.Open(t) {
		t = t.Add(15 * time.Minute)
	}
	return t
}

// told collects what staff are mailed.
type told struct {
	mu    sync.Mutex
	mails []AlertMail
}

func (o *told) mail(_ context.Context, m AlertMail) error {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.mails = append(o.mails, m)
	return nil
}

func (o *told) subjects() []string {
	o.mu.Lock()
	defer o.mu.Unlock()
	var all []string
	for _, m := range o.mails {
		all = append(all, m.To+": "+m.Subject)
	}
	slices.Sort(all)
	return all
}

// staffedShop has an owner who is mailed and a person of staff who is texted, and one
// lead that needs a person.
func staffedShop(t *testing.T, change func(*Options)) (*shop, *told, string) {
	t.Helper()
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	out := &told{}
	s := newShop(t, func(o *Options) {
		o.Shop.Rules, o.Shop.Zone, o.Shop.Hours = fitcheck.DefaultRules(), zone, dayShop{zone}
		o.Alerts = Alerts{Mail: out.mail, Page: "https://bot.example/staff",
			Sheet: func(context.Context, string) ([]byte, error) { return []byte("%PDF"), nil }}
		if change != nil {
			change(o)
		}
	})
	s.person("kim", db.RoleOwner, "kim@pinwheel.example", "")
	s.person("lee", db.RoleStaff, "", "+12185550191")
	s.start()
	s.text("hello")
	s.quiet()
	var ref string
	s.one(`UPDATE leads l SET status = 'needs_person', why_staff = '{asked for a person}', waiting_since = '2026-03-02 18:00Z', updated_at = '2026-03-02 18:00Z'
		FROM conversations c WHERE c.id = l.conversation_id RETURNING c.ref`, &ref)
	return s, out, ref
}

func (s *shop) person(login string, role db.Role, email, phone string) {
	s.t.Helper()
	_, err := db.AddStaff(context.Background(), s.pool, db.Staff{Login: login, Name: strings.ToUpper(login[:1]) + login[1:], Role: role,
		PasswordHash: "$argon2id$x", Email: email, Phone: phone, MailAlerts: email != "", TextAlerts: phone != ""})
	if err != nil {
		s.t.Fatal(err)
	}
}

func (s *shop) alert(reason string) {
	s.t.Helper()
	if _, err := s.pool.Exec(s.t.Context(), `INSERT INTO alerts (conversation_id, reason, at) VALUES (1, $1, now())`, reason); err != nil {
		s.t.Fatal(err)
	}
}

// tellNow looks for what is to be told, and waits until it was.
func (s *shop) tellNow() {
	s.t.Helper()
	if err := s.tellAll(s.t.Context()); err != nil {
		s.t.Fatal(err)
	}
	s.until("all was told", func() bool {
		var left int
		s.one(`SELECT count(*) FROM river_job WHERE queue = 'alerts' AND state IN ('available', 'running')`, &left)
		return left == 0
	})
}

// staffTexts are those that staff got.
func (s *shop) staffTexts() []string {
	return slices.DeleteFunc(s.carrier.texts(), func(text string) bool { return strings.HasPrefix(text, "heard ") })
}

func TestStaffAreToldOnce(t *testing.T) {
	s, out, ref := staffedShop(t, nil)
	for range 3 {
		s.alert(db.AlertLead)
		s.tellNow()
	}
	if got, want := out.subjects(), []string{"kim@pinwheel.example: Lead " + ref + ": needs one of us"}; !slices.Equal(got, want) {
		t.Errorf("mails %q, want %q", got, want)
	}
	if m := out.mails[0]; string(m.PDF) != "%PDF" || m.PDFName != "lead-"+ref+".pdf" || !strings.Contains(m.Text, "asked for a person") || m.ID == "" {
		t.Errorf("%+v", m)
	}
	if got := s.staffTexts(); len(got) != 1 || !strings.Contains(got[0], "TAKE "+ref) || len(got[0]) > 160 {
		t.Errorf("texts %q", got)
	}
	s.alert(db.AlertNotSent) // another thing
	s.tellNow()
	if got := out.subjects(); len(got) != 2 {
		t.Errorf("mails %q", got)
	}
}

func TestByNightOnlyTheUrgentIsTexted(t *testing.T) {
	s, out, _ := staffedShop(t, nil)
	s.later(11 * time.Hour)
	s.alert(db.AlertLead)
	s.tellNow()
	if len(s.staffTexts()) != 0 || len(out.subjects()) != 1 {
		t.Errorf("texts %q, mails %q", s.staffTexts(), out.subjects())
	}
	s.one(`UPDATE leads SET urgent = true, status = 'open', waiting_since = NULL RETURNING conversation_id`, new(int64))
	s.alert(db.AlertLead)
	s.tellNow()
	if len(s.staffTexts()) != 1 {
		t.Errorf("texts %q", s.staffTexts())
	}
}

func TestDigestAndLate(t *testing.T) {
	s, out, ref := staffedShop(t, nil)
	s.later(90 * time.Minute)
	s.tellNow()
	if got := out.subjects(); len(got) != 0 {
		t.Errorf("too soon: %q", got)
	}
	s.later(time.Hour) // two and a half hours of open time: late
	s.tellNow()
	s.tellNow()
	if got, want := out.subjects(), []string{"kim@pinwheel.example: Lead " + ref + ": waits too long"}; !slices.Equal(got, want) {
		t.Errorf("late: %q, want %q", got, want)
	}
	if len(s.staffTexts()) != 0 {
		t.Errorf("staff were told what only the owner needs: %q", s.staffTexts())
	}
	s.later(17*time.Hour + 40*time.Minute) // 8:10 the next morning
	s.tellNow()
	s.tellNow()
	if got := out.subjects(); len(got) != 2 || got[0] != "kim@pinwheel.example: 1 waiting this morning" {
		t.Errorf("digest: %q", got)
	}
	if got := s.staffTexts(); len(got) != 1 || !strings.Contains(got[0], "1 waiting this morning") {
		t.Errorf("digest by text: %q", got)
	}
}

// TestTakeByText: exactly one of two gets the lead; the same text again changes nothing;
// nobody else can, and a text from staff that is no answer is like any other.
func TestTakeByText(t *testing.T) {
	s, _, ref := staffedShop(t, nil)
	s.person("max", db.RoleStaff, "", "+12185550192")
	from := func(id, number, text string) {
		t.Helper()
		s.receive(Inbound{Channel: conversation.SMS, ID: id, From: number, Text: text})
	}
	var all sync.WaitGroup
	for i, number := range []string{"+12185550191", "+12185550192"} {
		all.Go(func() { from(fmt.Sprintf("T%d", i), number, " take "+strings.ToLower(ref)+". ") })
	}
	all.Wait()
	from("T0", "+12185550191", "take "+ref)
	from("T9", "+12185550191", "TAKE CCCCC")
	s.tellNow()
	texts := strings.Join(s.staffTexts(), "|")
	if strings.Count(texts, ref+" is yours.") != 1 || strings.Count(texts, "was faster") != 1 || strings.Count(texts, "no lead CCCCC") != 1 || len(s.staffTexts()) != 3 {
		t.Errorf("answers %q", texts)
	}
	var status string
	var hands, talks int
	s.one(`SELECT status, (SELECT count(*) FROM lead_hands), (SELECT count(*) FROM conversations) FROM leads`, &status, &hands, &talks)
	if status != "picked_up" || hands != 1 || talks != 1 {
		t.Errorf("%s, %d hands, %d talks", status, hands, talks)
	}
	from("T10", "+12185550177", "take "+ref) // a stranger
	from("T11", "+12185550191", "take it easy")
	s.quiet()
	if s.one(`SELECT count(*) FROM conversations`, &talks); talks != 3 {
		t.Errorf("%d talks", talks)
	}
}

// TestSignatureAsTheDocsHaveIt computes a signature by another program, as docs/webhook.md
// tells those who receive it.
func TestSignatureAsTheDocsHaveIt(t *testing.T) {
	doc, err := os.ReadFile("../../docs/webhook.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, header := range []string{HeaderEvent, HeaderEventID, HeaderTimestamp, HeaderSignature} {
		if !strings.Contains(string(doc), "`"+header+"`") {
			t.Errorf("the docs lack %s", header)
		}
	}
	// printf '1772474400.{"version":1}' | openssl dgst -sha256 -hmac 'not a real secret'
	const want = "v1=954b1b7ea9e6f1b6e1ddf7ce1e6542fc9a2a51f1ff23288e91e57f9e27f07c22"
	if got := Sign([]byte("not a real secret"), "1772474400", []byte(`{"version":1}`)); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

func TestStepsAreTold(t *testing.T) {
	secret := []byte("not a real secret")
	type step struct{ event, id, body string }
	var mu sync.Mutex
	var steps []step
	fail := 2
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, _ := io.ReadAll(r.Body)
		mu.Lock()
		defer mu.Unlock()
		if r.Header.Get(HeaderSignature) != Sign(secret, r.Header.Get(HeaderTimestamp), body) {
			t.Error("the signature is wrong")
		}
		if fail > 0 {
			fail--
			http.Error(w, "later", http.StatusServiceUnavailable)
			return
		}
		steps = append(steps, step{r.Header.Get(HeaderEvent), r.Header.Get(HeaderEventID), string(body)})
	}))
	defer server.Close()
	s, _, ref := staffedShop(t, func(o *Options) { o.Alerts.Webhook = &Webhook{URL: server.URL, Secret: secret} })
	if err := s.tellAll(t.Context()); err != nil {
		t.Fatal(err)
	}
	s.until("the step is told", func() bool { mu.Lock(); defer mu.Unlock(); return len(steps) == 1 })
	if st := steps[0]; st.event != "needs_person" || !strings.Contains(st.body, `"ref":"`+ref+`"`) || !strings.HasPrefix(st.body, `{"version":1,`) {
		t.Errorf("%+v", st)
	}
	if Sign(secret, "1", []byte("a")) == Sign(secret, "2", []byte("a")) || Sign(secret, "1", []byte("a")) == Sign([]byte("x"), "1", []byte("a")) {
		t.Error("the signature does not cover time and secret")
	}
}
