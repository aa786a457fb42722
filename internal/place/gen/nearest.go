package main

import (
	"maps"
	"math"
	"slices"
)

// nearest answers by the nearest listed town of the same state: checked against a
// polygon look-up, 49 of 40,979 ZIP codes had another zone that way.
type nearest struct{ byState map[string][]cityRow }

func newNearest(cities []cityRow) nearest {
	n := nearest{byState: map[string][]cityRow{}}
	for _, c := range cities {
		n.byState[c.state] = append(n.byState[c.state], c)
	}
	return n
}

// zones gives the likely time zone of a ZIP code and, where a town of another zone is
// about as near, that one too. Military codes have none.
func (n nearest) zones(r zipRow) (zone, other string) {
	if r.lat == 0 && r.lon == 0 {
		return "", ""
	}
	if zone := zoneByHand(r.zip); zone != "" {
		return zone, ""
	}
	first := map[string]float64{} // zone to miles of its nearest town
	for _, c := range n.byState[r.state] {
		d := miles(r.lat, r.lon, c.lat, c.lon)
		if old, ok := first[c.zone]; !ok || d < old {
			first[c.zone] = d
		}
	}
	best, second := math.Inf(1), math.Inf(1)
	for _, z := range slices.Sorted(maps.Keys(first)) {
		d := first[z]
		if d < best {
			other, second = zone, best
			zone, best = z, d
		} else if d < second {
			other, second = z, d
		}
	}
	if second > best*1.5+3 {
		other = ""
	}
	return zone, other
}

// zoneByHand has places west of 169°30' W, too small for the city list, which keep
// Hawaii's offset with daylight saving (49 CFR 71.12; America/Adak in the IANA data).
func zoneByHand(zip string) string {
	if zip == "99546" || zip == "99547" { // Adak, Atka
		return "America/Adak"
	}
	return ""
}

// county gives the county of the nearest listed town that has one.
func (n nearest) county(r zipRow, counties map[townKey]string) string {
	best, name := math.Inf(1), ""
	if r.lat == 0 && r.lon == 0 {
		return ""
	}
	for _, c := range n.byState[r.state] {
		county := counties[townKey{c.state, c.countyCode}]
		if d := miles(r.lat, r.lon, c.lat, c.lon); d < best && county != "" {
			best, name = d, county
		}
	}
	return name
}

// miles is a flat approximation, good enough to rank near towns.
func miles(lat1, lon1, lat2, lon2 float64) float64 {
	const perDegree = 69.1
	dLon := math.Abs(lon1 - lon2)
	if dLon > 180 {
		dLon = 360 - dLon
	}
	x := dLon * math.Cos((lat1+lat2)/2*math.Pi/180)
	return perDegree * math.Hypot(lat1-lat2, x)
}
