package fitcheck

import "fmt"

// How a part travels.
const (
	ShipParcel  = "parcel"
	ShipFreight = "freight"
	ShipStaff   = "staff" // can't be told: there is no size to order
)

// shipOne says how one unit of the ordered part travels. Where only a range of sizes is
// known, both ends must travel alike, or staff decide; the figures are the larger end's,
// and those of the heaviest part that is still open to choice: a parcel that is lighter
// than foretold costs nothing. It needs r.Replace and r.Order, and is never nil.
func shipOne(u *Unit, job *Job, rules *Rules, r *UnitResult) *Ship {
	small, large, ok := orderedParts(r)
	if !ok {
		return &Ship{By: ShipStaff, Pieces: pieces(u), Notes: []string{"No size to order yet, so it can't be told how it travels."}}
	}
	choice, open := heaviestChoice(u, rules)
	pack := pack(large, u, choice, &rules.Ship)
	s := &Ship{By: pack.by, Pieces: pieces(u), WeightLb: pack.lb, BilledLb: pack.billedLb, CartonIn: pack.box.inches(), Notes: pack.notes()}
	if pack.by == ShipFreight {
		s.FreightClass = &pack.class
	}
	if open != "" {
		s.Notes = append(s.Notes, open)
	}
	if small != large && packAs(small, u, choice, rules) != pack.by {
		s.By, s.FreightClass = ShipStaff, nil
		s.Notes = append(s.Notes, "The size is a range, and its two ends would travel differently.")
	}
	if outsideLower48[job.state()] {
		s.Notes = append(s.Notes, "Outside the lower 48 states: staff ask for the route and its price.")
	}
	return s
}

func packAs(p part, u *Unit, c choice, rules *Rules) string { return pack(p, u, c, &rules.Ship).by }

func pieces(u *Unit) int { return max(u.Count, 1) }

// oversizeParcel is the note for staff and customer that a part is no plain parcel.
func oversizeParcel(u *Unit, rules *Rules, r *UnitResult) (Finding, bool) {
	_, large, ok := orderedParts(r)
	if !ok {
		return Finding{}, false
	}
	c, _ := heaviestChoice(u, rules)
	s := pack(large, u, c, &rules.Ship)
	text := "Packed for the road this part is about %d x %d x %d inches, which is charged as an oversize parcel."
	switch {
	case s.by == ShipFreight:
		text = "Packed for the road this part is about %d x %d x %d inches, too much for a parcel, so it travels by freight."
	case s.extra != extraOversize:
		return Finding{}, false
	}
	topic := TopicPlasticSize
	if large.kind == ReplaceUnit {
		topic = TopicCurbOutside
	}
	return Finding{
		Code: OversizeParcel, Severity: Note, Topic: topic,
		Text:   fmt.Sprintf(text, s.box.long, s.box.wide, s.box.high),
		Source: "published parcel limits, 2025: 150 lb, 108 in long, 165 in length plus girth; oversize over 110 lb, 96 in, 130 in or 17,280 cubic in",
		Numbers: Numbers{"length_in": float64(s.box.long), "width_in": float64(s.box.wide), "height_in": float64(s.box.high),
			"length_plus_girth_in": float64(s.box.lengthPlusGirth())},
	}, true
}
