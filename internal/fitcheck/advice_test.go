package fitcheck

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestAdvice(t *testing.T) {
	home := Job{Use: UseHome, Place: Place{State: "IA"}}
	for _, row := range []struct {
		name string
		job  Job
		unit Unit
		want Code
		none bool
	}{
		{"one layer in a house", home, Unit{Layers: 1}, SingleLayerHeatedSpace, false},
		{"one layer in a shop", Job{Use: UseCommercial}, Unit{Layers: 1}, SingleLayerHeatedSpace, false},
		{"one layer in a manufactured home", Job{Use: UseManufacturedHome}, Unit{Layers: 1}, SingleLayerHeatedSpace, false},
		{"one layer in a barn", Job{Use: UseOutbuilding}, Unit{Layers: 1}, SingleLayerHeatedSpace, true},
		{"one layer in a trailer", Job{Use: UseRV}, Unit{Layers: 1}, SingleLayerHeatedSpace, true},
		{"two layers", home, Unit{Layers: 2}, SingleLayerHeatedSpace, true},
		{"layers not known", home, Unit{}, SingleLayerHeatedSpace, true},
		{"use not known", Job{}, Unit{Layers: 1}, SingleLayerHeatedSpace, true},
		{"hail on acrylic", home, Unit{ImpactRisk: []string{RiskHail}, Material: MaterialAcrylic}, ImpactAdvised, false},
		{"trees, material open", home, Unit{ImpactRisk: []string{RiskTrees}}, ImpactAdvised, false},
		{"hail on polycarbonate", home, Unit{ImpactRisk: []string{RiskHail}, Material: MaterialPolycarbonate}, ImpactAdvised, true},
		{"nothing falls", home, Unit{ImpactRisk: []string{}}, ImpactAdvised, true},
		{"not asked", home, Unit{}, ImpactAdvised, true},
		{"bronze over clear", home, Unit{Color: Color{Outer: ColorBronze, Inner: ColorClear}}, RareColor, true},
		{"clear over white", home, Unit{Color: Color{Outer: ColorClear, Inner: ColorWhite}}, RareColor, true},
		{"white over white", home, Unit{Color: Color{Outer: ColorWhite, Inner: ColorWhite}}, RareColor, true},
		{"white alone", home, Unit{Color: Color{Outer: ColorWhite}}, RareColor, true},
		{"clear over bronze", home, Unit{Color: Color{Outer: ColorClear, Inner: ColorBronze}}, RareColor, false},
		{"bronze in the middle", home, Unit{Color: Color{Outer: ColorWhite, Middle: ColorBronze, Inner: ColorClear}}, RareColor, false},
		{"another color", home, Unit{Color: Color{Outer: ColorOther}}, RareColor, false},
		{"another color inside", home, Unit{Color: Color{Outer: ColorClear, Inner: ColorOther}}, RareColor, false},
		{"another finish", home, Unit{Finish: FinishOther}, RareColor, false},
		{"mill", home, Unit{Finish: FinishMill}, RareColor, true},
	} {
		_, has := codesOf(advise(&row.unit, &row.job, DefaultRules(), &UnitResult{Replace: ReplaceUnit}))[row.want]
		if has == row.none {
			t.Errorf("%s: has %s = %v", row.name, row.want, has)
		}
	}
}

func TestOversizeAdvice(t *testing.T) {
	for _, row := range []struct {
		name string
		r    *UnitResult
		want string
	}{
		{"small dome", dome(24, 24), ""},
		{"charged as oversize", dome(34, 34), "oversize parcel"},
		{"freight", dome(52, 52), "by freight"},
		{"no order", &UnitResult{Replace: ReplaceDome}, ""},
	} {
		f, has := codesOf(advise(&Unit{}, &Job{}, DefaultRules(), row.r))[OversizeParcel]
		if has != (row.want != "") || !strings.Contains(f.Text, row.want) {
			t.Errorf("%s: %v %q", row.name, has, f.Text)
		}
	}
}

func TestADomeAloneHasNoFinish(t *testing.T) {
	fs := advise(&Unit{Finish: FinishOther}, &Job{}, DefaultRules(), &UnitResult{Replace: ReplaceDome})
	if len(fs) != 0 {
		t.Errorf("findings %v, want none", fs)
	}
}

// A dome in the strictest counties needs the whole assembly's approval, and is told so.
func TestDomeWhereTheAssemblyIsApproved(t *testing.T) {
	job := &Job{Place: Place{State: "FL"}, Site: in("Broward")}
	f := codesOf(advise(&Unit{}, job, DefaultRules(), &UnitResult{Replace: ReplaceDome}))[HurricaneRegion]
	if !strings.Contains(f.Text, "not its dome alone") {
		t.Errorf("text %q doesn't speak of the dome", f.Text)
	}
}

// Whatever is known: advice is notes only, each one sentence with its source, no promise of
// code, no climbing, and a code once for each topic.
func TestAdviceIsPlainNotes(t *testing.T) {
	rules := DefaultRules()
	rapid.Check(t, func(t *rapid.T) {
		u := drawUnit(t)
		u.ImpactRisk = rapid.SampledFrom([][]string{nil, {}, {RiskHail}, {RiskTrees, RiskGolf}, {RiskGolf}, {RiskOther}}).Draw(t, "risk")
		u.Color.Outer = rapid.SampledFrom(append(colors, "")).Draw(t, "outer")
		u.Color.Inner = rapid.SampledFrom(append(colors, "")).Draw(t, "inner")
		u.Finish = rapid.SampledFrom(append(choices[TopicFinish], "")).Draw(t, "finish")
		job := &Job{Use: rapid.SampledFrom(append(choices[TopicUse], "")).Draw(t, "use")}
		job.Place.State = rapid.SampledFrom([]string{"", "MN", "FL", "HI", "AZ", "TX", "NV", "IA", "AK"}).Draw(t, "state")
		job.Site = rapid.SampledFrom([]Site{{}, in("Broward"), at(33.45, -112.07), at(36.1, -115.1)}).Draw(t, "site")
		seen := map[string]bool{}
		for _, f := range advise(u, job, rules, drawPart(t, 120)) {
			if f.Severity != Note || f.Source == "" || f.Topic == "" {
				t.Fatalf("%+v is not a note with its source", f)
			}
			if !strings.HasSuffix(f.Text, ".") || strings.Count(f.Text, ". ") > 0 || strings.Contains(f.Text, "..") {
				t.Fatalf("%q is not one sentence", f.Text)
			}
			for _, bad := range []string{"meets code", "climb", "hail-proof", "guarantee"} {
				if strings.Contains(f.Text, bad) {
					t.Fatalf("%q says %q", f.Text, bad)
				}
			}
			key := string(f.Code) + string(f.Topic)
			if seen[key] {
				t.Fatalf("%s twice", key)
			}
			seen[key] = true
		}
	})
}
