package intake

import (
	"context"
	"sync"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// budget is what went out today. All processes share one count, the database's; each looks
// at it anew after a while, so that together they may overrun it by what they send
// meanwhile.
type budget struct {
	mu     sync.Mutex
	day    time.Time // its beginning
	looked time.Time
	spent  db.Spent
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
	if m.Kind == conversation.Farewell || m.Kind == conversation.Notice || m.Kind == db.KindStaff {
		return true, nil
	}
	l := s.limits.Load()
	if m.To.Channel == conversation.Email {
		if l.MailsADay <= 0 {
			return true, nil
		}
		spent, err := s.spent(ctx)
		return spent.Mails < l.MailsADay, err
	}
	if m.Segments == 0 {
		return true, nil
	}
	if ok, err := s.inShare(ctx, m, l.SegmentsOfOne); err != nil || !ok || l.SegmentsADay <= 0 {
		return ok, err
	}
	spent, err := s.spent(ctx)
	if err != nil {
		return false, err
	}
	s.warnOfBudget(ctx, spent.Segments, l.SegmentsADay)
	return spent.Segments+m.Segments <= l.SegmentsADay, nil
}

// fewest is how many segments a message surely has at the most: a talk is not looked at
// before it is long.
const fewest = 10

// inShare says whether one talk has not had its share of a day yet.
func (s *Service) inShare(ctx context.Context, m *db.Send, most int) (bool, error) {
	if most <= 0 || m.N*fewest <= most {
		return true, nil
	}
	used, err := db.SegmentsOfTalk(ctx, s.opts.Pool, m.ConversationID, 24*time.Hour)
	return used+m.Segments <= most, err
}

// spent is what went out today.
func (s *Service) spent(ctx context.Context) (db.Spent, error) {
	b, today := &s.budget, s.Today()
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.day.Equal(today) && time.Since(b.looked) < budgetLook {
		return b.spent, nil
	}
	spent, err := db.SpentSince(ctx, s.opts.Pool, today)
	if err != nil {
		return spent, err
	}
	if !b.day.Equal(today) {
		b.warned = false
	}
	b.day, b.spent, b.looked = today, spent, time.Now()
	return spent, nil
}

// spend counts what was sent here since the last look.
func (s *Service) spend(m *db.Send) {
	s.budget.mu.Lock()
	defer s.budget.mu.Unlock()
	s.budget.spent.Segments += m.Segments
	if m.To.Channel == conversation.Email {
		s.budget.spent.Mails++
	}
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
func (s *Service) Today() time.Time { return s.dayOf(s.opts.Real()) }

// dayOf is the beginning of a day where the shop is.
func (s *Service) dayOf(at time.Time) time.Time {
	zone := s.shop.Load().Zone
	if zone == nil {
		zone = time.UTC
	}
	y, m, d := at.In(zone).Date()
	return time.Date(y, m, d, 0, 0, 0, 0, zone)
}
