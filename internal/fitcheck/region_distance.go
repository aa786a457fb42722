package fitcheck

import "math"

// earthMiles is the mean radius of the earth: 6371.0088 km (IUGG).
const earthMiles = 3958.7613

// milesBetween is the great-circle distance, by the haversine formula.
func milesBetween(a, b Site) float64 {
	const rad = math.Pi / 180
	la, lb := a.Lat*rad, b.Lat*rad
	h := hav(lb-la) + math.Cos(la)*math.Cos(lb)*hav((b.Lon-a.Lon)*rad)
	return 2 * earthMiles * math.Asin(math.Sqrt(math.Min(1, h)))
}

func hav(x float64) float64 { s := math.Sin(x / 2); return s * s }

// milesToSea is the distance to the nearest point of the hurricane coast's outline. Its
// lines are short enough to be straight on a flat map around the site, within a mile or two.
func milesToSea(s Site) float64 {
	const perDegree = earthMiles * math.Pi / 180
	squeeze := math.Cos(s.Lat * math.Pi / 180)
	best := math.Inf(1)
	for i := 1; i < len(hurricaneCoast); i++ {
		best = min(best, toLine(s, squeeze, hurricaneCoast[i-1], hurricaneCoast[i]))
	}
	return perDegree * math.Sqrt(best)
}

// toLine is the square of the distance from the site to the line from a to b, in degrees
// of latitude; squeeze is what a degree of longitude is of one.
func toLine(s Site, squeeze float64, a, b Site) float64 {
	ax, ay := (a.Lon-s.Lon)*squeeze, a.Lat-s.Lat
	dx, dy := (b.Lon-a.Lon)*squeeze, b.Lat-a.Lat
	t := max(0, min(1, -(ax*dx+ay*dy)/(dx*dx+dy*dy)))
	x, y := ax+t*dx, ay+t*dy
	return x*x + y*y
}
