package fitcheck

// Linear expansion in inches an inch and kelvin, the values that the shop designs with:
// property tables give acrylic 68 to 75, polycarbonate 65 to 68, aluminium 6063 23.4
// (materials databases and stock data sheets, ASTM D696).
const (
	expansionAcrylic       = 75e-6
	expansionPolycarbonate = 67.5e-6
	expansionAluminium     = 23.4e-6
)

// The design range: -30 to +150 °F, put together at 70 °F (common practice; NBS
// Technical Note 231 found dark roofs 80 °F above and 20 °F below the air).
const (
	hotKelvin  = 80 / 1.8
	coldKelvin = 100 / 1.8
)

// thermalTolerance is left free at each edge beside the movement (common practice).
const thermalTolerance = Inch / 16

// movement is how much more than its aluminium frame a sheet moves over a change of
// temperature, in all. A material that was not chosen is taken for the one that moves
// more.
func movement(l Length, material string, kelvin float64) Length {
	a := expansionAcrylic
	if material == MaterialPolycarbonate {
		a = expansionPolycarbonate
	}
	return Length((a - expansionAluminium) * kelvin * float64(l))
}

// pocketSheet is the largest sheet that still moves freely in a pocket: the movement of
// the whole design range less, which is the glazier's 1/16 in a foot, and no less than
// 1/8 in (common practice; the sum confirms it).
func pocketSheet(pocket Length, material string) Length {
	return pocket - max(movement(pocket, material, hotKelvin+coldKelvin), Inch/8)
}
