package intake

import (
	"testing"
	"time"

	_ "time/tzdata" // the machine may have no zones

	"example.com/intake-bot/internal/conversation"
)

// The day of the budget begins at the shop's midnight, also on the days of 23 and 25 hours.
func TestTodayAsTheClocksChange(t *testing.T) {
	zone, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[string]string{
		"2026-03-08T12:00:00-05:00": "2026-03-08T00:00:00-06:00",
		"2026-03-08T23:59:59-05:00": "2026-03-08T00:00:00-06:00",
		"2026-11-01T01:30:00-06:00": "2026-11-01T00:00:00-05:00", // the hour that is there twice
		"2026-11-01T23:59:59-06:00": "2026-11-01T00:00:00-05:00",
		"2026-11-02T00:00:00-06:00": "2026-11-02T00:00:00-06:00",
	} {
		now, err := time.Parse(time.RFC3339, at)
		if err != nil {
			t.Fatal(err)
		}
		s := &Service{opts: Options{Real: func() time.Time { return now }}}
		s.shop.Store(&conversation.Shop{Zone: zone})
		if got := s.Today().Format(time.RFC3339); got != want {
			t.Errorf("at %s today began %s, want %s", at, got, want)
		}
	}
}

// What the queue puts off is due by the database's clock, whatever the machine's says.
func TestQueueGoesByOurTime(t *testing.T) {
	there := time.Date(2026, 3, 8, 12, 0, 0, 0, time.UTC)
	q := queueTime{func() time.Time { return there }}
	if !q.Now().Equal(there) || q.NowOrNil() != nil {
		t.Errorf("%v, %v", q.Now(), q.NowOrNil())
	}
}
