package deploy_test

import (
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"
)

func TestProxyConfigurationIsValid(t *testing.T) {
	caddy := tool(t, "caddy", "caddy")
	for _, bots := range []string{"", "bot-a:8080 bot-b:8080"} {
		cmd := exec.CommandContext(t.Context(), caddy, "validate", "--adapter", "caddyfile", "--config", "Caddyfile")
		cmd.Env = append(proxyEnvironment(t), "SITE=bot.example.com")
		if bots != "" {
			cmd.Env = append(cmd.Env, "BOTS="+bots)
		}
		if out, err := cmd.CombinedOutput(); err != nil || strings.Contains(string(out), `"level":"warn"`) {
			t.Errorf("BOTS=%q: %v\n%s", bots, err, out)
		}
	}
}

// stub is a bot as the proxy sees it.
type stub struct {
	*httptest.Server
	ready atomic.Bool
	took  atomic.Int64
	from  atomic.Value // X-Forwarded-For of the last request
}

func newStub(t *testing.T) *stub {
	t.Helper()
	s := &stub{}
	s.ready.Store(true)
	s.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/readyz" {
			if !s.ready.Load() {
				w.WriteHeader(http.StatusServiceUnavailable)
			}
			return
		}
		s.took.Add(1)
		s.from.Store(r.Header.Get("X-Forwarded-For"))
		body, err := io.ReadAll(r.Body)
		if err != nil {
			w.WriteHeader(http.StatusBadRequest)
			return
		}
		fmt.Fprintf(w, "%s %s %d", r.Host, r.URL.Path, len(body))
	}))
	t.Cleanup(s.Close)
	return s
}

// The real proxy with this configuration: both bots work, posts survive the death of
// one, one that is not ready gets nothing, and what is for the house stays inside.
func TestProxySharesOutAndOutlivesABot(t *testing.T) {
	caddy := tool(t, "caddy", "caddy")
	first, second := newStub(t), newStub(t)
	address := startProxy(t, caddy, first, second)
	for i := range 20 {
		if status, body := post(t, address+"/sms/inbound", "Body=hello"); status != http.StatusOK || !strings.HasSuffix(body, "/sms/inbound 10") {
			t.Fatalf("post %d: %d %q", i, status, body)
		}
	}
	if first.took.Load() == 0 || second.took.Load() == 0 {
		t.Errorf("one had nothing to do: %d and %d", first.took.Load(), second.took.Load())
	}
	if from, _ := second.from.Load().(string); from != "127.0.0.1" {
		t.Errorf("a made-up address came through: X-Forwarded-For %q", from)
	}
	for _, path := range []string{"/readyz", "/metrics"} {
		if status, _ := post(t, address+path, ""); status != http.StatusNotFound {
			t.Errorf("%s is seen from outside: %d", path, status)
		}
	}
	if status, _ := post(t, address+"/sms/inbound", strings.Repeat("x", 3<<20)); status < 400 {
		t.Errorf("3 MB were taken: %d", status)
	}

	first.ready.Store(false)
	before := int64(-1)
	eventually(t, "the one that is not ready is let be", func() bool {
		before = first.took.Load()
		for range 6 {
			post(t, address+"/sms/status", "")
		}
		return first.took.Load() == before
	})
	first.ready.Store(true)
	eventually(t, "the one that is ready again gets work", func() bool {
		post(t, address+"/sms/status", "")
		return first.took.Load() > before
	})

	second.CloseClientConnections()
	second.Close()
	for i := range 20 {
		if status, body := post(t, address+"/sms/inbound", "Body=hello"); status != http.StatusOK {
			t.Fatalf("post %d after a bot's end: %d %q", i, status, body)
		}
	}
}

// startProxy runs the proxy on a port of its own, without TLS and without its
// administration.
func startProxy(t *testing.T, caddy string, bots ...*stub) (address string) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	address = "http://" + l.Addr().String()
	l.Close()
	config := filepath.Join(t.TempDir(), "Caddyfile")
	if err := os.WriteFile(config, []byte("{\n\tadmin off\n}\n"+text(t, "Caddyfile")), 0o600); err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, b := range bots {
		names = append(names, strings.TrimPrefix(b.URL, "http://"))
	}
	cmd := exec.Command(caddy, "run", "--adapter", "caddyfile", "--config", config)
	cmd.Env = append(proxyEnvironment(t), "SITE="+address, "BOTS="+strings.Join(names, " "))
	var said strings.Builder
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = cmd.Process.Signal(syscall.SIGTERM)
		_ = cmd.Wait()
		if t.Failed() {
			t.Log(said.String())
		}
	})
	eventually(t, "the proxy is up", func() bool {
		r, err := http.Get(address + "/metrics")
		if err != nil {
			return false
		}
		return r.Body.Close() == nil
	})
	return address
}

// proxyEnvironment keeps the proxy's files in a folder of the test.
func proxyEnvironment(t *testing.T) []string {
	t.Helper()
	home := t.TempDir()
	return []string{"PATH=" + os.Getenv("PATH"), "HOME=" + home, "XDG_DATA_HOME=" + home, "XDG_CONFIG_HOME=" + home}
}

func post(t *testing.T, address, body string) (status int, answer string) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), 15*time.Second)
	defer cancel()
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, address, strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("X-Forwarded-For", "203.0.113.9")
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		return 599, err.Error() // cut off: no answer either
	}
	defer resp.Body.Close()
	b, err := io.ReadAll(resp.Body)
	if err != nil {
		return 599, err.Error()
	}
	return resp.StatusCode, string(b)
}

func eventually(t *testing.T, what string, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(30 * time.Second); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if holds() {
			return
		}
	}
	t.Fatalf("not after 30 s: %s", what)
}
