package email

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// Mail programs announce the mail below in words; there is no standard for it. All
// patterns: seen in practice, no source.
var (
	originalMark = regexp.MustCompile(`(?i)^\W{0,3}[-_=*]{2,}\s*(original message|original appointment|reply message|mensaje original|` +
		`mensagem original|ursprüngliche nachricht|message d['’]origine|messaggio originale|oorspronkelijk bericht)\s*[-_=*]*\W{0,3}$`)
	forwardMark = regexp.MustCompile(`(?i)^\W{0,3}([-_=*]{2,}\s*(forwarded message|forwarded mail|mensaje reenviado|mensagem encaminhada|` +
		`weitergeleitete nachricht|message transféré|messaggio inoltrato)\b.*|begin forwarded message:?|inicio del mensaje reenviado:?)$`)
	fromField  = regexp.MustCompile(`(?i)^\W{0,3}(from|de|von|da|van|från|fra)\W{0,3}:\W{0,3}\s*\S`)
	otherField = regexp.MustCompile(`(?i)^\W{0,3}(sent|date|to|subject|cc|reply-to|enviado|enviado el|fecha|para|asunto|gesendet|datum|an|betreff|` +
		`envoyé|objet|à|data|assunto|oggetto|verzonden|onderwerp|aan)\W{0,3}:`)
	wrote = regexp.MustCompile(`(?i)[\s)>](wrote|writes|escribió|escribio|schrieb|a écrit|escreveu|ha scritto|schreef|skrev|napisał)(\s[^.!?]{0,120})?:\s*$`)
	when  = regexp.MustCompile(`\b(19|20)\d\d\b|\d{1,2}[:.h]\d\d\b|\d{1,2}/\d{1,2}/\d\d`)
	rule  = regexp.MustCompile(`^[_\-=*]{5,}$`)
	// "<dana@example.com>:" ends the announcement of some programs that say no "wrote".
	addressEnd = regexp.MustCompile(`<[^<>\s]+@[^<>\s]+>\s*:\s*$`)
)

const (
	introLines = 4   // an announcement is broken into this many lines at most
	introBytes = 500 // and is this long at most
)

// markOriginal finds the mail that stands whole and without quote marks at the end.
func markOriginal(lines []textLine) {
	for i := range lines {
		if lines[i].depth > 0 || lines[i].zone != fresh || blank(lines[i]) {
			continue
		}
		text := strings.TrimSpace(lines[i].text)
		if forwardMark.MatchString(text) {
			markRest(lines[i:], forwarded)
			return
		}
		if originalMark.MatchString(text) || headerBlock(lines[i:]) || unmarkedIntro(lines[i:]) {
			markRest(lines[i:], quote)
			return
		}
	}
}

func markRest(lines []textLine, z zone) {
	for i := range lines {
		lines[i].zone = z
	}
}

// headerBlock is "From: … Sent: … Subject: …", with or without a rule above it.
func headerBlock(lines []textLine) bool {
	if rule.MatchString(strings.TrimSpace(lines[0].text)) {
		lines = lines[1:]
		for len(lines) > 0 && blank(lines[0]) {
			lines = lines[1:]
		}
	}
	if len(lines) == 0 || lines[0].depth > 0 || !fromField.MatchString(lines[0].text) {
		return false
	}
	fields := 0
	for _, l := range lines[1:min(len(lines), 8)] {
		if otherField.MatchString(l.text) {
			fields++
		}
	}
	return fields >= 2
}

// unmarkedIntro is "On … wrote:" above a text that bears no quote marks: all below it
// is the earlier mail.
func unmarkedIntro(lines []textLine) bool {
	n := introAt(lines)
	if n == 0 {
		return false
	}
	for _, l := range lines[n:] {
		if !blank(l) {
			return l.depth == 0
		}
	}
	return false
}

// introAt is how many lines an announcement takes that begins at the first; 0: none does.
func introAt(lines []textLine) int {
	joined := ""
	for n := 1; n <= min(introLines, len(lines)); n++ {
		l := lines[n-1]
		if l.depth != lines[0].depth || blank(l) {
			return 0
		}
		joined = strings.TrimSpace(joined + " " + strings.TrimSpace(l.text))
		if len(joined) > introBytes {
			return 0
		}
		if strings.HasSuffix(joined, ":") && isIntro(joined) {
			return n
		}
	}
	return 0
}

func isIntro(s string) bool {
	if !utf8.ValidString(s) {
		return false
	}
	if addressEnd.MatchString(s) && when.MatchString(s) {
		return true
	}
	return wrote.MatchString(s) && (when.MatchString(s) || strings.Contains(s, "@"))
}

// markQuotes marks what bears quote marks, and the announcement above it.
func markQuotes(lines []textLine) {
	for i := 0; i < len(lines); i++ {
		l := &lines[i]
		if l.zone != fresh {
			continue
		}
		if l.depth > 0 {
			l.zone = quote
			continue
		}
		if blank(*l) {
			continue
		}
		n := introAt(lines[i:])
		for j := range n {
			lines[i+j].zone = intro
		}
		i += max(n-1, 0)
	}
	joinQuotes(lines)
}

// joinQuotes gives the blank lines within a quote to the quote.
func joinQuotes(lines []textLine) {
	last := -1
	for i := range lines {
		if blank(lines[i]) {
			continue
		}
		if lines[i].zone == quote && last >= 0 && lines[last].zone == quote {
			markRest(lines[last+1:i], quote)
		}
		last = i
	}
}
