package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds that a message sets against each other in words of its own: "the one by the chimney is
// 26 x 50, the one over the sink 22 x 22", "left curb 30 x 30, right curb 30 x 54", "el del taller
// transparente y el de la casa blanco". What they are called by is any word; that they are kinds
// shows where each of them has a value of the same topic.

// contrast makes kinds of such mentions where the other rules find fewer.
func (r *reader) contrast() {
	if r.Units > 1 || r.asked(fitcheck.TopicCurbDiagonals) || r.itemsEnd > 0 {
		return
	}
	all := r.mentions()
	if len(all) < 2 {
		return
	}
	kinds := make([]int, len(all))
	n := 0
	for k := range all {
		kinds[k] = r.kindOfMention(all[:k], kinds, all[k], n)
		n = max(n, kinds[k])
	}
	if n < 2 || n > 6 || n <= r.kindsFound() || !r.setApart(all, kinds, n) {
		return
	}
	bySize := slices.ContainsFunc(all, func(m mention) bool { return m.bySize })
	if (bySize || r.partsMeasured(all)) && !r.sizesFar(all, kinds) {
		return
	}
	r.refs = slices.DeleteFunc(r.refs, func(u unitRef) bool { return len(u.units) < 2 })
	for k, m := range all {
		r.noPart(m.key) // "ladder side 25 x 25"
		r.refs = append(r.refs, unitRef{m.first, m.last, []int{kinds[k]}})
	}
	r.colorsOfMentions(all, kinds, n)
}

// colorsOfMentions: "bronze dome by the garage, white dome by the pool": each kind is called by the
// color that it has.
func (r *reader) colorsOfMentions(all []mention, kinds []int, n int) {
	colors, at := make([]string, n), make([]mention, n)
	for k, m := range all {
		if c := r.valueIn(fitcheck.TopicColor, m.first, m.last+1); c != "" && colors[kinds[k]-1] == "" {
			colors[kinds[k]-1], at[kinds[k]-1] = c, m
		}
	}
	if !contrasts(fitcheck.TopicColor, colors) {
		return
	}
	for k, c := range colors {
		r.fact(fitcheck.TopicColor, k+1, fitcheck.Color{Outer: c}, at[k].first, at[k].last)
	}
}

// kindsFound is how many kinds the other rules have found.
func (r *reader) kindsFound() int {
	var seen []int
	for k := range r.refs {
		if u := r.refs[k].units; len(u) == 1 && !slices.Contains(seen, u[0]) {
			seen = append(seen, u[0])
		}
	}
	return len(seen)
}

// kindOfMention is the kind of a mention: one named before by the same word, else the next.
func (r *reader) kindOfMention(before []mention, kinds []int, m mention, n int) int {
	for k := range before {
		a, b := r.toks[before[k].key].text, r.toks[m.key].text
		if a == b || sameRoom(a, b) {
			return kinds[k]
		}
	}
	return n + 1
}

// contrasted are the topics by which kinds can be set against each other.
var contrasted = []fitcheck.Topic{
	anySize, fitcheck.TopicColor, fitcheck.TopicLayers, fitcheck.TopicStyle, fitcheck.TopicProfile,
	fitcheck.TopicOutline, fitcheck.TopicFrameCondition, fitcheck.TopicWant, fitcheck.TopicMaterial,
}

const anySize fitcheck.Topic = "size" // any of them

// setApart: each kind has a size, or a value of its own of one choice, all of them in its mention
// or behind it, or all of them before it.
func (r *reader) setApart(all []mention, kinds []int, n int) bool {
	for _, topic := range contrasted {
		ahead, behind := make([]string, n+1), make([]string, n+1)
		for k, m := range all {
			from, to := r.sentenceFirst(m.first), len(r.toks)
			if k > 0 {
				from = max(from, all[k-1].last+1)
			}
			if k+1 < len(all) {
				to = all[k+1].first
			}
			if kind := kinds[k]; ahead[kind] == "" {
				ahead[kind] = r.valueIn(topic, m.first, to)
			}
			if kind := kinds[k]; behind[kind] == "" {
				behind[kind] = r.valueIn(topic, from, m.first)
			}
		}
		if contrasts(topic, behind[1:]) {
			r.trailing = true
			return true
		}
		if contrasts(topic, ahead[1:]) {
			return true
		}
	}
	return false
}

// contrasts: each kind has a value, and they are not all the same one.
func contrasts(topic fitcheck.Topic, values []string) bool {
	if slices.Contains(values, "") {
		return false
	}
	return topic == anySize || slices.ContainsFunc(values, func(v string) bool { return v != values[0] })
}

// valueIn is a value of the topic between two tokens, "" where none is.
func (r *reader) valueIn(topic fitcheck.Topic, from, to int) string {
	if topic == anySize {
		return r.sizeSaidIn(from, to)
	}
	for _, layer := range [][]hit{r.choices, r.styles, r.wants} {
		hits := within(layer, from, to-1)
		for k := range hits {
			if hits[k].last >= to {
				continue
			}
			of := func(s sense) bool { return s.value != "?" && r.tellsOf(s, topic, from, to) }
			if n := slices.IndexFunc(hits[k].senses, of); n >= 0 {
				return hits[k].senses[n].value
			}
		}
	}
	return ""
}

// sizeSaidIn is the first size between two tokens, as it is said.
func (r *reader) sizeSaidIn(from, to int) string {
	for i := from; i < to; i++ {
		_, next := r.numeralAt(i)
		if r.pairAt(i) || next > i && (r.unitAt(next) != noUnit || r.wordAt(next, "across", "diameter")) {
			return r.said(i, i)
		}
	}
	return ""
}

// tellsOf: the sense is of the topic; one that counts as an answer only where it was asked for, or beside the
// frame's own name.
func (r *reader) tellsOf(s sense, topic fitcheck.Topic, from, to int) bool {
	if topic == fitcheck.TopicColor && s.kind == "color" {
		return true
	}
	if s.topic != topic {
		return false
	}
	return !s.asked || r.asked(topic) || topic == fitcheck.TopicFrameCondition &&
		r.wordsIn(r.sentenceFirst(from), to, "frame", "frames", "marco", "marcos")
}

// toldOfOthers: once a message tells of one kind what its frame is like, what part it wants or how
// it is shaped, the short words for it count of the others too: "the frame in the hall is bent, the
// one in the bath looks perfect".
func (r *reader) toldOfOthers() {
	if len(r.refs) < 2 {
		return
	}
	for _, t := range []fitcheck.Topic{fitcheck.TopicFrameCondition, fitcheck.TopicWant, fitcheck.TopicOutline} {
		if !r.toldOfKind(t, -1) {
			continue
		}
		for _, layer := range [][]hit{r.choices, r.wants} {
			for n := range layer {
				r.toldOfOther(t, &layer[n])
			}
		}
	}
}

// toldOfOther takes a short word for the topic of a kind that nothing of it is told of yet.
func (r *reader) toldOfOther(t fitcheck.Topic, h *hit) {
	units := r.unitsAt(h.first, h.last)
	if len(units) != 1 || r.toldOfKind(t, units[0]) || r.toldOfKind(t, 0) {
		return
	}
	if r.negated(h.first) || r.doubtBetween(r.clauseStart(h.first), h.first) || r.markAt(r.sentenceLast(h.last), '?') {
		return
	}
	for _, s := range h.senses {
		if s.topic == t && s.asked && s.value != "?" {
			r.fact(t, units[0], fitcheck.Choice(s.value), h.first, h.last)
			return
		}
	}
}

// toldOfKind: a fact of the topic is there for the kind; -1 for any kind.
func (r *reader) toldOfKind(t fitcheck.Topic, unit int) bool {
	return slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		return f.Topic == t && (f.Unit == unit || unit < 0 && f.Unit > 0)
	})
}
