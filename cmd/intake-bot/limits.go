package main

import (
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"example.com/intake-bot/internal/intake"
	"example.com/intake-bot/internal/shop"
)

func limitsOf(f *shop.File) intake.Limits {
	l := f.Limits
	return intake.Limits{TextsAnHour: l.TextsAnHour, MailsAnHour: l.MailsAnHour, NewFromPrefix: l.NewNumbersAnHour,
		NewFromDomain: l.NewFromDomainAnHour, PhotosOfOne: l.Photos, PhotosADay: l.PhotosADay, SegmentsOfOne: l.SegmentsOfOne,
		SegmentsADay: l.SegmentsADay, MailsADay: l.MailsADay}
}

func keepingOf(f *shop.File) intake.Keeping {
	return intake.Keeping{Talks: f.Keep.Talks.Duration(), Photos: f.Keep.Photos.Duration(), Mail: f.Keep.RawMail.Duration()}
}

// watched is what those who watch over the program are told, at an address of its own: it
// is nobody else's business.
type watched struct {
	registry *prometheus.Registry
	counters *intake.Metrics
	server   *http.Server
}

func newWatched() *watched {
	r := prometheus.NewRegistry()
	r.MustRegister(collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	return &watched{registry: r, counters: intake.NewMetrics(r)}
}

// open serves the metrics at an address such as 127.0.0.1:9464; empty: nowhere.
func (w *watched) open(address string, gauges intake.Gauges) error {
	w.registry.MustRegister(gauges)
	if address == "" {
		return nil
	}
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return fmt.Errorf("METRICS_LISTEN: %w", err)
	}
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", promhttp.HandlerFor(w.registry, promhttp.HandlerOpts{MaxRequestsInFlight: 2, Timeout: 20 * time.Second}))
	w.server = &http.Server{Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 30 * time.Second}
	go func() { _ = w.server.Serve(listener) }() // ends with close
	return nil
}

// write leaves what would be served now in a file.
func (w *watched) write(path string) error {
	if err := prometheus.WriteToTextfile(path, w.registry); err != nil {
		return fmt.Errorf("metrics: %w", err)
	}
	return nil
}

func (w *watched) close() error {
	if w.server == nil {
		return nil
	}
	if err := w.server.Close(); err != nil && !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("stop the metrics: %w", err)
	}
	return nil
}
