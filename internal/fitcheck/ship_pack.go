package fitcheck

import (
	"fmt"
	"math"
)

// shipment is one part in its carton, put against the limits of parcels.
type shipment struct {
	box      carton
	lb       float64 // with the carton, to the tenth of a pound
	billedLb int     // the greater of weight and dimensional weight
	by       string
	class    float64 // of freight
	extra    extra   // of a parcel
}

// extra is what a parcel is charged for beyond its weight.
type extra int

const (
	extraNone extra = iota
	extraHandling
	extraOversize
)

func pack(p part, u *Unit, c choice, rules *ShipRules) shipment {
	box := packed(p, riseOf(p, u), c.layers, &rules.Packing)
	lb := tenth(p.weightLb(c, rules) + box.cardboardLb(&rules.Packing))
	s := shipment{box: box, lb: lb}
	s.judge(rules)
	return s
}

// judge puts the carton against the limits.
func (s *shipment) judge(rules *ShipRules) {
	s.by = ShipParcel
	s.billedLb = max(int(math.Ceil(s.lb)), s.box.dimensionalLb(rules.DimDivisor))
	switch {
	case !rules.Parcel.takes(s.box, s.lb):
		s.by, s.class = ShipFreight, rules.freightClass(s.box, s.lb)
	case rules.Oversize.over(s.box, s.lb):
		s.extra = extraOversize
	case rules.Handling.over(s.box, s.lb):
		s.extra = extraHandling
	}
	if s.by == ShipFreight || s.extra == extraOversize {
		s.billedLb = max(s.billedLb, rules.Oversize.MinBilledLb)
	}
}

// notes tell staff what the figures mean.
func (s *shipment) notes() []string {
	size := fmt.Sprintf("%d in long, length plus girth %d in, %d cubic in, %s lb", s.box.long, s.box.lengthPlusGirth(), s.box.volume(), tenths(s.lb))
	switch {
	case s.by == ShipFreight:
		return []string{"Too large or heavy for a parcel: " + size + ".", "Freight is charged by weight and class; staff confirm the class."}
	case s.extra == extraOversize:
		return []string{"Charged as an oversize parcel: " + size + "."}
	case s.extra == extraHandling:
		return []string{"Charged for additional handling: " + size + "."}
	}
	return nil
}
