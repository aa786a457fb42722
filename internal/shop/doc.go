// Package shop is what the owner of a shop decides, in one YAML file that a person edits
// by hand: who the shop is, when it is open, what it sells and makes, its tolerances and
// prices, and what the bot may say. A file with a mistake starts nothing; every mistake
// is told at once, with its line and column and what would be right.
package shop
