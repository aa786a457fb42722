// Package fitcheck decides whether a replacement part will fit: it looks at what a
// customer measured and said of a skylight, finds out whether the numbers can be
// right, what part is to be replaced, what to order, how it ships and about what it
// costs. It is pure: the same job and rules give the same answer, byte for byte.
//
// The numbers are weighed in three steps. A sheet holds every reading with its standard
// uncertainty. The diagnosis asks whether "nothing wrong" explains them; if not, every
// known mistake is undone in turn, and the one that makes the rest agree best is named,
// with its rival where the numbers can't tell the two apart. Then the shop's lines are
// drawn through what was meant.
//
// Every rule names its source at its line and in its finding: a published section,
// "common practice", or "from memory". Codes are flagged, never ruled on: local
// amendments and licensed people decide.
package fitcheck
