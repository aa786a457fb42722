package place

import (
	"slices"
	"sync"
)

// Zones lists every IANA time zone, sorted, that a place could be in; any part may be
// "". A ZIP code has one, sometimes two near a border; a town alone has those of all
// its namesakes; a state alone all of its own; nothing known, those of the fifty states.
func Zones(city, state, zip string) []string {
	t := load()
	if e, ok := ByZIP(zip); ok && !Military(e.State) {
		return t.zonesOfZIP(zip)
	} else if ok {
		city, state = "", e.State
	}
	if zones := t.zonesOfTown(city, state); len(zones) > 0 {
		return zones
	}
	if i, ok := stateNumber(state); ok {
		return slices.Clone(zonesByState()[i])
	}
	return slices.Clone(zonesOfAll())
}

func (t *table) zonesOfZIP(zip string) []string {
	number, _ := zipNumber(zip)
	i, _ := t.zipAt(number)
	return t.zoneNames(t.zips[i].zone, t.zips[i].zoneElse)
}

// zonesOfTown has also the zones of the town's ZIP codes: some towns straddle a border.
func (t *table) zonesOfTown(city, state string) []string {
	var buf [96]byte
	towns := map[int32]bool{}
	var zones []string
	for i := range t.namesakes(appendKey(buf[:0], city)) {
		if x := &t.towns[i]; state == "" || states[x.state] == state {
			towns[i] = true
			zones = append(zones, t.zoneNames(x.zone, x.zoneElse)...)
		}
	}
	for _, z := range t.zips {
		if towns[int32(z.town)] {
			zones = append(zones, t.zoneNames(z.zone, z.zoneElse)...)
		}
	}
	return distinct(zones)
}

func (t *table) zoneNames(numbers ...uint8) []string {
	var names []string
	for _, n := range numbers {
		if t.zones[n] != "" {
			names = append(names, t.zones[n])
		}
	}
	return distinct(names)
}

// militaryZones are those of the large bases of each region; a unit can be elsewhere.
// From memory.
var militaryZones = map[string][]string{
	"AA": {"America/New_York", "America/Panama", "America/Puerto_Rico"},
	"AE": {"Asia/Bahrain", "Europe/Berlin", "Europe/London", "Europe/Rome"},
	"AP": {"Asia/Seoul", "Asia/Tokyo", "Pacific/Guam", "Pacific/Honolulu"},
}

var zonesByState = sync.OnceValue(func() [len(states)][]string {
	t := load()
	var zones [len(states)][]string
	for _, x := range t.towns {
		zones[x.state] = addNew(zones[x.state], t.zones[x.zone], t.zones[x.zoneElse])
	}
	for _, z := range t.zips {
		s := t.towns[z.town].state
		zones[s] = addNew(zones[s], t.zones[z.zone], t.zones[z.zoneElse])
	}
	for i, code := range states {
		zones[i] = distinct(append(zones[i], militaryZones[code]...))
	}
	return zones
})

// zonesOfAll leaves territories and military addresses out: they would shrink
// everybody's common daytime to nothing, and those who live there say so.
var zonesOfAll = sync.OnceValue(func() []string {
	var all []string
	for i, code := range states {
		switch code {
		case "PR", "GU", "VI", "AS", "MP", "AA", "AE", "AP":
		default:
			all = append(all, zonesByState()[i]...)
		}
	}
	return distinct(all)
})

func addNew(list []string, names ...string) []string {
	for _, name := range names {
		if name != "" && !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

func distinct(names []string) []string {
	slices.Sort(names)
	return slices.Compact(names)
}
