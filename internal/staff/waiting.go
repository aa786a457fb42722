package staff

import (
	"net/http"
	"net/url"
	"strconv"
	"time"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
)

// perPage is how many leads one page lists.
const perPage = 50

// waitingPage is where the day begins: who waits, who first.
type waitingPage struct {
	frame
	Views  []view
	Find   string
	Filter []view
	Blocks []block
	More   string // address of the next page; empty: there is none
	Open   bool   // the shop is open now
	Opens  string // when it opens next
}

// view is one of the lists, or a way to narrow one.
type view struct {
	Name    string
	Address string
	Count   string
	Here    bool
}

// block is a part of a list under its own heading.
type block struct {
	Title string
	Note  string
	Lines []line
}

// lists are those beside the waiting one, by the name that their address has.
var lists = []struct {
	name, title string
	status      conversation.Status
}{
	{"hand", "In hand", ""}, {"mine", "In my hands", ""}, {"open", "Still talking", conversation.StatusOpen},
	{"quoted", "Price is out", conversation.StatusQuoted}, {"ordered", "Ordered", conversation.StatusOrdered},
	{"declined", "Came to nothing", conversation.StatusDeclined}, {"closed", "Shut", conversation.StatusClosed},
}

func (s *Server) waiting(v *visit) error {
	p := waitingPage{frame: v.frame("Who waits")}
	p.Live = true
	name := v.r.URL.Query().Get("list")
	if err := p.views(v, name); err != nil {
		return err
	}
	if hours := v.shop().Hours; hours != nil {
		p.Open = hours.Open(v.now)
		if next := hours.NextOpening(v.now); !next.IsZero() {
			p.Opens = p.At(next)
		}
	}
	fill := p.waiting
	if name != "" {
		fill = p.other
	}
	if err := fill(v, name); err != nil {
		return err
	}
	return v.show(http.StatusOK, "waiting.html", p)
}

func (p *waitingPage) views(v *visit, here string) error {
	waiting, hands, err := db.CountWaiting(v.ctx, v.s.opts.Pool)
	if err != nil {
		return err
	}
	p.Views = []view{{"Waiting", Base + "/", upTo(waiting), here == ""}}
	for _, l := range lists {
		one := view{Name: l.title, Address: Base + "/?list=" + l.name, Here: l.name == here}
		if l.name == "hand" {
			one.Count = upTo(hands)
		}
		p.Views = append(p.Views, one)
	}
	return nil
}

func upTo(n int) string {
	if n >= 1000 {
		return "1000 or more"
	}
	return strconv.Itoa(n)
}

// waiting fills the page with those who wait, what came since the shop closed apart.
func (p *waitingPage) waiting(v *visit, _ string) error {
	q := v.r.URL.Query()
	f := db.QueueFilter{Status: conversation.Status(q.Get("status")), Channel: conversation.Channel(q.Get("by")),
		AfterHours: q.Get("closed") == "1", Urgent: q.Get("urgent") == "1"}
	p.Filter = filters(q)
	lines, err := db.WaitingLeads(v.ctx, v.s.opts.Pool, f, placeOf(q), perPage+1)
	if err != nil {
		return err
	}
	if len(lines) > perPage {
		last := lines[perPage-1]
		p.More = moreAfter(q, last)
		lines = lines[:perPage]
	}
	closed, known := closedSince(v.shop().Hours, v.now)
	night := block{Title: "Since we closed", Note: "came in after " + p.At(closed)}
	day := block{Title: "Waiting"}
	for _, l := range lines {
		if known && l.WaitingSince.After(closed) && !openedLongAgo(v, closed) {
			night.Lines = append(night.Lines, newLine(l, v))
		} else {
			day.Lines = append(day.Lines, newLine(l, v))
		}
	}
	if len(night.Lines) > 0 {
		day.Title = "From before"
		p.Blocks = append(p.Blocks, night)
	}
	if len(day.Lines) > 0 || len(night.Lines) == 0 {
		p.Blocks = append(p.Blocks, day)
	}
	return nil
}

// openedLongAgo says whether the morning after a closing is over: what came in the night
// is then like anything else that waits.
func openedLongAgo(v *visit, closed time.Time) bool {
	opened := v.shop().Hours.NextOpening(closed.Add(time.Minute))
	return !opened.IsZero() && v.now.Sub(opened) > 4*time.Hour
}

// other fills the page with one of the other lists.
func (p *waitingPage) other(v *visit, name string) error {
	for _, l := range lists {
		if l.name != name {
			continue
		}
		before, _ := strconv.ParseInt(v.r.URL.Query().Get("before"), 10, 64)
		lines, err := listOf(v, name, l.status, before)
		if err != nil {
			return err
		}
		if len(lines) > perPage {
			lines = lines[:perPage]
			p.More = Base + "/?list=" + name + "&before=" + strconv.FormatInt(lines[perPage-1].ID, 10)
		}
		b := block{Title: l.title}
		for _, one := range lines {
			b.Lines = append(b.Lines, newLine(one, v))
		}
		p.Title, p.Blocks = l.title, []block{b}
		return nil
	}
	return db.ErrNotFound
}

func listOf(v *visit, name string, status conversation.Status, before int64) ([]db.QueueLine, error) {
	switch name {
	case "hand":
		return db.InHands(v.ctx, v.s.opts.Pool, 0, perPage)
	case "mine":
		return db.InHands(v.ctx, v.s.opts.Pool, v.who.ID, perPage)
	}
	return db.ByStatus(v.ctx, v.s.opts.Pool, status, before, perPage+1)
}

// filters are the ways to narrow the waiting list; each is a link that turns one on or off.
func filters(q url.Values) []view {
	var out []view
	for _, f := range []struct{ name, key, value string }{
		{"ready", "status", string(conversation.StatusReady)}, {"needs one of us", "status", string(conversation.StatusNeedsPerson)},
		{"urgent", "urgent", "1"}, {"came after hours", "closed", "1"},
		{"by text", "by", string(conversation.SMS)}, {"by mail", "by", string(conversation.Email)},
	} {
		now := url.Values{}
		for _, key := range []string{"status", "urgent", "closed", "by"} {
			if x := q.Get(key); x != "" {
				now.Set(key, x)
			}
		}
		here := now.Get(f.key) == f.value
		if now.Set(f.key, f.value); here {
			now.Del(f.key)
		}
		out = append(out, view{Name: f.name, Address: Base + "/?" + now.Encode(), Here: here})
	}
	return out
}

// placeOf reads where to take the list up again.
func placeOf(q url.Values) db.QueuePlace {
	since, err := strconv.ParseInt(q.Get("since"), 10, 64)
	id, err2 := strconv.ParseInt(q.Get("id"), 10, 64)
	if err != nil || err2 != nil {
		return db.QueuePlace{}
	}
	return db.QueuePlace{Urgent: q.Get("was") == "1", Since: time.UnixMicro(since).UTC(), ID: id}
}

func moreAfter(q url.Values, last db.QueueLine) string {
	next := url.Values{}
	for _, key := range []string{"status", "urgent", "closed", "by"} {
		if x := q.Get(key); x != "" {
			next.Set(key, x)
		}
	}
	next.Set("since", strconv.FormatInt(last.WaitingSince.UnixMicro(), 10))
	next.Set("id", strconv.FormatInt(last.ID, 10))
	if last.Urgent {
		next.Set("was", "1")
	}
	return Base + "/?" + next.Encode()
}
