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
	low, high := shipEnds(u, rules, r)
	n := Cents(pieces(u))
	b.add("Crating", n*low.crating(prices), n*high.crating(prices))
	return b.carriage(sp, bandsFor(sp.Bands, job.Site, rules.ShipFrom), n, low, high)
}

// shipEnds are the lightest and the heaviest way that the order may turn out to travel:
// the least plastic at the small end, the most at the large.
func shipEnds(u *Unit, rules *Rules, r *UnitResult) (low, high shipment) {
	small, large, _ := orderedParts(r)
	heavy, _ := heaviestChoice(u, rules)
	return pack(small, u, lightestChoice(u, rules), &rules.Ship), pack(large, u, heavy, &rules.Ship)
}

// lightestChoice is the plastic as chosen and, for what is open, the lightest sold.
func lightestChoice(u *Unit, rules *Rules) choice {
	c := choice{u.Layers, u.Material}
	if c.layers == 0 {
		c.layers = slices.Min(soldLayers(rules))
	}
	density := rules.Ship.Sheets.LbPerCubicIn
	if _, known := density[c.material]; known {
		return c
	}
	c.material = ""
	for _, m := range soldMaterials(rules) {
		if c.material == "" || density[m] < density[c.material] {
			c.material = m
		}
	}
	return c
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

// carriage adds the range over the bands.
func (b *bill) carriage(sp *ShippingPrices, bands []Band, n Cents, low, high shipment) string {
	if len(bands) == 0 {
		return "The shop has no shipping price for this distance."
	}
	var least, most Cents
	for i := range bands {
		lo, okLow := bands[i].price(sp, n, &low)
		hi, okHigh := bands[i].price(sp, n, &high)
		if !okLow || !okHigh {
			return fmt.Sprintf("The shop has no freight price for class %s.", tenths(max(low.class, high.class)))
		}
		if i == 0 {
			least = lo
		}
		least, most = min(least, lo, hi), max(most, lo, hi)
	}
	what := "Shipping by " + high.by
	if low.by != high.by {
		what = "Shipping by parcel or freight"
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
