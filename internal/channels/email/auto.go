package email

import (
	"regexp"
	"strings"

	"github.com/emersion/go-message"
)

// AutoWhy says how it is known that no person wrote a mail.
type AutoWhy string

const (
	AutoSubmitted AutoWhy = "auto_submitted" // says so itself, RFC 3834 section 5
	AutoNull      AutoWhy = "null_sender"    // empty envelope sender, RFC 3834 section 2
	AutoReport    AutoWhy = "report"         // delivery or read report, RFC 3464, RFC 8098
	AutoList      AutoWhy = "list"           // mailing list, RFC 2369, RFC 2919
	AutoBulk      AutoWhy = "bulk"           // Precedence: bulk, junk or list
	AutoAway      AutoWhy = "away"           // out of office, by fields or words of programs
	AutoRobot     AutoWhy = "robot_address"  // mailer-daemon, no-reply and the like
	AutoCalendar  AutoWhy = "calendar"       // an answer to an invitation
	AutoNobody    AutoWhy = "no_sender"      // no address to answer
)

var (
	robot = regexp.MustCompile(`(?i)^(mailer-daemon|postmaster|mail-daemon|daemon|majordomo|listserv|.*-request|owner-.*|` +
		`(do[._-]?)?no[t]?[._-]?reply.*|.*[._+-]no[t]?[._-]?reply|bounces?([._+-].*)?|notifications?)@`)
	// Programs that answer for people who are away begin the subject so. Seen in practice.
	awaySubject = regexp.MustCompile(`(?i)^\W*(auto(matic|mated)?[ -]?(reply|response)|autoreply|auto:|out of (the )?office|away from (the )?office|` +
		`vacation (reply|notice)|respuesta autom[aá]tica|fuera de (la )?oficina|abwesenheit|automatische antwort|réponse automatique|resposta automática|` +
		`risposta automatica|delivery status notification|undeliver(able|ed)|mail delivery (failed|subsystem)|returned mail|failure notice|read:|not read:)`)
)

// autoWhy decides by what the mail says of itself, most certain first.
func autoWhy(h message.Header, m Message, w *walker) AutoWhy {
	switch {
	case autoSubmitted(h):
		return AutoSubmitted
	case strings.HasPrefix(w.kind, "multipart/report") || m.Bounce != nil:
		return AutoReport
	case m.ReturnPath == "<>":
		return AutoNull
	case hasListField(h):
		return AutoList
	case precedence(h):
		return AutoBulk
	case awayField(h) || awaySubject.MatchString(m.Subject) && !strings.Contains(m.Subject, "?"):
		return AutoAway
	case m.From == "":
		return AutoNobody
	case robot.MatchString(m.From):
		return AutoRobot
	case w.calendar && m.Text == "":
		return AutoCalendar
	}
	return ""
}

// autoSubmitted: any value but "no"; parameters and comments may follow it.
func autoSubmitted(h message.Header) bool {
	if !h.Has("Auto-Submitted") {
		return false
	}
	value, _, _ := strings.Cut(strings.ToLower(h.Get("Auto-Submitted")), ";")
	value, _, _ = strings.Cut(value, "(")
	return strings.TrimSpace(value) != "no"
}

func hasListField(h message.Header) bool {
	for _, key := range []string{"List-Id", "List-Unsubscribe", "List-Post", "List-Help", "List-Subscribe", "List-Owner", "List-Archive", "Mailing-List"} {
		if h.Has(key) {
			return true
		}
	}
	return false
}

func precedence(h message.Header) bool {
	switch strings.ToLower(strings.TrimSpace(h.Get("Precedence"))) {
	case "bulk", "junk", "list", "auto_reply":
		return true
	}
	return h.Has("Feedback-Id") || h.Has("X-Campaign-Id")
}

// awayField: fields of programs older than RFC 3834, or that ignore it. From memory of
// what such programs write.
func awayField(h message.Header) bool {
	for _, key := range []string{"X-Autoreply", "X-Autorespond", "X-Autoresponder", "X-Auto-Reply-From", "X-Mail-Autoreply", "X-Failed-Recipients"} {
		if h.Has(key) {
			return true
		}
	}
	suppress := strings.ToLower(h.Get("X-Auto-Response-Suppress"))
	return strings.Contains(suppress, "all") || strings.Contains(suppress, "autoreply")
}

// FromOwn reports whether a mail is one of our own, come back: it must not be answered
// either.
func (m Message) FromOwn(addresses ...string) bool {
	for _, a := range addresses {
		if a != "" && strings.EqualFold(a, m.From) {
			return true
		}
	}
	return false
}
