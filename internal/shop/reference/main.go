// Command reference makes, from the settings' own types and comments, the page on the shop
// file that owners read (docs/shop-file.md) and the JSON Schema by which editors complete
// and check it (deploy/shop.schema.json).
package main

import (
	"fmt"
	"os"
)

//go:generate go run .

func main() {
	for path, make := range outputs {
		text, err := make()
		if err == nil {
			err = os.WriteFile(path, []byte(text), 0o644) //nolint:gosec // a page for all
		}
		if err != nil {
			fmt.Fprintln(os.Stderr, "reference:", err)
			os.Exit(1)
		}
	}
}

// outputs are the files that are made, seen from this folder.
var outputs = map[string]func() (string, error){
	"../../../deploy/shop.schema.json": schemaText,
	"../../../docs/shop-file.md":       pageText,
}
