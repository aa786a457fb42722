package fitcheck

// windReachMiles is how far inland a coastal site is flagged: debris regions are drawn by
// wind speed and reach some tens of miles (common practice, no source).
const windReachMiles = 75

// windStates are the coastal states whose debris regions staff ask about wherever the
// site is not known; windStatesNorth join where it is known to be near the sea (FBC-B 2023
// ch. 2 for the term, the list is common practice).
var (
	windStates      = set("FL", "TX", "LA", "MS", "AL", "GA", "SC", "NC", "VA")
	windStatesNorth = set("MD", "DE", "NJ", "NY", "CT", "RI", "MA")
	// windIslands plan for hurricanes or typhoons throughout.
	windIslands = set("HI", "PR", "VI", "GU", "AS", "MP")
	// wildfireStates have adopted rules for building near wildland, under which skylights
	// are tempered, laminated or fire-rated (IWUIC 2015 §504.8, first clause read; the list
	// is from memory).
	wildfireStates = set("AZ", "CA", "CO", "ID", "MT", "NM", "NV", "OR", "UT", "WA")
	// outsideLower48 are reached by sea or air.
	outsideLower48 = set("AK", "HI", "PR", "VI", "GU", "AS", "MP", "AA", "AE", "AP")
)

// coldRegions are states, or parts of them, that lie in energy zones 6 to 8 (from memory:
// IECC county table; a county may differ).
var coldRegions = []region{
	{state: "AK"}, {state: "ME"}, {state: "MN"}, {state: "MT"}, {state: "ND"}, {state: "VT"}, {state: "WI"}, {state: "WY"},
	{"MI", 44, 49, -91, -82}, {"NH", 43.3, 46, -73, -70}, {"NY", 43.3, 46, -76.5, -73}, {"SD", 43.5, 46, -105, -96},
	{"ID", 42, 49.1, -114.5, -111}, {"CO", 37, 41.1, -108, -105.4},
}

// hotRegions are the low deserts, where the air passes 105 °F in an ordinary summer (from
// memory: climate normals).
var hotRegions = []region{
	{"AZ", 31, 34.3, -115, -111.3}, {"AZ", 34.3, 35.5, -115, -114}, {"NV", 35, 37, -116.5, -114}, {"CA", 32.5, 36.6, -117, -114},
}

// snowRegions are where the ground snow load is commonly above what a low roof's own
// minimum covers, 20 to 30 lb a square foot (from memory: ASCE 7 ground snow map).
var snowRegions = []region{
	{state: "AK"}, {state: "ME"}, {state: "NH"}, {state: "VT"}, {state: "MA"}, {state: "NY"}, {state: "MI"}, {state: "WI"},
	{state: "MN"}, {state: "ND"}, {state: "SD"}, {state: "MT"}, {state: "WY"}, {state: "ID"}, {state: "UT"}, {state: "CO"},
	{"CT", 41.6, 42.1, -74, -71}, {"PA", 40.8, 42.3, -80.6, -74.6}, {"OH", 41.2, 42, -81.7, -80.5},
	{"CA", 36, 41.5, -121.5, -118.2}, {"NV", 38.8, 42, -120, -114}, {"OR", 42, 45.7, -122.4, -116.5},
	{"WA", 45.5, 49, -122, -117}, {"NM", 35.6, 37, -107, -105}, {"AZ", 34.6, 36.5, -112.5, -109},
	{"WV", 38, 39.7, -80.5, -79}, {"MD", 39.3, 39.8, -79.5, -78.9},
}

// hurricaneCoast is the outline of the Gulf and Atlantic coast in straight lines, from the
// Mexican border to Massachusetts, and with it the tip of Florida (approximate positions of
// coastal towns, from memory).
var hurricaneCoast = []Site{
	coast(25.95, -97.15), coast(27.80, -97.10), coast(28.70, -95.90), coast(29.30, -94.80), coast(29.70, -93.85),
	coast(29.55, -92.20), coast(29.10, -90.20), coast(30.00, -89.30), coast(30.35, -88.50), coast(30.25, -87.70),
	coast(30.35, -86.50), coast(29.70, -85.30), coast(30.05, -84.20), coast(29.10, -83.05), coast(27.80, -82.80),
	coast(26.40, -82.00), coast(25.80, -81.50), coast(25.15, -80.90), coast(25.75, -80.15), coast(27.20, -80.20),
	coast(28.45, -80.55), coast(29.90, -81.30), coast(31.10, -81.40), coast(32.00, -80.85), coast(32.75, -79.90),
	coast(33.70, -78.90), coast(33.90, -78.00), coast(34.65, -76.60), coast(35.25, -75.55), coast(36.85, -75.95),
	coast(38.35, -75.08), coast(38.95, -74.90), coast(39.75, -74.10), coast(40.55, -73.95), coast(41.05, -71.90),
	coast(41.40, -71.00), coast(41.25, -70.00), coast(42.05, -70.15), coast(41.95, -70.60), coast(42.60, -70.65),
}

func coast(lat, lon float64) Site { return Site{Lat: lat, Lon: lon, Known: true} }

func set(names ...string) map[string]bool {
	m := make(map[string]bool, len(names))
	for _, n := range names {
		m[n] = true
	}
	return m
}
