package reading

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxRunes bounds what is read of one message; no text message is longer, and a
// longer mail says what matters at its top.
const maxRunes = 4000

// otherLetter stands for a letter of a script that is not Latin: part of a word that
// no list knows.
const otherLetter = 0x1a

// folded is a message in plain ASCII: lower case, without accents, one kind of quote,
// dash and times sign, fractions written out. from and to lead each of its bytes back
// to the original.
type folded struct {
	text     string
	from, to []int32
}

type folder struct {
	src      string
	buf      []byte
	from, to []int32
	at, next int // bytes of the rune being folded
}

func fold(src string) folded {
	f := folder{src: src, buf: make([]byte, 0, len(src)+8)}
	ends := make([]int32, 2*(len(src)+8))
	f.from, f.to = ends[:0:len(src)+8], ends[len(src)+8:][:0]
	runes := 0
	for f.at < len(src) && runes < maxRunes {
		c := src[f.at]
		f.next = f.at + 1
		if c < utf8.RuneSelf {
			f.ascii(c)
		} else {
			r, size := utf8.DecodeRuneInString(src[f.at:])
			f.next = f.at + size
			f.rune(r)
		}
		f.at = f.next
		runes++
	}
	return folded{text: string(f.buf), from: f.from, to: f.to}
}

func (f *folder) put(c byte) {
	f.buf = append(f.buf, c)
	f.from = append(f.from, int32(f.at))
	f.to = append(f.to, int32(f.next))
}

func (f *folder) puts(s string) {
	for i := 0; i < len(s); i++ {
		f.put(s[i])
	}
}

func (f *folder) ascii(c byte) {
	switch {
	case 'A' <= c && c <= 'Z':
		f.put(c + 'a' - 'A')
	case c == '\'' || c == '`':
		f.quote()
	case c == '_':
		f.put('-')
	case c == '\\':
		f.put('/')
	case c == '<' && f.tag():
		f.put(' ')
	case c == '\r' || c == '\t' || c < ' ' && c != '\n':
		f.put(' ')
	case c == 0x7f:
	default:
		f.put(c)
	}
}

// tag skips a mark of HTML that some programs send along: "<b>", "</div>", "<br/>".
func (f *folder) tag() bool {
	rest := f.src[f.next:min(len(f.src), f.next+20)]
	end := strings.IndexByte(rest, '>')
	if end < 1 || rest[0] != '/' && !isLetter(rest[0]|0x20) {
		return false
	}
	f.next += end + 1
	return true
}

// quote folds an apostrophe: away inside a word, two in a row to an inch mark.
func (f *folder) quote() {
	n := len(f.buf)
	if n > 0 && isLetter(f.buf[n-1]) && f.letterAhead() {
		return
	}
	if n > 0 && f.buf[n-1] == '\'' && int(f.to[n-1]) == f.at {
		f.buf[n-1], f.to[n-1] = '"', int32(f.next)
		return
	}
	f.put('\'')
}

func (f *folder) letterAhead() bool {
	r, _ := utf8.DecodeRuneInString(f.src[f.next:])
	return unicode.IsLetter(r)
}

func (f *folder) digitAhead() bool {
	rest := strings.TrimLeftFunc(f.src[f.next:min(len(f.src), f.next+8)], unicode.IsSpace)
	return rest != "" && isDigit(rest[0])
}

func (f *folder) rune(r rune) {
	switch {
	case 0x300 <= r && r <= 0x36f || unicode.Is(unicode.Cf, r) || 0xfe00 <= r && r <= 0xfe0f ||
		0x1f3fb <= r && r <= 0x1f3ff || r == 0x20e3:
		return // accents on their own, joiners, skin tones
	case 0xff01 <= r && r <= 0xff5e:
		f.ascii(byte(r - 0xff01 + '!'))
		return
	case unicode.IsSpace(r):
		f.put(' ')
		return
	}
	if s, ok := foldSign(r); ok {
		f.sign(s)
		return
	}
	if s := foldLetter(r); s != "" {
		f.puts(s)
		return
	}
	switch {
	case r == 'ø' || r == 'Ø' || r == '⌀':
		if f.digitAhead() {
			f.puts(" dia ")
			return
		}
		f.put('o')
	case unicode.IsLetter(r):
		f.put(otherLetter)
	default:
		f.put(' ')
	}
}

func (f *folder) sign(s string) {
	if s == "'" {
		f.quote()
		return
	}
	f.puts(s)
}

// foldSign folds what people's keyboards put in the place of plain signs.
func foldSign(r rune) (string, bool) {
	switch r {
	case '’', '‘', '′', '´', '‛', 'ʹ', 'ʼ', '‵':
		return "'", true
	case '“', '”', '„', '″', '‟', '〃', 'ʺ', '‶', '«', '»':
		return `"`, true
	case '‐', '‑', '‒', '–', '—', '―', '−', '⁃':
		return "-", true
	case '×', '✕', '✖', '⨯', '╳', '✗', 'х', 'Х':
		return "*", true
	case '⁄', '∕', '÷':
		return "/", true
	case '…':
		return "...", true
	case '±':
		return "+/-", true
	case '≈', '∼', '≃', '～':
		return "~", true
	case '•', '·', '●', '▪', '◦':
		return ";", true
	case '°', 'º':
		return " deg", true
	case '¿', '¡':
		return " ", true
	case '❤', '👍', '👌', '✅', '✔', '✓', '🆗', '💯':
		return " thumbsup ", true
	case '👎', '❌', '🚫':
		return " thumbsdown ", true
	}
	s, ok := foldFraction(r)
	return s, ok
}

func foldFraction(r rune) (string, bool) {
	switch r {
	case '½':
		return " 1/2", true
	case '¼':
		return " 1/4", true
	case '¾':
		return " 3/4", true
	case '⅛':
		return " 1/8", true
	case '⅜':
		return " 3/8", true
	case '⅝':
		return " 5/8", true
	case '⅞':
		return " 7/8", true
	case '⅓':
		return " 1/3", true
	case '⅔':
		return " 2/3", true
	}
	return "", false
}

// foldLetter writes an accented Latin letter plainly.
func foldLetter(r rune) string {
	switch r {
	case 'á', 'à', 'â', 'ä', 'ã', 'å', 'ā', 'ă', 'ą', 'Á', 'À', 'Â', 'Ä', 'Ã', 'Å', 'Ā', 'Ă', 'Ą':
		return "a"
	case 'é', 'è', 'ê', 'ë', 'ē', 'ę', 'ě', 'É', 'È', 'Ê', 'Ë', 'Ē', 'Ę', 'Ě':
		return "e"
	case 'í', 'ì', 'î', 'ï', 'ī', 'ı', 'Í', 'Ì', 'Î', 'Ï', 'Ī', 'İ':
		return "i"
	case 'ó', 'ò', 'ô', 'ö', 'õ', 'ō', 'ő', 'Ó', 'Ò', 'Ô', 'Ö', 'Õ', 'Ō', 'Ő', 'ơ', 'Ơ':
		return "o"
	case 'ú', 'ù', 'û', 'ü', 'ū', 'ů', 'ű', 'ư', 'Ú', 'Ù', 'Û', 'Ü', 'Ū', 'Ů', 'Ű', 'Ư':
		return "u"
	case 'ñ', 'Ñ', 'ń', 'Ń', 'ň', 'Ň':
		return "n"
	case 'ç', 'Ç', 'ć', 'Ć', 'č', 'Č':
		return "c"
	case 'š', 'Š', 'ś', 'Ś', 'ş', 'Ş':
		return "s"
	case 'ž', 'Ž', 'ź', 'Ź', 'ż', 'Ż':
		return "z"
	case 'ł', 'Ł':
		return "l"
	case 'ğ', 'Ğ':
		return "g"
	case 'đ', 'Đ', 'ð', 'Ð':
		return "d"
	case 'ý', 'ÿ', 'Ý':
		return "y"
	case 'ř', 'Ř':
		return "r"
	case 'ß':
		return "ss"
	case 'æ', 'Æ':
		return "ae"
	case 'œ', 'Œ':
		return "oe"
	}
	return ""
}

func isLetter(c byte) bool { return 'a' <= c && c <= 'z' || c == otherLetter }

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
