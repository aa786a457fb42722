package fitcheck

import (
	"encoding/json"
	"fmt"
)

// AppendTopics appends every known topic of the unit as members of a JSON object,
// without its braces, in the order of UnitTopics: `"count":1,"style":"curb_mount"`.
func (u *Unit) AppendTopics(b []byte) ([]byte, error) {
	first := true
	for _, t := range UnitTopics {
		v := u.Get(t)
		if v == nil {
			continue
		}
		if !first {
			b = append(b, ',')
		}
		first = false
		j, err := json.Marshal(v)
		if err != nil {
			return nil, fmt.Errorf("encode topic %s: %w", t, err)
		}
		b = append(b, '"')
		b = append(b, t...)
		b = append(b, '"', ':')
		b = append(b, j...)
	}
	return b, nil
}

// MarshalJSON writes every known topic of the unit, in the order of UnitTopics.
func (u Unit) MarshalJSON() ([]byte, error) {
	b, err := u.AppendTopics([]byte{'{'})
	if err != nil {
		return nil, err
	}
	return append(b, '}'), nil
}
