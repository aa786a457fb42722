package standin

import (
	"net/url"
	"strconv"
	"time"
)

// Callbacks is how the carrier reports what became of a message. The zero value
// reports queued, sent and delivered, at once and in that order.
type Callbacks struct {
	Order  []string // the statuses to post, in this order; what Lose undoes is changed
	Before time.Duration
	Repeat int // how many more times each is posted
	Off    bool
}

// SetCallbacks changes how messages from now on are reported.
func (c *Carrier) SetCallbacks(p Callbacks) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.plan = p
}

func (c *Carrier) callbackPlan() Callbacks {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.plan
}

// report brings a message along and posts about it, in the background until Close.
func (c *Carrier) report(m Message) {
	plan := c.callbackPlan()
	order := plan.Order
	if len(order) == 0 {
		order = []string{"queued", "sent", "delivered"}
	}
	code := c.faults.lostCode(m.To)
	c.reports.Go(func() {
		for _, status := range order {
			c.reportOne(m, plan, status, code)
		}
	})
}

func (c *Carrier) reportOne(m Message, plan Callbacks, status string, lost int) {
	select {
	case <-time.After(plan.Before):
	case <-c.ctx.Done():
		return
	}
	code := 0
	if status == "delivered" && lost != 0 {
		status, code = "undelivered", lost
	}
	c.setStatus(m.ID, status, code)
	if plan.Off || m.callback == "" {
		return
	}
	for range plan.Repeat + 1 {
		// What the bot answers changes nothing: the carrier does not ask twice.
		_, _ = c.post(c.ctx, m.callback, c.statusForm(m, status, code))
	}
}

// Settle waits until all reports of what was sent so far are posted. Nothing may be sent
// meanwhile.
func (c *Carrier) Settle() { c.reports.Wait() }

// PostStatus posts one status of a message that was sent, out of any order.
func (c *Carrier) PostStatus(m Message, status string, code int) (int, error) {
	return c.post(c.ctx, m.callback, c.statusForm(m, status, code))
}

func (c *Carrier) statusForm(m Message, status string, code int) url.Values {
	f := url.Values{
		"MessageSid": {m.ID}, "SmsSid": {m.ID}, "MessageStatus": {status}, "SmsStatus": {status},
		"AccountSid": {c.cfg.AccountID}, "From": {m.From}, "To": {m.To}, "ApiVersion": {"2010-04-01"},
	}
	if code != 0 {
		f.Set("ErrorCode", strconv.Itoa(code))
	}
	return f
}
