package intake

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// childBench says what a child of the benchmark of four processes does: "bot" or "bare".
const childBench = "INTAKE_BENCH"

// BenchmarkDurableTurnOfFour is BenchmarkDurableTurn with four processes that share a
// database, ours by those of the bare loop. Each is told by a line what message it gets, and
// says by a line to whom an answer went out; whichever process sends it.
func BenchmarkDurableTurnOfFour(b *testing.B) {
	for b.Loop() {
		bare, ours := newCrew(b, "bare"), newCrew(b, "bot")
		c := newContest(b, ours.shop.pool)
		c.clock.children = append(append(c.clock.children, bare.pids...), ours.pids...)
		for round := range benchRounds {
			talks := talksOf(round, perRound)
			c.round(func() int { return haveTalks(b, talks, bare.say) }, func() int { return haveTalks(b, talks, ours.say) })
		}
		c.report()
	}
}

// crew is four processes at one database.
type crew struct {
	shop *shop
	to   []io.Writer
	mu   []sync.Mutex
	pids []int
	// answered is by talk; what is told of a talk that nobody waits for is a mistake.
	answered map[int]chan struct{}
}

func newCrew(b *testing.B, kind string) *crew {
	const most = (benchRounds + 1) * perRound
	address := dbtest.URL(b)
	pool, err := db.Open(b.Context(), address)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(pool.Close)
	c := &crew{shop: &shop{pool: pool}, mu: make([]sync.Mutex, 4), answered: map[int]chan struct{}{}}
	for talk := 1; talk <= most; talk++ {
		c.answered[talk] = make(chan struct{}, 1)
	}
	dbtest.FillTalks(b, pool, most, 2)
	for range c.mu {
		c.hire(b, kind, address)
	}
	haveTalks(b, talksOf(benchRounds, perRound), c.say)
	return c
}

func (c *crew) hire(b *testing.B, kind, address string) {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childDatabase+"="+address, childBench+"="+kind)
	cmd.Stderr = b.Output()
	in, err := cmd.StdinPipe()
	if err != nil {
		b.Fatal(err)
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	c.to, c.pids = append(c.to, in), append(c.pids, cmd.Process.Pid)
	heard := make(chan struct{})
	go func() {
		defer close(heard)
		for lines := bufio.NewScanner(out); lines.Scan(); {
			var talk int
			if _, err := fmt.Sscan(lines.Text(), &talk); err != nil {
				b.Errorf("a process says %q", lines.Text())
				return
			}
			c.answered[talk] <- struct{}{}
		}
	}()
	b.Cleanup(func() {
		in.Close()
		<-heard
		if err := cmd.Wait(); err != nil {
			b.Error(err)
		}
	})
}

func (c *crew) say(ctx context.Context, talk, m int) error {
	to := (talk + m) % len(c.to)
	c.mu[to].Lock()
	_, err := fmt.Fprintln(c.to[to], talk, m)
	c.mu[to].Unlock()
	if err != nil {
		return err
	}
	select {
	case <-c.answered[talk]:
		return nil
	case <-time.After(5 * time.Minute):
		return fmt.Errorf("talk %d got no answer to its message %d", talk, m)
	}
}

// benchChild does what a line says, until there are no more.
func benchChild(address string) error {
	ctx := context.Background()
	pool, err := db.Open(ctx, address)
	if err != nil {
		return err
	}
	defer pool.Close()
	out := &tellingSender{}
	do := func(talk, m int) error {
		err := bareLoop{pool}.say(ctx, talk, m)
		out.tell(talk)
		return err
	}
	if os.Getenv(childBench) == "bot" {
		s, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(),
			Senders: map[conversation.Channel]Sender{conversation.SMS: out}})
		if err != nil {
			return err
		}
		if err := s.Start(ctx); err != nil {
			return err
		}
		defer s.Stop(ctx)
		do = func(talk, m int) error {
			_, err := s.Receive(ctx, inboundOf(talk, m))
			return err
		}
	}
	failed := make(chan error, 1)
	var working sync.WaitGroup
	for lines := bufio.NewScanner(os.Stdin); lines.Scan(); {
		var talk, m int
		if _, err := fmt.Sscan(lines.Text(), &talk, &m); err != nil {
			return err
		}
		working.Go(func() {
			if err := do(talk, m); err != nil {
				select {
				case failed <- err:
				default:
				}
			}
		})
	}
	working.Wait()
	select {
	case err := <-failed:
		return err
	default:
		return nil
	}
}

// tellingSender says on standard output to whom something went out.
type tellingSender struct{}

func (tellingSender) tell(talk int) { fmt.Printf("%d\n", talk) }

func (t tellingSender) Send(_ context.Context, m Outgoing) (string, error) {
	var hundreds, rest int
	if _, err := fmt.Sscanf(m.To.Address, "+1%3d55501%2d", &hundreds, &rest); err != nil { // see dbtest.Phone
		return "", err
	}
	t.tell((hundreds-200)*100 + rest)
	return fmt.Sprintf("OUT%s-%d", m.To.Address, m.N), nil
}

func (tellingSender) Find(context.Context, Outgoing) (string, bool, error) {
	return "", false, ErrCantTell
}
