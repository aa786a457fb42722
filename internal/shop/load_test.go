package shop

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"example.com/intake-bot/deploy"
	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

const smallest = `name: Larkspur Domes
phone: 802-555-0142
email: hello@larkspur.example
address: {street: 1 Mill Road, city: Barre, state: VT, zip: "05641"}
time_zone: America/New_York
hours: {monday: 9 am - 5 pm}
`

// with puts a line of YAML after the smallest sound file, as line 7.
func with(line string) string { return smallest + line + "\n" }

// without leaves a line out of the smallest file, or puts another in its place.
func without(key string, instead ...string) string {
	var out []string
	for _, l := range strings.Split(strings.TrimSuffix(smallest, "\n"), "\n") {
		if strings.HasPrefix(l, key+":") {
			out = append(out, instead...)
			continue
		}
		out = append(out, l)
	}
	return strings.Join(out, "\n") + "\n"
}

func TestMistakesSayWhereAndWhatWouldBeRight(t *testing.T) {
	for _, c := range []struct{ file, want string }{
		{"", "1:1: the file is empty"},
		{"name: [", "1:7: not YAML"},
		{"name: a\nname: b\n", "2:1: not YAML"},
		{"- a\n- b\n", "1:1: settings are wanted here"},
		{smallest + "---\nname: b\n", "8:1: a second document"},
		{without("name"), "1:1: name: is missing: what the shop is called"},
		{without("name", "name: ''"), "1:7: name: is empty"},
		{without("name", "name: true"), `1:7: name: a text is wanted here: put "true" in quotes`},
		{without("name", "name: [a]"), "1:7: name: one value is wanted here, not a list"},
		{without("phone", "phone: 555-0142"), `2:8: phone: "555-0142" is not a US phone number: write it like (218) 555-0142`},
		{without("phone", "phone: 118-555-0142"), "2:8: phone:"},
		{without("email", "email: shop at example.com"), "3:8: email: \"shop at example.com\" is not a mail address"},
		{without("address", "address:", "  street: 1 Mill Road", "  city: Barre", "  state: Vermont", "  zip: 5641"),
			`7:10: address.state: "Vermont" is not a state's postal code: write its two letters`},
		{without("address", "address:", "  street: 1 Mill Road", "  city: Barre", "  state: VT", "  zip: 5641"),
			`8:8: address.zip: "5641" is not a ZIP code`},
		{without("address", "address:", "  street: 1 Mill Road", "  city: Barre", "  state: VT"),
			"5:3: address.zip: is missing"},
		{without("address", "address:", "  street: 1 Mill Road", "  city: Barre", "  state: VT", "  zip: \"90210\""),
			"7:10: address.state: is VT, but the ZIP code 90210 is in Beverly Hills, CA"},
		{without("address", "address:", "  street: 1 Mill Road", "  city: Barre", "  state: VT", "  zip: \"00000\""),
			"8:8: address.zip: 00000 is no ZIP code that the post uses"},
		{without("time_zone", "time_zone: EST"), "5:12: time_zone: \"EST\" is not a time zone: write it like America/Chicago"},
		{without("time_zone", "time_zone: America/Duluth"), "5:12: time_zone:"},
		{without("hours", "hours: {monday: 8-25}"), `6:17: hours.monday: "8-25" is not opening hours: write 8:00-17:00`},
		{without("hours", "hours: {monday: 9-5}"), "6:17: hours.monday: \"9-5\" closes before it opens"},
		{without("hours", `hours: {monday: "8-12, 11-17"}`), "6:17: hours.monday: \"11-17\" overlaps"},
		{without("hours", "hours: {monday: closed}"), "6:8: hours: is never open"},
		{without("hours", "hours: {mon: 8-17}"), "6:9: hours.mon: there is no such setting; here are: monday, tuesday"},
		{without("hours", "hours: 8-17"), "6:8: hours: settings are wanted here (monday, tuesday, wednesday, thursday, friday, saturday, sunday), not a single value"},
		{with("holidays: [Thanksgivin]"), `7:12: holidays[1]: "Thanksgivin" is not a holiday with a name here: write one of New Year's Day;`},
		{with("holidays: [{name: Move}]"), "7:12: holidays[1]: has no dates"},
		{with("holidays: [{name: Move, date: 2026-02-30}]"), `7:31: holidays[1].date: "2026-02-30" is not a date`},
		{with("holidays: [{name: Move, from: 2026-03-02, to: 2026-03-01}]"), "7:47: holidays[1].to: is before its first day"},
		{with("holidays: [{name: Move, date: 2026-03-02, to: 2026-03-01}]"), "7:12: holidays[1]: has both"},
		{with("sells: {materials: [acrylic, glass]}"), `7:30: sells.materials[2]: "glass" is not one of acrylic, polycarbonate`},
		{with("sells: {layers: []}"), "7:17: sells.layers: is empty: write at least one, or leave the setting out"},
		{without("name", `name: "Lark\u202Espur"`), `1:7: name: "Lark\u202espur" holds a character that does not show`},
		{with("sells: {layers: [4]}"), "7:18: sells.layers[1]: 4 is too much: write 3 or less"},
		{with("sells: {layers: 2}"), "7:17: sells.layers: a list is wanted here"},
		{with("sells: {colors: [red]}"), `7:18: sells.colors[1]: "red" is not one of clear, white, bronze, other`},
		{with("ships_to: everywhere"), `7:11: ships_to: "everywhere" is not where a shop ships to: write all, contiguous, or a list`},
		{with("ships_to: [MN, XX]"), `7:16: ships_to[2]: "XX" is not a state's postal code`},
		{with("tolerances: {flashing: 3/8 ft}"), `7:24: tolerances.flashing: "3/8 ft" is not a length in inches: write it like 1.5 or 3/8 or 25 1/2`},
		{with("tolerances: {flashing: 1/3}"), `7:24: tolerances.flashing: "1/3" is on no tape`},
		{with("tolerances: {flashing: 0}"), "7:24: tolerances.flashing: \"0\" is not a length"},
		{with("tolerances: {flashing: 3/0}"), "7:24: tolerances.flashing:"},
		{with("tolerances: {cap_gap: {sound_from: 1/4, sound_to: 1/8}}"), "7:51: tolerances.cap_gap.sound_to: 1/8 is less than sound_from, 1/4"},
		{with("tolerances: {cap_gap: {aim_for: 1}}"), "7:33: tolerances.cap_gap.aim_for: 1 is not a sound gap: write one from 1/4 to 1/2"},
		{with("making: {dome: {smallest: 60, largest: 40}}"), "7:40: making.dome.largest: 40 is less than smallest, 60"},
		{with("stock: [{code: A, part: lid, size: 26 x 26, layers: 1, material: acrylic, colors: [clear]}]"),
			`7:25: stock[1].part: "lid" is not one of dome, unit`},
		{with("stock: [{code: A, part: dome, size: 26, layers: 1, material: acrylic, colors: [clear]}]"),
			`7:37: stock[1].size: "26" is not a size: write it like 26 x 52`},
		{with("stock: [{code: A, part: dome, size: 26 x 26, layers: 2, material: acrylic, colors: [clear]}]"),
			"7:84: stock[1].colors: has 1 for layers: 2"},
		{with("stock: [{code: A, part: unit, size: 26 x 26, layers: 1, material: acrylic, colors: [clear]}]"),
			"7:9: stock[1].finish: is missing: a unit has metal"},
		{with("stock: [{code: A, part: dome, size: 26 x 26, layers: 1, material: acrylic, colors: [clear]}, {code: A, part: dome, size: 30 x 30, layers: 1, material: acrylic, colors: [clear]}]"),
			"7:101: stock[2].code: \"A\" is the code of stock[1] too"},
		{with("prices: {dome: {base: 12 dollars, per_square_foot: 1}}"), `7:23: prices.dome.base: "12 dollars" is not an amount of money: write it like 12.50 or $1,250`},
		{with("prices: {dome: {base: 12.505, per_square_foot: 1}}"), "7:23: prices.dome.base:"},
		{with("prices: {dome: {base: 12}}"), "7:16: prices.dome.per_square_foot: is missing"},
		{with("prices: {dome: {base: 12, per_square_foot: 1, layers: {4: 100%}}}"), "7:56: prices.dome.layers.4: is not one of 1, 2, 3"},
		{with("prices: {dome: {base: 12, per_square_foot: 1, layers: {2: double}}}"), `7:59: prices.dome.layers.2: "double" is not a percentage`},
		{with("prices: {breaks: [{from: 5, off: 5%}, {from: 5, off: 9%}]}"), "7:46: prices.breaks[2].from: is not more than the one before"},
		{with("prices: {currency: dollars}"), "7:20: prices.currency: \"dollars\" is not a currency"},
		{"\ufeffname: [", "1:7: not YAML"},
		{with("prices: {currency: EUR}"), "7:20: prices.currency: is EUR, but customers are told dollars"},
		{with("prices: {dome: {base: 12, per_square_foot: 1, layers: {1: 100%, 2: 0%}}}"), "7:68: prices.dome.layers.2: is 0%: write 100% for no difference"},
		{with("prices: {breaks: [{from: 5, off: 5%}, {from: 10, off: 2%}]}"), "7:55: prices.breaks[2].off: is less than for fewer pieces"},
		{with("prices: {allowance: 1000%}"), "7:21: prices.allowance: is over 100%"},
		{with("prices: {shipping: {bands: [{parcel: {base: 1, per_pound: 1}, freight: {minimum: 1, classes: {99: 1}}}]}}"),
			"7:99: prices.shipping.bands[1].freight.classes.99: is not a freight class: write one of 400, 300"},
		{with("shipping: {dim_divisor: lots}"), `7:25: shipping.dim_divisor: "lots" is not a whole number`},
		{with("shipping: {sheets: {thickness: [{thickness: 1/8}, {up_to: 60, thickness: 1/4}]}}"),
			"7:33: shipping.sheets.thickness[1].up_to: is missing: only the last"},
		{with("replies: {quiet: soon}"), `7:18: replies.quiet: "soon" is not a length of time: write a number and its unit`},
		{with("replies: {quiet: 60s}"), "7:10: replies.at_most: is shorter than quiet"},
		{with("reminders: {after: [5m]}"), "7:21: reminders.after[1]: comes too soon"},
		{with("reminders: {after: [10 days]}"), "7:12: reminders.give_up: comes before the last reminder"},
		{with("reminders: {after: [1 day, 2 days, 3 days]}"), "7:20: reminders.after: has 3 reminders: write two at most"},
		{with("show_estimate: maybe"), `7:16: show_estimate: "maybe" is neither true nor false`},
		{with("wording: {greeting: Hello}"), "7:21: wording.greeting: names with values are wanted here"},
		{with("answers: [{question: Do you install?}]"), "7:11: answers[1].answer: is missing: by language"},
		{with("answers: [{question: Do you install?, answer: {de: Nein.}}]"), "7:52: answers[1].answer.de: is not a language of the bot: write en or es"},
		{with("colour: red"), "7:1: colour: there is no such setting; here are: name, assistant"},
		{with("website: pinwheel"), "7:10: website: \"pinwheel\" is not a web address"},
		{with("assistant: &x helper"), "7:12: assistant: anchors, aliases and tags are not used"},
	} {
		_, err := Parse([]byte(c.file))
		var m *Mistakes
		if !errors.As(err, &m) {
			t.Errorf("%q: no mistakes found (%v), want %q", c.file, err, c.want)
			continue
		}
		if !has(m, c.want) {
			t.Errorf("%q:\n%s\nwant a line that begins %q", c.file, m, c.want)
		}
	}
}

func has(m *Mistakes, start string) bool {
	for _, one := range m.List {
		if strings.HasPrefix(one.String(), start) {
			return true
		}
	}
	return false
}

func TestAllMistakesAreToldAtOnceInOrder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.yaml")
	text := without("phone", "phone: none") + "ships_to: [ZZ]\nreplies: {quiet: x}\ncolour: red\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Load(path)
	if err == nil {
		t.Fatal("no mistakes found")
	}
	lines := strings.Split(err.Error(), "\n")
	want := []string{"2:8: phone", "7:12: ships_to[1]", "8:18: replies.quiet", "9:1: colour"}
	if len(lines) != len(want) {
		t.Fatalf("%d mistakes, want %d:\n%s", len(lines), len(want), err)
	}
	for i := range want {
		if !strings.HasPrefix(lines[i], path+":"+want[i]) {
			t.Errorf("line %d is %q, want %q after the file's name", i+1, lines[i], want[i])
		}
	}
}

func TestWordingIsCheckedWhereItStands(t *testing.T) {
	refuse := func(key, language, text string) error {
		if key == "greeting" && language == "es" {
			return errors.New("has no place for the name")
		}
		return nil
	}
	_, err := Parse([]byte(with("wording:\n  greeting:\n    en: Hi\n    es: Hola")), refuse)
	if err == nil || err.Error() != "10:9: wording.greeting.es: has no place for the name" {
		t.Errorf("got %v", err)
	}
	if _, err := Parse([]byte(with("wording:\n  greeting:\n    en: Hi")), refuse); err != nil {
		t.Error(err)
	}
}

func TestMissingFileIsAnErrorThatNamesIt(t *testing.T) {
	if _, err := Load("no/such/shop.yaml"); err == nil || !strings.Contains(err.Error(), "no/such/shop.yaml") {
		t.Errorf("got %v", err)
	}
}

func TestSmallestFileHasTheDefaults(t *testing.T) {
	f, err := Parse([]byte(smallest))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := f.Rules(), fitcheck.DefaultRules(); !reflect.DeepEqual(got, want) {
		t.Errorf("rules are %+v\nwant the defaults %+v", got, want)
	}
	if f.Phone != "(802) 555-0142" || f.Phone.E164() != "+18025550142" {
		t.Errorf("phone is %q, %s", f.Phone, f.Phone.E164())
	}
	if got := f.Address.String(); got != "1 Mill Road, Barre, VT 05641" {
		t.Errorf("address is %q", got)
	}
}

func TestExampleShopLoadsAndShowsEverySetting(t *testing.T) {
	f, err := Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	shop, err := f.Conversation()
	if err != nil {
		t.Fatal(err)
	}
	if shop.Name != "Pinwheel Dome Supply" || shop.Zone.String() != "America/Chicago" || !shop.ShowEstimate {
		t.Errorf("the talk's shop is %+v", shop)
	}
	if want := conversation.DefaultSilences(); !reflect.DeepEqual(shop.Silences, want) {
		t.Errorf("silences are %v, want %v", shop.Silences, want)
	}
	if len(f.Answers) < 12 {
		t.Errorf("%d answers, want a good dozen", len(f.Answers))
	}
	var unshown []string
	eachSetting(reflect.TypeFor[File](), "", func(path string) {
		if path != "prices.dome.finish" && !shown(f.at, path) { // a dome has no metal
			unshown = append(unshown, path)
		}
	})
	if len(unshown) > 0 {
		t.Errorf("settings that the example does not show: %s", strings.Join(unshown, ", "))
	}
}

// eachSetting calls f with the path of every setting, lists without their numbers.
func eachSetting(t reflect.Type, path string, f func(string)) {
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice:
		if t != reflect.TypeFor[Day]() && t != reflect.TypeFor[States]() {
			eachSetting(t.Elem(), path, f)
		}
	case reflect.Struct:
		for i := range t.NumField() {
			field := t.Field(i)
			if name := field.Tag.Get("yaml"); name != "" {
				f(join(path, name))
				eachSetting(field.Type, join(path, name), f)
			}
		}
	}
}

func shown(at map[string]position, path string) bool {
	for full := range at {
		if unnumbered(full) == path {
			return true
		}
	}
	return false
}

func unnumbered(path string) string {
	for {
		i := strings.IndexByte(path, '[')
		if i < 0 {
			return path
		}
		path = path[:i] + path[i+strings.IndexByte(path[i:], ']')+1:]
	}
}

func TestExampleRulesAreTheDefaultsWhereItSaysSo(t *testing.T) {
	f, err := Parse([]byte(deploy.ExampleShop))
	if err != nil {
		t.Fatal(err)
	}
	got, want := f.Rules(), fitcheck.DefaultRules()
	if !reflect.DeepEqual(got.Ship, want.Ship) || got.Gap != want.Gap || got.Grip != want.Grip || got.Measure != want.Measure ||
		got.Flashing != want.Flashing || got.Making != want.Making || !reflect.DeepEqual(got.Sells, want.Sells) {
		t.Errorf("rules differ from the defaults:\n%+v\n%+v", got, want)
	}
	if got.Prices.Dome.Layers[2] != 165 || got.Prices.Unit.Base != 11800 || got.Prices.Shipping.Bands[0].Parcel.PerPound != 55 {
		t.Errorf("prices are %+v", got.Prices)
	}
	item := got.Stock[1]
	if item.Size.Width != 26*fitcheck.Inch || item.Size.Length != 50*fitcheck.Inch || item.Color.Inner != "white" || item.Profile != "dome" {
		t.Errorf("the second stock item is %+v", item)
	}
}

func TestScalars(t *testing.T) {
	for _, c := range []struct {
		into scalar
		text string
		want any
	}{
		{new(Inches), "3/8", Inches(3 * fitcheck.Inch / 8)},
		{new(Inches), "1 1/2", Inches(3 * fitcheck.Inch / 2)},
		{new(Inches), "25-7/8\"", Inches(25*fitcheck.Inch + 7*fitcheck.Inch/8)},
		{new(Inches), "0.5 in", Inches(fitcheck.Inch / 2)},
		{new(Money), "12", Money(1200)},
		{new(Money), "12.5", Money(1250)},
		{new(Money), "$1,250.05", Money(125005)},
		{new(Money), "0", Money(0)},
		{new(Percent), "165%", Percent(165)},
		{new(Span), "90 minutes", Span(90 * time.Minute)},
		{new(Span), "2 days", Span(48 * time.Hour)},
		{new(Span), "1.5s", Span(1500 * time.Millisecond)},
		{new(Day), "8 am - 5:30 pm", Day{{480, 1050}}},
		{new(Day), "8:00-12:00, 13:00-24:00", Day{{480, 720}, {780, 1440}}},
		{new(Day), "12 am to 12 pm", Day{{0, 720}}},
		{new(ZIP), "02134", ZIP("02134")},
		{new(Phone), "1 (218) 555-0142", Phone("(218) 555-0142")},
		{new(Outline), "52 x 26", Outline{Width: 26 * fitcheck.Inch, Length: 52 * fitcheck.Inch}},
		{new(Outline), "30 1/2 round", Outline{Diameter: 61 * fitcheck.Inch / 2}},
	} {
		if err := c.into.set(c.text); err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := reflect.ValueOf(c.into).Elem().Interface(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q is %v, want %v", c.text, got, c.want)
		}
	}
}

// No text, however mangled, may do more than be refused.
func FuzzParse(f *testing.F) {
	f.Add([]byte(smallest))
	f.Add([]byte(deploy.ExampleShop))
	f.Add([]byte("a: &x [*x]\n? b\n: !!int c\n<<: *x"))
	f.Fuzz(func(t *testing.T, text []byte) {
		file, err := Parse(text)
		if (file == nil) == (err == nil) {
			t.Errorf("file %v, error %v", file, err)
		}
	})
}
