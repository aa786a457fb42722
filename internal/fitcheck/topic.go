package fitcheck

import "slices"

// Topic is something that the shop needs to know. The same names serve for
// questions, facts and findings; docs/contract.md says what each one means.
type Topic string

// Topics of the whole lead.
const (
	TopicName    Topic = "name"
	TopicPlace   Topic = "place"
	TopicUse     Topic = "use"
	TopicProblem Topic = "problem"
	TopicPhotos  Topic = "photos"
	TopicEmail   Topic = "email"
	TopicPhone   Topic = "phone"
	TopicConfirm Topic = "confirm"
)

// Topics of one kind of unit on the roof.
const (
	TopicCount           Topic = "count"
	TopicStyle           Topic = "style"
	TopicOutline         Topic = "outline"
	TopicProfile         Topic = "profile"
	TopicFrameCondition  Topic = "frame_condition"
	TopicWant            Topic = "want"
	TopicPlasticSize     Topic = "plastic_size"
	TopicRetainerOpening Topic = "retainer_opening"
	TopicRetainerOutside Topic = "retainer_outside"
	TopicFrameInside     Topic = "frame_inside"
	TopicCurbOutside     Topic = "curb_outside"
	TopicCurbInside      Topic = "curb_inside"
	TopicCurbDiagonals   Topic = "curb_diagonals"
	TopicCurbHeight      Topic = "curb_height"
	TopicBulgeBase       Topic = "bulge_base"
	TopicDomeRise        Topic = "dome_rise"
	TopicRoofSlope       Topic = "roof_slope"
	TopicRoofCovering    Topic = "roof_covering" // never asked: noted where it is said
	TopicLayers          Topic = "layers"
	TopicMaterial        Topic = "material"
	TopicColor           Topic = "color"
	TopicFinish          Topic = "finish"
	TopicImpactRisk      Topic = "impact_risk"
)

// LeadTopics are those of the whole lead, UnitTopics those of one kind of unit, in
// the order in which records show them.
var (
	LeadTopics = []Topic{TopicName, TopicPlace, TopicUse, TopicProblem, TopicPhotos, TopicEmail,
		TopicPhone, TopicConfirm}
	UnitTopics = []Topic{TopicCount, TopicStyle, TopicOutline, TopicProfile, TopicFrameCondition,
		TopicWant, TopicPlasticSize, TopicRetainerOpening, TopicRetainerOutside, TopicFrameInside,
		TopicCurbOutside, TopicCurbInside, TopicCurbDiagonals, TopicCurbHeight, TopicBulgeBase,
		TopicDomeRise, TopicRoofSlope, TopicRoofCovering, TopicLayers, TopicMaterial, TopicColor,
		TopicFinish, TopicImpactRisk}
	// SizeTopics are the unit topics whose value is a Size.
	SizeTopics = []Topic{TopicPlasticSize, TopicRetainerOpening, TopicRetainerOutside,
		TopicFrameInside, TopicCurbOutside, TopicCurbInside, TopicBulgeBase}
)

// OfUnit says whether the topic belongs to one kind of unit, not to the whole lead.
func (t Topic) OfUnit() bool {
	return slices.Contains(UnitTopics, t)
}

// OfSize says whether the topic's value is a Size.
func (t Topic) OfSize() bool {
	return slices.Contains(SizeTopics, t)
}

// OfLength says whether the topic's value is made of lengths, so that it can be
// misread with a tape.
func (t Topic) OfLength() bool {
	switch t {
	case TopicCurbDiagonals, TopicCurbHeight, TopicDomeRise:
		return true
	}
	return t.OfSize()
}
