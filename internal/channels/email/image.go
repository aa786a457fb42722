package email

import (
	"bytes"
	"image"
	_ "image/gif" // headers only
	_ "image/jpeg"
	_ "image/png"
	"net/http"
	"strings"

	"github.com/emersion/go-message"
	_ "golang.org/x/image/webp"
)

const (
	// minSide: pictures under 64 x 64 are icons and tracking pixels: the outside contract.
	minSide = 64
	// logoPixels and logoBytes: what is larger than either is hardly a logo. Common
	// practice, no source.
	logoPixels = 300_000
	logoBytes  = 60_000
)

// image reads a picture. One past the limits is listed among the attachments.
func (w *walker) image(e *message.Entity, kind, name string, inline bool) {
	if len(w.images) >= w.limits.Photos*2 {
		w.cut = true
		w.file(e, kind, name)
		return
	}
	data := w.read(e.Body, w.limits.PhotoBytes)
	id := strings.ToLower(strings.Trim(oneLine(e.Header.Get("Content-Id")), "<> "))
	p := Photo{
		Name: name, Type: contentType(data, kind), Data: data, ContentID: id, Inline: inline,
	}
	if c, _, err := image.DecodeConfig(bytes.NewReader(data)); err == nil {
		p.Width, p.Height = c.Width, c.Height
	}
	w.images = append(w.images, p)
}

// contentType goes by content; what Go can't tell, HEIC, by its brand (ISO 14496-12
// file type box), else by what the sender's program says.
func contentType(data []byte, claimed string) string {
	if t := http.DetectContentType(data); strings.HasPrefix(t, "image/") {
		return t
	}
	if len(data) > 12 && string(data[4:8]) == "ftyp" {
		switch string(data[8:12]) {
		case "heic", "heix", "heim", "heis", "mif1", "msf1":
			return "image/heic"
		}
	}
	return claimed
}

func pictureName(name string) bool {
	name = strings.ToLower(name)
	for _, end := range []string{".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif"} {
		if strings.HasSuffix(name, end) {
			return true
		}
	}
	return false
}

// photos tells photos from logos, icons and pictures of earlier mails.
func (w *walker) photos(n stripped) ([]Photo, []Attachment) {
	zones := w.zones(n)
	var photos []Photo
	files := w.files
	kept := map[int]bool{}
	for i, p := range w.images {
		already, again := w.twins(i, kept)
		switch {
		case !photoType(p.Type):
			files = append(files, Attachment{Name: p.Name, Type: p.Type, Size: len(p.Data)})
		case p.icon() || already || p.decorates(zones[p.ContentID], again):
		case len(photos) >= w.limits.Photos:
			w.cut = true
			files = append(files, Attachment{Name: p.Name, Type: p.Type, Size: len(p.Data)})
		default:
			kept[i] = true
			photos = append(photos, p)
		}
	}
	return photos, files
}

// twins reports whether the same picture was kept already, and whether it comes again.
func (w *walker) twins(i int, kept map[int]bool) (already, again bool) {
	for j, other := range w.images {
		if j != i && bytes.Equal(other.Data, w.images[i].Data) {
			already, again = already || kept[j], true
		}
	}
	return already, again
}

// zones says where inline pictures stand. Where the plain form was read, the HTML form
// has to be told apart as well, but only if there are such pictures.
func (w *walker) zones(n stripped) map[string]zone {
	if len(n.pictures) > 0 || w.top == nil || len(w.top.html) == 0 {
		return n.pictures
	}
	for _, p := range w.images {
		if p.ContentID != "" {
			return strip(rendered(w.top.html), "").pictures
		}
	}
	return n.pictures
}

func photoType(t string) bool {
	switch t {
	case "image/jpeg", "image/png", "image/webp", "image/heic", "image/heif", "image/jpg":
		return true
	}
	return false
}

func (p Photo) icon() bool {
	return p.Width > 0 && (p.Width < minSide || p.Height < minSide)
}

// decorates reports whether a picture belongs to an earlier mail or to a signature: it
// stands there, or a small one comes twice in one mail.
func (p Photo) decorates(z zone, repeated bool) bool {
	small := p.Width*p.Height <= logoPixels && len(p.Data) <= logoBytes
	switch {
	case z == quote:
		return true
	case z == signature || z == legal:
		return small
	}
	return repeated && small
}
