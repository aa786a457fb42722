package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Harm that was and is mended: "it leaked last year but the roofer fixed that, now it's foggy".

var (
	cutVerbs    = wordsOf(`cut removed took chopped felled cortamos tumbamos quitamos corte tumbe`)
	cutUndone   = wordsOf(`need should wont never cant gotta havent didnt branch limb`)
	repairVerbs = wordsOf(`fixed fix repaired stopped resealed recaulked caulked sealed resolved arreglo arreglaron
		arreglamos arregle arreglado repararon reparamos repare sellamos selle sellaron sello`)
	repairPending = wordsOf(`to needs get be que hay have keep keeps weve ive`)
	pastFillers   = wordsOf(`a an una un some unas small little slow big bad se me just also`)
	pastVerbs     = wordsOf(`was were been had used habia estaba estuvo tenia tuvimos hubo tuvo`)
	relapseWords  = wordsOf(`again back sigue siguio didnt temporary temporarily volvio temporal mientras`)
	relapseVerbs  = wordsOf(`leaks leaking drips dripping does do comes gets a got wet`)
	otherLeakers  = wordsOf(`ac air hvac chimney pipe pipes toilet bathtub tub plumbing sink dishwasher cooler aire
		chimenea tubo tuberia plomeria gutter gutters furnace`)
)

// past: "was leaking, fixed that".
func (r *reader) past(s *saying) bool {
	if r.wordsIn(r.clauseStart(s.first), s.first, "had", "used", "habia") &&
		r.wordsIn(s.last+1, r.sentenceLast(s.first)+1, "cut", "removed", "gone", "fell", "took", "died", "cortamos", "tumbamos",
			"anymore") &&
		r.asked(fitcheck.TopicImpactRisk) {
		return true // "had a walnut tree but we cut it down"
	}
	if r.asked(fitcheck.TopicImpactRisk) && r.anyOf(r.clauseStart(s.first), s.first, cutVerbs) &&
		!r.anyOf(r.clauseStart(s.first), s.first, cutUndone) {
		return true // "not anymore, we cut the oak down"
	}
	if !r.toldAsPast(s) {
		return false
	}
	end := r.sentenceLast(s.first)
	if end+1 < len(r.toks) {
		end = r.sentenceLast(end + 1)
	}
	for i := s.last + 1; i <= end; i++ {
		if !r.among(i, repairVerbs) &&
			!(r.wordAt(i, "care") && r.wordAt(i-1, "took", "taken") &&
				!r.wordsIn(max(0, i-4), i-1, "have", "get", "see", "getting", "having", "want", "need")) &&
			!(r.wordAt(i, "patched") && i < s.last+5 && !r.wordsIn(i, end+1, "tape", "tarp", "plastic", "temporary")) {
			continue
		}
		return !r.negated(i) && !r.wordsIn(max(0, i-2), i, "cant", "couldnt", "cannot", "wont", "didnt", "never") &&
			!r.among(i-1, repairPending) && !r.relapsed(i)
	}
	return false
}

// toldAsPast: the harm is told in a tense of the past: "leaked", "was dripping", "we had a
// leak", "se habia goteado".
func (r *reader) toldAsPast(s *saying) bool {
	if r.wordsIn(s.first, s.last+1, "leaked", "dripped", "seeped", "goteaba", "filtraba", "goteo") {
		return true
	}
	i := s.first - 1
	for r.among(i, pastFillers) {
		i--
	}
	return r.among(i, pastVerbs)
}

// relapsed: what was mended harms again: "we fixed it but it still drips".
func (r *reader) relapsed(i int) bool {
	for i++; i < len(r.toks); i++ {
		if r.among(i, relapseWords) ||
			r.wordAt(i, "still", "keeps", "kept") && (i+1 < len(r.toks) && r.among(i+1, relapseVerbs) || i+1 == len(r.toks)) ||
			r.wordAt(i, "otra") && r.wordAt(i+1, "vez") {
			return true
		}
	}
	return false
}

// stopped: "quit leaking after I taped it"; not "it won't quit leaking".
func (r *reader) stopped(s *saying) bool {
	i := s.first - 1
	return r.wordAt(i, "quit", "quits", "stopped") && !r.negated(i) && !r.wordAt(i-1, "to", "never", "wont")
}

// fromElse: "the stain on the ceiling is from the AC": water that comes from something else
// than the skylight.
func (r *reader) fromElse(h *hit) bool {
	i := h.last + 1
	for end := i + 4; i < end && i < len(r.toks) && !r.sentenceEnd(i); i++ {
		if r.wordAt(i, "from", "del", "de") {
			for i++; r.wordAt(i, "the", "a", "an", "our", "my", "old", "la", "el", "un"); i++ {
			}
			return r.among(i, otherLeakers)
		}
	}
	return false
}

// namedOverHinted: "it's a dental office, I'm the tenant": what is named counts more than
// what only hints at a dwelling.
func namedOverHinted(all []saying) []saying {
	named := func(s saying) bool { return !s.asked && !s.negated && s.value != "?" }
	if !slices.ContainsFunc(all, named) {
		return all
	}
	return slices.DeleteFunc(all, func(s saying) bool { return s.asked && s.value != "?" })
}
