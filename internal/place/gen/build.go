package main

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.com/intake-bot/internal/place"
)

// town is a town of the table; zip a ZIP code of it. Positions are in hundredths of a degree.
type town struct {
	name, key, state, county, zone, otherZone string
	population, lat, lon                      int
	listed                                    bool // by the city list: name, zone and position are its
}

type zip struct {
	number                  int
	town                    *town
	county, zone, otherZone string
	lat, lon                int
}

type table struct {
	towns []*town // by state, then key
	zips  []zip   // by number
}

type townKey struct{ state, key string }

func build(rows []zipRow, cities []cityRow) table {
	counties := countyNames(rows, cities)
	towns := map[townKey]*town{}
	for _, c := range cities {
		addCity(towns, c, counties)
	}
	near := newNearest(cities)
	var zips []zip
	for _, r := range rows {
		z := zip{number: number(r.zip), county: r.county, lat: hundredths(r.lat), lon: hundredths(r.lon)}
		z.zone, z.otherZone = near.zones(r)
		if same := towns[townKey{r.state, place.Key(r.city)}]; z.county == "" && same != nil {
			z.county = same.county
		}
		if z.county == "" {
			z.county = near.county(r, counties)
		}
		z.town = addPostTown(towns, r, z)
		zips = append(zips, z)
	}
	return table{towns: sorted(towns), zips: zips}
}

// addCity adds a listed town; of two of one name in one state the larger stays.
func addCity(towns map[townKey]*town, c cityRow, counties map[townKey]string) {
	k := townKey{c.state, place.Key(c.name)}
	if old := towns[k]; old != nil && old.population >= c.population {
		return
	}
	towns[k] = &town{name: c.name, key: k.key, state: c.state, zone: c.zone,
		county: counties[townKey{c.state, c.countyCode}], population: c.population,
		lat: hundredths(c.lat), lon: hundredths(c.lon), listed: true}
}

// addPostTown finds or adds the town that the post names for a ZIP code. The post's
// spelling wins, unless the two differ only in capitals and marks ("Mckinney").
func addPostTown(towns map[townKey]*town, r zipRow, z zip) *town {
	k := townKey{r.state, place.Key(r.city)}
	t := towns[k]
	if t == nil {
		t = &town{name: r.city, key: k.key, state: r.state, county: z.county,
			zone: z.zone, otherZone: z.otherZone, lat: z.lat, lon: z.lon}
		towns[k] = t
	} else if t.listed && letters(t.name) != letters(r.city) {
		t.name = r.city
	}
	return t
}

func letters(s string) string {
	return strings.ReplaceAll(place.Plain(s), " ", "")
}

func sorted(towns map[townKey]*town) []*town {
	var all []*town
	for _, t := range towns {
		all = append(all, t)
	}
	slices.SortFunc(all, func(a, b *town) int {
		return cmp.Or(cmp.Compare(stateIndex(a.state), stateIndex(b.state)), cmp.Compare(a.key, b.key))
	})
	return all
}

// countyNames maps state and county code to a name: from the ZIP rows, and for Puerto
// Rico from each municipio's seat, which bears its name.
func countyNames(rows []zipRow, cities []cityRow) map[townKey]string {
	names := map[townKey]string{}
	for _, r := range rows {
		if r.county != "" {
			names[townKey{r.state, r.countyCode}] = r.county
		}
	}
	for _, c := range cities {
		if c.state == "PR" && (c.feature == "PPLA" || c.feature == "PPLC") {
			names[townKey{c.state, c.countyCode}] = c.name
		}
	}
	return names
}

func number(zip string) int {
	n := 0
	for _, d := range zip {
		n = n*10 + int(d-'0')
	}
	return n
}

func hundredths(degrees float64) int { return int(math.Round(degrees * 100)) }
