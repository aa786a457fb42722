package photo

import (
	"encoding/binary"
	"errors"
)

var errBoxes = errors.New("boxes don't fit their file")

// heifSize finds the largest size that a HEIF file speaks of: in the image properties
// (ispe, ISO/IEC 23008-12 section 6.5.3) and in the stream parameters of its codec (hvcC,
// ISO/IEC 14496-15), which is what a decoder goes by. A picture cut into tiles has its
// whole size in one ispe.
func heifSize(file []byte) (int, int, error) {
	var s heifSearch
	if err := s.walk(file, 0); err != nil {
		return 0, 0, err
	}
	if s.width == 0 {
		return 0, 0, errNoSize
	}
	return s.width, s.height, nil
}

type heifSearch struct {
	width, height int
	boxes         int
}

const (
	heifDepth = 6
	heifBoxes = 20_000
)

func (s *heifSearch) walk(b []byte, depth int) error {
	for len(b) >= 8 {
		if s.boxes++; s.boxes > heifBoxes {
			return errBoxes
		}
		kind, body, rest, err := nextBox(b)
		if err != nil {
			return err
		}
		if err := s.look(kind, body, depth); err != nil {
			return err
		}
		b = rest
	}
	return nil
}

func (s *heifSearch) look(kind string, body []byte, depth int) error {
	switch kind {
	case "meta": // a full box: four bytes of version and flags
		if depth < heifDepth && len(body) >= 4 {
			return s.walk(body[4:], depth+1)
		}
	case "iprp", "ipco":
		if depth < heifDepth {
			return s.walk(body, depth+1)
		}
	case "moov":
		return errAnimated
	case "ispe":
		if len(body) >= 12 {
			s.larger(uint64(binary.BigEndian.Uint32(body[4:])), uint64(binary.BigEndian.Uint32(body[8:])))
		}
	case "hvcC":
		s.larger(hevcSize(body))
	}
	return nil
}

func (s *heifSearch) larger(width, height uint64) {
	const most = 1 << 24 // past any limit, and the product fits
	width, height = min(width, most), min(height, most)
	if width*height > uint64(s.width)*uint64(s.height) {
		s.width, s.height = int(width), int(height)
	}
}

// nextBox cuts the first box off: its type, what it holds, and what follows it.
func nextBox(b []byte) (kind string, body, rest []byte, err error) {
	size, head := uint64(binary.BigEndian.Uint32(b)), uint64(8)
	kind = string(b[4:8])
	switch size {
	case 0: // to the end of the file
		size = uint64(len(b))
	case 1:
		if len(b) < 16 {
			return "", nil, nil, errBoxes
		}
		size, head = binary.BigEndian.Uint64(b[8:]), 16
	}
	if size < head || size > uint64(len(b)) {
		if kind == "mdat" || kind == "free" { // pixels cut off: the decoder will say so
			return kind, nil, nil, nil
		}
		return "", nil, nil, errBoxes
	}
	return kind, b[head:size], b[size:], nil
}
