package place

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"strings"
)

// The packed table is one deflate stream of columns, numbers as varints:
//
//	zones, counties, town names: count, bytes, names joined by line feeds
//	towns, by state and key: state, zone, other zone, county, population, latitude, longitude
//	ZIP codes, ascending: count; step from the last, town, zone, other zone, county, latitude, longitude
//
// A ZIP code's zone and county are 0 where they are the town's, else the number and one;
// its position is relative to the town's. Positions are signed hundredths of a degree.

var errTable = errors.New("place table is damaged")

func decode(packed []byte) (*table, error) {
	raw, err := io.ReadAll(flate.NewReader(bytes.NewReader(packed)))
	if err != nil {
		return nil, fmt.Errorf("unpack place table: %w", err)
	}
	r := &columnReader{b: raw}
	t := &table{zones: r.list(), counties: r.list()}
	r.readTowns(t)
	r.readZIPs(t)
	if r.bad || len(r.b) != 0 {
		return nil, errTable
	}
	t.index()
	return t, nil
}

type columnReader struct {
	b   []byte
	bad bool
}

func (r *columnReader) uint() uint64 {
	v, n := binary.Uvarint(r.b)
	if n <= 0 {
		r.bad = true
		return 0
	}
	r.b = r.b[n:]
	return v
}

func (r *columnReader) int() int64 {
	v, n := binary.Varint(r.b)
	if n <= 0 {
		r.bad = true
		return 0
	}
	r.b = r.b[n:]
	return v
}

// below reads a number that must be under limit: an index into a list.
func (r *columnReader) below(limit int) uint64 {
	v := r.uint()
	if v >= uint64(limit) {
		r.bad = true
		return 0
	}
	return v
}

// joined reads a list as it stands: its count and its names between line feeds.
func (r *columnReader) joined() (int, string) {
	count, size := r.uint(), r.uint()
	if size > uint64(len(r.b)) || count > size+1 {
		r.bad = true
		return 0, ""
	}
	s := string(r.b[:size])
	r.b = r.b[size:]
	return int(count), s
}

func (r *columnReader) list() []string {
	count, s := r.joined()
	names := strings.Split(s, "\n")
	r.bad = r.bad || len(names) != count
	return names
}

func (r *columnReader) readTowns(t *table) {
	count, names := r.joined()
	t.names, t.towns = names, make([]town, count)
	t.keys = make([]byte, 0, len(names))
	start := 0
	for i := range t.towns {
		end := lineEnd(names, start)
		x := &t.towns[i]
		x.name, x.nameEnd, x.key = uint32(start), uint32(end), uint32(len(t.keys))
		t.keys = appendKey(t.keys, names[start:end])
		x.keyEnd = uint32(len(t.keys))
		start = min(end+1, len(names))
	}
	for i := range t.towns {
		t.towns[i].state = uint8(r.below(len(states)))
	}
	for i := range t.towns {
		t.towns[i].zone = uint8(r.below(len(t.zones)))
	}
	for i := range t.towns {
		t.towns[i].zoneElse = uint8(r.below(len(t.zones)))
	}
	for i := range t.towns {
		t.towns[i].county = uint16(r.below(len(t.counties)))
	}
	for i := range t.towns {
		t.towns[i].population = uint32(r.uint())
	}
	for i := range t.towns {
		t.towns[i].lat = int16(r.int())
	}
	for i := range t.towns {
		t.towns[i].lon = int16(r.int())
	}
}

func (r *columnReader) readZIPs(t *table) {
	count := r.uint()
	if r.bad || count > uint64(len(r.b)) || len(t.towns) == 0 {
		r.bad = true
		return
	}
	t.zips = make([]zipCode, count)
	number := uint32(0)
	for i := range t.zips {
		number += uint32(r.uint())
		t.zips[i].number = number
	}
	for i := range t.zips {
		t.zips[i].town = uint16(r.below(len(t.towns)))
	}
	for i := range t.zips {
		t.zips[i].zone = t.towns[t.zips[i].town].zone
		if v := r.below(len(t.zones) + 1); v > 0 {
			t.zips[i].zone = uint8(v - 1)
		}
	}
	for i := range t.zips {
		t.zips[i].zoneElse = uint8(r.below(len(t.zones)))
	}
	for i := range t.zips {
		t.zips[i].county = t.towns[t.zips[i].town].county
		if v := r.below(len(t.counties) + 1); v > 0 {
			t.zips[i].county = uint16(v - 1)
		}
	}
	for i := range t.zips {
		t.zips[i].lat = t.towns[t.zips[i].town].lat + int16(r.int())
	}
	for i := range t.zips {
		t.zips[i].lon = t.towns[t.zips[i].town].lon + int16(r.int())
	}
}

func lineEnd(s string, start int) int {
	if n := strings.IndexByte(s[start:], '\n'); n >= 0 {
		return start + n
	}
	return len(s)
}
