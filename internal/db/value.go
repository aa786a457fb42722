package db

import (
	"bytes"
	"encoding/json"
	"fmt"

	"example.com/intake-bot/internal/conversation"
	"example.com/intake-bot/internal/fitcheck"
)

// encodeValue is a fact's value as it is kept: the contract's JSON, and beside it how
// finely the tape was read, which that JSON does not tell.
func encodeValue(v fitcheck.Value) (js []byte, resolution fitcheck.Length, err error) {
	if size, ok := v.(fitcheck.Size); ok {
		resolution = size.Resolution
	}
	js, err = json.Marshal(v)
	return js, resolution, err
}

// decodeValue reads what encodeValue wrote, for the topic that it belongs to.
func decodeValue(t fitcheck.Topic, js []byte, resolution fitcheck.Length) (fitcheck.Value, error) {
	v, err := decodeFor(t, js)
	if err != nil {
		return nil, fmt.Errorf("value of %s: %w", t, err)
	}
	if size, ok := v.(fitcheck.Size); ok {
		size.Resolution = resolution
		return size, nil
	}
	return v, nil
}

func decodeFor(t fitcheck.Topic, js []byte) (fitcheck.Value, error) {
	if t.OfSize() {
		return decodeSize(js)
	}
	switch t {
	case fitcheck.TopicName, fitcheck.TopicEmail, fitcheck.TopicPhone:
		return decode[fitcheck.Text](js)
	case fitcheck.TopicPlace:
		return decode[fitcheck.Place](js)
	case fitcheck.TopicProblem, fitcheck.TopicImpactRisk:
		return decode[fitcheck.ChoiceList](js)
	case fitcheck.TopicCount, fitcheck.TopicLayers, fitcheck.TopicPhotos:
		return decode[fitcheck.Whole](js)
	case fitcheck.TopicColor:
		return decode[fitcheck.Color](js)
	case fitcheck.TopicCurbDiagonals, fitcheck.TopicCurbHeight, fitcheck.TopicDomeRise, fitcheck.TopicRoofSlope:
		return decodeLengths(t, js)
	}
	return decode[fitcheck.Choice](js)
}

// decode reads a value whose JSON is that of its Go type.
func decode[V fitcheck.Value](js []byte) (fitcheck.Value, error) {
	var v V
	if err := json.Unmarshal(js, &v); err != nil {
		return nil, err
	}
	return v, nil
}

func decodeSize(js []byte) (fitcheck.Value, error) {
	var in struct {
		Width    float64   `json:"width_in"`
		Length   float64   `json:"length_in"`
		Diameter float64   `json:"diameter_in"`
		One      float64   `json:"one_in"`
		Sides    []float64 `json:"sides_in"`
	}
	if err := json.Unmarshal(js, &in); err != nil {
		return nil, err
	}
	size := fitcheck.Size{
		Width:    fitcheck.FromInches(in.Width),
		Length:   fitcheck.FromInches(in.Length),
		Diameter: fitcheck.FromInches(in.Diameter),
		One:      fitcheck.FromInches(in.One),
	}
	for _, side := range in.Sides {
		size.Sides = append(size.Sides, fitcheck.FromInches(side))
	}
	return size, nil
}

func decodeLengths(t fitcheck.Topic, js []byte) (fitcheck.Value, error) {
	var in struct {
		First  float64 `json:"first_in"`
		Second float64 `json:"second_in"`
		Height float64 `json:"height_in"`
		Rise   float64 `json:"rise_in"`
		Run    float64 `json:"run_in"`
	}
	if err := json.Unmarshal(js, &in); err != nil {
		return nil, err
	}
	switch t {
	case fitcheck.TopicCurbDiagonals:
		return fitcheck.Diagonals{First: fitcheck.FromInches(in.First), Second: fitcheck.FromInches(in.Second)}, nil
	case fitcheck.TopicRoofSlope:
		return fitcheck.Slope{Rise: fitcheck.FromInches(in.Rise), Run: fitcheck.FromInches(in.Run)}, nil
	}
	return fitcheck.Height{Height: fitcheck.FromInches(in.Height)}, nil
}

// encodeUnits is a lead's units as JSON, nil for nil: "as they were".
func encodeUnits(units []conversation.LeadUnit) ([]byte, error) {
	if units == nil {
		return nil, nil
	}
	js, err := json.Marshal(units)
	if err != nil {
		return nil, fmt.Errorf("units of a lead: %w", err)
	}
	return js, nil
}

// storable is text as Postgres takes it: valid UTF-8 without NUL.
func storable(s string) string {
	return string(bytes.ReplaceAll(bytes.ToValidUTF8([]byte(s), []byte("\uFFFD")), []byte{0}, nil))
}
