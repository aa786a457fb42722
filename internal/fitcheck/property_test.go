package fitcheck

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// drawSize draws a size of the sixteenth, mostly near some base.
func drawNear(t *rapid.T, base Size, name string) Size {
	off := func(l Length) Length {
		far := rapid.SampledFrom([]int{0, 0, 0, 2, 16, 64, 200}).Draw(t, name+" by")
		return max(l+Length(rapid.IntRange(-far, far).Draw(t, name+" off"))*Sixteenth, Sixteenth)
	}
	if base.Diameter > 0 {
		return Size{Diameter: off(base.Diameter)}
	}
	return Size{Width: off(base.Width), Length: off(base.Length)}
}

// drawMeasured is a unit some of whose sizes are there, right or wrong.
func drawMeasured(t *rapid.T) Unit {
	w, l := rapid.IntRange(10*16, 80*16).Draw(t, "w"), rapid.IntRange(10*16, 80*16).Draw(t, "l")
	at := func(off float64) Size {
		d := FromInches(off)
		return Size{Width: Length(w)*Sixteenth + d, Length: Length(l)*Sixteenth + d}
	}
	u := Unit{Style: StyleCurbMount, FrameCondition: ConditionGood,
		Want: rapid.SampledFrom([]string{WantDomeOnly, WantCompleteUnit, WantUnsure, ""}).Draw(t, "want")}
	for _, m := range []struct {
		topic Topic
		off   float64
	}{{TopicPlasticSize, 3}, {TopicRetainerOpening, 1}, {TopicRetainerOutside, 3.75}, {TopicFrameInside, 3.375},
		{TopicCurbOutside, 3}, {TopicCurbInside, 0}, {TopicBulgeBase, 0.5}} {
		if rapid.Bool().Draw(t, string(m.topic)) {
			*u.SizeOf(m.topic) = drawNear(t, at(m.off), string(m.topic))
		}
	}
	if rapid.Bool().Draw(t, "diagonals") {
		o := at(3)
		d := FromInches(math.Hypot(o.Width.Inches(), o.Length.Inches()))
		near := drawNear(t, Size{Width: d, Length: d}, "diagonal")
		u.CurbDiagonals = Diagonals{near.Width, near.Length}
	}
	return u
}

// drawShaped is a unit some of whose sizes are there, every other one round.
func drawShaped(t *rapid.T) Unit {
	u := drawMeasured(t)
	if !rapid.Bool().Draw(t, "round") {
		return u
	}
	u.Outline, u.CurbDiagonals = OutlineRound, Diagonals{}
	for _, topic := range SizeTopics {
		if s := u.SizeOf(topic); s.Width > 0 {
			*s = Size{Diameter: s.Width}
		}
	}
	return u
}

func codesAndSeverities(r UnitResult) []string {
	var out []string
	for _, f := range r.Findings {
		out = append(out, string(f.Code)+" "+string(f.Severity))
	}
	slices.Sort(out)
	return out
}

func TestSwappingNamesChangesNothingButNames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := drawMeasured(t)
		swapped := u
		for _, topic := range SizeTopics {
			s := swapped.SizeOf(topic)
			s.Width, s.Length = s.Length, s.Width
		}
		a, b := checkOne(u, UseHome), checkOne(swapped, UseHome)
		if a.Verdict != b.Verdict || !slices.Equal(codesAndSeverities(a), codesAndSeverities(b)) || !slices.Equal(a.Missing, b.Missing) {
			t.Fatalf("%s %v against %s %v", a.Verdict, codesAndSeverities(a), b.Verdict, codesAndSeverities(b))
		}
		for _, pair := range [][2]*Size{{a.Order.FrameInside, b.Order.FrameInside}, {a.Order.PlasticSize, b.Order.PlasticSize}} {
			if x, y := pair[0], pair[1]; x != nil && (x.Width != y.Length || x.Length != y.Width) {
				t.Fatalf("ordered %+v against %+v", x, y)
			}
		}
	})
}

// Plastic of 13 x 13 in whose opening is not square was written down one side twice; which
// side was lost nothing tells, so nothing is said of the grip on either.
func TestNeitherOfTwoLikeSidesIsTheLostOne(t *testing.T) {
	u := Unit{Want: WantDomeOnly, Style: StyleCurbMount, FrameCondition: ConditionGood,
		PlasticSize:     Size{Width: 13 * Inch, Length: 13 * Inch},
		RetainerOpening: Size{Width: 11 * Inch, Length: 12*Inch + Sixteenth}}
	a := checkOne(u, UseHome)
	u.RetainerOpening.Width, u.RetainerOpening.Length = u.RetainerOpening.Length, u.RetainerOpening.Width
	b := checkOne(u, UseHome)
	want := []string{"implausible_size ask", "tape_hook_inch ask"}
	if x, y := codesAndSeverities(a), codesAndSeverities(b); !slices.Equal(x, want) || !slices.Equal(y, want) {
		t.Errorf("said %v and %v, not %v", x, y, want)
	}
}

// A rougher tape proves less: what can't fit never fits by it, and a stop goes only where
// a number may have been misread by as much.
func TestNoiseNeverMakesItFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := drawShaped(t)
		fine := Check(Job{Units: []Unit{u}, Resolution: Sixteenth}, DefaultRules()).Units[0]
		for _, r := range []Length{Inch / 8, Inch / 4, Inch / 2, Inch, 3 * Inch} {
			rough := Check(Job{Units: []Unit{u}, Resolution: r}, DefaultRules()).Units[0]
			if fine.Verdict == VerdictNoFit && rough.Verdict == VerdictFits {
				t.Fatalf("read to %s in it fits: %v", r.Tape(), codesAndSeverities(fine))
			}
			for _, f := range fine.Findings {
				if f.Severity == Stop && !hasCode(rough, f.Code) && rough.Verdict != VerdictRemeasure && !slices.ContainsFunc(rough.Findings, func(f Finding) bool { return f.Severity == Ask }) {
					t.Fatalf("read to %s in %s is gone: %v", r.Tape(), f.Code, codesAndSeverities(rough))
				}
			}
		}
	})
}

func hasCode(r UnitResult, c Code) bool {
	return slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Code == c })
}

// An answer taken back ("not sure") leaves every stop of the measurements where it was.
func TestLooserAnswersKeepStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := drawShaped(t)
		firm := checkOne(u, UseHome)
		u.FrameCondition = rapid.SampledFrom([]string{ConditionUnsure, ConditionCaulkedOver, ""}).Draw(t, "looser frame")
		if u.Style = rapid.SampledFrom([]string{StyleCurbMount, StyleUnsure, ""}).Draw(t, "looser style"); u.Want == "" {
			u.Want = WantUnsure
		}
		loose := checkOne(u, UseHome)
		for _, f := range firm.Findings {
			if f.Severity == Stop && f.Code != TooLargeToMake && f.Code != TooSmallToMake && !hasCode(loose, f.Code) {
				t.Fatalf("%s is gone", f.Code)
			}
		}
		if firm.Verdict == VerdictNoFit && loose.Verdict == VerdictFits {
			t.Fatalf("%v fits now", codesAndSeverities(firm))
		}
	})
}

// The same skylight read in sixteenths, in millimetres or in feet gets the same verdict, as
// long as it is not within a reading of a line: curbs of any wall, domes of any grip, round
// or not.
func TestUnitsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l := rapid.IntRange(14, 70).Draw(t, "w"), rapid.IntRange(14, 70).Draw(t, "l")
		in := rect(float64(w)+0.25, float64(l)+0.25)
		if rapid.Bool().Draw(t, "round") {
			in = round(float64(w) + 0.25)
		}
		more, of := rapid.SampledFrom([]float64{3.125, 4.125, 6.125, 1.625}).Draw(t, "wall"), curbUnit
		if rapid.Bool().Draw(t, "dome") {
			more, of = rapid.SampledFrom([]float64{1.75, 2.25, 3.5, 0.5}).Draw(t, "grip"), domeUnit
		}
		out := eachSide(in, func(x Length) Length { return x + FromInches(more) })
		a := checkOne(of(out, in), UseHome)
		for name, to := range map[string]func(Length) Length{"millimetres": toMillimetre, "feet": toThousandthFoot} {
			b := checkOne(of(eachSide(out, to), eachSide(in, to)), UseHome)
			if a.Verdict != b.Verdict || said(a, false) != said(b, false) {
				t.Fatalf("%s %q, in %s %s %q", a.Verdict, said(a, false), name, b.Verdict, said(b, false))
			}
		}
	})
}

func eachSide(s Size, f func(Length) Length) Size {
	if s.Diameter > 0 {
		return Size{Diameter: f(s.Diameter)}
	}
	return Size{Width: f(s.Width), Length: f(s.Length)}
}

// toMillimetre reads to the whole millimetre, toThousandthFoot to the thousandth of a foot.
func toMillimetre(l Length) Length { return (l + Millimetre/2) / Millimetre * Millimetre }

func toThousandthFoot(l Length) Length { return (l + Foot/2000) / (Foot / 1000) * (Foot / 1000) }

// A larger curb or sheet is never ordered smaller.
func TestOrdersAreMonotonic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l := Length(rapid.IntRange(12*16, 90*16).Draw(t, "w"))*Sixteenth, Length(rapid.IntRange(12*16, 90*16).Draw(t, "l"))*Sixteenth
		more := Length(rapid.IntRange(0, 160).Draw(t, "more")) * Sixtyfourth
		for _, make := range []func(Size) Unit{
			func(s Size) Unit { return curbUnit(s, Size{}) },
			func(s Size) Unit { return domeUnit(s, Size{}) },
		} {
			a := orderedSize(make(Size{Width: w, Length: l}))
			b := orderedSize(make(Size{Width: w + more, Length: l}))
			if a.Width > b.Width || a.Length != b.Length {
				t.Fatalf("%v, and %s in wider %v", a, more.Tape(), b)
			}
			if c, d := orderedSize(make(Size{Diameter: w})), orderedSize(make(Size{Diameter: w + more})); c.Diameter > d.Diameter {
				t.Fatalf("%v, and %s in wider %v", c, more.Tape(), d)
			}
		}
	})
}

func orderedSize(u Unit) Size {
	o := checkOne(u, UseHome).Order
	if o.FrameInside != nil {
		return *o.FrameInside
	}
	return *o.PlasticSize
}

// A unit that is ordered caps its curb with a gap of no less than the aim.
func TestOrderedUnitsCap(t *testing.T) {
	rules := DefaultRules()
	rapid.Check(t, func(t *rapid.T) {
		u := drawMeasured(t)
		u.Want = WantCompleteUnit
		o := Check(Job{Units: []Unit{u}}, rules).Units[0].Order
		if o.FrameInside == nil {
			return
		}
		for _, gap := range []Length{o.FrameInside.Width - u.CurbOutside.Width, o.FrameInside.Length - u.CurbOutside.Length} {
			if gap < rules.Gap.Target {
				t.Fatalf("gap of %s in", gap.Tape())
			}
		}
	})
}

// The verdict and the findings agree, and the same job gives the same bytes.
func TestVerdictAgreesWithFindings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := drawShaped(t)
		job := Job{Use: UseHome, Units: []Unit{u}}
		r := Check(job, DefaultRules()).Units[0]
		if r.Verdict == VerdictFits && said(r, false) != "" {
			t.Fatalf("fits with %q", said(r, false))
		}
		if r.Verdict == VerdictRemeasure && said(r, false) == "" {
			t.Fatal("remeasure, and nothing says what")
		}
		for _, f := range r.Findings {
			if (f.Rival != "") != hasRival(r, f) {
				t.Fatalf("%s: rival %q is not among the findings", f.Code, f.Rival)
			}
		}
		a, errA := json.Marshal(r)
		b, errB := json.Marshal(Check(job, DefaultRules()).Units[0])
		if errA != nil || errB != nil || !bytes.Equal(a, b) {
			t.Fatalf("%s then %s, %v %v", a, b, errA, errB)
		}
	})
}

func hasRival(r UnitResult, f Finding) bool {
	return f.Rival != "" && slices.ContainsFunc(r.Findings, func(g Finding) bool { return g.Code == f.Rival && g.Rival == f.Code })
}
