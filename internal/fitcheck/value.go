package fitcheck

// Value is what a topic can be: one of Text, Choice, ChoiceList, Whole, Size,
// Diagonals, Height, Slope, Color or Place. Its JSON is the contract's form.
// Values are never changed once made.
type Value interface{ value() }

// Text is a name, a mail address or a phone number.
type Text string

// Choice is one of the allowed values of an enumerated topic.
type Choice string

// ChoiceList is a list of allowed values; an empty list says "none".
type ChoiceList []string

// Whole is a whole number: a count, layers, photos.
type Whole int

// Size is a measured outline. A rectangle has Width and Length (one of them 0 while
// it is not known), a round one Diameter. One is a lone number of which it is not
// known which side it measures; Sides are four sides in the order given.
type Size struct {
	Width    Length   `json:"width_in,omitempty"`
	Length   Length   `json:"length_in,omitempty"`
	Diameter Length   `json:"diameter_in,omitempty"`
	One      Length   `json:"one_in,omitempty"`
	Sides    []Length `json:"sides_in,omitempty"`
	// Resolution is how finely the tape was read (1/16 in, 1 mm), 0 where it must be
	// inferred from the numbers. It is not part of the contract's JSON.
	Resolution Length `json:"-"`
}

// Complete says whether the size gives all that an outline needs.
func (s Size) Complete() bool {
	return s.Width > 0 && s.Length > 0 || s.Diameter > 0 || len(s.Sides) == 4
}

// Known says whether the size says anything at all.
func (s Size) Known() bool {
	return s.Width > 0 || s.Length > 0 || s.Diameter > 0 || s.One > 0 || len(s.Sides) > 0
}

// Diagonals are corner to corner over the outside of the curb; Second is 0 while
// only one is known.
type Diagonals struct {
	First  Length `json:"first_in"`
	Second Length `json:"second_in,omitempty"`
}

// Height is a height: of the curb above the roof, of the bulge above its lip.
type Height struct {
	Height Length `json:"height_in"`
}

// Slope is a roof's rise over its run, in the same unit; a flat roof has rise 0.
type Slope struct {
	Rise Length `json:"rise_in"`
	Run  Length `json:"run_in"`
}

// Color is the color of each layer of plastic, from outside to inside.
type Color struct {
	Outer  string `json:"outer"`
	Middle string `json:"middle,omitempty"`
	Inner  string `json:"inner,omitempty"`
}

// Place is where the part goes: any of the three may be empty.
type Place struct {
	City  string `json:"city,omitempty"`
	State string `json:"state,omitempty"`
	ZIP   string `json:"zip,omitempty"`
}

func (Text) value()       {}
func (Choice) value()     {}
func (ChoiceList) value() {}
func (Whole) value()      {}
func (Size) value()       {}
func (Diagonals) value()  {}
func (Height) value()     {}
func (Slope) value()      {}
func (Color) value()      {}
func (Place) value()      {}
