package main

import (
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// BenchmarkStart measures how long the program takes until it is ready, as often as it takes
// to list no leads: the same program, started, the same database opened and asked once.
// "start-ratio" is the median of the one by that of the other.
func BenchmarkStart(b *testing.B) {
	for b.Loop() {
		s := serveIn(b)
		var serving, listing []time.Duration
		for range 9 {
			s.kill()
			began := time.Now()
			s.start()
			serving = append(serving, time.Since(began))
			list := exec.Command(program, "leads", "list")
			list.Env = s.env
			began = time.Now()
			if out, err := list.CombinedOutput(); err != nil {
				b.Fatalf("%v: %s", err, out)
			}
			listing = append(listing, time.Since(began))
		}
		b.ReportMetric(middle(serving).Seconds()*1e3, "start-ms")
		b.ReportMetric(middle(listing).Seconds()*1e3, "list-ms")
		b.ReportMetric(middle(serving).Seconds()/middle(listing).Seconds(), "start-ratio")
		b.ReportMetric(0, "ns/op")
	}
}

func middle(of []time.Duration) time.Duration {
	slices.Sort(of)
	return of[len(of)/2]
}

// BenchmarkMemory measures what the program holds in memory, in an empty database and in one
// with 100,000 open talks, each time once it has swept twice and answered a hundred texts.
// "memory-ratio" is the second by the first.
func BenchmarkMemory(b *testing.B) {
	if _, err := os.Stat("/proc/self/status"); err != nil {
		b.Skip("left out: what a process holds is read from Linux' /proc")
	}
	for b.Loop() {
		rest := memoryWith(b, 0)
		full := memoryWith(b, 100_000)
		b.ReportMetric(rest, "rest-MB")
		b.ReportMetric(full, "full-MB")
		b.ReportMetric(full/rest, "memory-ratio")
		b.ReportMetric(0, "ns/op")
	}
}

// memoryWith is how many megabytes a process holds that serves so many open talks.
func memoryWith(b *testing.B, talks int) float64 {
	s := serveIn(b)
	if talks > 0 {
		pool, err := db.Open(b.Context(), s.database)
		if err != nil {
			b.Fatal(err)
		}
		defer pool.Close()
		dbtest.FillTalks(b, pool, talks, 2)
	}
	s.kill()
	s.start()
	time.Sleep(32 * time.Second) // two sweeps are 15 s apart
	for i := range 100 {
		number := fmt.Sprintf("+1218555%04d", 100+i)
		if _, err := s.carrier.Text(b.Context(), number, "my skylight is cracked"); err != nil {
			b.Fatal(err)
		}
		if _, err := s.carrier.WaitTo(b.Context(), number, 1); err != nil {
			b.Fatal(err)
		}
	}
	held := residentOf(b, s.process.Process.Pid)
	s.kill()
	return held
}

// residentOf is VmRSS of proc_pid_status(5), in megabytes.
func residentOf(b *testing.B, pid int) float64 {
	b.Helper()
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		b.Fatal(err)
	}
	for line := range strings.Lines(string(raw)) {
		if f := strings.Fields(line); len(f) == 3 && f[0] == "VmRSS:" {
			kb, err := strconv.ParseFloat(f[1], 64)
			if err != nil {
				b.Fatal(err)
			}
			return kb / 1024
		}
	}
	b.Fatal("no VmRSS")
	return 0
}
