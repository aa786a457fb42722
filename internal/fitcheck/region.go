package fitcheck

import "strings"

// regionFindings flag where staff should look closer before they sell: hurricanes, snow
// and hard climates. They are notes, never rulings: the local building office decides.
// What travels on wheels has no region.
func regionFindings(u *Unit, job *Job, r *UnitResult) []Finding {
	if job.Use == UseRV || job.state() == "" {
		return nil
	}
	var fs []Finding
	if f, ok := hurricane(job, r); ok {
		fs = append(fs, f)
	}
	if snowy(job) {
		fs = append(fs, Finding{Code: SnowRegion, Severity: Note, Topic: TopicPlace,
			Numbers: snowNumbers(job, r),
			Text:    "Snow can lie deep where you are, so our staff will look at the snow load for this size.",
			Source:  "IRC 2021 R301.6 and R301.2.3 (snow load by site), ASCE 7-10 eq. 7.3-1 (reported); list of regions from memory: ASCE 7 ground snow map"})
	}
	if f, ok := climate(u, job, r); ok {
		fs = append(fs, f)
	}
	return fs
}

// state is the state as told, or that of the ZIP code.
func (j *Job) state() string {
	if j.Place.State != "" {
		return j.Place.State
	}
	return j.Site.State
}

func hurricane(job *Job, r *UnitResult) (Finding, bool) {
	f := Finding{Code: HurricaneRegion, Severity: Note, Topic: TopicPlace}
	switch windRegion(job) {
	case windHighVelocity:
		f.Text = "Your county has the strictest hurricane rules there are, under which a skylight is approved as a whole, so our staff will check what may be used."
		if r.Replace == ReplaceDome {
			f.Text = "Your county has the strictest hurricane rules there are, under which a skylight is approved as a whole and not its dome alone, so our staff will check what may be used."
		}
		f.Source = "FBC-R 2023 R202 (high-velocity hurricane zone: Broward and Miami-Dade), FBC-B 2023 §2410.4, §1626"
	case windIsland:
		f.Text = "Hurricane winds are planned for on the islands, so our staff will check whether an impact-rated skylight is called for."
		f.Source = "FBC-B 2023 ch. 2 (wind-borne debris region); islands from memory: ASCE 7 wind map"
	case windCoast:
		f.Text = "Parts of your coast plan for hurricane winds and flying debris, so our staff will check whether an impact-rated skylight is called for."
		f.Source = "FBC-B 2023 ch. 2 (wind-borne debris region), IRC 2021 R301.2.1.2; list of states is common practice"
	default:
		return Finding{}, false
	}
	return f, true
}

type windKind int

const (
	windNone windKind = iota
	windCoast
	windIsland
	windHighVelocity
)

// windRegion is how much hurricanes matter at the place. Where its position is known,
// only what lies within reach of the sea counts in a coastal state.
func windRegion(job *Job) windKind {
	state := job.state()
	switch {
	case state == "FL" && highVelocityCounty(job.Site.County):
		return windHighVelocity
	case windIslands[state]:
		return windIsland
	case !job.Site.Known && windStates[state]:
		return windCoast
	case job.Site.Known && (state == "FL" || (windStates[state] || windStatesNorth[state]) && milesToSea(job.Site) <= windReachMiles):
		return windCoast
	}
	return windNone
}

func highVelocityCounty(county string) bool {
	c := strings.ToLower(strings.TrimSpace(county))
	c = strings.TrimSuffix(c, " county")
	switch strings.ReplaceAll(c, " ", "-") {
	case "broward", "miami-dade", "dade":
		return true
	}
	return false
}

func snowy(job *Job) bool { return inRegion(snowRegions, job) }

// climate advises on hard cold and heat. Three layers are worth their price only over a
// space that is heated; heat matters for every sheet.
func climate(u *Unit, job *Job, r *UnitResult) (Finding, bool) {
	f := Finding{Code: ExtremeClimate, Severity: Note, Topic: TopicPlace}
	switch {
	case inRegion(hotRegions, job):
		f.Text = "Summers are fierce where you are, and a dark dome gets hottest in the sun, so white is the easier choice"
		if heated(job.Use) && u.Layers < 3 {
			f.Text = "Summers are fierce where you are, so three layers are worth asking for over a cooled room, and a dark dome gets hottest in the sun"
		}
		f.Source = "NBS Technical Note 231 (roofs 80 °F over the air) with handbook service temperatures of acrylic; region from memory"
	case inRegion(coldRegions, job) && u.Layers < 3 && heated(job.Use):
		f.Text = "Winters are hard where you are, so three layers of plastic are worth asking for over a heated room"
		f.Source = "common practice; region from memory: IECC climate zones 6 to 8 by county"
	default:
		return Finding{}, false
	}
	if r.Replace == ReplaceUnit && heated(job.Use) {
		f.Text += ", and our staff will check the unit's energy rating"
		f.Source += "; IECC-R 2021 R402.1.2, R503.1.1.1"
	}
	f.Text += "."
	return f, true
}

// heated says whether the space below is lived or worked in; where the use is not known
// it may be.
func heated(use string) bool {
	switch use {
	case UseOutbuilding, UseOther, UseRV:
		return false
	}
	return true
}

// region is a state or a part of it, between latitudes and longitudes in degrees. A part
// counts only where the site's position is known.
type region struct {
	state                    string
	south, north, west, east float64 // all 0: the whole state
}

func inRegion(rs []region, job *Job) bool {
	for i := range rs {
		if rs[i].state == job.state() && rs[i].holds(job.Site) {
			return true
		}
	}
	return false
}

func (g *region) holds(s Site) bool {
	if g.south == 0 && g.north == 0 {
		return true
	}
	return s.Known && s.Lat >= g.south && s.Lat <= g.north && s.Lon >= g.west && s.Lon <= g.east
}
