package fitcheck

import (
	"math"
	"strconv"
)

// carton is a closed box in whole inches, its longest side first: carriers round every
// side up (dimensional-weight notices, in effect since 18 August 2025).
type carton struct{ long, wide, high int }

// packed is the carton of a part that bulges by rise.
func packed(p part, rise Length, layers int, pk *Packing) carton {
	height := rise + pk.Above + Length(layers-1)*pk.LayerGap
	if p.kind == ReplaceUnit {
		height += pk.FrameDepth
	}
	out := p.outside(pk)
	a, b, c := upInches(out.long+pk.Around), upInches(out.short+pk.Around), upInches(height)
	if c > b {
		b, c = c, b
	}
	if b > a {
		a, b = b, a
	}
	return carton{a, b, c}
}

func upInches(l Length) int { return int((l + Inch - 1) / Inch) }

func (c carton) inches() [3]float64 {
	return [3]float64{float64(c.long), float64(c.wide), float64(c.high)}
}

func (c carton) volume() int { return c.long * c.wide * c.high }

// lengthPlusGirth is the longest side and the way around the other two.
func (c carton) lengthPlusGirth() int { return c.long + 2*(c.wide+c.high) }

// dimensionalLb is the weight that a carton of this size is billed for at least, rounded up.
func (c carton) dimensionalLb(divisor int) int {
	if divisor <= 0 {
		return 0
	}
	return (c.volume() + divisor - 1) / divisor
}

func (c carton) cardboardLb(pk *Packing) float64 {
	surface := 2 * (c.long*c.wide + c.long*c.high + c.wide*c.high)
	return float64(surface) / 144 * pk.CartonLbPerFt
}

func (l ParcelLimits) takes(c carton, lb float64) bool {
	return lb <= l.MaxLb && c.long <= l.MaxLengthIn && c.lengthPlusGirth() <= l.MaxLengthPlusGirth
}

func (l OversizeLimits) over(c carton, lb float64) bool {
	return lb > l.OverLb || c.long > l.OverLengthIn || c.lengthPlusGirth() > l.OverLengthPlusGirth || c.volume() > l.OverCubicIn
}

func (l HandlingLimits) over(c carton, lb float64) bool {
	return lb > l.OverLb || c.long > l.OverLengthIn || c.wide > l.OverWidthIn || c.volume() > l.OverCubicIn
}

// freightClass is the class of what is handed over: the carton, on its pallet if the
// shop uses one.
func (s *ShipRules) freightClass(c carton, lb float64) float64 {
	cubicFeet := float64(c.long*c.wide*(c.high+s.Packing.PalletIn)) / 1728
	return classOf((lb+s.Packing.PalletLb)/cubicFeet, s.Classes)
}

// classOf is the class of a density in pounds a cubic foot; 0 where the table is empty.
func classOf(density float64, tiers []DensityClass) float64 {
	class := 0.0
	for _, t := range tiers {
		if density < t.Density {
			break
		}
		class = t.Class
	}
	return class
}

func tenth(f float64) float64 { return math.Round(f*10) / 10 }

// tenths writes a figure to one place at most.
func tenths(f float64) string {
	return strconv.FormatFloat(tenth(f), 'f', -1, 64)
}
