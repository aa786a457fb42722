package intake

import (
	"bytes"
	"image/png"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/fitcheck"
)

func TestPictureLinksCantBeGuessed(t *testing.T) {
	now := noon
	p := NewPictures(bytes.Repeat([]byte{7}, 32), "https://bot.example.com", func() time.Time { return now })
	get := func(path string) int {
		w := httptest.NewRecorder()
		p.Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, path, nil))
		if w.Code == http.StatusOK {
			if m, err := png.Decode(w.Body); err != nil || m.Bounds().Dx() != pictureWidth || w.Header().Get("Content-Type") != "image/png" {
				t.Errorf("%s is no picture: %v", path, err)
			}
		}
		return w.Code
	}
	link, ok := strings.CutPrefix(p.Link(fitcheck.TopicCurbOutside, "en"), "https://bot.example.com")
	if !ok || get(link) != http.StatusOK {
		t.Fatalf("%q does not work", link)
	}
	parts := strings.Split(link, "/")
	change := func(i int, to string) string {
		other := append([]string{}, parts...)
		other[i] = to
		return strings.Join(other, "/")
	}
	for what, path := range map[string]string{
		"another topic": change(2, "curb_inside"), "another language": change(3, "es"), "a later end": change(4, "zzzzzz"),
		"another seal": change(5, strings.Repeat("A", 43)+".png"), "no seal": change(5, ".png"), "no end of the name": strings.TrimSuffix(link, ".png"),
	} {
		if code := get(path); code != http.StatusNotFound {
			t.Errorf("%s: %d", what, code)
		}
	}
	now = now.Add(pictureDays + time.Minute)
	if code := get(link); code != http.StatusNotFound {
		t.Errorf("after its time: %d", code)
	}
	if p.Link(fitcheck.TopicName, "en") != "" {
		t.Error("a link to a picture that there is none of")
	}
	other := NewPictures(bytes.Repeat([]byte{8}, 32), "https://bot.example.com", func() time.Time { return noon })
	if fresh := strings.TrimPrefix(other.Link(fitcheck.TopicCurbOutside, "en"), "https://bot.example.com"); get(fresh) != http.StatusNotFound {
		t.Error("a link of another key works")
	}
}

// asked are the talks in which a picture comes along.
var asked = []string{"My skylight dome is cracked. Dana Fields, Duluth MN 55802. It's a house, one skylight",
	"a metal frame caps a wood box and another metal frame is screwed over the plastic. it is bent. I want the complete unit",
	"how do I measure that?"}

func TestPictureGoesWithAText(t *testing.T) {
	pictures := NewPictures(bytes.Repeat([]byte{7}, 32), "", nil)
	server := httptest.NewServer(pictures.Handler())
	t.Cleanup(server.Close)
	pictures.base = server.URL
	s, c, _ := wiredWith(t, func(o *Options) {
		o.Brain, o.Shop = realBrain(), realShop()
		sender, ok := o.Senders[conversation.SMS].(SMSSender)
		if !ok {
			t.Fatal("no sender of texts")
		}
		sender.Picture = pictures.Link
		o.Senders[conversation.SMS] = sender
	})
	s.start()
	for i, words := range asked {
		if _, err := c.Text(t.Context(), phone, words); err != nil {
			t.Fatal(err)
		}
		s.quiet()
		last := c.To(phone)[len(c.To(phone))-1]
		if with := len(last.MediaURLs) > 0; with != (i == len(asked)-1) {
			t.Fatalf("%q is answered with pictures %v: %q", words, last.MediaURLs, last.Body)
		}
	}
	link := c.To(phone)[len(c.To(phone))-1].MediaURLs[0]
	res, err := http.Get(link)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	if m, err := png.Decode(res.Body); err != nil || m.Bounds().Dx() != pictureWidth {
		t.Errorf("%s: %d, %v", link, res.StatusCode, err)
	}
}

func TestPictureGoesWithinAMail(t *testing.T) {
	pictures := NewPictures(bytes.Repeat([]byte{7}, 32), "https://bot.example.com", nil)
	m := newMailShop(t, mailBrain)
	m.sender.Picture = pictures.Mail
	m.open()
	for _, words := range asked {
		m.write(standin.Letter{Subject: "Dome", Text: words})
	}
	sent := m.office.To(dana.Address)
	raw := string(sent[len(sent)-1].Raw)
	if len(sent) != len(asked) || !strings.Contains(raw, "Content-Type: image/png") || !strings.Contains(raw, "cid:") {
		t.Errorf("%d mails; the last has no picture", len(sent))
	}
	if strings.Contains(string(sent[0].Raw), "image/png") {
		t.Error("a picture that nobody asked for")
	}
}

func TestLinkKeysAreTheSameForAll(t *testing.T) {
	s := newShop(t, nil)
	var first []byte
	for i := range 3 {
		key, err := db.LinkKey(t.Context(), s.pool, "picture")
		if err != nil || len(key) != 32 || i > 0 && !bytes.Equal(key, first) {
			t.Fatalf("key %x, %v", key, err)
		}
		first = key
	}
	other, err := db.LinkKey(t.Context(), s.pool, "mail")
	if err != nil || bytes.Equal(other, first) {
		t.Errorf("two kinds of link share a key: %v", err)
	}
}
