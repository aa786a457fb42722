package conversation

import "regexp"

// waitWords and thankWords are small talk that answers nothing and is no misunderstanding.
var (
	waitWords  = regexp.MustCompile(`(?i)^\W*(hang on|hold on|one (sec|second|min|minute|moment)|wait|brb|be right back|give me (a|one|\d+) ?\w*|just a (sec|second|min|minute|moment)|(let me|i'?ll|ill|i will|going to|gonna) (go )?(measure|check|look|see|get|find)\b.*|un (momento|minuto|segundo)|esp[eé]r(e|a|ame|eme)|ahorita|d[eé]jeme (ver|medir|revisar).*)\W*$`)
	thankWords = regexp.MustCompile(`(?i)^\W*(ok(ay)?|thanks?( you)?( so much)?|thx|ty|cool|great|awesome|lol|haha+|gracias|muchas gracias|perfecto|est[aá] bien|vale)\W*$`)
)

// aside lets the question stand where the person only says to wait: they are on it.
func (t *turn) aside() bool {
	h := &t.heard
	if t.small != waitWords || len(t.talk.Memory.Asking) == 0 || len(h.entries)+len(h.requests)+h.photos > 0 {
		return false
	}
	t.say.add(t.line("ack.wait", 0, nil))
	return true
}

// smallTalk is which kind of small talk a message is, nil for none.
func smallTalk(text string) *regexp.Regexp {
	for _, kind := range []*regexp.Regexp{waitWords, thankWords} {
		if kind.MatchString(text) {
			return kind
		}
	}
	return nil
}
