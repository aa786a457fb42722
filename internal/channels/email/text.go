package email

import "strings"

// text is the whole readable text of the mail itself, parts in reading order, HTML
// converted. Where the mail has HTML, pictures stand in it as marks.
func (w *walker) text() string {
	if w.top == nil {
		return ""
	}
	return rendered(w.top.plain)
}

// attached is the readable text of mails that are attached; not of delivery reports.
func (w *walker) attached() string {
	if w.inner == nil || w.status != nil {
		return ""
	}
	return strings.TrimSpace(unmark(rendered(w.inner.plain)))
}

func rendered(parts []textPart) string {
	var b strings.Builder
	for _, p := range parts {
		body := p.body
		if p.html {
			body = htmlText(body)
		}
		b.WriteString(strings.TrimRight(body, " \r\n"))
		b.WriteString("\n\n")
	}
	return b.String()
}
