package shop_test

import (
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"

	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/shop"
)

func example(t testing.TB) string {
	t.Helper()
	b, err := os.ReadFile("../../deploy/shop.example.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Sizes as spreadsheet programs write them, and what they are taken for.
func TestImportStockAsSpreadsheetsWriteIt(t *testing.T) {
	const head = "code,part,size,layers,material,colors,finish\n"
	want := shop.StockItem{Code: "U1", Part: "unit", Size: shop.Outline{Width: 25*fitcheck.Inch + fitcheck.Inch/2, Length: 49*fitcheck.Inch + fitcheck.Inch/2},
		Layers: 2, Material: "acrylic", Colors: []string{"clear", "white"}, Finish: "bronze_anodized"}
	for what, csv := range map[string]string{
		"plain":              head + "U1,unit,25 1/2 x 49 1/2,2,acrylic,clear/white,bronze_anodized\n",
		"byte order mark":    "\xEF\xBB\xBF" + head + "U1,unit,25.5 x 49.5,2,acrylic,clear/white,bronze_anodized\n",
		"semicolons, commas": strings.ReplaceAll(head, ",", ";") + "U1;unit;25,5 x 49,5;2;acrylic;clear, white;bronze_anodized\n",
		"tabs":               strings.ReplaceAll(head, ",", "\t") + "U1\tunit\t25-1/2x49-1/2\t2\tacrylic\tclear white\tbronze_anodized\n",
		"a word to itself":   "sep=;\n" + strings.ReplaceAll(head, ",", ";") + "U1;unit;25½ × 49½;2,0;acrylic;clear/white;bronze_anodized\n",
		"Windows' lines":     strings.ReplaceAll(head+"U1,unit,25 1/2 x 49 1/2,2,acrylic,clear/white,bronze_anodized\n,,,,,,\n", "\n", "\r\n"),
		"inch marks":         head + `U1,unit,"25 1/2"" x 49 1/2""",2,acrylic,clear/white,bronze_anodized` + "\n",
		"bare inch marks":    head + `U1,unit,25 1/2" x 49 1/2",2,acrylic,clear/white,bronze_anodized` + "\n",
		"words":              "SKU,Kind,Size,Layers,Material,Colours,Metal\nU1,Unit,25 1/2 in x 49 1/2 in,2.0,ACRYLIC,Clear over White,Bronze Anodized\n",
		"sides":              "Code,Part,Length,Width,Layers,Material,Colors,Finish\nU1,unit,\"49 1/2\",25.50,2,acrylic,clear+white,bronze anodized\n",
		"Windows' letters":   "\xA0" + head + "U1,unit,25\xBD x 49\xBD,2,acrylic,clear/white,bronze_anodized\n",
		"UTF-16":             utf16(head + "U1,unit,25½ x 49½,2,acrylic,clear/white,bronze_anodized\n"),
	} {
		got, err := shop.ImportStock([]byte(example(t)), []byte(csv))
		if err != nil {
			t.Errorf("%s: %v", what, err)
			continue
		}
		f, err := shop.Parse([]byte(got.Text))
		if err != nil || len(f.Stock) != 1 || !reflect.DeepEqual(f.Stock[0], want) {
			t.Errorf("%s: %v, %+v", what, err, f)
		}
	}
}

// utf16 is a text as "Unicode text" of a spreadsheet program.
func utf16(text string) string {
	b := []byte{0xFF, 0xFE}
	for _, r := range text { // all of the basic plane
		b = append(b, byte(r), byte(r>>8))
	}
	return string(b)
}

func TestImportStockLeavesTheRestAsItIsWritten(t *testing.T) {
	before := example(t)
	got, err := shop.ImportStock([]byte(before), []byte("code,part,size,layers,material,colors,finish\n"+
		"D2626-2CW,dome,26 x 26,2,acrylic,clear/white,\nnew one,dome,30.3 round,1,acrylic,clear,\nD2650-2CC,dome,26 x 50,2,acrylic,white/clear,\n"))
	if err != nil {
		t.Fatal(err)
	}
	head, rest, _ := strings.Cut(before, "stock:\n")
	_, tail, _ := strings.Cut(rest, "\n\n# ---- what it costs")
	want := head + `stock:
  - {code: D2626-2CW, part: dome, size: 26 x 26, layers: 2, material: acrylic, colors: [clear, white]}
  - {code: "new one", part: dome, size: 30.3 round, layers: 1, material: acrylic, colors: [clear]}
  - {code: D2650-2CC, part: dome, size: 26 x 50, layers: 2, material: acrylic, colors: [white, clear]}

# ---- what it costs` + tail
	if got.Text != want {
		t.Errorf("the file is now\n%s", got.Text)
	}
	if !reflect.DeepEqual(got.New, []string{"new one"}) || !reflect.DeepEqual(got.Changed, []string{"D2650-2CC"}) || len(got.Gone) != 5 || len(got.AsItWas) != 1 {
		t.Errorf("%+v", got)
	}
}

// Every mistake is told at once, with its line and column and what would be right.
func TestImportStockMistakes(t *testing.T) {
	const head = "code,part,size,layers,material,colors,finish\n"
	for _, c := range []struct{ csv, want string }{
		{"", "line 1: the file is empty"},
		{"code,part\n", "line 1, layers: the column is missing"},
		{"code,price,part,size,layers,material,colors\n", "line 1, price: there is no such column"},
		{"code,code,part,size,layers,material,colors\n", "line 1, code: is there twice"},
		{head, "no line below the headings"},
		{head + "A,dome,26 x 26,2,acrylic,clear/white,\nA,dome,26 x 27,2,acrylic,clear/white,\n", `line 3, code: "A" is the code of line 2 too`},
		{head + "A,door,26 x 26,1,acrylic,clear,\n", `line 2, part: "door" is not one of dome, unit`},
		{head + "A,dome,26 by 26,1,acrylic,clear,\n", `line 2, size: "26 by 26" is not a size: write it like 26 x 52`},
		{head + "A,dome,,1,acrylic,clear,\n", "line 2, size: is empty"},
		{head + "A,dome,26 x 26,4,acrylic,clear,\n", `line 2, layers: "4" is not one of 1, 2, 3`},
		{head + "A,dome,26 x 26,2,acrylic,clear,\n", "line 2, colors: has 1 for 2 layers"},
		{head + "A,dome,26 x 26,1,wood,clear,\n", `line 2, material: "wood" is not one of acrylic, polycarbonate`},
		{head + "A,dome,26 x 26,1,acrylic,pink,\n", `line 2, colors: "pink" is not one of clear`},
		{head + "A,unit,26 x 26,1,acrylic,clear,\n", "line 2, finish: is empty: a unit has metal"},
		{head + "A,dome,3-Aug,1,acrylic,clear,\n", "line 2, size: \"3-Aug\" is a date"},
		{head + ",dome,26 x 26,1,acrylic,clear,\n", "line 2, code: is empty"},
		{head + "A,dome,26 x 26,2,acrylic,clear,white,,\n", "line 2, finish: \"white\" is not one of mill"},
		{head + "A,dome,26 x 26,1,acrylic,clear,,x\n", `line 2: "x" stands in a column without a heading`},
		{head + "A,dome,26 x 26,1,acrylic,clear,\"\nB,dome,26 x 26,1,acrylic,clear,\n", "is a quote missing?"},
		{"code,part,width,length,layers,material,colors\nA,dome,26,,1,acrylic,clear\n", "line 2, length: is empty: a size has two sides"},
		{"code,part,width,length,size,layers,material,colors\nA,dome,26,26,26 x 26,1,acrylic,clear\n", "line 2, size: is there beside width"},
		{"code,part,size,layers,material,colors\nA,dome,25 1/3 x 26,1,acrylic,clear\n", "line 2, size: \"25 1/3\" is on no tape"},
	} {
		got, err := shop.ImportStock([]byte(example(t)), []byte(c.csv))
		var all shop.TableMistakes
		if !errors.As(err, &all) || !strings.Contains(all.Error(), c.want) || got.Text != "" {
			t.Errorf("%q:\n%v\nwant %q", c.csv, err, c.want)
		}
	}
	_, err := shop.ImportStock([]byte(example(t)), []byte(head+"A,door,x,9,wood,pink,\nB,dome,26 x 26,1,acrylic,clear,\n,dome,1,1,acrylic,clear,tin\n"))
	var all shop.TableMistakes
	if !errors.As(err, &all) || len(all) != 8 {
		t.Errorf("%d mistakes:\n%v", len(all), err)
	}
}

func TestImportPrices(t *testing.T) {
	const csv = "Part,Price,Choice,Value\nDome,base,,\"$1,234.50\"\ndome,per square foot,,12\ndome,layers,1,100%\ndome,layers,2,170.00%\ndome,material,Acrylic,100%\n" +
		",break,12,12%\n,break,6,6%\n,allowance,,15%\n"
	before := example(t)
	got, err := shop.ImportPrices([]byte(before), []byte(csv))
	if err != nil {
		t.Fatal(err)
	}
	f, err := shop.Parse([]byte(got.Text))
	if err != nil {
		t.Fatal(err)
	}
	p := f.Prices
	if p.Dome.Base != 123450 || p.Dome.Layers["2"] != 170 || p.Dome.Minimum != 0 || p.Unit.Base != 11800 || p.Allowance != 15 ||
		!reflect.DeepEqual(p.Breaks, []shop.Break{{From: 6, Off: 6}, {From: 12, Off: 12}}) || len(p.Shipping.Bands) != 3 {
		t.Errorf("%+v", p)
	}
	for _, kept := range []string{"# By distance as the crow flies;", "# Raises the high end,", "    quoted: [AK, HI, PR]", "base: $1234.50"} {
		if !strings.Contains(got.Text, kept) {
			t.Errorf("%q is gone from\n%s", kept, got.Text)
		}
	}
	// A file without any prices gets them.
	start := strings.Index(before, "prices:\n")
	end := strings.Index(before, "# May the bot tell")
	if got, err = shop.ImportPrices([]byte(before[:start]+before[end:]), []byte(csv)); err != nil {
		t.Fatal(err)
	}
	if f, err = shop.Parse([]byte(got.Text)); err != nil || f.Prices.Dome.Base != 123450 || f.Prices.Unit != nil || f.Prices.Shipping != nil {
		t.Errorf("%v, %+v", err, f.Prices)
	}
}

func TestImportPricesMistakes(t *testing.T) {
	const head, good = "part,price,choice,value\n", "dome,base,,$40\ndome,per_square_foot,,$9\n"
	for _, c := range []struct{ csv, want string }{
		{head + "dome,base,,$40\n", "line 2, price: a dome has prices, but no line per_square_foot"},
		{head + good + "dome,base,,$41\n", "line 4, price: is in line 2 already"},
		{head + good + "dome,basis,,$41\n", `line 4, price: "basis" is not a price`},
		{head + good + "dome,layers,,165%\n", "line 4, choice: is empty: write one of 1, 2, 3"},
		{head + good + "dome,layers,5,165%\n", `line 4, choice: "5" is not one of 1, 2, 3`},
		{head + good + "dome,layers,2,1.65\n", `line 4, value: "1.65" is not a percentage`},
		{head + good + "dome,minimum,,\"1.234,50\"\n", `line 4, value: "1.234,50" is not an amount of money`},
		{head + good + "dome,minimum,,free\n", `line 4, value: "free" is not an amount of money`},
		{head + good + "dome,minimum,2,$9\n", "line 4, choice: minimum has no choice"},
		{head + good + ",minimum,,$9\n", "line 4, part: is empty: write dome or unit"},
		{head + good + ",break,one,5%\n", `line 4, choice: "one" is not a number of pieces`},
		{head + good + ",break,5,105%\n", "line 4, value: is over 100%"},
		{head + good + "door,base,,$40\n", `line 4, part: "door" is not one of dome, unit`},
		{head + good + "dome,,,$40\n", "line 4, price: is empty"},
	} {
		got, err := shop.ImportPrices([]byte(example(t)), []byte(c.csv))
		var all shop.TableMistakes
		if !errors.As(err, &all) || !strings.Contains(all.Error(), c.want) || got.Text != "" {
			t.Errorf("%q:\n%v\nwant %q", c.csv, err, c.want)
		}
	}
	// Where the cells are parted by semicolons, a comma is the decimal one.
	got, err := shop.ImportPrices([]byte(example(t)), []byte("part;price;choice;value\ndome;base;;1.234,50\ndome;per square foot;;9,5\n"))
	if err != nil || !strings.Contains(got.Text, "base: $1234.50\n    per_square_foot: $9.50") {
		t.Errorf("%v", err)
	}
}

// What is exported comes in again as it was.
func TestExportAndImport(t *testing.T) {
	f, err := shop.Parse([]byte(example(t)))
	if err != nil {
		t.Fatal(err)
	}
	var stock, prices strings.Builder
	if err := errors.Join(f.ExportStock(&stock), f.ExportPrices(&prices)); err != nil {
		t.Fatal(err)
	}
	one, err := shop.ImportStock([]byte(example(t)), []byte(stock.String()))
	if err != nil || len(one.AsItWas) != len(f.Stock) || len(one.New)+len(one.Changed)+len(one.Gone) > 0 {
		t.Errorf("stock: %v, %+v", err, one)
	}
	two, err := shop.ImportPrices([]byte(one.Text), []byte(prices.String()))
	if err != nil || len(two.AsItWas) < 25 || len(two.New)+len(two.Changed)+len(two.Gone) > 0 {
		t.Errorf("prices: %v, %+v", err, two)
	}
}

// A file in which the setting can't be found line by line is left alone, and said so.
func TestImportIntoAFileWithinBraces(t *testing.T) {
	text := strings.Replace(example(t), "stock:\n", "\"stock\":\n", 1)
	got, err := shop.ImportStock([]byte(text), []byte("code,part,size,layers,material,colors\nA,dome,26 x 26,1,acrylic,clear\n"))
	if !errors.Is(err, shop.ErrNotChanged) {
		t.Errorf("%v, %q", err, got.Text)
	}
}

func TestReplace(t *testing.T) {
	const file = "# top\na: 1 # one\n\n# of b\nb:\n    # of c\n    c:\n    - x\n    - y\n\n    # of d\n    d: {e: 1}\n# end\n"
	for _, c := range []struct{ path, setting, want string }{
		{"a", "a: 2\n", strings.Replace(file, "a: 1 # one", "a: 2", 1)},
		{"a", "", strings.Replace(file, "a: 1 # one\n", "", 1)},
		{"b.c", "c: [z]\n", strings.Replace(file, "    c:\n    - x\n    - y\n", "    c: [z]\n", 1)},
		{"b.d", "d:\n  e: 2\n", strings.Replace(file, "    d: {e: 1}\n", "    d:\n      e: 2\n", 1)},
		{"b.f", "f: 3\n", strings.Replace(file, "    d: {e: 1}\n", "    d: {e: 1}\n    f: 3\n", 1)},
		{"g.h", "h: 4\n", file + "g:\n  h: 4\n"},
		{"x.y", "", file},
	} {
		if got, err := shop.Replace(file, c.path, c.setting); err != nil || got != c.want {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.path, err, got, c.want)
		}
	}
}

func FuzzImport(f *testing.F) {
	text := []byte(example(f))
	f.Add([]byte("code,part,size,layers,material,colors\nA,dome,26 x 26,1,acrylic,clear\n"))
	f.Add([]byte("part;price;choice;value\ndome;base;;1.234,50\ndome;per square foot;;9,5\n"))
	f.Add([]byte("sep=;\n\xFF\xFE"))
	f.Fuzz(func(t *testing.T, csv []byte) {
		for _, read := range []func(text, csv []byte, checks ...shop.WordingCheck) (shop.Imported, error){shop.ImportStock, shop.ImportPrices} {
			got, err := read(text, csv)
			if err == nil {
				if _, err := shop.Parse([]byte(got.Text)); err != nil {
					t.Errorf("it makes a file with mistakes: %v", err)
				}
				continue
			}
			var all shop.TableMistakes
			if !errors.As(err, &all) {
				t.Errorf("not told as the table's: %v", err)
			}
		}
	})
}
