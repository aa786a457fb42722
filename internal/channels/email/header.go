package email

import (
	"net/mail"
	"regexp"
	"strings"
	"unicode"

	"github.com/emersion/go-message"
	gomail "github.com/emersion/go-message/mail"
)

const (
	maxReferences = 100
	maxField      = 998 // RFC 5322 section 2.1.1
	maxAddresses  = 16 << 10
)

func readHeader(m *Message, raw message.Header) {
	h := gomail.Header{Header: raw}
	m.From, m.Name = address(raw, "From")
	m.ReplyTo, _ = address(raw, "Reply-To")
	m.ReturnPath = returnPath(raw)
	m.To = addresses(raw)
	m.Subject = headerText(raw, "Subject")
	m.ID = messageID(raw, "Message-Id")
	if ids := messageIDs(raw, "In-Reply-To"); len(ids) > 0 {
		m.InReplyTo = ids[0]
	}
	m.References = messageIDs(raw, "References")
	if d, err := h.Date(); err == nil && d.Year() > 1970 {
		m.Date = d.UTC()
	}
	m.AuthResults = authResults(raw)
}

// headerText gives a field without line breaks or control characters, so that it can be
// shown, and put into another header, as it is.
func headerText(h message.Header, key string) string { return fieldText(h, key, maxField) }

func fieldText(h message.Header, key string, most int) string {
	s, err := h.Text(key)
	if err != nil {
		s = h.Get(key)
	}
	return clip(oneLine(s), most)
}

// oneLine makes every run of white space, line breaks and control characters one space.
func oneLine(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
	return strings.Join(strings.Fields(s), " ")
}

func clip(s string, n int) string {
	if len(s) <= n {
		return s
	}
	return strings.ToValidUTF8(s[:n], "")
}

// address reads the first address of a field; what RFC 5322 does not allow but is seen
// in practice (a bare "<a@b>" among other words, a trailing dot) is read too.
func address(h message.Header, key string) (addr, name string) {
	value := headerText(h, key)
	if list := addressList(value); len(list) > 0 {
		return strings.ToLower(list[0].Address), oneLine(list[0].Name)
	}
	open, end := strings.LastIndex(value, "<"), strings.LastIndex(value, ">")
	if open >= 0 && end > open {
		if a := bareAddress(value[open+1 : end]); a != "" {
			return a, oneLine(strings.Trim(value[:open], ` "`))
		}
	}
	for _, word := range strings.Fields(value) {
		if a := bareAddress(strings.Trim(word, `<>,;."`)); a != "" {
			return a, ""
		}
	}
	return "", ""
}

// aroundDots is the white space that RFC 5322 section 4.4 once allowed within an address.
var aroundDots = regexp.MustCompile(`\s*([.@])\s*`)

// addressList reads a list; nil where it can't. With comments first, for an old form
// has the name in one: "dana@example.com (Dana Fields)".
func addressList(value string) []*mail.Address {
	list, err := mail.ParseAddressList(value)
	if err == nil {
		return list
	}
	value = withoutComments(value)
	if list, err = mail.ParseAddressList(value); err == nil {
		return list
	}
	if list, err = mail.ParseAddressList(aroundDots.ReplaceAllString(value, "$1")); err == nil {
		return list
	}
	return nil
}

// withoutComments takes "(comments)" out, RFC 5322 section 3.2.2, which the standard
// library takes only after an address. Those in quoted strings stay.
func withoutComments(s string) string {
	if !strings.Contains(s, "(") {
		return s
	}
	var b strings.Builder
	depth, quoted := 0, false
	for i := 0; i < len(s); i++ {
		c := s[i]
		switch {
		case c == '\\' && i+1 < len(s):
			if depth == 0 {
				b.WriteString(s[i : i+2])
			}
			i++
			continue
		case c == '"' && depth == 0:
			quoted = !quoted
		case c == '(' && !quoted:
			depth++
		case c == ')' && !quoted && depth > 0:
			depth--
			continue
		}
		if depth == 0 {
			b.WriteByte(c)
		}
	}
	return strings.TrimSpace(b.String())
}

// bareAddress is the address that words hold, lower case; "" where they hold none.
func bareAddress(words string) string {
	a, err := mail.ParseAddress(words)
	if err != nil {
		return ""
	}
	return strings.ToLower(a.Address)
}

func addresses(h message.Header) []string {
	var all []string
	for _, key := range []string{"To", "Cc", "Delivered-To", "X-Original-To"} {
		list := addressList(fieldText(h, key, maxAddresses))
		for _, a := range list[:min(len(list), 50)] {
			all = append(all, strings.ToLower(a.Address))
		}
	}
	return all
}

// returnPath is "<>" for the null sender, RFC 5321 section 4.5.5, and "" where the field
// is missing.
func returnPath(h message.Header) string {
	if !h.Has("Return-Path") {
		return ""
	}
	v := strings.TrimSpace(h.Get("Return-Path"))
	if v == "<>" || v == "" {
		return "<>"
	}
	return strings.ToLower(strings.Trim(v, "<> "))
}

func messageID(h message.Header, key string) string {
	if ids := messageIDs(h, key); len(ids) > 0 {
		return ids[0]
	}
	return clip(strings.Trim(oneLine(h.Get(key)), "<>"), 255)
}

// messageIDs reads "<a@b> <c@d>" leniently: whatever stands in angle brackets, without
// white space. The library's own reader gives up on the first odd one.
func messageIDs(h message.Header, key string) []string {
	var ids []string
	rest := h.Get(key)
	for len(ids) < maxReferences {
		_, after, ok := strings.Cut(rest, "<")
		if !ok {
			break
		}
		id, tail, ok := strings.Cut(after, ">")
		if !ok {
			break
		}
		id = strings.Join(strings.Fields(oneLine(id)), "")
		if id != "" && len(id) <= 255 {
			ids = append(ids, id)
		}
		rest = tail
	}
	return ids
}
