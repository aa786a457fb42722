package conversation

import (
	"regexp"
	"strconv"

	"example.com/intake-bot/internal/fitcheck"
)

var (
	saidCentimetres = regexp.MustCompile(`(?i)(\d|\b)(cms?|centimet(er|re)s?|cent[ií]metros?)\b`)
	saidMillimetres = regexp.MustCompile(`(?i)(\d|\b)(mms?|millimet(er|re)s?|mil[ií]metros?)\b`)
)

// writesCentimetres: the last metric measure that the customer told was in centimetres.
func (t *turn) writesCentimetres() bool {
	for i := len(t.talk.Ledger) - 1; i >= 0; i-- {
		switch e := &t.talk.Ledger[i]; {
		case e.Undone || e.By != FromCustomer || !e.Topic.OfLength():
		case saidCentimetres.MatchString(e.Said):
			return true
		case saidMillimetres.MatchString(e.Said):
			return false
		}
	}
	return false
}

// centimetres writes metric lengths in whole centimetres, or with a tenth for who writes so: whoever says
// 65.5 x 64 cm wants to read that again. It is nil where they are no such lengths.
func centimetres(lengths []fitcheck.Length, tenths bool) []string {
	words := make([]string, len(lengths))
	for i, l := range lengths {
		if !tenths && l%(10*fitcheck.Millimetre) != 0 {
			return nil
		}
		words[i] = strconv.FormatFloat(float64(l/fitcheck.Millimetre)/10, 'f', -1, 64)
	}
	return words
}
