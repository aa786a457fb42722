package fitcheck

import "fmt"

// Cents is money in hundredths of the currency's unit: no estimate is ever a fraction.
type Cents int64

// Percent is a share in whole percent. As a factor 100 changes nothing.
type Percent int

// PriceBook is what the shop charges. Where it has no price for what is wanted there is
// no estimate, and the estimate says why.
type PriceBook struct {
	Currency string      // three letters, ISO 4217
	Dome     *PartPrices // nil: no estimates for domes
	Unit     *PartPrices // nil: no estimates for complete units
	Breaks   []QuantityBreak
	Shipping *ShippingPrices // nil: the estimate is without shipping, and a line says so
	// Allowance is what the high end of the goods is raised by, for what only a person
	// sees; 0 for none.
	Allowance Percent
}

// PartPrices are what a dome or a unit costs: a base and a rate by area, then one factor
// for each choice, multiplied in turn. A choice that is missing from its map has no price;
// a map that is nil means that the choice makes no difference.
type PartPrices struct {
	Base          Cents
	PerSquareFoot Cents // of the outline that is ordered; of a round one its square
	Layers        map[int]Percent
	Material      map[string]Percent
	Color         map[string]Percent // the dearest of a part's layers counts
	Finish        map[string]Percent // of a unit's frame; a dome has none
	Profile       map[string]Percent
	Minimum       Cents // the least that a piece costs, without crating
	Crating       Cents // a piece that goes by freight
}

// QuantityBreak takes Off the goods from From pieces of a kind on.
type QuantityBreak struct {
	From int
	Off  Percent
}

// ShippingPrices are by the great-circle distance from the shop.
type ShippingPrices struct {
	Bands []Band // the nearest first
	// Quoted are states to which shipping is quoted by a person.
	Quoted []string
	// Handling and Oversize are charged on top for each parcel of that kind.
	Handling, Oversize Cents
}

// Band is what a distance costs; UpToMiles 0 stands for any distance.
type Band struct {
	UpToMiles float64
	Parcel    ParcelRate
	Freight   FreightRate
}

// ParcelRate is what one parcel costs, by its billed weight.
type ParcelRate struct {
	Base, PerPound Cents
}

// FreightRate is what all pieces cost together, by weight and class.
type FreightRate struct {
	Minimum Cents
	Classes []ClassRate
}

// ClassRate is the price of a hundred pounds of a freight class.
type ClassRate struct {
	Class      float64
	PerHundred Cents
}

// estimate is a price range for all pieces of a kind, in whole units of the currency. What
// is not chosen or not known widens the range; it is never assumed. It needs r.Replace
// and r.Order, and is never nil: where no price can be told, Low and High are 0, Lines
// are empty and Reason says why.
func estimate(u *Unit, job *Job, rules *Rules, r *UnitResult) *Estimate {
	e := &Estimate{Currency: "USD", Lines: []EstimateLine{}}
	if rules.Prices == nil {
		e.Reason = "The shop keeps no price list."
		return e
	}
	if rules.Prices.Currency != "" {
		e.Currency = rules.Prices.Currency
	}
	var b bill
	if e.Reason = b.fill(u, job, rules, r); e.Reason == "" {
		e.Low, e.High, e.Lines = b.low.down(), b.high.up(), b.lines
	}
	return e
}

// mostPieces keeps the sums far from the end of an integer.
const mostPieces = 10_000

// fill adds all lines, or says why there can be no estimate.
func (b *bill) fill(u *Unit, job *Job, rules *Rules, r *UnitResult) (reason string) {
	small, large, ok := orderedParts(r)
	if !ok {
		return "There is no size to order yet."
	}
	if pieces(u) > mostPieces {
		return "So many pieces are priced by a person."
	}
	prices, name := rules.Prices.Dome, "dome"
	if large.kind == ReplaceUnit {
		prices, name = rules.Prices.Unit, "complete unit"
	}
	if prices == nil {
		return "The shop has no price for a " + name + "."
	}
	if reason := b.goods(u, rules, prices, [2]part{small, large}, name); reason != "" {
		return reason
	}
	return b.shipping(u, job, rules, r, prices)
}

// goods adds the pieces themselves.
func (b *bill) goods(u *Unit, rules *Rules, prices *PartPrices, parts [2]part, name string) string {
	n := Cents(pieces(u))
	low, high := n*prices.plain(parts[0]), n*prices.plain(parts[1])
	b.add(fmt.Sprintf("%d x %s, by size", n, name), low, high)
	for _, f := range prices.factors(u, rules, parts[1].kind) {
		if f.missing != "" {
			return f.missing
		}
		low, high = b.low, b.high
		b.add(f.what, f.low.of(low)-low, f.high.of(high)-high)
	}
	b.atLeast("Smallest charge", n*prices.Minimum)
	if off := breakFor(rules.Prices.Breaks, int(n)); off > 0 {
		b.add(fmt.Sprintf("%d percent off for %d pieces", off, n), (100-off).of(b.low)-b.low, (100-off).of(b.high)-b.high)
	}
	if a := rules.Prices.Allowance; a > 0 {
		b.add("Allowance for what only a person sees", 0, (100+a).of(b.high)-b.high)
	}
	return ""
}

func breakFor(breaks []QuantityBreak, n int) Percent {
	var off Percent
	for _, q := range breaks {
		if n >= q.From {
			off = max(off, q.Off)
		}
	}
	return min(off, 100)
}
