package place

import "sync"

// nicknames are short and Spanish names that mean one big city to nearly everybody, by
// key ("KC" and "LA" do not: two cities, a state). A town that really bears such a
// name comes first. From memory.
var nicknames = map[string]struct{ city, state string }{
	"nyc":               {"New York", "NY"},
	"newyorkcity":       {"New York", "NY"},
	"nuevayork":         {"New York", "NY"},
	"ciudaddenuevayork": {"New York", "NY"},
	"thebronx":          {"Bronx", "NY"},
	"elbronx":           {"Bronx", "NY"},
	"philly":            {"Philadelphia", "PA"},
	"filadelfia":        {"Philadelphia", "PA"},
	"vegas":             {"Las Vegas", "NV"},
	"saintpete":         {"Saint Petersburg", "FL"},
	"slc":               {"Salt Lake City", "UT"},
	"okc":               {"Oklahoma City", "OK"},
	"indy":              {"Indianapolis", "IN"},
	"jax":               {"Jacksonville", "FL"},
	"nola":              {"New Orleans", "LA"},
	"nuevaorleans":      {"New Orleans", "LA"},
	"sanfran":           {"San Francisco", "CA"},
	"cincy":             {"Cincinnati", "OH"},
	"mpls":              {"Minneapolis", "MN"},
	"abq":               {"Albuquerque", "NM"},
	"29palms":           {"Twentynine Palms", "CA"},
	"washingtondc":      {"Washington", "DC"},
	"lakehavasu":        {"Lake Havasu City", "AZ"},
	"bullhead":          {"Bullhead City", "AZ"},
	"sanantone":         {"San Antonio", "TX"},
	"kcmo":              {"Kansas City", "MO"},
	"kck":               {"Kansas City", "KS"},
	"pdx":               {"Portland", "OR"},
	"washdc":            {"Washington", "DC"},
}

// nicknamed has the town of each nickname, by the nickname's key.
var nicknamed = sync.OnceValue(func() map[string]int32 {
	t, towns := load(), map[string]int32{}
	for key, target := range nicknames {
		for i := t.find([]byte(keyOf(target.city))); i >= 0; i = t.towns[i].next {
			if states[t.towns[i].state] == target.state {
				towns[key] = i
			}
		}
	}
	return towns
})
