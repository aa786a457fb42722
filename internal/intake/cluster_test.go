package intake

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/db/dbtest"
)

// Four processes, each on a loopback address of its own, share one Postgres and one
// carrier, which posts each message to any of them. One is cut off from both for a while,
// one is killed.

const (
	childCluster = "INTAKE_CLUSTER_LISTEN"  // the address on which a process of the cluster listens
	childCarrier = "INTAKE_CLUSTER_CARRIER" // the carrier's, as that process reaches it
	clusterURL   = "http://bot.example.test"
)

// clusterChild serves until its input ends, which it does with the test.
func clusterChild(database string) error {
	ctx := context.Background()
	pool, err := db.Open(ctx, database)
	if err != nil {
		return err
	}
	defer pool.Close()
	client, err := sms.NewClient(sms.Config{AccountID: account, AuthToken: token, From: number, BaseURL: os.Getenv(childCarrier)})
	if err != nil {
		return err
	}
	s, err := New(Options{Pool: pool, Shop: &conversation.Shop{}, Brain: (&parrot{}).brain(), Quiet: 50 * time.Millisecond, QuietCap: time.Second,
		Senders: map[conversation.Channel]Sender{conversation.SMS: SMSSender{Client: client}}, Lease: 3 * time.Second, SweepEvery: time.Second})
	if err != nil {
		return err
	}
	if err := s.Start(ctx); err != nil {
		return err
	}
	webhook, err := sms.NewWebhook(clusterURL, token)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", os.Getenv(childCluster))
	if err != nil {
		return err
	}
	failed := make(chan error, 1)
	go func() { failed <- http.Serve(l, s.SMSHandler(webhook)) }()
	fmt.Println(l.Addr())
	go func() {
		_, err := io.Copy(io.Discard, os.Stdin)
		failed <- err
	}()
	return <-failed
}

// cluster is four processes and what they share.
type cluster struct {
	t       *testing.T
	pool    *pgxpool.Pool
	carrier *standin.Carrier
	at      []string // where each listens
	procs   []*exec.Cmd
	client  *http.Client
}

func startCluster(t *testing.T, cutOff int) (*cluster, *severable) {
	t.Helper()
	address := dbtest.URL(t)
	pool, err := db.Open(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(pool.Close)
	c := &cluster{t: t, pool: pool, client: &http.Client{Timeout: 2 * time.Second, Transport: &http.Transport{DisableKeepAlives: true}},
		carrier: standin.New(standin.Config{AccountID: account, AuthToken: token, Number: number})}
	carrier, err := c.carrier.Start("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.carrier.Close() })
	wire := &severable{}
	for i := range 4 {
		database, carrier := withParameter(t, address, "idle_in_transaction_session_timeout", "2000"), carrier
		if i == cutOff {
			database, carrier = wire.database(t, database), "http://"+wire.open(t, "tcp", strings.TrimPrefix(carrier, "http://"))
		}
		c.start(fmt.Sprintf("127.0.0.%d:0", i+2), database, carrier)
	}
	return c, wire
}

func (c *cluster) start(listen, database, carrier string) {
	c.t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childDatabase+"="+database, childCluster+"="+listen, childCarrier+"="+carrier)
	cmd.Stderr = c.t.Output()
	out, err := cmd.StdoutPipe()
	if err != nil {
		c.t.Fatal(err)
	}
	in, err := cmd.StdinPipe()
	if err != nil {
		c.t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		c.t.Fatal(err)
	}
	c.t.Cleanup(func() {
		in.Close()
		_ = cmd.Process.Kill() // it may have ended
		_ = cmd.Wait()
	})
	at, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		c.t.Fatalf("a process of the cluster did not start: %v", err)
	}
	c.at, c.procs = append(c.at, strings.TrimSpace(at)), append(c.procs, cmd)
}

// post posts a message to one after the other of those given, at random, until one acknowledges it.
func (c *cluster) post(d standin.Delivery, to ...string) error {
	for c.t.Context().Err() == nil {
		body := d.Form.Encode()
		r, err := http.NewRequestWithContext(c.t.Context(), http.MethodPost, "http://"+to[rand.IntN(len(to))]+"/sms/inbound", strings.NewReader(body))
		if err != nil {
			return err
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("X-Twilio-Signature", standin.Sign(token, clusterURL+"/sms/inbound", d.Form))
		res, err := c.client.Do(r)
		if err != nil {
			continue // it is dead, or cut off
		}
		res.Body.Close()
		switch res.StatusCode {
		case http.StatusOK:
			return nil
		case http.StatusServiceUnavailable:
		default:
			return fmt.Errorf("the webhook answered %d", res.StatusCode)
		}
	}
	return c.t.Context().Err()
}

const (
	clusterTalks    = 24
	clusterMessages = 6
)

func clusterPhone(talk int) string { return fmt.Sprintf("+1218555%04d", 100+talk) }

// customer writes message after message; now and then they wait for the answer first.
func (c *cluster) customer(talk int) error {
	for m := range clusterMessages {
		if err := c.post(c.carrier.Take(clusterPhone(talk), fmt.Sprintf("m%d", m+1)), c.at...); err != nil {
			return err
		}
		if m%3 == 1 {
			if _, err := c.carrier.WaitTo(c.t.Context(), clusterPhone(talk), 1); err != nil {
				return err
			}
		}
		time.Sleep(rand.N(600 * time.Millisecond)) // people write at their own pace
	}
	return nil
}

func TestFourProcessesOneCutOffOneKilled(t *testing.T) {
	t.Parallel()
	const cutOff, killed = 1, 2
	c, wire := startCluster(t, cutOff)
	var customers sync.WaitGroup
	for talk := range clusterTalks {
		customers.Go(func() {
			if err := c.customer(talk); err != nil {
				t.Errorf("talk %d: %v", talk, err)
			}
		})
	}
	c.heard(clusterTalks)
	wire.cut()
	c.heard(2 * clusterTalks)
	if err := c.procs[killed].Process.Kill(); err != nil {
		t.Fatal(err)
	}
	customers.Wait()
	c.settled()
	wire.heal()
	// Once it answers again, what it still had in hand has come to its end.
	if err := c.post(c.carrier.Take(clusterPhone(0), "m7"), c.at[cutOff]); err != nil {
		t.Fatal(err)
	}
	c.settled()
	for talk := range clusterTalks {
		c.check(talk)
	}
}

// heard waits until so many messages were kept.
func (c *cluster) heard(n int) {
	c.t.Helper()
	until(c.t, fmt.Sprintf("%d messages are kept", n), func() bool { return c.number(`SELECT count(*) FROM messages WHERE direction = 'in'`) >= n })
}

// settled waits until nothing is left to be done.
func (c *cluster) settled() {
	c.t.Helper()
	until(c.t, "nothing is left to be done", func() bool {
		return c.number(`SELECT (SELECT count(*) FROM messages WHERE direction = 'in' AND handled_at IS NULL) +
			(SELECT count(*) FROM sends WHERE finished_at IS NULL)`) == 0
	})
}

func (c *cluster) number(sql string) (n int) {
	c.t.Helper()
	if err := c.pool.QueryRow(c.t.Context(), sql).Scan(&n); err != nil {
		c.t.Fatal(err)
	}
	return n
}

func until(t *testing.T, what string, done func() bool) {
	t.Helper()
	for end := time.Now().Add(5 * time.Minute); !done(); time.Sleep(50 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("waited in vain until %s", what)
		}
	}
}

// check says what is wrong with a talk: each of the customer's messages must be there once,
// in order, and be answered once, in order.
func (c *cluster) check(talk int) {
	c.t.Helper()
	var want, answered []string
	for m := range clusterMessages {
		want = append(want, fmt.Sprintf("m%d", m+1))
	}
	if talk == 0 {
		want = append(want, "m7")
	}
	kept := c.lines(`SELECT m.text FROM messages m WHERE address = $1 AND direction = 'in' ORDER BY n`, clusterPhone(talk))
	said := c.lines(`SELECT m.text FROM messages m WHERE address = $1 AND direction = 'out' ORDER BY n`, clusterPhone(talk))
	var sent []string
	for _, m := range c.carrier.To(clusterPhone(talk)) {
		sent = append(sent, m.Body)
		for _, heard := range strings.Split(strings.TrimPrefix(m.Body, "heard "), " + ") {
			_, words, _ := strings.Cut(heard, ":")
			answered = append(answered, words)
		}
	}
	for _, got := range []struct {
		what string
		got  []string
		want []string
	}{{"kept", kept, want}, {"answered", answered, want}, {"sent", sent, said}} {
		if strings.Join(got.got, "|") != strings.Join(got.want, "|") {
			c.t.Errorf("talk %d: %s are %q, want %q", talk, got.what, got.got, got.want)
		}
	}
}

func (c *cluster) lines(sql string, args ...any) []string {
	c.t.Helper()
	rows, err := c.pool.Query(c.t.Context(), sql, args...)
	if err != nil {
		c.t.Fatal(err)
	}
	lines, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		c.t.Fatal(err)
	}
	return lines
}

// severable is a wire that can be cut: what is on it, and what is put on it after, is lost,
// and nobody hangs up.
type severable struct {
	mu    sync.Mutex
	isCut bool
	conns []net.Conn
}

// open leads to a server by a new address.
func (w *severable) open(t *testing.T, network, to string) (address string) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { l.Close(); w.heal() })
	go func() {
		for {
			near, err := l.Accept()
			if err != nil {
				return
			}
			far, err := net.Dial(network, to)
			if err != nil {
				near.Close()
				continue
			}
			w.join(near, far)
		}
	}()
	return l.Addr().String()
}

func (w *severable) join(near, far net.Conn) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.conns = append(w.conns, near, far)
	for _, way := range [][2]net.Conn{{near, far}, {far, near}} {
		go w.carry(way[0], way[1])
	}
}

func (w *severable) carry(from, to net.Conn) {
	b := make([]byte, 32<<10)
	for {
		n, err := from.Read(b)
		w.mu.Lock()
		lost := w.isCut
		w.mu.Unlock()
		switch {
		case lost && err == nil: // nothing arrives
		case lost: // nor does the news that one side hung up
			return
		case err != nil:
			to.Close()
			return
		default:
			if _, err := to.Write(b[:n]); err != nil {
				from.Close()
				return
			}
		}
	}
}

func (w *severable) cut() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.isCut = true
}

// heal lets new connections through; those that were there are gone.
func (w *severable) heal() {
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, c := range w.conns {
		c.Close()
	}
	w.isCut, w.conns = false, nil
}

// database leads to a database by the wire.
func (w *severable) database(t *testing.T, address string) string {
	t.Helper()
	cfg, err := pgxpool.ParseConfig(address)
	if err != nil {
		t.Fatal(err)
	}
	network, to := "tcp", fmt.Sprintf("%s:%d", cfg.ConnConfig.Host, cfg.ConnConfig.Port)
	if strings.HasPrefix(cfg.ConnConfig.Host, "/") {
		network, to = "unix", fmt.Sprintf("%s/.s.PGSQL.%d", cfg.ConnConfig.Host, cfg.ConnConfig.Port)
	}
	host, port, err := net.SplitHostPort(w.open(t, network, to))
	if err != nil {
		t.Fatal(err)
	}
	return withParameter(t, withParameter(t, address, "host", host), "port", port)
}

func withParameter(t *testing.T, address, name, value string) string {
	t.Helper()
	u, err := url.Parse(address)
	if err != nil || u.Scheme == "" {
		t.Fatal(errors.Join(err, errors.New("the database's address is no URL")))
	}
	q := u.Query()
	q.Set(name, value)
	u.RawQuery = q.Encode()
	return u.String()
}
