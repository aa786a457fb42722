package reading

import "strings"

// Keyword recognizes the words that carriers define, where they are the whole message:
// they win over any other reading. "" where the message is no such word. The words
// are those of 47 CFR 64.1200(a)(10) (stop, quit, end, revoke, opt out, cancel,
// unsubscribe) and those that messaging providers publish. YES is left out: it is an
// opt-in only from a number that has opted out, which the caller knows.
func Keyword(text string) Request {
	if len(text) > 200 {
		return ""
	}
	return keywords[politeness(bareWords(text))]
}

// bareWords is the message in lower case without signs, one space between words.
func bareWords(text string) string {
	f := fold(text)
	var b strings.Builder
	for i := 0; i < len(f.text); i++ {
		c := f.text[i]
		switch {
		case isLetter(c) || isDigit(c):
			b.WriteByte(c)
		case c == '\'':
		case b.Len() > 0 && b.String()[b.Len()-1] != ' ':
			b.WriteByte(' ')
		}
	}
	return strings.TrimRight(b.String(), " ")
}

// politeness takes please and thanks off.
func politeness(s string) string {
	for _, p := range []string{"please ", "pls ", "ok ", "por favor ", "just "} {
		s = strings.TrimPrefix(s, p)
	}
	for _, p := range []string{" please", " pls", " thanks", " thank you", " now", " por favor", " gracias", " thumbsup", " ya"} {
		s = strings.TrimSuffix(s, p)
	}
	return s
}

var keywords = func() map[string]Request {
	m := map[string]Request{}
	for request, list := range map[Request]string{
		RequestStop: "stop|stop stop|stop stop stop|end this|stopall|stop all|stop it|end|cancel|quit|unsubscribe|unsub|unsuscribe|unsubcribe|revoke|" +
			"optout|opt out|opt me out|remove|remove me|stop texting me|stop texting|stop messaging me|stop messages|stop texts|" +
			"stop sending me texts|stop sending me messages|stop contacting me|do not text me|dont text me|do not text me again|" +
			"dont text me again|dont text me anymore|take me off this list|take me off your list|take me off the list|" +
			"remove me from your list|remove me from this list|unsubscribe me|i want to unsubscribe|wrong number|stopp|sotp|" +
			"alto|para|parar|pare|paren|para ya|detener|deten|baja|dar de baja|cancelar|cancela|cancelen|terminar|fin|salir|no mas mensajes|" +
			"ya no me escriban|dejen de escribirme|numero equivocado|desuscribir|darme de baja|arret|stopall stop",
		RequestStart:  "start|unstop|optin|opt in|opt me in|subscribe|resubscribe|resume|restart|iniciar|empezar|alta|suscribir|suscribirme|comenzar|reanudar",
		RequestPerson: "person|persona|human|humano|a person|una persona|a human|un humano",
		RequestHelp:   "help|info|helpme|help me|information|hlp|ayuda|informacion|ayudame|ayudeme",
	} {
		for _, w := range strings.Split(list, "|") {
			m[w] = request
		}
	}
	return m
}()
