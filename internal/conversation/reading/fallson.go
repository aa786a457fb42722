package reading

import "example.com/intake-bot/internal/fitcheck"

// What falls on a skylight, told by the parts of a clause: a thing that falls, a verb of falling, and
// a word for how often: "black walnuts off the neighbor's tree hit that skylight all through October",
// "acorns bang on it every fall". To the question itself once is enough: "a limb hit it".

var (
	fallsElsewhere = wordsOf(`car truck house shed fence carro troca driveway deck porch lawn patio grass old cut
		trimmed removed hauled could might would if`)
	fallsGetters  = wordsOf(`we you it always do also often`)
	wholeTimes    = wordsOf(`the through over summer winter fall spring autumn year season day night`)
	likenessLinks = wordsOf(`a an the of as some una de`)
	likenessWords = wordsOf(`like size big large sized como tamano`)
	seldomWords   = wordsOf(`rarely seldom scarcely infrequently rara raras`)
	treeWords     = wordsOf(`tree trees branch branches limb limbs`)
)

// fallers are the things that fall, each with the risk that it is.
var fallers = byWord(map[string]string{
	"trees": `branch branches limb limbs acorn acorns walnut walnuts pecan pecans pinecone pinecones cones twigs
		hickory chestnuts rama ramas bellotas nueces tree trees`,
	"hail": `hail hailstones hailstorm hailstorms granizo granizos`,
	"golf": `golf golfballs`,
})

var fallVerbs = wordsOf(`hit hits hitting fall falls falling fell drop drops dropping dropped land lands landing
	landed bounce bounces bouncing bounced pelt pelts pelting pelted pound pounds pounding pounded bang bangs banging
	banged smack smacks smacking smacked thump thumps thumping clobber clobbers clobbered bombard bombards rain rains
	raining roll rolls rolling came comes coming crash crashes crashed cae caen caer cayo cayeron pega pegan pego
	golpea golpean golpeo rebotan`)

var habits = wordsOf(`every each always constantly regularly often frequently keeps keep nonstop continually daily
	yearly season seasons cada siempre seguido`)

// fallsOn takes what falls on the skylight where no phrase has told of it.
func (r *reader) fallsOn() {
	if r.known(fitcheck.TopicImpactRisk) || r.doubtful(fitcheck.TopicImpactRisk) {
		return
	}
	list, first, last := fitcheck.ChoiceList{}, -1, -1
	for i := range r.toks {
		v := fallers[r.toks[i].text]
		if v == "" || has(list, v) || r.toks[i].kind != wordToken || r.toks[i].used || !r.falls(i, v) {
			continue
		}
		if list = append(list, v); first < 0 {
			first = i
		}
		last = i
	}
	if len(list) > 0 {
		r.fact(fitcheck.TopicImpactRisk, 0, list, first, last)
	}
}

// falls: the clause says that the thing falls there, often or to the question.
func (r *reader) falls(i int, v string) bool {
	if v == "golf" && !r.golfBalls(i) || r.fallUnsaid(i) {
		return false
	}
	verb, often := -1, false
	for k := r.clauseStart(i); k <= r.clauseEnd(i); k++ {
		if r.fallVerbAt(k, v) {
			verb = k
		}
		if v != "trees" && r.getsIt(k) && (v == "golf" || r.asked(fitcheck.TopicImpactRisk)) {
			verb, often = k, true
		}
		often = often || r.oftenAt(k)
	}
	return verb >= 0 && verb != i && (often || r.asked(fitcheck.TopicImpactRisk))
}

// golfBalls: "golf balls", "pelotas de golf", and not the course alone.
func (r *reader) golfBalls(i int) bool {
	return r.wordAt(i, "golfballs") || r.wordAt(i+1, "balls", "ball") || r.wordAt(i-2, "pelotas", "bolas")
}

// fallUnsaid: the clause denies, doubts or asks it, or tells of another place or time.
func (r *reader) fallUnsaid(i int) bool {
	return r.markAt(r.sentenceLast(i), '?') || r.anyOf(r.clauseStart(i), r.clauseEnd(i)+1, fallsElsewhere) ||
		r.negated(i) || r.deniedAfter(i) || r.seldom(i) || r.likenedTo(i) || r.doubted(i, i) ||
		r.unreal(fitcheck.TopicImpactRisk, i)
}

// fallVerbAt: a verb of falling: "came down", not "came"; what rains on it falls off a tree, but a tree
// that is rained on does not.
func (r *reader) fallVerbAt(k int, v string) bool {
	switch {
	case !r.among(k, fallVerbs) || r.among(k-1, negWords):
		return false
	case r.wordAt(k, "came", "comes", "coming"):
		return r.wordAt(k+1, "down", "over", "through", "off")
	case v == "trees" && r.wordAt(k, "rain", "rains", "raining"):
		return r.wordAt(k+1, "down", "on")
	}
	return true
}

// getsIt: "we get golf balls", "it always gets hail".
func (r *reader) getsIt(k int) bool { return r.wordAt(k, "get", "gets") && r.among(k-1, fallsGetters) }

// oftenAt: "every", "all fall", "todo el", "a lot".
func (r *reader) oftenAt(k int) bool {
	return r.among(k, habits) || r.wordAt(k, "all") && r.among(k+1, wholeTimes) ||
		r.wordAt(k, "todo", "toda") && r.wordAt(k+1, "el", "la") || r.wordAt(k, "lot") && r.wordAt(k-1, "a")
}

// likenedTo: what falls is only likened to the thing: "hail the size of a golf ball", "rain like hail".
func (r *reader) likenedTo(i int) bool {
	k := i - 1
	for r.among(k, likenessLinks) {
		k--
	}
	return r.among(k, likenessWords) || r.wordAt(i+1, "size", "sized") || r.wordAt(i+2, "size", "sized")
}

// seldom: "we rarely see hail": so little that it is asked about.
func (r *reader) seldom(i int) bool {
	from := r.clauseStart(i)
	return r.anyOf(from, r.clauseEnd(i)+1, seldomWords) || r.wordsIn(from, i, "hardly", "barely", "casi")
}

// keepsFalling: "walnuts off the tree hit it all through October": what falls again and again is no storm.
func (r *reader) keepsFalling(s *saying) bool {
	if s.value != fitcheck.ProblemStorm || !r.anyOf(s.first, s.last+1, treeWords) {
		return false
	}
	for k := r.clauseStart(s.first); k <= r.clauseEnd(s.last); k++ {
		if r.among(k, habits) || r.wordAt(k, "all") && r.among(k+1, wholeTimes) {
			return true
		}
	}
	return false
}
