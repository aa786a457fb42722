package intake

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/internal/channels/email"
	"example.com/intake-bot/internal/channels/email/standin"
	texts "example.com/intake-bot/internal/channels/sms/standin"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/db"
	"example.com/intake-bot/internal/photo"
)

// picture is a made-up photo: a bright frame with sharp edges on a roof, different for
// each seed. light scales its brightness; blur smooths it.
func picture(t *testing.T, seed uint64, w, h int, light float64, blur bool) []byte {
	t.Helper()
	return pictureOf(seed, w, h, light, blur)
}

func pictureOf(seed uint64, w, h int, light float64, blur bool) []byte {
	r := rand.New(rand.NewPCG(seed, seed))
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	var tiles [12][9]uint8
	for i := range tiles {
		for j := range tiles[i] {
			tiles[i][j] = uint8(30 + r.IntN(220))
		}
	}
	for y := range h {
		for x := range w {
			v := float64(tiles[x*12/w][y*9/h])
			if blur {
				v = 90 + 60*float64(x)/float64(w) + 40*float64(y)/float64(h)
			} else if (x/3+y/3)%2 == 0 {
				v *= 0.8
			}
			c := uint8(v * light)
			m.SetRGBA(x, y, color.RGBA{c, c, c, 255})
		}
	}
	var b bytes.Buffer
	_ = jpeg.Encode(&b, m, &jpeg.Options{Quality: 90}) // a buffer takes it all
	return b.Bytes()
}

func movingPicture(t *testing.T) []byte {
	t.Helper()
	frame := image.NewPaletted(image.Rect(0, 0, 100, 100), color.Palette{color.Black, color.White})
	var b bytes.Buffer
	if err := gif.EncodeAll(&b, &gif.GIF{Image: []*image.Paletted{frame, frame}, Delay: []int{10, 10}}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// photoShop is wired to the stand-in carrier and opens what is sent.
func photoShop(t *testing.T, change func(*PhotoRoom)) (*shop, *texts.Carrier) {
	t.Helper()
	s, c, _ := wiredWith(t, func(o *Options) {
		o.Brain, o.Shop = realBrain(), realShop()
		o.Photos = &PhotoRoom{Lab: photo.NewLab(photo.Limits{}), Wait: 3 * time.Minute, Fetcher: photo.NewFetcher(photo.FetchSettings{
			User: account, Password: token, CredentialHosts: []string{"127.0.0.1"}, Loopback: true})}
		if change != nil {
			change(o.Photos)
		}
	})
	s.start()
	return s, c
}

// send texts pictures to the shop and gives what it says.
func sendPictures(t *testing.T, s *shop, c *texts.Carrier, words string, files ...texts.File) string {
	t.Helper()
	before := len(c.To(phone))
	if _, err := c.Text(t.Context(), phone, words, files...); err != nil {
		t.Fatal(err)
	}
	s.until("it is answered", func() bool { return len(c.To(phone)) > before })
	s.quiet()
	var said []string
	for _, m := range c.To(phone)[before:] {
		said = append(said, m.Body)
	}
	return strings.Join(said, "\n")
}

func jpegFile(data []byte) texts.File { return texts.File{Type: "image/jpeg", Data: data} }

func TestPhotosOfTexts(t *testing.T) {
	for _, c := range []struct {
		what  string
		file  texts.File
		says  string
		state string
	}{
		{"a good one", jpegFile(picture(t, 1, 1200, 900, 1, false)), "the photo is here", "kept"},
		{"too dark", jpegFile(picture(t, 2, 1200, 900, 0.15, false)), "too dark", "kept too_dark"},
		{"blurred", jpegFile(picture(t, 3, 1200, 900, 1, true)), "blurred", "kept blurred"},
		{"too small", jpegFile(picture(t, 4, 200, 150, 1, false)), "too small", "kept too_small"},
		{"moving", texts.File{Type: "image/gif", Data: movingPicture(t)}, "moving pictures", "refused animated"},
		{"a document", texts.File{Type: "application/pdf", Data: []byte("%PDF-1.7 of the roof")}, "documents", "refused document"},
		{"a film", texts.File{Type: "video/mp4", Data: []byte("\x00\x00\x00\x18ftypmp42\x00\x00\x00\x00mp42isom")}, "videos", "refused video"},
		{"cut off", jpegFile(picture(t, 5, 1200, 900, 1, false)[:3000]), "did not arrive whole", "refused broken"},
		{"no picture that calls itself one", jpegFile([]byte("<html>hello</html>")), "kind of file", "refused other"},
	} {
		t.Run(c.what, func(t *testing.T) {
			s, carrier := photoShop(t, nil)
			said := sendPictures(t, s, carrier, "My dome is cracked", c.file)
			var state string
			var files, told int
			s.one(`SELECT concat_ws(' ', state, coalesce(why, look)), (SELECT count(*) FROM photo_files), told::int FROM photos`, &state, &files, &told)
			if !strings.Contains(said, c.says) || state != c.state {
				t.Errorf("says %q, kept as %s; want %q, %s", said, state, c.says, c.state)
			}
			kept := strings.HasPrefix(c.state, "kept")
			if (files == 1) != kept || (told == 1) != (c.state != "kept") {
				t.Errorf("%d files, told %d", files, told)
			}
			var listed int
			s.one(`SELECT jsonb_array_length(record -> 'photos') FROM lead_record`, &listed)
			if (listed == 1) != kept {
				t.Errorf("the lead lists %d photos", listed)
			}
		})
	}
}

func TestPhotoIsKeptSafe(t *testing.T) {
	s, c := photoShop(t, nil)
	plain := picture(t, 1, 3000, 2250, 1, false)
	exif := append([]byte{0xFF, 0xE1, 0, 40}, "Exif\x00\x00 47.1 N 92.1 W, at their home......"[:38]...)
	raw := slices.Concat(plain[:2], exif, plain[2:]) // behind the start of the image
	sendPictures(t, s, c, "My dome is cracked", jpegFile(raw))
	var ref string
	var width, height int
	s.one(`SELECT c.ref, (r.record -> 'photos' -> 0 ->> 'width')::int, (r.record -> 'photos' -> 0 ->> 'height')::int
		FROM conversations c JOIN lead_record r USING (ref)`, &ref, &width, &height)
	for _, small := range []bool{false, true} {
		kept, err := db.PhotoFile(t.Context(), s.pool, ref, 1, 1, small)
		if err != nil {
			t.Fatal(err)
		}
		config, err := jpeg.DecodeConfig(bytes.NewReader(kept))
		if err != nil || !small && (config.Width != width || config.Height != height) || bytes.Contains(kept, []byte("Exif")) {
			t.Errorf("small %v: %d x %d (%v), the lead says %d x %d", small, config.Width, config.Height, err, width, height)
		}
	}
}

// The same photo again is said so once; a second doubtful one is not asked for anew.
func TestSamePhotoAgain(t *testing.T) {
	s, c := photoShop(t, nil)
	one := jpegFile(picture(t, 1, 1200, 900, 1, false))
	sendPictures(t, s, c, "My dome is cracked", one)
	if said := sendPictures(t, s, c, "again", one); !strings.Contains(said, "same photo as before") {
		t.Errorf("says %q", said)
	}
	if said := sendPictures(t, s, c, "and this", jpegFile(picture(t, 2, 1200, 900, 0.15, false))); strings.Contains(said, "too dark") {
		t.Errorf("asks twice for a better one: %q", said)
	}
	var looks string
	s.one(`SELECT string_agg(coalesce(look, 'good'), ' ' ORDER BY id) FROM photos`, &looks)
	if looks != "good same too_dark" {
		t.Errorf("looks %s", looks)
	}
}

func TestPhotosAreHadFromTheCarrierAlone(t *testing.T) {
	s, _ := photoShop(t, func(r *PhotoRoom) { r.Wait = 200 * time.Millisecond })
	s.receive(Inbound{Channel: conversation.SMS, ID: "SM1", From: phone, Text: "look", Photos: []db.PhotoSource{
		{Source: "http://169.254.169.254/latest/meta-data"}, {Source: "https://internal.example/x.jpg"}}})
	s.quiet()
	s.until("both are given up", func() bool {
		var n int
		s.one(`SELECT count(*) FROM photos WHERE state = 'gone'`, &n)
		return n == 2
	})
}

func TestPhotosAreClearedAtTheCarrier(t *testing.T) {
	s, c := photoShop(t, func(r *PhotoRoom) { r.Delete = true })
	sendPictures(t, s, c, "My dome is cracked", jpegFile(picture(t, 1, 1200, 900, 1, false)))
	var source string
	s.one(`SELECT source FROM photos`, &source)
	f := photo.NewFetcher(photo.FetchSettings{User: account, Password: token, CredentialHosts: []string{"127.0.0.1"}, Loopback: true})
	s.until("it is gone there", func() bool { _, err := f.Fetch(t.Context(), source); return err != nil })
}

// A carrier that is slow holds the answer up for a while only; the photo comes later.
func TestSlowPhotoDoesNotHoldTheTalk(t *testing.T) {
	s, c := photoShop(t, func(r *PhotoRoom) { r.Wait = 300 * time.Millisecond; r.Fetcher = nil })
	began := time.Now()
	said := sendPictures(t, s, c, "My dome is cracked", jpegFile(picture(t, 1, 1200, 900, 1, false)))
	if !strings.Contains(said, "the photo is here") {
		t.Errorf("says %q", said)
	}
	t.Logf("answered after %s", time.Since(began).Round(time.Millisecond))
}

func TestPhotosOfMails(t *testing.T) {
	m := newMailShop(t, func(o *Options) {
		mailBrain(o)
		o.Photos = labOnly()
	})
	m.open()
	m.write(standin.Letter{Subject: "Dome", Text: "My dome is cracked", Files: []standin.File{
		{Name: "a.jpg", Type: "image/jpeg", Data: picture(t, 1, 1200, 900, 1, false)},
		{Name: "b.jpg", Type: "image/jpeg", Data: picture(t, 2, 1200, 900, 0.15, false)},
		{Name: "plan.pdf", Type: "application/pdf", Data: []byte("%PDF-1.7")},
		{Name: "dana.vcf", Type: "text/vcard", Data: []byte("BEGIN:VCARD")},
	}})
	var states string
	var photos, originals int
	m.one(`SELECT string_agg(concat_ws(' ', state, coalesce(why, look)), ', ' ORDER BY k) FROM photos`, &states)
	m.one(`SELECT (SELECT (value #>> '{}')::int FROM facts WHERE topic = 'photos'), (SELECT count(*) FROM photo_files WHERE original IS NOT NULL)`, &photos, &originals)
	said := strings.Join(m.said(), "\n")
	if states != "kept, kept too_dark, refused document" || photos != 2 || originals != 0 {
		t.Errorf("%s; %d photos, %d originals", states, photos, originals)
	}
	if !strings.Contains(said, "too dark") || !strings.Contains(said, "documents") {
		t.Errorf("says %q", said)
	}
}

func TestTooLargeAMail(t *testing.T) {
	m := newMailShop(t, mailBrain)
	m.open()
	// As the watcher hands it over: the header alone.
	in := []byte(strings.ReplaceAll(fmt.Sprintf("From: dana@example.com\nTo: %s\nMessage-ID: <big@example.com>\nSubject: Photos\nContent-Type: multipart/mixed; boundary=b\n\n", shopMail), "\n", "\r\n"))
	if err := m.TakeMail(t.Context(), email.Incoming{Raw: in, TooLarge: true, Size: 50 << 20, Received: noon}); err != nil {
		t.Fatal(err)
	}
	m.quiet()
	if said := m.said(); len(said) != 1 || !strings.Contains(said[0], "too large") {
		t.Errorf("says %q", said)
	}
}
