package fitcheck

// ShipRules are the limits of parcel and freight and how the shop packs.
type ShipRules struct{}

// DefaultShipRules are the published limits and plain packing habits.
func DefaultShipRules() ShipRules { return ShipRules{} }

// shipOne says how one unit travels, nil where nothing is to be ordered.
func shipOne(u *Unit, job *Job, rules *Rules, r *UnitResult) *Ship { return nil }
