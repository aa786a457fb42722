package simulate

import (
	"encoding/json"
	"fmt"

	"example.com/intake-bot/internal/fitcheck"
)

// job is what a customer would have told of the skylight.
func (s *skylight) job() *fitcheck.Job {
	u := fitcheck.Unit{Style: fitcheck.StyleCurbMount, FrameCondition: fitcheck.ConditionGood,
		Want: fitcheck.WantDomeOnly, Outline: fitcheck.OutlineRectangle}
	if s.unit {
		u.Want, u.FrameCondition = fitcheck.WantCompleteUnit, fitcheck.ConditionCorroded
	}
	if s.round {
		u.Outline = fitcheck.OutlineRound
	}
	u.CurbOutside, u.CurbInside, u.FrameInside = s.size(s.outside), s.size(s.inside), s.size(s.frame)
	u.PlasticSize, u.RetainerOpening, u.RetainerOutside = s.size(s.plastic), s.size(s.opening), s.size(s.retain)
	u.CurbDiagonals = fitcheck.Diagonals{First: fitcheck.FromInches(s.diag[0]), Second: fitcheck.FromInches(s.diag[1])}
	if s.slope > 0 {
		u.RoofSlope = &fitcheck.Slope{Rise: fitcheck.FromInches(s.slope), Run: fitcheck.Foot}
	}
	return &fitcheck.Job{Use: fitcheck.UseHome, Place: fitcheck.Place{State: "IA"}, Units: []fitcheck.Unit{u}}
}

func (s *skylight) size(p pair) fitcheck.Size {
	if s.round {
		return fitcheck.Size{Diameter: fitcheck.FromInches(p[0])}
	}
	return fitcheck.Size{Width: fitcheck.FromInches(p[0]), Length: fitcheck.FromInches(p[1])}
}

// Line is the skylight as a line of input to the check command.
func (s *skylight) Line() (string, error) {
	job := s.job()
	unit := map[fitcheck.Topic]fitcheck.Value{}
	for _, t := range fitcheck.UnitTopics {
		if v := job.Units[0].Get(t); v != nil {
			unit[t] = v
		}
	}
	b, err := json.Marshal(map[string]any{"use": job.Use, "place": job.Place, "units": []any{unit}})
	if err != nil {
		return "", fmt.Errorf("write a simulated job: %w", err)
	}
	return string(b), nil
}
