package fitcheck

import (
	"fmt"
	"strconv"
)

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
		fs = append(fs, choiceFactor("color", p.Color, rules.Sells.Colors, u.Color.Outer, u.Color.Middle, u.Color.Inner))
	}
	if p.Finish != nil && kind == ReplaceUnit {
		fs = append(fs, choiceFactor("finish", p.Finish, rules.Sells.Finishes, u.Finish))
	}
	if p.Profile != nil {
		fs = append(fs, choiceFactor("shape", p.Profile, nil, u.Profile))
	}
	return fs
}

func layersFactor(prices map[int]Percent, chosen int, sold []int) factor {
	named, names := make(map[string]Percent, len(prices)), make([]string, len(sold))
	for n, p := range prices {
		named[strconv.Itoa(n)] = p
	}
	for i, n := range sold {
		names[i] = strconv.Itoa(n)
	}
	if chosen == 0 {
		return choiceFactor("layers", named, names, "")
	}
	return choiceFactor("layers", named, names, strconv.Itoa(chosen))
}

// choiceFactor is the dearest of what is chosen. Where the first is open, the range is
// over all that is sold and priced, or all that is priced where the shop lists nothing.
func choiceFactor(what string, prices map[string]Percent, sold []string, chosen ...string) factor {
	f := factor{what: "Choice of " + what}
	if chosen[0] == "" {
		f.what = "Choice of " + what + ", still open"
		f.low, f.high = span(prices, sold)
		if f.high == 0 {
			f.missing = fmt.Sprintf("The shop has no price for any %s that it sells.", what)
		}
		return f
	}
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

func span(prices map[string]Percent, sold []string) (low, high Percent) {
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
