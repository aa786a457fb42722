package place

import (
	"slices"
	"strings"
	"testing"
)

// Towns, counties and zones as the Postal Service's look-up, the Census Bureau's
// gazetteer and the IANA data have them (from memory where not in the sources).
func TestByZIP(t *testing.T) {
	for _, c := range []struct{ zip, city, state, county, zone string }{
		{"55802", "Duluth", "MN", "St. Louis", "America/Chicago"},
		{"55101", "Saint Paul", "MN", "Ramsey", "America/Chicago"},
		{"60601", "Chicago", "IL", "Cook", "America/Chicago"},
		{"10001", "New York", "NY", "New York", "America/New_York"},
		{"00501", "Holtsville", "NY", "Suffolk", "America/New_York"},
		{"79901", "El Paso", "TX", "El Paso", "America/Denver"},
		{"32501", "Pensacola", "FL", "Escambia", "America/Chicago"},
		{"37402", "Chattanooga", "TN", "Hamilton", "America/New_York"},
		{"37201", "Nashville", "TN", "Davidson", "America/Chicago"},
		{"83702", "Boise", "ID", "Ada", "America/Boise"},
		{"86001", "Flagstaff", "AZ", "Coconino", "America/Phoenix"},
		{"99546", "Adak", "AK", "Aleutians West", "America/Adak"},
		{"99950", "Ketchikan", "AK", "Ketchikan Gateway", "America/Sitka"},
		{"96813", "Honolulu", "HI", "Honolulu", "Pacific/Honolulu"},
		{"83814", "Coeur d'Alene", "ID", "Kootenai", "America/Los_Angeles"},
		{"27101", "Winston-Salem", "NC", "Forsyth", "America/New_York"},
		{"64063", "Lee's Summit", "MO", "Jackson", "America/Chicago"},
		{"00901", "San Juan", "PR", "San Juan", "America/Puerto_Rico"},
		{"00601", "Adjuntas", "PR", "Adjuntas", "America/Puerto_Rico"},
		{"00802", "Saint Thomas", "VI", "", "America/St_Thomas"},
		{"96910", "Hagatna", "GU", "", "Pacific/Guam"},
		{"96799", "Pago Pago", "AS", "", "Pacific/Pago_Pago"},
		{"96950", "Saipan", "MP", "", "Pacific/Saipan"},
		{"09012", "APO", "AE", "", ""},
		{"34002", "DPO", "AA", "", ""},
		{"96201", "APO", "AP", "", ""},
	} {
		e, ok := ByZIP(c.zip)
		got := []string{e.ZIP, e.City, e.State, e.County, e.Zone}
		if want := []string{c.zip, c.city, c.state, c.county, c.zone}; !ok || !slices.Equal(got, want) {
			t.Errorf("ByZIP(%s) = %q %v, want %q", c.zip, got, ok, want)
		}
	}
}

func TestByZIPForms(t *testing.T) {
	for zip, ok := range map[string]bool{
		"55802": true, "55802-1234": true, "558021234": true, "00000": false, "5580": false,
		"558O2": false, "": false, "K1A 0B1": false, "96960": false /* Marshall Islands */, "55802-12": false,
	} {
		if e, got := ByZIP(zip); got != ok || ok && e.ZIP != "55802" {
			t.Errorf("ByZIP(%q) = %v %v, want %v", zip, e, got, ok)
		}
	}
}

func TestTowns(t *testing.T) {
	for _, c := range []struct{ name, state, want string }{
		{"duluth", "MN", "Duluth MN"}, {"DULUTH", "GA", "Duluth GA"}, {"St. Paul", "MN", "Saint Paul MN"},
		{"saint paul", "MN", "Saint Paul MN"}, {"Ft Worth", "TX", "Fort Worth TX"},
		{"Mt. Pleasant", "SC", "Mount Pleasant SC"}, {"N. Las Vegas", "NV", "North Las Vegas NV"},
		{"W Palm Beach", "FL", "West Palm Beach FL"}, {"LaCrosse", "WI", "La Crosse WI"},
		{"Mayagüez", "PR", "Mayaguez PR"}, {"Cañon City", "CO", "Canon City CO"},
		{"OFallon", "MO", "O'Fallon MO"}, {"o fallon", "IL", "O'Fallon IL"},
		{"Coeur d’Alene", "ID", "Coeur d'Alene ID"}, {"winston salem", "NC", "Winston-Salem NC"},
		{"Sault Ste. Marie", "MI", "Sault Sainte Marie MI"}, {"marlborough", "MA", "Marlborough MA"},
		{"McKinney", "TX", "McKinney TX"}, {"NYC", "", "New York NY"}, {"New York City", "", "New York NY"},
		{"Nueva York", "", "New York NY"}, {"philly", "", "Philadelphia PA"}, {"St Pete", "", "Saint Petersburg FL"},
		{"Colo Spgs", "CO", ""}, {"Colorado Spgs", "CO", "Colorado Springs CO"},
		{"Nowhereville", "", ""}, {"Duluth", "XX", ""}, {"", "MN", ""}, {"...", "", ""},
	} {
		got := ""
		if found := Towns(c.name, c.state); len(found) > 0 {
			got = found[0].City + " " + found[0].State
		}
		if got != c.want {
			t.Errorf("Towns(%q, %q) starts with %q, want %q", c.name, c.state, got, c.want)
		}
	}
}

func TestTownsBiggestFirst(t *testing.T) {
	found := Towns("Springfield", "")
	if len(found) < 20 || found[0].State != "MO" {
		t.Fatalf("%d towns, first %v", len(found), found[0])
	}
	bySize := func(a, b Entry) int { return b.Population - a.Population }
	if !slices.IsSortedFunc(found, bySize) {
		t.Error("not by population")
	}
}

func TestWellKnown(t *testing.T) {
	for name, want := range map[string]string{
		"Chicago": "IL", "denver": "CO", "Seattle": "WA", "Minneapolis": "MN", "St. Louis": "MO", "Austin": "TX",
		"Philly": "PA", "NYC": "NY", "Houston": "TX", "Phoenix": "AZ", "Boise": "ID", "san diego": "CA",
		"Los Angeles": "CA", "Milwaukee": "WI", "Brooklyn": "NY", "New Orleans": "LA", "Chico": "CA",
		"Springfield": "", "Portland": "", "Columbus": "", "Duluth": "", "Rochester": "", "Jacksonville": "",
		"Washington": "", "New York": "", "Kansas City": "", "Hope": "", "Nowhere": "", "": "", "Arlington": "", "Hollywood": "", "South Boston": "",
	} {
		if e, ok := WellKnown(name); e.State != want || ok != (want != "") {
			t.Errorf("WellKnown(%s) = %v %v, want %q", name, e, ok, want)
		}
	}
}

func TestOnly(t *testing.T) {
	for name, want := range map[string]string{
		"Kalispell": "MT", "hilo": "HI", "Tucumcari": "NM", "Baton Rouge": "LA", "Marfa": "TX",
		"Medford": "", "Springfield": "", "Tulia": "", "Pampa": "", "Sweet Grass": "", "Nowhere": "", "": "", "Indiana": "",
	} {
		if e, ok := Only(name); e.State != want || ok != (want != "") {
			t.Errorf("Only(%s) = %v %v, want %q", name, e, ok, want)
		}
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		name, state, want string
		edits             int
	}{
		{"Deluth", "MN", "Duluth", 1}, {"Minneapolus", "", "Minneapolis", 1}, {"Albequerque", "NM", "Albuquerque", 1},
		{"Pittsburg", "PA", "Pittsburgh", 1}, {"Cincinatti", "OH", "Cincinnati", 2},
		{"Chigaco", "IL", "Chicago", 2}, {"Sacremento", "CA", "Sacramento", 1}, {"Bosie", "ID", "Boise", 1},
		{"Xqzwv", "", "", 0}, {"Duluth", "MN", "Duluth", 0}, {"", "", "", 0}, {"Deluth", "ZZ", "", 0},
	} {
		got := Near(c.name, c.state)
		if c.want == "" {
			if len(got) > 0 {
				t.Errorf("Near(%q) = %v, want none", c.name, got)
			}
			continue
		}
		if len(got) == 0 || got[0].Entry.City != c.want || got[0].Distance != c.edits {
			t.Errorf("Near(%q, %q) = %v, want %s at %d", c.name, c.state, got, c.want, c.edits)
		}
	}
}

func TestScan(t *testing.T) {
	for _, c := range []struct {
		text, state string
		want        int
	}{
		{"duluth mn", "", 1}, {"salt lake city utah", "", 3}, {"st paul minnesota", "MN", 2},
		{"new york mills mn", "", 3}, {"new york mills", "NY", 3}, {"la crosse", "WI", 2},
		{"coeur dalene idaho", "", 2}, {"skylight leaks", "", 0}, {"kansas city", "KS", 2}, {"", "", 0},
		{"duluth", "WY", 0}, {"duluth", "QQ", 0}, {"truth or consequences nm", "", 3}, {"nyc", "", 1},
	} {
		if got := Scan(strings.Fields(c.text), c.state); got != c.want {
			t.Errorf("Scan(%q, %q) = %d, want %d", c.text, c.state, got, c.want)
		}
	}
}
