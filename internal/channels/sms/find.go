package sms

import (
	"context"
	"errors"
	"fmt"
	"net/url"
	"strings"
	"time"

	api "github.com/twilio/twilio-go/rest/api/v2010"
)

const (
	findPage  = 100
	findPages = 10 // one person never gets a thousand texts between a send and its check
)

// Find looks among the carrier's messages for one to that number with that text,
// created at or after since, by our clock (whole seconds, for the carrier keeps no finer
// time; where its clock is behind ours, by its own). Texts
// are compared as they'd be after folding, since the carrier may fold by itself. With
// several it returns the newest. An error means that it is still not known.
func (c *Client) Find(ctx context.Context, to, body string, since time.Time) (sid string, found bool, err error) {
	ctx, cancel := context.WithTimeout(ctx, c.cfg.Timeout)
	defer cancel()
	want := folded(body)
	slack := time.Duration(0)
	service, x := c.call(ctx)
	// Not filtered by date sent: a message that is still queued has none.
	params := (&api.ListMessageParams{}).SetTo(to).SetPageSize(findPage)
	if c.cfg.From != "" {
		params.SetFrom(c.cfg.From)
	}
	token, number := "", ""
	for range findPages {
		page, err := service.PageMessage(params, token, number)
		if err != nil {
			return "", false, fmt.Errorf("find a sent message: %w", sendError(x.last, err))
		}
		slack = max(slack, c.behind(x.last.date))
		sid, older := newest(page.Messages, want, since.Add(-slack).Truncate(time.Second))
		if sid != "" {
			return sid, true, nil
		}
		if older || page.NextPageUri == nil || *page.NextPageUri == "" {
			return "", false, nil
		}
		if token, number, err = nextPage(*page.NextPageUri); err != nil {
			return "", false, fmt.Errorf("find a sent message: %w", err)
		}
	}
	return "", false, fmt.Errorf("find a sent message: more than %d to one number", findPage*findPages)
}

// behind is by how much the carrier's clock is behind ours. Taken for a message from before
// the send, one that went would be sent again.
func (c *Client) behind(theirs time.Time) time.Duration {
	if theirs.IsZero() {
		return 0
	}
	return max(0, c.cfg.Now().Sub(theirs))
}

// newest looks through one page, newest first; older says that the page reaches back
// past since, so that no further one is of use.
func newest(page []api.ApiV2010Message, want string, since time.Time) (sid string, older bool) {
	for _, m := range page {
		created, err := time.Parse(time.RFC1123Z, deref(m.DateCreated))
		older = err == nil && created.Before(since)
		outbound := strings.HasPrefix(deref(m.Direction), "outbound")
		if !older && outbound && deref(m.Sid) != "" && folded(deref(m.Body)) == want {
			return *m.Sid, false
		}
	}
	return "", older
}

func folded(text string) string { return strings.Join(strings.Fields(ToGSM7(text)), " ") }

func deref(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}

// nextPage takes the two parameters that lead to the next page out of its address.
func nextPage(uri string) (token, number string, err error) {
	u, err := url.Parse(uri)
	if err != nil {
		return "", "", fmt.Errorf("address of the next page: %w", err)
	}
	q := u.Query()
	if q.Get("PageToken") == "" && q.Get("Page") == "" {
		return "", "", errors.New("address of the next page: no page in it")
	}
	return q.Get("PageToken"), q.Get("Page"), nil
}
