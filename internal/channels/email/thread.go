package email

import (
	"crypto/rand"
	"encoding/hex"
	"regexp"
	"strings"
)

// maxChain bounds References: the first, for it names the thread, and the latest.
const maxChain = 20

var (
	idForm    = regexp.MustCompile(`^[A-Za-z0-9!#$%&'*+/=?^_{|}~.` + "`" + `-]+@([A-Za-z0-9!#$%&'*+/=?^_{|}~.` + "`" + `-]+|\[[A-Za-z0-9.:_-]+\])$`)
	wordForm  = regexp.MustCompile(`^[A-Za-z0-9._-]{1,100}(@[A-Za-z0-9.-]{1,100})?$`)
	replyMark = regexp.MustCompile(`(?i)^\s*((re|aw|sv|antw|res|rif|ref|fwd?|wg|tr|enc|rv)\s*(\[\d{1,3}\])?\s*:\s*)+`)
)

// validID: dot-atom or literal as RFC 5322 section 3.6.4 has it; dots anywhere.
func validID(id string) bool { return len(id) <= 250 && idForm.MatchString(id) }

func validWord(s string) bool { return wordForm.MatchString(s) }

// NewID makes a Message-ID, without brackets, that has not been before.
func NewID(domain string) string {
	var b [16]byte
	rand.Read(b[:]) // never fails: crypto/rand
	return hex.EncodeToString(b[:]) + "@" + domain
}

// Thread gives In-Reply-To and References of an answer to a mail: RFC 5322 section 3.6.4.
func Thread(parent Message) (inReplyTo string, references []string) {
	chain := parent.References
	if len(chain) == 0 && parent.InReplyTo != "" {
		chain = []string{parent.InReplyTo}
	}
	var good []string
	for _, id := range chain {
		if validID(id) && id != parent.ID {
			good = append(good, id)
		}
	}
	if len(good) > maxChain {
		good = append([]string{good[0]}, good[len(good)-maxChain+1:]...)
	}
	if !validID(parent.ID) {
		return "", good
	}
	return parent.ID, append(good, parent.ID)
}

// ReplySubject is the subject of an answer: the same, "Re: " once, and the lead's
// reference in brackets at its end if it is not in there yet.
func ReplySubject(subject, ref string) string {
	s := replyMark.ReplaceAllString(oneLine(subject), "")
	s = clip(s, 200)
	if ref != "" && !strings.Contains(strings.ToUpper(s), "["+strings.ToUpper(ref)+"]") {
		s = strings.TrimSpace(s + " [" + ref + "]")
	}
	return "Re: " + s
}
