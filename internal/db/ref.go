package db

import (
	"fmt"
	"io"
)

// refAlphabet is what a ref is made of: capitals and digits that are not taken for one
// another in print or handwriting (no 0 and O, 1, I and L, 2 and Z, 5 and S, 8 and B,
// U and V), and no A or E, so that a ref spells no word. The digits stand last.
const refAlphabet = "CDFGHJKMNPQRTWXY34679"

// refLength gives about three million refs.
const refLength = 5

// NewRef draws a code that can be said on the phone, "R7KQ4". It starts with a letter, so
// that it is no ZIP code, and not with an X, so that it is no size (46X49, X4936).
func NewRef(random io.Reader) (string, error) {
	// Bytes beyond the last full round of the alphabet are drawn again, so that every
	// letter is as likely as any other.
	const fair = 256 - 256%len(refAlphabet)
	ref := make([]byte, 0, refLength)
	var b [1]byte
	for len(ref) < refLength {
		if _, err := io.ReadFull(random, b[:]); err != nil {
			return "", fmt.Errorf("draw a ref: %w", err)
		}
		if int(b[0]) >= fair {
			continue
		}
		c := refAlphabet[int(b[0])%len(refAlphabet)]
		if len(ref) == 0 && (c <= '9' || c == 'X') {
			continue
		}
		ref = append(ref, c)
	}
	return string(ref), nil
}
