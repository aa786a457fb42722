package intake

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/drawing"
	"example.com/intake-bot/internal/fitcheck"
)

// pictureWidth is the width in pixels of a drawing for a phone: twice that of its screen.
const pictureWidth = 720

// pictureDays is for how long the link of a picture works: a carrier fetches it at once,
// but may try again for days.
const pictureDays = 3 * 24 * time.Hour

// Pictures shows people how to measure: as a link that the carrier follows, or within a
// mail. Each picture is drawn once.
type Pictures struct {
	key   []byte
	base  string // our public address
	clock func() time.Time

	mu    sync.Mutex
	drawn map[string][]byte
}

// NewPictures makes the links' maker and taker; key is of db.LinkKey.
func NewPictures(key []byte, publicURL string, clock func() time.Time) *Pictures {
	if clock == nil {
		clock = time.Now
	}
	return &Pictures{key: key, base: publicURL, clock: clock, drawn: map[string][]byte{}}
}

const picturePath = "/picture/"

// Link is the public address of a drawing, for a while; empty where there is none of the
// topic.
func (p *Pictures) Link(topic fitcheck.Topic, language string) string {
	if !drawing.Has(topic) {
		return ""
	}
	until := strconv.FormatInt(p.clock().Add(pictureDays).Unix(), 36)
	return p.base + picturePath + string(topic) + "/" + language + "/" + until + "/" + seal(p.key, "picture", string(topic), language, until) + ".png"
}

// Mail is the drawing as part of a mail.
func (p *Pictures) Mail(topic fitcheck.Topic, language string) (email.Picture, error) {
	png, err := p.draw(topic, language)
	if err != nil {
		return email.Picture{}, err
	}
	d, err := drawing.HowTo(topic, language)
	if err != nil {
		return email.Picture{}, err
	}
	return email.Picture{ID: string(topic) + "@picture", Type: "image/png", Name: string(topic) + ".png", Alt: d.Title(), Data: png}, nil
}

func (p *Pictures) draw(topic fitcheck.Topic, language string) ([]byte, error) {
	name := string(topic) + " " + language
	p.mu.Lock()
	defer p.mu.Unlock()
	if png, ok := p.drawn[name]; ok {
		return png, nil
	}
	d, err := drawing.HowTo(topic, language)
	if err != nil {
		return nil, err
	}
	png, err := d.PNG(pictureWidth)
	if err != nil {
		return nil, fmt.Errorf("draw %s: %w", topic, err)
	}
	p.drawn[name] = png
	return png, nil
}

// Handler gives the drawings to whoever has a link that still works.
func (p *Pictures) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET "+picturePath+"{topic}/{language}/{until}/{seal}", p.serve)
	return mux
}

func (p *Pictures) serve(w http.ResponseWriter, r *http.Request) {
	topic, language, until := r.PathValue("topic"), r.PathValue("language"), r.PathValue("until")
	given, ok := strings.CutSuffix(r.PathValue("seal"), ".png")
	// The seal first: nothing is drawn, nor any difference shown, for a guess.
	if !ok || !sealed(p.key, given, "picture", topic, language, until) {
		http.NotFound(w, r)
		return
	}
	end, err := strconv.ParseInt(until, 36, 64)
	if err != nil || p.clock().Unix() > end {
		http.NotFound(w, r)
		return
	}
	png, err := p.draw(fitcheck.Topic(topic), language)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	h := w.Header()
	h.Set("Content-Type", "image/png")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cache-Control", "private, max-age=86400")
	_, _ = w.Write(png) // whoever hung up asks again
}
