package email

import (
	"regexp"
	"strings"
)

// What machines add to what a person wrote. All patterns: seen in practice, no source.
var (
	footer = regexp.MustCompile(`(?i)^\W{0,3}((sent|composed|written) (from|via|with|using|on) (my|mail\b|yahoo|outlook|gmail|aol|proton|` +
		`samsung|iphone|ipad|android|mobile|a mobile|an? \w+ (phone|device|smartphone)|the \w+ (mail |email )?app)|` +
		`get \w+ for (ios|android|mac|windows|mobile)\b|` +
		`envi(ado|é) (desde|con|por|mediante) (mi|un|una|el|la|outlook|correo|yahoo|gmail|iphone|android)|obten(er|ga) \w+ para (ios|android)|` +
		`(sent|enviado) (from|do|da|desde) (meu|minha)|gesendet (von|mit) |envoyé (de|depuis) mon )`)
	legalText = regexp.MustCompile(`(?i)(confidential(ity)? (notice|note|statement)|(if you are|are) not the (intended|named) (recipient|addressee)|` +
		`(intended|solely|only) for (the )?(use of )?(the )?(named |intended )?(addressee|recipient|individual|person)|` +
		`(e-?mail|message|communication|transmission)( and any (attachments?|files)[^.]{0,40})?,? (is|are|may be|may contain)[^.]{0,60}(confidential|privileged)|` +
		`(please )?consider the environment before printing|scanned (for|by) .{0,40}(virus|malware|antivirus)|virus-free|` +
		`aviso (legal|de confidencialidad)|este (mensaje|correo)[^.]{0,80}(confidencial|destinatario)|si (usted )?no es el destinatario|` +
		`any (unauthorized )?(review|use|disclosure|dissemination|distribution)[^.]{0,80}(prohibited|strictly))`)
	legalTitle = regexp.MustCompile(`(?i)^\W{0,4}(confidentiality (notice|note|statement)|legal (notice|disclaimer)|disclaimer|privileged and confidential|` +
		`aviso (legal|de confidencialidad))\W{0,3}:?\s*`)
	banner = regexp.MustCompile(`(?i)^\W{0,4}(caution|warning|external( (e-?mail|sender|message))?|attention|notice|precaución|atención)\W{0,6}.{0,60}` +
		`(external|outside|originated|externo|fuera de)|^\W{0,3}\[?external\]?\W{0,3}$|you don't often get email from`)
)

// markFooters marks the line that a phone's or a program's maker adds at the end.
func markFooters(c []textLine) {
	for {
		i := lastFresh(c)
		if i < 0 {
			return
		}
		text := strings.TrimSpace(unmark(c[i].text))
		if len(text) > 120 || !footer.MatchString(text) || measures(text) {
			return
		}
		c[i].zone = signature
	}
}

// maxTitles bounds how many titles of disclaimers are followed into the text below them:
// each may be looked at over thousands of bytes, and a stranger may send any number.
const maxTitles = 8

// markLegal marks warnings before and disclaimers after the text. A title such as
// "CONFIDENTIALITY NOTICE" takes all after it along; else only the paragraph goes.
func markLegal(c []textLine) {
	first, said := true, false // said: something new stands above
	titles := 0
	for start := 0; start < len(c); {
		if blank(c[start]) {
			start++
			continue
		}
		end := start
		for end < len(c) && !blank(c[end]) {
			end++
		}
		paragraph := joined(c[start:end])
		switch {
		case first && len(paragraph) < 700 && banner.MatchString(paragraph):
			markBanner(c[start:end])
		case said && titles < maxTitles && legalTitle.MatchString(paragraph):
			titles++
			if legalText.MatchString(joined(c[start:])) {
				markRest(c[start:], legal)
				return
			}
		case legalText.MatchString(paragraph) && !measures(paragraph):
			markRest(c[start:end], legal)
		default:
			first, said = false, true
		}
		start = end
	}
}

// markBanner marks the warning alone where the text follows in the next line.
func markBanner(c []textLine) {
	for i := range c {
		c[i].zone = legal
		if rest := joined(c[i+1:]); !banner.MatchString(rest) && !continues(c[i].text, rest) {
			return
		}
	}
}

// continues reports whether a line goes on in the next.
func continues(line, rest string) bool {
	line = strings.TrimSpace(line)
	return rest != "" && line != "" && !strings.ContainsAny(line[len(line)-1:], ".!]:")
}

// joined makes one line of the first few thousand bytes of several.
func joined(c []textLine) string {
	var b strings.Builder
	for _, l := range c {
		if b.Len() > 4000 {
			break
		}
		b.WriteString(strings.TrimSpace(l.text))
		b.WriteByte(' ')
	}
	return strings.TrimSpace(b.String())
}
