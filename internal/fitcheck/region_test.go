package fitcheck

import (
	"math"
	"testing"
)

func at(lat, lon float64) Site { return Site{Lat: lat, Lon: lon, Known: true} }

func in(county string) Site { return Site{County: county} }

func codesOf(fs []Finding) map[Code]Finding {
	m := map[Code]Finding{}
	for _, f := range fs {
		m[f.Code] = f
	}
	return m
}

func TestWindRegion(t *testing.T) {
	for _, row := range []struct {
		name, state string
		site        Site
		want        windKind
	}{
		// FBC-R 2023 R202: the high-velocity zone is Broward and Miami-Dade.
		{"T19: Broward", "FL", in("Broward"), windHighVelocity},
		{"Miami-Dade", "FL", in("Miami-Dade County"), windHighVelocity},
		{"Miami Dade, without its hyphen", "FL", in("miami dade"), windHighVelocity},
		{"Palm Beach", "FL", in("Palm Beach"), windCoast},
		{"a Broward elsewhere", "MN", in("Broward"), windNone},
		// Wind-borne debris regions lie along the coast (FBC-B 2023 ch. 2).
		{"Orlando", "FL", at(28.54, -81.38), windCoast},
		{"Houston", "TX", at(29.76, -95.37), windCoast},
		{"Dallas", "TX", at(32.78, -96.80), windNone},
		{"Texas, not known where", "TX", Site{}, windCoast},
		{"New Orleans", "LA", at(29.95, -90.07), windCoast},
		{"Mobile", "AL", at(30.69, -88.04), windCoast},
		{"Birmingham", "AL", at(33.52, -86.80), windNone},
		{"Savannah", "GA", at(32.08, -81.09), windCoast},
		{"Atlanta", "GA", at(33.75, -84.39), windNone},
		{"Charleston", "SC", at(32.78, -79.93), windCoast},
		{"Wilmington", "NC", at(34.23, -77.94), windCoast},
		{"Asheville", "NC", at(35.60, -82.55), windNone},
		{"Virginia Beach", "VA", at(36.85, -75.98), windCoast},
		{"Roanoke", "VA", at(37.27, -79.94), windNone},
		{"Montauk", "NY", at(41.05, -71.95), windCoast},
		{"Buffalo", "NY", at(42.89, -78.88), windNone},
		{"New York, not known where", "NY", Site{}, windNone},
		// Islands plan for it throughout.
		{"Honolulu", "HI", Site{}, windIsland},
		{"San Juan", "PR", at(18.47, -66.11), windIsland},
		{"Guam", "GU", Site{}, windIsland},
		{"St. Thomas", "VI", Site{}, windIsland},
		{"Duluth", "MN", at(46.79, -92.10), windNone},
	} {
		if got := windRegion(&Job{Place: Place{State: row.state}, Site: row.site}); got != row.want {
			t.Errorf("%s: %d, want %d", row.name, got, row.want)
		}
	}
}

func TestSnowAndClimateRegions(t *testing.T) {
	for _, row := range []struct {
		name, state     string
		site            Site
		snow, cold, hot bool
	}{
		{"Duluth", "MN", at(46.79, -92.10), true, true, false},
		{"Minnesota, not known where", "MN", Site{}, true, true, false},
		{"Fairbanks", "AK", at(64.84, -147.72), true, true, false},
		{"Burlington", "VT", at(44.48, -73.21), true, true, false},
		{"Marquette", "MI", at(46.54, -87.40), true, true, false},
		{"Detroit", "MI", at(42.33, -83.05), true, false, false},
		{"Denver", "CO", at(39.74, -104.99), true, false, false},
		{"Truckee", "CA", at(39.33, -120.18), true, false, false},
		{"Los Angeles", "CA", at(34.05, -118.24), false, false, false},
		{"Palm Springs", "CA", at(33.83, -116.55), false, false, true},
		{"Phoenix", "AZ", at(33.45, -112.07), false, false, true},
		{"Flagstaff", "AZ", at(35.20, -111.65), true, false, false},
		{"Las Vegas", "NV", at(36.17, -115.14), false, false, true},
		{"Seattle", "WA", at(47.61, -122.33), false, false, false},
		{"Savannah", "GA", at(32.08, -81.09), false, false, false},
	} {
		job := &Job{Place: Place{State: row.state}, Site: row.site}
		if s, c, h := snowy(job), inRegion(coldRegions, job), inRegion(hotRegions, job); s != row.snow || c != row.cold || h != row.hot {
			t.Errorf("%s: snow %v cold %v hot %v, want %v %v %v", row.name, s, c, h, row.snow, row.cold, row.hot)
		}
	}
}

func TestRegionFindings(t *testing.T) {
	for _, row := range []struct {
		name string
		job  Job
		unit Unit
		want []Code
	}{
		{"home in Duluth", Job{Use: UseHome, Place: Place{State: "MN"}}, Unit{Layers: 2}, []Code{SnowRegion, ExtremeClimate}},
		{"three layers already", Job{Use: UseHome, Place: Place{State: "MN"}}, Unit{Layers: 3}, []Code{SnowRegion}},
		{"a shed needs no layers", Job{Use: UseOutbuilding, Place: Place{State: "MN"}}, Unit{Layers: 1}, []Code{SnowRegion}},
		{"a trailer moves", Job{Use: UseRV, Place: Place{State: "MN"}}, Unit{}, nil},
		{"a ZIP code alone", Job{Use: UseHome, Place: Place{ZIP: "55802"}, Site: Site{State: "MN", Lat: 46.77, Lon: -92.09, Known: true}}, Unit{Layers: 2}, []Code{SnowRegion, ExtremeClimate}},
		{"no place", Job{Use: UseHome}, Unit{}, nil},
		{"Broward", Job{Use: UseHome, Place: Place{State: "FL"}, Site: in("Broward")}, Unit{}, []Code{HurricaneRegion}},
		{"Phoenix shed", Job{Use: UseOutbuilding, Place: Place{State: "AZ"}, Site: at(33.45, -112.07)}, Unit{}, []Code{ExtremeClimate}},
		{"Iowa", Job{Use: UseHome, Place: Place{State: "IA"}}, Unit{}, nil},
	} {
		fs := regionFindings(&row.unit, &row.job, &UnitResult{Replace: ReplaceUnit})
		got := codesOf(fs)
		for _, c := range row.want {
			if _, ok := got[c]; !ok {
				t.Errorf("%s: no %s", row.name, c)
			}
		}
		if len(fs) != len(row.want) {
			t.Errorf("%s: %d findings, want %d", row.name, len(fs), len(row.want))
		}
	}
}

// Great-circle distances; those between airports as published in flight tables.
func TestMilesBetween(t *testing.T) {
	kennedy := at(40.6398, -73.7789)
	for _, row := range []struct {
		name     string
		from, to Site
		want     float64
	}{
		{"itself", kennedy, kennedy, 0},
		{"a degree of latitude", at(46, -92), at(47, -92), 69.09},
		{"New York to Los Angeles", kennedy, at(33.9425, -118.4081), 2475},
		{"New York to London", kennedy, at(51.4706, -0.4619), 3451},
		{"Los Angeles to Honolulu", at(33.9425, -118.4081), at(21.3187, -157.9225), 2556},
		{"other side of the earth", at(46, -92), at(-46, 88), math.Pi * earthMiles},
	} {
		if got := milesBetween(row.from, row.to); math.Abs(got-row.want) > 0.003*row.want+0.01 {
			t.Errorf("%s: %.1f miles, want %.1f", row.name, got, row.want)
		}
	}
}
