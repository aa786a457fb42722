package standin

import (
	"context"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strings"
	"time"
	"unicode"
)

const (
	maxPersonPost = 20 << 20
	answerWait    = 15 * time.Second       // for the first answer
	answerPause   = 800 * time.Millisecond // for more of them after the last
)

// personTexts lets somebody at a terminal be a customer:
//
//	curl -d 'It is 25 1/2 by 49' localhost:8125/person/2185550123
//	curl -F text='Here it is' -F photo=@dome.jpg localhost:8125/person/2185550123
//
// It answers with what the bot texts back.
func (c *Carrier) personTexts(w http.ResponseWriter, r *http.Request) {
	number, ok := personNumber(r.PathValue("number"))
	if !ok {
		http.Error(w, "want a ten-digit number: /person/2185550123", http.StatusBadRequest)
		return
	}
	text, files, err := personMessage(w, r)
	if err != nil {
		http.Error(w, err.Error(), http.StatusBadRequest)
		return
	}
	before := len(c.To(number))
	if _, err := c.Text(r.Context(), number, text, files...); err != nil {
		http.Error(w, "the bot did not take it: "+err.Error(), http.StatusBadGateway)
		return
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	for _, m := range c.answers(r.Context(), number, before) {
		fmt.Fprintln(w, m.Body)
	}
}

// personReads shows the talk with one number so far.
func (c *Carrier) personReads(w http.ResponseWriter, r *http.Request) {
	number, ok := personNumber(r.PathValue("number"))
	if !ok {
		http.Error(w, "want a ten-digit number: /person/2185550123", http.StatusBadRequest)
		return
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	for _, m := range c.Talk(number) {
		who := "shop    "
		if m.Inbound {
			who = "customer"
		}
		fmt.Fprintf(w, "%s  %s\n", who, m.Body)
	}
}

func personNumber(s string) (string, bool) {
	digits := strings.Map(func(r rune) rune {
		if unicode.IsDigit(r) {
			return r
		}
		return -1
	}, s)
	if len(digits) == 10 {
		digits = "1" + digits
	}
	return "+" + digits, e164.MatchString("+" + digits)
}

// personMessage reads a multipart form, or takes the whole body as the text: curl -d
// says that it sends a form, but does not encode it.
func personMessage(w http.ResponseWriter, r *http.Request) (string, []File, error) {
	r.Body = http.MaxBytesReader(w, r.Body, maxPersonPost)
	kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if kind == "multipart/form-data" {
		return personForm(r)
	}
	b, err := io.ReadAll(r.Body)
	if err != nil {
		return "", nil, fmt.Errorf("reading the text: %w", err)
	}
	text := strings.TrimSpace(string(b))
	if text == "" {
		return "", nil, errors.New("no text")
	}
	return text, nil, nil
}

func personForm(r *http.Request) (string, []File, error) {
	if err := r.ParseMultipartForm(maxPersonPost); err != nil {
		return "", nil, fmt.Errorf("reading the form: %w", err)
	}
	var files []File
	for _, headers := range r.MultipartForm.File {
		for _, h := range headers {
			f, err := h.Open()
			if err != nil {
				return "", nil, fmt.Errorf("reading a file: %w", err)
			}
			data, err := io.ReadAll(f)
			f.Close()
			if err != nil {
				return "", nil, fmt.Errorf("reading a file: %w", err)
			}
			files = append(files, File{Type: h.Header.Get("Content-Type"), Data: data})
		}
	}
	return strings.TrimSpace(r.PostFormValue("text")), files, nil
}

// answers waits for what comes back after the first before messages.
func (c *Carrier) answers(ctx context.Context, number string, before int) []Message {
	wait := answerWait
	seen := before
	for {
		wctx, cancel := context.WithTimeout(ctx, wait)
		got, err := c.WaitTo(wctx, number, seen+1)
		cancel()
		if err != nil {
			return got[min(before, len(got)):]
		}
		seen, wait = len(got), answerPause
	}
}
