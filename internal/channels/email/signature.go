package email

import (
	"regexp"
	"strings"
	"unicode"
)

var (
	closing = regexp.MustCompile(`(?i)^[\s–—-]*(many thanks|thanks?( you)?( so much| very much| again| a lot| in advance)?|thx|ty|tks|` +
		`(best|kind|kindest|warm|warmest)?\s*regards|best( wishes)?|all the best|sincerely( yours)?|yours( truly| sincerely)?|cheers|` +
		`respectfully|cordially|take care|(muchas |mil )?gracias( de antemano)?|(un )?saludos?( cordial(es)?)?|atentamente|` +
		`cordialmente)\s*[,.!–—-]*$`)
	// "Thanks, Dana": the closing and the name on one line.
	closingName = regexp.MustCompile(`(?i)^(many thanks|thanks( again)?|thank you|regards|best|cheers|gracias|saludos)\s*[,!.–—-]+\s*(\p{L}[\p{L}.'-]*(\s\p{L}[\p{L}.'-]*){0,2})$`)
	postscript  = regexp.MustCompile(`(?i)^p\.?\s?s\b`)
	measure     = regexp.MustCompile(`(?i)\d\s*("|”|″|''|'|′|x\s*\d|×|by\s+\d|in\b|inch|ft\b|feet|foot|mm\b|cm\b|pulgadas)|\d/\d{1,2}\b|[½¼¾⅛⅜⅝⅞]`)
	phone       = regexp.MustCompile(`(\+?1[\s.-]?)?\(?\d{3}\)?[\s.·-]{0,2}\d{3}[\s.·-]\d{4}`)
	webOrMail   = regexp.MustCompile(`(?i)[^\s@]+@[^\s@]+\.[a-z]{2,}|\b(https?://|www\.)\S+|\b[a-z0-9-]+\.(com|net|org|example|test)\b`)
)

// maxSignature is the most lines that a signature without its mark is taken to have.
const maxSignature = 12

// markSignature finds the signature at the end of a run of new lines: after "-- " (RFC
// 3676 section 4.3), after a sign-off, or by the sender's name. A sign-off alone is kept
// if nothing else is left, for it is what the person wrote.
func markSignature(c []textLine, sender string) {
	for i := range c {
		if c[i].zone == fresh && delimiter(c[i].text) && (c[i].text == "-- " || short(c[i+1:])) {
			markRest(c[i:], signature)
			break
		}
	}
	end := lastFresh(c) + 1
	for i := end - 1; i >= 0 && i >= end-maxSignature-4; i-- {
		text := strings.TrimSpace(c[i].text)
		if c[i].zone != fresh || !anyFresh(c[:i]) {
			continue
		}
		if closingName.MatchString(text) && allBlank(c[i+1:end]) {
			c[i].zone = signature
			return
		}
		if closing.MatchString(text) && markSignOff(c[i:]) {
			return
		}
	}
	markNamed(c[:end], sender)
}

func delimiter(s string) bool {
	t := strings.TrimSpace(s)
	return t == "--" || t == "—" || t == "__" || t == "---"
}

// short tells a signature after "--" without its space from a dashed line in a text.
func short(lines []textLine) bool {
	n := 0
	for _, l := range lines {
		if blank(l) || l.zone != fresh {
			continue
		}
		if n++; n > maxSignature || sentence(l.text) || measures(l.text) {
			return false
		}
	}
	return n > 0
}

// markSignOff marks a closing and the lines after it, as far as they look like a
// signature: a name first, then titles, numbers and addresses. A postscript stays.
func markSignOff(c []textLine) bool {
	end, seen := 1, 0
	for i := 1; i < len(c) && seen < maxSignature; i++ {
		text := strings.TrimSpace(unmark(c[i].text))
		if text == "" {
			if seen > 0 && len(marks(c[i].text)) > 0 {
				end = i + 1 // a logo below the name
			}
			continue
		}
		if seen == 0 && !nameLike(text) && !contact(text) {
			return false
		}
		if !signatureLike(text) {
			break
		}
		seen++
		end = i + 1
	}
	if seen == 0 {
		return false
	}
	markFresh(c[:end], signature)
	return true
}

// markNamed marks a last paragraph that begins with the sender's own name: alone, or
// with the ways to reach him.
func markNamed(c []textLine, sender string) {
	start := len(c)
	for start > 0 && !blank(c[start-1]) && c[start-1].zone == fresh {
		start--
	}
	last := c[start:]
	if i := lastFresh(c[:start]); i >= 0 && strings.HasSuffix(strings.TrimSpace(c[i].text), ":") {
		return // "Ship to:" and the like: the block was asked for
	}
	if len(last) == 0 || len(last) > maxSignature || !anyFresh(c[:start]) || !ownName(last[0].text, sender) {
		return
	}
	reachable := len(last) == 1
	for _, l := range last[1:] {
		if !signatureLike(strings.TrimSpace(unmark(l.text))) {
			return
		}
		reachable = reachable || contact(l.text)
	}
	if reachable {
		markFresh(last, signature)
	}
}

// ownName reports whether a line is the sender's name, or a part of it.
func ownName(text, sender string) bool {
	if !nameLike(strings.Trim(text, " -–—~,.")) {
		return false
	}
	known := map[string]bool{}
	for _, w := range words(sender) {
		known[w] = true
	}
	for _, w := range words(text) {
		if known[w] {
			return true
		}
	}
	return false
}

func words(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' })
}

// nameLike: one to five words without digits, each capital or very short.
func nameLike(s string) bool {
	fields := strings.Fields(strings.Trim(s, "-–—~ "))
	if len(fields) == 0 || len(fields) > 5 || len(s) > 60 || strings.ContainsAny(s, "0123456789?!:;=") {
		return false
	}
	small := 0
	for _, f := range fields {
		if first := []rune(f)[0]; unicode.IsLower(first) {
			small++
		}
	}
	return small == 0 || (len(fields) <= 2 && small == len(fields)) || (len(fields) > 2 && small == 1)
}

// signatureLike: what stands in signatures beside the name.
func signatureLike(s string) bool {
	if s == "" || contact(s) {
		return true
	}
	return !postscript.MatchString(s) && !sentence(s) && !measures(s) && !numbersOnly(s)
}

func contact(s string) bool {
	return len(s) <= 120 && (phone.MatchString(s) || webOrMail.MatchString(s)) && !sentence(s)
}

// spoken are words of sentences that signatures hardly have.
var spoken = regexp.MustCompile(`(?i)\b(i|we|it|it's|i'm|is|are|am|was|need|want|have|has|can|will|please|you|es|son|tengo|tenemos|necesito|quiero|estamos)\b`)

// sentence: many words, an end mark after several, or words that only sentences have.
func sentence(s string) bool {
	n := len(strings.Fields(s))
	return n > 10 || len(s) > 100 || (n >= 4 && strings.ContainsAny(s[len(s)-1:], ".?!")) ||
		(n >= 3 && spoken.MatchString(s))
}

func measures(s string) bool { return !phone.MatchString(s) && measure.MatchString(s) }

func numbersOnly(s string) bool {
	return strings.IndexFunc(s, unicode.IsLetter) < 0 && strings.IndexFunc(s, unicode.IsDigit) >= 0
}

func markFresh(c []textLine, z zone) {
	for i := range c {
		if c[i].zone == fresh {
			c[i].zone = z
		}
	}
}

func lastFresh(c []textLine) int {
	for i := len(c) - 1; i >= 0; i-- {
		if c[i].zone == fresh && strings.TrimSpace(unmark(c[i].text)) != "" {
			return i
		}
	}
	return -1
}

func anyFresh(c []textLine) bool { return lastFresh(c) >= 0 }

func allBlank(c []textLine) bool {
	for _, l := range c {
		if l.zone == fresh && strings.TrimSpace(unmark(l.text)) != "" {
			return false
		}
	}
	return true
}
