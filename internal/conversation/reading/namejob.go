package reading

import "example.com/intake-bot/internal/fitcheck"

// Who somebody is before what they are called: "this is office manager Pam", "soy la secretaria
// de la iglesia, Nohemí".

var jobNameVerbs = wordsOf(`is was has said says dice dijo es quiere wants`)

// jobWords say what somebody is, at work or to somebody else; they are no names.
var jobWords = wordsOf(`framer electrician plumber painter installer glazier remodeler welder mechanic engineer
	architect technician drywaller inspector renter siding gc pm manager secretary owner coowner custodian janitor
	super superintendent supervisor handyman handywoman contractor roofer treasurer trustee chairman chairwoman
	chair director principal tenant landlord landlady caretaker foreman bookkeeper assistant receptionist
	coordinator clerk sexton usher homeowner builder carpenter farmer rancher guy lady gal wife husband son
	daughter mother mom father dad brother sister neighbor nephew niece grandson granddaughter secretaria
	secretario dueno duena encargado encargada gerente administrador administradora techero techador contratista
	albanil conserje velador mayordomo inquilino inquilina casero casera tesorero tesorera hijo hija esposa esposo
	mama papa hermano hermana vecino vecina nieto nieta sobrino sobrina yerno nuera maestra maestro directora
	carpintero señora`)

// jobLead are small words before what somebody is.
var jobLead = wordsOf(`the a an your our her his their my one of office property building church school facility
	facilities officer shop general assistant head night day apartment site project maintenance la el las los un
	una su sus tu mi nuestra nuestro`)

// nameAfterJob reads the name after what somebody is, from token i on.
func (r *reader) nameAfterJob(i int) (first, last int, ok bool) {
	at := i
	for at < len(r.toks) && at < i+4 && r.among(at, jobLead) {
		at++
	}
	if at >= len(r.toks) || r.toks[at].kind != wordToken || !jobWords.has(r.toks[at].text) {
		return 0, 0, false
	}
	at++
	if r.givenAt(at) || r.markAt(at, ',') && r.givenAt(at+1) {
		return r.jobsName(at + number(r.markAt(at, ',')))
	}
	if !r.wordAt(at, "of", "at", "for", "here", "over", "in", "de", "del", "en") {
		return 0, 0, false
	}
	for k := at; k < len(r.toks) && k < at+8 && !r.sentenceEnd(k); k++ {
		if r.markAt(k, ',') {
			return r.jobsName(k + 1)
		}
	}
	return 0, 0, false
}

// jobsName reads a given name with what belongs to it, where nothing of a sentence follows.
func (r *reader) jobsName(i int) (first, last int, ok bool) {
	if !r.givenAt(i) && !(r.asked(fitcheck.TopicName) && r.strangeName(i)) || r.alsoState(i) {
		return 0, 0, false
	}
	first, last, ok = r.nameFrom(i, true)
	if ok && first == last && last+1 < len(r.toks) && r.verbAt(last+1) || r.among(last+1, jobNameVerbs) {
		return 0, 0, false
	}
	return first, last, ok && (r.asked(fitcheck.TopicName) || r.nameEnds(last+1))
}

// ownName: another introduction is the writer's own: "you talked to my husband Gil, I'm Nan".
func (r *reader) ownName(n int) bool {
	for k := range r.intros {
		at := r.afterIntro(r.intros[k].last + 1)
		if v, _ := r.intros[k].has("intro"); k != n && (v == "im" || v == "name") &&
			(r.givenAt(at) || r.asked(fitcheck.TopicName) && r.strangeName(at)) {
			return true
		}
	}
	return false
}
