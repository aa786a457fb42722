package sms

import "unicode/utf16"

// Encoding is how the network carries a text.
type Encoding string

const (
	GSM7 Encoding = "GSM-7"
	UCS2 Encoding = "UCS-2"
)

// A message has 140 octets: 160 septets or 70 UTF-16 units alone. In parts, six octets
// of each go to the header that joins them. Source: 3GPP TS 23.038 and, from memory, TS
// 23.040 section 9.2.3.24.1.
const (
	gsmAlone, gsmPart = 160, 153
	ucsAlone, ucsPart = 70, 67
)

// Segments is what a text costs. Units are septets with GSM-7, 16-bit units with
// UCS-2. An empty text has no parts.
type Segments struct {
	Encoding Encoding
	Units    int
	Parts    int
}

// Count says in how many parts the network carries a text. One character outside of
// GSM-7 makes all of it UCS-2.
func Count(text string) Segments {
	encoding, alone, part, cost := GSM7, gsmAlone, gsmPart, septets
	if !AllGSM7(text) {
		encoding, alone, part, cost = UCS2, ucsAlone, ucsPart, utf16.RuneLen
	}
	units, parts, room := 0, 0, 0
	for _, r := range text {
		n := cost(r)
		units += n
		if n > room { // a pair never straddles two parts: TS 23.038 section 6.2.1.1, from memory
			parts, room = parts+1, part
		}
		room -= n
	}
	if units <= alone && units > 0 {
		parts = 1
	}
	return Segments{Encoding: encoding, Units: units, Parts: parts}
}

// AllGSM7 reports whether a text can go as GSM-7.
func AllGSM7(text string) bool {
	for _, r := range text {
		if septets(r) == 0 {
			return false
		}
	}
	return true
}
