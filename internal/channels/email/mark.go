package email

import (
	"regexp"
	"strings"
)

// An inline picture stands in text as its content id between two characters of the
// private use area, so that it is known whether it stands in the new text, the quoted
// text or the signature.
const (
	markOpen  = '\uE000'
	markClose = '\uE001'
	// A signature that HTML declares stands between two more.
	signatureOpen  = '\uE002'
	signatureClose = '\uE003'
	// A line of HTML, such as a div, begins and ends where this stands.
	lineEdge = '\uE004'
)

var mark = regexp.MustCompile(string(markOpen) + "([^" + string(markClose) + "\n]{0,255})" + string(markClose))

func pictureMark(contentID string) string {
	return string(markOpen) + clip(oneLine(cleanMarks(contentID)), 255) + string(markClose)
}

func marks(s string) []string {
	if !strings.ContainsRune(s, markOpen) {
		return nil
	}
	var ids []string
	for _, m := range mark.FindAllStringSubmatch(s, -1) {
		ids = append(ids, m[1])
	}
	return ids
}

// cleanMarks keeps a sender from writing marks himself.
func cleanMarks(s string) string {
	if strings.IndexFunc(s, isMark) < 0 {
		return s
	}
	return strings.Map(func(r rune) rune {
		if isMark(r) {
			return -1
		}
		return r
	}, s)
}

func isMark(r rune) bool { return r >= markOpen && r <= lineEdge }

// markDeclared marks the signatures that HTML declares.
func markDeclared(lines []textLine) {
	within := false
	for i := range lines {
		opens := strings.ContainsRune(lines[i].text, signatureOpen)
		closes := strings.ContainsRune(lines[i].text, signatureClose)
		if within || opens || closes {
			lines[i].zone = signature
			lines[i].text = strings.Trim(lines[i].text, string(signatureOpen)+string(signatureClose))
		}
		within = (within || opens) && !closes
	}
}

// unmark leaves the words of a line alone.
func unmark(s string) string {
	if strings.IndexFunc(s, isMark) >= 0 {
		s = cleanMarks(mark.ReplaceAllString(s, ""))
	}
	s = without(s, "[", "]", 200, pictureWords)
	return without(s, "<", ">", 1000, linkAddress)
}

// pictureWords: plain-text twins name their pictures so (seen in practice).
func pictureWords(inside string, _ string) bool {
	before, _, ok := strings.Cut(strings.ToLower(inside), ":")
	switch strings.TrimSpace(before) {
	case "image", "inline image", "imagen", "cid":
		return ok
	}
	return false
}

// linkAddress: they also write a link's address after its words.
func linkAddress(inside, before string) bool {
	scheme, _, ok := strings.Cut(inside, ":")
	return ok && strings.TrimSpace(before) != "" && !strings.ContainsAny(inside, " <") &&
		(scheme == "http" || scheme == "https" || scheme == "mailto")
}

// without takes out what stands between two signs, at most so many bytes apart, where
// drop says so. It goes through the text once.
func without(s, open, end string, most int, drop func(inside, before string) bool) string {
	if !strings.Contains(s, open) {
		return s
	}
	var b strings.Builder
	for {
		before, after, ok := strings.Cut(s, open)
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		window := after[:min(len(after), most+1)]
		n := strings.Index(window, end)
		if n < 0 || !drop(after[:n], before) {
			b.WriteString(open)
			s = after
			continue
		}
		s = after[n+1:]
	}
}
