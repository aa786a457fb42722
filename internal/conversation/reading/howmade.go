package reading

import "example.com/intake-bot/internal/fitcheck"

// What tells how a skylight is made, or who knows it, in words that elsewhere tell of harm or of a
// building.

// snapsOn: "the lid snaps down over the frame" tells how it is held, and nothing broke.
func (r *reader) snapsOn(h *hit) bool {
	return h.first == h.last && r.wordAt(h.first, "snap", "snaps", "snapped", "pops", "pop", "popped") &&
		r.wordAt(h.last+1, "down", "over", "on", "onto", "around", "outside", "past", "right", "into", "shut", "closed")
}

// screwHoles: "he put wood screws through it", "le hizo agujeros a la orilla del plástico", "a crack by
// the screw hole", "a hole for the vent pipe": a hole that belongs there.
func (r *reader) screwHoles(h *hit) bool {
	from, to := r.clauseStart(h.first), r.clauseEnd(h.last)+1
	return h.first == h.last && (r.wordAt(h.last+1, "for") || r.wordAt(h.last-1, "screw", "bolt", "nail", "rivet", "fastener", "mounting", "weep", "pilot", "drill")) ||
		r.wordsIn(h.first, h.last+1, "screw", "screws", "nail", "nails", "bolts", "tornillo", "tornillos", "clavos", "pijas") ||
		r.wordsIn(h.first, h.last+1, "holes", "agujeros", "hoyos", "hoyitos", "agujeritos") && r.wordsIn(from, to, "screws", "screw", "nails", "bolts", "tornillos", "clavos", "pijas", "orilla", "orillas", "borde")
}

// veryTall: "los costados del marco bien altos": the "bien" is of the word after it.
func (r *reader) veryTall(h *hit) bool {
	return h.last > h.first && r.wordAt(h.last, "bien") && r.wordAt(h.last+1, "alto", "alta", "altos", "altas", "derechos", "largo", "largos", "ancho", "anchos", "grande", "grandes", "grueso", "gruesos", "delgado", "viejo", "viejos", "feo", "feos", "gastado", "oxidado", "doblado", "picado", "podrido", "sucio", "chueco")
}

// onlyKnown: "I taught school", "mi cuñado sabe de carpintería": what somebody does or knows is no
// building.
func (r *reader) onlyKnown(h *hit) bool {
	if r.asked(fitcheck.TopicUse) && h.first < 3 {
		return false
	}
	i := h.last - 1
	for r.wordAt(i, "high", "grade", "middle", "elementary", "public", "trade", "sunday") {
		i--
	}
	return r.wordAt(h.last, "school") && r.wordAt(i, "teach", "teaches", "taught", "teaching") ||
		r.wordAt(h.first-1, "de", "la") && r.wordsIn(max(0, h.first-4), h.first-1, "sabe", "saben", "entiende", "entienden", "estudio", "clases")
}

// lacksAnswer: "I think that's the last thing you were missing": an answer, and no cover.
func (r *reader) lacksAnswer(h *hit) bool {
	return r.wordsIn(h.first, h.last+1, "missing") && r.wordsIn(max(0, h.first-3), h.last+1, "you", "youre", "youve", "u", "im", "am")
}
