package intake

import (
	"context"
	"sync"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// budget is how many segments of texts may still go out today. All processes share one
// count, the database's; each looks at it anew after a while, so that together they may
// overrun it by what they send meanwhile.
type budget struct {
	mu     sync.Mutex
	day    time.Time // its beginning
	looked time.Time
	used   int
	warned bool
}

// budgetLook is for how long a look at the database's count holds.
const budgetLook = 10 * time.Second

// pictureSegments is as how many segments a text with a picture counts. From memory of
// carriers' price lists: two to three times a text.
const pictureSegments = 3

// segmentsOf is as how many segments a message is charged; 0 for what is no text.
func segmentsOf(m *db.Send) int {
	if m.To.Channel != conversation.SMS {
		return 0
	}
	if m.Picture != "" {
		return pictureSegments
	}
	return sms.Count(m.Text).Parts
}

// inBudget says whether a message may still go out today. The last word to one who opted
// out, the answer to HELP and what staff write always may.
func (s *Service) inBudget(ctx context.Context, m *db.Send) (bool, error) {
	most := s.limits.Load().SegmentsADay
	if most <= 0 || m.Segments == 0 {
		return true, nil
	}
	used, err := s.spent(ctx)
	if err != nil {
		return false, err
	}
	s.warnOfBudget(ctx, used, most)
	return used+m.Segments <= most || m.Kind == conversation.Farewell || m.Kind == conversation.Notice || m.Kind == db.KindStaff, nil
}

// spent is how many segments went out today.
func (s *Service) spent(ctx context.Context) (int, error) {
	b, today := &s.budget, s.Today()
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.day.Equal(today) && time.Since(b.looked) < budgetLook {
		return b.used, nil
	}
	used, err := db.SegmentsSince(ctx, s.opts.Pool, today)
	if err != nil {
		return 0, err
	}
	if !b.day.Equal(today) {
		b.warned = false
	}
	b.day, b.used, b.looked = today, used, time.Now()
	return used, nil
}

// spend counts what was sent here since the last look.
func (s *Service) spend(segments int) {
	s.budget.mu.Lock()
	defer s.budget.mu.Unlock()
	s.budget.used += segments
}

func (s *Service) warnOfBudget(ctx context.Context, used, most int) {
	from := s.limits.Load().SegmentsWarning
	if from <= 0 {
		from = 80
	}
	s.budget.mu.Lock()
	defer s.budget.mu.Unlock()
	if s.budget.warned || used*100 < most*from {
		return
	}
	s.budget.warned = true
	s.log.WarnContext(ctx, "the day's budget of texts is nearly used up", "segments", used, "budget", most)
}

// Today is the beginning of the day where the shop is. It is the real day: what is
// counted is what really went out.
func (s *Service) Today() time.Time {
	zone := s.shop.Load().Zone
	if zone == nil {
		zone = time.UTC
	}
	y, m, d := time.Now().In(zone).Date()
	return time.Date(y, m, d, 0, 0, 0, 0, zone)
}
