package staff

import (
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"example.com/intake-bot/internal/db"
)

type findPage struct {
	frame
	Find  string
	Lines []line
	Full  bool // there may be more
}

func (s *Server) find(v *visit) error {
	text := clean(v.r.URL.Query().Get("q"))
	if n := []rune(text); len(n) > 100 {
		text = string(n[:100])
	}
	p := findPage{frame: v.frame("Find a lead"), Find: text}
	ref, words, pieces := terms(text)
	if ref == "" && len(words)+len(pieces) == 0 {
		return v.show(http.StatusOK, "find.html", p)
	}
	lines, err := db.Find(v.ctx, s.opts.Pool, ref, words, pieces, perPage)
	if err != nil {
		return err
	}
	for _, l := range lines {
		p.Lines = append(p.Lines, newLine(l, v))
	}
	p.Full = len(lines) == perPage
	return v.show(http.StatusOK, "find.html", p)
}

var (
	refForm   = regexp.MustCompile(`(?i)^[CDFGHJKMNPQRTWXY34679]{5}$`)
	phoneForm = regexp.MustCompile(`^[+]?[0-9() .-]{4,}$`)
	sizeForm  = regexp.MustCompile(`(?i)^([0-9][0-9 /.-]*?)["']?\s*[x×*]\s*([0-9][0-9 /.-]*?)["']?$`)
)

// terms turns what somebody typed into what is looked for: a ref, beginnings of words,
// and pieces that must be whole.
func terms(text string) (ref string, words, pieces []string) {
	text = strings.ToLower(strings.TrimSpace(text))
	if refForm.MatchString(text) {
		ref = text
	}
	if m := sizeForm.FindStringSubmatch(text); m != nil {
		if size, err := readSize(text); err == nil && size.Width > 0 {
			in := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
			return "", nil, []string{in(size.Width.Inches()) + "x" + in(size.Length.Inches())}
		}
	}
	if digits := onlyDigits(text); phoneForm.MatchString(text) && len(digits) >= 6 {
		return "", []string{strings.TrimPrefix(digits, "1")}, nil
	}
	for _, part := range strings.Fields(text) {
		if strings.Contains(part, "@") {
			words = append(words, part)
			continue
		}
		words = append(words, strings.FieldsFunc(part, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })...)
	}
	return ref, words, pieces
}

func onlyDigits(text string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, text)
}
