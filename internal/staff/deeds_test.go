package staff

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

// TestOneOfManyTakesIt: twenty people press the button at once, one has the lead.
func TestOneOfManyTakesIt(t *testing.T) {
	h := newHouse(t)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	const many = 20
	people := make([]*browser, many)
	for i := range people {
		login := fmt.Sprintf("person%d", i)
		h.account(login, "Person "+login, db.RoleStaff)
	}
	for i := range people {
		people[i] = h.as(fmt.Sprintf("person%d", i))
	}
	var won, lost int
	var mu sync.Mutex
	var all sync.WaitGroup
	for _, b := range people {
		all.Go(func() {
			b.post("/staff/lead/R7KQ4/take")
			_, page := b.get("/staff/lead/R7KQ4")
			mu.Lock()
			defer mu.Unlock()
			switch {
			case strings.Contains(page, "The lead is in your hands."):
				won++
			case strings.Contains(page, "was faster"):
				lost++
			}
		})
	}
	all.Wait()
	if won != 1 || lost != many-1 {
		t.Errorf("%d took it, %d were told that another was faster", won, lost)
	}
	var lines int
	if err := h.pool.QueryRow(t.Context(), `SELECT count(*) FROM staff_history WHERE deed = 'took'`).Scan(&lines); err != nil || lines != 1 {
		t.Errorf("%d lines of history, %v", lines, err)
	}
}

func TestDeeds(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.account("lee", "Lee", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	dana, lee := h.as("dana"), h.as("lee")
	const at = "/staff/lead/R7KQ4/"
	for _, c := range []struct {
		who    *browser
		deed   string
		fields []string
		told   string
		status conversation.Status
		holder string
	}{
		{dana, "take", nil, "in your hands", "picked_up", "dana"},
		{dana, "take", nil, "have it already", "picked_up", "dana"},
		{lee, "take", nil, "Dana was faster", "picked_up", "dana"},
		{lee, "write", []string{"to", "sms +12185550123", "text", "Hello"}, "Dana has this lead in hand", "picked_up", "dana"},
		{lee, "put-back", nil, "not in your hands", "picked_up", "dana"},
		{lee, "note", []string{"text", "call after 5"}, "Noted", "picked_up", "dana"},
		{dana, "put-back", nil, "waits again", "needs_person", ""},
		{lee, "take", nil, "in your hands", "picked_up", "lee"},
		{dana, "take", []string{"over", "1"}, "in your hands", "picked_up", "dana"},
		{dana, "write", []string{"to", "sms +12185550199", "text", "Hello"}, "not one of this customer", "picked_up", "dana"},
		{dana, "write", []string{"to", "sms +12185550123", "text", "  "}, "Nothing was written", "picked_up", "dana"},
		{dana, "write", []string{"to", "sms +12185550123", "text", "Hello Ana, Dana here."}, "assistant is silent", "picked_up", "dana"},
		{dana, "ask", []string{"what", "curb_diagonals@1"}, "asks for it", "picked_up", "dana"},
		{dana, "ask", []string{"what", "curb_diagonals@7"}, "no skylight 7", "picked_up", "dana"},
		{dana, "ask", []string{"what", "mood"}, "Choose what", "picked_up", "dana"},
		{dana, "go-on", nil, "goes on", "picked_up", "dana"},
		{dana, "mark", []string{"status", "quoted"}, "price is out", "quoted", "dana"},
		{dana, "mark", []string{"status", "declined"}, "few words why", "quoted", "dana"},
		{dana, "mark", []string{"status", "ready"}, "Choose what came", "quoted", "dana"},
		{dana, "mark", []string{"status", "ordered", "reason", "order 1207"}, "ordered", "ordered", "dana"},
		{dana, "merge", []string{"other", "R7KQ4"}, "itself", "ordered", "dana"},
		{lee, "spam", nil, "Dana has this lead", "ordered", "dana"},
		{dana, "spam", nil, "Shut.", "closed", ""},
		{dana, "write", []string{"to", "sms +12185550123", "text", "Hello"}, "opted out", "closed", ""},
	} {
		told := c.who.does(at+c.deed, c.fields...)
		status, holder := h.status("R7KQ4")
		if !strings.Contains(told, c.told) || status != string(c.status) || holder != c.holder {
			t.Errorf("%s %v: told %q; the lead is %s with %q, want %s with %q", c.deed, c.fields, told, status, holder, c.status, c.holder)
		}
	}
	if h.sends.Load() == 0 {
		t.Error("nobody was asked to send anything")
	}
	var staffs, bots int
	if err := h.pool.QueryRow(t.Context(), `SELECT count(*) FILTER (WHERE author = 'staff' AND text = 'Hello Ana, Dana here.'),
		count(*) FILTER (WHERE author = 'bot') FROM messages`).Scan(&staffs, &bots); err != nil || staffs != 1 || bots < 3 {
		t.Errorf("%d of staff's, %d of the assistant's, %v", staffs, bots, err)
	}
}

// TestCorrecting: the new value is checked at once, the page says what changed, and it
// can be undone.
func TestCorrecting(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	b := h.as("dana")
	told := b.does("/staff/lead/R7KQ4/fact", "topic", "curb_inside@1", "value", "25 x 49", "why", "on the phone")
	if !strings.Contains(told, "numbers agree →") || !strings.Contains(told, "Curb, inside is now 25 x 49") {
		t.Errorf("told %q", told)
	}
	_, page := b.get("/staff/lead/R7KQ4")
	for _, must := range []string{"ours:", "on the phone", "<s><span class=\"hide\">was </span>22 1/2 x 46 1/2</s>"} {
		if !strings.Contains(page, must) {
			t.Errorf("the page lacks %q", must)
		}
	}
	var line string
	if err := h.pool.QueryRow(t.Context(), `SELECT id::text FROM staff_history WHERE deed = 'corrected'`).Scan(&line); err != nil {
		t.Fatal(err)
	}
	if told := b.does("/staff/lead/R7KQ4/undo", "line", line); !strings.Contains(told, "Undone") {
		t.Errorf("told %q", told)
	}
	if told := b.does("/staff/lead/R7KQ4/undo", "line", line); !strings.Contains(told, "can") {
		t.Errorf("undone twice: %q", told)
	}
	if _, page = b.get("/staff/lead/R7KQ4"); !strings.Contains(page, "numbers agree") {
		t.Error("the verdict did not come back")
	}
	for _, bad := range [][]string{{"curb_inside@1", "about 25"}, {"curb_inside@4", "25 x 49"}, {"layers@1", "9"}, {"mood", "x"}, {"name@1", "Ana"}, {"phone", "12"}} {
		if told := b.does("/staff/lead/R7KQ4/fact", "topic", bad[0], "value", bad[1]); !strings.Contains(told, "Not done") {
			t.Errorf("%v: told %q", bad, told)
		}
	}
}

func TestUndoOfMarks(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	b := h.as("dana")
	undo := func(deed string) string {
		var line string
		err := h.pool.QueryRow(t.Context(), `SELECT max(id)::text FROM staff_history WHERE deed = $1 AND undone_by IS NULL`, deed).Scan(&line)
		if err != nil {
			t.Fatal(err)
		}
		return b.does("/staff/lead/R7KQ4/undo", "line", line)
	}
	b.does("/staff/lead/R7KQ4/mark", "status", "declined", "reason", "too dear")
	undo("marked")
	if status, _ := h.status("R7KQ4"); status != "picked_up" {
		t.Errorf("after declining was undone: %s", status)
	}
	b.does("/staff/lead/R7KQ4/spam")
	undo("shut")
	if status, _ := h.status("R7KQ4"); status != "needs_person" {
		t.Errorf("after spam was undone: %s", status)
	}
	out, err := db.OptedOut(t.Context(), h.pool, db.Address{Channel: "sms", Address: "+12185550123"})
	if err != nil || out {
		t.Errorf("still opted out: %v, %v", out, err)
	}
}

// TestMergingUndone: both leads stand again as they did, to the last word, as long as
// nothing was said since.
func TestMergingUndone(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.account("lee", "Lee", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	h.lead("CDFGH", "+12185550124", conversation.WithStaff, func(talk *conversation.Talk) { talk.Ledger = talk.Ledger[:4] })
	h.exec(`INSERT INTO photos (message_id, k, source) SELECT id, 1, 'x' FROM messages WHERE direction = 'in'`)
	dana, lee := h.as("dana"), h.as("lee")
	dana.does("/staff/lead/CDFGH/note", "text", "of the second")
	dana.does("/staff/lead/R7KQ4/take")
	all := func() (rows string) {
		t.Helper()
		if err := h.pool.QueryRow(t.Context(), `SELECT jsonb_build_array((SELECT jsonb_agg(record ORDER BY ref) FROM lead_record),
			(SELECT jsonb_agg(to_jsonb(c) ORDER BY id) FROM conversations c), (SELECT jsonb_agg(to_jsonb(m) ORDER BY id) FROM messages m),
			(SELECT jsonb_agg(to_jsonb(l) - 'updated_at' ORDER BY conversation_id) FROM leads l), (SELECT jsonb_agg(to_jsonb(f) ORDER BY conversation_id, seq) FROM facts f),
			(SELECT jsonb_agg(to_jsonb(s) ORDER BY message_id) FROM sends s), (SELECT jsonb_agg(to_jsonb(a) ORDER BY address) FROM addresses a),
			(SELECT jsonb_agg(to_jsonb(h)) FROM lead_hands h), (SELECT jsonb_agg(conversation_id ORDER BY id) FROM staff_history WHERE deed = 'noted'),
			(SELECT count(*) FROM lead_merges))::text`).Scan(&rows); err != nil {
			t.Fatal(err)
		}
		return rows
	}
	undo := func(b *browser) string {
		var line string
		if err := h.pool.QueryRow(t.Context(), `SELECT max(id)::text FROM staff_history WHERE deed = 'merged'`).Scan(&line); err != nil {
			t.Fatal(err)
		}
		return b.does("/staff/lead/R7KQ4/undo", "line", line)
	}
	before := all()
	for _, units := range []string{"same", "more"} {
		if told := dana.does("/staff/lead/R7KQ4/merge", "other", "CDFGH", "units", units); !strings.Contains(told, "was joined") {
			t.Fatalf("told %q", told)
		}
		if all() == before {
			t.Fatal("nothing was joined")
		}
		dana.does("/staff/lead/R7KQ4/note", "text", "now one")
		h.exec(`DELETE FROM staff_history WHERE deed = 'noted' AND detail ->> 'text' = 'now one'`)
		if told := undo(lee); !strings.Contains(told, "Dana has this lead") {
			t.Errorf("told %q", told)
		}
		if told := undo(dana); !strings.Contains(told, "Undone") {
			t.Fatalf("told %q", told)
		}
		if after := all(); after != before {
			t.Errorf("%s: after undoing\n%s\nbefore\n%s", units, after, before)
		}
	}
	dana.does("/staff/lead/R7KQ4/merge", "other", "CDFGH")
	dana.does("/staff/lead/R7KQ4/fact", "topic", "layers@1", "value", "2")
	if told := undo(dana); !strings.Contains(told, "since the two were joined") {
		t.Errorf("after something was set: told %q", told)
	}
	h.exec(`UPDATE staff_history SET undone_by = id WHERE deed = 'corrected'`)
	h.exec(`INSERT INTO messages (conversation_id, direction, author, channel, address, provider_id, text, at)
		SELECT id, 'in', 'customer', 'sms', '+12185550124', 'SMnew', 'hello?', now() FROM conversations WHERE ref = 'R7KQ4'`)
	if told := undo(dana); !strings.Contains(told, "since the two were joined") {
		t.Errorf("after something was said: told %q", told)
	}
}

// TestMerging: what both said is in one lead, each fact with its own message.
func TestMerging(t *testing.T) {
	h := newHouse(t)
	h.account("dana", "Dana", db.RoleStaff)
	h.lead("R7KQ4", "+12185550123", conversation.WithStaff, nil)
	h.lead("CDFGH", "+12185550124", conversation.WithStaff, func(talk *conversation.Talk) {
		talk.Ledger = append(talk.Ledger, conversation.Entry{Topic: "layers", Unit: 1, Value: fitcheck.Whole(2), Said: "double", Message: 1, By: "customer"})
	})
	b := h.as("dana")
	if told := b.does("/staff/lead/R7KQ4/merge", "other", "XXXXX"); !strings.Contains(told, "no lead") {
		t.Errorf("told %q", told)
	}
	if told := b.does("/staff/lead/R7KQ4/merge", "other", "cdfgh", "units", "same"); !strings.Contains(told, "was joined") {
		t.Fatalf("told %q", told)
	}
	var messages, facts, units, left int
	err := h.pool.QueryRow(t.Context(), `SELECT jsonb_array_length(record -> 'messages'), jsonb_array_length(record -> 'facts'), jsonb_array_length(record -> 'units'),
		(SELECT count(*) FROM messages m JOIN conversations c ON c.id = m.conversation_id WHERE c.ref = 'CDFGH') FROM lead_record WHERE ref = 'R7KQ4'`).
		Scan(&messages, &facts, &units, &left)
	if err != nil || messages != 4 || facts != 19 || units != 1 || left != 0 {
		t.Errorf("%d messages, %d facts, %d units, %d left behind, %v", messages, facts, units, left, err)
	}
	var from int
	if err := h.pool.QueryRow(t.Context(), `SELECT message FROM facts WHERE topic = 'layers'`).Scan(&from); err != nil || from != 3 {
		t.Errorf("layers come from message %d, %v", from, err)
	}
	if status, _ := h.status("CDFGH"); status != "closed" {
		t.Errorf("the joined one is %s", status)
	}
	if _, page := b.get("/staff/lead/CDFGH"); !strings.Contains(page, "joined into") {
		t.Error("the joined one does not say where it went")
	}
	if _, page := b.get("/staff/lead/R7KQ4"); !strings.Contains(page, "(218) 555-0124") {
		t.Error("the other number is not to be reached")
	}
}
