package place

// nameOfState has the codes of the Postal Service's Publication 28, appendix B, less
// the three freely associated states, which are foreign countries.
var nameOfState = map[string]string{
	"AL": "Alabama", "AK": "Alaska", "AZ": "Arizona", "AR": "Arkansas", "CA": "California",
	"CO": "Colorado", "CT": "Connecticut", "DE": "Delaware", "DC": "District of Columbia",
	"FL": "Florida", "GA": "Georgia", "HI": "Hawaii", "ID": "Idaho", "IL": "Illinois",
	"IN": "Indiana", "IA": "Iowa", "KS": "Kansas", "KY": "Kentucky", "LA": "Louisiana",
	"ME": "Maine", "MD": "Maryland", "MA": "Massachusetts", "MI": "Michigan",
	"MN": "Minnesota", "MS": "Mississippi", "MO": "Missouri", "MT": "Montana",
	"NE": "Nebraska", "NV": "Nevada", "NH": "New Hampshire", "NJ": "New Jersey",
	"NM": "New Mexico", "NY": "New York", "NC": "North Carolina", "ND": "North Dakota",
	"OH": "Ohio", "OK": "Oklahoma", "OR": "Oregon", "PA": "Pennsylvania",
	"RI": "Rhode Island", "SC": "South Carolina", "SD": "South Dakota", "TN": "Tennessee",
	"TX": "Texas", "UT": "Utah", "VT": "Vermont", "VA": "Virginia", "WA": "Washington",
	"WV": "West Virginia", "WI": "Wisconsin", "WY": "Wyoming",
	"PR": "Puerto Rico", "GU": "Guam", "VI": "U.S. Virgin Islands", "AS": "American Samoa",
	"MP": "Northern Mariana Islands",
	"AA": "Armed Forces Americas", "AE": "Armed Forces Europe", "AP": "Armed Forces Pacific",
}

// stateByKey has, without spaces, every name and code above and what else people write:
// the older abbreviations, and Spanish names.
var stateByKey = mergeStates(map[string]string{
	"ala": "AL", "alas": "AK", "ariz": "AZ", "ark": "AR", "cal": "CA", "calif": "CA", "cali": "CA",
	"colo": "CO", "conn": "CT", "del": "DE", "fla": "FL", "haw": "HI", "ida": "ID",
	"ill": "IL", "ind": "IN", "kan": "KS", "kans": "KS", "ken": "KY", "kent": "KY",
	"mass": "MA", "mich": "MI", "minn": "MN", "miss": "MS", "mont": "MT", "neb": "NE",
	"nebr": "NE", "nev": "NV", "nhamp": "NH", "njersey": "NJ", "nmex": "NM", "sodakota": "SD", "nodakota": "ND", "socarolina": "SC", "nocarolina": "NC", "sodak": "SD", "nodak": "ND", "newmex": "NM",
	"ncar": "NC", "northcar": "NC", "ndak": "ND", "northdak": "ND", "okla": "OK", "ore": "OR",
	"oreg": "OR", "penn": "PA", "penna": "PA", "scar": "SC", "southcar": "SC", "sdak": "SD",
	"southdak": "SD", "tenn": "TN", "tex": "TX", "virg": "VA", "wash": "WA",
	"washingtonstate": "WA", "stateofwashington": "WA", "newyorkstate": "NY", "wva": "WV",
	"westva": "WV", "westvirg": "WV", "wis": "WI", "wisc": "WI", "wyo": "WY",
	"washingtondc": "DC", "washdc": "DC", "districtofcolumbia": "DC",
	"usvi": "VI", "virginislands": "VI", "usvirginislands": "VI", "unitedstatesvirginislands": "VI",
	"cnmi": "MP", "northernmarianas": "MP", "amsamoa": "AS",
	// Spanish
	"carolinadelnorte": "NC", "carolinadelsur": "SC", "dakotadelnorte": "ND",
	"dakotadelsur": "SD", "nuevayork": "NY", "nuevajersey": "NJ", "nuevomexico": "NM",
	"nuevohampshire": "NH", "nuevahampshire": "NH", "pensilvania": "PA",
	"virginiaoccidental": "WV", "virginiadeloeste": "WV", "luisiana": "LA", "misisipi": "MS",
	"misuri": "MO", "hawai": "HI", "tejas": "TX", "tenesi": "TN", "distritodecolumbia": "DC",
	"islasvirgenes": "VI", "islasvirgenesamericanas": "VI", "samoaamericana": "AS",
	"islasmarianas": "MP", "islasmarianasdelnorte": "MP",
})

func mergeStates(other map[string]string) map[string]string {
	for code, name := range nameOfState {
		other[string(squeeze(appendPlain(nil, name)))] = code
		other[string(squeeze(appendPlain(nil, code)))] = code
	}
	return other
}
