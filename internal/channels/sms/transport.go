package sms

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptrace"
	"net/url"
	"path"
	"strconv"
	"time"
)

// maxAnswer bounds what is read of one answer of the carrier; a page of a hundred
// messages has about 150 kB.
const maxAnswer = 4 << 20

// answer is what is known of the last exchange and that the REST library doesn't tell.
type answer struct {
	written    bool // the whole request left this machine
	status     int
	retryAfter time.Duration
	date       time.Time // by the carrier's clock, zero where it did not say
}

// exchange carries one call: it brings the caller's context to the request, which
// the REST library can't, sends it to another host where one is set, and notes what came
// back. It also reads and closes every body, for the library leaves those of errors open.
type exchange struct {
	ctx  context.Context
	base *url.URL // nil: the carrier's own
	next http.RoundTripper
	last answer
}

func (x *exchange) RoundTrip(r *http.Request) (*http.Response, error) {
	x.last = answer{}
	trace := &httptrace.ClientTrace{WroteRequest: func(i httptrace.WroteRequestInfo) {
		x.last.written = i.Err == nil
	}}
	r = r.Clone(httptrace.WithClientTrace(x.ctx, trace))
	if x.base != nil {
		r.URL.Scheme, r.URL.Host, r.Host = x.base.Scheme, x.base.Host, ""
		r.URL.Path = path.Join("/", x.base.Path, r.URL.Path)
	}
	res, err := x.next.RoundTrip(r)
	if err != nil {
		return nil, err
	}
	body, err := readAnswer(res.Body)
	if err != nil {
		return nil, err
	}
	x.last.status = res.StatusCode
	x.last.date, _ = http.ParseTime(res.Header.Get("Date")) // zero where there is none
	x.last.retryAfter = retryAfter(res.Header.Get("Retry-After"), time.Now())
	res.Body = io.NopCloser(bytes.NewReader(body))
	return res, nil
}

func readAnswer(body io.ReadCloser) ([]byte, error) {
	defer body.Close()
	b, err := io.ReadAll(io.LimitReader(body, maxAnswer+1))
	if err != nil {
		return nil, fmt.Errorf("reading the carrier's answer: %w", err)
	}
	if len(b) > maxAnswer {
		return nil, fmt.Errorf("the carrier's answer is over %d bytes", maxAnswer)
	}
	return b, nil
}

// retryAfter reads both forms of the header, RFC 9110 section 10.2.3, and bounds them
// to a day.
func retryAfter(h string, now time.Time) time.Duration {
	const most = 24 * time.Hour
	if s, err := strconv.Atoi(h); err == nil {
		return min(max(time.Duration(min(s, int(most/time.Second)))*time.Second, 0), most)
	}
	if t, err := http.ParseTime(h); err == nil {
		return min(max(t.Sub(now), 0), most)
	}
	return 0
}
