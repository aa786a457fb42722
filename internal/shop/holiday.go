package shop

import (
	"fmt"
	"reflect"
	"strings"
	"time"

	"github.com/goccy/go-yaml/ast"
	"github.com/rickar/cal/v2"
	"github.com/rickar/cal/v2/aa"
	"github.com/rickar/cal/v2/us"
)

// Holiday is a day, or several in a row, on which the shop is closed. It is written as
// the name of a holiday that comes every year (Thanksgiving), or with its dates:
// {name: Stocktaking, from: 2026-07-06, to: 2026-07-08}.
type Holiday struct {
	// Name is what it is called.
	Name string `yaml:"name" required:"what the day is called"`
	// Date is the day, for a single one.
	Date Date `yaml:"date"`
	// From and To are the first and the last day, for several.
	From Date `yaml:"from"`
	To   Date `yaml:"to"`

	yearly *cal.Holiday
}

// Date is a day of the calendar, written 2026-07-06.
type Date struct{ Year, Month, Day int }

func (d *Date) set(text string) error {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return fmt.Errorf("%q is not a date: write year, month and day, like 2026-07-06", text)
	}
	*d = dateOf(t)
	return nil
}

func dateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, int(m), d}
}

func (d Date) number() int { return d.Year*10000 + d.Month*100 + d.Day }

// yearlyHolidays are those that can be named, with the names that people use. A shop names
// the ones it keeps: few close on all federal ones.
var yearlyHolidays = []struct {
	names []string
	day   *cal.Holiday
}{
	{[]string{"New Year's Day", "New Year"}, us.NewYear},
	{[]string{"Martin Luther King Day", "Martin Luther King Jr. Day", "MLK Day"}, us.MlkDay},
	{[]string{"Presidents' Day", "Washington's Birthday"}, us.PresidentsDay},
	{[]string{"Good Friday"}, aa.GoodFriday},
	{[]string{"Memorial Day"}, us.MemorialDay},
	{[]string{"Juneteenth"}, us.Juneteenth},
	{[]string{"Independence Day", "Fourth of July", "July 4"}, us.IndependenceDay},
	{[]string{"Labor Day"}, us.LaborDay},
	{[]string{"Columbus Day", "Indigenous Peoples' Day"}, us.ColumbusDay},
	{[]string{"Veterans Day"}, us.VeteransDay},
	{[]string{"Thanksgiving Day", "Thanksgiving"}, us.ThanksgivingDay},
	{[]string{"Day after Thanksgiving"}, us.DayAfterThanksgivingDay},
	{[]string{"Christmas Eve"}, dayOfYear("Christmas Eve", time.December, 24)},
	{[]string{"Christmas Day", "Christmas"}, us.ChristmasDay},
	{[]string{"New Year's Eve"}, dayOfYear("New Year's Eve", time.December, 31)},
}

func dayOfYear(name string, m time.Month, d int) *cal.Holiday {
	return &cal.Holiday{Name: name, Month: m, Day: d, Func: cal.CalcDayOfMonth}
}

func yearlyNamed(name string) *cal.Holiday {
	for _, h := range yearlyHolidays {
		for _, n := range h.names {
			if fold(n) == fold(name) {
				return h.day
			}
		}
	}
	return nil
}

func fold(name string) string {
	return strings.ToLower(strings.NewReplacer("'", "", "’", "", ".", "").Replace(strings.TrimSpace(name)))
}

func (h *Holiday) bind(b *binder, path string, node ast.Node) {
	if name, ok := textOf(node); ok {
		h.Name, h.yearly = name, yearlyNamed(name)
		if h.yearly == nil {
			b.wrongAt(path, "%q is not a holiday with a name here: write one of %s, or its date, like {name: Stocktaking, date: 2026-07-06}",
				name, strings.Join(holidayNames(), "; "))
		}
		return
	}
	b.structure(path, node, reflect.ValueOf(h).Elem())
	if b.has(path + ".date") {
		h.From, h.To = h.Date, h.Date
	}
	switch {
	case b.has(path+".date") && (b.has(path+".from") || b.has(path+".to")):
		b.wrongAt(path, "has both a date and a span: write date, or from and to")
	case h.From == Date{} || h.To == Date{}:
		b.wrongAt(path, "has no dates: write date: 2026-07-06, or from and to")
	case h.From.number() > h.To.number():
		b.wrongAt(path+".to", "is before its first day: write the later date here")
	}
}

func holidayNames() []string {
	var out []string
	for _, h := range yearlyHolidays {
		out = append(out, h.names[0])
	}
	return out
}
