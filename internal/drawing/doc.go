// Package drawing makes the pictures that a shop sends and prints: where to lay the tape
// on a skylight, a customer's own numbers to scale with the doubtful one marked, and the
// lead sheet that staff hold while they call. Each is drawn once and comes as SVG, PNG or
// PDF with the same bytes every time. It knows sizes and findings from fitcheck and
// nothing of talks, channels or the database.
package drawing
