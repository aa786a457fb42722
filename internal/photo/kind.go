package photo

import (
	"bytes"
	"strings"
)

// Kind is what a file is by its first bytes.
type Kind string

const (
	JPEG     Kind = "jpeg"
	PNG      Kind = "png"
	WebP     Kind = "webp"
	HEIC     Kind = "heic"
	GIF      Kind = "gif"
	AVIF     Kind = "avif"
	TIFF     Kind = "tiff"
	BMP      Kind = "bmp"
	SVG      Kind = "svg"
	Video    Kind = "video"
	PDF      Kind = "pdf"
	Document Kind = "document" // an office file or another archive
	Unknown  Kind = "unknown"
)

// signatures are of the formats' own specifications, each at the start of the file.
var signatures = [...]struct {
	start string
	kind  Kind
}{
	{"\xFF\xD8\xFF", JPEG}, {"\x89PNG\r\n\x1a\n", PNG}, {"GIF87a", GIF}, {"GIF89a", GIF},
	{"II*\x00", TIFF}, {"MM\x00*", TIFF}, {"BM", BMP}, {"%PDF-", PDF},
	{"PK\x03\x04", Document}, {"\xD0\xCF\x11\xE0", Document}, {"{\\rtf", Document},
	{"\x1A\x45\xDF\xA3", Video},                              // Matroska, WebM
	{"\x00\x00\x01\xBA", Video}, {"\x00\x00\x01\xB3", Video}, // MPEG
}

// KindOf tells what a file is from its first bytes; 512 are plenty.
func KindOf(head []byte) Kind {
	for _, s := range signatures {
		if bytes.HasPrefix(head, []byte(s.start)) {
			return s.kind
		}
	}
	switch {
	case len(head) >= 12 && string(head[:4]) == "RIFF":
		return kindOfRIFF(string(head[8:12]))
	case len(head) >= 12 && string(head[4:8]) == "ftyp":
		return kindOfBrands(head)
	case len(head) >= 8 && strings.Contains("moov mdat wide free skip", string(head[4:8])):
		return Video // QuickTime before brands
	case bytes.Contains(bytes.ToLower(head[:min(len(head), 512)]), []byte("<svg")):
		return SVG
	}
	return Unknown
}

func kindOfRIFF(form string) Kind {
	switch form {
	case "WEBP":
		return WebP
	case "AVI ":
		return Video
	}
	return Unknown
}

// kindOfBrands goes by the brands of ISO/IEC 14496-12: the major one, then, where that
// only says "some still picture", the compatible ones. HEIC's are of ISO/IEC 23008-12.
func kindOfBrands(head []byte) Kind {
	end := int(head[0])<<24 | int(head[1])<<16 | int(head[2])<<8 | int(head[3])
	end = min(max(end, 12), len(head), 128)
	kind := kindOfBrand(string(head[8:12]))
	for i := 16; kind == Unknown && i+4 <= end; i += 4 {
		kind = kindOfBrand(string(head[i : i+4]))
	}
	if kind == Unknown {
		return Video // of the many other brands nearly all are films
	}
	return kind
}

func kindOfBrand(brand string) Kind {
	switch brand {
	case "heic", "heix", "heim", "heis":
		return HEIC
	case "hevc", "hevx", "hevm", "hevs", "avis": // sequences
		return Video
	case "avif":
		return AVIF
	}
	return Unknown
}

// whyNot tells why a kind is not taken; "" where it is.
func (k Kind) whyNot() Why {
	switch k {
	case JPEG, PNG, WebP, HEIC:
		return ""
	case GIF:
		return WhyAnimated
	case Video:
		return WhyVideo
	case PDF, Document:
		return WhyDocument
	}
	return WhyOther
}
