package place

import (
	"iter"
	"slices"
)

// ByZIP finds the place of a ZIP code: five digits, or nine with or without the dash.
func ByZIP(zip string) (Entry, bool) {
	number, ok := zipNumber(zip)
	if !ok {
		return Entry{}, false
	}
	t := load()
	i, ok := t.zipAt(number)
	if !ok {
		return Entry{}, false
	}
	z := &t.zips[i]
	e := t.entry(int32(z.town))
	e.ZIP, e.County, e.Zone = zip[:5], t.counties[z.county], t.zones[z.zone]
	e.Lat, e.Lon = float64(z.lat)/100, float64(z.lon)/100
	return e, true
}

func (t *table) zipAt(number uint32) (int, bool) {
	return slices.BinarySearchFunc(t.zips, number, func(z zipCode, n uint32) int { return int(z.number) - int(n) })
}

func zipNumber(zip string) (uint32, bool) {
	switch {
	case len(zip) == 10 && (zip[5] == '-' || zip[5] == ' '):
		zip = zip[:5] + zip[6:]
	case len(zip) != 5 && len(zip) != 9:
		return 0, false
	}
	number := uint32(0)
	for i := range len(zip) {
		if zip[i] < '0' || zip[i] > '9' {
			return 0, false
		}
		if i < 5 {
			number = number*10 + uint32(zip[i]-'0')
		}
	}
	return number, true
}

// Towns finds the towns that a name can mean, the most populous first: in one state
// (two-letter code), or in all with "". Spelling is folded: see Key. Short names of
// big cities ("Philly", "Nueva York") find those too.
func Towns(name, state string) []Entry {
	var found []Entry
	var buf [96]byte
	t := load()
	for i := range t.namesakes(appendKey(buf[:0], name)) {
		if state == "" || states[t.towns[i].state] == state {
			found = append(found, t.entry(i))
		}
	}
	return found
}

// namesakes walks the towns of a key, the most populous first. A nickname has one town,
// and gives way to towns that really bear the name.
func (t *table) namesakes(key []byte) iter.Seq[int32] {
	return func(yield func(int32) bool) {
		first := t.find(key)
		if first < 0 {
			if i, ok := nicknamed()[string(key)]; ok {
				yield(i)
			}
			return
		}
		for i := first; i >= 0 && yield(i); i = t.towns[i].next {
		}
	}
}

// What makes a town so well known that its bare name means it, by judgement: people
// enough, its own post office, and everyone else of that name together a small part.
// Denver, Seattle and Austin (38 to 1) are; Jacksonville (13), Portland (10) and
// Columbus (4) are not. A name that is also a state's never is.
const (
	wellKnownPopulation = 50_000
	wellKnownRatio      = 20
)

// WellKnown finds the one town that a person surely means by a name alone. Some are
// everyday words too (Mobile, Normal, Plano): that a place was meant is for the caller
// to see.
func WellKnown(name string) (Entry, bool) {
	if _, isState := State(name); isState {
		return Entry{}, false
	}
	var buf [96]byte
	t := load()
	first, others := int32(-1), uint32(0)
	for i := range t.namesakes(appendKey(buf[:0], name)) {
		if first < 0 {
			first = i
		} else {
			others += t.towns[i].population
		}
	}
	least := max(wellKnownPopulation, others*wellKnownRatio)
	if first < 0 || t.towns[first].population < least || !t.hasZIP(first) {
		return Entry{}, false
	}
	return t.entry(first), true
}

func (t *table) hasZIP(i int32) bool {
	return slices.ContainsFunc(t.zips, func(z zipCode) bool { return int32(z.town) == i })
}

// What makes a town that is alone of its name, or in one state only, surely the one that
// was meant: people enough, a post office, and no large town with a name one letter away,
// since "Tulia" may be Tulsa and "Pampa" Tampa.
const (
	onlyPopulation  = 1_500
	largePopulation = 30_000
	largeRatio      = 10
)

// Only finds the town of a name that no other state has: Kalispell is in Montana alone.
// As with WellKnown, that a place was meant is for the caller to see.
func Only(name string) (Entry, bool) {
	if _, isState := State(name); isState {
		return Entry{}, false
	}
	var buf [96]byte
	t := load()
	first := int32(-1)
	for i := range t.namesakes(appendKey(buf[:0], name)) {
		if first < 0 {
			first = i
		} else if t.towns[i].state != t.towns[first].state {
			return Entry{}, false
		}
	}
	if first < 0 || t.towns[first].population < onlyPopulation || !t.hasZIP(first) || t.overshadowed(first) {
		return Entry{}, false
	}
	return t.entry(first), true
}

// overshadowed: a much larger town's name is one letter away.
func (t *table) overshadowed(i int32) bool {
	key, least := t.keyAt(i), max(t.towns[i].population*largeRatio, largePopulation)
	for _, k := range lookalikes().candidates(key, 1) {
		if t.towns[k].population >= least && editDistance(string(key), string(t.keyAt(k)), 1) == 1 {
			return true
		}
	}
	return false
}
