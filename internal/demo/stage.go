package demo

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	office "example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/channels/terminal"
	"example.com/intake-bot/internal/db"
)

// Stage is where customers play: the real bot, its database, a stand-in carrier and a
// post office in miniature.
type Stage struct {
	Carrier *standin.Carrier
	Office  *office.Office
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
	scene := &scene{stage: s, customer: c, persona: newPersona(c), way: s.wayOf(c)}
	if err := scene.run(ctx); err != nil {
		return nil, fmt.Errorf("customer %s: %w", c.Address(), err)
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
	fmt.Fprintf(s.Out, "\n%s\n%s\n%s, %s\n%s\n", line, terminal.Wrap("", c.Who), c.Address(),
		s.Clock.Now().In(s.First.Location()).Format("Monday, January 2, 3:04 PM"), line)
}
