package email

import (
	"fmt"
	"html"
	"regexp"
	"strings"
)

var (
	webLink = regexp.MustCompile(`https://[^\s<>"']+[^\s<>"'.,;:!?)]`)
	bullet  = regexp.MustCompile(`^\s*(?:[-*•]|\d{1,2}[.)])\s+`)
)

// twin is the same text as HTML: paragraphs, lists, links, pictures; no more, so that
// it looks right everywhere and like a letter, not an advertisement.
func twin(text, language string, pictures []Picture) string {
	var b strings.Builder
	fmt.Fprintf(&b, "<!DOCTYPE html>\n<html lang=\"%s\"><head><meta charset=\"utf-8\"></head>\n", html.EscapeString(language))
	b.WriteString("<body style=\"font:16px/1.5 sans-serif;max-width:36em;color:#222\">\n")
	text = strings.ReplaceAll(crlf(text), "\r\n", "\n")
	for paragraph := range strings.SplitSeq(text, "\n\n") {
		if paragraph = strings.Trim(paragraph, "\n"); paragraph != "" {
			b.WriteString(block(strings.Split(paragraph, "\n")))
		}
	}
	for _, p := range pictures {
		fmt.Fprintf(&b, "<p><img src=\"cid:%s\" alt=\"%s\" style=\"max-width:100%%\"></p>\n",
			html.EscapeString(p.ID), html.EscapeString(oneLine(p.Alt)))
	}
	b.WriteString("</body></html>\n")
	return b.String()
}

// block writes lines as a paragraph, or as a list where all after the first are items.
func block(lines []string) string {
	items := len(lines)
	for items > 0 && bullet.MatchString(lines[items-1]) {
		items--
	}
	var b strings.Builder
	if items > 0 {
		var said []string
		for _, l := range lines[:items] {
			said = append(said, inline(l))
		}
		b.WriteString("<p>" + strings.Join(said, "<br>\n") + "</p>\n")
	}
	if items == len(lines) {
		return b.String()
	}
	tag := "ul"
	if first := strings.TrimSpace(lines[items]); first[0] >= '0' && first[0] <= '9' {
		tag = "ol"
	}
	b.WriteString("<" + tag + ">\n")
	for _, l := range lines[items:] {
		b.WriteString("<li>" + inline(bullet.ReplaceAllString(l, "")) + "</li>\n")
	}
	b.WriteString("</" + tag + ">\n")
	return b.String()
}

// inline escapes everything, and makes links of https addresses.
func inline(s string) string {
	var b strings.Builder
	at := 0
	for _, m := range webLink.FindAllStringIndex(s, -1) {
		link := html.EscapeString(s[m[0]:m[1]])
		b.WriteString(html.EscapeString(s[at:m[0]]))
		fmt.Fprintf(&b, "<a href=\"%s\">%s</a>", link, link)
		at = m[1]
	}
	b.WriteString(html.EscapeString(s[at:]))
	return b.String()
}
