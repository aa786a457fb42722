package shop

import "reflect"

// Form is how settings of one type are written, for the reference page and for editors.
type Form struct {
	Words    string   // in a few words: "length in inches"
	Examples []string // as they stand in a file
	Pattern  string   // a regular expression that what is sound matches; empty: any text
	Number   bool     // it may be written as a number too
}

// Forms are those of all types that are written as one word or number.
func Forms() map[reflect.Type]Form {
	return map[reflect.Type]Form{
		reflect.TypeFor[Inches]():   {"length in inches", []string{"1.5", "3/8", "25 1/2"}, inchesForm.String(), true},
		reflect.TypeFor[Money]():    {"amount of money", []string{"12.50", "$1,250"}, moneyForm.String(), true},
		reflect.TypeFor[Percent]():  {"whole percentage from 0% to 1000%", []string{"25%", "100%"}, `^\s*\d{1,4}\s*%?\s*$`, true},
		reflect.TypeFor[Phone]():    {"US phone number", []string{"(218) 555-0142"}, `^\D*1?\D*[2-9]\d\D*\d\D*[2-9](?:\D*\d){6}\D*$`, true},
		reflect.TypeFor[Mail]():     {"mail address", []string{"orders@example.com"}, `^\S+@\S+$`, false},
		reflect.TypeFor[Website]():  {"web address", []string{"https://www.example.com"}, `^https?://[^/]+`, false},
		reflect.TypeFor[ZIP]():      {"five-digit ZIP code, in quotes", []string{`"55802"`}, zipForm.String(), true},
		reflect.TypeFor[State]():    {"state's two-letter postal code", []string{"MN"}, `^[A-Za-z]{2}$`, false},
		reflect.TypeFor[Zone]():     {"time zone by its name", []string{"America/Chicago"}, `/`, false},
		reflect.TypeFor[Span]():     {"length of time", []string{"8s", "5m", "24h", "2 days"}, `^\s*\d{1,6}(?:\.\d{1,3})? ?[A-Za-z]+\s*$`, false},
		reflect.TypeFor[Day]():      {"opening hours", []string{"8:00-17:00", "8:00-12:00, 13:00-17:00", "closed"}, `\d|^\s*[Cc][Ll][Oo][Ss][Ee][Dd]\s*$`, false},
		reflect.TypeFor[Date]():     {"date", []string{"2026-07-06"}, `^\d{4}-\d{2}-\d{2}$`, false},
		reflect.TypeFor[Currency](): {"currency's three letters", []string{"USD"}, currencyForm.String(), false},
		reflect.TypeFor[Outline]():  {"size in inches", []string{"26 x 52", "30 round"}, `[xX×]|[Rr][Oo][Uu][Nn][Dd]`, false},
		reflect.TypeFor[States]():   {"`all`, `contiguous` (the 48 states and DC), or a list of states", []string{"all", "[MN, WI]"}, `^(?:all|contiguous)$`, false},
	}
}

// Allowed are the values of a topic: those that a tag `of` or `keys` of a setting names.
func Allowed(topic string) []string { return allowed(topic) }

// HolidayNames are the holidays that a file can name.
func HolidayNames() []string {
	var out []string
	for _, h := range yearlyHolidays {
		out = append(out, h.names...)
	}
	return out
}

// Defaults are the settings of a file that says nothing.
func Defaults() *File { return defaults() }
