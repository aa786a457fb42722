package place

import (
	"strings"
	"testing"
)

func TestState(t *testing.T) {
	for word, want := range map[string]string{
		"MN": "MN", "mn": "MN", "Minnesota": "MN", "Minn.": "MN", "minn": "MN", "MT": "MT", "Mt.": "MT", "N.H.": "NH",
		"new  york": "NY", "NEW YORK": "NY", "Nueva York": "NY", "N. Carolina": "NC", "n carolina": "NC", "N.C.": "NC",
		"Carolina del Sur": "SC", "Nuevo México": "NM", "Pensilvania": "PA", "Hawaiʻi": "HI", "Hawái": "HI",
		"W. Va.": "WV", "W.Va.": "WV", "west virginia": "WV", "D.C.": "DC", "Wash.": "WA", "Calif": "CA",
		"S Dak": "SD", "S. Dak.": "SD", "Puerto Rico": "PR", "P.R.": "PR", "Guam": "GU", "USVI": "VI",
		"Virgin Islands": "VI", "Islas Vírgenes": "VI", "American Samoa": "AS", "AE": "AE", "AP": "AP", "AA": "AA",
		"ONTARIO": "", "": "", "   ": "", "Marshall Islands": "", "FM": "", "Minnesotan": "", "Duluth": "", "ne": "NE",
	} {
		if got, ok := State(word); got != want || ok != (want != "") {
			t.Errorf("State(%q) = %q %v, want %q", word, got, ok, want)
		}
	}
}

func TestEveryStateIsFoundByItsNameAndCode(t *testing.T) {
	for _, code := range States() {
		for _, form := range []string{code, strings.ToLower(code), StateName(code), strings.ToUpper(StateName(code))} {
			if got, ok := State(form); !ok || got != code {
				t.Errorf("State(%q) = %q %v, want %s", form, got, ok, code)
			}
		}
	}
	if len(States()) != 51+5+3 || len(nameOfState) != len(States()) {
		t.Errorf("%d codes, %d names", len(States()), len(nameOfState))
	}
}

func TestNearState(t *testing.T) {
	for word, want := range map[string]string{
		"Minnisota": "MN", "Pensylvania": "PA", "Conneticut": "CT", "Tennesee": "TN", "Massachusets": "MA",
		"Missisippi": "MS", "Wisconson": "WI", "Arizonia": "AZ", "Minnesota": "MN", "Kansa": "", "Banana": "", "": "",
		"Virgina": "VA", "Misouri": "MO",
	} {
		if got, ok := NearState(word); got != want || ok != (want != "") {
			t.Errorf("NearState(%q) = %q %v, want %q", word, got, ok, want)
		}
	}
}

func TestScanState(t *testing.T) {
	for _, c := range []struct {
		text string
		n    int
		code string
	}{
		{"mn 55802", 1, "MN"}, {"new york city", 2, "NY"}, {"west virginia", 2, "WV"}, {"w va", 2, "WV"},
		{"carolina del norte", 3, "NC"}, {"us virgin islands", 3, "VI"}, {"mt", 1, "MT"}, {"n carolina", 2, "NC"},
		{"washington dc", 2, "DC"}, {"roof", 0, ""}, {"", 0, ""}, {"south of here", 0, ""},
	} {
		if n, code := ScanState(strings.Fields(c.text)); n != c.n || code != c.code {
			t.Errorf("ScanState(%q) = %d %q, want %d %q", c.text, n, code, c.n, c.code)
		}
	}
}
