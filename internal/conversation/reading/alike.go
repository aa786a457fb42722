package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds that are said to be like another: "the kitchen one is a metal frame on a box, the bath one
// too", "same as the kitchen one".

var (
	alikeArticles = wordsOf(`the el la de del al in on en`)
	alikeWords    = wordsOf(`same like identical igual mismo similar`)
	sameOnlyWords = wordsOf(`same igual mismo misma the its it is one kind thing that too yes also lo el es
		si tambien exact exactly there`)
	afterAlikeKind  = wordsOf(`one ones is are the exactly just es esta son lo de`)
	alsoSame        = wordsOf(`too also same identical likewise igual iguales tambien mismo`)
	beforeAlikeKind = wordsOf(`the for with on in is does has el la de del en para con`)
)

// likeAnother: "same as the kitchen one, a metal frame": what is said is of the kind that was asked
// about, and not of the one that it is compared to.
func (r *reader) likeAnother() {
	asked := r.asked(fitcheck.TopicStyle) || r.asked(fitcheck.TopicFrameCondition)
	if len(r.refs) == 0 && r.Units > 1 && asked && r.onlySame() {
		r.out.SameKind = append(r.out.SameKind, 0)
		return
	}
	if len(r.refs) != 1 || len(r.refs[0].units) != 1 || r.Units < 2 {
		return
	}
	i := r.refs[0].first - 1
	for r.among(i, alikeArticles) {
		i--
	}
	if !r.wordAt(i, "as", "like", "que", "to", "igual") || !r.anyOf(i-2, i+1, alikeWords) {
		return
	}
	unit := r.refs[0].units[0]
	r.refs = nil
	if unit == 1 && asked {
		r.out.SameKind = append(r.out.SameKind, 0)
	}
}

// onlySame: "same", "it's the same one", "igual": nothing else is said.
func (r *reader) onlySame() bool {
	same := false
	for i := range r.toks {
		if r.toks[i].kind == markToken {
			continue
		}
		same = same || r.wordAt(i, "same", "igual", "mismo", "misma")
		if !r.among(i, sameOnlyWords) {
			return false
		}
	}
	return same
}

// alikeKinds gives a kind that is said to be so as well what the message says of the one before it.
func (r *reader) alikeKinds() {
	for k := 1; k < len(r.refs); k++ {
		ref, before := &r.refs[k], &r.refs[k-1]
		if len(ref.units) != 1 || len(before.units) != 1 || ref.units[0] == before.units[0] || !r.saidAlike(ref) {
			continue
		}
		r.sameOfUnit(before.units[0], ref.units[0])
	}
}

// sameOfUnit says of a kind what was said of another, but for how many there are and what it has of its own.
func (r *reader) sameOfUnit(from, to int) {
	for _, f := range slices.Clone(r.out.Facts) {
		own := func(o Fact) bool { return o.Topic == f.Topic && o.Unit == to }
		if f.Unit == from && f.Topic != fitcheck.TopicCount && !slices.ContainsFunc(r.out.Facts, own) {
			f.Unit = to
			r.out.Facts = append(r.out.Facts, f)
		}
	}
	for _, u := range slices.Clone(r.out.Unclear) {
		if u.Unit == from {
			u.Unit = to
			r.out.Unclear = append(r.out.Unclear, u)
		}
	}
}

// saidAlike: "the bath one too", "el del pasillo igual", "same for the bath", "so is the bath one".
func (r *reader) saidAlike(ref *unitRef) bool {
	i := ref.last + 1
	for r.among(i, afterAlikeKind) {
		i++
	}
	if r.among(i, alsoSame) && r.stopAt(i+1) || r.wordAt(i, "as") && r.wordAt(i+1, "well") && r.stopAt(i+2) {
		return true
	}
	i = ref.first - 1
	for r.among(i, beforeAlikeKind) {
		i--
	}
	after := ref.last + 1
	for r.wordAt(after, "one", "ones") {
		after++
	}
	if !r.stopAt(after) || i == ref.first-1 {
		return false
	}
	return r.wordAt(i, "same", "igual", "mismo", "tambien", "ditto") || r.wordAt(i, "so") && r.wordAt(i+1, "is", "does", "has")
}

// alikeAfterAll: "2 of them, identical. One has a crack and the other is fine but I figure do both. metal
// frame on a curb": two that were only told apart by harm, and of which all else is the same, are one kind.
func (r *reader) alikeAfterAll() {
	if r.Units > 1 || len(r.out.Rooms) > 0 || len(r.out.SameKind) > 0 || !r.countedInAll(2) || !r.toldTheSame() {
		return
	}
	r.out.Facts = slices.DeleteFunc(r.out.Facts, func(f Fact) bool { return f.Unit == 2 })
	for k := range r.out.Facts {
		r.out.Facts[k].Unit = 0
	}
	r.out.Kinds = 0
}

// toldTheSame: of two kinds, and no more, the message tells the same in the same words, and no size.
func (r *reader) toldTheSame() bool {
	of := func(unit int) []Fact {
		return slices.DeleteFunc(slices.Clone(r.out.Facts), func(f Fact) bool { return f.Unit != unit })
	}
	one, other := of(1), of(2)
	if len(one) == 0 || len(one) != len(other) ||
		slices.ContainsFunc(r.out.Facts, func(f Fact) bool { return f.Unit > 2 }) ||
		slices.ContainsFunc(r.out.Unclear, func(u Unclear) bool { return u.Unit > 0 }) {
		return false
	}
	for k := range one {
		if one[k].Topic.OfSize() || one[k].Topic != other[k].Topic || one[k].Said != other[k].Said {
			return false
		}
	}
	return true
}

// countedInAll: the message tells that there are so many in all.
func (r *reader) countedInAll(n int) bool {
	return slices.ContainsFunc(r.out.Facts, func(f Fact) bool {
		return f.Topic == fitcheck.TopicCount && f.Unit == 0 && f.Value == fitcheck.Whole(n)
	})
}
