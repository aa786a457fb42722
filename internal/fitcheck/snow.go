package fitcheck

// flatRoofSnow is the snow load on a flat roof in pounds a square foot: 0.7 Ce Ct I pg
// (ASCE 7-10 eq. 7.3-1, as reported by two engineering sites). The ground load pg is for
// staff to look up; exposure, warmth and importance are 1 where nothing is known.
func flatRoofSnow(ground, exposure, thermal, importance float64) float64 {
	return 0.7 * exposure * thermal * importance * ground
}

// unheatedRoof is the thermal factor over an unheated space (the same).
const unheatedRoof = 1.2

// exampleGround is the ground snow load that the finding reckons an example with, so that
// staff see what the load looked up means for this part: 40 lb a square foot.
const exampleGround = 40

// snowNumbers are the part's area and what it would carry by the example.
func snowNumbers(job *Job, r *UnitResult) Numbers {
	_, large, ok := orderedParts(r)
	if !ok {
		return nil
	}
	warmth := 1.0
	if job.Use != "" && !heated(job.Use) {
		warmth = unheatedRoof
	}
	sqFt := large.areaIn2() / 144
	return Numbers{"area_sqft": tenth(sqFt), "load_lb_at_40_psf": tenth(sqFt * flatRoofSnow(exampleGround, 1, warmth, 1))}
}
