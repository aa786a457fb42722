package fitcheck

// bill is a running total in cents. Its lines are the steps of the total in whole units,
// the low end rounded down and the high end up, so that they add up exactly.
type bill struct {
	low, high Cents
	lines     []EstimateLine
}

// add puts a line on the bill, unless it comes to nothing.
func (b *bill) add(what string, low, high Cents) {
	if low == 0 && high == 0 {
		return
	}
	beforeLow, beforeHigh := b.low.down(), b.high.up()
	b.low, b.high = b.low+low, b.high+high
	b.lines = append(b.lines, EstimateLine{What: what, Low: b.low.down() - beforeLow, High: b.high.up() - beforeHigh})
}

// atLeast lifts both ends to a least amount.
func (b *bill) atLeast(what string, least Cents) {
	b.add(what, max(0, least-b.low), max(0, least-b.high))
}

// down and up are whole units of the currency; money here is never below zero.
func (c Cents) down() int64 { return int64(c) / 100 }
func (c Cents) up() int64   { return (int64(c) + 99) / 100 }

// of applies a factor, rounding half a cent up.
func (p Percent) of(c Cents) Cents { return (c*Cents(p) + 50) / 100 }
