package sms

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// ToGSM7 spells a text with characters of GSM-7, so that one fraction or curly quote
// doesn't more than double its price. What GSM-7 has stays: é ñ ü ä ö à ¡ ¿ among
// others. Of the Spanish accents á í ó ú (and Á Í Ó Ú) it has none, and they lose
// their accent: a Spanish reader takes "medicion" at once, while the accent would cut
// the text at 70 characters. What has no other spelling, such as an emoji or another
// alphabet, is kept, and the text then goes as UCS-2.
func ToGSM7(text string) string {
	if AllGSM7(text) {
		return text
	}
	var b strings.Builder
	b.Grow(len(text) + 8)
	before := rune(0)
	for _, r := range norm.NFC.String(text) {
		s := spell(r, before)
		b.WriteString(s)
		if s != "" {
			before = lastRune(s)
		}
	}
	return b.String()
}

// spell gives one character in GSM-7, or as it is where there is no way.
func spell(r, before rune) string {
	if septets(r) > 0 {
		return string(r)
	}
	if s, ok := fractions[r]; ok {
		if unicode.IsDigit(before) {
			return " " + s // 52½ is 52 1/2, not 521/2
		}
		return s
	}
	if s, ok := spellings[r]; ok {
		if r == '°' && (before == ' ' || before == 0) {
			return strings.TrimSpace(s)
		}
		return s
	}
	if invisible(r) || (looseAccent(r) && septets(before) > 0) {
		return ""
	}
	if unicode.Is(unicode.Zs, r) {
		return " "
	}
	return decomposed(r)
}

// invisible characters: soft hyphen, zero-width space and non-joiner, directions, byte
// order mark. The joiner and variation selectors stay, for emoji are built with them.
func invisible(r rune) bool {
	return r == '\u00AD' || r == '\u200B' || r == '\u200C' || r == '\u200E' || r == '\u200F' ||
		r == '\u2060' || r == '\uFEFF' || (r >= '\u202A' && r <= '\u202E')
}

// looseAccent is a mark that belongs on the letter before it and found none to join to.
func looseAccent(r rune) bool { return r >= '\u0300' && r <= '\u036F' }

// decomposed takes accents and compatibility forms off, where all that is left is GSM-7.
func decomposed(r rune) string {
	var b strings.Builder
	for _, d := range norm.NFKD.String(string(r)) {
		if unicode.Is(unicode.Mn, d) {
			continue
		}
		if septets(d) == 0 {
			return string(r)
		}
		b.WriteRune(d)
	}
	if b.Len() == 0 {
		return string(r)
	}
	return b.String()
}

func lastRune(s string) rune {
	r := []rune(s)
	return r[len(r)-1]
}
