package reading

import "example.com/intake-bot/internal/fitcheck"

// What tells how a skylight is made, or who knows it, in words that elsewhere tell of harm or of a
// building.

var (
	snapVerbs   = wordsOf(`snap snaps snapped pops pop popped`)
	snapsWhere  = wordsOf(`down over on onto around outside past right into shut closed`)
	holeMakers  = wordsOf(`screw bolt nail rivet fastener mounting weep pilot drill`)
	screwWords  = wordsOf(`screw screws nail nails bolts tornillo tornillos clavos pijas`)
	screwPlaces = screwWords.and(`orilla orillas borde`)
	veryWhat    = wordsOf(`alto alta altos altas derechos largo largos ancho anchos grande grandes grueso gruesos delgado
		viejo viejos feo feos gastado oxidado doblado picado podrido sucio chueco`)
	schoolKinds = wordsOf(`high grade middle elementary public trade sunday`)
	knowsOf     = wordsOf(`sabe saben entiende entienden estudio clases`)
	lackers     = wordsOf(`you youre youve u im am`)
)

// snapsOn: "the lid snaps down over the frame" tells how it is held, and nothing broke.
func (r *reader) snapsOn(h *hit) bool {
	return h.first == h.last && r.among(h.first, snapVerbs) &&
		r.among(h.last+1, snapsWhere)
}

// screwHoles: "he put wood screws through it", "le hizo agujeros a la orilla del plástico", "a crack by
// the screw hole", "a hole for the vent pipe": a hole that belongs there.
func (r *reader) screwHoles(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	return h.first == h.last && (r.wordAt(h.last+1, "for") || r.among(h.last-1, holeMakers)) ||
		r.anyOf(h.first, h.last+1, screwWords) ||
		r.wordsIn(h.first, h.last+1, "holes", "agujeros", "hoyos", "hoyitos", "agujeritos") && r.anyOf(from, to, screwPlaces)
}

// veryTall: "los costados del marco bien altos": the "bien" is of the word after it.
func (r *reader) veryTall(h *hit) bool {
	return h.last > h.first && r.wordAt(h.last, "bien") && r.among(h.last+1, veryWhat)
}

// onlyKnown: "I taught school", "mi cuñado sabe de carpintería": what somebody does or knows is no
// building.
func (r *reader) onlyKnown(h *hit) bool {
	if r.asked(fitcheck.TopicUse) && h.first < 3 {
		return false
	}
	i := h.last - 1
	for r.among(i, schoolKinds) {
		i--
	}
	return r.wordAt(h.last, "school") && r.wordAt(i, "teach", "teaches", "taught", "teaching") ||
		r.wordAt(h.first-1, "de", "la") && r.anyOf(max(0, h.first-4), h.first-1, knowsOf)
}

// lacksAnswer: "I think that's the last thing you were missing": an answer, and no cover.
func (r *reader) lacksAnswer(h *hit) bool {
	return r.wordsIn(h.first, h.last+1, "missing") && r.anyOf(max(0, h.first-3), h.last+1, lackers)
}
