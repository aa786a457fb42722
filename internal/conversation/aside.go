package conversation

import (
	"regexp"
	"slices"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// waitWords, laterWords, which say when an answer will come, thankWords and errandWords, which say
// what somebody writes for, are small talk that answers nothing and is no misunderstanding.
var (
	waitWords   = regexp.MustCompile(`(?i)^\W*(?:(?:h+m+|ok(?:ay)?|um+|uh+|well|oh|mm+|a ver)\W+)*(hang on|hold on|one (sec|second|min|minute|moment)|wait|brb|be right back|give me (a|one|\d+) ?\w*|just a (sec|second|min|minute|moment)|(let me|i'?ll|ill|i will|going to|gonna) (go )?(measure|check|look|see|get|find)\b.*|un (momento|minuto|segundo)|esp[eé]r(e|a|ame|eme)|ahorita|d[eé]jeme (ver|medir|revisar).*)\W*$`)
	laterWords  = regexp.MustCompile(`(?i)^[^0-9?]*\b(measures?|check|send|text|(?:'ll|will|can) (?:get|have|take|do)|mid[oe]|medir(lo|la)?|mand[oae]r?|env[ií]o|tom[oa]r?)\b[^0-9?]{0,40}\b(tonight|tomorrow|later|this (weekend|week|afternoon|evening)|next week|the weekend|(mon|tues|wednes|thurs|fri|satur|sun)day|after (work|lunch|church)|ma[ñn]ana|luego|m[aá]s tarde|al rato|el (lunes|martes|mi[ée]rcoles|jueves|viernes|s[aá]bado|domingo)|el fin de semana)\b[^0-9?]{0,20}$`)
	thankWords  = regexp.MustCompile(`(?i)^\W*(ok(ay)?|thanks?( you)?( so much)?|thx|ty|cool|great|awesome|lol|haha+|gracias|muchas gracias|perfecto|est[aá] bien|vale)\W*$`)
	errandWords = regexp.MustCompile(`(?i)^.{0,50}\b(need|want|like|looking|replac(e|ing)|replacement|order|buy|get|quote|new|have|got|fix|sell|do|carry|make|necesito|ocupo|quiero|busco|buscando|cambiar|cotizar|tengo|venden|hacen)\b.{0,30}\b(domes?|skylights?|bubbles?|tragalu(z|ces)|domos?|claraboyas?)\b.{0,25}$`)
)

// puzzled: who says so has a question or doesn't follow, whatever else the words are.
var puzzled = regexp.MustCompile(`(?i)\b(don'?t|doesn'?t|not|no idea|what|which|how|why|qu[eé] es|cu[aá]l|c[oó]mo)\b`)

// tellsNoMore: "that's all I know", "es todo lo que sé": asking the same in other words brings no more.
var tellsNoMore = regexp.MustCompile(`(?i)\b(all (that )?(i|we) (got|have|know|can (tell|say|give))\b|todo lo que (s[eé]([^a-z]|$)|(sabemos|tengo|tenemos|(le )?puedo dec\w+)\b))`)

// aside lets the question stand where the person only says to wait, or that photos were
// sent which are still on their way: they are on it.
func (t *turn) aside() bool {
	h := &t.heard
	if h.unseen && h.nothing() && t.isAsked(fitcheck.TopicPhotos) {
		return true
	}
	if !t.saysToWait() || len(t.talk.Memory.Asking) == 0 || len(h.entries)+len(h.requests)+len(h.dontKnow)+h.photos > 0 {
		return false
	}
	if t.small == toLookWords || t.heard.goesUp {
		t.takeYourTime()
		return true
	}
	t.say.add(t.line("ack.wait", 0, nil))
	return true
}

// saysToWait: they say to wait, when an answer will come, or that somebody goes to look.
func (t *turn) saysToWait() bool {
	return t.small == waitWords || t.small == laterWords || t.small == toLookWords && len(t.heard.unclear) == 0
}

// waits lets a question stand that was put often enough, where the customer only asks
// something of their own: that is answered, and they are still on it.
func (t *turn) waits() bool {
	h := &t.heard
	told := len(h.entries)+len(h.repeated)+len(h.unclear)+len(h.dontKnow)+len(h.usual)+len(h.looks)+h.photos > 0 ||
		h.confirm != "" || h.agreed || h.remark
	if told || len(t.talk.Memory.Asking) == 0 || len(h.answers) == 0 && !h.pass && !h.asks(reading.RequestPrice) {
		return false
	}
	for _, r := range h.requests {
		if r != reading.RequestQuestion && r != reading.RequestPrice {
			return false
		}
	}
	t.out.Waits = !slices.ContainsFunc(t.talk.Memory.Asking, t.mayAsk)
	return t.out.Waits
}

// smallTalk is which kind of small talk a message is, nil for none.
func smallTalk(text string) *regexp.Regexp {
	for _, kind := range []*regexp.Regexp{waitWords, laterWords, thankWords, errandWords} {
		if kind.MatchString(text) && !(kind == errandWords && puzzled.MatchString(text)) {
			return kind
		}
	}
	if goesToLook(text) {
		return toLookWords
	}
	return nil
}
