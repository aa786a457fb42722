// Package fitcheck decides whether a replacement part will fit: it looks at what a
// customer measured and said of a skylight, finds out whether the numbers can be
// right, what part is to be replaced, what to order, how it ships and about what it
// costs. It is pure: the same job and rules give the same answer, byte for byte.
//
// Every rule names its source at its line and in its finding: a published section,
// "common practice", or "from memory". Codes are flagged, never ruled on: local
// amendments and licensed people decide.
package fitcheck
