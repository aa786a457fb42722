package fitcheck

import "errors"

func decodePlace(raw []byte) (Value, error) {
	var p Place
	err := eachMember(raw, func(key string, value []byte) error {
		switch key {
		case "city":
			return stringInto(&p.City, value)
		case "state":
			return stateInto(&p.State, value)
		case "zip":
			return zipInto(&p.ZIP, value)
		}
		return unknownField("city", "state", "zip")
	})
	if err != nil || p == (Place{}) {
		return nil, err
	}
	return p, nil
}

func stringInto(dst *string, value []byte) (err error) {
	if value == nil {
		return nil
	}
	*dst, err = decodeString(value)
	return err
}

func stateInto(dst *string, value []byte) error {
	if err := stringInto(dst, value); err != nil || value == nil {
		return err
	}
	s := *dst
	if len(s) != 2 || s[0] < 'A' || s[0] > 'Z' || s[1] < 'A' || s[1] > 'Z' {
		return errors.New("must be a two-letter postal code such as MN")
	}
	return nil
}

// zipInto keeps the first five digits of a ZIP or ZIP+4 code.
func zipInto(dst *string, value []byte) error {
	if err := stringInto(dst, value); err != nil || value == nil {
		return err
	}
	z := *dst
	if len(z) == 10 && z[5] == '-' && digits(z[6:]) {
		z = z[:5]
	}
	if len(z) != 5 || !digits(z) {
		return errors.New("must be a ZIP code of five digits")
	}
	*dst = z
	return nil
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}

func decodeColor(raw []byte) (Value, error) {
	var c Color
	err := eachMember(raw, func(key string, value []byte) error {
		switch key {
		case "outer":
			return colorInto(&c.Outer, value)
		case "middle":
			return colorInto(&c.Middle, value)
		case "inner":
			return colorInto(&c.Inner, value)
		}
		return unknownField("outer", "middle", "inner")
	})
	switch {
	case err != nil || c == (Color{}):
		return nil, err
	case c.Outer == "":
		return nil, fieldError("outer", errors.New("is missing"))
	}
	return c, nil
}

func colorInto(dst *string, value []byte) (err error) {
	if value == nil {
		return nil
	}
	*dst, err = decodeOneOf(value, colors)
	return err
}
