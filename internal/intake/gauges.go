package intake

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/prometheus/client_golang/prometheus"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/db"
)

// Gauges tell how things stand in the database, which is the same for all processes, and
// at the mailbox. They are asked for anew each time that somebody looks.
type Gauges struct {
	Pool *pgxpool.Pool
	// Mailbox is how the watching of the mailbox goes; nil: there is none.
	Mailbox func() email.Health
	// SegmentsADay is the day's budget; 0: none.
	SegmentsADay func() int
	// Today is when the day began, for the budget.
	Today func() time.Time
}

func gauge(name, help string, labels ...string) *prometheus.Desc {
	return prometheus.NewDesc("intake_"+name, help, labels, nil)
}

var (
	gaugeUp         = gauge("database_up", "Whether the database answers.")
	gaugeOldest     = gauge("oldest_unhandled_seconds", "Age of the oldest message that no turn has taken.")
	gaugeUnhandled  = gauge("unhandled_messages", "Messages that no turn has taken.")
	gaugeUnsent     = gauge("unsent_messages", "Messages that wait to be sent, by state.", "state")
	gaugeOldestSend = gauge("oldest_unsent_seconds", "By how long the sending most overdue is late.")
	gaugeLeads      = gauge("leads", "Leads, by status.", "status")
	gaugeJobs       = gauge("jobs", "Jobs, by queue and state.", "queue", "state")
	gaugeSegments   = gauge("text_segments_today", "Segments of texts sent today.")
	gaugeBudget     = gauge("text_segments_budget", "Segments that may be sent a day; 0 for no limit.")
	gaugeMails      = gauge("mails_today", "Mails sent to customers today.")
	gaugePhotos     = gauge("photos_to_open", "Photos that are still to be opened.")
	gaugeMailbox    = gauge("mailbox_connected", "Whether this process watches the mailbox.")
	gaugeMailWaits  = gauge("mailbox_waiting", "Mails that waited when the mailbox was last looked at.")
	gaugeMailLag    = gauge("mailbox_emptied_seconds", "Time since the mailbox was last seen empty by this process.")
	gaugeUnreadable = gauge("mailbox_unreadable", "Mails that the mail server does not give.")
)

// Describe lists them.
func (g Gauges) Describe(to chan<- *prometheus.Desc) {
	for _, d := range []*prometheus.Desc{gaugeUp, gaugeOldest, gaugeUnhandled, gaugeUnsent, gaugeOldestSend, gaugeLeads, gaugeJobs,
		gaugeSegments, gaugeBudget, gaugeMails, gaugePhotos, gaugeMailbox, gaugeMailWaits, gaugeMailLag, gaugeUnreadable} {
		to <- d
	}
}

// Collect asks.
func (g Gauges) Collect(to chan<- prometheus.Metric) {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	put := func(d *prometheus.Desc, v float64, labels ...string) {
		to <- prometheus.MustNewConstMetric(d, prometheus.GaugeValue, v, labels...)
	}
	g.mailbox(put)
	put(gaugeBudget, float64(g.SegmentsADay()))
	f, err := db.ReadGauges(ctx, g.Pool, g.Today())
	if err != nil {
		put(gaugeUp, 0)
		return
	}
	put(gaugeUp, 1)
	put(gaugeOldest, f.OldestUnhandled.Seconds())
	put(gaugeUnhandled, float64(f.Unhandled))
	put(gaugeOldestSend, f.OldestUnsent.Seconds())
	put(gaugeSegments, float64(f.Spent.Segments))
	put(gaugeMails, float64(f.Spent.Mails))
	put(gaugePhotos, float64(f.PhotosToOpen))
	for state, n := range f.Unsent {
		put(gaugeUnsent, float64(n), state)
	}
	for status, n := range f.Leads {
		put(gaugeLeads, float64(n), status)
	}
	for _, j := range f.Jobs {
		put(gaugeJobs, float64(j.N), j.Queue, j.State)
	}
}

func (g Gauges) mailbox(put func(*prometheus.Desc, float64, ...string)) {
	if g.Mailbox == nil {
		return
	}
	h := g.Mailbox()
	connected := 0.0
	if h.Connected {
		connected = 1
	}
	put(gaugeMailbox, connected)
	put(gaugeMailWaits, float64(h.Waiting))
	put(gaugeUnreadable, float64(h.Unreadable))
	if h.Connected && !h.Emptied.IsZero() {
		put(gaugeMailLag, time.Since(h.Emptied).Seconds())
	}
}
