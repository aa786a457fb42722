package intake

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/prometheus/client_golang/prometheus"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

func TestOneSenderIsNotAnsweredForEver(t *testing.T) {
	const most = 5
	s := newShop(t, func(o *Options) {
		o.Brain, o.Shop = realBrain(), realShop()
		o.Limits = Limits{TextsAnHour: most}
	})
	s.start()
	for i := range 3 * most {
		s.text(fmt.Sprintf("it is skylight number %d", i))
		s.quiet()
	}
	var messages, handled, alerts int
	s.one(`SELECT count(*), count(handled_at), (SELECT count(*) FROM alerts WHERE reason = 'flood') FROM messages WHERE direction = 'in'`, &messages, &handled, &alerts)
	answered := len(s.carrier.texts())
	if messages != 3*most || handled != messages || alerts != 1 || answered > 2*most || !slices.Contains(s.record().WhyStaff, whyMany) {
		t.Errorf("%d messages, %d handled, %d alerts, %d texts out, why %v", messages, handled, alerts, answered, s.record().WhyStaff)
	}
	s.text("STOP")
	s.quiet()
	if got := s.carrier.texts(); len(got) != answered+1 || !strings.Contains(got[answered], "START") {
		t.Errorf("STOP over the limit is answered with %q", got[answered:])
	}
	// An hour later it is only somebody who writes again.
	if _, err := s.pool.Exec(t.Context(), `UPDATE messages SET received_at = received_at - interval '61 minutes'`); err != nil {
		t.Fatal(err)
	}
	s.text("START")
	s.quiet()
	if got := s.carrier.texts(); len(got) == answered+1 {
		t.Error("an hour later nothing is answered")
	}
}

func TestManyNewNumbersOfOnePrefix(t *testing.T) {
	const most = 3
	s := newShop(t, func(o *Options) { o.Limits = Limits{NewFromPrefix: most} })
	s.start()
	for i := range 2 * most {
		s.receive(Inbound{Channel: conversation.SMS, ID: fmt.Sprint("A", i), From: fmt.Sprintf("+1218555010%d", i), Text: "hi"})
		s.quiet()
	}
	s.receive(Inbound{Channel: conversation.SMS, ID: "B", From: "+16125550100", Text: "hi from elsewhere"})
	s.quiet()
	texts := s.carrier.texts()
	var held int
	s.one(`SELECT count(*) FROM leads WHERE $$`+whyPrefix+`$$ = ANY (why_staff) AND status = 'needs_person'`, &held)
	if len(texts) != most+1 || held != most || texts[most] != "heard 1:hi from elsewhere" {
		t.Errorf("answered %q, %d held back", texts, held)
	}
}

// The day's budget of texts: what is over it goes to staff, but for the last word to one
// who opts out, and what staff write.
func TestBudgetOfTexts(t *testing.T) {
	s := newShop(t, func(o *Options) { o.Limits = Limits{SegmentsADay: 3} })
	s.start()
	s.text("twice")
	s.quiet()
	s.text(strings.Repeat("a long one ", 20)) // two segments: over the budget
	s.quiet()
	s.text("short") // one more is left
	s.quiet()
	s.text("over")
	s.quiet()
	s.text("STOP")
	s.quiet()
	if got := s.sends(); got != "sent sent held:budget sent held:budget sent" {
		t.Errorf("sends %s", got)
	}
	var segments, alerts int
	s.one(`SELECT (SELECT sum(segments) FROM sends), (SELECT count(*) FROM alerts WHERE reason = 'budget')`, &segments, &alerts)
	if segments != 4 || alerts != 2 {
		t.Errorf("%d segments, %d alerts", segments, alerts)
	}
	// Another process knows what this one has spent.
	other, err := New(Options{Pool: s.pool, Shop: &conversation.Shop{}, Brain: s.parrot.brain(), Limits: Limits{SegmentsADay: 3}})
	if err != nil {
		t.Fatal(err)
	}
	for kind, want := range map[conversation.UtteranceKind]bool{conversation.Reply: false, conversation.Reminder: false,
		conversation.Farewell: true, conversation.Notice: true, db.KindStaff: true} {
		m := &db.Send{To: db.Address{Channel: conversation.SMS, Address: phone}, Kind: kind, Segments: 1}
		if ok, err := other.inBudget(t.Context(), m); err != nil || ok != want {
			t.Errorf("%s may go out: %v, %v", kind, ok, err)
		}
	}
	if ok, err := other.inBudget(t.Context(), &db.Send{To: db.Address{Channel: conversation.Email}}); err != nil || !ok {
		t.Errorf("mail may go out: %v, %v", ok, err)
	}
}

// HELP is answered with a notice, which no budget holds back.
func TestHelpIsANotice(t *testing.T) {
	s := newShop(t, func(o *Options) {
		o.Brain, o.Shop = realBrain(), realShop()
		o.Limits = Limits{SegmentsADay: 4}
	})
	s.start()
	s.text("hi, my dome is cracked")
	s.quiet()
	s.text("it is a house")
	s.quiet()
	s.text("HELP")
	s.quiet()
	var kind, state string
	s.one(`SELECT kind, state FROM sends ORDER BY message_id DESC LIMIT 1`, &kind, &state)
	if kind != "notice" || state != "sent" {
		t.Errorf("HELP is answered by a %s, %s; sends %s", kind, state, s.sends())
	}
}

func TestSegments(t *testing.T) {
	text := func(words string) *db.Send {
		return &db.Send{To: db.Address{Channel: conversation.SMS}, Text: words}
	}
	for words, want := range map[string]int{"hi": 1, strings.Repeat("x", 161): 2, "25½ — ok": 1, strings.Repeat("½", 71): sms.Count(strings.Repeat("½", 71)).Parts} {
		if got := segmentsOf(text(words)); got != want {
			t.Errorf("%.20q: %d segments, want %d", words, got, want)
		}
	}
	if got := segmentsOf(&db.Send{To: db.Address{Channel: conversation.Email}, Text: "hi"}); got != 0 {
		t.Errorf("a mail has %d segments", got)
	}
}

// figure is the sum of a metric's series, and how many there are.
func figure(t *testing.T, where prometheus.Gatherer, name string) (sum float64, series int) {
	t.Helper()
	families, err := where.Gather()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range families {
		if f.GetName() != name {
			continue
		}
		for _, m := range f.GetMetric() {
			sum += m.GetCounter().GetValue() + m.GetGauge().GetValue() + float64(m.GetHistogram().GetSampleCount())
			series++
		}
	}
	return sum, series
}

func TestMetrics(t *testing.T) {
	where := prometheus.NewRegistry()
	s := newShop(t, func(o *Options) { o.Metrics = NewMetrics(where) })
	where.MustRegister(Gauges{Pool: s.pool, Today: s.Today, SegmentsADay: func() int { return 100 }})
	s.start()
	s.text("twice")
	s.quiet()
	for name, want := range map[string]float64{"intake_messages_received_total": 1, "intake_sends_total": 2, "intake_text_segments_total": 2,
		"intake_text_segments_today": 2, "intake_text_segments_budget": 100, "intake_leads": 1, "intake_unhandled_messages": 0,
		"intake_unsent_messages": 0, "intake_database_up": 1, "intake_turn_seconds": 1} {
		if got, n := figure(t, where, name); got != want || n == 0 {
			t.Errorf("%s is %v in %d series, want %v", name, got, n, want)
		}
	}
	s.receive(Inbound{Channel: conversation.SMS, ID: "X", From: "+12185550177", Text: "boom"})
	if got, _ := figure(t, where, "intake_unhandled_messages"); got != 1 {
		t.Errorf("%v messages wait, want 1", got)
	}
}

func TestMetricsWithoutADatabase(t *testing.T) {
	where := prometheus.NewRegistry()
	s := newShop(t, nil)
	where.MustRegister(Gauges{Pool: s.pool, Today: s.Today, SegmentsADay: func() int { return 0 }})
	s.pool.Close()
	if up, n := figure(t, where, "intake_database_up"); up != 0 || n != 1 {
		t.Errorf("the database is up: %v", up)
	}
}
