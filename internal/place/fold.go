package place

import (
	"strings"
	"unicode/utf8"
)

// Plain writes a word or a name in lower-case ASCII letters and digits: no accents,
// apostrophes or dots, one space for everything else. "N.H." is "nh" and "St.Paul"
// is "st paul". Scan and ScanState want their words so.
func Plain(s string) string {
	if isPlain(s) {
		return s
	}
	return strings.TrimRight(string(appendPlain(make([]byte, 0, len(s)), s)), " ")
}

func isPlain(s string) bool {
	for i := 0; i < len(s); i++ {
		if !isAlnum(s[i]) {
			return false
		}
	}
	return true
}

func isAlnum(c byte) bool { return 'a' <= c && c <= 'z' || '0' <= c && c <= '9' }

// appendPlain may leave one space at the end.
func appendPlain(dst []byte, s string) []byte {
	base, run := len(dst), 0 // run: letters since the last space
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		i += size
		if 'A' <= r && r <= 'Z' {
			r += 'a' - 'A'
		}
		switch {
		case r < utf8.RuneSelf && isAlnum(byte(r)):
			dst = append(dst, byte(r))
			run++
		case dropped(r, run):
		default:
			if letters := unaccented(r); letters != "" {
				dst = append(dst, letters...)
				run += len(letters)
			} else if len(dst) > base && run > 0 {
				dst, run = append(dst, ' '), 0
			}
		}
	}
	return dst
}

// dropped reports whether r vanishes without parting what stands around it: an
// apostrophe, a combining accent, a dot between single letters ("N.H.").
func dropped(r rune, run int) bool {
	switch r {
	case '\'', '’', '‘', 'ʻ', 'ʼ', '`', '´':
		return true
	case '.':
		return run <= 1
	}
	return 0x300 <= r && r <= 0x36F
}

// unaccented covers the letters of Spanish, French, German, Hawaiian and Samoan names.
func unaccented(r rune) string {
	switch r {
	case 'á', 'à', 'â', 'ä', 'ã', 'å', 'ā', 'Á', 'À', 'Â', 'Ä', 'Ã', 'Å', 'Ā':
		return "a"
	case 'é', 'è', 'ê', 'ë', 'ē', 'É', 'È', 'Ê', 'Ë', 'Ē':
		return "e"
	case 'í', 'ì', 'î', 'ï', 'ī', 'Í', 'Ì', 'Î', 'Ï', 'Ī':
		return "i"
	case 'ó', 'ò', 'ô', 'ö', 'õ', 'ō', 'ø', 'Ó', 'Ò', 'Ô', 'Ö', 'Õ', 'Ō', 'Ø':
		return "o"
	case 'ú', 'ù', 'û', 'ü', 'ū', 'Ú', 'Ù', 'Û', 'Ü', 'Ū':
		return "u"
	case 'ñ', 'Ñ':
		return "n"
	case 'ç', 'Ç':
		return "c"
	case 'ß':
		return "ss"
	}
	return ""
}

// appendKey appends what all spellings of one town name share: its plain words,
// short forms written out, without spaces. "St. Paul" and "saint paul", "La Crosse"
// and "LaCrosse", "O'Fallon" and "O Fallon" have one key.
func appendKey(dst []byte, name string) []byte {
	var buf [96]byte
	plain := appendPlain(buf[:0], name)
	for start := 0; start < len(plain); {
		end := start
		for end < len(plain) && plain[end] != ' ' {
			end++
		}
		dst = appendWhole(dst, plain[start:end])
		start = end + 1
	}
	return dst
}

// appendWhole appends one plain word, written out where it is a usual short form
// (after the Postal Service's Publication 28, appendix C, and common habit).
func appendWhole(dst, word []byte) []byte {
	if whole := writtenOut(word); whole != "" {
		return append(dst, whole...)
	}
	const borough = "borough" // Marlborough and Marlboro are one town
	if len(word) > len(borough) && string(word[len(word)-len(borough):]) == borough {
		return append(dst, word[:len(word)-len("ugh")]...)
	}
	return append(dst, word...)
}

func writtenOut(word []byte) string {
	if len(word) > 5 {
		return ""
	}
	switch string(word) {
	case "st":
		return "saint"
	case "ste":
		return "sainte"
	case "ft":
		return "fort"
	case "mt":
		return "mount"
	case "mtn":
		return "mountain"
	case "n":
		return "north"
	case "s":
		return "south"
	case "e":
		return "east"
	case "w":
		return "west"
	case "pt":
		return "point"
	case "hts":
		return "heights"
	case "spgs", "spg":
		return "springs"
	case "jct":
		return "junction"
	case "twp":
		return "township"
	case "vlg":
		return "village"
	case "bch":
		return "beach"
	case "ctr":
		return "center"
	case "hls":
		return "hills"
	case "lk":
		return "lake"
	case "pk":
		return "park"
	case "fls":
		return "falls"
	case "crk":
		return "creek"
	case "grv":
		return "grove"
	case "cty":
		return "city"
	}
	return ""
}

// keyOf is appendKey as a string.
func keyOf(name string) string {
	var buf [96]byte
	return string(appendKey(buf[:0], name))
}

// SameName reports whether two spellings name the same town ("St. Paul", "saint paul").
func SameName(a, b string) bool { return keyOf(a) == keyOf(b) }

// Key is what all spellings of one town name share. For telling names apart, not for reading.
func Key(name string) string { return keyOf(name) }
