// Package deploy holds what a shop needs to set the bot up, and the demo shop among it.
package deploy

import _ "embed"

// ExampleShop is shop.example.yaml: an invented shop whose file shows every setting. The
// demo runs with it.
//
//go:embed shop.example.yaml
var ExampleShop string

// ExampleEnvironment is environment.example: every variable of serve, explained.
//
//go:embed environment.example
var ExampleEnvironment string

// ShopSchema is shop.schema.json: the JSON Schema of shop files, made from the program by
// internal/shop/reference.
//
//go:embed shop.schema.json
var ShopSchema string
