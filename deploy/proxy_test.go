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

func TestDoorConfigurationIsValid(t *testing.T) {
	caddy := tool(t, "caddy", "caddy")
	cmd := exec.CommandContext(t.Context(), caddy, "validate", "--adapter", "caddyfile", "--config", "proxy/Caddyfile")
	cmd.Env = append(doorEnvironment(t), "SITE=bot.example.com")
	if out, err := cmd.CombinedOutput(); err != nil || strings.Contains(string(out), `"level":"warn"`) {
		t.Errorf("%v\n%s", err, out)
	}
}

func TestSharingConfigurationsAreValid(t *testing.T) {
	nginx := tool(t, "nginx", "nginx-light")
	for _, bots := range []string{"bots.conf", "bots.compose.conf"} {
		config := nginxFolder(t, text(t, "proxy/sharing.conf"), text(t, "proxy/"+bots))
		if out, err := run(t, nginx, "-t", "-q", "-c", config); err != nil {
			t.Errorf("%s: %v\n%s", bots, err, out)
		}
	}
}

// stub is a bot as the proxies see it.
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
		body, err := io.ReadAll(r.Body)
		if err != nil || !s.ready.Load() {
			w.WriteHeader(http.StatusServiceUnavailable)
			return
		}
		s.took.Add(1)
		s.from.Store(r.Header.Get("X-Forwarded-For"))
		fmt.Fprintf(w, "%s %s %d", r.Host, r.URL.Path, len(body))
	}))
	t.Cleanup(s.Close)
	return s
}

// The real proxies with these configurations: both bots work, posts outlive one that
// can't or dies, and what is for the house stays inside.
func TestProxiesShareOutAndOutliveABot(t *testing.T) {
	caddy, nginx := tool(t, "caddy", "caddy"), tool(t, "nginx", "nginx-light")
	first, second := newStub(t), newStub(t)
	address := startProxies(t, caddy, nginx, first, second)
	posts := func(when string) {
		t.Helper()
		for i := range 30 {
			if status, body := post(t, address+"/sms/inbound", "Body=hello"); status != http.StatusOK || !strings.HasSuffix(body, "/sms/inbound 10") {
				t.Fatalf("%s, post %d: %d %q", when, i, status, body)
			}
		}
	}
	posts("both there")
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
	posts("one can't reach its database")
	first.ready.Store(true)
	before := first.took.Load()
	eventually(t, "the one that is ready again gets work", func() bool {
		post(t, address+"/sms/status", "")
		return first.took.Load() > before
	})
	second.CloseClientConnections()
	second.Close()
	posts("one is dead")
}

// nginxFolder is the configuration of an nginx of the test's own around site and bots.
func nginxFolder(t *testing.T, site, bots string) (config string) {
	t.Helper()
	dir := t.TempDir()
	main := "daemon off;\nmaster_process off;\npid DIR/pid;\nerror_log stderr;\nevents {}\nhttp {\n"
	for _, kind := range []string{"client_body", "proxy", "fastcgi", "uwsgi", "scgi"} {
		main += kind + "_temp_path DIR/" + kind + ";\n"
	}
	main += "include DIR/bots.conf;\ninclude DIR/site.conf;\n}\n"
	config = filepath.Join(dir, "nginx.conf")
	for path, content := range map[string]string{config: strings.ReplaceAll(main, "DIR", dir), dir + "/site.conf": site, dir + "/bots.conf": bots} {
		if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return config
}

// startProxies runs both on ports of their own, the door without TLS and without its
// administration.
func startProxies(t *testing.T, caddy, nginx string, first, second *stub) (address string) {
	t.Helper()
	inner, outer := freePort(t), freePort(t)
	site := strings.ReplaceAll(text(t, "proxy/sharing.conf"), "127.0.0.1:8000", inner)
	bots := strings.NewReplacer("127.0.0.1:8081", first.Listener.Addr().String(), "127.0.0.1:8082", second.Listener.Addr().String()).
		Replace(text(t, "proxy/bots.conf"))
	background(t, exec.Command(nginx, "-c", nginxFolder(t, site, bots)))

	config := filepath.Join(t.TempDir(), "Caddyfile")
	if err := os.WriteFile(config, []byte("{\n\tadmin off\n}\n"+text(t, "proxy/Caddyfile")), 0o600); err != nil {
		t.Fatal(err)
	}
	door := exec.Command(caddy, "run", "--adapter", "caddyfile", "--config", config)
	door.Env = append(doorEnvironment(t), "SITE=http://"+outer, "SHARING="+inner)
	background(t, door)
	for _, a := range []string{inner, outer} {
		eventually(t, "something listens at "+a, func() bool {
			c, err := net.Dial("tcp", a)
			return err == nil && c.Close() == nil
		})
	}
	return "http://" + outer
}

func freePort(t *testing.T) string {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	return l.Addr().String()
}

// background runs a program to the end of the test, and shows what it said if that failed.
func background(t *testing.T, cmd *exec.Cmd) {
	t.Helper()
	var said strings.Builder
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = cmd.Process.Signal(syscall.SIGTERM)
		_ = cmd.Wait() // it was told to end
		if t.Failed() {
			t.Log(said.String())
		}
	})
}

// doorEnvironment keeps the proxy's files in a folder of the test.
func doorEnvironment(t *testing.T) []string {
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
