package place

import (
	_ "embed"
	"sync"
)

//go:embed places.bin
var packed []byte

// states gives each state the number that the table knows it by: never reorder.
var states = [...]string{
	"AL", "AK", "AZ", "AR", "CA", "CO", "CT", "DE", "DC", "FL", "GA", "HI", "ID", "IL", "IN",
	"IA", "KS", "KY", "LA", "ME", "MD", "MA", "MI", "MN", "MS", "MO", "MT", "NE", "NV", "NH",
	"NJ", "NM", "NY", "NC", "ND", "OH", "OK", "OR", "PA", "RI", "SC", "SD", "TN", "TX", "UT",
	"VT", "VA", "WA", "WV", "WI", "WY", "PR", "GU", "VI", "AS", "MP", "AA", "AE", "AP",
}

// States lists the postal codes that the table knows: fifty states, the District of
// Columbia, five territories, three military regions.
func States() []string { return append([]string(nil), states[:]...) }

func stateNumber(code string) (uint8, bool) {
	for i, s := range states {
		if s == code {
			return uint8(i), true
		}
	}
	return 0, false
}

// town is a row of the table; small numbers refer to the table's lists.
type town struct {
	name, nameEnd  uint32 // in names
	key, keyEnd    uint32 // in keys
	next           int32  // the next smaller town of the same key, -1 at the end
	population     uint32
	county         uint16
	lat, lon       int16 // hundredths of a degree
	state          uint8
	zone, zoneElse uint8
}

type zipCode struct {
	number         uint32
	town, county   uint16
	lat, lon       int16
	zone, zoneElse uint8
}

type table struct {
	zones, counties []string
	names           string
	keys            []byte
	towns           []town
	zips            []zipCode // by number
	slots           []int32   // hash of key to the largest town of that key, -1 where free
}

// load unpacks the table when it is first needed. The table is part of the program
// and checked by its tests, so a broken one is an empty one here.
var load = sync.OnceValue(func() *table {
	t, err := decode(packed)
	if err != nil {
		return &table{slots: []int32{-1}}
	}
	return t
})

// entry spells a town out.
func (t *table) entry(i int32) Entry {
	x := &t.towns[i]
	return Entry{City: t.names[x.name:x.nameEnd], State: states[x.state], County: t.counties[x.county],
		Zone: t.zones[x.zone], Population: int(x.population),
		Lat: float64(x.lat) / 100, Lon: float64(x.lon) / 100}
}

func (t *table) keyAt(i int32) []byte { return t.keys[t.towns[i].key:t.towns[i].keyEnd] }
