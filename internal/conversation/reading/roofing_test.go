package reading

import (
	"testing"

	"example.com/intake-bot/internal/fitcheck"
)

// What covers the roof, said of the roof and of other things. "" is no fact at all: the
// topic is never asked, so there is no doubt of it either.
func TestRoofCovering(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"asphalt shingle roof", "shingles"}, {"3 tab shingle roof", "shingles"}, {"the roof is shingled", "shingles"},
		{"house in Tulsa OK, 4/12 asphalt shingle roof, cracked dome", "shingles"}, {"roof has architectural shingles", "shingles"},
		{"its a comp roof", "shingles"}, {"Roof type: shingle", "shingles"}, {"roof of the house is old asphalt shingles", "shingles"},
		{"cedar shake roof", "wood_shingles"}, {"the roof is wood shingles", "wood_shingles"}, {"metal shingle roof", "metal_shingles"},
		{"slate roof", "slate"}, {"spanish tile roof", "tile"}, {"the roof is concrete tile", "tile"},
		{"metal roof", "metal"}, {"tin roof on the barn", "metal"}, {"corrugated metal roof", "metal"}, {"skylight is going on a metal roof", "metal"},
		{"it's a standing seam metal roof, 4/12", "standing_seam"}, {"standing-seam metal", "standing_seam"},
		{"flat roof with rolled roofing", "roll_roofing"}, {"tar and gravel roof", "built_up"}, {"flat tar roof", "built_up"}, {"built-up roof", "built_up"},
		{"rubber roof", "membrane"}, {"TPO roof on a warehouse", "membrane"}, {"the roof is EPDM", "membrane"}, {"torch down roof", "membrane"},
		{"asphalt roof", "other"}, {"gravel roof", "other"},
		{"techo de teja", "tile"}, {"el techo es de tejas de barro", "tile"}, {"techo de tejas asfálticas", "shingles"}, {"el techo es de lámina", "metal"},
		{"mi casa tiene techo de lamina", "metal"}, {"techo de asfalto", "other"}, {"techo de hule", "membrane"}, {"techo de brea y grava", "built_up"},
		{"techo con pizarra", "slate"},

		{"flange under the shingles", ""}, {"no box, the flange goes under the metal roof", ""}, {"it slips up under the asphalt shingle roof", ""},
		{"tar paper under it", ""}, {"tar paper on the roof", ""}, {"tarred around the skylight on the roof", ""}, {"shingles around it", ""},
		{"metal roof vent", ""}, {"metal roof flashing is rusted", ""}, {"metal frame on the roof", ""}, {"the roof has metal around the edges", ""},
		{"roof is slate gray", ""}, {"rubber gasket at the roof", ""}, {"the tpo of the frame", ""}, {"rubber boot roof jack", ""},
		{"it is not a metal roof", ""}, {"we're getting a new metal roof", ""}, {"it used to be a shingle roof", ""}, {"we had a shingle roof", ""},
		{"metal or shingle roof", ""}, {"I think it's a metal roof", ""}, {"maybe a rubber roof", ""}, {"the neighbor has a metal roof", ""},
		{"the porch roof is metal", ""}, {"do you do metal roofs?", ""}, {"will it work on a standing seam roof?", ""},
		{"garage has a metal roof, house has a shingle roof", ""}, {"two layers of shingles", ""}, {"flat roof", ""},
		{"the gutter is metal, roof leaks", ""}, {"if it is a tile roof", ""},
		{"bajo las tejas del techo", ""}, {"el techo no es de teja", ""}, {"lámina de plástico", ""}, {"techo de lámina de plástico", ""}, {"vivo en Tejas", ""},
	} {
		r := Read(Input{Text: row.text, Language: "en"})
		got := ""
		for _, f := range r.Facts {
			if f.Topic == fitcheck.TopicRoofCovering {
				got += string(f.Value.(fitcheck.Choice))
			}
		}
		for _, u := range r.Unclear {
			if u.Topic != nil && *u.Topic == fitcheck.TopicRoofCovering {
				got += "?"
			}
		}
		if got != row.want {
			t.Errorf("%q: %q, want %q", row.text, got, row.want)
		}
	}
}

// "Tejas" is a state and what roofs are made of.
func TestTilesAreNoState(t *testing.T) {
	for text, want := range map[string]bool{"vivo en Tejas": true, "soy de Tejas": true, "techo de tejas de barro": false, "el techo es de tejas": false, "va bajo las tejas": false} {
		r := reader{}
		r.out = Read(Input{Text: text})
		if r.known(fitcheck.TopicPlace) != want {
			t.Errorf("%q names a place: %v", text, !want)
		}
	}
}
