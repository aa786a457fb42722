package sms_test

import (
	"errors"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/sms"
	"example.com/intake-bot/internal/channels/sms/standin"
)

const (
	token  = "0123456789abcdef0123456789abcdef"
	public = "https://bot.example.com"
	shop   = "+12185550142"
	person = "+12185550123"
)

func inboundForm() url.Values {
	return url.Values{
		"MessageSid": {"SM00000000000000000000000000000001"}, "From": {person}, "To": {shop},
		"Body": {"It is 25 1/2 x 49 1/2"}, "NumMedia": {"0"},
	}
}

// post makes a request as a proxy would hand it on: to an inner host, over plain HTTP.
func post(path, body, signature string) *http.Request {
	r := httptest.NewRequest(http.MethodPost, "http://10.0.0.7:8080"+path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	if signature != "" {
		r.Header.Set("X-Twilio-Signature", signature)
	}
	return r
}

func TestInboundSignature(t *testing.T) {
	form := inboundForm()
	good := standin.Sign(token, public+"/sms/inbound", form)
	other := inboundForm()
	other.Set("Body", "ship it to another house")
	for _, f := range []struct {
		name   string
		tokens []string
		public string
		r      func() *http.Request
		want   error
	}{
		{"right", []string{token}, public, func() *http.Request { return post("/sms/inbound", form.Encode(), good) }, nil},
		{"second of two tokens", []string{"newer", token}, public,
			func() *http.Request { return post("/sms/inbound", form.Encode(), good) }, nil},
		{"public URL ends in a slash", []string{token}, public + "/",
			func() *http.Request { return post("/sms/inbound", form.Encode(), good) }, nil},
		{"signed with the port", []string{token}, public, func() *http.Request {
			return post("/sms/inbound", form.Encode(), standin.Sign(token, public+":443/sms/inbound", form))
		}, nil},
		{"proxy takes a prefix off", []string{token}, public + "/texts", func() *http.Request {
			return post("/sms/inbound", form.Encode(), standin.Sign(token, public+"/texts/sms/inbound", form))
		}, nil},
		{"query is signed too", []string{token}, public, func() *http.Request {
			return post("/sms/inbound?shop=1&b=%20", form.Encode(), standin.Sign(token, public+"/sms/inbound?shop=1&b=%20", form))
		}, nil},
		{"query added", []string{token}, public, func() *http.Request { return post("/sms/inbound?x=1", form.Encode(), good) }, sms.ErrSignature},
		{"none", []string{token}, public, func() *http.Request { return post("/sms/inbound", form.Encode(), "") }, sms.ErrSignature},
		{"of another body", []string{token}, public, func() *http.Request { return post("/sms/inbound", other.Encode(), good) }, sms.ErrSignature},
		{"of another path", []string{token}, public, func() *http.Request { return post("/sms/status", form.Encode(), good) }, sms.ErrSignature},
		{"of another token", []string{"another"}, public, func() *http.Request { return post("/sms/inbound", form.Encode(), good) }, sms.ErrSignature},
		{"signed with an empty token", []string{""}, public, func() *http.Request {
			return post("/sms/inbound", form.Encode(), standin.Sign("", public+"/sms/inbound", form))
		}, sms.ErrSignature},
		{"no token at all", nil, public, func() *http.Request { return post("/sms/inbound", form.Encode(), good) }, sms.ErrSignature},
		{"no public URL", []string{token}, "", func() *http.Request {
			return post("/sms/inbound", form.Encode(), standin.Sign(token, "/sms/inbound", form))
		}, sms.ErrSignature},
		{"forwarded headers name another host", []string{token}, public, func() *http.Request {
			r := post("/sms/inbound", form.Encode(), standin.Sign(token, "https://evil.example/sms/inbound", form))
			r.Host = "evil.example"
			for _, h := range []string{"X-Forwarded-Host", "X-Original-Host", "Forwarded"} {
				r.Header.Set(h, "evil.example")
			}
			r.Header.Set("X-Forwarded-Proto", "https")
			return r
		}, sms.ErrSignature},
		{"right, whatever forwarded headers say", []string{token}, public, func() *http.Request {
			r := post("/sms/inbound", form.Encode(), good)
			r.Header.Set("X-Forwarded-Host", "evil.example")
			return r
		}, nil},
	} {
		h := &sms.Webhook{AuthTokens: f.tokens, PublicURL: f.public}
		in, err := h.Inbound(httptest.NewRecorder(), f.r())
		if !errors.Is(err, f.want) || (f.want == nil && err != nil) {
			t.Errorf("%s: got %v, want %v", f.name, err, f.want)
		}
		if f.want == nil && (in.From != person || in.Text != form.Get("Body")) {
			t.Errorf("%s: got %+v", f.name, in)
		}
		if f.want != nil && in.Text != "" {
			t.Errorf("%s: something was read of a post that is not the carrier's", f.name)
		}
	}
}

func TestInboundBounds(t *testing.T) {
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	long := inboundForm()
	long.Set("Body", strings.Repeat("a", 70_000))
	many := strings.Repeat("a=1&", 300) + "b=1"
	noID := inboundForm()
	noID.Del("MessageSid")
	oddID := inboundForm()
	oddID.Set("MessageSid", "../../etc")
	signed := func(f url.Values) *http.Request {
		return post("/sms/inbound", f.Encode(), standin.Sign(token, public+"/sms/inbound", f))
	}
	get := httptest.NewRequest(http.MethodGet, "/sms/inbound?"+inboundForm().Encode(), nil)
	get.Header.Set("X-Twilio-Signature", "x")
	json := post("/sms/inbound", "{}", "x")
	json.Header.Set("Content-Type", "application/json")
	for _, f := range []struct {
		name   string
		r      *http.Request
		want   error
		status int
	}{
		{"long body", signed(long), sms.ErrTooLarge, 413},
		{"many parameters", post("/sms/inbound", many, "x"), sms.ErrTooLarge, 413},
		{"broken escape", post("/sms/inbound", "Body=%zz", "x"), sms.ErrMalformed, 400},
		{"semicolon", post("/sms/inbound", "a=1;b=2", "x"), sms.ErrMalformed, 400},
		{"no message id", signed(noID), sms.ErrMalformed, 400},
		{"odd message id", signed(oddID), sms.ErrMalformed, 400},
		{"GET", get, sms.ErrMalformed, 400},
		{"JSON", json, sms.ErrMalformed, 400},
		{"wrong signature", post("/sms/inbound", "a=1", "x"), sms.ErrSignature, 403},
	} {
		_, err := h.Inbound(httptest.NewRecorder(), f.r)
		if !errors.Is(err, f.want) || sms.StatusFor(err) != f.status {
			t.Errorf("%s: got %v and %d, want %v and %d", f.name, err, sms.StatusFor(err), f.want, f.status)
		}
	}
}

// The signature covers the first value of a key, so no other may count.
func TestRepeatedKeyTakesTheFirst(t *testing.T) {
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	form := inboundForm()
	body := form.Encode() + "&Body=forged&From=%2B12185550199"
	in, err := h.Inbound(httptest.NewRecorder(), post("/sms/inbound", body, standin.Sign(token, public+"/sms/inbound", form)))
	if err != nil || in.Text != form.Get("Body") || in.From != person {
		t.Errorf("got %+v, %v", in, err)
	}
}

func TestInboundFields(t *testing.T) {
	now := time.Date(2026, 3, 2, 21, 15, 0, 0, time.FixedZone("CST", -6*3600))
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public, Now: func() time.Time { return now }}
	form := inboundForm()
	form.Set("Body", "a\x00b\xff ½")
	form.Set("NumMedia", "3")
	form.Set("OptOutType", "stop")
	form.Set("MediaUrl0", "https://media.example/ME1")
	form.Set("MediaContentType0", "image/jpeg")
	form.Set("MediaUrl1", "file:///etc/passwd")
	form.Set("MediaUrl2", "https://media.example/ME2")
	in, err := h.Inbound(httptest.NewRecorder(), post("/sms/inbound", form.Encode(), standin.Sign(token, public+"/sms/inbound", form)))
	if err != nil {
		t.Fatal(err)
	}
	if in.Text != "ab\uFFFD ½" {
		t.Errorf("text %q", in.Text)
	}
	if len(in.Media) != 2 || in.Media[0] != (sms.Media{URL: "https://media.example/ME1", Type: "image/jpeg"}) {
		t.Errorf("media %+v", in.Media)
	}
	if in.OptOut != "STOP" {
		t.Errorf("opt-out %q", in.OptOut)
	}
	if !in.At.Equal(now) || in.At.Location() != time.UTC || in.To != shop {
		t.Errorf("at %v, to %s", in.At, in.To)
	}
}

func TestNormalize(t *testing.T) {
	for _, f := range []struct {
		in, want string
		kind     sms.SenderKind
	}{
		{"+12185550123", "+12185550123", ""},
		{" (218) 555-0123", "+12185550123", ""},
		{"1-218-555-0123", "+12185550123", ""},
		{"+525512345678", "+525512345678", ""}, // a possible number in another country
		{"55512", "", sms.SenderShortCode},
		{"+778899", "", sms.SenderShortCode},
		{"BANKALERT", "", sms.SenderName},
		{"Kwik-Info 2", "", sms.SenderName},
		{"+266696687", "", sms.SenderAnonymous},
		{"", "", sms.SenderAnonymous},
		{"Restricted", "", sms.SenderAnonymous},
		{"whatsapp:+12185550123", "", sms.SenderOtherRoute},
		{"+1218555012", "", sms.SenderImpossible},
		{"+12185550123456789", "", sms.SenderImpossible},
		{"👍", "", sms.SenderImpossible},
	} {
		got, err := sms.Normalize(f.in)
		var odd *sms.SenderError
		kind := sms.SenderKind("")
		if errors.As(err, &odd) {
			kind = odd.Kind
		}
		if got != f.want || kind != f.kind || (err != nil) != errors.Is(err, sms.ErrSender) {
			t.Errorf("%q: got %q, %v; want %q, %q", f.in, got, err, f.want, f.kind)
		}
	}
}

func TestOddSenderIsAcknowledged(t *testing.T) {
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	form := inboundForm()
	form.Set("From", "55512")
	in, err := h.Inbound(httptest.NewRecorder(), post("/sms/inbound", form.Encode(), standin.Sign(token, public+"/sms/inbound", form)))
	if !errors.Is(err, sms.ErrSender) || sms.StatusFor(err) != 200 || in.From != "55512" || in.ID == "" {
		t.Errorf("got %+v, %v", in, err)
	}
	if strings.Contains(err.Error(), "55512") {
		t.Errorf("the error names the sender: %v", err)
	}
}

func TestStatus(t *testing.T) {
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	for _, f := range []struct {
		form url.Values
		want sms.StatusUpdate
		err  error
	}{
		{url.Values{"MessageSid": {"SM1"}, "MessageStatus": {"sent"}}, sms.StatusUpdate{ID: "SM1", Status: "sent"}, nil},
		{url.Values{"SmsSid": {"SM1"}, "SmsStatus": {"delivered"}}, sms.StatusUpdate{ID: "SM1", Status: "delivered"}, nil},
		{url.Values{"MessageSid": {"SM1"}, "MessageStatus": {"undelivered"}, "ErrorCode": {"30003"}},
			sms.StatusUpdate{ID: "SM1", Status: "undelivered", ErrorCode: 30003}, nil},
		{url.Values{"MessageSid": {"SM1"}}, sms.StatusUpdate{}, sms.ErrMalformed},
		{url.Values{"MessageStatus": {"sent"}}, sms.StatusUpdate{}, sms.ErrMalformed},
		{url.Values{"MessageSid": {"SM1"}, "MessageStatus": {"sent"}, "ErrorCode": {"x"}}, sms.StatusUpdate{}, sms.ErrMalformed},
	} {
		got, err := h.Status(post("/sms/status", f.form.Encode(), standin.Sign(token, public+"/sms/status", f.form)))
		got.At = time.Time{}
		if got != f.want || !errors.Is(err, f.err) {
			t.Errorf("%v: got %+v, %v", f.form, got, err)
		}
	}
	_, err := h.Status(post("/sms/status", "MessageSid=SM1&MessageStatus=sent", "x"))
	if !errors.Is(err, sms.ErrSignature) {
		t.Errorf("wrong signature: %v", err)
	}
}

func TestStatusOrder(t *testing.T) {
	for _, f := range []struct {
		new, old string
		want     bool
	}{
		{"queued", "", true}, {"sent", "queued", true}, {"delivered", "sent", true},
		{"sent", "delivered", false}, {"queued", "sent", false}, {"sent", "sent", false},
		{"undelivered", "sent", true}, {"sent", "undelivered", false}, {"nonsense", "sent", false},
	} {
		if got := sms.Supersedes(f.new, f.old); got != f.want {
			t.Errorf("%s after %s: got %v", f.new, f.old, got)
		}
	}
	if !sms.Final("failed") || !sms.Final("delivered") || sms.Final("sent") {
		t.Error("final statuses")
	}
}

func TestNewWebhookRefusesWeakSettings(t *testing.T) {
	for _, f := range []struct {
		name, public string
		tokens       []string
	}{
		{"no token", public, nil}, {"empty token", public, []string{token, ""}}, {"blank token", public, []string{" "}},
		{"no scheme", "bot.example.com", []string{token}}, {"query", public + "?a=1", []string{token}}, {"empty", "", []string{token}},
	} {
		if _, err := sms.NewWebhook(f.public, f.tokens...); err == nil {
			t.Errorf("%s: no error", f.name)
		}
	}
	if _, err := sms.NewWebhook(public, token); err != nil {
		t.Error(err)
	}
}

func FuzzInbound(f *testing.F) {
	f.Add("MessageSid=SM1&From=%2B12185550123&Body=hi&NumMedia=1&MediaUrl0=https://a.example/")
	f.Add("NumMedia=99999999999999999999&MessageSid=MM1&From=")
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	f.Fuzz(func(t *testing.T, body string) {
		form, err := url.ParseQuery(body)
		sig := "x"
		if err == nil {
			sig = standin.Sign(token, public+"/sms/inbound", form)
		}
		in, err := h.Inbound(httptest.NewRecorder(), post("/sms/inbound", body, sig))
		if err == nil && (in.ID == "" || in.From == "" || strings.ContainsRune(in.Text, 0) || len(in.Media) > 10) {
			t.Errorf("%+v", in)
		}
	})
}

func FuzzStatus(f *testing.F) {
	f.Add("MessageSid=SM1&MessageStatus=delivered&ErrorCode=30003")
	f.Add("SmsSid=SM1&SmsStatus=%00&ErrorCode=-1")
	h := &sms.Webhook{AuthTokens: []string{token}, PublicURL: public}
	f.Fuzz(func(t *testing.T, body string) {
		form, err := url.ParseQuery(body)
		sig := "x"
		if err == nil {
			sig = standin.Sign(token, public+"/sms/status", form)
		}
		st, err := h.Status(post("/sms/status", body, sig))
		if err == nil && (st.ID == "" || st.Status == "" || len(st.Status) > 64 || strings.ContainsAny(st.ID+st.Status, "\x00\r\n'\"<> ")) {
			t.Errorf("%+v", st)
		}
	})
}
