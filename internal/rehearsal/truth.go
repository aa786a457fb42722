package rehearsal

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// skylight is one kind of unit as it truly is, and what its owner wants done.
type skylight struct {
	count     int
	style     string
	round     bool
	profile   string
	condition string
	want      string // empty where they have no opinion
	sizes     sizes
	doubled   bool // the curb is built of two boards a side
	thin      bool // of boards or plywood

	layers             int    // 0: they don't know
	material, finish   string // "": they don't know
	outer, inner       string
	hasPhoto           bool
	dome               bool // only the plastic is to be replaced
	sizeOf, checkOf    fitcheck.Topic
	finishIsPlainWords bool // says "bronze" and no more, at first
}

// truth is who the customer is and what they have.
type truth struct {
	name     string
	town     town
	use      string
	problems []string
	units    []skylight
}

func drawTruth(d dice, k kind, h *habit) truth {
	t := truth{name: drawName(d, h.language), town: drawTown(d), use: pick(d, k.uses...)}
	t.problems = drawProblems(d)
	first := drawSkylight(d, k, h)
	t.units = []skylight{first}
	if d.chance(k.second) {
		second := drawSkylight(d, k, h)
		second.alike(&first)
		second.sizes = measuredSizes(d, &second, h)
		t.units = append(t.units, second)
	}
	return t
}

func drawProblems(d dice) []string {
	problems := []string{}
	for _, p := range []weighted[string]{{45, fitcheck.ProblemCracked}, {40, fitcheck.ProblemLeaking}, {20, fitcheck.ProblemHazy},
		{8, fitcheck.ProblemStorm}, {3, fitcheck.ProblemHoleOpen}} {
		if d.IntN(100) < p.weight {
			problems = append(problems, p.what)
		}
	}
	return problems
}

func drawSkylight(d dice, k kind, h *habit) skylight {
	s := skylight{count: 1, style: draw(d, k.styles), round: d.chance(0.08), profile: fitcheck.ProfileDome, hasPhoto: d.chance(0.6)}
	if d.chance(k.several) {
		s.count = d.between(2, 14)
	}
	if s.style == fitcheck.StyleCurbMount || s.style == fitcheck.StyleUnsure {
		s.condition = draw(d, []weighted[string]{{50, fitcheck.ConditionGood}, {14, fitcheck.ConditionWeathered}, {8, fitcheck.ConditionBent},
			{12, fitcheck.ConditionCorroded}, {8, fitcheck.ConditionCaulkedOver}, {8, fitcheck.ConditionUnsure}})
	}
	s.want = draw(d, []weighted[string]{{55, ""}, {25, fitcheck.WantDomeOnly}, {20, fitcheck.WantCompleteUnit}})
	s.settlePart()
	s.drawChoices(d)
	s.doubled = !s.dome && d.chance(0.04)
	s.thin = !s.dome && !s.doubled && d.chance(0.04)
	s.sizes = measuredSizes(d, &s, h)
	return s
}

// settlePart says what is to be measured: the plastic for a dome, the curb for a unit.
func (s *skylight) settlePart() {
	past := s.condition == fitcheck.ConditionBent || s.condition == fitcheck.ConditionCorroded
	needs := slices.Contains([]string{fitcheck.StyleDomeOverFrame, fitcheck.StyleFiberglassFrame, fitcheck.StyleVerticalRise}, s.style)
	if needs && s.want == fitcheck.WantDomeOnly {
		s.want = ""
	}
	s.dome = !past && !needs && s.want != fitcheck.WantCompleteUnit
	s.sizeOf, s.checkOf = fitcheck.TopicCurbOutside, fitcheck.TopicCurbInside
	if s.dome {
		s.sizeOf, s.checkOf = fitcheck.TopicPlasticSize, fitcheck.TopicRetainerOpening
	}
}

func (s *skylight) drawChoices(d dice) {
	s.layers = draw(d, []weighted[int]{{30, 1}, {55, 2}, {3, 3}, {12, 0}})
	s.outer = draw(d, []weighted[string]{{40, fitcheck.ColorClear}, {35, fitcheck.ColorWhite}, {20, fitcheck.ColorBronze}, {5, ""}})
	if s.layers == 2 && s.outer != "" {
		s.inner = pick(d, fitcheck.ColorClear, fitcheck.ColorClear, fitcheck.ColorWhite, s.outer)
	}
	s.material = draw(d, []weighted[string]{{50, fitcheck.MaterialAcrylic}, {30, fitcheck.MaterialPolycarbonate}, {20, ""}})
	s.finish = draw(d, []weighted[string]{{45, fitcheck.FinishMill}, {20, fitcheck.FinishBronzeAnodized}, {15, fitcheck.FinishBronzePowderCoat}, {20, ""}})
	s.finishIsPlainWords = s.finish != fitcheck.FinishMill && d.chance(0.35)
}

// alike makes a second kind differ from the first in size and number only.
func (s *skylight) alike(o *skylight) {
	count, round := s.count, s.round
	*s = *o
	s.count, s.round, s.doubled, s.thin = count, round, false, false
}

// measuredSizes are a skylight's true sizes, on the marks of its owner's tape. How the parts
// relate is common practice: a single wall of 2x lumber and some flashing, 3/8 in of
// play under the old frame, about an inch of plastic under the retainer at each edge.
func measuredSizes(d dice, s *skylight, h *habit) sizes {
	opening := pair{drawSide(d), drawSide(d)}
	if s.round || d.chance(0.2) {
		opening[1] = opening[0]
	}
	if opening[0] > opening[1] {
		opening[0], opening[1] = opening[1], opening[0]
	}
	wall := 3.0
	switch {
	case s.doubled:
		wall = 6
	case s.thin:
		wall = 1.5
	}
	curb := opening.plus(inches(wall + 0.25*d.Float64()))
	plastic := opening.plus(inches(1.3 + 1.4*d.Float64()))
	out := sizes{
		fitcheck.TopicCurbInside: opening, fitcheck.TopicCurbOutside: curb, fitcheck.TopicFrameInside: curb.plus(inches(0.3 + 0.2*d.Float64())),
		fitcheck.TopicRetainerOpening: opening, fitcheck.TopicPlasticSize: plastic, fitcheck.TopicRetainerOutside: plastic.plus(inches(0.5 + 0.6*d.Float64())),
	}
	for t, p := range out {
		out[t] = pair{h.mark(p[0]), h.mark(p[1])}
	}
	return out
}

// drawSide is an opening as it is built: between rafters, by the even inch, or any.
func drawSide(d dice) fitcheck.Length {
	switch {
	case d.chance(0.45):
		return inches(pick(d, 14.5, 22.5, 30.5, 46.5))
	case d.chance(0.3):
		return inches(float64(16 + 2*d.IntN(18)))
	}
	return inches(14 + float64(d.IntN(44*8))/8)
}

// beyondShop says whether a person at the shop decides, however well the talk goes.
func (t *truth) beyondShop() bool {
	if t.use == fitcheck.UseRV {
		return true
	}
	return slices.ContainsFunc(t.units, func(s skylight) bool {
		switch s.style {
		case fitcheck.StyleGlass, fitcheck.StyleTubular, fitcheck.StyleNoneYet, fitcheck.StyleSelfFlashing, fitcheck.StyleBareDome:
			return true
		case fitcheck.StyleUnsure:
			return true // a photo decides, and a person looks at it
		}
		return s.condition == fitcheck.ConditionCaulkedOver || s.condition == fitcheck.ConditionUnsure
	})
}

// of is the true value of a topic, nil where there is none.
func (t *truth) of(topic fitcheck.Topic, unit int) fitcheck.Value {
	switch topic {
	case fitcheck.TopicName:
		return fitcheck.Text(t.name)
	case fitcheck.TopicPlace:
		return fitcheck.Place{City: t.town.City, State: t.town.State, ZIP: t.town.ZIP}
	case fitcheck.TopicUse:
		return fitcheck.Choice(t.use)
	case fitcheck.TopicProblem:
		return fitcheck.ChoiceList(t.problems)
	}
	if unit < 1 || unit > len(t.units) {
		return nil
	}
	return t.units[unit-1].of(topic)
}

func (s *skylight) of(topic fitcheck.Topic) fitcheck.Value {
	choices := map[fitcheck.Topic]string{fitcheck.TopicStyle: s.style, fitcheck.TopicProfile: s.profile, fitcheck.TopicFrameCondition: s.condition,
		fitcheck.TopicWant: s.want, fitcheck.TopicMaterial: s.material, fitcheck.TopicFinish: s.finish}
	if c := choices[topic]; c != "" {
		return fitcheck.Choice(c)
	}
	switch topic {
	case fitcheck.TopicCount:
		return fitcheck.Whole(s.count)
	case fitcheck.TopicOutline:
		if s.round {
			return fitcheck.Choice(fitcheck.OutlineRound)
		}
		return fitcheck.Choice(fitcheck.OutlineRectangle)
	case fitcheck.TopicLayers:
		if s.layers > 0 {
			return fitcheck.Whole(s.layers)
		}
	case fitcheck.TopicColor:
		if s.outer != "" {
			return fitcheck.Color{Outer: s.outer, Inner: s.inner}
		}
	}
	return nil
}
