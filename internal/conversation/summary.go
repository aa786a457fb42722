package conversation

import (
	"strconv"
	"strings"

	"example.com/intake-bot/internal/conversation/wording"
	"example.com/intake-bot/internal/fitcheck"
)

// summary says back all that the order rests on, in one breath.
func (t *turn) summary() string {
	parts := []string{t.summaryHead()}
	if who := t.who(); who != "" {
		parts = append(parts, who+".")
	}
	for i := range t.units() {
		parts = append(parts, t.unitSummary(i))
	}
	if said := t.unplaced(); said != "" {
		parts = append(parts, t.line("summary.unplaced", 0, wording.Args{"said": said}))
	}
	if t.talk.Place() == (fitcheck.Place{}) {
		parts = append(parts, t.line("summary.no_place", 0, nil)) // said, not asked once more
	}
	return strings.Join(parts, " ")
}

// summaryHead begins the list; one that is shown again was changed, or what was asked for stood in
// it.
func (t *turn) summaryHead() string {
	if t.talk.Memory.Said["summary.head"] > 0 && !t.talk.Memory.Relisted {
		return t.vary("summary.same", nil)
	}
	return t.vary("summary.head", nil) // the first way is for the first list
}

func (t *turn) who() string {
	var words []string
	for _, topic := range []fitcheck.Topic{fitcheck.TopicName, fitcheck.TopicPlace, fitcheck.TopicUse} {
		if w := t.shown(topic, 0); w != "" && t.talk.text(topic, 0) != fitcheck.UseOther {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// summaryTopics are what a unit's summary says after the part itself.
var summaryTopics = []fitcheck.Topic{fitcheck.TopicProfile, fitcheck.TopicLayers, fitcheck.TopicMaterial, fitcheck.TopicColor, fitcheck.TopicFinish}

func (t *turn) unitSummary(i int) string {
	unit := i + 1
	what := t.line("part."+string(t.replaceOf(i)), 0, nil)
	if t.plainLabel(unit) == "" {
		what = strings.ToUpper(what[:1]) + what[1:]
	}
	if n, ok := t.talk.Value(fitcheck.TopicCount, unit).(fitcheck.Whole); ok && (n > 1 || t.talk.UnitCount() > 1) {
		what = t.line("part."+string(t.replaceOf(i)), 0, nil)
		what = strconv.Itoa(int(n)) + " x " + what
	}
	words := []string{what}
	for _, topic := range summaryTopics {
		w := t.shown(topic, unit)
		if topic == fitcheck.TopicProfile && t.talk.text(topic, unit) == fitcheck.ProfileDome {
			continue // the part is called one
		}
		if topic == fitcheck.TopicColor && t.innerOpen(unit) {
			w = t.line("color.outer", 0, wording.Args{"color": w})
		}
		if topic == fitcheck.TopicFinish && w == "" && t.talk.Memory.Bronze[unit] {
			w = t.line("finish.bronze", 0, nil)
		}
		if w != "" {
			words = append(words, w)
		}
	}
	sentence := strings.Join(words, ", ")
	var sizes []string
	for _, topic := range fitcheck.UnitTopics {
		if w := t.shown(topic, unit); w != "" && topic.OfLength() {
			sizes = append(sizes, t.label(topic)+" "+w)
		}
	}
	if len(sizes) > 0 {
		sentence += "; " + strings.Join(sizes, "; ")
	}
	return t.line("summary.unit", 0, wording.Args{"unit": t.plainLabel(unit), "what": sentence}) + "."
}

// innerOpen says whether a dome of several layers has but one color, so that nobody takes
// the one they named for the color of both.
func (t *turn) innerOpen(unit int) bool {
	layers, _ := t.talk.Value(fitcheck.TopicLayers, unit).(fitcheck.Whole)
	color, _ := t.talk.Value(fitcheck.TopicColor, unit).(fitcheck.Color)
	return layers > 1 && color.Outer != "" && color.Inner == ""
}

func (t *turn) replaceOf(i int) fitcheck.Replace {
	if i < len(t.check.Units) {
		return t.check.Units[i].Replace
	}
	return fitcheck.ReplaceStaff
}

// priceLine is an honest answer to "how much": the estimate where there is one and the
// owner tells it, else what the price depends on.
func (t *turn) priceLine() string {
	low, high := int64(0), int64(0)
	for _, r := range t.check.Units {
		if r.Estimate == nil || r.Estimate.High == 0 || r.Order == nil || r.Order.Estimated {
			return t.vary("answer.price", nil)
		}
		low, high = low+r.Estimate.Low, high+r.Estimate.High // each is of all its pieces
	}
	if !t.shop.ShowEstimate || high == 0 {
		return t.vary("answer.price", nil)
	}
	return t.vary("answer.price_estimate", wording.Args{"low": thousands(low), "high": thousands(high)})
}

// thousands writes an amount as Americans do: 12,345.
func thousands(n int64) string {
	s := strconv.FormatInt(n, 10)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}
