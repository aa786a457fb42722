package conversation

import "example.com/intake-bot/internal/fitcheck"

// merged joins a new value with what stood before, where the new one is only a part of
// it: the other side of a size, the second diagonal, the state of a town, one more
// problem. whole is false where it can't be told which part the new one is.
func merged(topic fitcheck.Topic, before, now fitcheck.Value) (v fitcheck.Value, whole bool) {
	switch now := now.(type) {
	case fitcheck.Size:
		if b, ok := before.(fitcheck.Size); ok {
			return mergedSize(b, now)
		}
	case fitcheck.Diagonals:
		if b, ok := before.(fitcheck.Diagonals); ok && now.Second == 0 && b.Second == 0 && b.First != now.First {
			return fitcheck.Diagonals{First: b.First, Second: now.First}, true
		}
	case fitcheck.Place:
		if b, ok := before.(fitcheck.Place); ok {
			return mergedPlace(b, now), true
		}
	case fitcheck.Color:
		if b, ok := before.(fitcheck.Color); ok && now.Outer == "" {
			b.Inner = now.Inner
			return b, true
		}
	}
	return now, true
}

func mergedSize(b, now fitcheck.Size) (fitcheck.Value, bool) {
	switch {
	case now.Complete():
		return now, true
	case now.One > 0 && b.Complete():
		return correctedSide(b, now)
	case now.One > 0 && b.One > 0:
		return sides(b.One, now.One, finer(b, now)), true
	case now.One > 0 && b.Width > 0:
		return fitcheck.Size{Width: b.Width, Length: now.One, Resolution: finer(b, now)}, true
	case now.One > 0 && b.Length > 0:
		return fitcheck.Size{Width: now.One, Length: b.Length, Resolution: finer(b, now)}, true
	case now.Width > 0 && b.One > 0:
		return fitcheck.Size{Width: now.Width, Length: b.One, Resolution: finer(b, now)}, true
	case now.Length > 0 && b.One > 0:
		return fitcheck.Size{Width: b.One, Length: now.Length, Resolution: finer(b, now)}, true
	case now.Width > 0 && (b.Length > 0):
		return fitcheck.Size{Width: now.Width, Length: b.Length, Resolution: finer(b, now)}, true
	case now.Length > 0 && (b.Width > 0):
		return fitcheck.Size{Width: b.Width, Length: now.Length, Resolution: finer(b, now)}, true
	}
	return now, true
}

// sides puts two unnamed sides in order: the width is the smaller one.
func sides(a, b, resolution fitcheck.Length) fitcheck.Size {
	return fitcheck.Size{Width: min(a, b), Length: max(a, b), Resolution: resolution}
}

// finer is the coarser of two resolutions: the pair is no better than its worse half.
func finer(a, b fitcheck.Size) fitcheck.Length { return max(a.Resolution, b.Resolution) }

// correctedSide replaces the side that a lone number must mean: the one that it is
// near, where the other is far. Where both are near, or none, it can't be told.
func correctedSide(b, now fitcheck.Size) (fitcheck.Value, bool) {
	if b.Diameter > 0 {
		return fitcheck.Size{Diameter: now.One, Resolution: now.Resolution}, true
	}
	if len(b.Sides) > 0 {
		return now, false
	}
	if now.One == b.Width && now.One == b.Length {
		return b, true // "36 3/4 is right", of a square
	}
	toWidth, toLength := distance(now.One, b.Width), distance(now.One, b.Length)
	switch near := now.One / 8; {
	case toWidth <= near && toLength > near:
		b.Width = now.One
	case toLength <= near && toWidth > near:
		b.Length = now.One
	default:
		return now, false
	}
	b.Resolution = now.Resolution
	return b, true
}

func distance(a, b fitcheck.Length) fitcheck.Length {
	if a > b {
		return a - b
	}
	return b - a
}

// mergedPlace fills in what the new words leave out, unless they contradict what stood.
func mergedPlace(b, now fitcheck.Place) fitcheck.Place {
	if now.ZIP != "" || (now.City != "" && now.State != "") {
		return now
	}
	if now.State != "" && b.State != "" && now.State != b.State {
		return now
	}
	if now.City == "" {
		now.City, now.ZIP = b.City, b.ZIP
	}
	if now.State == "" {
		now.State = b.State
	}
	return now
}
