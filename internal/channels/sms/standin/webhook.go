package standin

import (
	"context"
	"crypto/hmac"
	"crypto/sha1"
	"encoding/base64"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
)

// Sign makes the signature of a post: base64 of HMAC-SHA1 over the address and each
// key with its value, sorted by key. Source: from memory of the carrier's page on webhook
// security; checked against its Go library in the tests.
func Sign(token, address string, form url.Values) string {
	var b strings.Builder
	b.WriteString(address)
	keys := make([]string, 0, len(form))
	for k := range form {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	for _, k := range keys {
		b.WriteString(k + form.Get(k))
	}
	mac := hmac.New(sha1.New, []byte(token))
	io.WriteString(mac, b.String())
	return base64.StdEncoding.EncodeToString(mac.Sum(nil))
}

// Delivery is a post about one message from a person. Post it once, twice, late, or
// after another: that is how repeats, delays and changed order are made.
type Delivery struct {
	Message Message
	Form    url.Values
}

// Take takes a message from a person without posting it.
func (c *Carrier) Take(from, body string, files ...File) Delivery {
	m := Message{ID: newID("SM"), Inbound: true, From: from, To: c.cfg.Number, Body: body, Status: "received"}
	if len(files) > 0 {
		m.ID = newID("MM")
		m.MediaURLs = c.keepMedia(m.ID, files)
	}
	m = c.keep(m)
	form := url.Values{
		"MessageSid": {m.ID}, "SmsSid": {m.ID}, "SmsMessageSid": {m.ID}, "SmsStatus": {"received"},
		"AccountSid": {c.cfg.AccountID}, "From": {from}, "To": {m.To}, "Body": {body},
		"NumMedia": {strconv.Itoa(len(files))}, "NumSegments": {"1"}, "ApiVersion": {"2010-04-01"},
		"FromCountry": {"US"}, "ToCountry": {"US"},
	}
	for i, f := range files {
		form.Set("MediaUrl"+strconv.Itoa(i), m.MediaURLs[i])
		form.Set("MediaContentType"+strconv.Itoa(i), f.Type)
	}
	return Delivery{Message: m, Form: form}
}

// Deliver posts a message to the bot and returns the status of its answer.
func (c *Carrier) Deliver(ctx context.Context, d Delivery) (int, error) {
	return c.post(ctx, c.inboundURL(), d.Form)
}

// Text has a person send a message: Take and Deliver. The id is the carrier's.
func (c *Carrier) Text(ctx context.Context, from, body string, files ...File) (string, error) {
	d := c.Take(from, body, files...)
	status, err := c.Deliver(ctx, d)
	if err != nil {
		return d.Message.ID, err
	}
	if status >= 300 {
		return d.Message.ID, fmt.Errorf("the webhook answered %d", status)
	}
	return d.Message.ID, nil
}

func (c *Carrier) post(ctx context.Context, address string, form url.Values) (int, error) {
	to, err := c.deliverTo(address)
	if err != nil {
		return 0, err
	}
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, to, strings.NewReader(form.Encode()))
	if err != nil {
		return 0, fmt.Errorf("webhook: %w", err)
	}
	req.Header.Set("Content-Type", "application/x-www-form-urlencoded; charset=utf-8")
	req.Header.Set("X-Twilio-Signature", Sign(c.cfg.AuthToken, address, form))
	res, err := c.cfg.HTTP.Do(req)
	if err != nil {
		return 0, fmt.Errorf("webhook: %w", err)
	}
	defer res.Body.Close()
	io.Copy(io.Discard, io.LimitReader(res.Body, 1<<20))
	return res.StatusCode, nil
}
