package conversation

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// site is what the table of places knows beyond a place's name.
func site(p fitcheck.Place) fitcheck.Site {
	e, ok := place.ByZIP(p.ZIP)
	if !ok && p.City != "" && p.State != "" {
		if towns := place.Towns(p.City, p.State); len(towns) > 0 {
			e, ok = towns[0], true
		}
	}
	if !ok {
		return fitcheck.Site{}
	}
	return fitcheck.Site{State: e.State, County: e.County, Lat: e.Lat, Lon: e.Lon, Known: true}
}

// SiteOf looks a place up for a fit check outside a talk.
func SiteOf(p fitcheck.Place) fitcheck.Site { return site(p) }
