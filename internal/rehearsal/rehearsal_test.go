package rehearsal

import (
	"context"
	"encoding/json"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

func testShop(t testing.TB) *conversation.Shop {
	t.Helper()
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	return &conversation.Shop{Name: "Pinwheel Dome Supply", Assistant: "the shop's assistant", Phone: "(218) 555-0142",
		Email: "help@pinwheel.example", Zone: zone, Rules: fitcheck.DefaultRules()}
}

func realAssistant() Assistant {
	return Assistant{Respond: conversation.Respond, Nudge: conversation.Nudge}
}

func rehearse(t testing.TB, seed uint64, n int, a Assistant) *Report {
	t.Helper()
	r, err := Run(context.Background(), Options{Seed: seed, Customers: n, Shop: testShop(t), Assistant: a})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSameSeedSameReport(t *testing.T) {
	var reports [3]string
	for i := range reports {
		before := runtime.GOMAXPROCS(i + 1)
		r := rehearse(t, 7, 80, realAssistant())
		runtime.GOMAXPROCS(before)
		b, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		reports[i] = r.String() + string(b)
		for _, talk := range r.Talks(80) {
			reports[i] += talk.String()
		}
	}
	if reports[0] != reports[1] || reports[0] != reports[2] {
		t.Error("the same seed gave different reports")
	}
	if other := rehearse(t, 8, 80, realAssistant()); strings.Contains(reports[0], other.String()) {
		t.Error("another seed gave the same report")
	}
}

// One customer alone talks as in the whole run, so that a talk can be looked at again.
func TestOnlyOneCustomer(t *testing.T) {
	all := rehearse(t, 3, 12, realAssistant())
	alone, err := Run(context.Background(), Options{Seed: 3, Customers: 12, Only: 9, Shop: testShop(t), Assistant: realAssistant()})
	if err != nil {
		t.Fatal(err)
	}
	if len(alone.Talks(5)) != 1 || alone.Talks(1)[0].String() != all.Talks(9)[8].String() {
		t.Error("customer 9 alone talks differently")
	}
}

func TestReportAddsUp(t *testing.T) {
	r := rehearse(t, 5, 120, realAssistant())
	sum := func(counts []Count) (n int) {
		for _, c := range counts {
			n += c.N
		}
		return n
	}
	if r.Customers != 120 || sum(r.Ends) != 120 {
		t.Errorf("%d customers, %d ends", r.Customers, sum(r.Ends))
	}
	if r.ReadyOfThose+sum(r.Stuck) != r.CouldBeReady {
		t.Errorf("%d ready and %d stuck of %d", r.ReadyOfThose, sum(r.Stuck), r.CouldBeReady)
	}
	ready := 0
	for _, talk := range r.Talks(120) {
		if talk.Status == "ready" {
			ready++
		}
	}
	if ready != r.Ready || ready == 0 {
		t.Errorf("%d talks are ready, reported %d", ready, r.Ready)
	}
	by := map[string]int{}
	for _, g := range r.Groups {
		by[g.By] += g.Customers
	}
	for _, name := range []string{"kind", "manner", "language", "channel"} {
		if by[name] != 120 {
			t.Errorf("%d customers by %s", by[name], name)
		}
	}
	for _, m := range r.Mistakes {
		if sum(m.Outcomes) != m.Made {
			t.Errorf("%s: %d outcomes of %d", m.Mistake, sum(m.Outcomes), m.Made)
		}
	}
}

func TestSpread(t *testing.T) {
	for _, row := range []struct {
		n    []int
		want Spread
	}{
		{nil, Spread{}},
		{[]int{4}, Spread{4, 4}},
		{[]int{3, 1, 2}, Spread{2, 3}},
		{[]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, Spread{5, 9}},
		{[]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, Spread{6, 10}},
	} {
		if got := spread(row.n); got != row.want {
			t.Errorf("%v: %v, want %v", row.n, got, row.want)
		}
	}
}

// tampered is an assistant that notes down another size than the one it was told.
func tampered(talks map[string]bool) Assistant {
	a := realAssistant()
	a.Respond = func(talk conversation.Talk, in []conversation.Message, now time.Time, shop *conversation.Shop) (conversation.Outcome, error) {
		out, err := conversation.Respond(talk, in, now, shop)
		if err != nil {
			return out, err
		}
		for i, e := range out.Facts {
			s, ok := e.Value.(fitcheck.Size)
			if ok && e.Topic == fitcheck.TopicPlasticSize && s.Width > 0 {
				s.Width += 2 * fitcheck.Inch
				out.Facts[i].Value = s
				talks[talk.Ref] = true
			}
		}
		return out, nil
	}
	return a
}

func TestWrongReadingIsFound(t *testing.T) {
	talks := map[string]bool{}
	before := runtime.GOMAXPROCS(1) // the map is not made for two
	r := rehearse(t, 2, 60, tampered(talks))
	runtime.GOMAXPROCS(before)
	if len(talks) < 10 || !r.Failed() {
		t.Fatalf("%d talks were tampered with, failed: %v", len(talks), r.Failed())
	}
	found := 0
	for i := range r.Wrong {
		for _, f := range r.Wrong[i].Faults {
			if f.Kind == WrongFact && strings.HasPrefix(f.Ask, "plastic_size") && len(r.Wrong[i].Lines) > 0 {
				found++
				break
			}
		}
	}
	if found < len(talks) {
		t.Errorf("%d talks were tampered with, %d found", len(talks), found)
	}
	if !strings.Contains(r.String(), "WRONG FACTS") {
		t.Error("the report does not show them")
	}
}

func TestTextAfterStopIsFound(t *testing.T) {
	a := realAssistant()
	a.Respond = func(talk conversation.Talk, in []conversation.Message, now time.Time, shop *conversation.Shop) (conversation.Outcome, error) {
		out, err := conversation.Respond(talk, in, now, shop)
		if talk.State == conversation.Silenced && out.Talk.State == conversation.Silenced {
			out.Say = []conversation.Utterance{{Text: "One more thing: are you sure?"}}
		}
		return out, err
	}
	count := func(a Assistant) (n int) {
		for _, talk := range rehearse(t, 1, 300, a).Talks(300) {
			for _, f := range talk.Faults {
				if f.Kind == AfterStop {
					n++
				}
			}
		}
		return n
	}
	if n := count(realAssistant()); n != 0 {
		t.Errorf("%d texts after an opt-out", n)
	}
	if count(a) == 0 {
		t.Error("texts after an opt-out were not found")
	}
}

func TestPhrasebooksHaveTheSameSections(t *testing.T) {
	books, err := phrasebooks()
	if err != nil {
		t.Fatal(err)
	}
	optional := func(s string) bool { return strings.HasSuffix(s, "+") || s == "finish.vague" }
	for _, pair := range [][2]string{{"en", "es"}, {"es", "en"}} {
		for section := range books[pair[0]] {
			if len(books[pair[1]][section]) == 0 && !optional(section) {
				t.Errorf("%s has no [%s], which %s has", pair[1], section, pair[0])
			}
		}
	}
}

// Nobody says a section that is not there, leaves a brace unfilled, or answers with nothing.
func TestCustomersSayWords(t *testing.T) {
	for _, talk := range rehearse(t, 11, 400, realAssistant()).Talks(400) {
		for _, l := range talk.Lines {
			if said, ok := strings.CutPrefix(l, "C: "); ok && (strings.ContainsAny(said, "{}|") || strings.Contains(strings.Replace(said, "[photo]", "", 1), "[") || said == "") {
				t.Errorf("customer %d says %q", talk.Number, said)
			}
		}
	}
}

func TestBadPhrases(t *testing.T) {
	for _, text := range []string{"no section\n", "[a]\nfoo | style\n"} {
		if _, err := parsePhrases(text); err == nil {
			t.Errorf("%q is no error", text)
		}
	}
}

func TestTownsAreKnown(t *testing.T) {
	for _, zip := range zips {
		if _, ok := place.ByZIP(zip); !ok {
			t.Errorf("%s is no ZIP code", zip)
		}
	}
}

func TestCanceledRun(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Run(ctx, Options{Customers: 5, Shop: testShop(t), Assistant: realAssistant()}); err == nil {
		t.Error("a canceled run reports")
	}
}

func BenchmarkRun(b *testing.B) {
	for b.Loop() {
		rehearse(b, 1, 100, realAssistant())
	}
}
