package place

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
)

func TestTableUnpacks(t *testing.T) {
	table, err := decode(packed)
	if err != nil {
		t.Fatal(err)
	}
	if len(table.zips) < 41_000 || len(table.towns) < 35_000 {
		t.Errorf("%d ZIP codes, %d towns", len(table.zips), len(table.towns))
	}
	for i, z := range table.zips[1:] {
		if z.number <= table.zips[i].number {
			t.Fatalf("ZIP codes out of order at %d", z.number)
		}
	}
}

func TestDamagedTableIsAnError(t *testing.T) {
	for _, bad := range [][]byte{nil, packed[:len(packed)/2], []byte("not deflate")} {
		if _, err := decode(bad); err == nil {
			t.Errorf("%d bytes unpack", len(bad))
		}
	}
}

// Every ZIP code resolves to a town that is found by its name, lies where states lie
// and has a time zone.
func TestEveryZIP(t *testing.T) {
	for _, z := range load().zips {
		zip := fmt.Sprintf("%05d", z.number)
		e, ok := ByZIP(zip)
		if !ok || e.ZIP != zip || e.City == "" || StateName(e.State) == "" {
			t.Fatalf("ByZIP(%s) = %+v %v", zip, e, ok)
		}
		if Military(e.State) {
			if e.Zone != "" || e.Located() {
				t.Errorf("%s: military but somewhere: %+v", zip, e)
			}
			continue
		}
		if e.Zone == "" || !inAmerica(e) {
			t.Errorf("%s: %+v", zip, e)
		}
		if len(Towns(e.City, e.State)) != 1 {
			t.Errorf("%s: %d towns are %s, %s", zip, len(Towns(e.City, e.State)), e.City, e.State)
		}
	}
}

func inAmerica(e Entry) bool {
	if e.State == "AS" {
		return e.Lat < -11 && e.Lat > -15
	}
	return e.Lat > 13 && e.Lat < 72 && (e.Lon < -64 || e.Lon > 144)
}

// Every town is found by each way of writing its name, alone and among words.
func TestEveryTown(t *testing.T) {
	table := load()
	for i := range table.towns {
		e := table.entry(int32(i))
		for _, form := range []string{e.City, strings.ToUpper(e.City), strings.ReplaceAll(e.City, " ", "  "),
			strings.ReplaceAll(e.City, "Saint ", "St. "), strings.ReplaceAll(e.City, "Fort ", "Ft ")} {
			if found := Towns(form, e.State); len(found) != 1 || found[0] != e {
				t.Fatalf("Towns(%q, %s) = %v, want %v", form, e.State, found, e)
			}
		}
		words := strings.Fields(Plain(e.City))
		if n := Scan(append(words, "12345"), e.State); len(words) <= longestTown && n != len(words) {
			t.Errorf("Scan(%q, %s) = %d", words, e.State, n)
		}
		for _, r := range e.City {
			if r > 126 {
				t.Errorf("%q is not ASCII", e.City)
			}
		}
	}
}

func TestEveryNicknameHasATown(t *testing.T) {
	for key, target := range nicknames {
		i, ok := nicknamed()[key]
		if !ok || key != keyOf(key) && key != "29palms" {
			t.Errorf("%s: no %s, %s", key, target.city, target.state)
			continue
		}
		if e := load().entry(i); e.State != target.state {
			t.Errorf("%s: %v", key, e)
		}
		if load().find([]byte(key)) >= 0 && key != "indy" {
			t.Logf("%s is also a town's own name", key)
		}
	}
}

func BenchmarkUnpack(b *testing.B) {
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	table, err := decode(packed)
	if err != nil {
		b.Fatal(err)
	}
	runtime.GC()
	runtime.ReadMemStats(&after)
	runtime.KeepAlive(table)
	for b.Loop() {
		if _, err := decode(packed); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/1e6, "MB-kept")
}

func BenchmarkByZIP(b *testing.B) {
	ByZIP("55802")
	for b.Loop() {
		ByZIP("55802")
	}
}

func BenchmarkTowns(b *testing.B) {
	Towns("St. Paul", "MN")
	b.ReportAllocs()
	for b.Loop() {
		Towns("St. Paul", "MN")
	}
}

func BenchmarkScanWord(b *testing.B) {
	words := strings.Fields("the skylight leaks in our house near duluth mn and it is cracked")
	Scan(words, "")
	b.ReportAllocs()
	for b.Loop() {
		for i := range words {
			Scan(words[i:], "")
		}
	}
}

func BenchmarkNear(b *testing.B) {
	Near("Albequerque", "")
	for b.Loop() {
		Near("Albequerque", "")
	}
}
