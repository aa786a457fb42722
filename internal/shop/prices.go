package shop

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// Prices is the price book. A part without prices has no estimate, and the lead says why.
type Prices struct {
	// Currency is its three letters; USD if left out.
	Currency Currency `yaml:"currency"`
	// Dome and Unit are what a dome and a complete unit cost.
	Dome *PartPrices `yaml:"dome"`
	Unit *PartPrices `yaml:"unit"`
	// Breaks take something off from a number of like pieces on.
	Breaks []Break `yaml:"breaks"`
	// Allowance raises the high end of the goods, for what only a person sees.
	Allowance Percent `yaml:"allowance"`
	// Shipping is what it costs by distance; without it the estimate says that it is without.
	Shipping *ShippingPrices `yaml:"shipping"`
}

// PartPrices are what a part costs: base and rate by area, times one factor for each
// choice. A choice that is missing from its list has no price; a list that is left out
// makes no difference.
type PartPrices struct {
	// Base is what each piece costs whatever its size.
	Base Money `yaml:"base" required:"what each piece costs whatever its size, like $40"`
	// PerSquareFoot is by the area of the outline that is ordered.
	PerSquareFoot Money `yaml:"per_square_foot" required:"the price of a square foot, like $9.50"`
	// Layers, Material, Color, Finish and Profile are factors: 100% changes nothing.
	Layers   map[string]Percent `yaml:"layers" keys:"layers"`
	Material map[string]Percent `yaml:"material" keys:"material"`
	Color    map[string]Percent `yaml:"color" keys:"color"`
	Finish   map[string]Percent `yaml:"finish" keys:"finish"`
	Profile  map[string]Percent `yaml:"profile" keys:"profile"`
	// Minimum is the least that a piece costs.
	Minimum Money `yaml:"minimum"`
	// Crating is added for a piece that goes by freight.
	Crating Money `yaml:"crating"`
}

// Break takes something off from a number of pieces on.
type Break struct {
	// From is the number of like pieces.
	From int `yaml:"from" least:"2" most:"100000" required:"from how many pieces on"`
	// Off is what is taken off the goods.
	Off Percent `yaml:"off" required:"what is taken off, like 5%"`
}

// ShippingPrices are by the distance from the shop as the crow flies.
type ShippingPrices struct {
	// Bands are the distances, the nearest first.
	Bands []Band `yaml:"bands" required:"what shipping costs by distance, the nearest first"`
	// Quoted are states to which a person quotes the shipping.
	Quoted []State `yaml:"quoted"`
	// Handling and Oversize are added for each parcel of that kind.
	Handling Money `yaml:"handling"`
	Oversize Money `yaml:"oversize"`
}

// Band is what one distance costs.
type Band struct {
	// UpToMiles is where the band ends; the last band leaves it out.
	UpToMiles float64 `yaml:"up_to_miles" least:"1" most:"20000"`
	// Parcel is the price of each parcel.
	Parcel ParcelRate `yaml:"parcel" required:"the price of a parcel: base and per_pound"`
	// Freight is the price of all pieces together.
	Freight FreightRate `yaml:"freight" required:"the price of freight: minimum and classes"`
}

// ParcelRate is what one parcel costs, by its billed weight.
type ParcelRate struct {
	// Base is for each parcel, PerPound for each billed pound.
	Base     Money `yaml:"base" required:"what each parcel costs whatever its weight"`
	PerPound Money `yaml:"per_pound" required:"what each billed pound costs"`
}

// FreightRate is what all pieces cost together.
type FreightRate struct {
	// Minimum is the least that a shipment costs.
	Minimum Money `yaml:"minimum" required:"the least that a shipment costs"`
	// Classes are the prices of a hundred pounds by freight class, like 250: $95.
	Classes map[string]Money `yaml:"classes" required:"the price of a hundred pounds by class, like 250: $95"`
}

// Currency is three letters of ISO 4217.
type Currency string

var currencyForm = regexp.MustCompile(`^[A-Z]{3}$`)

func (c *Currency) set(text string) error {
	if !currencyForm.MatchString(text) {
		return fmt.Errorf("%q is not a currency: write its three letters, like USD", text)
	}
	*c = Currency(text)
	return nil
}

func (f *File) checkPrices(b *binder) {
	if f.Prices == nil {
		return
	}
	if c := f.Prices.Currency; c != "" && c != "USD" {
		b.wrongAt("prices.currency", "is %s, but customers are told dollars: write USD", c)
	}
	if f.Prices.Allowance > 100 {
		b.wrongAt("prices.allowance", "is over 100%%: write what is added, like 10%%")
	}
	f.Prices.Dome.checkFactors(b, "prices.dome")
	f.Prices.Unit.checkFactors(b, "prices.unit")
	for i, q := range f.Prices.Breaks {
		if path := fmt.Sprintf("prices.breaks[%d]", i+1); q.Off > 100 {
			b.wrongAt(path+".off", "is over 100%%: write what is taken off, like 5%%")
		} else if i > 0 && q.From <= f.Prices.Breaks[i-1].From {
			b.wrongAt(path+".from", "is not more than the one before: write the smallest number first")
		} else if i > 0 && q.Off < f.Prices.Breaks[i-1].Off {
			b.wrongAt(path+".off", "is less than for fewer pieces: write at least the one before")
		}
	}
	if f.Prices.Shipping != nil {
		f.Prices.Shipping.checkBands(b, f.Shipping.classes())
	}
}

// checkFactors: a factor of nothing would give the choice away; one that isn't sold is left
// out of its list.
func (p *PartPrices) checkFactors(b *binder, path string) {
	if p == nil {
		return
	}
	for list, factors := range map[string]map[string]Percent{"layers": p.Layers, "material": p.Material, "color": p.Color, "finish": p.Finish, "profile": p.Profile} {
		for _, key := range sortedKeys(factors) {
			if factors[key] == 0 {
				b.wrongAt(path+"."+list+"."+key, "is 0%%: write 100%% for no difference, or leave the line out where it isn't sold")
			}
		}
	}
}

func (s *ShippingPrices) checkBands(b *binder, classes []string) {
	reach := 0.0
	for i, band := range s.Bands {
		path := fmt.Sprintf("prices.shipping.bands[%d]", i+1)
		last := i == len(s.Bands)-1
		switch {
		case band.UpToMiles == 0 && !last && !b.has(path+".up_to_miles"):
			b.wrongAt(path+".up_to_miles", "is missing: only the last band reaches any distance")
		case band.UpToMiles > 0 && band.UpToMiles <= reach:
			b.wrongAt(path+".up_to_miles", "is not farther than the band before: write the nearest first")
		}
		reach = band.UpToMiles
		for _, class := range sortedKeys(band.Freight.Classes) {
			if !slices.Contains(classes, class) {
				b.wrongAt(path+".freight.classes."+class, "is not a freight class: write one of %s", strings.Join(classes, ", "))
			}
		}
	}
}

// book is the price book as the fit check takes it, nil where there is none.
func (p *Prices) book() *fitcheck.PriceBook {
	if p == nil {
		return nil
	}
	book := &fitcheck.PriceBook{Currency: orElse(string(p.Currency), "USD"), Dome: p.Dome.rates(), Unit: p.Unit.rates(),
		Allowance: fitcheck.Percent(p.Allowance)}
	for _, q := range p.Breaks {
		book.Breaks = append(book.Breaks, fitcheck.QuantityBreak{From: q.From, Off: fitcheck.Percent(q.Off)})
	}
	if s := p.Shipping; s != nil {
		book.Shipping = &fitcheck.ShippingPrices{Handling: fitcheck.Cents(s.Handling), Oversize: fitcheck.Cents(s.Oversize)}
		for _, q := range s.Quoted {
			book.Shipping.Quoted = append(book.Shipping.Quoted, string(q))
		}
		for _, band := range s.Bands {
			book.Shipping.Bands = append(book.Shipping.Bands, band.rates())
		}
	}
	return book
}

func (p *PartPrices) rates() *fitcheck.PartPrices {
	if p == nil {
		return nil
	}
	out := &fitcheck.PartPrices{Base: fitcheck.Cents(p.Base), PerSquareFoot: fitcheck.Cents(p.PerSquareFoot),
		Material: factors(p.Material), Color: factors(p.Color), Finish: factors(p.Finish), Profile: factors(p.Profile),
		Minimum: fitcheck.Cents(p.Minimum), Crating: fitcheck.Cents(p.Crating)}
	for key, factor := range p.Layers {
		if out.Layers == nil {
			out.Layers = map[int]fitcheck.Percent{}
		}
		n, _ := strconv.Atoi(key) // 1, 2 or 3: the binder takes no other
		out.Layers[n] = fitcheck.Percent(factor)
	}
	return out
}

func factors(in map[string]Percent) map[string]fitcheck.Percent {
	if in == nil {
		return nil
	}
	out := make(map[string]fitcheck.Percent, len(in))
	for key, factor := range in {
		out[key] = fitcheck.Percent(factor)
	}
	return out
}

func (b Band) rates() fitcheck.Band {
	out := fitcheck.Band{UpToMiles: b.UpToMiles,
		Parcel:  fitcheck.ParcelRate{Base: fitcheck.Cents(b.Parcel.Base), PerPound: fitcheck.Cents(b.Parcel.PerPound)},
		Freight: fitcheck.FreightRate{Minimum: fitcheck.Cents(b.Freight.Minimum)}}
	for _, key := range sortedKeys(b.Freight.Classes) {
		class, err := strconv.ParseFloat(key, 64)
		if err != nil {
			continue // told by the check
		}
		out.Freight.Classes = append(out.Freight.Classes,
			fitcheck.ClassRate{Class: class, PerHundred: fitcheck.Cents(b.Freight.Classes[key])})
	}
	return out
}
