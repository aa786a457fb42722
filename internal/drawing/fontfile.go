package drawing

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
)

// fontHead is how the library begins a stream that holds nothing but a font program.
const fontHead = "<</Filter/FlateDecode/Length "

// timelessFont is an embedded font with the time of its making set to none; any other
// object comes back as it is.
func timelessFont(object []byte) ([]byte, error) {
	name, dict, _ := bytes.Cut(object, []byte("\n"))
	head, packed, ok := bytes.Cut(object, []byte(">>stream\n"))
	packed, _, ends := bytes.Cut(packed, []byte("\nendstream\n\nendobj\n"))
	if !ok || !ends || !bytes.HasPrefix(dict, []byte(fontHead)) || bytes.IndexByte(head[len(name)+3:], '<') >= 0 {
		return object, nil
	}
	z, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, fmt.Errorf("drawing pdf: stream: %w", err)
	}
	font, err := io.ReadAll(z)
	if err != nil {
		return nil, fmt.Errorf("drawing pdf: stream: %w", err)
	}
	if !unmodified(font) {
		return object, nil
	}
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	w.Write(font) //nolint:errcheck // a buffer takes all
	w.Close()
	return fmt.Appendf(nil, "%s\n%s%d>>stream\n%s\nendstream\n\nendobj\n", name, fontHead, b.Len(), b.Bytes()), nil
}

// unmodified sets the time of change in a TrueType font to zero and puts its two check
// sums right (OpenType 1.9, "head" and "Calculating checksums"). It reports false for
// what is no such font.
func unmodified(font []byte) bool {
	const directory, entry = 12, 16
	if len(font) < directory || binary.BigEndian.Uint32(font) != 0x00010000 {
		return false
	}
	for i := range int(binary.BigEndian.Uint16(font[4:])) {
		row := directory + i*entry
		if row+entry > len(font) {
			return false
		}
		if string(font[row:row+4]) != "head" {
			continue
		}
		from, long := binary.BigEndian.Uint32(font[row+8:]), binary.BigEndian.Uint32(font[row+12:])
		if long < 54 || uint64(from)+uint64(long) > uint64(len(font)) {
			return false
		}
		table := font[from : from+long]
		clear(table[28:36])                      // modified
		binary.BigEndian.PutUint32(table[8:], 0) // checkSumAdjustment
		binary.BigEndian.PutUint32(font[row+4:], checksum(table))
		binary.BigEndian.PutUint32(table[8:], 0xB1B0AFBA-checksum(font))
		return true
	}
	return false
}

// checksum adds the big-endian words; the last is filled up with zeros.
func checksum(b []byte) (sum uint32) {
	for ; len(b) >= 4; b = b[4:] {
		sum += binary.BigEndian.Uint32(b)
	}
	var last [4]byte
	copy(last[:], b)
	return sum + binary.BigEndian.Uint32(last[:])
}
