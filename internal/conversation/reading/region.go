package reading

import (
	"example.com/intake-bot/internal/fitcheck"
	"example.com/intake-bot/internal/place"
)

// Places that are no towns: regions that everybody knows, and ways to get there.

var (
	beforePorch = wordsOf(`live living lives im were are am here house home located ship shipped ships`)
	vagueLinks  = wordsOf(`in on by near past behind across off of up down outside between beyond before after toward
		towards around over at along below above next from en por cerca pasando rumbo atras detras junto adelante
		antes despues entre frente lado`)
)

// region finds a part of one state that everybody knows by its name: "we're on Maui", "out on
// Cape Cod".
func (r *reader) region(asked bool) bool {
	var buf [8]string
	for i := range r.toks {
		if r.toks[i].kind != wordToken || r.toks[i].used || !asked && !r.wordAt(i-1, "in", "on", "from", "to", "en", "the") {
			continue
		}
		for _, p := range regions {
			last := i
			for n, w := range p.words {
				if !r.wordAt(i+n, w) {
					last = -1
					break
				}
				last = i + n
			}
			if last < 0 || place.Scan(r.wordsFrom(i, 4, buf[:]), "") > len(p.words) || // "Lanai City"
				r.porch(i, asked) || r.negated(i) || r.wordAt(last+1, "county", "street", "st", "ave", "road", "rd", "dr", "lane") {
				continue
			}
			at := fitcheck.Place{State: p.state}
			if end, city := r.townAfter(last, p.state); city != "" {
				last, at.City = end, city // "the big island, Pahoa"
			}
			r.name(i, last)
			r.fact(fitcheck.TopicPlace, 0, at, i, last)
			return true
		}
	}
	return false
}

// porch: "one for the lanai": a covered porch, unless who lives on the island says so.
func (r *reader) porch(i int, asked bool) bool {
	lives := asked || r.wordAt(i-1, "on", "from", "to") && r.among(i-2, beforePorch)
	return r.wordAt(i, "lanai") && (!lives || r.wordAt(i-1, "the", "my", "our", "a", "el", "la", "mi"))
}

var regions = []struct {
	words []string
	state string
}{
	{[]string{"oahu"}, "HI"}, {[]string{"maui"}, "HI"}, {[]string{"kauai"}, "HI"}, {[]string{"molokai"}, "HI"},
	{[]string{"lanai"}, "HI"}, {[]string{"the", "big", "island"}, "HI"},
	{[]string{"adirondacks"}, "NY"}, {[]string{"catskills"}, "NY"}, {[]string{"finger", "lakes"}, "NY"},
	{[]string{"hudson", "valley"}, "NY"},
	{[]string{"cape", "cod"}, "MA"}, {[]string{"marthas", "vineyard"}, "MA"}, {[]string{"socal"}, "CA"},
	{[]string{"norcal"}, "CA"}, {[]string{"inland", "empire"}, "CA"}, {[]string{"imperial", "valley"}, "CA"},
	{[]string{"florida", "keys"}, "FL"}, {[]string{"outer", "banks"}, "NC"}, {[]string{"poconos"}, "PA"},
	{[]string{"texas", "panhandle"}, "TX"}, {[]string{"rio", "grande", "valley"}, "TX"},
	{[]string{"whidbey"}, "WA"}, {[]string{"orcas", "island"}, "WA"}, {[]string{"olympic", "peninsula"}, "WA"},
	{[]string{"kenai", "peninsula"}, "AK"}, {[]string{"door", "county"}, "WI"},
}

// vaguePlace: an answer to where that tells how to get there and no town: "out in the valley
// past the feed store", "end of County Road 9". It has to be asked for the town.
func (r *reader) vaguePlace() bool {
	if len(r.toks) > 30 || r.firstTalk("refuse") != nil || r.firstTalk("dontknow") != nil || r.markAt(len(r.toks)-1, '?') {
		return false
	}
	for i := range r.toks {
		if r.toks[i].kind != wordToken || r.toks[i].used || !placeNouns.has(r.toks[i].text) || r.negated(i) || r.questioned(i) {
			continue
		}
		for k := i - 1; k >= 0 && k >= i-6 && r.toks[k].kind != markToken; k-- {
			if !r.among(k, vagueLinks) {
				continue
			}
			first, last := r.clauseStart(i), r.clauseEnd(i)
			for last > first && r.toks[last].kind == markToken {
				last--
			}
			r.unclear(fitcheck.TopicPlace, 0, WhyPlace, nil, first, last)
			return true
		}
	}
	return false
}

// placeNouns are what ways are told by.
var placeNouns = wordsOf(`valley road rd store mill hill lake river creek country county woods highway hwy
	interstate freeway exit bridge tracks junction mountain mountains canyon ridge hollow holler sticks boonies
	boondocks corner town crossroads turnoff fork ranch silo silos elevator cemetery graveyard landing marina gate
	fairgrounds reservation rez mesa desert bayou swamp cove bluff bluffs prairie mile miles route street avenue
	lane blvd boulevard station stoplight light school church park courthouse library hospital airport casino
	stadium campground blocks landfill dam levee sawmill orchard vineyard field cornfield plant depot valle camino
	carretera loma cerro rancho ejido colonia barrio rio lago puente pueblo campo monte sierra vias panteon
	gasolinera tienda esquina cuadra cuadras milla millas semaforo parque desierto calle avenida plaza aeropuerto
	presa cuadras mercado`)
