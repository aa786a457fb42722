package intake

import (
	"time"

	"github.com/prometheus/client_golang/prometheus"

	"example.com/intake-bot/internal/conversation"
)

// Metrics count what this process does. They bear no words, numbers or addresses.
type Metrics struct {
	received *prometheus.CounterVec // by channel
	mails    *prometheus.CounterVec // by what became of them
	sends    *prometheus.CounterVec // by channel and result
	segments prometheus.Counter
	photos   *prometheus.CounterVec // by what became of them
	turns    prometheus.Histogram
	held     *prometheus.CounterVec // talks held back, by reason
}

// NewMetrics makes the counters, and registers them unless where is nil.
func NewMetrics(where prometheus.Registerer) *Metrics {
	counter := func(name, help string, labels ...string) *prometheus.CounterVec {
		return prometheus.NewCounterVec(prometheus.CounterOpts{Namespace: "intake", Name: name, Help: help}, labels)
	}
	m := &Metrics{
		received: counter("messages_received_total", "Messages of customers that were kept.", "channel"),
		mails:    counter("mails_taken_total", "Mails taken in, by what became of them.", "kind"),
		sends:    counter("sends_total", "Calls to hand a message over, by result.", "channel", "result"),
		photos:   counter("photos_total", "Photos opened, by result.", "result"),
		held:     counter("talks_held_back_total", "Turns not made because of a limit.", "reason"),
		segments: prometheus.NewCounter(prometheus.CounterOpts{Namespace: "intake", Name: "text_segments_total", Help: "Segments of texts handed over."}),
		turns: prometheus.NewHistogram(prometheus.HistogramOpts{Namespace: "intake", Name: "turn_seconds", Help: "Time of a turn, from its transaction's begin to its end.",
			Buckets: []float64{.001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 2.5, 5}}),
	}
	if where != nil {
		where.MustRegister(m.received, m.mails, m.sends, m.photos, m.held, m.segments, m.turns)
	}
	return m
}

func (m *Metrics) sent(c conversation.Channel, result string) {
	m.sends.WithLabelValues(string(c), result).Inc()
}

func (m *Metrics) turned(began time.Time) { m.turns.Observe(time.Since(began).Seconds()) }
