package reading

import (
	"strings"

	"example.com/intake-bot/internal/fitcheck"
)

// What names a dome or a whole unit and leaves open which of them is wanted, and what names no
// frame without saying that there is none.

var (
	priceNouns = wordsOf(`quote quotes price prices pricing cost costs estimate estimates numbers figures cotice
		cotizacion precio precios`)
	noFrameSigns = wordsOf(`screwed bolted nailed glued attached fastened stapled sits straight directly has have
		theres there atornillado pegado directo tiene hay`)
	wishOrPrice = wordsOf(`need want order send urge urgen necesito ocupo quiero busco mandeme price cost much
		cuanto sell buy cuesta`)
)

// bothCosted: "I'd like costs for the dome on its own and for the entire unit": what each
// costs is asked for, and none is chosen. Two of one and one of the other are a list.
func (r *reader) bothCosted(s sense, h *hit) bool {
	if s.value != fitcheck.WantCompleteUnit || r.asked(s.topic) ||
		r.wordsIn(h.first, h.last+1, "frame", "frames", "marco") || r.wholeAt(h.first-1) > 0 {
		return false
	}
	from := r.sentenceFirst(h.first)
	if !r.anyOf(from, h.first, priceNouns) {
		return false
	}
	dome := false
	for i := from; i < h.first; i++ {
		dome = dome ||
			r.wordAt(i, "dome", "bubble", "lens", "plastic", "top", "acrylic", "domo", "plastico", "burbuja") && r.wholeAt(i-1) <= 0
		if dome && r.wordAt(i, "and", "y", "plus", "versus", "vs", "then") {
			return true
		}
	}
	return false
}

// eitherDoes: "cheapest fix is what I want, be it dome or full unit", "I don't care which".
func (r *reader) eitherDoes(from, to int) bool {
	for i := from; i <= to; i++ {
		if r.wordAt(i, "cheapest", "cheaper", "whichever", "barato", "economico") ||
			r.wordAt(i, "less", "least") && r.wordAt(i+1, "expensive", "costly", "money") ||
			r.wordAt(i, "matter", "care") && r.wordAt(i-1, "doesnt", "dont", "not", "no") || r.wordAt(i, "be") && r.wordAt(i+1, "it") {
			return true
		}
	}
	return false
}

// frameUnwanted: "No frame. Bubble only.", "urge un domo, sin marco": the frame is not
// ordered, which does not say that the plastic lies bare.
func (r *reader) frameUnwanted(s sense, h *hit) bool {
	if s.value != fitcheck.StyleBareDome || r.asked(fitcheck.TopicStyle) ||
		h.last-h.first != 1 || !r.wordAt(h.first, "no", "sin", "without") ||
		!r.wordAt(h.last, "frame", "frames", "marco", "marcos") ||
		r.anyOf(0, len(r.toks), noFrameSigns) {
		return false
	}
	for n := range r.wants {
		if w := &r.wants[n]; w.first != h.first && w.is("want", fitcheck.WantDomeOnly) && !w.senses[0].asked {
			return true
		}
	}
	return r.anyOf(r.sentenceFirst(h.first), h.first, wishOrPrice)
}

// sheWould: "she'd like it swapped" speaks of no shed.
func (r *reader) sheWould(h *hit) bool {
	return h.first == h.last && r.wordAt(h.first, "shed") && (strings.ContainsAny(r.said(h.first, h.last), "'’") ||
		r.wordAt(h.first+1, "like", "rather", "prefer", "love", "want") &&
			!r.wordAt(h.first-1, "a", "the", "my", "our", "garden", "tool", "storage"))
}

// frameLast: the frame is the last part that was named between two tokens, the second not counted.
func (r *reader) frameLast(from, to int) bool {
	frame := false
	for i := from; i < to; i++ {
		if l := r.labelFrom(i); l != nil && l.senses[0].kind == "part" {
			frame = l.is("part", "frame")
		}
	}
	return frame
}
