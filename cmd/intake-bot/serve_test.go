package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
	"example.com/intake-bot/internal/demo"
)

// served is the program as a process that serves, with all that it talks to.
type served struct {
	t        testing.TB
	database string
	carrier  *standin.Carrier
	env      []string
	url      string
	process  *exec.Cmd
	log      lockedBuffer
}

// lockedBuffer is written by the process and read by the test.
type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *lockedBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *lockedBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

func serveIn(t testing.TB) *served {
	t.Helper()
	address := freeAddress(t)
	s := &served{t: t, database: dbtest.URL(t), url: "http://" + address}
	s.carrier = standin.New(standin.Config{AccountID: "AC00000000000000000000000000000001", AuthToken: "token1", Number: "+12185550142",
		InboundURL: s.url + "/sms/inbound"})
	base, err := s.carrier.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.carrier.Close() })
	s.env = []string{"PATH=" + os.Getenv("PATH"), "DATABASE_URL=" + s.database, "SHOP_FILE=" + openShop(t), "LISTEN=" + address,
		"PUBLIC_URL=" + s.url, "CARRIER_ACCOUNT_ID=AC00000000000000000000000000000001", "CARRIER_AUTH_TOKEN=token1",
		"CARRIER_FROM=+12185550142", "CARRIER_API_URL=" + base}
	s.start()
	t.Cleanup(func() {
		s.kill()
		if t.Failed() {
			t.Logf("the log:\n%s", s.log.String())
		}
	})
	return s
}

// freeAddress is one to listen at, whenever the process starts: below the ports that the
// system gives to outgoing connections, one of which could take it meanwhile.
func freeAddress(t testing.TB) string {
	t.Helper()
	for range 100 {
		address := fmt.Sprintf("127.0.0.1:%d", 20000+rand.IntN(12000))
		if l, err := net.Listen("tcp", address); err == nil {
			l.Close()
			return address
		}
	}
	t.Fatal("no free address found")
	return ""
}

// openShop is the example's file, answering fast, of a shop that never closes: what is
// said must not depend on when the test runs.
func openShop(t testing.TB) string {
	t.Helper()
	text := strings.NewReplacer("day: 8:00-17:00", "day: 0:00-24:00", "day: closed", "day: 0:00-24:00", "quiet: 4s", "quiet: 20ms",
		"  - Christmas Day\n", "").Replace(deploy.ExampleShop)
	path := filepath.Join(t.TempDir(), "shop.yaml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// start starts the process and waits until it is ready.
func (s *served) start() {
	s.t.Helper()
	s.process = exec.Command(program, "serve")
	s.process.Env = s.env
	s.process.Stderr = &s.log
	if err := s.process.Start(); err != nil {
		s.t.Fatal(err)
	}
	for end := time.Now().Add(30 * time.Second); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		res, err := http.Get(s.url + "/readyz")
		if err != nil {
			continue
		}
		res.Body.Close()
		if res.StatusCode == http.StatusOK {
			return
		}
	}
	s.t.Fatalf("not ready:\n%s", s.log.String())
}

func (s *served) kill() {
	// It may have ended before; then there is nothing to kill.
	_ = s.process.Process.Kill()
	_ = s.process.Wait()
}

// play has one of the demo's customers talk to the process, and gives the lead record.
func (s *served) play(customer int, sent func(context.Context) error) map[string]any {
	s.t.Helper()
	pool, err := db.Open(s.t.Context(), s.database)
	if err != nil {
		s.t.Fatal(err)
	}
	defer pool.Close()
	customers, err := demo.Customers()
	if err != nil {
		s.t.Fatal(err)
	}
	var record map[string]any
	stage := &demo.Stage{Carrier: s.carrier, Pool: pool, Clock: &demo.Clock{}, First: time.Now(), Out: io.Discard, Patience: 2 * time.Minute,
		Sheet: func(_ io.Writer, raw json.RawMessage) error { return json.Unmarshal(raw, &record) }, Sent: sent}
	wrong, err := stage.Play(s.t.Context(), &customers[customer])
	if err != nil || len(wrong) > 0 {
		s.t.Fatalf("%v; not as it must be: %q", err, wrong)
	}
	return record
}

// drywall is the demo's customer who measured between finished drywall.
const drywall = 1

func TestServeTakesOnlySignedPostsAndStopsInGoodOrder(t *testing.T) {
	s := serveIn(t)
	for path, want := range map[string]int{"/sms/inbound": http.StatusForbidden, "/sms/status": http.StatusForbidden, "/other": http.StatusNotFound} {
		res, err := http.Post(s.url+path, "application/x-www-form-urlencoded", strings.NewReader("From=%2B12185550160&To=%2B12185550142&Body=hi&MessageSid=SM1"))
		if err != nil {
			t.Fatal(err)
		}
		res.Body.Close()
		if res.StatusCode != want {
			t.Errorf("%s unsigned: %d, want %d", path, res.StatusCode, want)
		}
	}
	if _, err := s.carrier.Text(t.Context(), "+12185550160", "is anybody there?"); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	if _, err := s.carrier.WaitTo(ctx, "+12185550160", 1); err != nil {
		t.Fatal(err)
	}
	if err := s.process.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if err := s.process.Wait(); err != nil {
		t.Errorf("stopped with %v", err)
	}
	if log := s.log.String(); strings.Contains(log, "anybody") || strings.Contains(log, "5550160") {
		t.Errorf("the log tells what a customer wrote, or who:\n%s", log)
	}
}

func TestServeRefusesADatabaseThatIsNotCurrent(t *testing.T) {
	env := []string{"DATABASE_URL=" + dbtest.EmptyURL(t), "SHOP_FILE=" + openShop(t), "PUBLIC_URL=http://127.0.0.1:1",
		"CARRIER_ACCOUNT_ID=AC1", "CARRIER_AUTH_TOKEN=token1", "CARRIER_FROM=+12185550142"}
	_, errs, status := runProgram(t, env, "", "serve")
	if status != 1 || !strings.Contains(errs, "run intake-bot migrate first") {
		t.Errorf("status %d: %s", status, errs)
	}
}

func TestServeReadsTheShopFileAgain(t *testing.T) {
	s := serveIn(t)
	path := ""
	for _, v := range s.env {
		if p, ok := strings.CutPrefix(v, "SHOP_FILE="); ok {
			path = p
		}
	}
	good, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []struct {
		text, logged string
	}{
		{"name: [", "the old one stays in force"},
		{strings.Replace(string(good), "name: Pinwheel", "name: Larkspur", 1), "the shop file was read again"},
	} {
		if err := os.WriteFile(path, []byte(step.text), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := s.process.Process.Signal(syscall.SIGHUP); err != nil {
			t.Fatal(err)
		}
		for end := time.Now().Add(10 * time.Second); !strings.Contains(s.log.String(), step.logged); time.Sleep(10 * time.Millisecond) {
			if time.Now().After(end) {
				t.Fatalf("not logged: %s", step.logged)
			}
		}
	}
	if _, err := s.carrier.Text(t.Context(), "+12185550161", "hello"); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	texts, err := s.carrier.WaitTo(ctx, "+12185550161", 1)
	if err != nil || !strings.Contains(texts[0].Body, "Larkspur") {
		t.Errorf("after the change: %v, %v", texts, err)
	}
}

// Killed after every message that it acknowledged, and started again: the customer gets
// the same texts, each once, and staff the same lead.
func TestKilledBetweenAnyTwoSteps(t *testing.T) {
	calm := serveIn(t)
	want, ref := untimed(calm.play(drywall, nil))
	wanted := texts(calm.carrier, ref)

	s := serveIn(t)
	n := 0
	got, ref := untimed(s.play(drywall, func(ctx context.Context) error {
		// Killed at once, and a little later each time: before, in and after the turn and
		// its sends.
		time.Sleep(time.Duration(n%6) * 15 * time.Millisecond)
		n++
		s.kill()
		s.start()
		return ctx.Err()
	}))
	if n < 5 {
		t.Errorf("killed %d times only", n)
	}
	if got != want {
		t.Errorf("the lead is\n%s\nundisturbed it was\n%s", got, want)
	}
	if heard := texts(s.carrier, ref); !reflect.DeepEqual(heard, wanted) {
		t.Errorf("heard\n%s\nundisturbed\n%s", strings.Join(heard, "\n"), strings.Join(wanted, "\n"))
	}
}

// untimed is a record without what is different each time: the times, and its ref.
func untimed(record map[string]any) (text, ref string) {
	ref, _ = record["ref"].(string)
	delete(record, "opened_at")
	delete(record, "ready_at")
	messages, _ := record["messages"].([]any)
	for _, m := range messages {
		if m, ok := m.(map[string]any); ok {
			delete(m, "at")
		}
	}
	b, err := json.MarshalIndent(record, "", " ")
	if err != nil {
		return err.Error(), ref
	}
	return strings.ReplaceAll(string(b), ref, "REF"), ref
}

func texts(c *standin.Carrier, ref string) []string {
	var out []string
	for _, m := range c.Messages() {
		if !m.Inbound {
			out = append(out, strings.ReplaceAll(m.Body, ref, "REF"))
		}
	}
	return out
}
