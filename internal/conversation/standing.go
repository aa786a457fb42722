package conversation

import (
	"regexp"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
)

// What the assistant answers by itself, whatever the shop file says: whether it is a
// machine, whether to go up on the roof, whether photos may be sent, and that somebody
// calls it all off.

var (
	// asksWhoAnswers: "are you a bot", "is this a real person", "¿eres una persona?".
	asksWhoAnswers = regexp.MustCompile(`(?i)\b((are|r) (you|u|ya) (an? )?(real |actual |live |automated |talking )?(bot|robot|chatbot|ai|computer|machine|human( being)?|person|real|automated)\b|(is|was) (this|it) (an? )?(real |actual |live |automated )?(bot|robot|chatbot|ai|computer|machine|human( being)?|person)\b|(talking|texting|chatting|speaking) (to|with) (an? )?(real |actual |live )?(bot|robot|chatbot|ai|computer|machine|human|person)\b|(eres|es usted|esto es|hablo con) (un |una )?(bot|robot|m[aá]quina|computadora|persona|humano|programa)\b)`)

	// goesUp: somebody is up there, is about to be, or asks whether to go or to stand on it.
	goesUp = regexp.MustCompile(`(?i)\b((i'?m|i am|we'?re|we are|he'?s|she'?s|(husband|wife|son|dad|brother|guy|helper)( is|'?s)) (\w+ ){0,2}on (the|my|our) roof|(going|go|goin|get|getting|climb|climbing|head|heading|hop|hopping|run|crawl|crawling) (\w+ ){0,2}(on|onto|to|up) (the|my|our|that) roof|(stand|step|walk|sit|lean|kneel|standing|walking|sitting) (\w+ )?(on|onto) (the|my|this|a|one of the) (domes?|skylights?|plastic|bubbles?)|(can|could|may|should) (i|we|he|you) (stand|step|walk|sit|kneel) on (it|top of it)|hold (my|a person'?s?|a man'?s?|somebody'?s?) weight|safe to (\w+ ){0,4}(roof|dome|skylight)|go up (there )?and (put|throw|tarp|cover)|(estoy|estamos|ando|est[aá]) (\w+ ){0,2}(en|sobre) el techo|(subo|subir|subirme|subiendo|subimos) (\w+ )?al techo|(pisar|pararme|parar|caminar|sentarme) (\w+ )?(en )?(el|la|los|un) (domo|tragaluz|pl[aá]stico|burbuja))\b`)

	// staysDown are words with which nobody goes up.
	staysDown = regexp.MustCompile(`(?i)\b(can'?t|cannot|won'?t|not|don'?t|didn'?t|wouldn'?t|couldn'?t|never|nobody|no one|too old|afraid|scared|hate|used to|last (year|time|week)|roofers?|contractor|no (puedo|quiero|voy|debo)|miedo|sin|nunca)\b`)

	// asksToSend: whether pictures are wanted, may be sent, and how.
	asksToSend = regexp.MustCompile(`(?i)\b((can|could|may|should|shall|do) (i|we) (just |also |maybe )?(send|text|email|e-mail|mail|attach|share|show|upload) .{0,20}(photos?|pictures?|pics?|images?)\b|(how|where) (do|can|could|should|would) (i|we) .{0,12}(send|text|email|e-mail|mail|upload|attach|share|get) .{0,20}(photos?|pictures?|pics?|images?)\b|(do|would|will|could) (you|u|ya'?ll|y'all)( guys)? (want|need|like|take|accept|use) .{0,16}(photos?|pictures?|pics?|images?)\b|would .{0,12}(photos?|pictures?|pics?) (help|be (helpful|useful|of use)|do)\b|(puedo|podemos|podr[ií]a(mos)?|debo) (\w+ )?(mandar|enviar|pasar|textear)(les?|te|los?|las?)? .{0,14}(fotos?|im[aá]gen(es)?)\b[^.!,;]{0,20}\?|(d[oó]nde|c[oó]mo) (\w+ ){0,2}(mando|env[ií]o|mandar|enviar|paso) .{0,14}(fotos?|im[aá]gen(es)?)\b|(quieren?|necesitan?|ocupan?|les? sirven?) (\w+ ){0,2}fotos?\b.{0,20}\?|les? (mando|env[ií]o|paso) (\w+ ){0,2}fotos?\W*\?)`)

	// callsOff: nothing is wanted any more.
	callsOff = regexp.MustCompile(`(?i)(\b(never ?mind|nvm|forget it)\W+(please )?cancel\b( it)?\W*$|(never ?mind|nvm|forget it|cancel)\b.{0,30}\b(don'?t|do not|no longer|won'?t) (want|need)\b|\b(i|we) (don'?t|do not|no longer|won'?t) (want|need) (it|this|one|them|anything|any) (any ?more|any longer|after all)|\b(found|got|bought|ordered) (one|it|them|what i need(ed)?|a dome|a skylight) (elsewhere|somewhere else|from (someone|somebody) else|from another)|\b(going|went|gone|go) with (someone|somebody|somewhere|another (shop|place|company)) ?(else)?|\b(not|no longer) interested\b( any ?more)?\W*$|\bcancel (it all|everything|all of it|(my|the|this) (whole )?(order|request|inquiry|thing))|\bya no (lo |la |los |las |me )?(quiero|necesito|ocupo|queremos|necesitamos|interesan?)\b|\bya (lo |la )?(consegu[ií]|compr[eé]|encontr[eé]) (\w+ )?en otr[oa]|\bno me interesa( ya)?\W*$)`)

	// asksOpen and asksPhone ask for plain facts of the shop; a day that is named is for a person.
	asksOpen  = regexp.MustCompile(`(?i)\b((are|r) (you|u|ya'?ll|yall)( guys)? (still )?open|(what|when|which)('?s| is| are| r)? (your |ur |the )?(business |store |shop |opening |office )?hours|(what|when) (time )?(do|does) (you|u|ya'?ll|yall|the shop)( guys)? open|est[aá]n abiert[oa]s|abren hoy|a qu[eé] horas? abren|cu[aá]ndo abren|qu[eé] horario)\b`)
	asksPhone = regexp.MustCompile(`(?i)\b(what('?s| is) (your|ur) (shop'?s |store'?s? |office )?((phone|telephone)( number)?|number)|what('?s| is) the (shop'?s |store'?s? |office )?(phone|telephone)( number)?|do you have a (phone )?number|(a )?number (i can|to|can i|i could) (call|reach)|cu[aá]l es su (n[uú]mero|tel[eé]fono)|(me da|tienen) (su |un )?(n[uú]mero de )?tel[eé]fono)\b`)
	someDay   = regexp.MustCompile(`(?i)\b(mon|tues?|wednes|thurs?|fri|satur|sun)days?\b|\bweekends?\b|holiday|christmas|(lunes|martes|mi[eé]rcoles|jueves|viernes|s[aá]bados?|domingos?|fin de semana|feriado)`)

	// complains: somebody was sent the wrong part or a broken one, or wants their money back.
	complains = regexp.MustCompile(`(?i)\b(refund|money back|(sent|shipped|gave|mailed) (me |us )?(the |a )?wrong|(arrived|came|showed up|delivered) .{0,20}(broken|cracked|damaged|smashed|shattered)|reembolso|mi dinero|equivocad[oa])\b`)

	// pleasant are words of leave that ask for nothing.
	pleasant = regexp.MustCompile(`(?i)\b(thanks?|thank you|thx|appreciate|look(ing)? forward|talk (to you |to u )?(soon|then|later|tomorrow)|(have|hope) (you have )?a (good|great|nice|blessed)|sounds (good|great)|gracias|buen d[ií]a|buenas (tardes|noches)|saludos|take care|god bless|hear from you)\b`)

	// goodbye is nothing but thanks and a farewell.
	goodbye = regexp.MustCompile(`(?i)^\W*((ok(ay)?|thanks?( you)?( so much)?|thx|ty|bye|goodbye|great|good|sorry|anyway|have a (good|great|nice) (day|one|night|evening)|(muchas )?gracias|adi[oó]s|perfecto|bueno|vale|disculpe)\b\W*)+$`)
)

// standingAnswer is the key of the assistant's own answer to a message, "" where it has
// none; it comes before an owner's answer.
func standingAnswer(text string) string {
	switch {
	case asksWhoAnswers.MatchString(text):
		return "answer.assistant"
	case goesUp.MatchString(text) && !staysDown.MatchString(text):
		return "safe.roof"
	case asksToSend.MatchString(text):
		return "answer.photos"
	}
	return ""
}

// answerStanding answers what the assistant knows by itself.
func (t *turn) answerStanding(in []Message) {
	said := map[string]bool{}
	for _, m := range in {
		if key := standingAnswer(m.Text); key != "" && !said[key] {
			said[key] = true
			t.heard.answers = append(t.heard.answers, t.vary(key, nil))
		} else if fact := t.shopFact(m.Text); fact != "" && m.Answer == "" {
			t.heard.answers = append(t.heard.answers, fact)
		}
		t.heard.sorry = t.heard.sorry || complains.MatchString(m.Text)
	}
}

// shopFact answers when the shop is open and where it rings, "" where that is not asked.
func (t *turn) shopFact(text string) string {
	switch {
	case asksPhone.MatchString(text) && t.shop.Phone != "":
		return t.line("answer.phone", 0, wording.Args{"phone": t.shop.Phone})
	case !asksOpen.MatchString(text) || someDay.MatchString(text) || t.shop.Hours == nil:
		return ""
	case t.closed():
		return t.line("answer.closed", 0, wording.Args{"opens": t.opens()})
	}
	return t.line("answer.open", 0, nil)
}

// calledOff notes whether the customer calls it all off; whoever goes on telling does not.
func (t *turn) calledOff(text string) bool {
	m, h := &t.talk.Memory, &t.heard
	off := h.leftOut == "" && callsOff.MatchString(text) && len(h.entries)+h.photos == 0 && h.confirm != "yes" && !h.asks(reading.RequestPerson)
	h.bye = goodbye.MatchString(text)
	h.wordy = !h.bye && t.small == nil && len(strings.Fields(text)) > 3 && !pleasant.MatchString(text)
	m.CalledOff = off || m.CalledOff && h.bye
	if m.CalledOff {
		m.Lost = 0 // it was understood
	}
	return off
}

// partWays takes leave where the customer wants nothing any more: no reminder follows, and
// the talk goes on where it was should they write again.
func (t *turn) partWays() error {
	t.say.add(t.line("end.called_off", 0, nil))
	if t.talk.State == Lapsed || t.talk.State == Opening && len(t.talk.Ledger) == 0 {
		return nil
	}
	return t.move(Lapsed)
}
