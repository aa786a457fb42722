package conversation

import (
	"slices"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/fitcheck"
)

// heard is what one turn's messages said.
type heard struct {
	entries  []Entry // new in the ledger
	changed  []Entry // those among them that replace what stood
	repeated []Entry // said again just as it stands
	unclear  []reading.Unclear
	requests []reading.Request
	dontKnow []Ask
	usual    []Ask
	confirm  string // yes, no or ""
	agreed   bool   // a yes or no to the question that a finding raised
	remark   bool   // words to such a question that are neither
	below    bool   // they don't get up to the skylight
	goesUp   bool   // a ladder, the roof or going up there is spoken of
	photos   int
	unseen   bool // photos are said to have been sent, and none came
	comes    bool // a photo is to come, in place of a measure that can't be taken
	looks    []PhotoLook
	off      bool     // all is called off
	bye      bool     // nothing but thanks and a farewell
	counted  bool     // how many there are of a kind
	kinds    int      // how many kinds were known before
	total    bool     // how many there are of all kinds
	sorry    bool     // something went wrong for them that the shop sold
	dropped  bool     // the last kind is no more wanted, and gone
	onlyOne  bool     // a second skylight was denied, and folded into the first
	leftOut  string   // what a kind is called that is no more wanted
	whom     bool     // whom to call when the time comes
	wordy    bool     // more words than small talk has
	pass     bool     // a question was asked that goes to a person, unless the owner has answered it
	answers  []string // the owner's answers to questions in these messages
}

func (h *heard) asks(r reading.Request) bool { return slices.Contains(h.requests, r) }

// passes says whether a question was asked that a person has to answer.
func (h *heard) passes() bool {
	return h.pass && len(h.answers) == 0
}

// news says whether anything was heard that changes what is known; a photo does not.
func (h *heard) news() bool {
	return h.dropped || slices.ContainsFunc(h.entries, func(e Entry) bool { return e.Topic != fitcheck.TopicPhotos })
}

// nothing says that nothing in the messages could be used.
func (h *heard) nothing() bool {
	return len(h.entries)+len(h.repeated) == 0 && len(h.unclear) == 0 && len(h.requests) == 0 && len(h.dontKnow) == 0 &&
		len(h.usual) == 0 && len(h.answers) == 0 && h.confirm == "" && h.photos == 0 && !h.agreed && !h.total && !h.whom &&
		h.leftOut == "" && len(h.looks) == 0
}

// hear reads the messages of a turn as one thought, since people send it in pieces,
// and puts what they say into the ledger.
func (t *turn) hear(in []Message) {
	for _, m := range in {
		t.hearPhotos(m)
		t.heard.looks = append(t.heard.looks, m.Looks...)
		if m.Answer != "" && standingAnswer(m.Text) == "" {
			t.heard.answers = append(t.heard.answers, m.Answer)
		}
	}
	kinds, told := t.talk.UnitCount(), t.totalTold()
	t.heard.kinds = kinds
	for _, p := range t.pieces(in) {
		t.hearPiece(p.Text, p.Asked, in)
	}
	t.splitTotal(kinds, told, joined(in))
	t.newTotal()
	t.restOfTotal()
	t.fitColors()
}

// hearPiece reads what stands together, as the answer to what was asked there.
func (t *turn) hearPiece(text string, asked []fitcheck.Topic, in []Message) {
	text = t.withoutByname(t.onlyOne(text, in), asked)
	r := t.onTheWay(t.read(text, asked), text)
	t.heard.below = t.heard.below || cantGetUp.MatchString(text)
	if wish, ok := t.wishOfChange(text, asked); ok {
		text, r = changeAsked(text), wish
	}
	r = t.styleLate(t.bronzeNamed(r, text), text)
	r = t.nameMended(t.fullName(t.innerToo(t.lateName(t.knownTown(r, text, asked), text), text), text), text)
	for unit, room := range r.Rooms {
		t.talk.Memory.Rooms[unit] = room
	}
	for unit, look := range r.Looks {
		t.talk.Memory.Looks[unit] = reading.AddLook(t.talk.Memory.Looks[unit], look)
	}
	t.setLanguage(r.Language)
	asks := slices.Contains(r.Requests, reading.RequestQuestion) && !r.Trade && !r.UsualAsked && !thinksAloud(r, text)
	t.heard.pass = t.heard.pass || asks
	t.heard.whom = t.heard.whom || r.WhomToCall
	r = t.overOne(t.byLayers(r, text), text)
	r = t.splitKind(t.countedTogether(t.byCount(t.settle(r, text))), text)
	r = t.leaveOut(r, text)
	r = t.ofNeed(t.fitUnits(t.sameMeasure(t.moveSize(t.openingRight(t.unitCarried(t.withoutNickname(t.correctsEarlier(r, text)))), text))), text)
	if r.Kinds > max(1, t.talk.UnitCount()) && r.Kinds <= t.talk.UnitCount()+3 {
		t.call(r.Kinds, "")
	}
	for _, u := range r.Unclear {
		t.meet(u) // before the facts, which may be of all kinds
	}
	t.heard.requests = append(t.heard.requests, r.Requests...)
	for _, f := range t.ofSomeKind(namedFirst(r.Facts), text) {
		if t.photosSaid(f) {
			continue
		}
		t.take(f, source(in, f.Said), text)
	}
	t.copySame(r.SameAs, fitcheck.UnitTopics, source(in, ""))
	for _, unit := range r.SameKind {
		if unit == 0 {
			unit = t.focus()
		}
		t.copySame(map[int]int{unit: 1}, kindTopics, source(in, ""))
	}
	for _, u := range r.Unclear {
		if facts := t.cleared(u, text); len(facts) > 0 {
			for _, f := range facts {
				t.take(f, source(in, f.Said), text)
			}
			continue
		}
		t.wantsBronze(u)
		t.heard.unclear = append(t.heard.unclear, u)
	}
	t.heard.dontKnow = append(t.heard.dontKnow, t.asked(r.DontKnow)...)
	t.hearAgreement(text)
	t.heard.usual = append(t.heard.usual, t.asked(r.Usual)...)
}

// cleared settles what the talk knows enough to be sure of, though the words alone leave it
// open.
func (t *turn) cleared(u reading.Unclear, text string) []reading.Fact {
	for _, way := range []func(reading.Unclear) (reading.Fact, bool){t.sureOfUnits, t.lateAnswer, t.insideOfBox, t.chosenAtLast} {
		if f, ok := way(u); ok {
			return []reading.Fact{f}
		}
	}
	for _, way := range []func(reading.Unclear, string) (reading.Fact, bool){t.metalFrame, t.putRight, t.correctedNear} {
		if f, ok := way(u, text); ok {
			return []reading.Fact{f}
		}
	}
	if facts := t.paintedBronze(u); len(facts) > 0 {
		return facts
	}
	return t.innerColors(u, text)
}

// read reads words as the answer to what was asked, with what the talk knows.
func (t *turn) read(text string, asked []fitcheck.Topic) reading.Reading {
	return reading.Read(reading.Input{Text: text, Asked: asked, Units: t.talk.UnitCount(), Count: t.totalTold(), Counts: t.counts(), Rooms: t.talk.Memory.Rooms, Names: t.kindNames(), Sizes: t.kindSizes(), Language: t.talk.Language})
}

// hearAgreement hears a yes or no to the question that a finding raised, which has no
// topic of its own; whatever else was said to it is for staff to read.
func (t *turn) hearAgreement(text string) {
	if t.talk.State != Rechecking || !t.heard.nothing() {
		return
	}
	r := reading.Read(reading.Input{Text: text, Asked: []fitcheck.Topic{fitcheck.TopicConfirm}, Language: t.talk.Language})
	for _, f := range r.Facts {
		t.heard.agreed = t.heard.agreed || f.Topic == fitcheck.TopicConfirm
	}
	t.heard.remark = len(strings.Fields(text)) > 2
}

func joined(in []Message) string {
	texts := make([]string, 0, len(in))
	for _, m := range in {
		if strings.TrimSpace(m.Text) != "" {
			texts = append(texts, m.Text)
		}
	}
	return strings.Join(texts, "\n")
}

// source is the message that the words come from; the last one where they span several.
func source(in []Message, said string) int {
	for i := len(in) - 1; i >= 0 && said != ""; i-- {
		if strings.Contains(in[i].Text, said) {
			return in[i].N
		}
	}
	return in[len(in)-1].N
}

func (t *turn) hearPhotos(m Message) {
	if m.Photos == 0 {
		return
	}
	before, _ := t.talk.Value(fitcheck.TopicPhotos, 0).(fitcheck.Whole)
	e := Entry{Topic: fitcheck.TopicPhotos, Value: before + fitcheck.Whole(m.Photos), Said: m.Text, Message: m.N, By: FromCustomer}
	t.talk.add(e)
	t.heard.entries = append(t.heard.entries, e)
	t.heard.photos += m.Photos
	t.out.PhotosOf[m.N] = t.photoTopic()
}

// photosSaid: photos count as they come; of those that are only said to have been sent, none
// has been seen.
func (t *turn) photosSaid(f reading.Fact) bool {
	said, ok := f.Value.(fitcheck.Whole)
	if f.Topic != fitcheck.TopicPhotos || !ok || said == 0 {
		return false
	}
	came, _ := t.talk.Value(fitcheck.TopicPhotos, 0).(fitcheck.Whole)
	t.heard.unseen = came == 0
	return true
}

// photoTopic is what a photo that comes now was asked for; the style where nobody asked.
func (t *turn) photoTopic() fitcheck.Topic {
	if t.talk.Memory.PhotoOf != "" {
		return t.talk.Memory.PhotoOf
	}
	return fitcheck.TopicStyle
}

// setLanguage follows the person, not a single word of theirs: the reading already
// weighs that.
func (t *turn) setLanguage(language string) {
	if language == "en" || language == "es" {
		t.talk.Language = language
	}
}

// take puts one fact into the ledger, for each unit that it can mean.
func (t *turn) take(f reading.Fact, message int, text string) {
	if f.Topic == fitcheck.TopicConfirm {
		if c, ok := f.Value.(fitcheck.Choice); ok {
			t.heard.confirm = string(c)
		}
		if !t.isAsked(fitcheck.TopicConfirm) {
			return
		}
	}
	t.heard.counted = t.heard.counted || f.Topic == fitcheck.TopicCount && f.Unit > 0
	for _, unit := range t.unitsOf(f, text) {
		if f.Topic == fitcheck.TopicFinish && t.frameStays(unit) {
			continue
		}
		t.takeFor(f, unit, message, text)
	}
}

// frameStays: of this unit only the dome is replaced, and another gets the new frame whose finish is told.
func (t *turn) frameStays(unit int) bool {
	if t.talk.text(fitcheck.TopicWant, unit) != fitcheck.WantDomeOnly {
		return false
	}
	for other := 1; other <= t.talk.UnitCount(); other++ {
		if other != unit && t.talk.text(fitcheck.TopicWant, other) == fitcheck.WantCompleteUnit {
			return true
		}
	}
	return false
}

func (t *turn) takeFor(f reading.Fact, unit, message int, text string) {
	before := t.talk.entry(f.Topic, unit)
	f.Value = t.rounded(f.Value, unit)
	e := Entry{Topic: f.Topic, Unit: unit, Value: f.Value, Said: f.Said, Message: message, By: FromCustomer}
	if before != nil {
		f.Value = keptInner(before.Value, f.Value, text, f.Said)
		v, whole := merged(f.Topic, before.Value, f.Value)
		if !whole {
			t.heard.unclear = append(t.heard.unclear, reading.Unclear{Topic: &f.Topic, Unit: unit, Said: f.Said, Why: whySide})
			return
		}
		if partOf(before.Value, v) && !strings.Contains(f.Said, before.Said) {
			e.Said = before.Said + " / " + f.Said
		}
		e.Value = joinedList(f.Topic, before.Value, v, text, f.Said)
	}
	if !t.talk.add(e) {
		t.heard.repeated = append(t.heard.repeated, e)
		return
	}
	t.heard.entries = append(t.heard.entries, e)
	if before != nil && !partOf(before.Value, e.Value) && !fullerName(*before, e) {
		t.heard.changed = append(t.heard.changed, e)
	}
}

// rounded makes a lone number of a round unit its diameter: it has no other side.
func (t *turn) rounded(v fitcheck.Value, unit int) fitcheck.Value {
	if s, ok := v.(fitcheck.Size); ok && s.One > 0 && t.talk.text(fitcheck.TopicOutline, unit) == fitcheck.OutlineRound {
		return fitcheck.Size{Diameter: s.One, Resolution: s.Resolution}
	}
	return v
}

// whySide marks a lone number that could replace either side of a size.
const whySide reading.Why = "side"

// partOf says whether a size that stood was only a part of the new one, so that the
// new one completes rather than changes it.
func partOf(before, now fitcheck.Value) bool {
	b, ok := before.(fitcheck.Size)
	n, also := now.(fitcheck.Size)
	return ok && also && !b.Complete() && n.Complete()
}

// kindTopics are what "the same frame" says of another unit.
var kindTopics = []fitcheck.Topic{fitcheck.TopicStyle, fitcheck.TopicFrameCondition}

// copySame gives a unit what was said of another ("same as the other one"), where it
// has nothing of its own.
func (t *turn) copySame(same map[int]int, topics []fitcheck.Topic, message int) {
	units := make([]int, 0, len(same))
	for unit := range same {
		units = append(units, unit)
	}
	slices.Sort(units)
	for _, unit := range units {
		for _, topic := range topics {
			from := t.talk.entry(topic, same[unit])
			if from == nil || topic == fitcheck.TopicCount || t.talk.Value(topic, unit) != nil {
				continue
			}
			e := Entry{Topic: topic, Unit: unit, Value: from.Value, Said: from.Said, Message: message, By: FromCustomer}
			if t.talk.add(e) {
				t.heard.entries = append(t.heard.entries, e)
			}
		}
	}
}

// asked turns topics that were left open into the questions that they answer.
func (t *turn) asked(topics []fitcheck.Topic) []Ask {
	var out []Ask
	for _, a := range t.talk.Memory.Asking {
		if slices.Contains(topics, a.Topic) {
			out = append(out, a)
		}
	}
	return out
}

func (t *turn) isAsked(topic fitcheck.Topic) bool {
	return slices.ContainsFunc(t.talk.Memory.Asking, func(a Ask) bool { return a.Topic == topic })
}
