package conversation

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/reading"
	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// How many of each kind: a number that is told before there are kinds ("I need six") is that
// of all of them, unless a kind is added to it ("and one more, of 30 x 30").

// addsKind are words that put a kind beside those that were counted.
var addsKind = regexp.MustCompile(`(?i)\b(also|plus|in addition|on top of|besides|extra|as well|too|one more|(two|three|\d+) more|add|tambi[eé]n|adem[aá]s|otr[oa]s? (dos|tres|m[aá]s)|agreg\w+|m[aá]s un[oa]?)\b`)

// meet notes a kind of which nothing is known yet but a size that has to be asked about:
// "the second one is 37 1/2 x 37 1/2".
func (t *turn) meet(u reading.Unclear) {
	if size, ok := u.Guess.(fitcheck.Size); ok && size.Complete() && u.Why == reading.WhyWhich && u.Unit == max(1, t.talk.UnitCount())+1 {
		t.call(u.Unit, u.Said)
	}
}

// countedTogether splits the number of all where one message tells it and the kinds as well:
// "need 2 domes, the kitchen one bronze, the bathroom one white".
func (t *turn) countedTogether(r reading.Reading) reading.Reading {
	kinds, at := 0, -1
	for n, f := range r.Facts {
		kinds = max(kinds, f.Unit)
		if f.Topic == fitcheck.TopicCount && f.Unit == 0 {
			at = n
		} else if f.Topic == fitcheck.TopicCount {
			return r // of the kind that is not named, beside the other's
		}
	}
	for _, u := range r.Unclear {
		kinds = max(kinds, u.Unit)
	}
	if at < 0 && r.Total == nil || kinds < 2 || t.talk.UnitCount() > 1 {
		return r
	}
	total, facts := r.Total, slices.Clone(r.Facts)
	if at >= 0 {
		total, facts = &r.Facts[at], slices.Delete(facts, at, at+1)
	}
	n, _ := total.Value.(fitcheck.Whole)
	if int(n) < kinds {
		return r
	}
	r.Facts = facts
	if int(n) > kinds {
		t.talk.Memory.Total = int(n)
		return r
	}
	for unit := 1; unit <= kinds; unit++ {
		r.Facts = append(r.Facts, reading.Fact{Topic: total.Topic, Unit: unit, Value: fitcheck.Whole(1), Said: total.Said})
	}
	return r
}

// splitTotal makes the number of the only kind known that of all, where this turn tells of
// more kinds: with as many kinds as skylights there is one of each, otherwise how many of
// each is asked.
func (t *turn) splitTotal(before, told int, text string) {
	now := t.talk.UnitCount()
	if before > 1 || now < 2 {
		return
	}
	var count Entry
	if e := t.talk.entry(fitcheck.TopicCount, 1); e != nil {
		count = *e // the ledger grows below
	}
	total, _ := count.Value.(fitcheck.Whole)
	of := count.By == FromCustomer && !addsKind.MatchString(text) && !t.heard.counted && int(total) >= now
	parts := told > 1 && t.heard.counted && t.sumOfKinds() == told // "two are as I said, the third is 22 x 22"
	for unit := 2; unit <= now; unit++ {
		t.sharedByAll(unit, of, parts, count)
	}
	if !of && t.otherOfTotal(total, count.Message, text) {
		t.talk.retract(fitcheck.TopicCount, 1)
		t.talk.Memory.Total = int(total)
		return // the first kind is what is left
	}
	if !of {
		return // said of the first kind alone
	}
	t.talk.retract(fitcheck.TopicCount, 1) // it is that of no kind
	if int(total) > now {
		t.talk.Memory.Total = int(total)
		return
	}
	// They belong to the message with the number, so that an undo of the sizes leaves them.
	count.Value = fitcheck.Whole(1)
	for count.Unit = 1; count.Unit <= now; count.Unit++ {
		t.talk.add(count)
	}
}

// otherOfTotal: "the other 2 are 26 x 26", of four that were told before: the first kind is not all four.
func (t *turn) otherOfTotal(total fitcheck.Whole, message int, text string) bool {
	other := t.talk.entry(fitcheck.TopicCount, 2)
	if other == nil || message == t.lastMessage || t.talk.UnitCount() != 2 || addsKind.MatchString(text) || !theOther.MatchString(text) {
		return false
	}
	n, _ := other.Value.(fitcheck.Whole)
	return n > 0 && n < total
}

// theOther are words for what is left of a number that was told.
var theOther = regexp.MustCompile(`(?i)\b(the (other|others|rest|remaining)|(los|las) (otr[oa]s|dem[aá]s))\b`)

// inAll are words that make a number that of all kinds.
var inAll = regexp.MustCompile(`(?i)\b(in all|in total|total|altogether|all together|en total)\b`)

// ofSomeKind leaves out a number that is of no kind in particular, where several are known: it
// is that of all, or, where none was asked about, a person goes on with it.
func (t *turn) ofSomeKind(facts []reading.Fact, text string) []reading.Fact {
	all := inAll.MatchString(text)
	if t.talk.UnitCount() < 2 || t.atOneUnit() && !all {
		return facts
	}
	topic := fitcheck.TopicCount
	return slices.DeleteFunc(facts, func(f reading.Fact) bool {
		total := f.Topic == topic && f.Unit == 0
		if n, ok := f.Value.(fitcheck.Whole); total && all && ok {
			t.talk.Memory.Total, t.heard.total = int(n), true
		} else if total {
			t.heard.unclear = append(t.heard.unclear, reading.Unclear{Topic: &topic, Said: f.Said, Why: reading.WhyChoice})
		}
		return total
	})
}

// totalTold is how many skylights were told of, while no kinds tell them apart.
func (t *turn) totalTold() int {
	if t.talk.UnitCount() > 1 {
		return 0
	}
	n, _ := t.talk.Value(fitcheck.TopicCount, 1).(fitcheck.Whole)
	return int(n)
}

// sharedByAll gives a new kind what was said of all before anything told the kinds apart:
// what goes before the first size of one, or speaks of several, or came after their number
// and not in one breath with a size. A kind that is told apart by a choice alone ("two of
// them bronze") is in all else as the first.
func (t *turn) sharedByAll(unit int, counted, parts bool, count Entry) {
	alike := (counted || parts) && !t.sized(unit)
	general := !t.measuredBefore(t.lastMessage)
	for _, topic := range fitcheck.UnitTopics {
		e := t.talk.entry(topic, 1)
		if e == nil || topic == fitcheck.TopicCount || t.talk.Value(topic, unit) != nil || e.Message == t.lastMessage || !alike && !shared(topic) {
			continue
		}
		if alike || parts || general || plural.MatchString(e.Said) || counted && e.Message >= count.Message && !t.measuredIn(e.Message) {
			of := *e
			of.Unit = unit
			t.talk.add(of)
		}
	}
}

// sumOfKinds is how many there are of all kinds, 0 where it is not told of each.
func (t *turn) sumOfKinds() int {
	sum := 0
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		n, ok := t.talk.Value(fitcheck.TopicCount, unit).(fitcheck.Whole)
		if !ok {
			return 0
		}
		sum += int(n)
	}
	return sum
}

// counts is how many there are of each kind, where several are known.
func (t *turn) counts() map[int]int {
	counts := map[int]int{}
	for unit := 1; unit <= t.talk.UnitCount() && t.talk.UnitCount() > 1; unit++ {
		if n, ok := t.talk.Value(fitcheck.TopicCount, unit).(fitcheck.Whole); ok {
			counts[unit] = int(n)
		}
	}
	return counts
}

// sized says whether a length of a unit was told, or one that has to be asked about.
func (t *turn) sized(unit int) bool {
	return slices.ContainsFunc(t.talk.Ledger, func(e Entry) bool { return e.Unit == unit && e.Topic.OfLength() && !e.Undone }) ||
		slices.ContainsFunc(t.heard.unclear, func(u reading.Unclear) bool { return u.Unit == unit })
}

// measuredBefore says whether a length of the first kind was told before a message.
func (t *turn) measuredBefore(before int) bool {
	return slices.ContainsFunc(t.talk.Ledger, func(e Entry) bool {
		return e.Unit == 1 && e.Message < before && e.Topic.OfLength() && !e.Undone
	})
}

// measuredIn says whether a message told a length of the first kind.
func (t *turn) measuredIn(message int) bool {
	return slices.ContainsFunc(t.talk.Ledger, func(e Entry) bool {
		return e.Message == message && e.Unit == 1 && e.Topic.OfLength()
	})
}

// restOfTotal counts the last kind where the others and the number of all are known.
func (t *turn) restOfTotal() {
	rest, open := t.talk.Memory.Total, 0
	if rest == 0 {
		return
	}
	var last Entry
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		e := t.talk.entry(fitcheck.TopicCount, unit)
		if e == nil {
			open, last.Unit = open+1, unit
			continue
		}
		n, _ := e.Value.(fitcheck.Whole)
		rest -= int(n)
		last.Said = e.Said
	}
	if open != 1 || rest < 1 || last.Said == "" {
		return
	}
	last.Topic, last.Value, last.Message, last.By = fitcheck.TopicCount, fitcheck.Whole(rest), t.lastMessage, FromCustomer
	if t.talk.add(last) {
		t.heard.entries = append(t.heard.entries, last)
	}
}

// counting asks how many there are of a kind, where only the number of all was told.
func (t *turn) counting() []step {
	if t.talk.Memory.Total == 0 {
		return nil
	}
	for _, a := range t.eachUnit(fitcheck.TopicCount) {
		if t.open(a) {
			return asking(Measuring, []Ask{a})
		}
	}
	return nil
}

// countQuestion asks how many of all are of one kind, "" where that is not the question.
func (t *turn) countQuestion(a Ask) string {
	if a.Topic != fitcheck.TopicCount || t.talk.Memory.Total == 0 {
		return ""
	}
	return t.vary("ask.count_of", wording.Args{"n": strconv.Itoa(t.talk.Memory.Total)})
}

// countTrouble is what is wrong with the numbers of the kinds, for staff: "" where they are as
// many as was said of all.
func (t *turn) countTrouble() string {
	all, sum := t.talk.Memory.Total, 0
	if all == 0 || t.talk.UnitCount() < 2 {
		return ""
	}
	for unit := 1; unit <= t.talk.UnitCount(); unit++ {
		n, ok := t.talk.Value(fitcheck.TopicCount, unit).(fitcheck.Whole)
		if !ok {
			return fmt.Sprintf("%d skylights in all, not told how many of each", all)
		}
		sum += int(n)
	}
	if sum != all {
		return fmt.Sprintf("%d skylights in all, but %d by kind", all, sum)
	}
	return ""
}

// byCount finds the kind that the words call by its number: "the two: 37 1/2 by 37 1/2",
// where there are four of one kind and two of another.
func (t *turn) byCount(r reading.Reading) reading.Reading {
	n := slices.IndexFunc(r.Facts, func(f reading.Fact) bool { return f.Topic == fitcheck.TopicCount && f.Unit == 0 })
	if n < 0 || t.talk.UnitCount() < 2 || t.isAsked(fitcheck.TopicCount) {
		return r
	}
	unit := 0
	for u := 1; u <= t.talk.UnitCount(); u++ {
		switch {
		case t.talk.Value(fitcheck.TopicCount, u) != r.Facts[n].Value:
		case unit > 0:
			return r // more than one kind of that number
		default:
			unit = u
		}
	}
	if unit == 0 {
		return r
	}
	for k := range r.Facts {
		if f := &r.Facts[k]; f.Unit == 0 && f.Topic.OfUnit() {
			f.Unit = unit
		}
	}
	for k := range r.Unclear {
		if u := &r.Unclear[k]; u.Unit == 0 && (u.Topic == nil || u.Topic.OfUnit()) {
			u.Unit = unit
		}
	}
	return r
}

// someOther are words that want some of a kind otherwise: "one of them should be bronze",
// "make two of them white".
var someOther = regexp.MustCompile(`(?i)(?:\b(one|1|two|2|three|3|una?|uno|dos) (?:(?:of|de) (?:them|those|these|the \w+|ell[ao]s|es[ao]s) )?(?:(?:should|shall|must|needs? to|has to|have to|will|debe|deben|tiene que|que)(?: be| ser| sea| sean)? (?:in )?)|\b(?:make|want|have|do|get|put) (one|1|two|2|three|3) (?:of (?:them|those|these) )?(?:in |to be )?|\b(one|1|two|2|three|3|uno|una|dos) (?:of (?:them|those|these)|de (?:ell[ao]s|es[ao]s)) (?:in )?)`)

var somany = map[string]fitcheck.Whole{"one": 1, "1": 1, "un": 1, "una": 1, "uno": 1, "two": 2, "2": 2, "dos": 2, "three": 3, "3": 3}

// splitKind parts those of a kind that are wanted in another way from the others of it, where
// the summary is put right with a choice right after such words.
func (t *turn) splitKind(r reading.Reading, text string) reading.Reading {
	at := someOther.FindStringSubmatchIndex(text)
	n, _ := t.talk.Value(fitcheck.TopicCount, 1).(fitcheck.Whole)
	if at == nil || !t.summed() || t.talk.Memory.Quiet || t.talk.UnitCount() != 1 || n < 2 {
		return r
	}
	group := text[max(at[2], at[4], at[6]):max(at[3], at[5], at[7])]
	some, rest := somany[strings.ToLower(group)], text[at[1]:]
	choice := slices.ContainsFunc(r.Facts, func(f reading.Fact) bool {
		return f.Unit == 0 && slices.Contains(choiceTopics, f.Topic) && strings.HasPrefix(rest, f.Said)
	})
	if some >= n || !choice {
		return r
	}
	said := strings.TrimSpace(text[at[0]:at[1]])
	r.Facts = slices.DeleteFunc(slices.Clone(r.Facts), func(f reading.Fact) bool { return f.Topic == fitcheck.TopicCount })
	for k := range r.Facts {
		if f := &r.Facts[k]; slices.Contains(choiceTopics, f.Topic) {
			f.Unit = 2
		}
	}
	t.copySame(map[int]int{2: 1}, fitcheck.UnitTopics, t.lastMessage)
	for unit, count := range []fitcheck.Whole{n - some, some} {
		r.Facts = append(r.Facts, reading.Fact{Topic: fitcheck.TopicCount, Unit: unit + 1, Value: count, Said: said})
	}
	return r
}

// namedFirst puts what is said of one kind before what is said of all, so that a kind that a
// message speaks of for the first time has its part of the latter: "double, the first bronze,
// the others clear".
func namedFirst(facts []reading.Fact) []reading.Fact {
	out := slices.Clone(facts)
	slices.SortStableFunc(out, func(a, b reading.Fact) int {
		switch {
		case (a.Unit > 0) == (b.Unit > 0):
			return 0
		case a.Unit > 0:
			return -1
		}
		return 1
	})
	return out
}
