package shop

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// plainWord can stand in YAML without quotes, and is a text there.
var plainWord = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_.-]*[0-9][A-Za-z0-9_.-]*$`)

// yaml is a size that lies ready, as one line of a shop file.
func (s StockItem) yaml(size string) string {
	code := s.Code
	if !plainWord.MatchString(code) {
		code = strconv.Quote(code)
	}
	fields := []string{"code: " + code, "part: " + s.Part, "size: " + size}
	if s.Profile != "" {
		fields = append(fields, "profile: "+s.Profile)
	}
	fields = append(fields, fmt.Sprintf("layers: %d", s.Layers), "material: "+s.Material, "colors: ["+strings.Join(s.Colors, ", ")+"]")
	if s.Finish != "" {
		fields = append(fields, "finish: "+s.Finish)
	}
	return "{" + strings.Join(fields, ", ") + "}"
}

// String is an amount as shop files have it.
func (m Money) String() string {
	if m%100 == 0 {
		return fmt.Sprintf("$%d", m/100)
	}
	return fmt.Sprintf("$%d.%02d", m/100, m%100)
}

func (p Percent) String() string { return fmt.Sprintf("%d%%", int(p)) }

// yaml is what a part costs, as the lines of a shop file.
func (p *PartPrices) yaml(part string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:\n  base: %s\n  per_square_foot: %s\n", part, p.Base, p.PerSquareFoot)
	for _, name := range factorNames {
		factors := *p.factor(name)
		if len(factors) == 0 {
			continue
		}
		var list []string
		for _, choice := range allowed(name) {
			if factor, ok := factors[choice]; ok {
				list = append(list, choice+": "+factor.String())
			}
		}
		fmt.Fprintf(&b, "  %s: {%s}\n", name, strings.Join(list, ", "))
	}
	if p.Minimum != 0 {
		fmt.Fprintf(&b, "  minimum: %s\n", p.Minimum)
	}
	if p.Crating != 0 {
		fmt.Fprintf(&b, "  crating: %s\n", p.Crating)
	}
	return b.String()
}

var factorNames = []string{"layers", "material", "color", "finish", "profile"}

func (p *PartPrices) factor(name string) *map[string]Percent {
	return map[string]*map[string]Percent{"layers": &p.Layers, "material": &p.Material, "color": &p.Color, "finish": &p.Finish, "profile": &p.Profile}[name]
}

func breaksYAML(breaks []Break) string {
	var b strings.Builder
	b.WriteString("breaks:\n")
	for _, one := range breaks {
		fmt.Fprintf(&b, "  - {from: %d, off: %s}\n", one.From, one.Off)
	}
	return b.String()
}
