package fitcheck

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"slices"
)

// MaxUnits bounds how many kinds of unit one job may hold.
const MaxUnits = 10_000

// maxResolution bounds how coarsely a tape may be said to be read.
const maxResolution = Foot

// DecodeJob reads one line of input of the contract's check: the use, the place, the
// units, and how finely the tape was read. Errors name the field.
func DecodeJob(line []byte) (Job, error) {
	var job Job
	line = bytes.TrimSpace(line)
	if err := validLine(line); err != nil {
		return job, err
	}
	units := false
	err := eachMember(line, func(key string, value []byte) error {
		if key == "units" {
			units = units || value != nil
		}
		return job.member(key, value)
	})
	if err == nil && !units {
		err = fieldError("units", errors.New("is missing"))
	}
	if err != nil {
		return Job{}, err
	}
	return job, nil
}

func (job *Job) member(key string, value []byte) (err error) {
	switch key {
	case "use":
		if value != nil {
			job.Use, err = decodeOneOf(value, choices[TopicUse])
		}
		return err
	case "place":
		if value == nil {
			return nil
		}
		v, err := decodePlace(value)
		if p, ok := v.(Place); ok {
			job.Place = p
		}
		return err
	case "resolution_in":
		if err := lengthInto(&job.Resolution, value, false); err != nil || job.Resolution <= maxResolution {
			return err
		}
		return fmt.Errorf("is too large: at most %.0f inches", maxResolution.Inches())
	case "units":
		return job.unitsInto(value)
	}
	return unknownField("use", "place", "units", "resolution_in")
}

func (job *Job) unitsInto(value []byte) error {
	if value == nil {
		return nil
	}
	var items []json.RawMessage
	if value[0] != '[' || json.Unmarshal(value, &items) != nil {
		return errors.New("must be a list of objects")
	}
	if len(items) > MaxUnits {
		return fmt.Errorf("has %d entries; at most %d", len(items), MaxUnits)
	}
	job.Units = make([]Unit, len(items))
	for i, item := range items {
		if err := decodeUnit(&job.Units[i], item); err != nil {
			return fieldError(fmt.Sprintf("[%d]", i), err)
		}
	}
	return nil
}

// decodeUnit reads the topics of one unit. Topics of the whole lead that bear on no
// measure (name, email, phone, confirm) are read and left alone.
func decodeUnit(u *Unit, raw []byte) error {
	return eachMember(raw, func(key string, value []byte) error {
		t := Topic(key)
		if t == TopicUse || t == TopicPlace {
			return errors.New("belongs beside units, not inside one")
		}
		if !t.OfUnit() && !t.ofLead() {
			return errors.New("is an unknown field")
		}
		if value == nil {
			return nil
		}
		v, err := decodeTopic(t, value)
		if err != nil || v == nil {
			return err
		}
		if h, ok := v.(Height); ok && h.Height == 0 { // facts may hold the rise of a flat sheet, a check may not
			return fieldError("height_in", errNotAbove)
		}
		if t.ofLead() && t != TopicProblem && t != TopicPhotos {
			return nil
		}
		return u.Set(t, v)
	})
}

func (t Topic) ofLead() bool {
	return slices.Contains(LeadTopics, t)
}

var lastKey = regexp.MustCompile(`"([A-Za-z_]{1,40})"\s*:[^:]*$`)

// validLine reports what is wrong with a line that is no JSON object, and near which
// field: NaN, for one, is no number in JSON.
func validLine(line []byte) error {
	var probe json.RawMessage
	err := json.Unmarshal(line, &probe)
	if err == nil {
		if line[0] != '{' {
			return errors.New("the line must be a JSON object")
		}
		return nil
	}
	var syntax *json.SyntaxError
	if !errors.As(err, &syntax) {
		return errors.New("not valid JSON")
	}
	end := min(max(int(syntax.Offset)-1, 0), len(line))
	if m := lastKey.FindSubmatch(line[max(0, end-200):end]); m != nil {
		return fieldError(string(m[1]), fmt.Errorf("not valid JSON here: %w", syntax))
	}
	return fmt.Errorf("not valid JSON: %w", syntax)
}
