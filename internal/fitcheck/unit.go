package fitcheck

import "fmt"

// Unit is what is known about one kind of unit on the roof. The zero value of a
// field means "not known"; ImpactRisk is nil while unknown and empty for "none".
type Unit struct {
	Count          int
	Style          string
	Outline        string
	Profile        string
	FrameCondition string
	Want           string

	PlasticSize     Size
	RetainerOpening Size
	RetainerOutside Size
	FrameInside     Size
	CurbOutside     Size
	CurbInside      Size
	CurbDiagonals   Diagonals
	CurbHeight      Height
	BulgeBase       Size
	DomeRise        *Height // nil: not known; a flat sheet has rise 0
	RoofSlope       *Slope  // nil: not known; a flat roof has rise 0
	RoofCovering    string

	Layers     int
	Material   string
	Color      Color
	Finish     string
	ImpactRisk []string

	// Problem and Photos belong to the whole lead; a check of one unit takes them too.
	Problem []string
	Photos  *int
}

// SizeOf is the unit's size of a size topic, nil for any other topic.
func (u *Unit) SizeOf(t Topic) *Size {
	switch t {
	case TopicPlasticSize:
		return &u.PlasticSize
	case TopicRetainerOpening:
		return &u.RetainerOpening
	case TopicRetainerOutside:
		return &u.RetainerOutside
	case TopicFrameInside:
		return &u.FrameInside
	case TopicCurbOutside:
		return &u.CurbOutside
	case TopicCurbInside:
		return &u.CurbInside
	case TopicBulgeBase:
		return &u.BulgeBase
	}
	return nil
}

// Set records the value of a topic. It reports an error where the value is not of
// the topic's kind or the topic is not one of a unit.
func (u *Unit) Set(t Topic, v Value) error {
	switch v := v.(type) {
	case Size:
		if s := u.SizeOf(t); s != nil {
			*s = v
			return nil
		}
	case Choice:
		if f := u.choiceOf(t); f != nil {
			*f = string(v)
			return nil
		}
	case ChoiceList:
		switch t {
		case TopicImpactRisk:
			u.ImpactRisk = append([]string{}, v...)
			return nil
		case TopicProblem:
			u.Problem = append([]string{}, v...)
			return nil
		}
	case Whole:
		switch n := int(v); t {
		case TopicCount:
			u.Count = n
			return nil
		case TopicLayers:
			u.Layers = n
			return nil
		case TopicPhotos:
			u.Photos = &n
			return nil
		}
	case Diagonals:
		if t == TopicCurbDiagonals {
			u.CurbDiagonals = v
			return nil
		}
	case Height:
		switch t {
		case TopicCurbHeight:
			u.CurbHeight = v
			return nil
		case TopicDomeRise:
			u.DomeRise = &v
			return nil
		}
	case Slope:
		if t == TopicRoofSlope {
			u.RoofSlope = &v
			return nil
		}
	case Color:
		if t == TopicColor {
			u.Color = v
			return nil
		}
	}
	return fmt.Errorf("topic %s of a unit can't be %T", t, v)
}

// Get is the value of a topic, nil where it is not known or not of a unit.
func (u *Unit) Get(t Topic) Value {
	if s := u.SizeOf(t); s != nil {
		if s.Known() {
			return *s
		}
		return nil
	}
	if f := u.choiceOf(t); f != nil {
		if *f == "" {
			return nil
		}
		return Choice(*f)
	}
	switch {
	case t == TopicCount && u.Count > 0:
		return Whole(u.Count)
	case t == TopicLayers && u.Layers > 0:
		return Whole(u.Layers)
	case t == TopicPhotos && u.Photos != nil:
		return Whole(*u.Photos)
	case t == TopicCurbDiagonals && u.CurbDiagonals.First > 0:
		return u.CurbDiagonals
	case t == TopicCurbHeight && u.CurbHeight.Height > 0:
		return u.CurbHeight
	case t == TopicDomeRise && u.DomeRise != nil:
		return *u.DomeRise
	case t == TopicRoofSlope && u.RoofSlope != nil:
		return *u.RoofSlope
	case t == TopicColor && u.Color.Outer != "":
		return u.Color
	case t == TopicImpactRisk && u.ImpactRisk != nil:
		return ChoiceList(u.ImpactRisk)
	case t == TopicProblem && u.Problem != nil:
		return ChoiceList(u.Problem)
	}
	return nil
}

func (u *Unit) choiceOf(t Topic) *string {
	switch t {
	case TopicStyle:
		return &u.Style
	case TopicOutline:
		return &u.Outline
	case TopicProfile:
		return &u.Profile
	case TopicFrameCondition:
		return &u.FrameCondition
	case TopicWant:
		return &u.Want
	case TopicRoofCovering:
		return &u.RoofCovering
	case TopicMaterial:
		return &u.Material
	case TopicFinish:
		return &u.Finish
	}
	return nil
}
