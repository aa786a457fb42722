package main

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"fmt"
	"slices"
	"strings"

	"example.com/intake-bot/internal/place"
)

func stateIndex(code string) int { return slices.Index(place.States(), code) }

// encode writes the columns that package place's decode.go describes.
func encode(t table) ([]byte, error) {
	var w columns
	zones := t.zoneNames()
	counties := t.countyNames()
	w.strings(zones)
	w.strings(counties)
	index := w.towns(t, zones, counties)
	w.zips(t, index, zones, counties)
	var out bytes.Buffer
	deflate, err := flate.NewWriter(&out, flate.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := deflate.Write(w.b); err != nil {
		return nil, err
	}
	if err := deflate.Close(); err != nil {
		return nil, err
	}
	fmt.Printf("%d towns, %d ZIP codes, %d zones, %d bytes, %d compressed\n",
		len(t.towns), len(t.zips), len(zones), len(w.b), out.Len())
	return out.Bytes(), nil
}

type columns struct{ b []byte }

func (w *columns) uint(n int) { w.b = binary.AppendUvarint(w.b, uint64(n)) }
func (w *columns) int(n int)  { w.b = binary.AppendVarint(w.b, int64(n)) }

func (w *columns) strings(list []string) {
	joined := strings.Join(list, "\n")
	w.uint(len(list))
	w.uint(len(joined))
	w.b = append(w.b, joined...)
}

func (w *columns) towns(t table, zones, counties []string) map[*town]int {
	index := map[*town]int{}
	var names []string
	for i, town := range t.towns {
		index[town] = i
		names = append(names, town.name)
	}
	w.strings(names)
	column := func(value func(i int, x *town)) {
		for i, x := range t.towns {
			value(i, x)
		}
	}
	column(func(i int, x *town) { w.uint(stateIndex(x.state)) })
	column(func(i int, x *town) { w.uint(slices.Index(zones, x.zone)) })
	column(func(i int, x *town) { w.uint(slices.Index(zones, x.otherZone)) })
	column(func(i int, x *town) { w.uint(slices.Index(counties, x.county)) })
	column(func(i int, x *town) { w.uint(x.population) })
	column(func(i int, x *town) { w.int(x.lat) })
	column(func(i int, x *town) { w.int(x.lon) })
	return index
}

func (w *columns) zips(t table, index map[*town]int, zones, counties []string) {
	w.uint(len(t.zips))
	column := func(value func(i int, z zip)) {
		for i, z := range t.zips {
			value(i, z)
		}
	}
	column(func(i int, z zip) {
		if i > 0 {
			w.uint(z.number - t.zips[i-1].number)
		} else {
			w.uint(z.number)
		}
	})
	column(func(i int, z zip) { w.uint(index[z.town]) })
	column(func(i int, z zip) { w.same(z.zone == z.town.zone, slices.Index(zones, z.zone)) })
	column(func(i int, z zip) { w.uint(slices.Index(zones, z.otherZone)) })
	column(func(i int, z zip) { w.same(z.county == z.town.county, slices.Index(counties, z.county)) })
	column(func(i int, z zip) { w.int(z.lat - z.town.lat) })
	column(func(i int, z zip) { w.int(z.lon - z.town.lon) })
}

// same writes 0 for "as the town", else the index and one.
func (w *columns) same(asTown bool, index int) {
	if asTown {
		w.uint(0)
		return
	}
	w.uint(index + 1)
}

// zoneNames starts with "", which index 0 means.
func (t table) zoneNames() []string {
	names := []string{""}
	for _, z := range t.zips {
		names = append(names, z.zone, z.otherZone)
	}
	for _, x := range t.towns {
		names = append(names, x.zone, x.otherZone)
	}
	return distinct(names)
}

func (t table) countyNames() []string {
	names := []string{""}
	for _, z := range t.zips {
		names = append(names, z.county)
	}
	for _, x := range t.towns {
		names = append(names, x.county)
	}
	return distinct(names)
}

func distinct(names []string) []string {
	slices.Sort(names)
	return slices.Compact(names)
}
