package reading

import "example.com/intake-bot/internal/fitcheck"

// totalTold is the number of all skylights, where the message tells it before it names as many kinds: "two domes.
// Kitchen: …. Hallway: …", "two: kitchen … and bath …"; nil where it does not.
func (r *reader) totalTold(kinds int) *Fact {
	for _, f := range r.out.Facts {
		if f.Topic == fitcheck.TopicCount && f.Unit == 0 {
			if f.Value != fitcheck.Value(fitcheck.Whole(kinds)) {
				return nil
			}
			return &f
		}
	}
	for i := range r.refs[0].first {
		opens := i == 0 || r.toks[i-1].kind == markToken && !r.markAt(i-1, '/') || r.among(i-1, leadsToCount)
		ends := r.markAt(i+1, ':') || r.markAt(i+1, ',') || r.noun(i+1) && r.toks[min(i+2, len(r.toks)-1)].kind == markToken
		if r.wholeSaid(i) == kinds && opens && ends && r.unitAt(i+1) == noUnit {
			return &Fact{Topic: fitcheck.TopicCount, Value: fitcheck.Whole(kinds), Said: r.said(i, i)}
		}
	}
	return nil
}

// unclearKinds is the highest number of a kind of which a size is told, not known of what.
func (r *reader) unclearKinds() int {
	kinds := 0
	for _, u := range r.out.Unclear {
		kinds = max(kinds, u.Unit)
	}
	return kinds
}
