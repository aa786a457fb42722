package rehearsal

import "example.com/intake-bot/internal/fitcheck"

// mistake is one way of getting a measure wrong that the trade knows.
type mistake struct {
	name string
	unit bool // of a complete unit's curb; otherwise of a dome
	// work puts it into what is said of a skylight; false where it can't happen to it. The
	// topic is the one that is said wrong.
	work func(d dice, s *skylight, said sizes) (fitcheck.Topic, bool)
	// noUnit leaves out the unit of measure where it is the mistake itself.
	noUnit measure
	named  bool // the sides are named, or it would be none
}

const (
	outside = fitcheck.TopicCurbOutside
	inside  = fitcheck.TopicCurbInside
	plastic = fitcheck.TopicPlasticSize
	opening = fitcheck.TopicRetainerOpening
)

// betweenDrywall is named where its owner is asked about it.
const betweenDrywall = "inside taken between drywall"

var mistakes = []mistake{
	{name: betweenDrywall, unit: true, work: func(d dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[inside] = said[inside].plus(-2 * inches(pick(d, 0.5, 0.625)))
		return inside, true
	}},
	{name: "outside taken over the flare of the flashing", unit: true, work: func(d dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[outside] = said[outside].plus(inches(pick(d, 0.75, 1, 1.25, 1.5)))
		return outside, true
	}},
	{name: "old frame taken for the curb", unit: true, work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[outside] = said[fitcheck.TopicFrameInside].plus(inches(0.25))
		return outside, true
	}},
	{name: "inside given for the outside", unit: true, work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[outside] = said[inside]
		return outside, true
	}},
	{name: "outside and inside exchanged", unit: true, work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[outside], said[inside] = said[inside], said[outside]
		return outside, true
	}},
	{name: "tape case left out inside", unit: true, work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[inside] = said[inside].plus(-inches(3))
		return inside, true
	}},
	{name: "retainer taken for the plastic", work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[plastic] = said[fitcheck.TopicRetainerOutside]
		return plastic, true
	}},
	{name: "opening given for the plastic", work: func(_ dice, _ *skylight, said sizes) (fitcheck.Topic, bool) {
		said[plastic] = said[opening]
		return plastic, true
	}},
}

// anyPart are the mistakes of tape and hand, which a dome and a curb share.
func anyPart(unit bool) []mistake {
	return []mistake{
		{name: "read from the one-inch mark", unit: unit, work: onMain(func(_ dice, p pair) (pair, bool) { return p.plus(fitcheck.Inch), true })},
		{name: "one side off by a foot", unit: unit, work: onMain(func(d dice, p pair) (pair, bool) {
			p[d.IntN(2)] += pick[fitcheck.Length](d, -1, 1) * 12 * fitcheck.Inch
			return p, min(p[0], p[1]) > 10*fitcheck.Inch
		})},
		{name: "one side off by an inch", unit: unit, work: onMain(func(d dice, p pair) (pair, bool) {
			p[d.IntN(2)] += pick[fitcheck.Length](d, -1, 1) * fitcheck.Inch
			return p, true
		})},
		{name: "one side given twice", unit: unit, work: onMain(func(_ dice, p pair) (pair, bool) {
			ok := p[0] != p[1]
			p[1] = p[0]
			return p, ok
		})},
		{name: "sides exchanged", unit: unit, named: true, work: onMain(func(_ dice, p pair) (pair, bool) {
			return pair{p[1], p[0]}, p[1]-p[0] > 2*fitcheck.Inch
		})},
		{name: "nominal size", unit: unit, work: onMain(func(_ dice, p pair) (pair, bool) {
			q := pair{nominal(p[0]), nominal(p[1])}
			return q, q.off(p) > fitcheck.Inch
		})},
		{name: "feet without saying so", unit: unit, noUnit: feet, work: asItIs},
		{name: "centimetres without saying so", unit: unit, noUnit: centimetres, work: asItIs},
		{name: "millimetres without saying so", unit: unit, noUnit: millimetres, work: asItIs},
	}
}

// nominal is the catalog's round figure under a size.
func nominal(l fitcheck.Length) fitcheck.Length { return l / (6 * fitcheck.Inch) * (6 * fitcheck.Inch) }

func asItIs(_ dice, s *skylight, _ sizes) (fitcheck.Topic, bool) { return s.sizeOf, true }

func onMain(change func(dice, pair) (pair, bool)) func(dice, *skylight, sizes) (fitcheck.Topic, bool) {
	return func(d dice, s *skylight, said sizes) (fitcheck.Topic, bool) {
		p, ok := change(d, said[s.sizeOf])
		if ok && !s.round {
			said[s.sizeOf] = p
		}
		return s.sizeOf, ok && !s.round
	}
}

// drawMistake works a mistake into what is said of a skylight; its name is empty where
// none could happen.
func drawMistake(d dice, s *skylight, said sizes) (mistake, fitcheck.Topic) {
	var could []mistake
	for _, m := range append(anyPart(!s.dome), mistakes...) {
		if m.unit == !s.dome {
			could = append(could, m)
		}
	}
	m := pick(d, could...)
	topic, ok := m.work(d, s, said)
	if !ok {
		return mistake{}, ""
	}
	return m, topic
}
