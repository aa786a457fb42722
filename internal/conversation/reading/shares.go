package reading

import (
	"slices"

	"example.com/intake-bot/internal/fitcheck"
)

// Kinds that are told apart by a choice alone, each with its number: "2 white and 1 bronze",
// "two of them fiberglass framed and one aluminum".

var (
	shareWishes = wordsOf(`need want have order quote get got necesito ocupo quiero tengo replace`)
	shareLinks  = wordsOf(`regular normal standard of de them those these ellos ellas are is in should be son es en
		with a con domes skylights ones un marco`)
	shareKinds = wordsOf(`one a un una uno this these the first 1st size sizes kind type sort style tamano medida
		tipo primero primera`)
)

// share is one number and the choice that follows it.
type share struct {
	n, first, last int // the number and its tokens
	topic          fitcheck.Topic
	value          string
}

// choiceShares makes kinds of such shares, where nothing else tells kinds apart.
func (r *reader) choiceShares() {
	if len(r.refs) > 0 || r.Units > 1 || r.wordsIn(0, len(r.toks), "inside", "inner", "outer") {
		return
	}
	var found []share
	sum := 0
	for i := range r.toks {
		s, ok := r.shareAt(i)
		if !ok || len(found) > 0 && (s.topic != found[0].topic || r.valueShared(found, s.value)) {
			continue
		}
		found = append(found, s)
		sum += s.n
	}
	if r.plainBesideNone(found) || r.layersSaid(sum) || len(found) < 2 || len(found) > 4 ||
		found[0].topic == fitcheck.TopicStyle && found[0].value == "?" && found[1].value == "?" ||
		r.Count != sum && !r.wantedShares(found) {
		return
	}
	for k, s := range found {
		r.refs = append(r.refs, unitRef{s.first, s.last, []int{k + 1}})
		r.fact(fitcheck.TopicCount, k+1, fitcheck.Whole(s.n), s.first, s.last)
		r.use(s.first, s.last)
	}
	for i := range r.toks { // "3 in total"
		if next := i + 1; r.wholeSaid(i) == sum &&
			(r.wordAt(next, "total", "altogether") || r.wordAt(next, "in", "en") && r.wordAt(next+1, "total", "all")) {
			r.use(i, next)
		}
	}
}

func (r *reader) valueShared(found []share, value string) bool {
	for _, s := range found {
		if s.value == value {
			return true
		}
	}
	return false
}

// wantedShares: nobody was asked, and the words say that so many are needed or there.
func (r *reader) wantedShares(found []share) bool {
	first := found[0].first
	if r.asked(fitcheck.TopicCount) || r.asked(fitcheck.TopicColor) && found[0].topic == fitcheck.TopicColor {
		if r.sharesAlone(found) {
			return true
		}
	}
	return (len(r.Asked) == 0 || r.asked(fitcheck.TopicCount) || r.asked(fitcheck.TopicStyle)) &&
		(r.anyOf(max(0, first-4), first, shareWishes) ||
			r.skylightNamed(found[len(found)-1].last+1, len(r.toks)) ||
			r.wordsIn(0, first, "skylights", "domes", "tragaluces", "domos"))
}

// sharesAlone: the shares open the message, one right after the other: "five bronze and five clear",
// "one bronze, two white".
func (r *reader) sharesAlone(found []share) bool {
	for k, s := range found {
		from := 0
		if k > 0 {
			from = found[k-1].last + 2
		}
		if r.markAt(from, ',') {
			from++
		}
		if !r.onlyWords(from, s.first, "and", "y", "so", "its", "then", "plus", "son", "yes", "ok", "ones", "of", "them", "are") {
			return false
		}
	}
	return true
}

// shareAt is the share whose number stands at a token.
func (r *reader) shareAt(i int) (share, bool) {
	n, next := r.countNumber(i)
	if next == i || n < 1 || n > 50 || r.used(i) || r.unitAt(next) != noUnit || r.by(next) || r.by(i-1) {
		return share{}, false
	}
	last := next - 1
	for r.among(next, shareLinks) {
		next++
	}
	for _, layer := range [][]hit{r.choices, r.styles} {
		hits := within(layer, next, next)
		for k := range hits {
			if hits[k].first != next {
				continue
			}
			for _, s := range hits[k].senses {
				if s.topic == fitcheck.TopicColor || s.topic == fitcheck.TopicProfile ||
					s.topic == fitcheck.TopicOutline ||
					s.topic == fitcheck.TopicStyle &&
						(s.value != "?" || r.wordAt(next, "metal", "aluminum", "curb", "aluminio", "dome", "plastic", "domo", "plastico")) {
					return share{n, i, last, s.topic, s.value}, true
				}
			}
		}
	}
	return share{}, false
}

// kindShares: "four of one kind, two of another"; "4 and 2", where two kinds are known and
// how many of each was asked.
func (r *reader) kindShares() bool {
	for i := range r.toks {
		n, next := r.wholeSaid(i), i+1
		if n < 1 || n > 99 {
			continue
		}
		end := next
		if r.wordAt(end, "of", "de") && r.wordAt(end+1, "one", "a", "un", "una", "uno", "this", "these", "the") {
			for end++; end < len(r.toks) && end < next+5 && r.among(end, shareKinds); end++ {
			}
		} else if !r.asked(fitcheck.TopicCount) || r.Units != 2 {
			continue
		}
		for end < len(r.toks) && (r.markAt(end, ',') || r.wordAt(end, "and", "y", "plus", "then")) {
			end++
		}
		m, after := r.wholeSaid(end), end+1
		if m < 1 || m > 99 || end == next {
			continue
		}
		other := r.wordAt(after, "of", "de") &&
			(r.wordAt(after+1, "another", "other", "others", "otro", "otra") ||
				r.wordAt(after+1, "the", "a", "el", "la") && r.wordAt(after+2, "other", "second", "2nd", "different", "otro", "otra"))
		if !other && !(r.Units == 2 && r.asked(fitcheck.TopicCount) && r.endsCount(after)) {
			continue
		}
		r.fact(fitcheck.TopicCount, 1, fitcheck.Whole(n), i, next-1)
		r.fact(fitcheck.TopicCount, 2, fitcheck.Whole(m), end, after-1)
		r.use(i, next-1)
		r.use(end, after-1)
		return true
	}
	return false
}

// wholeSaid is the whole number at a token, though something else has taken its word.
func (r *reader) wholeSaid(i int) int {
	if n := r.wholeAt(i); n > 0 || i < 0 || i >= len(r.toks) || r.toks[i].kind != wordToken {
		return int(n)
	}
	if n := numberWords[r.toks[i].text]; isWhole(n.kind) {
		return int(n.value)
	}
	return -1
}

// layersSaid: "2 layers, 1 white 1 clear": so many layers are told of.
func (r *reader) layersSaid(sum int) bool {
	for i := range r.toks {
		if r.wordAt(i, "layer", "layers", "capa", "capas") && (i == 0 || r.wholeSaid(i-1) < 0 || r.wholeSaid(i-1) == sum) ||
			r.wordAt(i, "double", "doble") && sum == 2 {
			return true
		}
	}
	return false
}

// eachCount: "one of each", "2 each", where several kinds are known.
func (r *reader) eachCount() bool {
	if r.Units < 2 || r.askedSize() != "none" {
		return false
	}
	for i := range r.toks {
		n, next := r.countNumber(i)
		each := r.wordAt(next, "each", "apiece") && r.endsCount(next+1) ||
			r.wordAt(next, "of", "de") && r.wordAt(next+1, "each", "cada")
		if next == i || n < 1 || n > 50 || !each {
			continue
		}
		for unit := 1; unit <= r.Units; unit++ {
			r.fact(fitcheck.TopicCount, unit, fitcheck.Whole(n), i, next)
		}
		r.use(i, next-1)
		return true
	}
	return false
}

// restOfCount: "two of them are that size, the third is 22 x 22", of three that were told of.
func (r *reader) restOfCount() {
	if r.Units != 1 || r.Count < 2 || len(r.refs) == 0 || !slices.Equal(r.refs[len(r.refs)-1].units, []int{2}) {
		return
	}
	rest := r.refs[len(r.refs)-1]
	if n := r.refNumber(rest); n > 0 && n < r.Count && !r.known(fitcheck.TopicCount) { // "the other two are 24 x 24"
		r.fact(fitcheck.TopicCount, 1, fitcheck.Whole(r.Count-n), rest.first, rest.last)
		r.fact(fitcheck.TopicCount, 2, fitcheck.Whole(n), rest.first, rest.last)
		return
	}
	for k := range r.out.Facts {
		f := &r.out.Facts[k]
		n, ok := f.Value.(fitcheck.Whole)
		if ok && f.Topic == fitcheck.TopicCount && f.Unit == 0 && int(n) < r.Count &&
			!slices.ContainsFunc(r.out.Facts, func(o Fact) bool { return o.Topic == fitcheck.TopicCount && o.Unit > 0 }) {
			f.Unit = 1
			r.fact(fitcheck.TopicCount, 2, fitcheck.Whole(r.Count)-n, rest.first, rest.last)
			return
		}
	}
}

// refNumber is the number within what a kind is called: "the other two".
func (r *reader) refNumber(ref unitRef) int {
	for i := ref.first; i <= ref.last; i++ {
		if n := r.wholeSaid(i); n > 0 {
			return n
		}
		if t := &r.toks[i]; t.kind == numToken && t.dec == 0 {
			return int(t.whole)
		}
	}
	return 0
}

// plainBesideNone: "one dome" tells a kind apart only beside one of glass or a tube.
func (r *reader) plainBesideNone(found []share) bool {
	plain, other := false, false
	for _, s := range found {
		plain = plain ||
			s.topic == fitcheck.TopicStyle && s.value == "?" &&
				r.wordsIn(s.last+1, min(s.last+4, len(r.toks)), "dome", "plastic", "domo", "plastico")
		other = other || s.value == fitcheck.StyleGlass || s.value == fitcheck.StyleTubular
	}
	return plain && !other
}
