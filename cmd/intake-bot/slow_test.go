package main

import (
	"bufio"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// Who sends a request drop by drop is cut off in the header and in the body, and who reads
// drop by drop in the answer.
func TestSlowRequestsAreCutOff(t *testing.T) {
	read := make(chan error, 1)
	s := webServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, err := io.Copy(io.Discard, r.Body)
		read <- err
	}), slog.New(slog.DiscardHandler))
	for what, wait := range map[string]time.Duration{"header": s.ReadHeaderTimeout, "request": s.ReadTimeout, "answer": s.WriteTimeout, "next request": s.IdleTimeout} {
		if wait <= 0 || wait > 3*time.Minute {
			t.Errorf("the %s is waited for %v", what, wait)
		}
	}
	// The same server, with less patience than it has.
	s.ReadHeaderTimeout, s.ReadTimeout = 100*time.Millisecond, 300*time.Millisecond
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	go func() { _ = s.Serve(listener) }() // ends with Close
	t.Cleanup(func() { s.Close() })
	for _, begun := range []string{"POST /sms/inbound HTTP/1.1\r\nHost: bot.example\r\n", "POST /sms/inbound HTTP/1.1\r\nHost: bot.example\r\nContent-Length: 5000\r\n\r\nFrom="} {
		conn, err := net.Dial("tcp", listener.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		if _, err := io.WriteString(conn, begun); err != nil {
			t.Fatal(err)
		}
		if err := conn.SetReadDeadline(time.Now().Add(time.Minute)); err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(io.Discard, conn); err != nil { // until the server hangs up
			t.Errorf("%.30q is still waited for: %v", begun, err)
		}
	}
	if err := <-read; err == nil {
		t.Error("half a body was read as a whole one")
	}
}

// Whoever sends more than is read is refused, and the program goes on.
func TestHugeRequestsAreRefused(t *testing.T) {
	s := serveIn(t)
	ask := func(head string, body io.Reader) int {
		t.Helper()
		conn, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		if err := conn.SetDeadline(time.Now().Add(time.Minute)); err != nil {
			t.Fatal(err)
		}
		go func() { // the server may hang up before it has read all
			_, _ = io.WriteString(conn, head)
			_, _ = io.Copy(conn, body)
		}()
		resp, err := http.ReadResponse(bufio.NewReader(conn), nil)
		if err != nil {
			return 0 // hung up without a word
		}
		resp.Body.Close()
		return resp.StatusCode
	}
	const size = 64 << 20
	huge := func() io.Reader { return io.LimitReader(endless('a'), size) }
	form := fmt.Sprintf("Host: bot.example\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: %d\r\n", size)
	for what, c := range map[string]struct {
		head string
		body io.Reader
	}{
		"a header without end":             {"GET /healthz HTTP/1.1\r\nHost: bot.example\r\nX-A: ", huge()},
		"a path without end":               {"GET /", huge()},
		"a webhook, signed by nobody":      {"POST /sms/inbound HTTP/1.1\r\n" + form + "\r\n", huge()},
		"a webhook, signed with something": {"POST /sms/inbound HTTP/1.1\r\n" + form + "X-Twilio-Signature: x\r\n\r\n", huge()},
		"a log-in":                         {"POST /staff/login HTTP/1.1\r\n" + form + "\r\n", huge()},
		"an unsubscription":                {"POST /mail/unsubscribe/1/x HTTP/1.1\r\n" + form + "\r\n", huge()},
		"two lengths":                      {"POST /sms/inbound HTTP/1.1\r\nHost: bot.example\r\nContent-Length: 4\r\nContent-Length: 5\r\n\r\n", strings.NewReader("abcde")},
		"a length and chunks at odds": {"POST /sms/inbound HTTP/1.1\r\nHost: bot.example\r\nContent-Length: 5\r\nTransfer-Encoding: chunked, identity\r\n\r\n",
			strings.NewReader("0\r\n\r\n")},
	} {
		if status := ask(c.head, c.body); status != 0 && (status < 400 || status >= 500 && status != http.StatusNotImplemented) {
			t.Errorf("%s: %d", what, status)
		}
	}
	for _, path := range []string{"/..%2f..%2fetc/passwd", "/picture/../../etc/passwd", "/picture/..%2f..%2fx/en/0/x.png", "//sms/inbound", "/sms/..%2fstaff/", "/.env", "/metrics", "/debug/pprof/"} {
		if status := ask("GET "+path+" HTTP/1.1\r\nHost: bot.example\r\nConnection: close\r\n\r\n", strings.NewReader("")); status < 300 || status >= 500 {
			t.Errorf("%s: %d", path, status)
		}
	}
	if status := ask("GET /readyz HTTP/1.1\r\nHost: bot.example\r\nConnection: close\r\n\r\n", strings.NewReader("")); status != http.StatusOK {
		t.Errorf("afterwards it is ready: %d", status)
	}
}

// endless is one letter again and again.
type endless byte

func (e endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = byte(e)
	}
	return len(p), nil
}
