package photo

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image/jpeg"
	"image/png"

	"golang.org/x/image/webp"
)

// Header is what a file says of itself before any pixel is read.
type Header struct {
	Kind          Kind
	Width, Height int // as stored, before it is turned upright
}

var (
	errNoSize   = errors.New("no size in the header")
	errAnimated = errors.New("several frames")
)

// ReadHeader tells kind and size, and refuses what is no still picture. It reads no
// pixels and takes time and memory in proportion to the file's metadata only.
func ReadHeader(file []byte) (Header, error) {
	if len(file) == 0 {
		return Header{}, refuse(WhyEmpty, Unknown, nil)
	}
	h := Header{Kind: KindOf(file)}
	if why := h.Kind.whyNot(); why != "" {
		return h, refuse(why, h.Kind, nil)
	}
	var err error
	h.Width, h.Height, err = sizeOf(h.Kind, file)
	switch {
	case errors.Is(err, errAnimated):
		return h, refuse(WhyAnimated, h.Kind, nil)
	case err == nil && (h.Width <= 0 || h.Height <= 0):
		return h, refuse(WhyBroken, h.Kind, errNoSize)
	case err != nil:
		return h, refuse(WhyBroken, h.Kind, err)
	}
	return h, nil
}

func sizeOf(kind Kind, file []byte) (int, int, error) {
	r := bytes.NewReader(file)
	switch kind {
	case JPEG:
		c, err := jpeg.DecodeConfig(r)
		return c.Width, c.Height, err
	case PNG:
		if pngAnimated(file) {
			return 0, 0, errAnimated
		}
		c, err := png.DecodeConfig(r)
		return c.Width, c.Height, err
	case WebP:
		if webpAnimated(file) {
			return 0, 0, errAnimated
		}
		c, err := webp.DecodeConfig(r)
		return c.Width, c.Height, err
	}
	return heifSize(file)
}

// pngAnimated looks for an acTL chunk before the first data (APNG, PNG third edition 11.3.6.1).
func pngAnimated(file []byte) bool {
	const chunkFrame = 12 // length, type, check sum
	for at := 8; at+8 <= len(file); {
		length := int64(binary.BigEndian.Uint32(file[at:]))
		switch string(file[at+4 : at+8]) {
		case "acTL":
			return true
		case "IDAT", "IEND":
			return false
		}
		if length > int64(len(file)) {
			return false
		}
		at += int(length) + chunkFrame
	}
	return false
}

// webpAnimated reads the animation bit of the extended header (RFC 9649, section 2.7.1).
func webpAnimated(file []byte) bool {
	const animation = 1 << 1
	return len(file) > 20 && string(file[12:16]) == "VP8X" && file[20]&animation != 0
}

// memory estimates the bytes that decoding takes: JPEG with the coefficients of a
// progressive one, PNG with 16 bits a channel, WebP lossless; HEIC as measured (460 MiB
// for 12 megapixels).
func (h Header) memory() int64 {
	perPixel := int64(8)
	if h.Kind == HEIC {
		perPixel = 40
	}
	return int64(h.Width) * int64(h.Height) * perPixel
}
