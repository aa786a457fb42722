package fitcheck

import (
	"fmt"
	"math"
	"slices"
)

// shipping adds what it costs to send all pieces, over every distance that the place may
// be at and both ends of the size.
func (b *bill) shipping(u *Unit, job *Job, rules *Rules, r *UnitResult, prices *PartPrices) string {
	sp := rules.Prices.Shipping
	if sp == nil {
		b.lines = append(b.lines, EstimateLine{What: "Shipping is not included"})
		return ""
	}
	if slices.Contains(sp.Quoted, job.state()) {
		return "Shipping to " + job.state() + " is quoted by a person."
	}
	ways := shipWays(u, rules, r)
	n := Cents(pieces(u))
	low, high := ways[0].crating(prices), ways[0].crating(prices)
	for i := range ways {
		low, high = min(low, ways[i].crating(prices)), max(high, ways[i].crating(prices))
	}
	b.add("Crating", n*low, n*high)
	return b.carriage(sp, bandsFor(sp.Bands, job.Site, rules.ShipFrom), n, ways)
}

// shipWays are all ways in which the order may turn out to travel: both ends of its size,
// of every plastic that is still open. The heaviest need not be the dearest, since a denser
// carton is of a cheaper class.
func shipWays(u *Unit, rules *Rules, r *UnitResult) (ways []shipment) {
	small, large, _ := orderedParts(r)
	layers, materials := []int{u.Layers}, []string{u.Material}
	if u.Layers == 0 {
		layers = soldLayers(rules)
	}
	if _, known := rules.Ship.Sheets.LbPerCubicIn[u.Material]; !known {
		materials = soldMaterials(rules)
	}
	for _, n := range layers {
		for _, m := range materials {
			ways = append(ways, pack(small, u, choice{n, m}, &rules.Ship))
			if small != large {
				ways = append(ways, pack(large, u, choice{n, m}, &rules.Ship))
			}
		}
	}
	return ways
}

// bandsFor are the bands that the place may lie in: one where both ends are known.
func bandsFor(bands []Band, to, from Site) []Band {
	if !to.Known || !from.Known {
		return bands
	}
	miles := milesBetween(from, to)
	for i := range bands {
		if bands[i].UpToMiles == 0 || miles <= bands[i].UpToMiles {
			return bands[i : i+1]
		}
	}
	return nil
}

// carriage adds the range over the bands and ways.
func (b *bill) carriage(sp *ShippingPrices, bands []Band, n Cents, ways []shipment) string {
	if len(bands) == 0 {
		return "The shop has no shipping price for this distance."
	}
	least, most := Cents(math.MaxInt64), Cents(0)
	what := "Shipping by " + ways[0].by
	for i := range ways {
		if ways[i].by != ways[0].by {
			what = "Shipping by parcel or freight"
		}
		for k := range bands {
			price, ok := bands[k].price(sp, n, &ways[i])
			if !ok {
				return fmt.Sprintf("The shop has no freight price for class %s.", tenths(ways[i].class))
			}
			least, most = min(least, price), max(most, price)
		}
	}
	b.add(what, least, most)
	return ""
}

func (s *shipment) crating(prices *PartPrices) Cents {
	if s.by == ShipFreight {
		return prices.Crating
	}
	return 0
}

// price is what n pieces cost to send over the band's distance; false where the class
// has none.
func (d *Band) price(sp *ShippingPrices, n Cents, s *shipment) (Cents, bool) {
	if s.by == ShipParcel {
		each := d.Parcel.Base + d.Parcel.PerPound*Cents(s.billedLb)
		switch s.extra {
		case extraOversize:
			each += sp.Oversize
		case extraHandling:
			each += sp.Handling
		}
		return n * each, true
	}
	for _, c := range d.Freight.Classes {
		if c.Class == s.class {
			pounds := n * Cents(math.Ceil(s.lb))
			return max(d.Freight.Minimum, (pounds*c.PerHundred+99)/100), true
		}
	}
	return 0, false
}
