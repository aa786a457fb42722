package demo

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// Clock is a clock that can be set; from then on it goes as the real one does.
type Clock struct {
	mu     sync.Mutex
	offset time.Duration
}

// Now is the time that the clock shows.
func (c *Clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return time.Now().Add(c.offset)
}

// Set puts the clock to a time; the zero time is the real one.
func (c *Clock) Set(t time.Time) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.offset = 0
	if !t.IsZero() {
		c.offset = time.Until(t)
	}
}

// Stage is where customers play: the real bot, its database, a stand-in carrier.
type Stage struct {
	Carrier *standin.Carrier
	Pool    *pgxpool.Pool
	Clock   *Clock
	First   time.Time // the first day, in the shop's zone
	Out     io.Writer // where the talks are shown
	// Sheet shows a lead.
	Sheet func(w io.Writer, record json.RawMessage) error
	// Pace is how long people who watch get for each text; 0 does not wait, and what a
	// customer would send in pieces comes in one, so that the bot need not wait either.
	Pace time.Duration
	// Patience bounds each wait for the bot.
	Patience time.Duration
	// Sent, where it is there, is called when the bot has acknowledged a text.
	Sent func(ctx context.Context) error
}

// mostTexts bounds a talk: nobody goes on for longer. mostSilent is how often a customer
// writes without an answer.
const (
	mostTexts  = 40
	mostSilent = 2
)

// Play has a customer talk to the bot until the talk is over. It returns what is not as
// it must be.
func (s *Stage) Play(ctx context.Context, c *Customer) (wrong []string, err error) {
	s.Clock.Set(c.At(s.First))
	s.title(c)
	scene := &scene{stage: s, customer: c, persona: newPersona(c)}
	if err := scene.run(ctx); err != nil {
		return nil, fmt.Errorf("customer %s: %w", c.Number, err)
	}
	record, err := db.LeadRecord(ctx, s.Pool, scene.ref)
	if err != nil {
		return nil, err
	}
	fmt.Fprintln(s.Out)
	if err := s.Sheet(s.Out, record); err != nil {
		return nil, err
	}
	wrong, err = Differences(c.Lead, record)
	return append(wrong, scene.misheard()...), err
}

func (s *Stage) title(c *Customer) {
	line := strings.Repeat("-", 80)
	fmt.Fprintf(s.Out, "\n%s\n%s\n%s, %s\n%s\n", line, terminal.Wrap("", c.Who), c.Number,
		s.Clock.Now().In(s.First.Location()).Format("Monday, January 2, 3:04 PM"), line)
}

// scene is one customer's talk as it goes on.
type scene struct {
	stage    *Stage
	customer *Customer
	persona  *persona
	ref      string
	talk     conversation.Talk
	heard    int // how many of the bot's texts were shown
	bot      []string
	broken   []string
}

func (s *scene) run(ctx context.Context) error {
	opens := s.customer.Opens
	if s.stage.Pace <= 0 {
		opens = []string{strings.Join(opens, "\n")}
	}
	for _, words := range opens {
		if err := s.send(ctx, text{words: words}); err != nil {
			return err
		}
	}
	silent := 0
	for n := 0; ; n++ {
		before := s.heard
		if err := s.listen(ctx); err != nil {
			return err
		}
		if silent++; s.heard > before {
			silent = 0
		}
		asking := s.talk.Asking()
		if len(asking) == 0 {
			break
		}
		if n == mostTexts || silent == mostSilent {
			return fmt.Errorf("the talk comes to no end; asked now: %s", strings.Join(asking, ", "))
		}
		if err := s.send(ctx, s.persona.answer(asking)); err != nil {
			return err
		}
	}
	return s.close(ctx)
}

// close sends the last texts. After an opt-out one text comes, and nothing more.
func (s *scene) close(ctx context.Context) error {
	for _, words := range s.customer.Closes {
		before, silenced := s.heard, s.talk.State == conversation.Silenced
		if err := s.send(ctx, text{words: words}); err != nil {
			return err
		}
		if err := s.listen(ctx); err != nil {
			return err
		}
		answers := s.heard - before
		switch {
		case silenced && answers > 0:
			s.broken = append(s.broken, fmt.Sprintf("%d texts after the opt-out", answers))
		case !silenced && s.talk.State == conversation.Silenced && answers != 1:
			s.broken = append(s.broken, fmt.Sprintf("%d texts confirm the opt-out, not one", answers))
		}
		if answers == 0 {
			fmt.Fprintf(s.stage.Out, "      (no answer)\n")
		}
	}
	return nil
}

func (s *scene) send(ctx context.Context, t text) error {
	if err := s.pause(ctx, t.words); err != nil {
		return err
	}
	var files []standin.File
	words := t.words
	for range t.photos {
		photo, err := drawPhoto()
		if err != nil {
			return err
		}
		files = append(files, standin.File{Type: "image/jpeg", Data: photo})
		words = strings.TrimSpace(words + " [photo]")
	}
	fmt.Fprintln(s.stage.Out, terminal.Wrap("you:  ", words))
	if _, err := s.stage.Carrier.Text(ctx, s.customer.Number, t.words, files...); err != nil {
		return err
	}
	if s.stage.Sent == nil {
		return nil
	}
	return s.stage.Sent(ctx)
}

// pause gives people who watch time to read.
func (s *scene) pause(ctx context.Context, words string) error {
	if s.stage.Pace <= 0 {
		return nil
	}
	select {
	case <-time.After(s.stage.Pace + time.Duration(len(words))*s.stage.Pace/60):
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// listen waits until the bot has taken all that was sent and said all that it says to it.
func (s *scene) listen(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, s.stage.Patience)
	defer cancel()
	for {
		settled, err := s.settled(ctx)
		if err != nil {
			return err
		}
		texts := s.stage.Carrier.To(s.customer.Number)
		if settled >= 0 && len(texts) >= settled {
			return s.show(ctx, texts)
		}
		select {
		case <-time.After(15 * time.Millisecond):
		case <-ctx.Done():
			return fmt.Errorf("the bot does not answer: %w", ctx.Err())
		}
	}
}

func (s *scene) show(ctx context.Context, texts []standin.Message) error {
	for _, m := range texts[s.heard:] {
		if err := s.pause(ctx, m.Body); err != nil {
			return err
		}
		fmt.Fprintln(s.stage.Out, terminal.Wrap("shop: ", m.Body))
		s.bot = append(s.bot, m.Body)
	}
	s.heard = len(texts)
	return nil
}

// settled is how many texts the bot has written in all, -1 while some of the customer's
// wait for their turn.
func (s *scene) settled(ctx context.Context) (int, error) {
	if s.ref == "" {
		ref, err := refOf(ctx, s.stage.Pool, s.customer.Number)
		if err != nil || ref == "" {
			return -1, err
		}
		s.ref = ref
	}
	waiting, err := s.look(ctx)
	if err != nil || waiting > 0 {
		return -1, err
	}
	messages, err := db.MessagesOf(ctx, s.stage.Pool, s.ref)
	if err != nil {
		return -1, err
	}
	written := 0
	for _, m := range messages {
		if m.From == conversation.FromBot {
			written++
		}
	}
	return written, nil
}

// look reads the talk, and how many texts wait for their turn.
func (s *scene) look(ctx context.Context) (waiting int, err error) {
	id, err := db.TalkOf(ctx, s.stage.Pool, s.ref)
	if err != nil {
		return 0, err
	}
	tx, err := s.stage.Pool.Begin(ctx)
	if err != nil {
		return 0, fmt.Errorf("look at talk %s: %w", s.ref, err)
	}
	defer func() { _ = tx.Rollback(ctx) }() // nothing was changed
	held, err := db.HoldTalk(ctx, tx, id)
	if err != nil {
		return 0, err
	}
	s.talk = held.Talk
	return len(held.Waiting), nil
}

// refOf is the ref of the lead of a number, empty while there is none.
func refOf(ctx context.Context, pool *pgxpool.Pool, number string) (string, error) {
	lines, err := db.ListLeads(ctx, pool, db.LeadFilter{})
	if err != nil {
		return "", err
	}
	for _, l := range lines {
		if l.Phone == number {
			return l.Ref, nil
		}
	}
	return "", nil
}

// misheard are the sentences that should have come and did not, or the reverse.
func (s *scene) misheard() []string {
	all := strings.Join(s.bot, "\n")
	wrong := s.broken
	for _, pattern := range s.customer.Hears {
		if !regexp.MustCompile(pattern).MatchString(all) {
			wrong = append(wrong, fmt.Sprintf("nothing that the bot said matches %q", pattern))
		}
	}
	for _, pattern := range s.customer.Never {
		if regexp.MustCompile(pattern).MatchString(all) {
			wrong = append(wrong, fmt.Sprintf("the bot said what matches %q", pattern))
		}
	}
	return wrong
}
