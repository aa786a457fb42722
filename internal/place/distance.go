package place

import "math"

// earthMiles is the mean radius of the earth (6371.0088 km, IUGG).
const earthMiles = 3958.7613

// Distance gives the great-circle miles between two entries; ok is false where
// either has no position (military addresses).
func Distance(a, b Entry) (miles float64, ok bool) {
	if !a.Located() || !b.Located() {
		return 0, false
	}
	return greatCircle(a.Lat, a.Lon, b.Lat, b.Lon), true
}

// greatCircle is the haversine formula, which stays exact for near points.
func greatCircle(lat1, lon1, lat2, lon2 float64) float64 {
	const rad = math.Pi / 180
	sinLat := math.Sin((lat2 - lat1) * rad / 2)
	sinLon := math.Sin((lon2 - lon1) * rad / 2)
	h := sinLat*sinLat + math.Cos(lat1*rad)*math.Cos(lat2*rad)*sinLon*sinLon
	return 2 * earthMiles * math.Asin(math.Min(1, math.Sqrt(h)))
}

// agreeMiles is how far from the middle of a town a ZIP code may lie that people
// there give with that town's name: suburbs use the city's name. Common practice, no source.
const agreeMiles = 40

// Agree reports whether two entries can be what one person says of one place: the
// same state, and the same name or near each other.
func Agree(a, b Entry) bool {
	if a.State != b.State {
		return false
	}
	if SameName(a.City, b.City) {
		return true
	}
	miles, ok := Distance(a, b)
	return !ok || miles <= agreeMiles
}
