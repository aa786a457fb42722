package fitcheck

// advise gives advice on layers, material and color, and flags of the region.
func advise(u *Unit, job *Job, rules *Rules, r *UnitResult) []Finding { return nil }
