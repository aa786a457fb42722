package reading

import "example.com/intake-bot/internal/fitcheck"

// A kind that is no more wanted, while others are.

var (
	dropNeeds = wordsOf(`need want quiero necesito ocupo hace not`)
	dropLeads = wordsOf(`lets please just actually can you to better mejor no and but y pero`)
	dropVerbs = wordsOf(`drop remove skip forget cancel scratch nix quite quita quiten elimine olvide cancele
		olvidese`)
	notAnymore   = wordsOf(`arent isnt are is not no longer`)
	loNeeded     = wordsOf(`lo la los las quiero necesito ocupo hace hacen falta queremos`)
	dropCommands = wordsOf(`quitelo quitelos cancelelo cancelelos olvidelo olvidelos dejelo dejelos quitelas
		dejelas`)
	onlyWantedVerbs = wordsOf(`want need do doing replace replacing change order quiero necesito ocupo cambiar
		cambie queremos necesitamos`)
	onlyFillers = wordsOf(`i we ill well lets actually to the my now please sorry el la los las de del mas
		mejor`)
	kindArticles = wordsOf(`the my that those el la los las de del`)
	dropTails    = wordsOf(`please then and but now anymore any after altogether completely por mejor ya`)
)

// dropped notes the kind that the message takes off.
func (r *reader) dropped() {
	for k := range r.refs {
		ref := &r.refs[k]
		if len(ref.units) == 1 && (r.dropsBefore(ref) || r.dropsAfter(ref) || r.notThisKind(ref)) {
			r.out.Dropped = ref.units[0]
			return
		}
	}
	if len(r.refs) == 1 && r.Units == 2 && len(r.refs[0].units) == 1 && r.onlyWanted(&r.refs[0]) {
		r.out.Dropped = 3 - r.refs[0].units[0] // "I only need the kitchen one now", of two
	}
}

// dropsBefore: "drop the bath one, I only want the kitchen", "I don't need the hall ones": the wish
// opens its clause, and nothing but another clause follows.
func (r *reader) dropsBefore(ref *unitRef) bool {
	end := r.kindEnd(ref)
	out := r.wordAt(end, "out", "off")
	if end += number(out); !r.dropEnds(end) {
		return false // "I don't want the bath one clear"
	}
	i := r.beforeKind(ref)
	for r.wordAt(i, "about", "doing", "for", "cambiar", "falta") {
		i--
	}
	if r.wordAt(i, "mind") && r.wordAt(i-1, "never") || r.wordAt(i, "nevermind") {
		return true
	}
	if r.among(i, dropNeeds) && (r.wordAt(i-1, "dont", "no", "longer") || r.wordAt(i, "not") && r.wordAt(i+1, "doing")) {
		return true
	}
	start := r.clauseStart(i) == i || r.among(i-1, dropLeads)
	return start && !r.negated(i) && (r.among(i, dropVerbs) || out && r.wordAt(i, "leave", "take"))
}

// dropsAfter: "skylight 2, cancel it please", "the hall ones aren't needed", "el de la sala ya no".
func (r *reader) dropsAfter(ref *unitRef) bool {
	i := r.kindEnd(ref)
	if r.markAt(i, ',') {
		i++
	}
	switch {
	case r.among(i, dropVerbs) && r.wordAt(i+1, "it", "that", "them", "those", "please") && r.dropEnds(i+2):
		return true
	case r.wordAt(i, "arent", "isnt"), r.wordAt(i, "are", "is") && r.wordAt(i+1, "not"),
		r.wordAt(i, "are", "is") && r.wordAt(i+1, "no") && r.wordAt(i+2, "longer"):
		for r.among(i, notAnymore) {
			i++
		}
		return r.wordAt(i, "needed", "wanted", "necessary") && r.dropEnds(i+1)
	case r.wordAt(i, "ya") && r.wordAt(i+1, "no"):
		i += 2
		for r.among(i, loNeeded) {
			i++
		}
		return r.dropEnds(i)
	}
	return r.among(i, dropCommands) && r.dropEnds(i+1)
}

// notThisKind: "I only want the kitchen one, not the hall", "solo quiero cambiar el de la sala, los
// del pasillo no".
func (r *reader) notThisKind(ref *unitRef) bool {
	end := r.kindEnd(ref)
	if !(r.wordAt(r.beforeKind(ref), "not") && r.dropEnds(end) || r.wordAt(end, "no") && r.dropEnds(end+1)) {
		return false
	}
	for k := range r.refs {
		if o := &r.refs[k]; len(o.units) == 1 && o.units[0] != ref.units[0] && r.onlyWanted(o) {
			return true
		}
	}
	return false
}

// onlyWanted: a clause says that nothing but the kind is wanted, and the message nothing else of it.
func (r *reader) onlyWanted(ref *unitRef) bool {
	for k := range r.out.Facts {
		if f := &r.out.Facts[k]; f.Topic.OfUnit() && f.Topic != fitcheck.TopicCount {
			return false
		}
	}
	only, wish := false, false
	for i := r.clauseStart(ref.first); i < ref.first; i++ {
		switch {
		case r.among(i, onlyWords):
			only = true
		case r.among(i, onlyWantedVerbs):
			wish = true
		case !r.among(i, onlyFillers):
			return false
		}
	}
	return only && wish && r.dropEnds(r.kindEnd(ref))
}

// kindEnd is the token after a kind's name and the word for skylights that goes with it.
func (r *reader) kindEnd(ref *unitRef) int {
	end := ref.last + 1
	if r.wordAt(end, "one", "ones", "skylight", "skylights") {
		end++
	}
	return end
}

// beforeKind is the token before a kind's name and the small words that lead to it.
func (r *reader) beforeKind(ref *unitRef) int {
	i := ref.first - 1
	for r.among(i, kindArticles) {
		i--
	}
	return i
}

// dropEnds: the clause ends at the token, but for small words.
func (r *reader) dropEnds(i int) bool {
	return i >= len(r.toks) || r.toks[i].kind == markToken || r.among(i, dropTails)
}
