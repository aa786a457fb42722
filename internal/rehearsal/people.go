package rehearsal

import (
	"fmt"

	"example.com/intake-bot/internal/place"
)

// The names are put together at random from common ones; nobody in particular is meant.
var (
	firstNames = map[string][]string{
		"en": {"Marlene", "Walt", "Priya", "Dwight", "Keisha", "Tom", "Ingrid", "Curtis", "Faye", "Omar", "Beth", "Roland", "Tanya", "Gus",
			"Hope", "Mark", "Rose", "Dale", "June", "Will", "Faith", "Art", "Sandy", "Rusty", "Pat", "Miguel", "Anh", "Bo", "Dawn", "Cliff"},
		"es": {"Lucía", "Ramón", "Teresa", "Joaquín", "Marisol", "Héctor", "Pilar", "Ernesto", "Yolanda", "Rubén"},
	}
	lastNames = map[string][]string{
		"en": {"Brannigan", "Okafor", "Lindqvist", "Petrovic", "Young", "Castellano", "McAllister", "O'Dell", "Nguyen", "Van Houten", "Short",
			"Long", "White", "Glass", "Delgado-Reyes", "Park", "Stone", "Hale", "Whitcomb", "St. Clair", "Day", "Rivers", "Kowalczyk", "Mason"},
		"es": {"Salgado", "Ibarra Peña", "Montes", "del Valle", "Cárdenas", "Blanco", "Quintana", "Rojas"},
	}
)

func drawName(d dice, language string) string {
	first := pick(d, firstNames[language]...)
	switch {
	case d.chance(0.35):
		return first
	case d.chance(0.05):
		return first + " and " + pick(d, firstNames["en"]...)
	}
	return first + " " + pick(d, lastNames[language]...)
}

// town is where somebody lives.
type town struct{ place.Entry }

// zips are of towns large and small, one or two a state, with some whose name is borne by
// several and some on islands.
var zips = []string{
	"55806", "80302", "98225", "04401", "78745", "33705", "97520", "59715", "87505", "49684", "05401", "28801", "83702", "99504",
	"96720", "00907", "73102", "64111", "45840", "23220", "12866", "15213", "19104", "60622", "53703", "50309", "68508", "57701",
	"58501", "66044", "72701", "70119", "39401", "36104", "31401", "29403", "37206", "40508", "47401", "92701", "95616", "94601",
	"93308", "89502", "84103", "85004", "82001", "01060", "03801", "06511", "02906", "21401", "19901", "25301", "20009", "97301",
	"65804", "62704", "01103", "43085", "30601", "34236", "78501", "79901",
}

func drawTown(d dice) town {
	e, _ := place.ByZIP(pick(d, zips...)) // a test holds every one against the table
	return town{e}
}

// wellKnown says whether the bare name means this town and no other.
func (t town) wellKnown() bool {
	known, ok := place.WellKnown(t.City)
	if !ok {
		known, ok = place.Only(t.City)
	}
	return ok && known.State == t.State
}

func (t town) stateName() string { return place.StateName(t.State) }

// plus4 is a ZIP+4 code's last part.
func plus4(d dice) string { return fmt.Sprintf("%04d", d.between(101, 9899)) }

// areaCodes have a hundred numbers each, 555-0100 to 555-0199, that nobody has.
var areaCodes = []string{"218", "303", "360", "207", "512", "727", "541", "406", "505", "231", "802", "828", "208", "907", "808", "405", "816",
	"419", "804", "518", "412", "215", "312", "608", "515", "402", "605", "701", "785", "479", "504", "601", "334", "912", "843", "615", "859",
	"812", "714", "530", "510", "661", "775", "801", "602", "307", "413", "603", "203", "401", "410", "302", "304", "202", "503", "417", "217",
	"614", "706", "941", "956", "915"}

// phoneOf is a customer's number; in runs of up to 6,200 nobody shares theirs.
func phoneOf(customer int) string {
	return fmt.Sprintf("+1%s555%04d", areaCodes[customer/100%len(areaCodes)], 100+customer%100)
}
