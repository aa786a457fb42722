package staff

import (
	"net/http"
	"strings"
	"testing"

	"github.com/riverqueue/river"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

func TestCheckByHand(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	b := h.as("dana")
	numbers := []string{"use", "home", "place", "55802", "style", "curb_mount", "want", "complete_unit", "curb_outside", "25 1/2 x 49 1/2", "curb_inside", "22.5 x 46.5"}
	if status, page := b.post("/staff/check", numbers...); status != http.StatusOK || !strings.Contains(page, "complete unit: numbers agree") ||
		!strings.Contains(page, "25 7/8 x 49 7/8 inside the flange") {
		t.Errorf("%d %s", status, page)
	}
	if status, page := b.post("/staff/check", "curb_outside", "about 25"); status != http.StatusUnprocessableEntity || !strings.Contains(page, "is no length") {
		t.Errorf("%d %s", status, page)
	}
	if status, page := b.post("/staff/check/lead", numbers...); status != http.StatusUnprocessableEntity || !strings.Contains(page, "needs a number") {
		t.Errorf("a lead that nobody can call: %d", status)
	}
	if status, _ := b.post("/staff/check/lead", append(numbers, "name", "Ana", "phone", "(218) 555-0123")...); status != http.StatusSeeOther {
		t.Fatalf("%d", status)
	}
	var ref, by string
	if err := h.pool.QueryRow(t.Context(), `SELECT c.ref, string_agg(DISTINCT f.by, ',') FROM conversations c JOIN facts f ON f.conversation_id = c.id
		JOIN leads l ON l.conversation_id = c.id WHERE l.qualified AND l.phone = '+12185550123' GROUP BY c.ref`).Scan(&ref, &by); err != nil || by != "staff" {
		t.Fatalf("by %q, %v", by, err)
	}
	if status, holder := h.status(ref); status != "picked_up" || holder != "dana" {
		t.Errorf("%s with %q", status, holder)
	}
	if told := b.does("/staff/lead/"+ref+"/write", "to", "sms +12185550123", "text", "As said on the phone."); !strings.Contains(told, "Sent") {
		t.Errorf("told %q", told)
	}
}

func TestFieldsThatAreRead(t *testing.T) {
	const inch = fitcheck.Inch
	for _, c := range []struct {
		topic fitcheck.Topic
		text  string
		want  string
	}{
		{"curb_outside", "49 1/2 x 25-1/2", "25 1/2 x 49 1/2"}, {"curb_outside", `25.5" by 49.5"`, "25 1/2 x 49 1/2"},
		{"curb_outside", "648 mm x 1257mm", "648 mm (25 1/2) x 1257 mm (49 1/2)"}, {"plastic_size", "30 round", "30 round"},
		{"curb_outside", "24, 48, 24 1/8, 48", "24 / 48 / 24 1/8 / 48, side by side"}, {"curb_diagonals", "55 3/4 and 55 5/8", "55 3/4 and 55 5/8"},
		{"curb_height", "4", "4"}, {"dome_rise", "0", "0"}, {"roof_slope", "4/12", "4 in 12"}, {"roof_slope", "flat", "flat"},
		{"roof_covering", "built up", "built up"}, {"roof_covering", "Shingles", "shingles"},
		{"layers", "2", "2"}, {"color", "clear over white", "clear over white"}, {"place", "Duluth, MN 55802", "Duluth, MN 55802"},
		{"place", "55802", "Duluth, MN 55802"}, {"place", "Duluth, mn", "Duluth, MN"}, {"problem", "cracked, leaking", "cracked and leaking"},
		{"impact_risk", "none", "none"}, {"frame_condition", "caulked over", "caulked over"}, {"phone", "218.555.0123", "+12185550123"},
		{"curb_outside", "25", ""}, {"curb_outside", "25 3/2 x 49", ""}, {"curb_outside", "25 1/0 x 49", ""}, {"curb_height", "-4", ""},
		{"curb_height", "0", ""}, {"layers", "4", ""}, {"layers", "two", ""}, {"color", "mauve", ""}, {"place", "Duluth", ""},
		{"place", "00000", ""}, {"phone", "555-0123", ""}, {"style", "skylight", ""}, {"name", "", ""}, {"curb_outside", "99999 x 3", ""},
	} {
		v, err := readValue(c.topic, c.text)
		if got := valueWords(v); (err != nil) != (c.want == "") || err == nil && got != c.want {
			t.Errorf("%s %q: %q, %v, want %q", c.topic, c.text, got, err, c.want)
		}
	}
	if len(choicesOf(fitcheck.TopicStyle)) != 10 {
		t.Errorf("styles to choose: %v", choicesOf(fitcheck.TopicStyle))
	}
	_ = inch
}

// hostile is what some people write to see what breaks.
const hostile = `<script>alert(1)</script><img src=x onerror=alert(2)>"'><b style="x">` + "\u202etxt.exe\u202c =cmd|'/c calc'!A1"

func TestHostileWordsAreShownHarmlessly(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleOwner)
	id := h.lead("R7KQ4", "+12185550123", conversation.WithStaff, func(talk *conversation.Talk) {
		talk.Ledger = append(talk.Ledger,
			conversation.Entry{Topic: "name", Value: fitcheck.Text(hostile), Said: hostile, Message: 1, By: "customer"},
			conversation.Entry{Topic: "email", Value: fitcheck.Text("javascript:alert(3)@example.com"), Said: hostile, Message: 1, By: "customer"})
	})
	h.exec(`UPDATE messages SET text = $1 WHERE direction = 'in'`, hostile+strings.Repeat("W", 150_000))
	h.exec(`UPDATE leads SET why_staff = ARRAY[$1], city = $1 WHERE conversation_id = $2`, hostile, id)
	b := h.as("dana")
	b.does("/staff/lead/R7KQ4/note", "text", hostile)
	b.does("/staff/lead/R7KQ4/fact", "topic", "name", "value", hostile, "why", hostile)
	for _, path := range []string{"/staff/", "/staff/lead/R7KQ4", "/staff/lead/R7KQ4?fix=" + "%22%3E%3Cscript%3E", "/staff/find?q=%3Cscript%3Ealert(1)%3C/script%3E",
		"/staff/find?q=script", "/staff/figures?cents=%3Cscript%3E", "/staff/shop", "/staff/person?of=%2B12185550123", "/staff/person?of=%3Cscript%3E"} {
		status, page := b.get(path)
		if status >= 500 {
			t.Errorf("%s: %d", path, status)
		}
		for _, bad := range []string{"<script>alert", "<img src=x", "onerror=alert(2)>\"", `<b style`, `href="javascript`} {
			if strings.Contains(page, bad) {
				t.Errorf("%s holds %s", path, bad)
			}
		}
	}
	// What staff type is kept without the marks that turn the direction of writing.
	var turned bool
	if err := h.pool.QueryRow(t.Context(), `SELECT bool_or(detail ->> 'text' LIKE '%' || chr(8238) || '%') FROM staff_history`).Scan(&turned); err != nil || turned {
		t.Errorf("turned %v, %v", turned, err)
	}
}

func TestPhotosHaveFixedTypes(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	h.lead("CDFGH", "+12185550124", conversation.WithStaff, nil)
	h.exec(`INSERT INTO photos (message_id, k, source, state, width, height, sha256, opened_at, look) SELECT min(id), 1, 'x', 'kept', 9, 9, sha256('x'), now(), 'blurred' FROM messages`)
	h.exec(`INSERT INTO photo_files (photo_id, jpeg, thumb) VALUES (1, 'whole', 'small')`)
	h.exec(`INSERT INTO photos (message_id, k, source, state, why) SELECT min(id), 2, 'x', 'refused', 'no_picture' FROM messages`)
	b := h.as("dana")
	for path, want := range map[string]int{"/staff/lead/R7KQ4/photo/1": 200, "/staff/lead/R7KQ4/photo/2": 404, "/staff/lead/CDFGH/photo/1": 404,
		"/staff/lead/R7KQ4/photo/x": 404, "/staff/lead/R7KQ4/drawing/1": 200, "/staff/lead/R7KQ4/drawing/2": 404, "/staff/lead/R7KQ4/drawing/-1": 404, "/staff/lead/R7KQ4/sheet.pdf": 200} {
		resp, err := b.client.Get(h.url + path)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		if resp.StatusCode != want {
			t.Errorf("%s: %d, want %d", path, resp.StatusCode, want)
		}
		if want == 200 && !strings.Contains(resp.Header.Get("Content-Security-Policy"), "sandbox") {
			t.Errorf("%s may do more than be seen", path)
		}
	}
}

func TestFindPage(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	b := h.as("dana")
	for q, found := range map[string]bool{"ana": true, "R7KQ4": true, "r7kq4": true, "0123": true, "%28218%29+555-0123": true, "duluth+ana": true,
		"25+1/2+x+49+1/2": true, "22.5x46.5": true, "bob": false, "30+x+30": false, "%27%22": false, "": false, "+": false} {
		if _, page := b.get("/staff/find?q=" + q); strings.Contains(page, "/staff/lead/R7KQ4") != found {
			t.Errorf("%q: found %v", q, !found)
		}
	}
}

func TestOwnersPage(t *testing.T) {
	h := newHouse(t)
	me := h.account("kim", "Kim", db.RoleOwner)
	b := h.as("kim")
	if told := b.does("/staff/shop/account", "login", "lee", "name", "Lee", "role", "staff", "email", "lee@example.com", "mail_alerts", "1"); !strings.Contains(told, "added lee") {
		t.Fatalf("told %q", told)
	}
	_, page := b.get("/staff/shop")
	_, once, _ := strings.Cut(page, `<b class="once">`)
	once, _, _ = strings.Cut(once, "</b>")
	lee := h.browser()
	if status, _ := lee.post("/staff/login", "login", "lee", "password", once); status != http.StatusSeeOther {
		t.Errorf("the password %q lets nobody in: %d", once, status)
	}
	if _, page = b.get("/staff/shop"); strings.Contains(page, once) {
		t.Error("the password is shown twice")
	}
	account := "/staff/shop/account/" + map[bool]string{true: "2", false: "1"}[me == 1]
	for _, c := range []struct{ path, told string }{
		{account + "/leave", "ended lee"}, {account + "/leave", "opened lee again"}, {account + "/password", "new password"},
		{"/staff/shop/account/1/leave", "own account"}, {"/staff/shop/account/1", "Give the name"},
	} {
		if told := b.does(c.path); !strings.Contains(told, c.told) {
			t.Errorf("%s: told %q", c.path, told)
		}
	}
	if status, _ := lee.get("/staff/password"); status != http.StatusSeeOther {
		t.Error("a session outlived a new password")
	}
}

type failing struct{}

func (failing) Kind() string { return "failing" }

func TestJobsThatGaveUp(t *testing.T) {
	h := newHouse(t)
	h.account("kim", "Kim", db.RoleOwner)
	job, err := h.page.queue.Insert(t.Context(), failing{}, &river.InsertOpts{MaxAttempts: 1})
	if err != nil {
		t.Fatal(err)
	}
	h.exec(`UPDATE river_job SET state = 'discarded', finalized_at = now(), attempt = 1, errors = ARRAY['{"at":"2026-03-02T18:00:00Z","attempt":1,"error":"no such host","trace":""}'::jsonb] WHERE id = $1`, job.Job.ID)
	b := h.as("kim")
	if _, page := b.get("/staff/shop"); !strings.Contains(page, "no such host") {
		t.Error("the failure is not shown")
	}
	if told := b.does("/staff/shop/job/1"); !strings.Contains(told, "tried again") {
		t.Errorf("told %q", told)
	}
	var state string
	if err := h.pool.QueryRow(t.Context(), `SELECT state FROM river_job`).Scan(&state); err != nil || state != "available" {
		t.Errorf("%s, %v", state, err)
	}
}

func TestPersonsData(t *testing.T) {
	h := newHouse(t)
	h.account("kim", "Kim", db.RoleOwner)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	h.lead("CDFGH", "+12185550124", conversation.WithStaff, nil)
	b := h.as("kim")
	b.does("/staff/lead/R7KQ4/merge", "other", "CDFGH")
	b.does("/staff/lead/R7KQ4/fact", "topic", "layers@1", "value", "2")
	b.does("/staff/lead/R7KQ4/undo", "line", "4")
	if status, body := b.get("/staff/person/data.json?of=(218)+555-0123"); status != http.StatusOK || !strings.Contains(body, `"R7KQ4"`) {
		t.Errorf("%d %.80s", status, body)
	}
	b.get("/staff/person?of=2185550123")
	var shown, exported int
	if err := h.pool.QueryRow(t.Context(), `SELECT count(*) FILTER (WHERE deed = 'shown'), count(*) FILTER (WHERE deed = 'exported') FROM staff_history`).
		Scan(&shown, &exported); err != nil || shown != 1 || exported != 1 {
		t.Errorf("shown %d times, exported %d, %v", shown, exported, err)
	}
	if told := b.does("/staff/person/erase", "of", "+12185550123", "again", "+12185550124", "back", "/staff/person"); !strings.Contains(told, "nothing was erased") {
		t.Errorf("told %q", told)
	}
	if told := b.does("/staff/person/erase", "of", "+12185550123", "again", "218-555-0123"); !strings.Contains(told, "Erased: 2 ") {
		t.Errorf("told %q", told)
	}
	var left int
	if err := h.pool.QueryRow(t.Context(), `SELECT (SELECT count(*) FROM conversations) + (SELECT count(*) FROM messages) + (SELECT count(*) FROM facts)
		+ (SELECT count(*) FROM addresses) + (SELECT count(*) FROM staff_history WHERE conversation_id IS NOT NULL)`).Scan(&left); err != nil || left != 0 {
		t.Errorf("%d rows are left, %v", left, err)
	}
}

func TestFiguresCount(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	h.lead("CDFGH", "+12185550124", conversation.WithStaff, func(talk *conversation.Talk) { talk.Ledger = talk.Ledger[:3] })
	b := h.as("dana")
	b.does("/staff/lead/R7KQ4/mark", "status", "quoted")
	b.does("/staff/lead/R7KQ4/mark", "status", "ordered")
	f, err := db.Figures(t.Context(), h.pool, noon.AddDate(0, 0, -14), "America/Chicago")
	if err != nil || len(f) != 1 || f[0].Begun != 2 || f[0].Measured != 1 || f[0].Taken != 1 || f[0].Quoted != 1 || f[0].Ordered != 1 {
		t.Errorf("%+v, %v", f, err)
	}
	if status, page := b.get("/staff/figures?cents=0.79"); status != http.StatusOK || !strings.Contains(page, "<b>Talks begun</b>: 2") {
		t.Errorf("%d", status)
	}
}
