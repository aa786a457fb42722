package shop

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// Imported is what came of a table: the shop file with it, and what changed.
type Imported struct {
	Text                        string   // the whole shop file
	New, Changed, Gone, AsItWas []string // by code, or by "dome base" and the like
}

// Summary is what changed, in a few lines.
func (i Imported) Summary() string {
	var b strings.Builder
	for _, part := range []struct {
		word string
		list []string
	}{{"new", i.New}, {"changed", i.Changed}, {"gone", i.Gone}} {
		if len(part.list) > 0 {
			fmt.Fprintf(&b, "%d %s: %s\n", len(part.list), part.word, strings.Join(part.list, ", "))
		}
	}
	fmt.Fprintf(&b, "%d as before\n", len(i.AsItWas))
	return b.String()
}

// compare notes what became of each thing.
func (i *Imported) compare(before, after map[string]any) {
	for _, name := range sortedKeys(after) {
		old, there := before[name]
		switch {
		case !there:
			i.New = append(i.New, name)
		case reflect.DeepEqual(old, after[name]):
			i.AsItWas = append(i.AsItWas, name)
		default:
			i.Changed = append(i.Changed, name)
		}
	}
	for _, name := range sortedKeys(before) {
		if _, there := after[name]; !there {
			i.Gone = append(i.Gone, name)
		}
	}
}

var (
	stockColumns = []string{"code", "part", "size", "width", "length", "diameter", "profile", "layers", "material", "colors", "finish"}
	stockOthers  = map[string]string{"sku": "code", "item": "code", "item_code": "code", "part_number": "code", "color": "colors", "colour": "colors",
		"colours": "colors", "kind": "part", "shape": "profile", "metal": "finish"}
)

// ImportStock puts the sizes of a table in place of those of a shop file. Where the table
// has mistakes the error is TableMistakes with all of them, and nothing is made.
func ImportStock(text, csv []byte, checks ...WordingCheck) (Imported, error) {
	f, err := Parse(text, checks...)
	if err != nil {
		return Imported{}, err
	}
	t := readTable(csv, stockColumns, []string{"code", "part", "layers", "material", "colors"}, stockOthers)
	items, sizes := t.stock()
	if err := t.told(); err != nil {
		return Imported{}, err
	}
	var block strings.Builder
	block.WriteString("stock:\n")
	for i, item := range items {
		block.WriteString("  - " + item.yaml(sizes[i]) + "\n")
	}
	if len(items) == 0 {
		return Imported{}, TableMistakes{{1, "", "there is no line below the headings"}}
	}
	var out Imported
	if out.Text, err = Replace(string(text), "stock", block.String()); err != nil {
		return Imported{}, err
	}
	out.compare(byCode(f.Stock), byCode(items))
	want := *f
	want.Stock = items
	return out, changed(out.Text, &want, checks)
}

func byCode(items []StockItem) map[string]any {
	out := map[string]any{}
	for _, item := range items {
		out[item.Code] = item
	}
	return out
}

// stock takes the rows as stock, with the words of each size.
func (t *table) stock() (items []StockItem, sizes []string) {
	lines := map[string]int{}
	for _, r := range t.rows {
		item := StockItem{Code: r.cells["code"], Part: r.choice("part", "part"), Profile: r.choice("profile", "profile"),
			Material: r.choice("material", "material"), Finish: r.choice("finish", "finish"), Colors: r.colors()}
		r.wanted(map[string]string{"code": "write the shop's own code for it", "part": "write dome or unit", "layers": "write 1, 2 or 3",
			"material": "write acrylic or polycarbonate", "colors": "write the color of each layer from outside to inside, like clear/white"})
		size := r.size(&item.Size)
		if layers := r.choice("layers", "layers"); layers != "" {
			item.Layers = int(layers[0] - '0')
		}
		if item.Layers > 0 && len(item.Colors) > 0 && len(item.Colors) != item.Layers {
			t.wrong(r.line, "colors", "has %d for %d layers: write one for each layer, from outside to inside, like clear/white", len(item.Colors), item.Layers)
		}
		if item.Part == "unit" && r.cells["finish"] == "" {
			t.wrong(r.line, "finish", "is empty: a unit has metal; write mill, bronze_anodized, bronze_powder_coat or other")
		}
		if first, twice := lines[item.Code]; twice && item.Code != "" {
			t.wrong(r.line, "code", "%q is the code of line %d too: give each its own", item.Code, first)
		} else {
			lines[item.Code] = r.line
		}
		items, sizes = append(items, item), append(sizes, size)
	}
	return items, sizes
}

// colors are those of the layers, whatever stands between them.
func (r row) colors() []string {
	var out []string
	for _, word := range strings.FieldsFunc(strings.ToLower(r.cells["colors"]), func(c rune) bool { return strings.ContainsRune("/,;+&| ", c) }) {
		if word == "over" || word == "and" {
			continue
		}
		if !slices.Contains(allowed("color"), word) {
			r.t.wrong(r.line, "colors", "%q is not one of %s", word, strings.Join(allowed("color"), ", "))
			return nil
		}
		out = append(out, word)
	}
	return out
}

// size reads the size from its own column or from those of its sides.
func (r row) size(into *Outline) (words string) {
	width, length, diameter := r.cells["width"], r.cells["length"], r.cells["diameter"]
	switch {
	case r.cells["size"] != "" && (width != "" || length != "" || diameter != ""):
		r.t.wrong(r.line, "size", "is there beside width, length or diameter: write one of them")
	case r.cells["size"] != "":
		r.cells["size"] = r.t.english(r.cells["size"])
		if r.value("size", into) {
			return outlineWords(r.cells["size"])
		}
	case diameter != "" && (width != "" || length != ""):
		r.t.wrong(r.line, "diameter", "is there beside width or length: write one of them")
	case diameter != "":
		var d Inches
		if r.value("diameter", &d) {
			*into = Outline{Diameter: d.length()}
			return outlineWords(r.t.english(diameter) + " round")
		}
	case width == "" && length == "":
		r.t.wrong(r.line, "size", `is empty: write it like 26 x 52, or 30 round, in inches`)
	case width == "" || length == "":
		r.t.wrong(r.line, map[bool]string{true: "width", false: "length"}[width == ""], "is empty: a size has two sides")
	default:
		var w, l Inches
		if okW, okL := r.value("width", &w), r.value("length", &l); okW && okL {
			*into = Outline{Width: min(w, l).length(), Length: max(w, l).length()}
			return outlineWords(r.t.english(width) + " x " + r.t.english(length))
		}
	}
	return ""
}

// english writes a number with a point.
func (t *table) english(cell string) string {
	if t.comma {
		return strings.ReplaceAll(cell, ",", ".")
	}
	return cell
}

// outlineWords is a size as shop files have it: without marks, "x" between the sides.
func outlineWords(cell string) string {
	cell = strings.NewReplacer(`"`, "", "×", "x", "X", "x", "inches", "", "inch", "", " in", " ").Replace(cell)
	return strings.Join(strings.Fields(strings.ReplaceAll(cell, "x", " x ")), " ")
}
