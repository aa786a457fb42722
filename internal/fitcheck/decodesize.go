package fitcheck

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// eachMember calls f for every member of a JSON object, in order, and refuses a key
// that comes twice. Null members are skipped: null is the same as missing. The raw
// JSON must be valid.
func eachMember(raw []byte, f func(key string, value []byte) error) error {
	dec := json.NewDecoder(bytes.NewReader(raw))
	if tok, err := dec.Token(); err != nil || tok != json.Delim('{') {
		return errors.New("must be an object")
	}
	var seen []string
	for dec.More() {
		tok, err := dec.Token()
		if err != nil {
			return fmt.Errorf("read key: %w", err)
		}
		key, _ := tok.(string)
		if slices.Contains(seen, key) {
			return fieldError(shorten(key), errors.New("is given twice"))
		}
		seen = append(seen, key)
		var value json.RawMessage
		if err := dec.Decode(&value); err != nil {
			return fieldError(shorten(key), fmt.Errorf("read value: %w", err))
		}
		if string(value) == "null" && known(f, key) {
			continue
		}
		if err := f(key, value); err != nil {
			return fieldError(shorten(key), err)
		}
	}
	return nil
}

// known says whether a key is one that f takes, whatever its value: f answers a nil
// value for a key that it knows with no error.
func known(f func(string, []byte) error, key string) bool { return f(key, nil) == nil }

// shorten keeps an outsider's key from filling an error.
func shorten(key string) string {
	if len(key) > 40 {
		key = strings.ToValidUTF8(key[:40], "") + "..."
	}
	return key
}

func unknownField(allowed ...string) error {
	return errors.New("is an unknown field; known are " + strings.Join(allowed, ", "))
}

// lengthInto reads a length into dst; a nil value only says that the key is known.
func lengthInto(dst *Length, value []byte, zero bool) (err error) {
	if value == nil {
		return nil
	}
	*dst, err = decodeLength(value, zero)
	return err
}

func decodeSize(raw []byte) (Value, error) {
	var s Size
	err := eachMember(raw, func(key string, value []byte) error {
		switch key {
		case "width_in":
			return lengthInto(&s.Width, value, false)
		case "length_in":
			return lengthInto(&s.Length, value, false)
		case "diameter_in":
			return lengthInto(&s.Diameter, value, false)
		case "one_in":
			return lengthInto(&s.One, value, false)
		case "sides_in":
			return sidesInto(&s.Sides, value)
		}
		return unknownField("width_in", "length_in", "diameter_in", "one_in", "sides_in")
	})
	if err != nil {
		return nil, err
	}
	return s, oneForm(s)
}

// oneForm refuses a size that is told in two ways at once.
func oneForm(s Size) error {
	forms := 0
	for _, there := range []bool{s.Width > 0 || s.Length > 0, s.Diameter > 0, s.One > 0, s.Sides != nil} {
		if there {
			forms++
		}
	}
	if forms > 1 {
		return errors.New("give width_in and length_in, or diameter_in, or one_in, or sides_in, not several of them")
	}
	return nil
}

func sidesInto(dst *[]Length, value []byte) error {
	if value == nil {
		return nil
	}
	var items []json.RawMessage
	if value[0] != '[' || json.Unmarshal(value, &items) != nil || len(items) != 4 {
		return errors.New("must be a list of four numbers")
	}
	sides := make([]Length, len(items))
	for i, item := range items {
		l, err := decodeLength(item, false)
		if err != nil {
			return fieldError(fmt.Sprintf("[%d]", i), err)
		}
		sides[i] = l
	}
	*dst = sides
	return nil
}

func decodeDiagonals(raw []byte) (Value, error) {
	var d Diagonals
	err := eachMember(raw, func(key string, value []byte) error {
		switch key {
		case "first_in":
			return lengthInto(&d.First, value, false)
		case "second_in":
			return lengthInto(&d.Second, value, false)
		}
		return unknownField("first_in", "second_in")
	})
	if err == nil && d.First == 0 {
		d.First, d.Second = d.Second, 0
	}
	if err != nil || d.First == 0 {
		return nil, err
	}
	return d, nil
}

func decodeHeight(t Topic, raw []byte) (Value, error) {
	h, given := Height{}, false
	err := eachMember(raw, func(key string, value []byte) error {
		if key != "height_in" {
			return unknownField("height_in")
		}
		given = given || value != nil
		return lengthInto(&h.Height, value, t == TopicDomeRise)
	})
	if err != nil || !given {
		return nil, err
	}
	return h, nil
}

func decodeSlope(raw []byte) (Value, error) {
	s, rise, run := Slope{}, false, false
	err := eachMember(raw, func(key string, value []byte) error {
		switch key {
		case "rise_in":
			rise = rise || value != nil
			return lengthInto(&s.Rise, value, true)
		case "run_in":
			run = run || value != nil
			return lengthInto(&s.Run, value, false)
		}
		return unknownField("rise_in", "run_in")
	})
	switch {
	case err != nil:
		return nil, err
	case !rise && !run:
		return nil, nil
	case !rise:
		return nil, fieldError("rise_in", errors.New("is missing"))
	case !run:
		return nil, fieldError("run_in", errors.New("is missing"))
	}
	return s, nil
}
