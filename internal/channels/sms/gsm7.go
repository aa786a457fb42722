package sms

// The tables of 3GPP TS 23.038 section 6.2.1, from memory; compared character by
// character with an independent counter in segments_test.go.
const (
	gsmBasic = "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ" +
		" !\"#¤%&'()*+,-./0123456789:;<=>?" +
		"¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§" +
		"¿abcdefghijklmnopqrstuvwxyzäöñüà"
	gsmExtension = "\f^{}\\[~]|€"
)

// septets is what a character costs in GSM-7: 1, 2 by way of the escape, or 0 where
// it can't be said.
func septets(r rune) int {
	if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= ' ' && r <= '?' {
		return 1
	}
	for _, b := range gsmBasic {
		if b == r {
			return 1
		}
	}
	for _, e := range gsmExtension {
		if e == r {
			return 2
		}
	}
	return 0
}
