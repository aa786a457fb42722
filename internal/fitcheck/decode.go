package fitcheck

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// MaxCount bounds whole numbers: no lead speaks of more units or photos than this.
const MaxCount = 100_000

// DecodeValue reads the contract's JSON form of a topic's value. It is strict: an
// unknown field, a wrong type, a number that is not above zero or is out of all
// reason, and a choice that is not allowed are errors that name the field.
func DecodeValue(t Topic, raw []byte) (Value, error) {
	if !json.Valid(raw) {
		return nil, fmt.Errorf("%s: not valid JSON", t)
	}
	v, err := decodeTopic(t, bytes.TrimSpace(raw))
	if err != nil {
		return nil, fieldError(string(t), err)
	}
	if v == nil || v == Value(Text("")) || isEmptySize(v) {
		return nil, fmt.Errorf("%s: no value", t)
	}
	return v, nil
}

func isEmptySize(v Value) bool {
	s, ok := v.(Size)
	return ok && !s.Known()
}

// decodeTopic reads one value; nil for null. Its errors lack the topic's name.
func decodeTopic(t Topic, raw []byte) (Value, error) {
	if string(raw) == "null" {
		return nil, nil
	}
	if t.OfSize() {
		return decodeSize(raw)
	}
	switch t {
	case TopicName, TopicEmail, TopicPhone:
		s, err := decodeString(raw)
		return Text(s), err
	case TopicPlace:
		return decodePlace(raw)
	case TopicProblem, TopicImpactRisk:
		return decodeChoiceList(t, raw)
	case TopicCount:
		return decodeWhole(raw, 1, MaxCount)
	case TopicPhotos:
		return decodeWhole(raw, 0, MaxCount)
	case TopicLayers:
		return decodeWhole(raw, 1, 3)
	case TopicCurbDiagonals:
		return decodeDiagonals(raw)
	case TopicCurbHeight, TopicDomeRise:
		return decodeHeight(t, raw)
	case TopicRoofSlope:
		return decodeSlope(raw)
	case TopicColor:
		return decodeColor(raw)
	}
	if choices[t] == nil {
		return nil, errors.New("not a topic")
	}
	s, err := decodeOneOf(raw, choices[t])
	return Choice(s), err
}

func decodeString(raw []byte) (string, error) {
	if len(raw) == 0 || raw[0] != '"' {
		return "", errors.New("must be a text")
	}
	var s string
	if err := json.Unmarshal(raw, &s); err != nil {
		return "", errors.New("must be a text")
	}
	return s, nil
}

func decodeOneOf(raw []byte, allowed []string) (string, error) {
	s, err := decodeString(raw)
	if err == nil {
		for _, a := range allowed {
			if s == a {
				return a, nil
			}
		}
	}
	return "", errors.New("must be one of " + strings.Join(allowed, ", "))
}

func decodeChoiceList(t Topic, raw []byte) (Value, error) {
	var items []json.RawMessage
	if raw[0] != '[' || json.Unmarshal(raw, &items) != nil {
		return nil, errors.New("must be a list of " + strings.Join(choices[t], ", "))
	}
	list := ChoiceList{}
	for i, item := range items {
		s, err := decodeOneOf(item, choices[t])
		if err != nil {
			return nil, fieldError("["+strconv.Itoa(i)+"]", err)
		}
		if !slices.Contains(list, s) {
			list = append(list, s)
		}
	}
	return list, nil
}

func decodeNumber(raw []byte) (float64, error) {
	if len(raw) == 0 || raw[0] != '-' && (raw[0] < '0' || raw[0] > '9') {
		return 0, errors.New("must be a number")
	}
	f, err := strconv.ParseFloat(string(raw), 64)
	if err != nil || math.IsInf(f, 0) || math.IsNaN(f) {
		return 0, errors.New("is too large")
	}
	return f, nil
}

func decodeWhole(raw []byte, low, high int) (Value, error) {
	f, err := decodeNumber(raw)
	if err != nil {
		return nil, err
	}
	if f != math.Trunc(f) || f < float64(low) || f > float64(high) {
		return nil, fmt.Errorf("must be a whole number from %d to %d", low, high)
	}
	return Whole(f), nil
}

var errNotAbove = errors.New("must be above zero")

// decodeLength reads decimal inches; zero is an error unless the field may be 0.
func decodeLength(raw []byte, zero bool) (Length, error) {
	f, err := decodeNumber(raw)
	if err != nil {
		return 0, err
	}
	if math.Abs(f) > MaxLength.Inches() {
		return 0, fmt.Errorf("is too large: at most %.0f inches", MaxLength.Inches())
	}
	l := FromInches(f)
	switch {
	case l > 0, zero && f == 0:
		return l, nil
	case zero:
		return 0, errors.New("must not be below zero")
	}
	return 0, errNotAbove
}

// fieldError puts a field's name before an error, joined to names deeper inside.
func fieldError(name string, err error) error {
	var p *pathError
	if errors.As(err, &p) {
		sep := "."
		if strings.HasPrefix(p.path, "[") {
			sep = ""
		}
		return &pathError{name + sep + p.path, p.err}
	}
	return &pathError{name, err}
}

// pathError is an error at a named field.
type pathError struct {
	path string
	err  error
}

func (e *pathError) Error() string { return e.path + ": " + e.err.Error() }
func (e *pathError) Unwrap() error { return e.err }
