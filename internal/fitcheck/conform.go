package fitcheck

// conformity is how a measured value stands to its limits.
type conformity int

const (
	surelyInside conformity = iota
	cantTell
	surelyOutside
)

// oneSided is the coverage factor of a guard band that keeps the risk of a wrong
// decision at one limit to 5 % (normal distribution; JCGM 106:2012, 8.3.2.3 and Table 1).
const oneSided = 1.645

// within decides with guard bands on both sides of each limit (JCGM 106:2012, 8.3;
// ISO 14253-1:2017, clause 5): inside is proven where the value lies inside by more than
// the band, outside where it lies outside by more than that, else nothing is proven.
func within(x, low, high, u float64) conformity {
	band := oneSided * u
	switch {
	case x >= low+band && x <= high-band:
		return surelyInside
	case x < low-band || x > high+band:
		return surelyOutside
	}
	return cantTell
}
