package reading

import "example.com/intake-bot/internal/fitcheck"

// Where somebody is who has to be asked is not where the skylight goes: "I have to ask my brother,
// he's in Denver", "my cousin Bob in Ohio has the measurements".

var (
	kinAsked = wordsOf(`ask asking check measurements numbers sizes knows told recommended preguntar preguntarle
		preguntarles consultar medidas sabe recomendo`)
	sentToKin = wordsOf(`ship ships shipped shipping send deliver delivered mail goes going for skylight skylights
		dome mandar mandarlo enviar enviarlo envio para tragaluz domo`)
	kinLives = wordsOf(`he hes she shes they theyre vive viven ella ellos`)
	ownPlace = wordsOf(`i im we were it its you u yall us me vivo vivimos estoy estamos house home place cabin
		building shop rental casa cabana edificio negocio`)
	kinAlso = wordsOf(`cousin cousins buddy inlaws parents landlord installer handyman primo prima sobrino sobrina
		tio tia cunado cunada suegro suegra abuelo abuela`)
)

// whereKinIs: the town, state or code at the token is somebody else's whereabouts. Once the place was
// told that is plain; before, only where the sentence tells what that person is needed for.
func (r *reader) whereKinIs(i int) bool {
	from, to := r.sentence(i)
	asks := r.anyOf(from, to+1, kinAsked)
	if !asks && (len(r.Asked) == 0 || r.asked(fitcheck.TopicPlace) || r.asked(fitcheck.TopicName)) {
		return false // "I'm writing for my mother. She's in Scranton"
	}
	if r.anyOf(from, to+1, sentToKin) {
		return false // "ship it to my brother, he's in Denver", "it's for my mom, she lives in Tulsa"
	}
	for k := i - 1; k >= from; k-- {
		switch {
		case r.among(k, kinLives):
			return true
		case r.among(k, ownPlace):
			return false
		case r.wordAt(k, "my", "our", "the", "mi", "la", "el") && !r.otherPerson(k+1) && !r.otherPerson(k+2):
			return false
		case r.otherPerson(k):
			return true
		}
	}
	return false
}

// otherPerson: a relative, a neighbor or a tradesman.
func (r *reader) otherPerson(i int) bool {
	if i >= len(r.toks) || r.toks[i].kind != wordToken {
		return false
	}
	t := &r.toks[i]
	return kin.has(t.text) || otherPersons.has(t.text) && !r.wordsIn(max(0, i-2), i, "im", "a", "am", "soy") ||
		t.among(kinAlso)
}
