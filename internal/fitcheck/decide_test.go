package fitcheck

import (
	"slices"
	"testing"
)

// What to replace, and why: what an estimator would say (common practice).
func TestDecision(t *testing.T) {
	for _, row := range []struct {
		style, condition, want string
		replace                Replace
		reasons                []string
		photos                 []Topic
	}{
		{StyleCurbMount, ConditionGood, WantDomeOnly, ReplaceDome, []string{ReasonReuseFrame}, nil},
		{StyleCurbMount, ConditionWeathered, WantDomeOnly, ReplaceDome, []string{ReasonReuseFrame}, nil},
		{StyleCurbMount, ConditionGood, WantUnsure, ReplaceDome, []string{ReasonReuseFrame}, nil},
		{StyleCurbMount, ConditionGood, "", ReplaceDome, []string{ReasonReuseFrame}, nil},
		{StyleCurbMount, "", WantDomeOnly, ReplaceDome, []string{ReasonReuseFrame}, nil},
		{StyleCurbMount, ConditionGood, WantCompleteUnit, ReplaceUnit, []string{ReasonCustomerPrefersUnit}, nil},
		{StyleCurbMount, ConditionBent, WantDomeOnly, ReplaceUnit, []string{ReasonFramePastReuse}, nil},
		{StyleCurbMount, ConditionCorroded, WantUnsure, ReplaceUnit, []string{ReasonFramePastReuse}, nil},
		{StyleCurbMount, ConditionBent, WantCompleteUnit, ReplaceUnit, []string{ReasonFramePastReuse, ReasonCustomerPrefersUnit}, nil},
		{StyleCurbMount, ConditionCaulkedOver, WantDomeOnly, ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicFrameCondition}},
		{StyleCurbMount, ConditionUnsure, WantUnsure, ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicFrameCondition}},
		{StyleCurbMount, ConditionCaulkedOver, WantCompleteUnit, ReplaceUnit, []string{ReasonCustomerPrefersUnit}, nil},
		{StyleFiberglassFrame, ConditionGood, WantDomeOnly, ReplaceUnit, []string{ReasonStyleNeedsUnit}, []Topic{TopicStyle}},
		{StyleVerticalRise, ConditionGood, WantDomeOnly, ReplaceUnit, []string{ReasonStyleNeedsUnit}, []Topic{TopicStyle}},
		{StyleDomeOverFrame, "", "", ReplaceUnit, []string{ReasonStyleNeedsUnit}, []Topic{TopicStyle}},
		{StyleFiberglassFrame, ConditionCaulkedOver, "", ReplaceUnit, []string{ReasonStyleNeedsUnit}, []Topic{TopicStyle}},
		{StyleSelfFlashing, ConditionGood, WantDomeOnly, ReplaceStaff, []string{ReasonNotCurbMounted}, []Topic{TopicStyle}},
		{StyleBareDome, "", WantDomeOnly, ReplaceStaff, []string{ReasonNotCurbMounted}, []Topic{TopicStyle}},
		{StyleGlass, ConditionGood, WantCompleteUnit, ReplaceStaff, []string{ReasonOutsideOurParts}, nil},
		{StyleTubular, "", "", ReplaceStaff, []string{ReasonOutsideOurParts}, nil},
		{StyleNoneYet, "", WantCompleteUnit, ReplaceStaff, []string{ReasonNewOpening}, nil},
		{StyleUnsure, ConditionGood, WantDomeOnly, ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicStyle}},
		{StyleUnsure, ConditionUnsure, "", ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicStyle, TopicFrameCondition}},
		{StyleUnsure, ConditionBent, WantCompleteUnit, ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicStyle}},
		{"", "", "", ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicStyle}},
		{"", ConditionGood, WantDomeOnly, ReplaceDome, []string{ReasonReuseFrame}, nil},
		{"", "", WantCompleteUnit, ReplaceUnit, []string{ReasonCustomerPrefersUnit}, nil},
	} {
		u := Unit{Style: row.style, FrameCondition: row.condition, Want: row.want}
		wantDecision(t, &u, UseHome, row.replace, row.reasons, row.photos)
	}
}

func wantDecision(t *testing.T, u *Unit, use string, replace Replace, reasons []string, photos []Topic) {
	t.Helper()
	r := Check(Job{Use: use, Units: []Unit{*u}}, DefaultRules()).Units[0]
	if r.Replace != replace || !slices.Equal(r.Reasons, reasons) || !slices.Equal(r.PhotosWanted, photos) {
		t.Errorf("style %q, frame %q, want %q, outline %q, use %s: %s %v photos %v, want %s %v photos %v", u.Style, u.FrameCondition,
			u.Want, u.Outline, use, r.Replace, r.Reasons, r.PhotosWanted, replace, reasons, photos)
	}
}

func TestDecisionByShapeUseAndPhotos(t *testing.T) {
	sound := Unit{Style: StyleCurbMount, FrameCondition: ConditionGood, Want: WantDomeOnly}
	wantDecision(t, ptr(changed(sound, func(u *Unit) { u.Outline = OutlineOther })), UseHome, ReplaceStaff, []string{ReasonOutsideOurParts}, []Topic{TopicOutline})
	wantDecision(t, ptr(changed(sound, func(u *Unit) { u.Outline = OutlineRound })), UseHome, ReplaceDome, []string{ReasonReuseFrame}, nil)
	wantDecision(t, ptr(changed(sound, func(u *Unit) { u.Profile = ProfilePyramid })), UseHome, ReplaceDome, []string{ReasonReuseFrame}, nil)
	wantDecision(t, ptr(changed(sound, func(u *Unit) { u.Profile = ProfileOther })), UseHome, ReplaceStaff, []string{ReasonOutsideOurParts}, []Topic{TopicProfile})
	wantDecision(t, &sound, UseRV, ReplaceStaff, []string{ReasonNotCurbMounted}, []Topic{TopicStyle})
	wantDecision(t, &sound, UseManufacturedHome, ReplaceDome, []string{ReasonReuseFrame}, nil)

	// A new unit goes on any curb that was measured, whatever stands there now.
	curb := Unit{Style: StyleUnsure, Want: WantCompleteUnit, CurbOutside: rect(25.5, 49.5)}
	wantDecision(t, &curb, UseHome, ReplaceUnit, []string{ReasonCustomerPrefersUnit}, nil)

	// What came is not asked for again, and the program does not look at it.
	hidden := changed(sound, func(u *Unit) { u.FrameCondition = ConditionCaulkedOver; u.Photos = ptr(2) })
	wantDecision(t, &hidden, UseHome, ReplaceStaff, []string{ReasonPhotoDecides}, nil)
	hidden.Photos = ptr(0)
	wantDecision(t, &hidden, UseHome, ReplaceStaff, []string{ReasonPhotoDecides}, []Topic{TopicFrameCondition})
}

func ptr[T any](v T) *T { return &v }

// A bare dome or an odd outline is no question where its sizes are those of the list.
func TestDecisionByStock(t *testing.T) {
	rules := DefaultRules()
	rules.Stock = []StockItem{{Code: "B-2436", Part: ReplaceDome, Size: rect(24, 36)}}
	for _, row := range []struct {
		unit  Unit
		want  Replace
		stock string
	}{
		{Unit{Style: StyleBareDome, PlasticSize: rect(24, 36)}, ReplaceDome, "B-2436"},
		{Unit{Style: StyleBareDome, PlasticSize: rect(24.0625, 36)}, ReplaceDome, "B-2436"},
		{Unit{Style: StyleBareDome, PlasticSize: rect(25, 36)}, ReplaceStaff, ""},
		{Unit{Style: StyleBareDome}, ReplaceStaff, ""},
		{Unit{Style: StyleCurbMount, Outline: OutlineOther, PlasticSize: rect(24, 36)}, ReplaceDome, "B-2436"},
		{Unit{Style: StyleGlass, PlasticSize: rect(24, 36)}, ReplaceStaff, "B-2436"},
	} {
		r := Check(Job{Units: []Unit{row.unit}}, rules).Units[0]
		got := ""
		if r.Order.Stock != nil {
			got = *r.Order.Stock
		}
		if r.Replace != row.want || got != row.stock && row.want == ReplaceDome {
			t.Errorf("%s %s %v: %s, stock %q; want %s, %q", row.unit.Style, row.unit.Outline, row.unit.PlasticSize, r.Replace, got, row.want, row.stock)
		}
	}
}

func TestCautions(t *testing.T) {
	for _, row := range []struct {
		job  Job
		want []string
	}{
		{Job{}, []string{}},
		{Job{Units: []Unit{{}}}, []string{CautionRoofFall}},
		{Job{Units: []Unit{{Problem: []string{ProblemHoleOpen}}}}, []string{CautionRoofFall, CautionOpenHole}},
		{Job{Units: []Unit{{Style: StyleNoneYet}}}, []string{CautionRoofFall, CautionStructure}},
		{Job{Use: UseRV, Units: []Unit{{}, {}}}, []string{CautionRoofFall, CautionVehicle}},
		{Job{Units: []Unit{{CurbHeight: high(3)}}}, []string{CautionRoofFall, CautionLocalCodes}},
	} {
		if got := Check(row.job, DefaultRules()).Cautions; !slices.Equal(got, row.want) {
			t.Errorf("%+v: %v, want %v", row.job.Units, got, row.want)
		}
	}
}
