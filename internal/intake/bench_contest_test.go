package intake

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
)

// A contest runs a floor and what is measured against it by turns, in short rounds, so that
// whatever else the machine does meets both alike; the figures are medians over the rounds.
type contest struct {
	b           *testing.B
	clock       cpuClock
	floor, ours []span
}

// span is what some work took.
type span struct {
	wall   time.Duration
	bot    time.Duration // processor time of the programs that talk to the database
	server time.Duration // processor time of the database; 0 where it can't be known
	work   int           // how much was done
}

func newContest(b *testing.B, pool *pgxpool.Pool) *contest {
	b.Helper()
	return &contest{b: b, clock: cpuClockOf(b.Context(), pool)}
}

// round lets both do so much work, whoever begins.
func (c *contest) round(floor, ours func() (work int)) {
	first := func() { c.floor = append(c.floor, c.clock.measure(floor)) }
	second := func() { c.ours = append(c.ours, c.clock.measure(ours)) }
	if len(c.floor)%2 == 1 {
		first, second = second, first
	}
	first()
	second()
}

// ratio is the median over the rounds of what the floor took by what ours took.
func (c *contest) ratio(of func(span) float64) float64 {
	var ratios []float64
	for i := range c.floor {
		if ours := of(c.ours[i]); ours > 0 {
			ratios = append(ratios, of(c.floor[i])/ours)
		}
	}
	return median(ratios)
}

func wall(s span) float64 { return s.wall.Seconds() / float64(s.work) }
func cpu(s span) float64  { return (s.bot + s.server).Seconds() / float64(s.work) }

// report gives the figures of a contest whose work is counted in turns. "ratio" is our
// rate by the floor's, "cpu-ratio" the floor's processor time by ours.
func (c *contest) report() {
	c.b.Helper()
	each := func(spans []span, of func(span) float64) float64 {
		var all []float64
		for _, s := range spans {
			all = append(all, of(s))
		}
		return median(all)
	}
	c.b.ReportMetric(c.ratio(wall), "ratio")
	c.b.ReportMetric(c.ratio(cpu), "cpu-ratio")
	c.b.ReportMetric(1/each(c.ours, wall), "turns/s")
	c.b.ReportMetric(1/each(c.floor, wall), "floor/s")
	perTurn := func(of func(span) time.Duration) func(span) float64 {
		return func(s span) float64 { return of(s).Seconds() * 1e6 / float64(s.work) }
	}
	c.b.ReportMetric(each(c.ours, perTurn(func(s span) time.Duration { return s.bot })), "bot-us/turn")
	c.b.ReportMetric(each(c.ours, perTurn(func(s span) time.Duration { return s.server })), "db-us/turn")
	c.b.ReportMetric(each(c.floor, perTurn(func(s span) time.Duration { return s.bot })), "floor-bot-us/turn")
	c.b.ReportMetric(each(c.floor, perTurn(func(s span) time.Duration { return s.server })), "floor-db-us/turn")
	c.b.ReportMetric(0, "ns/op")
}

func median(of []float64) float64 { return quantile(of, 0.5) }

// quantile is the value below which so much of a sample lies; 0 of none.
func quantile(of []float64, q float64) float64 {
	if len(of) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(of))
	return sorted[min(len(sorted)-1, int(q*float64(len(sorted))))]
}

// cpuClock tells how much processor time a private database server and some processes have
// used. It reads Linux' /proc; elsewhere it only knows this process.
type cpuClock struct {
	postmaster int   // 0: not on this machine
	children   []int // processes beside this one
}

func cpuClockOf(ctx context.Context, pool *pgxpool.Pool) cpuClock {
	var backend int
	if pool.QueryRow(ctx, `SELECT pg_backend_pid()`).Scan(&backend) != nil {
		return cpuClock{}
	}
	if s, err := readStat(backend); err == nil && s.name == "postgres" {
		return cpuClock{postmaster: s.parent}
	}
	return cpuClock{}
}

func (c cpuClock) measure(fn func() (work int)) span {
	bot, server, began := c.bot(), c.server(), time.Now()
	work := fn()
	s := span{wall: time.Since(began), bot: c.bot() - bot, server: c.server() - server, work: work}
	return s
}

func (c cpuClock) bot() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	used := time.Duration(u.Utime.Nano() + u.Stime.Nano())
	for _, pid := range c.children {
		if s, err := readStat(pid); err == nil {
			used += s.own
		}
	}
	return used
}

// server is what the postmaster, its children and those that have ended used.
func (c cpuClock) server() time.Duration {
	if c.postmaster == 0 {
		return 0
	}
	all, err := filepath.Glob("/proc/[0-9]*/stat")
	if err != nil {
		return 0
	}
	var used time.Duration
	for _, path := range all {
		pid, err := strconv.Atoi(filepath.Base(filepath.Dir(path)))
		if err != nil {
			continue
		}
		switch s, err := readStat(pid); {
		case err != nil:
		case pid == c.postmaster:
			used += s.own + s.ended
		case s.parent == c.postmaster:
			used += s.own
		}
	}
	return used
}

// procStat is what is read of a process: see proc_pid_stat(5).
type procStat struct {
	name       string
	parent     int
	own, ended time.Duration // of its own, and of its children that have ended
}

func readStat(pid int) (procStat, error) {
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return procStat{}, err
	}
	before, after, _ := strings.Cut(string(raw), ") ")
	_, name, _ := strings.Cut(before, "(")
	var fields [15]int64 // from the third on: state is not a number
	for i, f := range strings.Fields(after) {
		if i < len(fields) && i > 0 {
			if fields[i], err = strconv.ParseInt(f, 10, 64); err != nil {
				return procStat{}, err
			}
		}
	}
	const tick = time.Second / 100 // USER_HZ, the same on all Linux that Go runs on
	return procStat{name: name, parent: int(fields[1]), own: time.Duration(fields[11]+fields[12]) * tick,
		ended: time.Duration(fields[13]+fields[14]) * tick}, nil
}
