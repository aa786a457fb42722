package torture

import (
	"io"
	"net"
	"sync"
	"testing"
	"time"
)

// Proxy stands between the bots and a server on a Unix socket, and can be slow, silent or
// cut, as a network is.
type Proxy struct {
	Address string // host:port
	socket  string

	mu     sync.Mutex
	delay  time.Duration
	gate   *sync.Cond // silent ends
	silent bool
	conns  map[net.Conn]bool
}

// NewProxy serves until the test ends.
func NewProxy(t testing.TB, socket string) *Proxy {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p := &Proxy{Address: l.Addr().String(), socket: socket, conns: map[net.Conn]bool{}}
	p.gate = sync.NewCond(&p.mu)
	t.Cleanup(func() { l.Close(); p.Silence(false); p.Cut() })
	go func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return // closed
			}
			go p.carry(c)
		}
	}()
	return p
}

func (p *Proxy) carry(c net.Conn) {
	defer c.Close()
	s, err := net.Dial("unix", p.socket)
	if err != nil {
		return // the server is away: so is the connection
	}
	defer s.Close()
	p.mu.Lock()
	p.conns[c] = true
	p.mu.Unlock()
	var both sync.WaitGroup
	both.Go(func() { p.copy(s, c); s.Close() })
	both.Go(func() { p.copy(c, s); c.Close() })
	both.Wait()
	p.mu.Lock()
	delete(p.conns, c)
	p.mu.Unlock()
}

// copy hands on what comes, late or not at all as it was told.
func (p *Proxy) copy(to io.Writer, from io.Reader) {
	b := make([]byte, 32<<10)
	for {
		n, err := from.Read(b)
		if n > 0 {
			p.hold()
			if _, err := to.Write(b[:n]); err != nil {
				return
			}
		}
		if err != nil {
			return
		}
	}
}

func (p *Proxy) hold() {
	p.mu.Lock()
	delay := p.delay
	for p.silent {
		p.gate.Wait()
	}
	p.mu.Unlock()
	time.Sleep(delay)
}

// Slow has everything take so much longer, each way.
func (p *Proxy) Slow(d time.Duration) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.delay = d
}

// Silence lets nothing through, and closes nothing.
func (p *Proxy) Silence(on bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.silent = on
	p.gate.Broadcast()
}

// Cut closes all connections.
func (p *Proxy) Cut() {
	p.mu.Lock()
	defer p.mu.Unlock()
	for c := range p.conns {
		c.Close()
	}
}
