package fitcheck

// skylightU is the highest U-factor of a skylight, Btu/h·ft²·°F, by energy zone 0 to 8
// (IECC-R 2021 Table R402.1.2; marine 4 as 4; states amend it).
var skylightU = [...]float64{0.75, 0.75, 0.65, 0.55, 0.55, 0.55, 0.55, 0.55, 0.55}

// anyZone stands for a zone that is not known: the most that any zone allows.
const anyZone = -1

// exemptSqFt is how much glazing of a dwelling needs no U-factor (IECC-R 2021 R402.3.3).
const exemptSqFt = 15

// unlabelledU is what a unit without a label counts for: plastic in an aluminium frame
// without thermal break, by layers (WAC 51-11R-30314, Table R303.1.3(4)).
func unlabelledU(layers int) float64 {
	switch layers {
	case 1:
		return 1.52
	case 2:
		return 1.05
	}
	return 0.90
}

// overEnergy says whether skylights of a U-factor and an area, of one dwelling together,
// are more than the zone allows.
func overEnergy(zone int, u, sqFt float64) bool {
	most := skylightU[0]
	if zone != anyZone {
		most = skylightU[zone]
	}
	return sqFt > exemptSqFt && u > most
}

// energyToCheck says whether staff should look the energy rating up: whole units over a
// heated space are new glazing (IECC-R 2021 R503.1.1.1), a dome in its old frame is a
// repair (R504.2).
func energyToCheck(job *Job, rs []UnitResult) bool {
	if !heated(job.Use) {
		return false
	}
	area, worst := 0.0, 0.0
	for i := range rs {
		_, large, ok := orderedParts(&rs[i])
		if !ok || rs[i].Replace != ReplaceUnit {
			continue
		}
		area += float64(pieces(&job.Units[i])) * large.areaIn2() / 144
		worst = max(worst, unlabelledU(job.Units[i].Layers))
	}
	return overEnergy(anyZone, worst, area)
}
