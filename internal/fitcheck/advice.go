package fitcheck

import "slices"

// advise is what a good estimator would add of their own accord: layers, material and
// color, what the region asks for, and how the part travels. All of it are notes: a choice
// is the customer's, so none of it holds an order up or asks anything.
func advise(u *Unit, job *Job, rules *Rules, r *UnitResult) []Finding {
	var fs []Finding
	if f, ok := singleLayer(u, job, r); ok {
		fs = append(fs, f)
	}
	if f, ok := impact(u); ok {
		fs = append(fs, f)
	}
	if f, ok := rareColor(u, rules); ok {
		fs = append(fs, f)
	}
	if f, ok := rareFinish(u, rules, r); ok {
		fs = append(fs, f)
	}
	if f, ok := oversizeParcel(u, rules, r); ok {
		fs = append(fs, f)
	}
	return append(fs, regionFindings(u, job, r)...)
}

// singleLayer: an unlabelled single sheet in an aluminium frame counts for a U-factor of
// 1.5 to 2.0, where the model code's most for skylights is 0.50 to 0.75.
func singleLayer(u *Unit, job *Job, r *UnitResult) (Finding, bool) {
	if u.Layers != 1 || job.Use == "" || !heated(job.Use) {
		return Finding{}, false
	}
	f := Finding{Code: SingleLayerHeatedSpace, Severity: Note, Topic: TopicLayers,
		Text:   "Over a heated room one layer of plastic loses heat and drips with condensation, so two are the usual choice there and one is for unheated spaces.",
		Source: "common practice; IECC-R 2021 Table R303.1.3(1) (default U of a single layer)"}
	if r.Replace == ReplaceUnit {
		f.Text = "Over a heated room one layer of plastic loses heat and drips with condensation, so two are the usual choice there, and our staff will check the energy rating that a complete unit needs."
		f.Source = "common practice; IECC-R 2021 R402.1.2, R503.1.1.1, Table R303.1.3(1)"
	}
	return f, true
}

// impact: new polycarbonate takes thirty to forty times the notched blow of acrylic
// (ASTM D256, stock data sheets), but nothing is promised hail-proof.
func impact(u *Unit) (Finding, bool) {
	if len(u.ImpactRisk) == 0 || u.Material == MaterialPolycarbonate {
		return Finding{}, false
	}
	return Finding{Code: ImpactAdvised, Severity: Note, Topic: TopicMaterial,
		Text:   "Where " + riskWords(u.ImpactRisk) + " are a worry, polycarbonate takes a blow far better than acrylic, though neither is proof against everything, and otherwise acrylic is just as good.",
		Source: "ASTM D256 notched Izod 12–16 against 0.4 ft·lb/in, stock data sheets"}, true
}

func riskWords(risks []string) string {
	switch risks[0] {
	case RiskHail:
		return "hailstones"
	case RiskTrees:
		return "falling branches"
	case RiskGolf:
		return "golf balls"
	}
	return "knocks"
}

// rareColor: tint goes on the outside and clear or white inside (common practice), so
// anything else is made to order or a slip.
func rareColor(u *Unit, rules *Rules) (Finding, bool) {
	c := u.Color
	if c.Outer == "" {
		return Finding{}, false
	}
	f := Finding{Code: RareColor, Severity: Note, Topic: TopicColor, Source: "common practice"}
	switch {
	case !sells(rules.Sells.Colors, c.Outer) || !sells(rules.Sells.Colors, c.Middle) || !sells(rules.Sells.Colors, c.Inner):
		f.Text = "That color is not one that we usually make, so our staff will check whether it can be had and how long it takes."
	case tinted(c.Inner) || tinted(c.Middle):
		f.Text = "The tint usually goes on the outer layer with clear or white inside, so our staff will check that this order of colors is what you want."
	default:
		return Finding{}, false
	}
	return f, true
}

func tinted(color string) bool { return color == ColorBronze }

// rareFinish speaks of the frame's finish under the code of rare colors, since it is the
// color of the frame; a dome alone has none.
func rareFinish(u *Unit, rules *Rules, r *UnitResult) (Finding, bool) {
	if u.Finish == "" || r.Replace == ReplaceDome || sells(rules.Sells.Finishes, u.Finish) {
		return Finding{}, false
	}
	return Finding{Code: RareColor, Severity: Note, Topic: TopicFinish, Source: "common practice",
		Text: "That frame finish is not one that we usually make, so our staff will check whether it can be had and how long it takes."}, true
}

// sells says whether a list of what the shop sells has the item; an empty list has all
// that has a name.
func sells(list []string, item string) bool {
	if item == "" {
		return true
	}
	if len(list) == 0 {
		return item != ColorOther
	}
	return slices.Contains(list, item)
}
