package reading

import "example.com/intake-bot/internal/fitcheck"

// What somebody plainly wants, told by the parts of a sentence: a word of wishing, and one value that
// is not denied, doubted, asked or past. It speaks only where the phrases have said nothing of the
// topic: "Scratch the double, I'll take the single", "it's polycarbonate that I'm after, not acrylic".

var (
	wishHinders = wordsOf(`if because since but although unless than when while who whether instead until before
		porque pero si cuando que`)
	wishFillers = wordsOf(`just simply only really would definitely now both all still finally also have`)
	wishers     = wordsOf(`i we ive weve she he wife husband owner client customer board boss family everyone everybody
		and us`)
	wishVerbs   = wordsOf(`want wants prefer prefers choose chose picked need needs pick`)
	wishVerbsEs = wordsOf(`quiero queremos quisiera prefiero preferimos escogimos escogi elegimos elegi pongame
		ponganos mandeme ocupo ocupamos necesito necesitamos hagalo hagalos`)
	wishTargets      = wordsOf(`one ones kind plastic version type layer dome domes skin is thats that`)
	beforeLeftBehind = wordsOf(`the that a my our old with el la lo de`)
	leaveVerbs       = wordsOf(`scratch forget drop skip cancel ditch nix from than instead over tired sick against no not
		versus vs unlike olvide quite olvidese en`)
	afterLayerName = wordsOf(`one ones kind version type please pls this time again too then instead`)
	layersGoOn     = wordsOf(`and in with for por en y para will would is since because thanks`)
)

// wishBefore: a word of wishing leads up to the token within its sentence, and nothing that turns it
// stands between: "we simply want to go from bronze to clear", "put me down for mill finish, two layers".
func (r *reader) wishBefore(i int) bool {
	for k := i - 1; k >= r.sentenceFirst(i); k-- {
		if negWords.has(r.toks[k].text) || r.among(k, wishHinders) && !(r.wordAt(k, "que") && r.wordAt(k+1, "sea", "sean")) {
			return false
		}
		if r.wishAt(k) {
			return true
		}
	}
	return false
}

// wishAt: the word at the token wishes, for the writer or for those whom the writer speaks for.
func (r *reader) wishAt(k int) bool {
	who := k - 1
	for r.among(who, wishFillers) {
		who--
	}
	ours := r.among(who, wishers)
	switch {
	case r.among(k, wishVerbs):
		return ours
	case r.wordAt(k, "like", "love", "prefer"):
		return r.wordAt(who, "id", "wed", "hed", "shed", "theyd") || r.wordAt(k-1, "would") && ours
	case r.wordAt(k, "take", "have", "get", "go", "need", "stick", "order", "do", "want"):
		return r.wordAt(who, "ill", "well", "lets", "let", "theyll", "shell", "will") ||
			r.wordAt(k-1, "rather") ||
			r.wordAt(k, "go") && r.wordAt(k+1, "with", "for") && r.wordAt(k-1, "to", "and") ||
			r.wordAt(k, "order") && (k == r.sentenceFirst(k) || r.wordAt(k-1, "please")) && !r.wordAt(k+1, "should")
	case r.wordAt(k, "going"):
		return r.wordAt(k+1, "with", "for") && r.wordAt(who, "im", "were", "am", "are", "be")
	case r.wordAt(k, "settled", "decided", "agreed", "voted", "opted", "landed", "went"):
		return r.wordAt(k+1, "on", "for", "upon", "with") || r.wordAt(k+2, "on", "for", "upon")
	case r.wordAt(k, "after"):
		return r.wordAt(k-1, "im", "were")
	case r.wordAt(k, "put", "mark", "sign", "write", "set"):
		return r.wordAt(k+1, "me", "us", "it", "them", "that") && r.wordAt(k+2, "down", "up")
	case r.wordAt(k, "make"):
		return r.wordAt(k+1, "it", "mine", "ours", "them", "that", "those") &&
			!r.wordAt(k-1, "to", "would", "will", "does", "did", "that")
	case r.wordAt(k, "say", "read", "be"):
		return r.wordAt(k-1, "should", "must") &&
			r.wordAt(k-2, "order", "ticket", "paperwork", "sheet", "quote", "form", "invoice", "dome", "plastic")
	}
	return r.among(k, wishVerbsEs) ||
		r.wordAt(k, "decidimos", "optamos", "vamos", "quedamos", "quedo") && r.wordAt(k+1, "por", "con") ||
		r.wordAt(k, "sea", "sean") && r.wordAt(k-1, "que")
}

// wishFollows: what follows the value makes a wish of it: "polycarbonate is what we're after", "the single
// will do", "bronze for me".
func (r *reader) wishFollows(i int) bool {
	for r.among(i, wishTargets) {
		i++
	}
	if r.wordAt(i, "what", "which", "the") {
		for i++; r.wordAt(i, "one", "kind", "ones", "that"); i++ {
		}
	}
	switch {
	case r.wordAt(i, "im", "were"):
		return r.wordAt(i+1, "after", "going") || r.wordAt(i+1, "looking") && r.wordAt(i+2, "for")
	case r.wordAt(i, "i", "we", "he", "she", "id", "wed"):
		return r.wordAt(i+1, "want", "wants", "prefer", "prefers", "need", "needs", "like", "chose", "picked")
	case r.wordAt(i, "will", "would"):
		return r.wordAt(i+1, "do", "suit", "serve") ||
			r.wordAt(i+1, "be") && r.wordAt(i+2, "my", "our", "fine", "plenty", "perfect", "enough")
	}
	return r.wordAt(i, "please", "throughout", "porfavor", "suits") ||
		r.wordAt(i, "for") && r.wordAt(i+1, "me", "us", "mine", "ours") ||
		r.wordAt(i, "it") && r.wordAt(i+1, "is")
}

// wishedChoices takes the one number of layers and the one material that is wished for.
func (r *reader) wishedChoices() {
	for _, t := range []fitcheck.Topic{fitcheck.TopicLayers, fitcheck.TopicMaterial} {
		if r.known(t) || len(r.refs) > 1 || r.Units > 1 {
			continue
		}
		if h, v := r.oneWished(t); h != nil {
			r.out.Unclear = withoutTopic(r.out.Unclear, t)
			r.fact(t, 0, choiceValue(t, v), h.first, h.last)
		}
	}
}

func withoutTopic(all []Unclear, t fitcheck.Topic) []Unclear {
	out := []Unclear{}
	for _, u := range all {
		if u.Topic == nil || *u.Topic != t {
			out = append(out, u)
		}
	}
	return out
}

// oneWished is the value of the topic that is wished for, nil where none or more than one are.
func (r *reader) oneWished(t fitcheck.Topic) (*hit, string) {
	var found *hit
	value := ""
	for n := range r.choices {
		h := &r.choices[n]
		v, ok := h.has(string(t))
		if !ok || v == "?" || r.toks[h.first].used || r.wordAt(h.last+1, "or", "o") || r.wordAt(h.first-1, "or", "o") {
			if ok && v != "?" && (r.wordAt(h.last+1, "or", "o") || r.wordAt(h.first-1, "or", "o")) {
				return nil, ""
			}
			continue
		}
		if t == fitcheck.TopicLayers && !r.namesLayers(h) || !r.wishBefore(h.last) && !r.wishFollows(h.last+1) {
			continue
		}
		if r.partOfTalk(sense{topic: t, value: v}, h) || r.wordAt(h.last+1, "itself", "measures", "mide") {
			continue // "the acrylic itself measures 990 x 1260"
		}
		from, to := r.sentence(h.first)
		if r.negated(h.first) || r.leftBehind(h) ||
			r.wordsIn(from, h.first, "was", "were", "had", "era", "tenia", "if") ||
			r.unreal(t, h.first) || r.hearsay(h.first) || r.thingAt(h.last+1) {
			continue
		}
		if r.markAt(to, '?') || r.questioned(h.first) || r.doubtedBut(h.first, h.last, true) ||
			r.wordsIn(from, to+1, "maybe", "whichever", "thinking", "torn", "whether", "guess") {
			return nil, ""
		}
		if found != nil && v != value {
			return nil, ""
		}
		found, value = h, v
	}
	return found, value
}

// letGo: "scratch the double", "olvide la sencilla": the value is taken back where it is named.
func (r *reader) letGo(h *hit) bool {
	i := h.first - 1
	for r.wordAt(i, "the", "that", "my", "our", "about", "el", "la", "lo", "de") {
		i--
	}
	return r.wordAt(i, "scratch", "forget", "cancel", "ditch", "nix", "olvide", "olvidese")
}

// leftBehind: the value is the one that another is taken for: "scratch the double", "a step up from
// acrylic", "tired of acrylic".
func (r *reader) leftBehind(h *hit) bool {
	i := h.first - 1
	for r.among(i, beforeLeftBehind) {
		i--
	}
	return r.among(i, leaveVerbs)
}

// namesLayers: the word is of layers where it stands: two words of them, or a lone "double" that ends
// its clause or that a word for the plastic follows; "the single" only, since "a single" may count.
func (r *reader) namesLayers(h *hit) bool {
	if h.last > h.first {
		return r.toks[h.last].kind == wordToken && !r.wordAt(h.last, "dome", "domes", "domos", "one", "two", "three") &&
			(!h.senses[0].asked || r.asked(fitcheck.TopicLayers))
	}
	if !r.wordAt(h.first, "double", "single", "triple", "doble", "sencillo", "sencilla") {
		return false
	}
	next := h.last + 1
	for r.among(next, afterLayerName) {
		next++
	}
	if next < len(r.toks) && r.toks[next].kind == wordToken && !r.among(next, layersGoOn) {
		return false
	}
	if r.wordAt(h.first-1, "the", "el", "la") || r.asked(fitcheck.TopicLayers) {
		return true
	}
	return !r.wordAt(h.first, "single", "sencillo", "sencilla") && !r.asked(fitcheck.TopicCount) && !r.asked(fitcheck.TopicUse) &&
		r.askedSize() == "none"
}
