// Package place knows where in the United States a customer is: which town a ZIP
// code belongs to, which towns bear a name, how far apart two places are and what
// time it could be there. Shops ship by it, and texts wait for the morning by it.
//
// It holds one embedded table of ZIP codes and towns, unpacked when it is first
// asked. It is pure: the same question always has the same answer, nothing is
// fetched. Where the table's facts come from stands in ATTRIBUTION.md.
package place

//go:generate go run ./gen -npm node_modules -out places.bin

// Entry is a town, or the area of a ZIP code with the name of its post town.
type Entry struct {
	City   string // in ASCII letters, as the post writes it: "Saint Paul", "Coeur d'Alene"
	State  string // two-letter postal code
	ZIP    string // five digits; empty in a town's entry, a town isn't one ZIP code
	County string // likely county, parish or municipio: a ZIP code can reach into several
	Zone   string // IANA time zone; empty for military addresses, which can be anywhere

	Population int // of the town, 0 where not known
	// Degrees, to a hundredth (under a mile). Both are 0 for military addresses.
	Lat, Lon float64
}

// Located reports whether the entry has a position.
func (e Entry) Located() bool { return e.Lat != 0 || e.Lon != 0 }
