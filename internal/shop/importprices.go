package shop

import (
	"slices"
	"strconv"
	"strings"
)

var (
	priceColumns = []string{"part", "price", "choice", "value"}
	priceOthers  = map[string]string{"line": "price", "name": "price", "option": "choice", "amount": "value", "kind": "part"}
	priceNames   = []string{"base", "per_square_foot", "layers", "material", "color", "finish", "profile", "minimum", "crating"}
)

// priceTable is what a table of prices says. A part that it has no line of stays nil.
type priceTable struct {
	parts     map[string]*PartPrices
	allowance *Percent
	breaks    []Break
	seen      map[string]int // line of each price
}

// ImportPrices puts the price lines of a table in place of those of a shop file: all of a
// part that the table speaks of, the breaks and the allowance where it has lines of them.
// What it is silent about stays, what shipping costs always. Where the table has mistakes
// the error is TableMistakes with all of them, and nothing is made.
func ImportPrices(text, csv []byte, checks ...WordingCheck) (Imported, error) {
	f, err := Parse(text, checks...)
	if err != nil {
		return Imported{}, err
	}
	t := readTable(csv, priceColumns, priceColumns, priceOthers)
	p := t.prices()
	if err := t.told(); err != nil {
		return Imported{}, err
	}
	if len(p.seen) == 0 {
		return Imported{}, TableMistakes{{1, "", "there is no line below the headings"}}
	}
	want := *f
	want.Prices = &Prices{}
	if f.Prices != nil {
		*want.Prices = *f.Prices
	}
	out := Imported{Text: string(text)}
	if err := p.write(&out, want.Prices); err != nil {
		return Imported{}, err
	}
	out.compare(f.Prices.lines(), want.Prices.lines())
	return out, changed(out.Text, &want, checks)
}

// write puts the prices into a shop file's text and, alike, into what was read of it.
func (p *priceTable) write(out *Imported, into *Prices) (err error) {
	replace := func(path, setting string) {
		if err == nil {
			out.Text, err = Replace(out.Text, path, setting)
		}
	}
	if dome := p.parts["dome"]; dome != nil {
		into.Dome = dome
		replace("prices.dome", dome.yaml("dome"))
	}
	if unit := p.parts["unit"]; unit != nil {
		into.Unit = unit
		replace("prices.unit", unit.yaml("unit"))
	}
	if p.breaks != nil {
		into.Breaks = p.breaks
		replace("prices.breaks", breaksYAML(p.breaks))
	}
	if p.allowance != nil {
		into.Allowance = *p.allowance
		replace("prices.allowance", "allowance: "+p.allowance.String())
	}
	return err
}

// prices takes the rows as prices.
func (t *table) prices() *priceTable {
	p := &priceTable{parts: map[string]*PartPrices{}, seen: map[string]int{}}
	ends := map[string]int{} // last line of each part
	for _, r := range t.rows {
		name := headingName(r.cells["price"])
		r.wanted(map[string]string{"price": "write one of " + strings.Join(append(slices.Clone(priceNames), "allowance", "break"), ", "), "value": "write what it is"})
		if name == "" || r.cells["value"] == "" || !p.first(r, name) {
			continue
		}
		switch name {
		case "allowance":
			var v Percent
			if r.percent(&v) {
				p.allowance = &v
			}
		case "break", "breaks":
			p.addBreak(r)
		default:
			p.ofPart(r, name, ends)
		}
	}
	for _, part := range sortedKeys(p.parts) {
		for _, name := range priceNames[:2] {
			if p.seen[part+" "+name] == 0 {
				t.wrong(ends[part], "price", "a %s has prices, but no line %s: add it", part, name)
			}
		}
	}
	slices.SortFunc(p.breaks, func(a, b Break) int { return a.From - b.From })
	return p
}

// first says that this price was not in a line before.
func (p *priceTable) first(r row, name string) bool {
	key := strings.TrimSpace(strings.ToLower(r.cells["part"]) + " " + name)
	if choice := strings.ToLower(r.cells["choice"]); choice != "" {
		key += " " + choice
	}
	if line := p.seen[key]; line != 0 {
		r.t.wrong(r.line, "price", "is in line %d already: keep one", line)
		return false
	}
	p.seen[key] = r.line
	return true
}

func (p *priceTable) addBreak(r row) {
	from, err := strconv.Atoi(r.cells["choice"])
	if err != nil || from < 2 || from > 100000 {
		r.t.wrong(r.line, "choice", "%q is not a number of pieces: write from how many on the break holds, 2 or more", r.cells["choice"])
		return
	}
	var off Percent
	if !r.percent(&off) {
		return
	}
	if off > 100 {
		r.t.wrong(r.line, "value", "is over 100%%: write what is taken off, like 5%%")
		return
	}
	p.breaks = append(p.breaks, Break{from, off})
}

func (p *priceTable) ofPart(r row, name string, ends map[string]int) {
	part := r.choice("part", "part")
	if !slices.Contains(priceNames, name) {
		r.t.wrong(r.line, "price", "%q is not a price: write one of %s, allowance, break", r.cells["price"], strings.Join(priceNames, ", "))
		return
	}
	if part == "" {
		if r.cells["part"] == "" {
			r.t.wrong(r.line, "part", "is empty: write dome or unit")
		}
		return
	}
	if p.parts[part] == nil {
		p.parts[part] = &PartPrices{}
	}
	ends[part] = r.line
	prices := p.parts[part]
	if factors := prices.factor(name); factors != nil {
		r.factor(name, factors)
		return
	}
	if r.cells["choice"] != "" {
		r.t.wrong(r.line, "choice", "%s has no choice: leave it empty", name)
	}
	into := map[string]*Money{"base": &prices.Base, "per_square_foot": &prices.PerSquareFoot, "minimum": &prices.Minimum, "crating": &prices.Crating}[name]
	r.value("value", into)
}

// factor takes a line such as "layers, 2, 165%".
func (r row) factor(name string, into *map[string]Percent) {
	if r.cells["choice"] == "" {
		r.t.wrong(r.line, "choice", "is empty: write one of %s", strings.Join(allowed(name), ", "))
		return
	}
	choice := r.choice("choice", name)
	var v Percent
	if r.percent(&v) && choice != "" {
		if *into == nil {
			*into = map[string]Percent{}
		}
		(*into)[choice] = v
	}
}

// percent takes a value that is a share; spreadsheets write 165.00% for 165%.
func (r row) percent(into *Percent) bool {
	cell := r.cells["value"]
	for _, zeros := range []string{".00%", ".0%", ",00%", ",0%"} {
		if whole, ok := strings.CutSuffix(cell, zeros); ok {
			r.cells["value"] = whole + "%"
		}
	}
	return r.value("value", into)
}

// lines are the prices one by one, by name, to tell what changed.
func (p *Prices) lines() map[string]any {
	out := map[string]any{}
	if p == nil {
		return out
	}
	for name, part := range map[string]*PartPrices{"dome": p.Dome, "unit": p.Unit} {
		if part == nil {
			continue
		}
		for price, amount := range map[string]Money{"base": part.Base, "per_square_foot": part.PerSquareFoot, "minimum": part.Minimum, "crating": part.Crating} {
			if amount != 0 {
				out[name+" "+price] = amount
			}
		}
		for _, list := range factorNames {
			for choice, factor := range *part.factor(list) {
				out[name+" "+list+" "+choice] = factor
			}
		}
	}
	if p.Allowance != 0 {
		out["allowance"] = p.Allowance
	}
	for _, one := range p.Breaks {
		out["break "+strconv.Itoa(one.From)] = one.Off
	}
	return out
}
