package fitcheck

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var (
	decimal = regexp.MustCompile(`\d\.\d`)
	banned  = regexp.MustCompile(`(?i)climb|complies|compliant|up to code|meets|guarantee|\bladder`)
)

// Every finding's text is one plain sentence with lengths in tape fractions, and names its
// source; nobody is sent up a roof and nothing is said to meet a code.
func TestTextsCouldBeSent(t *testing.T) {
	check := func(t interface{ Errorf(string, ...any) }, f *Finding) {
		s := f.Text
		end := s[len(s)-1:]
		sentences := strings.Count(s, ". ") + strings.Count(s, "? ") + 1
		switch {
		case end != "." && end != "?", sentences != 1, s[:1] != strings.ToUpper(s[:1]):
			t.Errorf("%s is no single sentence: %s", f.Code, s)
		case decimal.MatchString(s) && !unitSlip(f.Code):
			t.Errorf("%s has a decimal: %s", f.Code, s)
		case banned.MatchString(s), strings.Contains(s, "--"), strings.Contains(s, "  "), strings.Contains(s, " 0 in"), strings.Contains(s, "diagonals reads"):
			t.Errorf("%s: %s", f.Code, s)
		case len(s) > 240:
			t.Errorf("%s is long for a text: %s", f.Code, s)
		case f.Source == "" || f.Topic == "":
			t.Errorf("%s lacks source or topic", f.Code)
		case f.Severity == Ask && !strings.HasSuffix(s, "?"):
			t.Errorf("%s asks no question: %s", f.Code, s)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		u := drawShaped(t)
		u.DomeRise = rise(float64(rapid.IntRange(0, 60).Draw(t, "rise")))
		u.CurbHeight = high(float64(rapid.IntRange(1, 30).Draw(t, "height")))
		u.RoofCovering = rapid.SampledFrom(append([]string{""}, Choices(TopicRoofCovering)...)).Draw(t, "covering")
		if u.RoofCovering != "" {
			u.RoofSlope = pitch(float64(rapid.IntRange(0, 48).Draw(t, "slope")) / 4)
		}
		use := rapid.SampledFrom(Choices(TopicUse)).Draw(t, "use")
		r := checkOne(u, use)
		for i := range r.Findings {
			check(t, &r.Findings[i])
		}
	})
}

// Every code of measurements is reached by the tables, so that none is dead.
func TestEveryMeasurementCodeIsReached(t *testing.T) {
	seen := map[Code]bool{}
	bulging := domeUnit(rect(26, 50), rect(24, 48))
	bulging.BulgeBase = rect(24, 48)
	for _, f := range append(append(mistakes(), contractLines()...), fact{unit: bulging}) {
		for _, f := range checkOne(f.unit, UseHome).Findings {
			seen[f.Code] = true
		}
	}
	for _, c := range []Code{CurbWallMismatch, DrywallIncluded, FlashingIncluded, DoubledCurb, ThinCurb, FrameMeasuredForCurb,
		RetainerMeasuredForPlastic, SidesSwapped, FeetForInches, MetricForInches, TapeHookInch, MisreadFoot, NominalSize, OutOfSquare,
		DiagonalsImpossible, CapGapTight, CapGapLoose, WontCap, EdgeGripShort, EdgeGripLong, WontPassOpening} {
		if !seen[c] {
			t.Errorf("%s is never said", c)
		}
	}
}
