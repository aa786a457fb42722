package shop

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// ExportStock writes the sizes of a shop file as the table that ImportStock reads.
func (f *File) ExportStock(w io.Writer) error {
	rows := [][]string{{"code", "part", "size", "profile", "layers", "material", "colors", "finish"}}
	for _, s := range f.Stock {
		rows = append(rows, []string{s.Code, s.Part, s.Size.String(), s.Profile, strconv.Itoa(s.Layers), s.Material, strings.Join(s.Colors, "/"), s.Finish})
	}
	return writeRows(w, rows)
}

// ExportPrices writes the prices of a shop file as the table that ImportPrices reads.
func (f *File) ExportPrices(w io.Writer) error {
	rows := [][]string{priceColumns}
	if f.Prices != nil {
		rows = append(rows, f.Prices.Dome.rows("dome")...)
		rows = append(rows, f.Prices.Unit.rows("unit")...)
		for _, one := range f.Prices.Breaks {
			rows = append(rows, []string{"", "break", strconv.Itoa(one.From), one.Off.String()})
		}
		rows = append(rows, []string{"", "allowance", "", f.Prices.Allowance.String()})
	}
	return writeRows(w, rows)
}

func (p *PartPrices) rows(part string) [][]string {
	if p == nil {
		return nil
	}
	rows := [][]string{{part, "base", "", p.Base.String()}, {part, "per square foot", "", p.PerSquareFoot.String()}}
	for _, name := range factorNames {
		for _, choice := range allowed(name) {
			if factor, ok := (*p.factor(name))[choice]; ok {
				rows = append(rows, []string{part, name, choice, factor.String()})
			}
		}
	}
	return append(rows, []string{part, "minimum", "", p.Minimum.String()}, []string{part, "crating", "", p.Crating.String()})
}

// String is the size as a shop file has it, in decimals where no tape shows it.
func (o Outline) String() string {
	if o.Diameter != 0 {
		return sideWords(o.Diameter) + " round"
	}
	return sideWords(o.Width) + " x " + sideWords(o.Length)
}

func writeRows(w io.Writer, rows [][]string) error {
	table := csv.NewWriter(w)
	if err := table.WriteAll(rows); err != nil {
		return fmt.Errorf("write the table: %w", err)
	}
	return nil
}
