// Package deploy holds what a shop needs to set the bot up, and the demo shop among it.
package deploy

import _ "embed"

// ExampleShop is shop.example.yaml: an invented shop whose file shows every setting. The
// demo runs with it.
//
//go:embed shop.example.yaml
var ExampleShop string
