package place

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
)

// Zone borders: 49 CFR 71 and the IANA data.
func TestZones(t *testing.T) {
	for _, c := range []struct{ city, state, zip, want string }{
		{"Duluth", "MN", "", "America/Chicago"}, {"", "", "55802", "America/Chicago"},
		{"Duluth", "", "", "America/Chicago America/New_York"},
		{"", "MN", "", "America/Chicago"}, {"", "TX", "", "America/Chicago America/Denver"},
		{"", "AZ", "", "America/Denver America/Phoenix"},
		{"", "HI", "", "Pacific/Honolulu"}, {"", "PR", "", "America/Puerto_Rico"},
		{"", "", "00802", "America/St_Thomas"}, {"Nowhereville", "MN", "", "America/Chicago"},
		{"", "AP", "", "Asia/Seoul Asia/Tokyo Pacific/Guam Pacific/Honolulu"},
		{"", "", "96201", "Asia/Seoul Asia/Tokyo Pacific/Guam Pacific/Honolulu"},
	} {
		got := Zones(c.city, c.state, c.zip)
		if strings.Join(got, " ") != c.want {
			t.Errorf("Zones(%q, %q, %q) = %v, want %s", c.city, c.state, c.zip, got, c.want)
		}
	}
}

func TestZonesOfAlaskaAndUnknown(t *testing.T) {
	if got := Zones("", "AK", ""); !slices.Contains(got, "America/Adak") || !slices.Contains(got, "America/Anchorage") {
		t.Errorf("Alaska: %v", got)
	}
	all := Zones("", "", "")
	for _, zone := range []string{"America/New_York", "America/Chicago", "America/Denver", "America/Phoenix",
		"America/Los_Angeles", "America/Anchorage", "America/Adak", "Pacific/Honolulu"} {
		if !slices.Contains(all, zone) {
			t.Errorf("unknown place lacks %s", zone)
		}
	}
	if slices.Contains(all, "Pacific/Guam") {
		t.Error("unknown place has Guam")
	}
	all[0] = "changed"
	if Zones("", "", "")[0] == "changed" {
		t.Error("a caller can change the table")
	}
}

func TestEveryZoneLoads(t *testing.T) {
	for _, zone := range load().zones {
		if zone == "" {
			continue
		}
		if _, err := time.LoadLocation(zone); err != nil {
			t.Errorf("%s: %v", zone, err)
		}
	}
	for _, zones := range militaryZones {
		for _, zone := range zones {
			if _, err := time.LoadLocation(zone); err != nil {
				t.Errorf("%s: %v", zone, err)
			}
		}
	}
}

// Great-circle distances as published by airports' distance tables, to a few miles:
// the towns' middles are not the airports.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b          string
		miles, within float64
	}{
		{"55802", "55802", 0, 0}, {"10001", "90001", 2450, 25}, {"60601", "80202", 920, 15},
		{"96813", "94102", 2397, 20}, {"33101", "00901", 1040, 20}, {"99546", "96950", 2900, 400},
	} {
		a, _ := ByZIP(c.a)
		b, _ := ByZIP(c.b)
		miles, ok := Distance(a, b)
		back, _ := Distance(b, a)
		if !ok || math.Abs(miles-c.miles) > c.within || miles != back {
			t.Errorf("%s to %s is %.0f miles (%v), want %.0f", c.a, c.b, miles, ok, c.miles)
		}
	}
	apo, _ := ByZIP("09012")
	if _, ok := Distance(apo, apo); ok {
		t.Error("a military address has a distance")
	}
}

func TestAgree(t *testing.T) {
	for _, c := range []struct {
		zip, city, state string
		want             bool
	}{
		{"55811", "Hermantown", "MN", true}, {"55802", "Duluth", "MN", true}, {"55401", "Duluth", "MN", false},
		{"55802", "Superior", "WI", false}, {"85251", "Phoenix", "AZ", true},
	} {
		z, _ := ByZIP(c.zip)
		if got := Agree(z, Towns(c.city, c.state)[0]); got != c.want {
			t.Errorf("%s and %s, %s agree: %v", c.zip, c.city, c.state, got)
		}
	}
}
