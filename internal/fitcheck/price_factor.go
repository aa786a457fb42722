package fitcheck

import "fmt"

// plain is a piece before its choices: base and area, the area in whole square
// sixty-fourths so that it stays exact.
func (p *PartPrices) plain(t part) Cents {
	const squareFoot = (12 * 64) * (12 * 64)
	area := upSixtyfourths(t.long) * upSixtyfourths(t.short)
	return p.Base + (Cents(area)*p.PerSquareFoot+squareFoot/2)/squareFoot
}

func upSixtyfourths(l Length) int64 { return int64((l + Sixtyfourth - 1) / Sixtyfourth) }

// factor is what one choice does to the price: low and high differ while it is open.
type factor struct {
	what, missing string
	low, high     Percent
}

// factors are those of the part's choices that have prices at all.
func (p *PartPrices) factors(u *Unit, rules *Rules, kind Replace) []factor {
	var fs []factor
	if p.Layers != nil {
		fs = append(fs, layersFactor(p.Layers, u.Layers, soldLayers(rules)))
	}
	if p.Material != nil {
		fs = append(fs, choiceFactor("material", p.Material, soldMaterials(rules), u.Material))
	}
	if p.Color != nil {
		fs = append(fs, colorFactor(p.Color, u, rules.Sells.Colors))
	}
	if p.Finish != nil && kind == ReplaceUnit {
		fs = append(fs, choiceFactor("finish", p.Finish, rules.Sells.Finishes, u.Finish))
	}
	if p.Profile != nil {
		fs = append(fs, choiceFactor("shape", p.Profile, nil, u.Profile))
	}
	return fs
}

// colorFactor leaves the inner layers open until their colors are said, unless there is
// one layer only.
func colorFactor(prices map[string]Percent, u *Unit, sold []string) factor {
	f := choiceFactor("color", prices, sold, u.Color.Outer, u.Color.Middle, u.Color.Inner)
	if f.missing == "" && u.Color.Outer != "" && u.Color.Inner == "" && u.Layers != 1 {
		_, dearest := span(prices, sold)
		f.high = max(f.high, dearest)
	}
	return f
}

func layersFactor(prices map[int]Percent, chosen int, sold []int) factor {
	if chosen == 0 {
		return openFactor("layers", prices, sold)
	}
	f := factor{what: whatChosen["layers"], low: prices[chosen], high: prices[chosen]}
	if _, ok := prices[chosen]; !ok {
		f.missing = fmt.Sprintf("The shop has no price for %d layers.", chosen)
	}
	return f
}

// choiceFactor is the dearest of what is chosen, from the outer layer to the inner.
func choiceFactor(what string, prices map[string]Percent, sold []string, chosen ...string) factor {
	if chosen[0] == "" {
		return openFactor(what, prices, sold)
	}
	f := factor{what: whatChosen[what]}
	for _, c := range chosen {
		if c == "" {
			continue
		}
		p, ok := prices[c]
		if !ok {
			f.missing = fmt.Sprintf("The shop has no price for %s %s.", what, c)
			return f
		}
		f.low, f.high = max(f.low, p), max(f.high, p)
	}
	return f
}

var whatChosen = map[string]string{"layers": "Choice of layers", "material": "Choice of material",
	"color": "Choice of color", "finish": "Choice of finish", "shape": "Choice of shape"}

// openFactor spans all that is sold and priced, or all that is priced where the shop lists
// nothing.
func openFactor[K comparable](what string, prices map[K]Percent, sold []K) factor {
	f := factor{what: whatChosen[what] + ", still open"}
	f.low, f.high = span(prices, sold)
	if f.high == 0 {
		f.missing = fmt.Sprintf("The shop has no price for any %s that it sells.", what)
	}
	return f
}

func span[K comparable](prices map[K]Percent, sold []K) (low, high Percent) {
	take := func(p Percent) {
		if high == 0 || p < low {
			low = p
		}
		high = max(high, p)
	}
	for _, s := range sold {
		if p, ok := prices[s]; ok {
			take(p)
		}
	}
	if len(sold) == 0 {
		for _, p := range prices {
			take(p)
		}
	}
	return low, high
}
